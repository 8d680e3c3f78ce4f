// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFutureWatcher>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "diagnosis/questions.h"
#include "ui/common/page.h"
#include "workshop/checks_ahead.h"

class QVBoxLayout;

namespace sw::ui {

class CausesLead;
class CausesQuestions;
class CausesWishes;
class CheckPlanView;
class PutRightRow;

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
  using File = std::shared_ptr<const diagnosis::CauseFile>;
  using Ahead = std::shared_ptr<const workshop::ChecksAhead>;
  /// What was worked out, and with which numbers.
  struct WorkedOut {
    File file;
    Ahead ahead;
  };
  using Values = std::vector<diagnosis::QuestionValue>;

  void build();
  void addLinks(QVBoxLayout* column);
  void connectAll();
  void refresh();
  void readNumbers();
  void readWishes();
  void workOut();
  void present(const WorkedOut& now);
  void valueQuestions();
  void sayComeback();
  void tell(const QString& feature, const QString& answer);
  void make(std::size_t check);
  void leaveOut(std::size_t check);
  void addPlan(const QString& plan);
  void wish(const std::string& setting, const std::string& value);

  model::JobId m_job;
  File m_file;  ///< the numbers in use
  workshop::CheckWishes m_wishes;
  WorkedOut m_now;
  Ahead m_valuedFor;               ///< what the values are of
  std::optional<Values> m_values;  ///< the best first; nothing while worked out
  QFutureWatcher<WorkedOut> m_planned;
  QFutureWatcher<Values> m_valued;
  bool m_again = false;  ///< something changed while it was worked out

  CausesLead* m_lead = nullptr;
  CausesQuestions* m_questions = nullptr;
  CheckPlanView* m_plan = nullptr;
  PutRightRow* m_right = nullptr;
  CausesWishes* m_howYouWork = nullptr;
};

}  // namespace sw::ui
