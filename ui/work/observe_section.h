// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/work/step_section.h"

class QVBoxLayout;

namespace sw::ui {

class ChoiceRow;

/// What is seen or felt at a step, one question at a time below the other; an answer is recorded as
/// it is chosen.
class ObserveSection final : public StepSection {
  Q_OBJECT

 public:
  ObserveSection(ShopSession& session, QWidget* parent);
  [[nodiscard]] bool suits(const StepContext& context) const override;
  [[nodiscard]] QWidget* firstField() override;
  [[nodiscard]] bool satisfied() const override { return !lacks("not_observed"); }

 protected:
  void fill(Showing showing) override;

 private:
  void build();

  QVBoxLayout* m_column;
  std::vector<ChoiceRow*> m_rows;
};

/// What carries the vehicle.
class SupportSection final : public StepSection {
  Q_OBJECT

 public:
  SupportSection(ShopSession& session, QWidget* parent);
  [[nodiscard]] bool suits(const StepContext& context) const override;
  [[nodiscard]] QWidget* firstField() override;

 protected:
  void fill(Showing showing) override;

 private:
  ChoiceRow* m_support;
};

}  // namespace sw::ui
