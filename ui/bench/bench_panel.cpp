// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/bench/bench_panel.h"

#include <QElapsedTimer>
#include <QFormLayout>
#include <QHeaderView>
#include <QLineEdit>
#include <QResizeEvent>
#include <QScrollArea>
#include <QTableWidget>
#include <QTimer>
#include <QVBoxLayout>
#include <nlohmann/json.hpp>

#include "compute/readable.h"
#include "phrasing/error_sentence.h"
#include "ui/bench/bench_field.h"
#include "ui/bench/bench_words.h"
#include "ui/bench/figure_view.h"
#include "ui/bench/method_card.h"
#include "ui/common/clear_layout.h"
#include "ui/common/flow_layout.h"
#include "ui/common/form.h"
#include "ui/common/page_parts.h"
#include "ui/common/tab_order.h"
#include "ui/common/text_label.h"
#include "ui/common/theme.h"
#include "ui/common/word_button.h"

namespace sw::ui {

namespace {

using compute::FieldDescription;
using compute::Presence;
using model::Json;

constexpr std::size_t kColumnsThatFit = 5;
constexpr int kMostTableRows = 12;  // shown without scrolling
constexpr int kWideInTargets = 60;  // em
constexpr int kFrame = 16;          // ms
constexpr int kPause = 250;         // ms

/// Fields nobody types on a bench: the start of random numbers.
bool isOffBench(const FieldDescription& field) {
  return field.name == "seed" || !BenchField::canShow(field);
}

}  // namespace

BenchPanel::BenchPanel(ShopSession& session, const compute::Calculation& calculation,
                       QWidget* parent)
    : QWidget(parent),
      m_session(session),
      m_calculation(calculation),
      m_description(calculation.describe()),
      m_pause(new QTimer(this)) {
  m_pause->setSingleShot(true);
  m_pause->setInterval(kPause);
  connect(m_pause, &QTimer::timeout, this, &BenchPanel::work);
  build();
  work();
  tabAsLaidOut(*this);
}

void BenchPanel::build() {
  m_sides = new QBoxLayout(QBoxLayout::LeftToRight, this);
  m_sides->setContentsMargins(0, 0, 0, 0);
  auto* form = new QWidget;
  auto* formColumn = new QVBoxLayout(form);
  formColumn->setContentsMargins(0, 0, 0, 0);
  auto* title = new TextLabel(benchWords(m_description.title), TextRole::Heading, form);
  title->setWordWrap(true);
  formColumn->addWidget(title);
  buildForm(formColumn);
  formColumn->addStretch(1);
  auto* answer = new QWidget;
  auto* answerColumn = new QVBoxLayout(answer);
  answerColumn->setContentsMargins(0, 0, 0, 0);
  m_state = new TextLabel(TextRole::Strong, answer);
  m_state->setObjectName(QStringLiteral("benchState"));
  answerColumn->addWidget(m_state);
  buildAnswer(answerColumn);
  answerColumn->addWidget(new MethodCard(m_description, answer));
  answerColumn->addStretch(1);
  m_sides->addWidget(scrolled(form, "benchFormScroll", this), 1);
  m_sides->addWidget(scrolled(answer, "benchAnswerScroll", this), 1);
}

/// Side by side where both have room; else the answer stays above the form.
void BenchPanel::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  const bool wide = width() >= kWideInTargets * sizesOf(currentTheme().mode).textPixels;
  m_sides->setDirection(wide ? QBoxLayout::LeftToRight : QBoxLayout::BottomToTop);
}

void BenchPanel::buildForm(QVBoxLayout* column) {
  m_more = new QWidget(this);
  m_more->setObjectName(QStringLiteral("benchMoreFields"));
  auto* asked = newForm();
  auto* more = newForm(m_more);
  bool any = false;
  for (const FieldDescription& field : m_description.inputs) {
    if (isOffBench(field)) continue;
    const bool required = field.presence == Presence::Required;
    addField(required ? asked : more, field, required ? this : m_more);
    any = any || !required;
  }
  column->addLayout(asked);
  auto* buttons = new FlowLayout;
  m_moreButton = new WordButton("benchMore", tr("What else it can take"), this);
  m_moreButton->setCheckable(true);
  m_moreButton->setVisible(any);
  m_more->setVisible(false);
  connect(m_moreButton, &QPushButton::toggled, m_more, &QWidget::setVisible);
  auto* example = new WordButton("benchExample", tr("Show an example"), this);
  connect(example, &QPushButton::clicked, this, [this] {
    if (const auto input = model::parseJson(m_description.exampleInput)) show(*input);
    emit edited();
  });
  auto* empty = new WordButton("benchEmpty", tr("Empty the form"), this);
  connect(empty, &QPushButton::clicked, this, [this] {
    show(Json::object());
    emit edited();
    focusFirst();
  });
  buttons->addWidget(m_moreButton);
  buttons->addWidget(example);
  buttons->addWidget(empty);
  column->addLayout(buttons);
  column->addWidget(m_more);
}

void BenchPanel::addField(QFormLayout* form, const FieldDescription& field, QWidget* parent) {
  auto* made = newBenchField(field, "/" + std::string(field.name), parent);
  connect(made, &BenchField::edited, this, [this] {
    workSoon();
    emit edited();
  });
  const QString name = QString::fromStdString(compute::readableName(field.name));
  auto* meaning = new TextLabel(TextRole::Quiet, parent);
  meaning->say(benchWords(field.meaning).replace(QLatin1Char('_'), QLatin1Char(' ')));
  if (field.fields.empty()) {
    auto* holder = new QWidget(parent);
    auto* column = new QVBoxLayout(holder);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(2);
    column->addWidget(made);
    column->addWidget(meaning);
    form->addRow(name, holder);
  } else {
    form->addRow(new TextLabel(name, TextRole::Strong, parent));
    form->addRow(meaning);
    form->addRow(made);
  }
  m_fields.push_back(made);
}

