// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <optional>

#include "ui/common/page.h"
#include "ui/work/step_section.h"
#include "workshop/step_status.h"

class QComboBox;
class QPushButton;

namespace sw::ui {

class LedgerPanel;
class StepList;
class StepPanel;
class TextLabel;

/// The work: the list of steps, the panel of the chosen one beside it, and the ledger always in
/// sight.
class WorkPage final : public Page {
  Q_OBJECT

 public:
  WorkPage(ShopSession& session, QWidget* parent);
  void begin(const Goal& goal) override;

  /// Asks for a picture file; tests put their own. An empty answer adds none.
  std::function<QString()> choosePicture;

  [[nodiscard]] std::optional<std::size_t> step() const { return m_step; }

 private:
  void layOut();
  void look();
  void select(std::size_t step);
  void present();
  void presentEmpty();
  void startPlan();
  void addProcedure();
  void tellWhereItStood();
  [[nodiscard]] std::optional<model::Side> onlySide() const;
  [[nodiscard]] std::optional<std::size_t> firstStep(const Goal& goal) const;
  [[nodiscard]] QString lockedWhy(const workshop::StepLine& line) const;

  model::JobId m_jobId;
  SharedJob m_job;
  std::vector<workshop::StepLine> m_lines;
  std::optional<std::size_t> m_step;
  std::string m_stepName;  ///< with its run, to find it again when the plan grows
  bool m_wasOpen = false;

  QComboBox* m_sides;
  StepList* m_list;
  QPushButton* m_morePlan;
  QPushButton* m_card;
  QComboBox* m_procedures;
  QPushButton* m_addProcedure;
  TextLabel* m_noPlan;
  QComboBox* m_plans;
  QPushButton* m_startPlan;
  StepPanel* m_panel;
  LedgerPanel* m_ledger;
};

}  // namespace sw::ui
