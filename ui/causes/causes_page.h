// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFutureWatcher>
#include <memory>
#include <string>
#include <vector>

#include "diagnosis/questions.h"
#include "ui/common/page.h"
#include "workshop/checks_ahead.h"

class QComboBox;
class QPushButton;
class QScrollArea;
class QVBoxLayout;

namespace sw::ui {

class ChoiceRow;
class FigureView;
class TextLabel;

/// What is known of the shake and what to look at next: the question worth asking first, the
/// leading causes in words, and the checks in the order that costs least time. Planned beside the
/// window, so that an answer never waits.
class CausesPage : public Page {
  Q_OBJECT

 public:
  explicit CausesPage(ShopSession& session, QWidget* parent = nullptr);
  ~CausesPage() override;
  void begin(const Goal& goal) override;

 private:
  struct Question {
    std::size_t feature = 0;
    ChoiceRow* row = nullptr;
  };
  void build();
  void buildQuestions(QVBoxLayout* column);
  void buildWishes(QVBoxLayout* column);
  void refresh();
  void readNumbers();
  void readWishes();
  void workOut();
  void present(const std::shared_ptr<const workshop::ChecksAhead>& ahead);
  void valueQuestions();
  void showLeaders();
  void showQuestions();
  void showMade();
  void showFound();
  void addFound(std::size_t cause);
  void showPlan();
  void addCheck(std::size_t place);
  void answer(const Question& question);
  void make(std::size_t check);
  void leaveOut(std::size_t check);
  void wish(const std::string& setting, const std::string& value);
  void fillWishes();
  [[nodiscard]] QString whyText(std::size_t place) const;

  model::JobId m_job;
  diagnosis::CauseFile m_file;
  workshop::CheckWishes m_wishes;
  std::vector<Question> m_questions;
  std::shared_ptr<const workshop::ChecksAhead> m_ahead;
  std::shared_ptr<const workshop::ChecksAhead> m_valuedFor;  ///< what the values are of
  std::vector<diagnosis::QuestionValue> m_values;  ///< the best first; empty while worked out
  QFutureWatcher<std::shared_ptr<const workshop::ChecksAhead>> m_planned;
  QFutureWatcher<std::vector<diagnosis::QuestionValue>> m_valued;
  bool m_again = false;  ///< something changed while it was worked out

  TextLabel* m_lead = nullptr;
  FigureView* m_picture = nullptr;
  QPushButton* m_why = nullptr;
  TextLabel* m_whyText = nullptr;
  TextLabel* m_firstQuestion = nullptr;
  QPushButton* m_more = nullptr;
  TextLabel* m_planWords = nullptr;
  QVBoxLayout* m_made = nullptr;
  QVBoxLayout* m_plan = nullptr;
  QComboBox* m_shop = nullptr;
  QComboBox* m_setup = nullptr;
  QComboBox* m_stop = nullptr;
  QPushButton* m_back = nullptr;
};

}  // namespace sw::ui
