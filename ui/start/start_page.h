// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/common/page.h"

class QLabel;
class QPushButton;
class QTableWidget;
class QVBoxLayout;

namespace sw::ui {

/// Where the day begins: open jobs to go on with, rechecks due, a new job.
class StartPage : public Page {
  Q_OBJECT

 public:
  explicit StartPage(ShopSession& session, QWidget* parent = nullptr);
  void begin(const Goal& goal) override;

 private:
  void refresh();
  void showJobs();
  void showDue();

  QPushButton* m_new;
  QVBoxLayout* m_cards;
  QLabel* m_noJobs;
  QTableWidget* m_due;
  QLabel* m_noDue;
};

}  // namespace sw::ui
