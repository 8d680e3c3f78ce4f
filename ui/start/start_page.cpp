// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/start/start_page.h"

#include <QDate>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLocale>
#include <QPushButton>
#include <QScrollArea>
#include <QTableWidget>
#include <QVBoxLayout>

#include "phrasing/error_sentence.h"
#include "report/book_lists.h"
#include "ui/common/text_label.h"
#include "ui/common/theme.h"
#include "ui/start/job_card.h"

namespace sw::ui {

namespace {

QString whenText(const report::DueRow& row) {
  QStringList parts;
  if (row.on) {
    parts += QDate(row.on->year, row.on->month, row.on->day).toString(QStringLiteral("yyyy-MM-dd"));
  }
  if (row.atOdometer) parts += QString::fromStdString(row.atOdometer->text());
  return parts.join(QStringLiteral(", "));
}

}  // namespace

StartPage::StartPage(ShopSession& session, QWidget* parent)
    : Page(session, "startPage", parent),
      m_new(new QPushButton(tr("&New job"), this)),
      m_cards(new QVBoxLayout),
      m_noJobs(new TextLabel(tr("No job is open. Press \"New job\" and type the plate."),
                             TextRole::Body, this)),
      m_due(new QTableWidget(0, 4, this)),
      m_noDue(new TextLabel(tr("Nothing is due. Rechecks of closed jobs show here."),
                            TextRole::Body, this)) {
  m_new->setObjectName(QStringLiteral("newJob"));
  m_new->setDefault(true);
  connect(m_new, &QPushButton::clicked, this, [this] {
    emit goWanted({PageId::NewJob, {}, {}, {}, {}});
  });

  m_due->setObjectName(QStringLiteral("dueTable"));
  m_due->setAccessibleName(tr("Rechecks due"));
  m_due->setHorizontalHeaderLabels({tr("Vehicle"), tr("Recheck"), tr("Due"), tr("State")});
  m_due->setEditTriggers(QAbstractItemView::NoEditTriggers);
  m_due->setSelectionBehavior(QAbstractItemView::SelectRows);
  m_due->setTabKeyNavigation(false);
  m_due->setShowGrid(false);
  m_due->verticalHeader()->hide();
  m_due->verticalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
  m_due->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
  m_due->horizontalHeader()->setSectionResizeMode(1, QHeaderView::Stretch);
  m_due->horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
  m_due->setWordWrap(true);

  auto* jobs = new QVBoxLayout;
  auto* top = new QHBoxLayout;
  top->addWidget(new TextLabel(tr("Open jobs"), TextRole::Heading, this));
  top->addStretch(1);
  top->addWidget(m_new);
  jobs->addLayout(top);
  jobs->addWidget(m_noJobs);
  auto* list = new QWidget(this);
  auto* inList = new QVBoxLayout(list);
  inList->setContentsMargins(0, 0, 0, 0);
  m_cards->setSpacing(sizesOf(currentTheme().mode).gap);
  inList->addLayout(m_cards);
  inList->addStretch(1);
  auto* scroll = new QScrollArea(this);
  scroll->setObjectName(QStringLiteral("jobScroll"));
  scroll->setFocusPolicy(Qt::NoFocus);
  scroll->setFrameShape(QFrame::NoFrame);
  scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  scroll->setWidgetResizable(true);
  scroll->setWidget(list);
  jobs->addWidget(scroll, 1);
  auto* due = new QVBoxLayout;
  due->addWidget(new TextLabel(tr("Due"), TextRole::Heading, this));
  due->addWidget(m_noDue);
  due->addWidget(m_due, 1);
  due->addStretch(0);
  auto* columns = new QHBoxLayout(this);
  columns->setSpacing(2 * sizesOf(currentTheme().mode).gap);
  columns->addLayout(jobs, 1);
  columns->addLayout(due, 1);
  // Every open job is derived for its card: not while another page is shown.
  connect(&session, &ShopSession::changed, this, [this] {
    if (isVisible()) refresh();
  });
}

void StartPage::begin(const Goal&) {
  refresh();
  m_new->setFocus();
}

void StartPage::refresh() {
  showJobs();
  showDue();
}

void StartPage::showJobs() {
  while (QLayoutItem* item = m_cards->takeAt(0)) {
    delete item->widget();
    delete item;
  }
  const auto rows = report::jobRowsOf(session().workshop(), report::WhichJobs::Open);
  m_noJobs->setVisible(!rows || rows->empty());
  if (!rows) {
    m_noJobs->setText(phrasing::sentence(rows.error()));
    return;
  }
  for (const report::JobRow& row : *rows) {
    auto* card = new JobCard(row, this);
    connect(card, &QPushButton::clicked, this, [this, card] {
      emit goWanted({PageId::Work, card->job(), {}, {}, {}});
    });
    m_cards->addWidget(card);
  }
}

void StartPage::showDue() {
  const auto rows = report::dueRowsOf(session().workshop());
  m_due->setRowCount(0);
  m_noDue->setVisible(!rows || rows->empty());
  m_due->setVisible(rows && !rows->empty());
  if (!rows) {
    m_noDue->setText(phrasing::sentence(rows.error()));
    return;
  }
  m_due->setRowCount(static_cast<int>(rows->size()));
  for (int i = 0; i < m_due->rowCount(); ++i) {
    const report::DueRow& row = rows->at(static_cast<std::size_t>(i));
    const QString texts[] = {QString::fromStdString(row.registration),
                             QString::fromStdString(row.what), whenText(row),
                             QString::fromStdString(row.state)};
    for (int column = 0; column < 4; ++column) {
      m_due->setItem(i, column, new QTableWidgetItem(texts[column]));
    }
  }
}

}  // namespace sw::ui
