// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "ui/common/shop_session.h"

class QComboBox;
class QPushButton;

namespace sw::ui {

class TextLabel;

/// The plan of a job: which one to start, or where the work stands.
class PlanPart : public QWidget {
  Q_OBJECT

 public:
  explicit PlanPart(ShopSession& session, QWidget* parent = nullptr);
  void show(model::JobId job);
  /// The plan that is chosen.
  [[nodiscard]] std::string plan() const;

 signals:
  void startWanted();
  void workWanted();

 private:
  ShopSession& m_session;
  TextLabel* m_standing;
  QComboBox* m_plans;
  QPushButton* m_start;
  QPushButton* m_work;
};

}  // namespace sw::ui
