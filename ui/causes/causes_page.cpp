// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/causes/causes_page.h"

#include <QPromise>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>
#include <QtConcurrent/QtConcurrentRun>
#include <algorithm>

#include "diagnosis/shipped_causes.h"
#include "ui/causes/causes_lead.h"
#include "ui/causes/causes_questions.h"
#include "ui/causes/causes_wishes.h"
#include "ui/causes/check_plan_view.h"
#include "ui/causes/put_right_row.h"
#include "ui/common/flow_layout.h"
#include "ui/common/page_parts.h"
#include "ui/common/tab_order.h"
#include "ui/common/text_label.h"
#include "ui/common/word_button.h"
#include "workshop/lesson.h"

namespace sw::ui {

namespace {

using diagnosis::CauseFile;
using File = std::shared_ptr<const CauseFile>;
using Ahead = std::shared_ptr<const workshop::ChecksAhead>;
using Values = std::vector<diagnosis::QuestionValue>;

/// The ranking and the plan, on copies.
Ahead aheadOf(const workshop::JobState& job, const CauseFile& file,
              const workshop::CheckWishes& wishes) {
  auto ahead = workshop::checksAhead(job, file, wishes);
  return ahead ? std::make_shared<const workshop::ChecksAhead>(std::move(*ahead)) : nullptr;
}

/// What each question that is open is worth: a plan for each of its answers. Stops between two
/// questions when nobody waits any more.
void valueAll(QPromise<Values>& promise, const Ahead& ahead, const File& file) {
  Values values;
  for (std::size_t feature = 0; feature < file->table.features.size(); ++feature) {
    if (promise.isCanceled()) return;
    if (ahead->known.hasAnswer(feature)) continue;
    const std::size_t one[] = {feature};
    auto value = diagnosis::questionValues(file->table, ahead->known.evidence, ahead->problem, one,
                                           file->damping);
    if (value && !value->empty()) values.push_back(std::move(value->front()));
  }
  std::stable_sort(values.begin(), values.end(),
                   [](const auto& a, const auto& b) { return a.minutes > b.minutes; });
  promise.addResult(std::move(values));
}

}  // namespace

CausesPage::CausesPage(ShopSession& session, QWidget* parent)
    : Page(session, "causesPage", parent) {
  readNumbers();
  build();
  connectAll();
}

CausesPage::~CausesPage() {
  m_valued.cancel();
  m_planned.waitForFinished();
  m_valued.waitForFinished();
}

void CausesPage::build() {
  auto* inside = new QWidget(this);
  auto* column = new QVBoxLayout(inside);
  m_lead = new CausesLead(inside);
  m_questions = new CausesQuestions(*m_file, inside);
  m_plan = new CheckPlanView(session().library(), inside);
  m_right = new PutRightRow(session(), *m_file, inside);
  m_howYouWork = new CausesWishes(*m_file, inside);
  column->addWidget(new TextLabel(tr("What makes it shake?"), TextRole::Heading, inside));
  column->addWidget(m_lead);
  column->addWidget(m_questions);
  column->addWidget(new TextLabel(tr("What to look at next"), TextRole::Heading, inside));
  column->addWidget(m_plan);
  column->addWidget(m_right);
  column->addWidget(m_howYouWork);
  addLinks(column);
  column->addWidget(new TextLabel(
      tr("Chances and minutes are starting values, common practice, no source, where the shop has "
         "not put its own. Likely is not found: a part is to blame when its own check shows it."),
      TextRole::Quiet, inside));
  column->addStretch(1);
  auto* around = new QVBoxLayout(this);
  around->setContentsMargins(0, 0, 0, 0);
  around->addWidget(scrolled(inside, "causesScroll", this));
}

void CausesPage::addLinks(QVBoxLayout* column) {
  auto* links = new FlowLayout;
  const auto add = [&](const char* name, const QString& words, PageId page) {
    auto* button = new WordButton(name, words, this);
    links->addWidget(button);
    connect(button, &QPushButton::clicked, this, [this, page] {
      emit goWanted({page, m_job, {}, {}, {}});
    });
  };
  add("toNumbers", tr("The shop's numbers"), PageId::Numbers);
  add("toLearning", tr("What ended jobs taught"), PageId::Learning);
  column->addLayout(links);
}

void CausesPage::connectAll() {
  connect(&session(), &ShopSession::changed, this, [this] {
    if (isVisible()) refresh();
  });
  connect(&m_planned, &QFutureWatcherBase::finished, this, [this] {
    if (m_again) return workOut();
    present(m_planned.result());
  });
  connect(&m_valued, &QFutureWatcherBase::finished, this, [this] {
    if (m_valuedFor != m_now.ahead || m_valued.isCanceled()) return valueQuestions();
    m_values = m_valued.result();
    m_questions->show(m_now.ahead->known, m_values);
  });
  connect(m_questions, &CausesQuestions::answered, this, &CausesPage::tell);
  connect(m_plan, &CheckPlanView::makeWanted, this, &CausesPage::make);
  connect(m_plan, &CheckPlanView::leaveOutWanted, this, &CausesPage::leaveOut);
  connect(m_plan, &CheckPlanView::planWanted, this, &CausesPage::addPlan);
  connect(m_howYouWork, &CausesWishes::takeBackWanted, this,
          [this] { wish(workshop::leftOutSetting(m_job), {}); });
  connect(m_howYouWork, &CausesWishes::shopChosen, this, [this](const QString& key) {
    wish(std::string(workshop::kPresetSetting), key.toStdString());
  });
  connect(m_howYouWork, &CausesWishes::setupChosen, this,
          [this](const QString& key) { wish(workshop::setupSetting(m_job), key.toStdString()); });
  connect(m_howYouWork, &CausesWishes::stopChosen, this, [this](const QString& minutes) {
    wish(std::string(workshop::kGivingUpSetting), minutes.toStdString());
  });
}

void CausesPage::begin(const Goal& goal) {
  if (!goal.job) return;
  m_job = *goal.job;
  readWishes();
  const auto job = session().job(m_job);
  if (!job) return;
  // The page opens with its plan; from then on answers are worked out beside the window.
  present({m_file, aheadOf(**job, *m_file, m_wishes)});
}

void CausesPage::refresh() {
  readWishes();
  workOut();
}

/// The shop may have put in its own, and ended jobs may have taught something.
void CausesPage::readNumbers() {
  const auto learning = session().learning();
  if (learning) {
    m_file = File(*learning, &(*learning)->inUse);
  } else if (!m_file) {
    m_file = std::make_shared<const CauseFile>(diagnosis::shippedCauses());
  }
}

void CausesPage::readWishes() {
  readNumbers();
  auto wishes = workshop::checkWishes(session().workshop().book(), m_job);
  if (wishes) m_wishes = std::move(*wishes);
  m_howYouWork->show(m_wishes, m_file->fallbackMinutes);
}

void CausesPage::workOut() {
  m_again = m_planned.isRunning();
  if (m_again) return;
  const auto job = session().job(m_job);
  if (!job) return;
  m_planned.setFuture(QtConcurrent::run([job = *job, file = m_file, wishes = m_wishes] {
    return WorkedOut{file, aheadOf(*job, *file, wishes)};
  }));
}

/// The causes and the plan now, the question when it is worked out.
void CausesPage::present(const WorkedOut& now) {
  if (!now.ahead) return;
  m_now = now;
  // Nothing to ask while it does not shake.
  m_values = now.ahead->cured.empty() ? std::nullopt : std::optional(Values{});
  sayComeback();
  m_lead->show(now.file, now.ahead);
  m_questions->show(now.ahead->known, m_values);
  m_plan->show(now.file, now.ahead);
  m_right->show(m_job, now.ahead->known);
  tabAsLaidOut(*this);
  if (m_valued.isRunning()) {
    m_valued.cancel();  // of an older state
  } else {
    valueQuestions();
  }
}

void CausesPage::valueQuestions() {
  m_valuedFor = m_now.ahead;
  if (m_values) return;
  m_valued.setFuture(QtConcurrent::run(valueAll, m_now.ahead, m_now.file));
}

void CausesPage::sayComeback() {
  const auto job = session().job(m_job);
  if (!job) return;
  const auto earlier = workshop::comebackOf(session().workshop(), **job, *m_now.file);
  if (!earlier || !*earlier) return m_lead->sayComeback({});
  QStringList names;
  const auto closed = workshop::closedJobOf((*earlier)->fact, m_now.file->table);
  if (closed) {
    for (const std::size_t cause : closed->causes) {
      names += QString::fromStdString(m_now.file->table.causes[cause].name);
    }
  }
  const QString ended = QString::fromStdString(toIso(localDate((*earlier)->endedAt)));
  m_lead->sayComeback(tr("It comes back: job %1 ended on %2 with this as the cause: %3. It counts "
                         "as confirmed no longer.")
                          .arg((*earlier)->job.value)
                          .arg(ended, names.join(QStringLiteral(", "))));
}

void CausesPage::tell(const QString& feature, const QString& answer) {
  workshop::TellOfShake told;
  told.feature = feature.toStdString();
  told.answer = answer.toStdString();
  (void)session().perform(told, {m_job, {}, {}, {}, {}});
}

void CausesPage::make(std::size_t check) {
  workshop::StartProcedure start;
  start.procedure = m_now.file->checks[check].procedure;
  const auto before = session().job(m_job);
  if (before) start.after = workshop::placeForCheck(**before);
  if (!session().perform(start, {m_job, {}, {}, {}, {}})) return;
  const auto job = session().job(m_job);
  const auto run = job ? (*job)->newestRun(start.procedure, std::nullopt) : std::nullopt;
  if (!run) return;
  for (std::size_t i = 0; i < (*job)->steps.size(); ++i) {
    if ((*job)->steps[i].run != *run) continue;
    const Where here = whereOf(**job, i);
    const PageId page = PageId::Work;
    emit goWanted({page, m_job, {}, here.step, here.side});
    return;
  }
}

void CausesPage::addPlan(const QString& plan) {
  workshop::StartPlan action;
  action.plan = plan.toStdString();
  (void)session().perform(action, {m_job, {}, {}, {}, {}});
}

void CausesPage::leaveOut(std::size_t check) {
  std::string keys;
  for (const std::string& key : m_wishes.leftOut) keys += key + " ";
  wish(workshop::leftOutSetting(m_job), keys + m_now.file->checks[check].key);
}

void CausesPage::wish(const std::string& setting, const std::string& value) {
  workshop::SetSetting set;
  set.key = setting;
  set.value = value;
  (void)session().perform(set);
}

}  // namespace sw::ui
