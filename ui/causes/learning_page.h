// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>

#include "ui/common/page.h"
#include "workshop/shop_learning.h"

class QGridLayout;
class QLineEdit;
class QPushButton;
class QTableWidget;

namespace sw::ui {

class TextLabel;

/// What ended jobs taught of causes: how well the table that is learned from them forecasts beside
/// the starting one, what moved, and which jobs count.
class LearningPage : public Page {
  Q_OBJECT

 public:
  explicit LearningPage(ShopSession& session, QWidget* parent = nullptr);
  void begin(const Goal& goal) override;

 private:
  void layOut();
  [[nodiscard]] QWidget* laidOutScores();
  void refresh();
  void showLead();
  void fillScores();
  void showMoved();
  void fillJobs();
  void showJob();
  void leaveOut();
  void takeIn();
  [[nodiscard]] const workshop::Taught* chosen() const;
  [[nodiscard]] QString causesText(const workshop::Taught& job) const;

  std::optional<model::JobId> m_job;
  std::shared_ptr<const workshop::ShopLearning> m_learning;
  QPushButton* m_back = nullptr;
  TextLabel* m_lead;
  QGridLayout* m_scores;
  TextLabel* m_moved;
  TextLabel* m_none;
  QTableWidget* m_jobs;
  TextLabel* m_chosen;
  QLineEdit* m_why;
  TextLabel* m_problem;
  QPushButton* m_out;
  QPushButton* m_in;
};

}  // namespace sw::ui
