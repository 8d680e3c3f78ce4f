// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/work/step_section.h"
#include "workshop/torque_plan.h"

class QComboBox;
class QLineEdit;
class QPushButton;

namespace sw::ui {

class FastenerDrawing;
class TextLabel;

/// A group of fasteners: its order drawn, the stages, what the wrench is set to, and one action for
/// the whole group: "4 of 4, crosswise, 25 N m, wrench 2".
class TorqueSection final : public StepSection {
  Q_OBJECT

 public:
  TorqueSection(ShopSession& session, QWidget* parent);
  [[nodiscard]] bool suits(const StepContext& context) const override;
  [[nodiscard]] QWidget* firstField() override;

 protected:
  void fill(Showing showing) override;

 private:
  void layOut();
  void showPlan(const workshop::TorquePlan& plan);
  void listWrenches(const workshop::TorqueStage& stage);
  void wrenchChosen();
  void judge();
  void record();
  [[nodiscard]] std::optional<workshop::MarkTorque> action() const;

  FastenerDrawing* m_drawing;
  TextLabel* m_set;
  TextLabel* m_other;
  TextLabel* m_group;
  TextLabel* m_stages;
  QComboBox* m_wrench;
  TextLabel* m_warning;
  QLineEdit* m_value;
  QLineEdit* m_done;
  TextLabel* m_judged;
  QPushButton* m_record;
  QPushButton* m_spec;
  QPushButton* m_addWrench;
  std::optional<workshop::TorquePlan> m_plan;
  std::vector<workshop::WrenchChoice> m_choices;
};

}  // namespace sw::ui
