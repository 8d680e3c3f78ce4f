// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <functional>

class QLineEdit;
class QPushButton;

namespace sw::ui {

class TextLabel;

/// Asks for one line of words in the page, where another program would open a box: a reason, a
/// note. Hidden until something asks.
class ReasonRow final : public QWidget {
  Q_OBJECT

 public:
  explicit ReasonRow(const QString& name, QWidget* parent = nullptr);
  /// `then` gets the words; it answers whether they were taken. Never called with no words.
  void ask(const QString& question, const QString& placeholder,
           std::function<bool(const std::string&)> then);
  /// After ask: a second way to accept, e.g. "Record with a photo".
  void offer(const QString& otherWay);
  /// After ask: begins with a text that was not accepted before; what is typed goes to `keeper`.
  void keep(const QString& text, std::function<void(const QString&)> keeper);
  /// Whether the words were accepted the second way.
  [[nodiscard]] bool otherWay() const { return m_otherWay; }
  void close();

 signals:
  void asked();
  /// Answered or left: the keyboard has to go somewhere.
  void finished();

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void leave();
  void accept();

  TextLabel* m_question;
  QLineEdit* m_words;
  QPushButton* m_other;
  bool m_otherWay = false;
  std::function<bool(const std::string&)> m_then;
  std::function<void(const QString&)> m_keeper;
};

}  // namespace sw::ui
