// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/work/work_page.h"

#include <QComboBox>
#include <QFileDialog>
#include <QHBoxLayout>
#include <QPushButton>
#include <QTimer>
#include <QVBoxLayout>
#include <algorithm>

#include "phrasing/error_sentence.h"
#include "phrasing/names.h"
#include "ui/common/page_parts.h"
#include "ui/common/text_label.h"
#include "ui/common/word_button.h"
#include "ui/work/ledger_view.h"
#include "ui/work/step_list.h"
#include "ui/work/step_panel.h"

namespace sw::ui {

namespace {

constexpr int kLookAtTheClock = 20'000;  // ms, while a step waits for its time

QString joined(const std::vector<QString>& items) {
  return QStringList(items.begin(), items.end()).join(QStringLiteral(", "));
}

/// A step's name with its run, so that rounds are told apart.
std::string fullName(const workshop::JobState& job, std::size_t step) {
  return std::to_string(job.runs[job.steps[step].run].id.value) + ":" + job.stepName(step);
}

bool isOpen(workshop::StepStatus status) {
  return status == workshop::StepStatus::Ready || status == workshop::StepStatus::Waits ||
         status == workshop::StepStatus::Running;
}

}  // namespace

WorkPage::WorkPage(ShopSession& session, QWidget* parent)
    : Page(session, "workPage", parent),
      m_sides(comboBox("sides", tr("Which sides are shown"), this)),
      m_list(new StepList(this)),
      m_morePlan(new WordButton("morePlan", tr("More to the plan …"), this)),
      m_card(new WordButton("workCard", tr("Work card on paper"), this)),
      m_procedures(comboBox("procedureToAdd", tr("Procedure to add to the plan"), this)),
      m_addProcedure(new WordButton("addProcedure", tr("Add to the plan"), this)),
      m_noPlan(new TextLabel(TextRole::Body, this)),
      m_plans(comboBox("plan", tr("Plan"), this)),
      m_startPlan(new WordButton("startPlan", tr("Start the plan"), this)),
      m_panel(new StepPanel(session, this)),
      m_ledger(new LedgerPanel(session, this)) {
  m_procedures->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  m_procedures->setMinimumContentsLength(8);
  for (const auto& procedure : session.library().procedures()) {
    m_procedures->addItem(QString::fromStdString(procedure.title),
                          QString::fromStdString(procedure.id));
  }
  for (const auto& plan : session.library().plans()) {
    m_plans->addItem(QString::fromStdString(plan.title), QString::fromStdString(plan.id));
  }
  m_plans->setCurrentIndex(qMax(0, m_plans->findData(QStringLiteral("swivel-preload"))));
  choosePicture = [this] {
    return QFileDialog::getOpenFileName(this, tr("Photo"), {},
                                        tr("Pictures (*.png *.jpg *.jpeg *.bmp *.webp)"));
  };
  m_panel->choosePicture = [this] { return choosePicture(); };
  m_ledger->choosePicture = [this] { return choosePicture(); };
  for (QComboBox* box : {m_sides, m_plans}) {
    box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    box->setMinimumContentsLength(8);
  }
  m_sides->addItem(tr("both sides together"), QString());
  m_sides->addItem(tr("left side alone"), QStringLiteral("left"));
  m_sides->addItem(tr("right side alone"), QStringLiteral("right"));
  m_morePlan->setCheckable(true);
  layOut();
  connect(m_sides, &QComboBox::activated, this, &WorkPage::present);
  connect(m_morePlan, &QPushButton::toggled, this, &WorkPage::presentEmpty);
  connect(m_list, &StepList::chosen, this, &WorkPage::select);
  connect(m_panel, &StepPanel::stepWanted, this, &WorkPage::select);
  connect(m_panel, &StepPanel::goWanted, this, &Page::goWanted);
  connect(m_startPlan, &QPushButton::clicked, this, &WorkPage::startPlan);
  connect(m_addProcedure, &QPushButton::clicked, this, &WorkPage::addProcedure);
  connect(m_card, &QPushButton::clicked, this, [this] {
    emit goWanted({PageId::Sheet, m_jobId, {}, kWorkCard, {}});
  });
  connect(&session, &ShopSession::changed, this, [this] {
    if (isVisible()) look();
  });
  auto* clock = new QTimer(this);
  clock->start(kLookAtTheClock);
  connect(clock, &QTimer::timeout, this, [this] {
    const auto runs = [](const workshop::StepLine& line) {
      return line.status == workshop::StepStatus::Running;
    };
    if (isVisible() && std::any_of(m_lines.begin(), m_lines.end(), runs)) look();
  });
}

void WorkPage::layOut() {
  auto* left = new QVBoxLayout;
  left->addWidget(m_sides);
  left->addWidget(m_list, 1);
  left->addWidget(m_morePlan);
  left->addWidget(m_card);
  left->addWidget(m_procedures);
  left->addWidget(m_addProcedure);
  auto* middle = new QVBoxLayout;
  middle->addWidget(m_noPlan);
  middle->addWidget(m_plans);
  middle->addWidget(m_startPlan, 0, Qt::AlignLeft);
  middle->addWidget(m_panel, 1);
  middle->addWidget(m_panel->goOnButton());
  middle->addStretch(0);
  auto* row = new QHBoxLayout(this);
  row->addLayout(left, 3);
  row->addLayout(middle, 6);
  row->addWidget(m_ledger, 3);
}

void WorkPage::begin(const Goal& goal) {
  if (!goal.job) return;
  const bool another = m_jobId != *goal.job;
  m_jobId = *goal.job;
  if (another) m_step.reset();
  look();
  if (!m_job || m_job->steps.empty()) return;
  if (another) tellWhereItStood();
  const auto step = firstStep(goal);
  if (step) select(*step);
  m_panel->takeKeyboard();
}

std::optional<std::size_t> WorkPage::firstStep(const Goal& goal) const {
  if (!goal.step.empty()) {
    std::string name = goal.step;
    if (goal.side) name += " (" + std::string(wordOf(*goal.side)) + ")";
    if (const auto named = workshop::stepNamed(*m_job, name)) return named;
  }
  if (m_step) return m_step;
  const auto last = workshop::stepNamed(*m_job, session().lastStep(m_jobId));
  if (last && isOpen(m_lines[*last].status)) return last;
  const auto next = workshop::nextReadyStep(*m_job, m_lines, std::nullopt, std::nullopt);
  if (next) return next;
  const auto resume = workshop::resumePoint(*m_job);
  return resume.step ? resume.step : std::optional<std::size_t>(0);
}

/// What somebody who comes back must know before the first spanner.
void WorkPage::tellWhereItStood() {
  const auto resume = workshop::resumePoint(*m_job);
  QStringList lines;
  std::vector<QString> tight;
  for (const std::size_t i : resume.handTight) {
    const workshop::LedgerView& item = m_job->ledger[i];
    QString name = QString::fromStdString(item.name);
    if (item.side) name = tr("%1 (%2)").arg(name, phrasing::sideName(*item.side, {}));
    if (item.done && item.count)
      name = tr("%1 (%2 of %3)").arg(name).arg(*item.done).arg(*item.count);
    tight.push_back(name);
  }
  if (!tight.empty()) lines += tr("Only hand-tight: %1.").arg(joined(tight));
  std::vector<QString> holds;
  for (const std::size_t i : resume.holdsToAnswer) {
    holds.push_back(QString::fromStdString(m_job->steps[m_job->holds[i].step].step->title));
  }
  if (!holds.empty()) {
    lines += tr("Another day: to be answered again before work goes on: %1.").arg(joined(holds));
  }
  if (!lines.isEmpty()) emit said(lines.join(QLatin1Char('\n')));
}

void WorkPage::look() {
  const auto job = session().job(m_jobId);
  if (!job) {
    emit failed(phrasing::sentence(job.error()));
    return;
  }
  m_job = *job;
  m_lines = workshop::stepLines(*m_job, session().workshop().clock().now());
  // The plan may have grown: the step is found again by its run and name.
  const bool had = m_step.has_value();
  m_step.reset();
  for (std::size_t i = 0; had && i < m_job->steps.size(); ++i) {
    if (fullName(*m_job, i) == m_stepName) m_step = i;
  }
  present();
  if (!m_step) return;
  const bool open = isOpen(m_lines[*m_step].status);
  const procedures::Step& step = *m_job->steps[*m_step].step;
  // What gave a figure or a verdict stays to be looked at; other steps lead on by themselves.
  const workshop::StepStatus status = m_lines[*m_step].status;
  const bool passedBy =
      status == workshop::StepStatus::DoneBefore || status == workshop::StepStatus::NotApplicable;
  const bool toBeSeen = !passedBy && (step.measure || step.torque || step.hold);
  const bool finished = m_wasOpen && !open;
  m_wasOpen = open;
  if (!finished) return;
  const auto next = workshop::nextReadyStep(*m_job, m_lines, onlySide(), m_step);
  if (!toBeSeen && next) select(*next);
  m_panel->takeKeyboard();
}

void WorkPage::select(std::size_t step) {
  m_step = step;
  m_stepName = fullName(*m_job, step);
  m_wasOpen = isOpen(m_lines[step].status);
  session().keepPlace(m_jobId, m_job->stepName(step));
  present();
  m_list->mark(step);
  if (!m_list->hasFocus()) m_panel->takeKeyboard();
}

std::optional<model::Side> WorkPage::onlySide() const {
  return fromWord<model::Side>(m_sides->currentData().toString().toStdString());
}

QString WorkPage::lockedWhy(const workshop::StepLine& line) const {
  if (session().viewOnly()) return tr("The book is open for reading only.");
  if (m_job->closed) return tr("The job is closed.");
  if (line.status == workshop::StepStatus::Superseded) return tr("A newer round took its place.");
  if (line.against.empty()) return {};
  const workshop::Refusal& first = line.against.front();
  return tr("Locked: %1").arg(phrasing::refusalPhrase(first.key + "||" + first.what));
}

void WorkPage::present() {
  if (!m_job) return;
  presentEmpty();
  m_list->present(m_job, m_lines, onlySide());
  m_ledger->present(m_job, m_step);
  if (!m_step) return;
  const auto shop = session().shop();
  if (!shop) return;
  const workshop::StepLine& line = m_lines[*m_step];
  const auto next = workshop::nextReadyStep(*m_job, m_lines, onlySide(), m_step);
  m_panel->present({m_job, *m_step, *shop, lockedWhy(line)}, line, next);
  m_list->mark(*m_step);
}

void WorkPage::presentEmpty() {
  if (!m_job) return;
  const bool empty = m_job->steps.empty();
  const bool open = !m_job->closed && !session().viewOnly();
  m_noPlan->say(empty ? tr("No plan yet. A plan puts the procedures of a job in their order; each "
                           "result may add to it, and you may always choose otherwise.")
                      : QString());
  m_plans->setVisible(empty && open);
  m_startPlan->setVisible(empty && open);
  m_panel->setVisible(!empty && m_step.has_value());
  if (m_panel->isHidden()) m_panel->goOnButton()->hide();
  for (QWidget* widget : {static_cast<QWidget*>(m_sides), static_cast<QWidget*>(m_list)}) {
    widget->setVisible(!empty);
  }
  for (QWidget* widget :
       {static_cast<QWidget*>(m_procedures), static_cast<QWidget*>(m_addProcedure)}) {
    widget->setVisible(!empty && open && m_morePlan->isChecked());
  }
  m_morePlan->setVisible(!empty && open);
  m_card->setVisible(!empty && m_morePlan->isChecked());
}

void WorkPage::startPlan() {
  workshop::StartPlan plan;
  plan.plan = m_plans->currentData().toString().toStdString();
  if (!session().perform(plan, {m_jobId, {}, {}, {}, {}})) return;
  begin({PageId::Work, m_jobId, {}, {}, {}});
}

void WorkPage::addProcedure() {
  workshop::StartProcedure add;
  add.procedure = m_procedures->currentData().toString().toStdString();
  if (const auto side = onlySide()) add.sides = std::string(wordOf(*side));
  if (session().perform(add, {m_jobId, {}, {}, {}, {}})) {
    emit said(tr("Added at the end of the plan: %1.").arg(m_procedures->currentText()));
  }
}

}  // namespace sw::ui
