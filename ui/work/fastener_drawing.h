// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <vector>

namespace sw::ui {

/// A fastener group from the front: each fastener with its turn in the order, done ones filled.
class FastenerDrawing final : public QWidget {
  Q_OBJECT

 public:
  explicit FastenerDrawing(QWidget* parent = nullptr);
  /// `count` fasteners of which the first `done` of the order are tight in this stage.
  void present(int count, int done);

  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  std::vector<int> m_turn;  ///< of the fastener at each place, clockwise from the top
  int m_done = 0;
};

}  // namespace sw::ui
