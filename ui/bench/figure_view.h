// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "compute/calculation.h"

namespace sw::ui {

/// The picture of an answer, drawn anew for the room it has, in the colours of the look.
class FigureView : public QWidget {
  Q_OBJECT

 public:
  explicit FigureView(QWidget* parent = nullptr);
  void show(const compute::Draw& draw);
  void clear();

  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  [[nodiscard]] int emPixels() const;
  compute::Draw m_draw;
};

}  // namespace sw::ui
