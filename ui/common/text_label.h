// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLabel>

namespace sw::ui {

/// What a text is on a page; decides its size and weight in both modes.
enum class TextRole {
  Body,
  Quiet,    ///< beside the point, smaller in tone
  Strong,   ///< a caution, a name
  Heading,  ///< of a page or a column
  Title,    ///< of the step at hand: wraps, and is read from two metres in workshop mode
  Value     ///< a figure to be read from two metres
};

/// Plain text that wraps and keeps its role when the mode or the look changes. Text from the book
/// is never taken for markup.
class TextLabel : public QLabel {
  Q_OBJECT

 public:
  explicit TextLabel(TextRole role, QWidget* parent = nullptr);
  TextLabel(const QString& text, TextRole role, QWidget* parent = nullptr);
  /// Shows the text, or hides the label where there is none.
  void say(const QString& text);

 protected:
  void changeEvent(QEvent* event) override;

 private:
  void dress();

  TextRole m_role;
  bool m_dressing = false;
};

}  // namespace sw::ui
