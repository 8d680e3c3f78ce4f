// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/work/step_section.h"

class QLineEdit;
class QPushButton;

namespace sw::ui {

class ChoiceRow;
class TextLabel;

/// What the drive showed; written down afterwards, by somebody who stands still.
class RoadTestSection final : public StepSection {
  Q_OBJECT

 public:
  RoadTestSection(ShopSession& session, QWidget* parent);
  [[nodiscard]] bool suits(const StepContext& context) const override;
  [[nodiscard]] QWidget* firstField() override;

 protected:
  void fill(Showing showing) override;

 private:
  void record();

  ChoiceRow* m_shake;
  QLineEdit* m_onset;
  QLineEdit* m_release;
  ChoiceRow* m_source;
  ChoiceRow* m_return;
  QLineEdit* m_words;
  TextLabel* m_problem;
  QPushButton* m_record;
};

/// A step that waits by the clock: sealant that cures, a tyre that cools.
class WaitSection final : public StepSection {
  Q_OBJECT

 public:
  WaitSection(ShopSession& session, QWidget* parent);
  [[nodiscard]] bool suits(const StepContext& context) const override;
  [[nodiscard]] QWidget* firstField() override;

 protected:
  void fill(Showing showing) override;

 private:
  TextLabel* m_left;
  QLineEdit* m_time;
  QPushButton* m_start;
};

}  // namespace sw::ui
