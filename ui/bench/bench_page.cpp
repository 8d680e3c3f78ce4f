// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/bench/bench_page.h"

#include <QHBoxLayout>
#include <QLineEdit>
#include <QListWidget>
#include <QResizeEvent>
#include <nlohmann/json.hpp>

#include "compute/calculation.h"
#include "model/json.h"
#include "ui/bench/bench_panel.h"
#include "ui/bench/bench_words.h"
#include "ui/common/page_parts.h"
#include "ui/common/text_label.h"
#include "ui/common/theme.h"
#include "ui/common/word_button.h"
#include "workshop/bench_input.h"

namespace sw::ui {

namespace {

using compute::Subject;

QString nameOf(Subject subject) {
  switch (subject) {
    case Subject::Diagnosis:
      return BenchPage::tr("Causes and checks");
    case Subject::Measuring:
      return BenchPage::tr("Measuring");
    case Subject::Swivel:
      return BenchPage::tr("Swivel bearings and shims");
    case Subject::Brakes:
      return BenchPage::tr("Brake discs");
    case Subject::Bearings:
      return BenchPage::tr("Bearings and play");
    case Subject::Bolts:
      return BenchPage::tr("Bolts and torque");
    case Subject::Wheels:
      return BenchPage::tr("Wheels and tyres");
    case Subject::Geometry:
      return BenchPage::tr("Steering geometry");
    case Subject::Support:
      return BenchPage::tr("Jacks and stands");
  }
  return {};
}

QString draftPlace(const std::string& calculation) {
  return QStringLiteral("bench/") + QString::fromStdString(calculation);
}

constexpr int kName = Qt::UserRole;
constexpr int kWideEms = 55;
constexpr int kLowListEms = 8;
constexpr int kListShare = 2;
constexpr int kPanelShare = 7;

}  // namespace

BenchPage::BenchPage(ShopSession& session, QWidget* parent)
    : Page(session, "benchPage", parent),
      m_find(lineEdit("benchFind", tr("Find a calculation"), tr("a few words: shim, torque, toe"),
                      this)),
      m_list(new QListWidget(this)),
      m_none(new TextLabel(tr("No calculation has these words. Fewer letters find more."),
                           TextRole::Body, this)),
      m_back(new WordButton("benchBack", tr("&Back to the step"), this)),
      m_sides(new QBoxLayout(QBoxLayout::LeftToRight, this)) {
  build();
  fillList();
  connect(m_find, &QLineEdit::textChanged, this, &BenchPage::sift);
  connect(m_find, &QLineEdit::returnPressed, this, [this] {
    for (int row = 0; row < m_list->count(); ++row) {
      QListWidgetItem* item = m_list->item(row);
      if (item->isHidden() || item->data(kName).toString().isEmpty()) continue;
      m_list->setCurrentItem(item);
      if (m_panel != nullptr) m_panel->focusFirst();
      return;
    }
  });
  connect(m_list, &QListWidget::currentItemChanged, this, [this](QListWidgetItem* item) {
    if (item != nullptr) open(item->data(kName).toString().toStdString());
  });
}

void BenchPage::build() {
  m_list->setObjectName(QStringLiteral("benchList"));
  m_list->setAccessibleName(tr("Calculations"));
  m_list->setWordWrap(true);
  m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  m_none->hide();
  m_back->hide();
  connect(m_back, &QPushButton::clicked, this, [this] {
    Goal back = m_from;
    back.page = PageId::Work;
    back.calculation.clear();
    emit goWanted(back);
  });
  auto* left = new QVBoxLayout;
  left->addWidget(new TextLabel(tr("Bench"), TextRole::Heading, this));
  left->addWidget(m_back);
  left->addWidget(m_find);
  left->addWidget(m_none);
  left->addWidget(m_list, 1);
  m_sides->addLayout(left, kListShare);
}

void BenchPage::fillList() {
  std::optional<Subject> subject;
  for (const auto& calculation : compute::calculations()) {
    if (calculation.subject != subject) {
      subject = calculation.subject;
      auto* head = new QListWidgetItem(nameOf(*subject), m_list);
      head->setFlags(Qt::NoItemFlags);
      QFont font = m_list->font();
      font.setBold(true);
      head->setFont(font);
    }
    auto* item = new QListWidgetItem(benchWords(calculation.title), m_list);
    item->setData(kName, benchWords(calculation.name));
  }
}

void BenchPage::sift(const QString& typed) {
  const QStringList words = typed.split(QLatin1Char(' '), Qt::SkipEmptyParts);
  QListWidgetItem* head = nullptr;
  bool any = false;
  for (int row = 0; row < m_list->count(); ++row) {
    QListWidgetItem* item = m_list->item(row);
    const QString name = item->data(kName).toString();
    if (name.isEmpty()) {
      head = item;
      head->setHidden(!words.isEmpty());
      continue;
    }
    const QString all = item->text() + QLatin1Char(' ') + name +
                        (head != nullptr ? QLatin1Char(' ') + head->text() : QString());
    const bool fits = std::all_of(words.begin(), words.end(), [&](const QString& word) {
      return all.contains(word, Qt::CaseInsensitive);
    });
    item->setHidden(!fits);
    any = any || fits;
    if (fits && head != nullptr) head->setHidden(false);
  }
  m_none->setVisible(!any);
}

/// The list beside the calculation where there is room, else above it.
void BenchPage::resizeEvent(QResizeEvent* event) {
  Page::resizeEvent(event);
  const int em = sizesOf(currentTheme().mode).textPixels;
  const bool wide = width() >= kWideEms * em;
  m_sides->setDirection(wide ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
  m_sides->setStretch(0, wide ? kListShare : 0);
  m_list->setMaximumHeight(wide ? QWIDGETSIZE_MAX : kLowListEms * em);
}

void BenchPage::begin(const Goal& goal) {
  m_job = goal.job ? goal.job : session().lastJob();
  m_from = goal;
  m_back->setVisible(!goal.step.empty() && goal.job.has_value());
  if (!goal.calculation.empty()) {
    open(goal.calculation);
    fillFromStep(goal);
  } else if (m_panel == nullptr) {
    open(std::string(compute::calculations().front().name));
  }
  if (m_panel != nullptr) m_panel->setPlace(place());
  if (goal.calculation.empty()) {
    m_find->setFocus();
  } else if (m_panel != nullptr) {
    m_panel->focusFirst();
  }
}

std::optional<Where> BenchPage::place() const {
  if (!m_job) return std::nullopt;
  return Where{m_job, m_from.step, m_from.side, {}, {}};
}

/// What the job knows takes the place of what was typed last.
void BenchPage::fillFromStep(const Goal& goal) {
  if (!goal.job || m_panel == nullptr) return;
  const auto job = session().job(*goal.job);
  if (!job) return;
  workshop::BenchPlace place{std::nullopt, goal.side};
  for (std::size_t step = 0; step < (*job)->steps.size(); ++step) {
    const auto& view = (*job)->steps[step];
    if (whereOf(**job, step).step == goal.step && view.side == goal.side && !view.superseded) {
      place.step = step;
    }
  }
  const auto input = session().benchInput(**job, goal.calculation, place);
  if (!input.empty()) m_panel->show(input);
}

void BenchPage::open(const std::string& name) {
  const auto calculation = compute::findCalculation(name);
  if (!calculation || (name == m_name && m_panel != nullptr)) return;
  m_name = name;
  delete m_panel;
  m_panel = new BenchPanel(session(), *calculation, this);
  m_sides->addWidget(m_panel, kPanelShare);
  m_panel->setPlace(place());
  const QString draft = session().draft(draftPlace(name));
  if (const auto kept = model::parseJson(draft.toStdString())) m_panel->show(*kept);
  connect(m_panel, &BenchPanel::edited, this, [this] {
    session().keepDraft(draftPlace(m_name), QString::fromStdString(m_panel->input().dump()));
  });
  for (int row = 0; row < m_list->count(); ++row) {
    if (m_list->item(row)->data(kName).toString().toStdString() == name) {
      m_list->setCurrentRow(row);
    }
  }
}

}  // namespace sw::ui
