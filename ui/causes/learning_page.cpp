// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/causes/learning_page.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QTableWidget>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "phrasing/cause_words.h"
#include "phrasing/error_sentence.h"
#include "ui/common/clear_layout.h"
#include "ui/common/flow_layout.h"
#include "ui/common/page_parts.h"
#include "ui/common/plain_text.h"
#include "ui/common/tab_order.h"
#include "ui/common/text_label.h"
#include "ui/common/word_button.h"

namespace sw::ui {

namespace {

constexpr std::size_t kMostMoved = 6;
constexpr double kMoved = 0.005;  // less is the same number in jobs of 100

QString score(double value) {
  return QString::number(value, 'f', 3);
}

}  // namespace

LearningPage::LearningPage(ShopSession& session, QWidget* parent)
    : Page(session, "learningPage", parent),
      m_lead(new TextLabel(TextRole::Strong, this)),
      m_scores(new QGridLayout),
      m_moved(new TextLabel(TextRole::Body, this)),
      m_none(new TextLabel(
          tr("No ended job teaches anything yet. One does when a cause was put right and the drive "
             "after it was without the shake, or when everything looked at showed no fault and it "
             "still shook."),
          TextRole::Body, this)),
      m_jobs(
          rowTable("lessonTable", tr("Ended jobs"), {tr("Job"), tr("Cause"), tr("Counts")}, this)),
      m_chosen(new TextLabel(TextRole::Strong, this)),
      m_why(lineEdit("leftOutWhy", tr("Why this job is no lesson"),
                     tr("like: three parts changed at once"), this)),
      m_problem(new TextLabel(TextRole::Strong, this)),
      m_out(new WordButton("leaveOutOfLearning", tr("Leave this job out"), this)),
      m_in(new WordButton("takeIntoLearning", tr("Let this job count again"), this)) {
  m_lead->setObjectName(QStringLiteral("learningLead"));
  m_moved->setObjectName(QStringLiteral("learningMoved"));
  m_chosen->setObjectName(QStringLiteral("learningChosen"));
  m_problem->setObjectName(QStringLiteral("learningProblem"));
  m_problem->hide();
  layOut();
  connect(m_jobs, &QTableWidget::itemSelectionChanged, this, &LearningPage::showJob);
  connect(m_out, &QPushButton::clicked, this, &LearningPage::leaveOut);
  connect(m_why, &QLineEdit::returnPressed, this, &LearningPage::leaveOut);
  connect(m_in, &QPushButton::clicked, this, &LearningPage::takeIn);
  connect(&session, &ShopSession::changed, this, [this] {
    if (isVisible()) refresh();
  });
}

void LearningPage::layOut() {
  auto* right = new QWidget(this);
  auto* column = new QVBoxLayout(right);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(new TextLabel(tr("Jobs it is learned from"), TextRole::Heading, right));
  column->addWidget(m_none);
  column->addWidget(m_jobs, 1);
  column->addWidget(m_chosen);
  column->addWidget(m_why);
  column->addWidget(m_problem);
  auto* buttons = new FlowLayout;
  buttons->addWidget(m_out);
  buttons->addWidget(m_in);
  column->addLayout(buttons);
  auto* columns = new QHBoxLayout(this);
  columns->addWidget(scrolled(laidOutScores(), "learningScroll", this), 1);
  columns->addWidget(right, 1);
}

QWidget* LearningPage::laidOutScores() {
  auto* left = new QWidget(this);
  auto* column = new QVBoxLayout(left);
  column->setContentsMargins(0, 0, column->contentsMargins().right(), 0);
  auto* title = new TextLabel(tr("What ended jobs taught"), TextRole::Heading, left);
  title->setWordWrap(true);
  column->addWidget(title);
  auto* buttons = new FlowLayout;
  auto* numbers = new WordButton("toNumbers", tr("The shop's numbers"), left);
  m_back = new WordButton("backToCauses", tr("Back to the causes"), left);
  buttons->addWidget(numbers);
  buttons->addWidget(m_back);
  column->addLayout(buttons);
  column->addWidget(m_lead);
  column->addLayout(m_scores);
  column->addWidget(new TextLabel(
      tr("Each job is forecast from its answers by a table that was learned without it. A score of "
         "0 is a forecast that was always sure and right; less is better."),
      TextRole::Quiet, left));
  column->addWidget(m_moved);
  column->addStretch(1);
  connect(numbers, &QPushButton::clicked, this, [this] {
    const PageId page = PageId::Numbers;
    emit goWanted({page, m_job, {}, {}, {}});
  });
  connect(m_back, &QPushButton::clicked, this, [this] {
    const PageId page = PageId::Causes;
    emit goWanted({page, m_job, {}, {}, {}});
  });
  return left;
}

void LearningPage::begin(const Goal& goal) {
  m_job = goal.job;
  m_back->setVisible(m_job.has_value());
  refresh();
  if (m_jobs->isVisible()) m_jobs->setFocus();
}

void LearningPage::refresh() {
  auto learning = session().learning();
  if (!learning) {
    emit failed(phrasing::sentence(learning.error()));
    return;
  }
  m_learning = *learning;
  showLead();
  fillScores();
  showMoved();
  fillJobs();
  showJob();
  tabAsLaidOut(*this);
}

void LearningPage::showLead() {
  const auto& report = m_learning->choice.report;
  const auto jobs = static_cast<int>(report.learned.jobs);
  if (jobs == 0) {
    m_lead->setText(tr("The plans reckon with the starting table."));
  } else if (report.useLearned()) {
    m_lead->setText(
        tr("From %1 jobs: the table learned from them forecasts better than the starting table, so "
           "the plans reckon with it.")
            .arg(jobs));
  } else {
    m_lead->setText(
        tr("From %1 jobs: the table learned from them does not forecast better than the starting "
           "table, so the plans go on with that one.")
            .arg(jobs));
  }
  if (m_learning->choice.damping < 1) {
    m_lead->setText(m_lead->text() + QLatin1Char(' ') +
                    tr("Answers count less than by the table (to the power %1): that fits these "
                       "jobs better.")
                        .arg(m_learning->choice.damping));
  }
}

/// The table in use stands out.
void LearningPage::fillScores() {
  clearLayout(*m_scores);
  const auto& report = m_learning->choice.report;
  if (report.learned.jobs == 0) return;
  const auto put = [&](int row, const QStringList& texts, TextRole role, const QString& name) {
    for (int column = 0; column < static_cast<int>(texts.size()); ++column) {
      auto* label = new TextLabel(texts[column], role, this);
      label->setObjectName(QStringLiteral("score_%1_%2").arg(name).arg(column));
      m_scores->addWidget(label, row, column);
      m_scores->setColumnStretch(column, 1);
    }
  };
  const auto rowOf = [&](const QString& name, const diagnosis::Scores& scores) {
    const auto right = std::lround(scores.firstRight * static_cast<double>(scores.jobs));
    return QStringList{name, tr("%1 of %2").arg(right).arg(scores.jobs), score(scores.brier),
                       score(scores.log)};
  };
  const auto roleOf = [](bool used) { return used ? TextRole::Strong : TextRole::Body; };
  put(0,
      {tr("Table"), tr("Led with the cause"), tr("Brier score, 0 to 2"), tr("Log score, from 0")},
      TextRole::Quiet, QStringLiteral("head"));
  put(1, rowOf(tr("learned"), report.learned), roleOf(report.useLearned()),
      QStringLiteral("learned"));
  put(2, rowOf(tr("starting"), report.starting), roleOf(!report.useLearned()),
      QStringLiteral("starting"));
  put(3,
      {tr("a mere guess"), tr("by luck"), score(report.uniform.brier), score(report.uniform.log)},
      TextRole::Body, QStringLiteral("guess"));
}

/// The causes whose share moved most.
void LearningPage::showMoved() {
  const auto lessons = m_learning->lessons();
  const auto& table = m_learning->start.table;
  double weights = 0;
  for (const auto& cause : table.causes) weights += cause.weight;
  struct Moved {
    std::size_t cause;
    double from;
    diagnosis::LearnedNumber to;
  };
  std::vector<Moved> moved;
  for (std::size_t cause = 0; !lessons.empty() && cause < table.causes.size(); ++cause) {
    const double from = table.causes[cause].weight / weights;
    const auto to = diagnosis::learnedWeight(table, lessons, cause);
    if (std::abs(to.value - from) >= kMoved) moved.push_back({cause, from, to});
  }
  std::stable_sort(moved.begin(), moved.end(), [](const Moved& a, const Moved& b) {
    return std::abs(a.to.value - a.from) > std::abs(b.to.value - b.from);
  });
  if (moved.size() > kMostMoved) moved.resize(kMostMoved);
  QStringList lines;
  for (const Moved& one : moved) {
    lines += tr("%1: from %2 to %3 (%4 to %5)")
                 .arg(text(table.causes[one.cause].name), phrasing::ofHundred(one.from),
                      phrasing::ofHundred(one.to.value), phrasing::ofHundred(one.to.low),
                      phrasing::ofHundred(one.to.high));
  }
  if (!lines.isEmpty())
    lines.prepend(
        tr("What moved most, in jobs of 100 (in brackets what would fit these jobs, too):"));
  m_moved->say(lines.join(QLatin1Char('\n')));
}

QString LearningPage::causesText(const workshop::Taught& job) const {
  if (job.closed.causes.empty()) return tr("no fault found");
  QStringList names;
  for (const std::size_t cause : job.closed.causes) {
    names += text(m_learning->start.table.causes[cause].name);
  }
  return names.join(QStringLiteral(", "));
}

void LearningPage::fillJobs() {
  const QSignalBlocker quiet(m_jobs);
  const int before = m_jobs->currentRow();
  const auto shop = session().shop();
  const auto& jobs = m_learning->jobs;
  m_jobs->setRowCount(static_cast<int>(jobs.size()));
  for (int row = 0; row < m_jobs->rowCount(); ++row) {
    const auto& job = jobs[jobs.size() - 1 - static_cast<std::size_t>(row)];  // the newest first
    const auto* vehicle = shop ? (*shop)->vehicle(job.row.vehicle) : nullptr;
    const QString plate = vehicle == nullptr ? QString() : text(vehicle->fact.registration);
    QString counts = tr("counts");
    if (job.takenBack) counts = tr("came back with a shake: does not count");
    if (!job.row.leftOutWhy.empty()) counts = tr("left out: %1").arg(text(job.row.leftOutWhy));
    fillRow(m_jobs, row,
            {tr("%1, job %2\n%3")
                 .arg(plate)
                 .arg(job.row.job.value)
                 .arg(text(toIso(localDate(job.row.endedAt)))),
             causesText(job), counts});
  }
  m_none->setVisible(jobs.empty());
  m_jobs->setVisible(!jobs.empty());
  if (!jobs.empty()) m_jobs->selectRow(std::clamp(before, 0, m_jobs->rowCount() - 1));
}

const workshop::Taught* LearningPage::chosen() const {
  const int row = m_jobs->currentRow();
  const auto& jobs = m_learning->jobs;
  if (row < 0 || row >= static_cast<int>(jobs.size())) return nullptr;
  return &jobs[jobs.size() - 1 - static_cast<std::size_t>(row)];
}

void LearningPage::showJob() {
  const auto* job = chosen();
  const bool out = job != nullptr && !job->row.leftOutWhy.empty();
  const QString ask = out ? tr("Job %1 is left out.") : tr("Is job %1 no lesson? Say why:");
  m_chosen->say(job == nullptr ? QString() : ask.arg(job->row.job.value));
  m_why->setVisible(job != nullptr && !out);
  m_out->setVisible(job != nullptr && !out);
  m_in->setVisible(out);
  m_problem->hide();
}

void LearningPage::leaveOut() {
  const auto* job = chosen();
  if (job == nullptr) return;
  workshop::LeaveOutOfLearning action;
  action.why = m_why->text().trimmed().toStdString();
  if (action.why.empty()) {
    m_problem->say(tr("Type why it is no lesson; the record keeps it."));
    m_why->setFocus();
    return;
  }
  const model::JobId left = job->row.job;
  if (session().perform(action, {left, {}, {}, {}, {}})) m_why->clear();
}

void LearningPage::takeIn() {
  const auto* job = chosen();
  if (job == nullptr) return;
  const model::JobId taken = job->row.job;
  (void)session().perform(workshop::TakeIntoLearning{}, {taken, {}, {}, {}, {}});
}

}  // namespace sw::ui