void BenchPanel::buildAnswer(QVBoxLayout* column) {
  m_answer = new QWidget(column->parentWidget());
  m_answer->setObjectName(QStringLiteral("benchAnswer"));
  auto* inside = new QVBoxLayout(m_answer);
  inside->setContentsMargins(0, 0, 0, 0);
  m_words = new QVBoxLayout;
  inside->addLayout(m_words);
  m_picture = new FigureView(m_answer);
  inside->addWidget(m_picture);
  m_figures = new QVBoxLayout;
  inside->addLayout(m_figures);
  auto* put = new QHBoxLayout;
  m_remark = lineEdit("benchRemark", tr("What it is for"), tr("what it is for"), m_answer);
  m_put = new WordButton("benchPut", tr("Put into the &job"), m_answer);
  put->addWidget(m_remark, 1);
  put->addWidget(m_put);
  inside->addLayout(put);
  connect(m_put, &QPushButton::clicked, this, &BenchPanel::putIntoJob);
  column->addWidget(m_answer);
  setPlace({});
}

void BenchPanel::setPlace(const std::optional<Where>& where) {
  m_where = where;
  const bool possible = where && where->job && !m_session.viewOnly();
  m_remark->setVisible(possible);
  m_put->setVisible(possible);
  if (possible) m_put->setText(tr("Put into &job %1").arg(where->job->value));
}

void BenchPanel::show(const Json& input) {
  bool more = false;
  for (BenchField* field : m_fields) {
    const auto found = input.find(field->name());
    if (found == input.end()) {
      field->clear();
      continue;
    }
    field->show(*found);
    more = more || field->parentWidget() == m_more;
  }
  if (more) m_moreButton->setChecked(true);
  work();
}

Json BenchPanel::input() const {
  Json input = Json::object();
  for (const BenchField* field : m_fields) {
    if (auto value = field->value()) input[field->name()] = std::move(*value);
  }
  return input;
}

void BenchPanel::focusFirst() {
  if (!m_fields.empty()) m_fields.front()->setFocus();
}

QString BenchPanel::missing() const {
  QStringList names;
  for (const BenchField* field : m_fields) {
    if (field->field().presence == Presence::Required && !field->value()) {
      names += QString::fromStdString(compute::readableName(field->name()));
    }
  }
  return names.join(QStringLiteral(", "));
}

/// At once, or, where the last answer took longer than a frame, when the keys pause.
void BenchPanel::workSoon() {
  if (m_slow) return m_pause->start();
  work();
}

void BenchPanel::work() {
  m_pause->stop();
  const QString lacking = missing();
  if (!lacking.isEmpty()) {
    m_answer->hide();
    m_state->say(tr("Still needed: %1").arg(lacking));
    return;
  }
  QElapsedTimer taken;
  taken.start();
  const auto answer = compute::answerTo(m_calculation, input());
  m_slow = taken.elapsed() > kFrame;
  m_answer->setVisible(answer.has_value());
  m_state->say(answer ? QString() : phrasing::sentence(answer.error()));
  if (answer) showAnswer(*answer);
}

void BenchPanel::showAnswer(const compute::Answer& answer) {
  clearLayout(*m_words);
  bool first = true;
  for (const Json& note : answer.json.at("notes")) {
    const auto text = QString::fromStdString(note.value("text", std::string{}));
    m_words->addWidget(new TextLabel(text, first ? TextRole::Strong : TextRole::Body, m_answer));
    first = false;
  }
  m_picture->show(answer.draw);
  showFigures(answer);
}

void BenchPanel::showFigures(const compute::Answer& answer) {
  clearLayout(*m_figures);
  const auto figures = compute::readableAnswer(m_description, answer);
  auto* holder = new QWidget(m_answer);
  auto* form = newForm(holder);
  for (const auto& row : figures.rows) {
    auto* value = new TextLabel(QString::fromStdString(row.value), TextRole::Body, holder);
    value->setTextInteractionFlags(Qt::TextSelectableByMouse);
    form->addRow(QString::fromStdString(row.name), value);
  }
  m_figures->addWidget(holder);
  for (const auto& table : figures.tables) {
    m_figures->addWidget(
        new TextLabel(QString::fromStdString(table.name), TextRole::Heading, m_answer));
    QStringList heads;
    for (const auto& head : table.columns) heads += QString::fromStdString(head);
    auto* view = rowTable("benchTable", QString::fromStdString(table.name), heads, m_answer);
    if (table.columns.size() > kColumnsThatFit) {
      view->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
      view->setHorizontalScrollBarPolicy(Qt::ScrollBarAsNeeded);
    }
    view->setRowCount(static_cast<int>(table.rows.size()));
    for (std::size_t i = 0; i < table.rows.size(); ++i) {
      QStringList cells;
      for (const auto& cell : table.rows[i]) cells += QString::fromStdString(cell);
      fillRow(view, static_cast<int>(i), cells);
    }
    const int rows = std::min(kMostTableRows, view->rowCount());
    view->setMinimumHeight((rows + 2) * view->verticalHeader()->defaultSectionSize());
    m_figures->addWidget(view);
  }
}

void BenchPanel::putIntoJob() {
  if (!m_where) return;
  workshop::Calculate action;
  action.calculation = std::string(m_calculation.name);
  action.input.text = input().dump();
  if (const auto remark = typed(m_remark)) action.remark = *remark;
  if (m_session.perform(std::move(action), *m_where)) m_remark->clear();
}

}  // namespace sw::ui
