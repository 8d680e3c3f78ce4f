// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "ui/common/shop_session.h"

class QTableWidget;

namespace sw::ui {

class TextLabel;

/// The jobs of a vehicle, newest first; pressing one asks for its paper.
class VehicleJobs : public QWidget {
  Q_OBJECT

 public:
  explicit VehicleJobs(ShopSession& session, QWidget* parent = nullptr);
  void show(model::VehicleId vehicle);

 signals:
  void jobChosen(sw::model::JobId job);

 private:
  void addRow(const store::JobSummary& summary);
  void choose(int row);

  ShopSession& m_session;
  TextLabel* m_none;
  QTableWidget* m_table;
};

}  // namespace sw::ui
