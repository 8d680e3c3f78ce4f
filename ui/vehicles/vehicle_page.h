// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/common/page.h"

class QButtonGroup;
class QPushButton;
class QStackedWidget;

namespace sw::ui {

class SpecSheet;
class TextLabel;
class VehicleForm;
class VehicleJobs;

/// A vehicle in three parts, one at a time: itself with its front axle, its spec sheet, its jobs.
class VehiclePage : public Page {
  Q_OBJECT

 public:
  explicit VehiclePage(ShopSession& session, QWidget* parent = nullptr);
  /// The vehicle of the goal, or that of its job.
  void begin(const Goal& goal) override;

 private:
  void showTitle();
  void refresh();

  model::VehicleId m_vehicle;
  TextLabel* m_title;
  QButtonGroup* m_group;
  QPushButton* m_data = nullptr;
  QPushButton* m_spec = nullptr;
  QPushButton* m_history = nullptr;
  QStackedWidget* m_parts;
  VehicleForm* m_form;
  SpecSheet* m_sheet;
  VehicleJobs* m_jobs;
};

}  // namespace sw::ui
