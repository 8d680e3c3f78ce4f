// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPushButton>

namespace sw::ui {

/// A button whose words wrap where there is no room for them on one line: answers, reasons, the
/// name of the next step.
class WordButton : public QPushButton {
  Q_OBJECT

 public:
  explicit WordButton(const QString& text, QWidget* parent = nullptr);
  WordButton(const char* name, const QString& text, QWidget* parent);

  [[nodiscard]] bool hasHeightForWidth() const override { return true; }
  [[nodiscard]] int heightForWidth(int width) const override;
  [[nodiscard]] QSize sizeHint() const override;
  [[nodiscard]] QSize minimumSizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  [[nodiscard]] int airBeside() const;
};

}  // namespace sw::ui
