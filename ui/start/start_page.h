// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "ui/common/shop_session.h"

class QLabel;
class QPushButton;
class QTableWidget;
class QVBoxLayout;

namespace sw::ui {

/// Where the day begins: open jobs to go on with, rechecks due, a new job.
class StartPage : public QWidget {
  Q_OBJECT

 public:
  explicit StartPage(ShopSession& session, QWidget* parent = nullptr);
  /// Looks again and puts the keyboard on the new job.
  void begin();

 signals:
  void newJobWanted();
  void jobWanted(model::JobId job);

 private:
  void refresh();
  void showJobs();
  void showDue();

  ShopSession& m_session;
  QPushButton* m_new;
  QVBoxLayout* m_cards;
  QLabel* m_noJobs;
  QTableWidget* m_due;
  QLabel* m_noDue;
};

}  // namespace sw::ui
