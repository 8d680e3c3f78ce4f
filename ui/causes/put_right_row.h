// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "ui/common/shop_session.h"
#include "workshop/shake_known.h"

class QComboBox;
class QLineEdit;

namespace sw::ui {

class TextLabel;

/// Says that a cause was put right, here or elsewhere, and how.
class PutRightRow : public QWidget {
  Q_OBJECT

 public:
  PutRightRow(ShopSession& session, const diagnosis::CauseFile& file, QWidget* parent = nullptr);
  /// What was found and not put right yet is offered first.
  void show(model::JobId job, const workshop::ShakeKnown& known);

 private:
  void record();

  ShopSession& m_session;
  model::JobId m_job;
  std::vector<std::string> m_keys;  ///< of the causes of the table
  QComboBox* m_cause;
  QLineEdit* m_how;
  TextLabel* m_problem;
};

}  // namespace sw::ui
