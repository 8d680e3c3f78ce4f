// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/work/step_section.h"

class QLineEdit;
class QPushButton;
class QVBoxLayout;

namespace sw::ui {

class TextLabel;

/// A hold point beside the work: one statement at a time, answered with the state or value that was
/// seen. Choices are shuffled and numbered; the number is typed or the choice pressed. Nothing is
/// chosen beforehand, and neither Enter, Space, Tab nor Esc alone gives an answer.
class HoldSection final : public StepSection {
  Q_OBJECT

 public:
  HoldSection(ShopSession& session, QWidget* parent);
  [[nodiscard]] bool suits(const StepContext& context) const override;
  [[nodiscard]] QWidget* firstField() override;
  [[nodiscard]] bool satisfied() const override { return m_statement == nullptr; }

 protected:
  void fill(Showing showing) override;

 private:
  void showAnswered(const workshop::HoldView& hold);
  [[nodiscard]] static QString promptOf(const procedures::Statement& statement);
  void showChoices(const procedures::Statement& statement);
  void clearChoices();
  void answer();
  [[nodiscard]] std::optional<std::string> answerTyped();

  TextLabel* m_answered;
  TextLabel* m_ask;
  TextLabel* m_why;
  QVBoxLayout* m_choices;
  TextLabel* m_prompt;
  QLineEdit* m_answer;
  QPushButton* m_record;
  const procedures::Statement* m_statement = nullptr;
  std::size_t m_entries = 0;         ///< of the job when it was shown
  std::vector<std::string> m_words;  ///< of the choices, as shown
  std::vector<QPushButton*> m_buttons;
};

}  // namespace sw::ui
