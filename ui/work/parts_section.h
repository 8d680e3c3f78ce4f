// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/work/step_section.h"

namespace sw::ui {

class FlowLayout;
class TextLabel;

/// The parts of a step: each is recorded when a new one is fitted; single-use items must be.
class PartsSection final : public StepSection {
  Q_OBJECT

 public:
  PartsSection(ShopSession& session, QWidget* parent);
  [[nodiscard]] bool suits(const StepContext& context) const override;
  [[nodiscard]] QWidget* firstField() override;

 protected:
  void fill(Showing showing) override;

 private:
  void use(const procedures::Part& part);

  TextLabel* m_used;
  FlowLayout* m_buttons;
};

}  // namespace sw::ui
