// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFrame>

class QLabel;

namespace sw::ui {

/// What the program has to say, in the page and never as a box in the way: it stays until the next
/// message or until it is put away.
class MessageBar : public QFrame {
  Q_OBJECT

 public:
  enum class Tone { Note, Refusal };

  explicit MessageBar(QWidget* parent = nullptr);
  void say(const QString& sentence, Tone tone);
  void clear();
  [[nodiscard]] QString text() const;

 private:
  QLabel* m_mark;
  QLabel* m_text;
};

}  // namespace sw::ui
