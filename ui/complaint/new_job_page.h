// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/common/page.h"

class QComboBox;
class QFormLayout;
class QLabel;
class QLineEdit;
class QPushButton;

namespace sw::ui {

class FourAnswers;

/// A job in under a minute: plate, the owner's words and four answers; all else can wait. Whether
/// the plate is known is said while it is typed.
class NewJobPage : public Page {
  Q_OBJECT

 public:
  explicit NewJobPage(ShopSession& session, QWidget* parent = nullptr);
  /// Puts the cursor on the plate. What was typed before somebody went back is still there.
  void begin(const Goal& goal) override;

 private:
  void clear();
  void tellWhetherKnown();
  void openJob();
  [[nodiscard]] bool takePerson();
  void showProblem(const QString& sentence, QWidget* field);

  QFormLayout* m_form;
  QLineEdit* m_plate;
  QLabel* m_known;
  QLineEdit* m_who;
  QLineEdit* m_odometer;
  QLineEdit* m_words;
  FourAnswers* m_answers = nullptr;
  QLabel* m_problem;
  QPushButton* m_open = nullptr;
};

}  // namespace sw::ui
