// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFrame>

class QLabel;
class QPushButton;

namespace sw::ui {

/// What the program has to say, in the page and never as a box in the way: it stays until the next
/// message or until it is put away.
class MessageBar : public QFrame {
  Q_OBJECT

 public:
  /// An answer goes with one entry, a note stands until it is put away.
  enum class Tone { Note, Answer, Refusal };

  explicit MessageBar(QWidget* parent = nullptr);
  void say(const QString& sentence, Tone tone);
  /// Beside the sentence, a button to where it can be mended.
  void offer(const QString& text);
  void clear();
  /// Something was done since: what was said of an earlier entry would be read as its answer.
  void dropAnswer();
  [[nodiscard]] QString text() const;

 signals:
  void offerTaken();

 private:
  QLabel* m_mark;
  QLabel* m_text;
  QPushButton* m_offer;
  Tone m_tone = Tone::Note;
};

}  // namespace sw::ui
