// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "ui/common/form_fields.h"
#include "ui/common/shop_session.h"

class QLineEdit;
class QPushButton;
class QVBoxLayout;

namespace sw::ui {

class ChoiceRow;
class TextLabel;

/// The causes that were looked at in a job, ruled out or found, and one more to add.
class CausesPart : public QWidget {
  Q_OBJECT

 public:
  explicit CausesPart(ShopSession& session, QWidget* parent = nullptr);
  void show(model::JobId job);
  void refresh();

 signals:
  /// The causes are to be ranked and the checks planned.
  void rankWanted();

 private:
  void makeFields();
  void layOut();
  [[nodiscard]] QString causeText(const model::Entry& entry,
                                  const model::CauseChecked& cause) const;
  [[nodiscard]] QString place() const;
  void add();

  ShopSession& m_session;
  model::JobId m_job;
  FormFields* m_fields;
  QVBoxLayout* m_list;
  TextLabel* m_none = nullptr;
  QLineEdit* m_cause = nullptr;
  ChoiceRow* m_result = nullptr;
  QLineEdit* m_how = nullptr;
  TextLabel* m_problem = nullptr;
  QPushButton* m_add = nullptr;
  QPushButton* m_rank = nullptr;
};

}  // namespace sw::ui
