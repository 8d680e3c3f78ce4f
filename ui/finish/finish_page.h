// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "ui/common/page.h"

class QLineEdit;
class QPushButton;
class QVBoxLayout;

namespace sw::ui {

class ReasonRow;
class TextLabel;

/// The end of a job: what still stands against sign-off, each reason a way to its step; what is
/// added to the record (labour, parts, rechecks); the sign-off itself, or another end with its
/// reason.
class FinishPage final : public Page {
  Q_OBJECT

 public:
  FinishPage(ShopSession& session, QWidget* parent);
  void begin(const Goal& goal) override;

 private:
  QWidget* buildRecord(QWidget* parent);
  void layOut();
  void wire();
  void look();
  void showReasons(const workshop::JobState& job);
  void showRecorded(const workshop::JobState& job);
  bool send(workshop::Action action);
  void addLabour();
  void addPart();
  void addRecheck();
  void closeAs(model::JobOutcome outcome);

  model::JobId m_job;
  TextLabel* m_title;
  TextLabel* m_state;
  QVBoxLayout* m_reasons;
  std::vector<QPushButton*> m_ways;
  TextLabel* m_more;
  QPushButton* m_signOff;
  QWidget* m_record;
  QLineEdit* m_labour;
  QLineEdit* m_labourFor;
  QLineEdit* m_part;
  QLineEdit* m_quantity;
  QLineEdit* m_price;
  QLineEdit* m_recheck;
  QLineEdit* m_recheckOn;
  QLineEdit* m_recheckAt;
  TextLabel* m_recorded;
  QPushButton* m_declineWork;
  QPushButton* m_declined;
  QPushButton* m_without;
  ReasonRow* m_reason;
};

}  // namespace sw::ui
