// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/common/form_fields.h"
#include "ui/common/page.h"

class QFormLayout;
class QLineEdit;
class QPushButton;

namespace sw::ui {

class CausesPart;
class ChoiceRow;
class FourAnswers;
class PlanPart;
class TextLabel;

/// What the owner says and when it shakes, what was looked at already, and the start of the plan.
class ComplaintPage : public Page {
  Q_OBJECT

 public:
  explicit ComplaintPage(ShopSession& session, QWidget* parent = nullptr);
  void begin(const Goal& goal) override;

 private:
  void makeFields(QWidget* inside);
  void layOut(QWidget* inside);
  void connectAll();
  QLineEdit* add(QFormLayout* form, const char* field, const char* name, const QString& label,
                 const QString& example);
  [[nodiscard]] FieldTexts record() const;
  [[nodiscard]] QString place() const;
  void showFelt();
  void takeFelt();
  void refresh();
  bool save();
  void startPlan();
  void goToWork();

  model::JobId m_job;
  FormFields* m_fields;
  QFormLayout* m_wordsForm;
  QFormLayout* m_feltForm;
  QFormLayout* m_speedForm;
  QFormLayout* m_restForm;
  // In the order of the Tab key.
  TextLabel* m_unsaved = nullptr;
  QLineEdit* m_words = nullptr;
  FourAnswers* m_answers = nullptr;
  QLineEdit* m_felt = nullptr;
  ChoiceRow* m_source = nullptr;
  TextLabel* m_problem = nullptr;
  QPushButton* m_save = nullptr;
  CausesPart* m_causes = nullptr;
  PlanPart* m_plan = nullptr;
};

}  // namespace sw::ui
