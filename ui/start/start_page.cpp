// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/start/start_page.h"

#include <QDate>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QPushButton>
#include <QScrollArea>
#include <QStackedWidget>
#include <QTableWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "phrasing/error_sentence.h"
#include "report/book_lists.h"
#include "ui/common/text_label.h"
#include "ui/common/theme.h"
#include "ui/start/job_card.h"
#include "workshop/step_status.h"

namespace sw::ui {

namespace {

constexpr std::size_t kMostRechecks = 100;  // the most pressing
constexpr std::size_t kMostVehicles = 300;  // the newest; Find knows the others

QString whenText(const report::DueRow& row) {
  QStringList parts;
  if (row.on) {
    parts += QDate(row.on->year, row.on->month, row.on->day).toString(QStringLiteral("yyyy-MM-dd"));
  }
  if (row.atOdometer) parts += QString::fromStdString(row.atOdometer->text());
  return parts.join(QStringLiteral(", "));
}

/// The step that was shown last where it is still open, else the one the job goes on with.
std::optional<std::size_t> stepToGoOnWith(const workshop::JobState& job, const std::string& last) {
  for (std::size_t i = 0; i < job.steps.size() && !last.empty(); ++i) {
    const std::string name = job.stepName(i);
    const bool isLast = name == last || name.substr(0, name.find(" (")) == last;
    if (isLast && workshop::stillOpen(job, i)) return i;
  }
  return workshop::resumePoint(job).step;
}

QTableWidget* table(const char* name, const QString& accessible, const QStringList& heads, int wide,
                    QWidget* parent) {
  auto* made = new QTableWidget(0, static_cast<int>(heads.size()), parent);
  made->setObjectName(QString::fromLatin1(name));
  made->setAccessibleName(accessible);
  made->setHorizontalHeaderLabels(heads);
  made->setEditTriggers(QAbstractItemView::NoEditTriggers);
  made->setSelectionBehavior(QAbstractItemView::SelectRows);
  made->setSelectionMode(QAbstractItemView::SingleSelection);
  made->setTabKeyNavigation(false);
  made->setShowGrid(false);
  made->setWordWrap(true);
  made->verticalHeader()->hide();
  made->verticalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
  made->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
  made->horizontalHeader()->setSectionResizeMode(wide, QHeaderView::Stretch);
  made->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
  return made;
}

void fill(QTableWidget& table, int row, const QStringList& texts) {
  for (int column = 0; column < texts.size(); ++column) {
    table.setItem(row, column, new QTableWidgetItem(texts.at(column)));
  }
}

}  // namespace

StartPage::StartPage(ShopSession& session, QWidget* parent)
    : Page(session, "startPage", parent),
      m_goOn(new QPushButton(this)),
      m_goOnAt(new TextLabel(TextRole::Body, this)),
      m_new(new QPushButton(tr("&New job"), this)),
      m_list(new QWidget(this)),
      m_cards(new QVBoxLayout),
      m_noJobs(new TextLabel(tr("No job is open. Press \"New job\" and type the plate."),
                             TextRole::Body, this)),
      m_vehicles(new QPushButton(tr("&Vehicles"), this)),
      m_right(new TextLabel(TextRole::Heading, this)),
      m_stack(new QStackedWidget(this)),
      m_noDue(new TextLabel(TextRole::Body, this)),
      m_due(table("dueTable", tr("Rechecks due"),
                  {tr("Vehicle"), tr("Recheck"), tr("Due"), tr("State")}, 1, m_stack)),
      m_vehicleTable(table("vehicleTable", tr("Vehicles; Enter opens one"),
                           {tr("Vehicle"), tr("Make, model, owner"), tr("Jobs")}, 1, m_stack)) {
  build();
  layOut();
  link();
}

void StartPage::build() {
  m_goOn->setObjectName(QStringLiteral("goOn"));
  m_goOnAt->setObjectName(QStringLiteral("goOnAt"));
  m_new->setObjectName(QStringLiteral("newJob"));
  m_noDue->setObjectName(QStringLiteral("dueNote"));
  m_vehicles->setObjectName(QStringLiteral("vehicles"));
  m_vehicles->setCheckable(true);
  m_vehicles->setToolTip(tr("The vehicles of the book, the one worked on last first"));
}

QWidget* StartPage::jobColumn() {
  auto* column = new QWidget(this);
  auto* jobs = new QVBoxLayout(column);
  jobs->setContentsMargins(0, 0, 0, 0);
  auto* top = new QHBoxLayout;
  top->addWidget(new TextLabel(tr("Open jobs"), TextRole::Heading, this));
  top->addStretch(1);
  top->addWidget(m_new);
  jobs->addLayout(top);
  jobs->addWidget(m_noJobs);
  auto* inList = new QVBoxLayout(m_list);
  inList->setContentsMargins(0, 0, 0, 0);
  inList->addLayout(m_cards);
  inList->addStretch(1);
  auto* scroll = new QScrollArea(this);
  scroll->setObjectName(QStringLiteral("jobScroll"));
  scroll->setFocusPolicy(Qt::NoFocus);
  scroll->setFrameShape(QFrame::NoFrame);
  scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  scroll->setWidgetResizable(true);
  scroll->setWidget(m_list);
  jobs->addWidget(scroll, 1);
  return column;
}

QWidget* StartPage::dueColumn() {
  auto* column = new QWidget(this);
  auto* due = new QVBoxLayout(column);
  due->setContentsMargins(0, 0, 0, 0);
  auto* top = new QHBoxLayout;
  top->addWidget(m_right);
  top->addStretch(1);
  top->addWidget(m_vehicles);
  due->addLayout(top);
  due->addWidget(m_noDue);
  m_stack->addWidget(m_due);
  m_stack->addWidget(m_vehicleTable);
  due->addWidget(m_stack, 1);
  due->addStretch(0);
  return column;
}

void StartPage::layOut() {
  auto* last = new QHBoxLayout;
  last->addWidget(m_goOn);
  last->addWidget(m_goOnAt, 1);
  auto* columns = new QHBoxLayout;
  columns->setSpacing(2 * sizesOf(currentTheme().mode).gap);
  columns->addWidget(jobColumn(), 1);
  columns->addWidget(dueColumn(), 1);
  auto* page = new QVBoxLayout(this);
  page->addLayout(last);
  page->addLayout(columns, 1);
}

void StartPage::link() {
  connect(m_goOn, &QPushButton::clicked, this, [this] {
    if (m_last) emit goWanted(*m_last);
  });
  connect(m_new, &QPushButton::clicked, this, [this] {
    emit goWanted({PageId::NewJob, {}, {}, {}, {}});
  });
  connect(m_vehicles, &QPushButton::toggled, this, &StartPage::refresh);
  connect(m_vehicleTable, &QTableWidget::cellActivated, this, &StartPage::openVehicle);
  // Every open job is derived for its card: not while another page is shown.
  connect(&session(), &ShopSession::changed, this, [this] {
    if (isVisible()) refresh();
  });
}

void StartPage::begin(const Goal&) {
  refresh();
  (m_last ? m_goOn : m_new)->setFocus();
}

void StartPage::refresh() {
  showLast();
  showJobs();
  const bool vehicles = m_vehicles->isChecked();
  m_right->setText(vehicles ? tr("Vehicles") : tr("Due"));
  m_stack->setCurrentWidget(vehicles ? m_vehicleTable : m_due);
  if (vehicles) {
    showVehicles();
  } else {
    showDue();
  }
}

void StartPage::showLast() {
  m_last.reset();
  QString at;
  QString name;
  const auto number = session().lastJob();
  const auto job =
      number ? session().job(*number) : Result<std::shared_ptr<const workshop::JobState>>{};
  if (number && job && !(*job)->closed) {
    const workshop::JobState& state = **job;
    m_last = Goal{PageId::Work, number, {}, {}, {}};
    name = tr("&Go on: %1, job %2")
               .arg(QString::fromStdString(state.vehicle.fact.registration))
               .arg(number->value);
    at = tr("no plan yet");
    if (const auto step = stepToGoOnWith(state, session().lastStep(*number))) {
      const Where where = whereOf(state, *step);
      m_last->step = where.step;
      m_last->side = where.side;
      const workshop::StepView& view = state.steps[*step];
      at = tr("at %1: %2")
               .arg(QString::fromStdString(state.runs[view.run].procedure->title),
                    QString::fromStdString(view.step->title) + (!view.side ? QString()
                                                                : *view.side == model::Side::Left
                                                                    ? tr(" (left)")
                                                                    : tr(" (right)")));
    } else if (!state.runs.empty()) {
      at = tr("every step is done");
    }
  }
  m_goOn->setText(name);
  m_goOn->setAccessibleName(name.remove(QLatin1Char('&')) + QStringLiteral(", ") + at);
  m_goOn->setVisible(m_last.has_value());
  m_goOnAt->say(at);
}

void StartPage::showJobs() {
  while (QLayoutItem* item = m_cards->takeAt(0)) {
    delete item->widget();
    delete item;
  }
  m_cards->setSpacing(sizesOf(currentTheme().mode).gap);
  const auto rows = report::jobRowsOf(session().workshop(), report::WhichJobs::Open);
  m_noJobs->setVisible(!rows || rows->empty());
  if (!rows) {
    m_noJobs->setText(phrasing::sentence(rows.error()));
    return;
  }
  QWidget* before = m_new;
  for (const report::JobRow& row : *rows) {
    auto* card = new JobCard(row, m_list);
    connect(card, &QPushButton::clicked, this, [this, card] {
      emit goWanted({PageId::Work, card->job(), {}, {}, {}});
    });
    m_cards->addWidget(card);
    setTabOrder(before, card);
    before = card;
  }
}

void StartPage::showDue() {
  auto rows = report::dueRowsOf(session().workshop(), kMostRechecks + 1);
  m_due->setRowCount(0);
  const bool more = rows && rows->size() > kMostRechecks;
  if (more) rows->resize(kMostRechecks);
  m_noDue->setVisible(!rows || rows->empty() || more);
  m_noDue->setText(more ? tr("The %1 most pressing rechecks.").arg(kMostRechecks)
                        : tr("Nothing is due. Rechecks of closed jobs show here."));
  m_stack->setVisible(rows && !rows->empty());
  if (!rows) {
    m_noDue->setText(phrasing::sentence(rows.error()));
    return;
  }
  m_due->setRowCount(static_cast<int>(rows->size()));
  for (int i = 0; i < m_due->rowCount(); ++i) {
    const report::DueRow& row = rows->at(static_cast<std::size_t>(i));
    fill(*m_due, i,
         {QString::fromStdString(row.registration), QString::fromStdString(row.what), whenText(row),
          QString::fromStdString(row.state)});
  }
}

void StartPage::showVehicles() {
  m_noDue->hide();
  m_stack->show();
  m_vehicleTable->setRowCount(0);
  m_listed.clear();
  auto rows = report::vehicleRowsOf(session().workshop());
  if (!rows) {
    emit failed(phrasing::sentence(rows.error()));
    return;
  }
  std::stable_sort(rows->begin(), rows->end(),
                   [](const auto& a, const auto& b) { return a.lastOpened > b.lastOpened; });
  rows->resize(std::min(rows->size(), kMostVehicles));
  m_vehicleTable->setRowCount(static_cast<int>(rows->size()));
  for (const report::VehicleRow& row : *rows) {
    const QString jobs = row.openJobs == 0 ? QString::number(row.jobs)
                                           : tr("%1, open %2").arg(row.jobs).arg(row.openJobs);
    QStringList what{QString::fromStdString(row.makeModel), QString::fromStdString(row.owner)};
    what.removeAll(QString());
    fill(*m_vehicleTable, static_cast<int>(m_listed.size()),
         {QString::fromStdString(row.registration), what.join(QStringLiteral("; ")), jobs});
    m_listed.push_back(row.vehicle);
  }
}

void StartPage::openVehicle(int row) {
  if (row < 0 || row >= static_cast<int>(m_listed.size())) return;
  const PageId page = PageId::Vehicle;
  emit goWanted({page, {}, m_listed[static_cast<std::size_t>(row)], {}, {}});
}

}  // namespace sw::ui
