// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/kit/kit_page.h"

#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>
#include <algorithm>

#include "phrasing/error_sentence.h"
#include "ui/common/bring_into_view.h"
#include "ui/common/flow_layout.h"
#include "ui/common/tab_order.h"
#include "ui/common/text_label.h"
#include "ui/kit/kit_row.h"

namespace sw::ui {

using workshop::KitLine;
using workshop::KitTick;

KitPage::KitPage(ShopSession& session, QWidget* parent)
    : Page(session, "kitPage", parent),
      m_title(new TextLabel(TextRole::Heading, this)),
      m_open(new TextLabel(TextRole::Strong, this)),
      m_empty(new TextLabel(tr("This job has no plan yet: what to lay out follows from the plan."),
                            TextRole::Body, this)),
      m_plan(new QPushButton(tr("Go and make a &plan"), this)),
      m_scroll(new QScrollArea(this)),
      m_list(new QVBoxLayout),
      m_work(new QPushButton(tr("Go to &work"), this)) {
  build();
  layOut();
  connect(m_plan, &QPushButton::clicked, this, [this] {
    // The plan follows from the complaint; without that page a filled-in card can start it.
    const PageId page = PageId::Complaint;
    emit goWanted({page, m_job, {}, {}, {}});
  });
  connect(m_work, &QPushButton::clicked, this, [this] {
    const PageId page = PageId::Work;
    emit goWanted({page, m_job, {}, {}, {}});
  });
  connect(&this->session(), &ShopSession::changed, this, [this] {
    if (isVisible()) rebuild();
  });
}

void KitPage::build() {
  m_open->setObjectName(QStringLiteral("kitOpen"));
  m_empty->setObjectName(QStringLiteral("kitEmpty"));
  m_plan->setObjectName(QStringLiteral("kitPlan"));
  m_scroll->setObjectName(QStringLiteral("kitScroll"));
  m_scroll->setFocusPolicy(Qt::NoFocus);
  m_scroll->setFrameShape(QFrame::NoFrame);
  m_scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  m_scroll->setWidgetResizable(true);
  m_work->setObjectName(QStringLiteral("kitWork"));
}

void KitPage::layOut() {
  auto* inside = new QWidget(m_scroll);
  auto* around = new QVBoxLayout(inside);
  around->addLayout(m_list);
  around->addStretch(1);
  m_scroll->setWidget(inside);
  auto* column = new QVBoxLayout(this);
  column->addWidget(m_title);
  column->addWidget(m_empty);
  column->addWidget(m_plan, 0, Qt::AlignLeft);
  column->addWidget(m_scroll, 1);
  auto* bottom = new QHBoxLayout;
  bottom->addWidget(m_open, 1);
  bottom->addWidget(m_work);
  column->addLayout(bottom);
}

void KitPage::begin(const Goal& goal) {
  if (!goal.job) return;
  m_job = *goal.job;
  rebuild();
  const auto open = std::find_if(m_rows.begin(), m_rows.end(), [](const KitRow* row) {
    return row->stillNeeded() && row->tick() == KitTick::Open;
  });
  QWidget* first = open != m_rows.end() ? static_cast<QWidget*>((*open)->have()) : m_work;
  if (!m_plan->isHidden()) first = m_plan;
  first->setFocus();
  if (open != m_rows.end()) bringIntoView(*m_scroll, **open);
}

void KitPage::rebuild() {
  while (QLayoutItem* item = m_list->takeAt(0)) {
    delete item->widget();
    delete item;
  }
  m_rows.clear();
  m_title->setText(tr("Kit of job %1").arg(m_job.value));
  const auto job = session().job(m_job);
  const auto ticks = workshop::kitTicks(session().workshop().book(), m_job);
  if (!job) emit failed(phrasing::sentence(job.error()));
  m_ticks = ticks ? *ticks : std::map<std::string, KitTick>{};
  const auto lines = job ? workshop::kitOf(**job) : std::vector<KitLine>{};
  m_empty->setVisible(lines.empty());
  m_plan->setVisible(lines.empty());
  m_scroll->setVisible(!lines.empty());
  m_open->setVisible(!lines.empty());
  m_work->setVisible(!lines.empty());
  addRows(lines);
  tabAsLaidOut(*this);
  count();
}

void KitPage::addRows(const std::vector<KitLine>& lines) {
  std::optional<KitLine::Kind> kind;
  for (const KitLine& line : lines) {
    if (line.kind != kind) {
      kind = line.kind;
      const QString head = line.kind == KitLine::Kind::Tool   ? tr("Tools")
                           : line.kind == KitLine::Kind::Part ? tr("Parts")
                                                              : tr("Consumables");
      m_list->addWidget(new TextLabel(head, TextRole::Heading, m_scroll->widget()));
    }
    const auto ticked = m_ticks.find(line.key);
    auto* row = new KitRow(line, ticked == m_ticks.end() ? KitTick::Open : ticked->second,
                           m_scroll->widget());
    for (auto* button : row->findChildren<QPushButton*>()) {
      button->setEnabled(!session().viewOnly());
    }
    connect(row, &KitRow::ticked, this,
            [this](const QString& key, KitTick tick) { this->tick(key.toStdString(), tick); });
    m_list->addWidget(row);
    m_rows.push_back(row);
  }
}

void KitPage::tick(const std::string& key, KitTick tick) {
  const auto kept = workshop::setKitTick(session().workshop().book(), m_job, key, tick);
  if (!kept) emit failed(phrasing::sentence(kept.error()));
  count();
}

void KitPage::count() {
  int open = 0;
  int missing = 0;
  for (const KitRow* row : m_rows) {
    if (!row->stillNeeded()) continue;
    open += row->tick() == KitTick::Open ? 1 : 0;
    missing += row->tick() == KitTick::Missing ? 1 : 0;
  }
  m_open->setText(open + missing == 0
                      ? tr("All that is still needed is laid out.")
                      : tr("Still to look for: %1. Missing: %2.").arg(open).arg(missing));
}

}  // namespace sw::ui
