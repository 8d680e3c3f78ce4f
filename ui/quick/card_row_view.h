// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFrame>

#include "ui/quick/card_rows.h"

class QHBoxLayout;
class QPushButton;

namespace sw::ui {

class TextLabel;

/// One row of the card: what it is about, and its fields. Nothing is chosen beforehand but an
/// instrument there is no other of; the wheel of the mouse scrolls the page and changes no answer.
class CardRowView : public QFrame {
  Q_OBJECT

 public:
  enum class Head { WithTitle, OfStepAbove };
  CardRowView(const CardRow& row, const RowValues& values, Head head, QWidget* parent);

  [[nodiscard]] const std::string& key() const { return m_key; }
  /// Why it did not go in.
  void mark(const QString& sentence);
  [[nodiscard]] QWidget* firstField() const { return m_first; }
  [[nodiscard]] QWidget* lastField() const { return m_last; }

 signals:
  void edited(const QString& field, const QString& value);

 private:
  QWidget* make(const CardField& field, const RowValues& values);
  QWidget* makeText(const CardField& field, const QString& value);
  QWidget* makeChoice(const CardField& field, const QString& value);
  QWidget* makeTick(const CardField& field, const QString& value);

  std::string m_key;
  QString m_title;
  QWidget* m_first = nullptr;
  QWidget* m_last = nullptr;
  std::vector<QPushButton*> m_ticks;  ///< at most one of them is down
  TextLabel* m_problem = nullptr;
};

}  // namespace sw::ui
