// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/causes/causes_page.h"

#include <QComboBox>
#include <QFormLayout>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>
#include <QtConcurrent/QtConcurrentRun>
#include <algorithm>
#include <array>

#include "compute/diagnosis/cause_input.h"
#include "compute/diagnosis/causes_picture.h"
#include "phrasing/cause_words.h"
#include "ui/bench/figure_view.h"
#include "ui/common/choice_row.h"
#include "ui/common/clear_layout.h"
#include "ui/common/flow_layout.h"
#include "ui/common/page_parts.h"
#include "ui/common/tab_order.h"
#include "ui/common/text_label.h"
#include "ui/common/word_button.h"

namespace sw::ui {

namespace {

using diagnosis::CauseFile;

constexpr std::size_t kLeading = 4;
constexpr int kPictureRows = 17;      // em
constexpr double kWorthAsking = 0.5;  // minutes
constexpr std::string_view kUnknown = "unknown";

/// What not finding it may cost, in hours: when to stop looking.
constexpr std::array kStops{1.0, 2.0, 4.0, 8.0, 16.0};

QString text(const std::string& words) {
  return QString::fromStdString(words);
}

using Ahead = std::shared_ptr<const workshop::ChecksAhead>;

/// The ranking and the plan, on copies.
Ahead aheadOf(const std::shared_ptr<const workshop::JobState>& job, const CauseFile& file,
              const workshop::CheckWishes& wishes) {
  auto ahead = workshop::checksAhead(*job, file, wishes);
  return ahead ? std::make_shared<const workshop::ChecksAhead>(std::move(*ahead)) : nullptr;
}

/// What each question that is open is worth: a plan for each of its answers.
std::vector<diagnosis::QuestionValue> valuesOf(const Ahead& ahead, const CauseFile& file) {
  std::vector<std::size_t> open;
  for (std::size_t feature = 0; feature < file.table.features.size(); ++feature) {
    if (!ahead->known.hasAnswer(feature)) open.push_back(feature);
  }
  return diagnosis::questionValues(file.table, ahead->known.evidence, ahead->problem, open)
      .value_or(std::vector<diagnosis::QuestionValue>{});
}

}  // namespace

CausesPage::CausesPage(ShopSession& session, QWidget* parent)
    : Page(session, "causesPage", parent) {
  readNumbers();
  build();
  connect(&session, &ShopSession::changed, this, [this] {
    if (isVisible()) refresh();
  });
  connect(&m_planned, &QFutureWatcherBase::finished, this, [this] {
    if (m_again) return workOut();
    present(m_planned.result());
  });
  connect(&m_valued, &QFutureWatcherBase::finished, this, [this] {
    if (m_valuedFor != m_ahead) return valueQuestions();
    m_values = m_valued.result();
    showQuestions();
  });
}

CausesPage::~CausesPage() {
  m_planned.waitForFinished();
  m_valued.waitForFinished();
}

void CausesPage::build() {
  auto* inside = new QWidget(this);
  auto* column = new QVBoxLayout(inside);
  column->addWidget(new TextLabel(tr("What makes it shake?"), TextRole::Heading, inside));
  m_lead = new TextLabel(TextRole::Strong, inside);
  m_lead->setObjectName(QStringLiteral("causesLead"));
  m_picture = new FigureView(inside);
  m_picture->setMaximumHeight(kPictureRows * fontInfo().pixelSize());
  m_why = new WordButton("causesWhy", tr("Why?"), inside);
  m_why->setCheckable(true);
  m_whyText = new TextLabel(TextRole::Body, inside);
  m_whyText->setObjectName(QStringLiteral("causesBecause"));
  m_whyText->hide();
  column->addWidget(m_lead);
  column->addWidget(m_picture);
  column->addWidget(m_why, 0, Qt::AlignLeft);
  column->addWidget(m_whyText);
  connect(m_why, &QPushButton::toggled, this,
          [this](bool on) { m_whyText->setVisible(on && !m_whyText->text().isEmpty()); });
  buildQuestions(column);
  column->addWidget(new TextLabel(tr("What to look at next"), TextRole::Heading, inside));
  m_planWords = new TextLabel(TextRole::Strong, inside);
  m_planWords->setObjectName(QStringLiteral("planWords"));
  m_made = new QVBoxLayout;
  m_plan = new QVBoxLayout;
  column->addWidget(m_planWords);
  column->addLayout(m_plan);
  column->addLayout(m_made);
  buildWishes(column);
  column->addWidget(new TextLabel(
      tr("Chances and minutes are starting values, common practice, no source. Likely is not "
         "found: a part is to blame when its own check shows it."),
      TextRole::Quiet, inside));
  column->addStretch(1);
  auto* around = new QVBoxLayout(this);
  around->setContentsMargins(0, 0, 0, 0);
  around->addWidget(scrolled(inside, "causesScroll", this));
}

void CausesPage::buildQuestions(QVBoxLayout* column) {
  m_firstQuestion = new TextLabel(TextRole::Strong, this);
  m_firstQuestion->setObjectName(QStringLiteral("firstQuestion"));
  column->addWidget(m_firstQuestion);
  for (std::size_t feature = 0; feature < m_file.table.features.size(); ++feature) {
    const auto& one = m_file.table.features[feature];
    std::vector<ChoiceRow::Answer> answers;
    for (const auto& answer : one.answers) answers.emplace_back(answer.word, text(answer.text));
    answers.emplace_back(kUnknown, tr("Not known"));
    Question question{feature, new ChoiceRow(QStringLiteral("tell_") + text(one.key), text(one.ask),
                                             answers, this)};
    question.row->leaveToSpace();
    column->addWidget(question.row);
    connect(question.row, &ChoiceRow::answered, this, [this, question] { answer(question); });
    m_questions.push_back(question);
  }
  m_more = new WordButton("moreQuestions", tr("All questions"), this);
  m_more->setCheckable(true);
  column->addWidget(m_more, 0, Qt::AlignLeft);
  connect(m_more, &QPushButton::toggled, this, [this] { showQuestions(); });
}

void CausesPage::buildWishes(QVBoxLayout* column) {
  column->addWidget(new TextLabel(tr("How you work"), TextRole::Heading, this));
  auto* form = fieldForm();
  m_shop = comboBox("causesShop", tr("The shop"), this);
  for (const auto& preset : m_file.presets) m_shop->addItem(text(preset.name), text(preset.key));
  m_setup = comboBox("causesSetup", tr("The vehicle stands"), this);
  m_setup->addItem(tr("as the job says"), QString());
  for (const auto& setup : m_file.setups) m_setup->addItem(text(setup.name), text(setup.key));
  m_stop = comboBox("causesStop", tr("Stop looking"), this);
  for (const double hours : kStops) {
    m_stop->addItem(
        tr("when about %1 more would not be worth it").arg(phrasing::workTime(hours * 60)),
        QString::number(hours * 60));
  }
  addRow(form, tr("The &shop"), m_shop);
  addRow(form, tr("The &vehicle stands"), m_setup);
  addRow(form, tr("Stop &looking"), m_stop);
  column->addLayout(form);
  m_back = new WordButton("takeAllBack", tr("Take the left-out checks in again"), this);
  column->addWidget(m_back, 0, Qt::AlignLeft);
  connect(m_back, &QPushButton::clicked, this,
          [this] { wish(workshop::leftOutSetting(m_job), {}); });
  connect(m_shop, &QComboBox::activated, this, [this] {
    wish(std::string(workshop::kPresetSetting), m_shop->currentData().toString().toStdString());
  });
  connect(m_setup, &QComboBox::activated, this, [this] {
    wish(workshop::setupSetting(m_job), m_setup->currentData().toString().toStdString());
  });
  connect(m_stop, &QComboBox::activated, this, [this] {
    wish(std::string(workshop::kGivingUpSetting), m_stop->currentData().toString().toStdString());
  });
}

void CausesPage::begin(const Goal& goal) {
  if (!goal.job) return;
  m_job = *goal.job;
  readWishes();
  const auto job = session().job(m_job);
  if (!job) return;
  // The page opens with its plan; from then on answers are worked out beside the window.
  present(aheadOf(*job, m_file, m_wishes));
}

void CausesPage::refresh() {
  readWishes();
  workOut();
}

/// The shop may have put in its own.
void CausesPage::readNumbers() {
  const auto shop = session().shop();
  auto file = shop ? workshop::causesOf(**shop) : Result<CauseFile>{};
  if (shop && file) m_file = std::move(*file);
}

void CausesPage::readWishes() {
  readNumbers();
  auto wishes = workshop::checkWishes(session().workshop().book(), m_job);
  if (wishes) m_wishes = std::move(*wishes);
  fillWishes();
}

void CausesPage::fillWishes() {
  const auto choose = [](QComboBox* box, const std::string& key) {
    const int at = box->findData(text(key));
    box->setCurrentIndex(std::max(0, at));
  };
  choose(m_shop, m_wishes.preset);
  choose(m_setup, m_wishes.setup);
  const double minutes = m_wishes.givingUp.value_or(m_file.fallbackMinutes);
  choose(m_stop, QString::number(minutes).toStdString());
  m_back->setVisible(!m_wishes.leftOut.empty());
}

void CausesPage::workOut() {
  m_again = m_planned.isRunning();
  if (m_again) return;
  const auto job = session().job(m_job);
  if (job) m_planned.setFuture(QtConcurrent::run(aheadOf, *job, m_file, m_wishes));
}

/// The causes and the plan now, the question when it is worked out.
void CausesPage::present(const std::shared_ptr<const workshop::ChecksAhead>& ahead) {
  if (!ahead) return;
  m_ahead = ahead;
  m_values.clear();
  showLeaders();
  showQuestions();
  showPlan();
  showMade();
  tabAsLaidOut(*this);
  if (!m_valued.isRunning()) valueQuestions();
}

void CausesPage::valueQuestions() {
  m_valuedFor = m_ahead;
  m_valued.setFuture(QtConcurrent::run(valuesOf, m_ahead, m_file));
}

QString CausesPage::whyText(std::size_t place) const {
  const auto& cause = m_ahead->ranking.causes[place];
  QStringList lines;
  for (const auto& shift : cause.shifts) {
    const auto& evidence = m_ahead->known.evidence[shift.evidence];
    const QString speaks = phrasing::speaksWords(cause.probability, shift.without);
    if (speaks == phrasing::speaksWords(0.5, 0.5)) continue;  // hardly matters
    lines += tr("%1: %2").arg(text(compute::evidenceWords(m_file, evidence)), speaks);
  }
  if (lines.isEmpty())
    lines += tr("nothing told speaks for or against it; it is how often it is met");
  return text(m_file.table.causes[cause.cause].name) + QStringLiteral("\n   ") +
         lines.join(QStringLiteral("\n   "));
}

void CausesPage::showLeaders() {
  const auto& causes = m_ahead->ranking.causes;
  std::vector<compute::CauseBar> bars;
  QStringList why;
  for (std::size_t i = 0; i < causes.size(); ++i) {
    const double p = causes[i].probability;
    bars.push_back(
        {m_file.table.causes[causes[i].cause].name, p, phrasing::likelihoodWords(p).toStdString()});
    if (i < kLeading) why += whyText(i);
  }
  m_lead->say(tr("Look first for %1: %2.").arg(text(bars.front().name), text(bars.front().words)));
  if (m_ahead->ranking.surprising) {
    m_lead->say(m_lead->text() + QLatin1Char(' ') +
                tr("These answers hardly go together: ask again, or two faults are there."));
  }
  m_picture->show([bars](figure::Size size) { return compute::causesPicture(bars, size); });
  m_whyText->setText(why.join(QStringLiteral("\n")));
  m_whyText->setVisible(m_why->isChecked());
}

void CausesPage::showQuestions() {
  if (!m_ahead) return;
  std::optional<std::size_t> best;
  if (!m_values.empty() && m_values.front().minutes >= kWorthAsking) {
    best = m_values.front().feature;
    m_firstQuestion->say(tr("Worth asking first: the answer saves about %1")
                             .arg(phrasing::workTime(m_values.front().minutes)));
  } else {
    m_firstQuestion->say(tr("What was told"));
  }
  for (const Question& question : m_questions) {
    const auto& told = m_ahead->known.told;
    const auto given = std::find_if(
        told.begin(), told.end(), [&](const auto& one) { return one.feature == question.feature; });
    const bool shown = m_more->isChecked() || best == question.feature;
    question.row->setVisible(shown);
    if (given == told.end()) {
      question.row->clear();
    } else {
      question.row->choose(m_file.table.features[question.feature].answers[given->answer].word);
    }
  }
}

void CausesPage::showMade() {
  clearLayout(*m_made);
  for (const auto& made : m_ahead->known.made) {
    QString result = made.clear ? tr("nothing found") : tr("could not be told");
    if (!made.found.empty()) {
      QStringList names;
      for (const std::size_t cause : made.found) names += text(m_file.table.causes[cause].name);
      result = tr("found: %1").arg(names.join(QStringLiteral(", ")));
      if (!made.waitsFor.empty()) {
        result += tr("; proves nothing before play was looked for");
      }
    }
    m_made->addWidget(
        new TextLabel(tr("Made: %1 – %2").arg(text(m_file.checks[made.check].name), result),
                      TextRole::Body, this));
  }
}

void CausesPage::showPlan() {
  clearLayout(*m_plan);
  const auto& plan = m_ahead->plan;
  showFound();
  if (plan.steps.empty()) {
    m_planWords->say(
        tr("No check left is worth its time: look again where the signs point, or "
           "hand it on."));
    return;
  }
  m_planWords->say(tr("In this order, until it is found or given up: about %1 on average.")
                       .arg(phrasing::workTime(plan.minutes)));
  for (std::size_t i = 0; i < plan.steps.size(); ++i) addCheck(i);
}

/// What a check found is put right before the search goes on.
void CausesPage::showFound() {
  const auto& known = m_ahead->known;
  for (const auto& made : known.made) {
    if (!made.waitsFor.empty()) continue;
    for (const std::size_t cause : made.found) {
      const auto& done = known.repaired;
      if (std::find(done.begin(), done.end(), cause) == done.end()) addFound(cause);
    }
  }
}

/// A cause that was found, and the plan that puts it right.
void CausesPage::addFound(std::size_t cause) {
  const auto& one = m_file.table.causes[cause];
  m_plan->addWidget(
      new TextLabel(tr("Found: %1. Put it right, drive, and ask again.").arg(text(one.name)),
                    TextRole::Strong, this));
  const auto repair = std::find_if(m_file.repairs.begin(), m_file.repairs.end(),
                                   [&](const auto& each) { return each.cause == cause; });
  const auto* plan =
      repair == m_file.repairs.end() ? nullptr : session().library().plan(repair->plan);
  if (plan == nullptr) return;
  auto* start = new WordButton("repair", tr("Add to the job: %1").arg(text(plan->title)), this);
  start->setObjectName(QStringLiteral("repair_") + text(one.key));
  connect(start, &QPushButton::clicked, this, [this, id = plan->id] {
    workshop::StartPlan action;
    action.plan = id;
    (void)session().perform(action, {m_job, {}, {}, {}, {}});
  });
  m_plan->addWidget(start, 0, Qt::AlignLeft);
}

/// One line of the plan with its two buttons.
void CausesPage::addCheck(std::size_t place) {
  const auto& step = m_ahead->plan.steps[place];
  const auto& check = m_file.checks[step.check];
  QString words =
      tr("%1. %2: %3")
          .arg(place + 1)
          .arg(text(check.name), phrasing::workTime(m_ahead->problem.checks[step.check].minutes));
  if (step.moveMinutes > 0) {
    words += tr(", after %1 of set-up (%2)")
                 .arg(phrasing::workTime(step.moveMinutes), text(m_file.setups[step.setup].name));
  }
  const auto& others = m_ahead->plan.beginnings;
  const auto other = std::find_if(others.begin(), others.end(),
                                  [&](const auto& one) { return one.check == step.check; });
  if (place > 0 && other != others.end()) {
    const double more = other->minutes - m_ahead->plan.minutes;
    if (more >= 1) words += tr("; taken first, %1 more on average").arg(phrasing::workTime(more));
  }
  m_plan->addWidget(new TextLabel(words, place == 0 ? TextRole::Strong : TextRole::Body, this));
  auto* row = new QWidget(this);  // goes with all that is in it
  auto* buttons = new FlowLayout(row);
  buttons->setContentsMargins(0, 0, 0, 0);
  auto* now = new WordButton("make", tr("Do this check"), this);
  now->setObjectName(QStringLiteral("make_") + text(check.key));
  now->setAccessibleName(tr("Do this check: %1").arg(text(check.name)));
  connect(now, &QPushButton::clicked, this, [this, at = step.check] { make(at); });
  buttons->addWidget(now);
  m_plan->addWidget(row);
  if (check.first) return;  // what keeps a driver safe is not left out
  auto* out = new WordButton("out", tr("Leave it out"), this);
  out->setObjectName(QStringLiteral("out_") + text(check.key));
  out->setAccessibleName(tr("Leave it out: %1").arg(text(check.name)));
  connect(out, &QPushButton::clicked, this, [this, at = step.check] { leaveOut(at); });
  buttons->addWidget(out);
}

void CausesPage::answer(const Question& question) {
  const auto word = question.row->chosen();
  if (!word) return;
  workshop::TellOfShake told;
  told.feature = m_file.table.features[question.feature].key;
  told.answer = *word;
  (void)session().perform(told, {m_job, {}, {}, {}, {}});
}

void CausesPage::make(std::size_t check) {
  workshop::StartProcedure start;
  start.procedure = m_file.checks[check].procedure;
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

void CausesPage::leaveOut(std::size_t check) {
  std::string keys;
  for (const std::string& key : m_wishes.leftOut) keys += key + " ";
  wish(workshop::leftOutSetting(m_job), keys + m_file.checks[check].key);
}

void CausesPage::wish(const std::string& setting, const std::string& value) {
  workshop::SetSetting set;
  set.key = setting;
  set.value = value;
  (void)session().perform(set);
  refresh();
}

}  // namespace sw::ui
