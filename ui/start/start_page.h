// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "report/lists.h"
#include "ui/common/page.h"

class QPushButton;
class QStackedWidget;
class QTableWidget;
class QVBoxLayout;

namespace sw::ui {

class TextLabel;

/// Where the day begins: the job that was worked on last, open jobs, rechecks due, the vehicles of
/// the book, a new job.
class StartPage : public Page {
  Q_OBJECT

 public:
  explicit StartPage(ShopSession& session, QWidget* parent = nullptr);
  void begin(const Goal& goal) override;

 private:
  void build();
  void layOut();
  void link();
  [[nodiscard]] QWidget* jobColumn();
  [[nodiscard]] QWidget* dueColumn();

  void refresh();
  void showLast();
  void showJobs();
  void showDue();
  void showVehicles();
  void openVehicle(int row);

  std::optional<Goal> m_last;  ///< where to go on
  std::vector<model::VehicleId> m_listed;
  // In the order of the Tab key.
  QPushButton* m_goOn;
  TextLabel* m_goOnAt;
  QPushButton* m_new;
  QWidget* m_list;
  QVBoxLayout* m_cards;
  TextLabel* m_noJobs;
  QPushButton* m_vehicles;
  TextLabel* m_right;
  QStackedWidget* m_stack;
  TextLabel* m_noDue;
  QTableWidget* m_due;
  QTableWidget* m_vehicleTable;
};

}  // namespace sw::ui
