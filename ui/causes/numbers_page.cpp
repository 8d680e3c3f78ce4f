// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/causes/numbers_page.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QTableWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "diagnosis/shipped_causes.h"
#include "phrasing/error_sentence.h"
#include "ui/common/clear_layout.h"
#include "ui/common/flow_layout.h"
#include "ui/common/page_parts.h"
#include "ui/common/tab_order.h"
#include "ui/common/text_label.h"
#include "ui/common/word_button.h"
#include "workshop/checks_ahead.h"

namespace sw::ui {

namespace {

constexpr int kFieldWidth = 6;  // em

}  // namespace

NumbersPage::NumbersPage(ShopSession& session, QWidget* parent)
    : Page(session, "numbersPage", parent),
      m_items(numberItems(diagnosis::shippedCauses())),
      m_table(rowTable("numbersTable", tr("What the numbers belong to"),
                       {tr("Of what"), tr("Numbers")}, this)),
      m_count(new TextLabel(TextRole::Strong, this)),
      m_allBack(new WordButton("allNumbersBack", tr("Take all shipped numbers again"), this)),
      m_title(new TextLabel(TextRole::Heading, this)),
      m_problem(new TextLabel(TextRole::Strong, this)),
      m_save(new QPushButton(tr("&Save the numbers"), this)),
      m_back(new WordButton("itemNumbersBack", tr("Take the shipped ones of this again"), this)) {
  m_count->setObjectName(QStringLiteral("ownCount"));
  m_title->setObjectName(QStringLiteral("numbersTitle"));
  m_problem->setObjectName(QStringLiteral("numbersProblem"));
  m_problem->hide();
  m_title->setWordWrap(true);
  m_save->setObjectName(QStringLiteral("saveNumbers"));
  m_table->horizontalHeader()->setSectionResizeMode(1, QHeaderView::ResizeToContents);
  layOut();
  connect(m_table, &QTableWidget::itemSelectionChanged, this, [this] {
    const int row = m_table->currentRow();
    if (row >= 0) showItem(static_cast<std::size_t>(row));
  });
  connect(m_save, &QPushButton::clicked, this, &NumbersPage::save);
  connect(m_back, &QPushButton::clicked, this, [this] { giveBack(m_items[m_item].path); });
  connect(m_allBack, &QPushButton::clicked, this, [this] {
    if (record({})) emit said(tr("All numbers are the shipped ones again."));
  });
  connect(&session, &ShopSession::changed, this, [this] {
    if (isVisible()) refresh();
  });
}

void NumbersPage::layOut() {
  auto* inside = new QWidget(this);
  auto* column = new QVBoxLayout(inside);
  column->setContentsMargins(0, 0, column->contentsMargins().right(), 0);
  column->addWidget(m_title);
  column->addWidget(new TextLabel(
      tr("What is yours stands bold. An empty field takes the shipped number, which stands in it "
         "grey: a starting value, common practice, no source. Of a question with several answers, "
         "those left empty share "
         "what is left of 100."),
      TextRole::Quiet, inside));
  auto* buttons = new FlowLayout;
  buttons->addWidget(m_save);
  buttons->addWidget(m_back);
  column->addLayout(buttons);
  column->addWidget(m_problem);
  m_form = new QVBoxLayout;
  column->addLayout(m_form);
  column->addStretch(1);
  auto* columns = new QHBoxLayout(this);
  columns->addWidget(laidOutList(), 1);
  columns->addWidget(scrolled(inside, "numbersScroll", this), 1);
}

QWidget* NumbersPage::laidOutList() {
  auto* list = new QWidget(this);
  auto* column = new QVBoxLayout(list);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(new TextLabel(tr("The shop's numbers"), TextRole::Heading, list));
  column->addWidget(
      new TextLabel(tr("How often a cause is met, how it shows, how long a check takes here."),
                    TextRole::Body, list));
  auto* buttons = new FlowLayout;
  auto* taught = new WordButton("toLearning", tr("What ended jobs taught"), list);
  m_toCauses = new WordButton("backToCauses", tr("Back to the causes"), list);
  buttons->addWidget(taught);
  buttons->addWidget(m_toCauses);
  column->addLayout(buttons);
  column->addWidget(m_count);
  column->addWidget(m_table, 1);
  auto* below = new FlowLayout;
  below->addWidget(m_allBack);
  column->addLayout(below);
  connect(taught, &QPushButton::clicked, this, [this] {
    const PageId page = PageId::Learning;
    emit goWanted({page, m_job, {}, {}, {}});
  });
  connect(m_toCauses, &QPushButton::clicked, this, [this] {
    const PageId page = PageId::Causes;
    emit goWanted({page, m_job, {}, {}, {}});
  });
  return list;
}

void NumbersPage::begin(const Goal& goal) {
  m_job = goal.job;
  m_toCauses->setVisible(m_job.has_value());
  refresh();
  showItem(m_item);
  m_table->setFocus();
}

void NumbersPage::refresh() {
  const auto shop = session().shop();
  if (!shop) return;
  auto file = workshop::causesOf(**shop);
  if (!file) return complain(file.error());
  m_own = (*shop)->causeNumbers();
  m_file = std::move(*file);
  fillList();
  if (m_fields) buildForm();
}

void NumbersPage::fillList() {
  const auto all = diagnosis::ownAmong(diagnosis::numbersOf(m_file), m_own);
  m_ownNames.clear();
  for (const auto& one : all) m_ownNames.insert(numberName(one.path));
  const QSignalBlocker quiet(m_table);
  m_table->setRowCount(static_cast<int>(m_items.size()));
  for (std::size_t i = 0; i < m_items.size(); ++i) {
    const auto own = std::count_if(all.begin(), all.end(), [&](const diagnosis::NumberPlace& one) {
      return belongsTo(one, m_items[i]);
    });
    const int row = static_cast<int>(i);
    fillRow(m_table, row,
            {m_items[i].name,
             own > 0 ? tr("%n of your own", "", static_cast<int>(own)) : tr("shipped")});
    QFont font = m_table->font();
    font.setBold(own > 0);
    m_table->item(row, 1)->setFont(font);
  }
  m_table->selectRow(static_cast<int>(m_item));
  m_count->setText(all.empty() ? tr("All numbers are the shipped ones.")
                               : tr("Numbers of your own: %1").arg(all.size()));
  m_allBack->setVisible(!all.empty());
}

void NumbersPage::showItem(std::size_t item) {
  if (m_fields) keepDraft();
  dropFields();
  m_item = item;
  buildForm();
}

/// Later: it may be the one that tells of the Return key just now.
void NumbersPage::dropFields() {
  if (!m_fields) return;
  m_fields->disconnect(this);
  m_fields.release()->deleteLater();
}

/// The fields of the item; what was typed and not saved stands in them again.
void NumbersPage::buildForm() {
  if (m_fields) keepDraft();
  clearLayout(*m_form);
  m_problem->hide();
  m_title->setText(m_items[m_item].name);
  dropFields();
  m_fields = std::make_unique<FormFields>();
  const FieldTexts own = addFields();
  m_fields->show(own);
  m_fields->takeDraft(session().draft(place()));
  connect(m_fields.get(), &FormFields::settled, this, &NumbersPage::keepDraft);
  connect(m_fields.get(), &FormFields::entered, this, &NumbersPage::save);
  m_back->setVisible(!own.empty());
  tabAsLaidOut(*this);
}

/// A field for each number of the item, under their headings; gives those that are the shop's own.
FieldTexts NumbersPage::addFields() {
  auto* holder = new QWidget(this);
  m_form->addWidget(holder);
  auto* column = new QVBoxLayout(holder);
  column->setContentsMargins(0, 0, 0, 0);
  FieldTexts own;
  QString group;
  QGridLayout* grid = nullptr;
  m_places.clear();
  for (const auto& place : diagnosis::numbersOf(m_file)) {
    if (!belongsTo(place, m_items[m_item])) continue;
    const QString heading = numberGroup(m_file, place);
    if (grid == nullptr || heading != group) {
      if (!heading.isEmpty()) column->addWidget(new TextLabel(heading, TextRole::Strong, holder));
      grid = new QGridLayout;
      grid->setColumnStretch(1, 1);
      column->addLayout(grid);
      group = heading;
    }
    m_places.push_back(place);
    const std::string name = numberName(place.path);
    auto* edit =
        lineEdit(name.c_str(), labelOf(name), roughNumberText(place.kind, place.value), holder);
    edit->setFixedWidth(kFieldWidth * fontInfo().pixelSize());
    auto* words = new TextLabel(numberLabel(m_file, place), TextRole::Body, holder);
    words->setBuddy(edit);
    // The figure first, so that a long answer beside it may wrap.
    const int row = grid->rowCount();
    grid->addWidget(edit, row, 0);
    grid->addWidget(words, row, 1, Qt::AlignVCenter);
    m_fields->add(name, edit);
    if (!m_ownNames.contains(name)) continue;
    own[name] = numberText(place.kind, place.value).toStdString();
    QFont font = edit->font();
    font.setBold(true);
    edit->setFont(font);
  }
  return own;
}

QString NumbersPage::place() const {
  return QStringLiteral("numbers/") + QString::fromStdString(numberName(m_items[m_item].path));
}

void NumbersPage::keepDraft() {
  session().keepDraft(place(), m_fields->draft());
}

void NumbersPage::save() {
  std::vector<diagnosis::NumberChange> changes;
  for (const auto& place : m_places) {
    const std::string name = numberName(place.path);
    const auto typed = m_fields->changed(name);
    if (!typed) continue;
    if (typed->empty()) {
      changes.push_back({place.path, std::nullopt});
      continue;
    }
    const auto value = numberFrom(place.kind, *typed, labelOf(name).toStdString());
    if (!value) {
      complain(value.error());
      m_fields->focus(name);
      return;
    }
    changes.push_back({place.path, *value});
  }
  if (changes.empty()) return;
  const auto numbers = diagnosis::withChanges(diagnosis::shippedCauses(), m_own, changes);
  if (!numbers) {
    complain(numbers.error());
    m_fields->focus(numbers.error().field.substr(1));
    return;
  }
  const QString where = place();
  if (!record(*numbers)) return;
  dropFields();  // what was typed is on record
  session().keepDraft(where, {});
  buildForm();
  emit said(tr("Saved. The plans reckon with these numbers from now on."));
}

void NumbersPage::giveBack(const std::vector<std::string>& path) {
  const QString where = place();
  std::string numbers = m_own;
  if (path.empty()) {  // those that stand alone
    for (const auto& one : m_places) numbers = diagnosis::withoutNumber(numbers, one.path);
  } else {
    numbers = diagnosis::withoutNumber(numbers, path);
  }
  dropFields();  // what was typed goes, too
  session().keepDraft(where, {});
  const bool done = record(numbers);
  buildForm();
  if (done) emit said(tr("These are the shipped numbers again."));
}

bool NumbersPage::record(const std::string& numbers) {
  workshop::SetSetting set;
  set.key = "cause_numbers";
  set.value = numbers;
  return session().perform(set).has_value();
}

/// The label a refusal's field has on this page.
QString NumbersPage::labelOf(const std::string& field) const {
  for (const auto& place : m_places) {
    if (numberName(place.path) != field) continue;
    const QString group = numberGroup(m_file, place);
    const QString label = numberLabel(m_file, place);
    return group.isEmpty() ? label : group + QStringLiteral(" – ") + label;
  }
  return QString::fromStdString(field);
}

void NumbersPage::complain(const Error& error) {
  Error named = error;
  if (named.field.starts_with('/')) named.field = labelOf(named.field.substr(1)).toStdString();
  m_problem->say(phrasing::sentence(named));
}

}  // namespace sw::ui
