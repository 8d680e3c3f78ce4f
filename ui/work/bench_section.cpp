// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/work/bench_section.h"

#include <QVBoxLayout>
#include <algorithm>
#include <nlohmann/json.hpp>

#include "compute/readable.h"
#include "ui/bench/figure_view.h"
#include "ui/common/clear_layout.h"
#include "ui/common/flow_layout.h"
#include "ui/common/plain_text.h"
#include "ui/common/text_label.h"
#include "ui/common/word_button.h"
#include "workshop/bench_input.h"

namespace sw::ui {

namespace {

constexpr std::size_t kMostLines = 3;

/// A row of a table in one line: "0.8 mm · shims 0.40 + 0.40 · within limit 93 %".
QString lineOf(const compute::ReadableTable& table, const std::vector<std::string>& row) {
  QStringList parts;
  for (std::size_t i = 0; i < row.size(); ++i) {
    if (row[i].empty()) continue;
    const bool figure = i > 0 && row[i].front() >= '0' && row[i].front() <= '9';
    const QString name = text(table.columns[i]).toLower() + QLatin1Char(' ');
    parts += (figure ? name : QString()) + text(row[i]);
  }
  return parts.join(QStringLiteral(" · "));
}

}  // namespace

BenchSection::BenchSection(ShopSession& session, QWidget* parent)
    : StepSection(session, "benchSection", parent),
      m_head(new TextLabel(tr("Work it out"), TextRole::Heading, this)),
      m_words(new TextLabel(TextRole::Strong, this)),
      m_lines(new QVBoxLayout),
      m_fold(new WordButton("benchFold", tr("Show the picture"), this)),
      m_picture(new FigureView(this)),
      m_ways(new FlowLayout),
      m_keep(new WordButton("benchKeep", tr("Put this into the job"), this)) {
  m_head->setObjectName(QStringLiteral("benchHead"));
  m_words->setObjectName(QStringLiteral("benchWords"));
  m_fold->setCheckable(true);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(m_head);
  column->addWidget(m_words);
  column->addLayout(m_lines);
  auto* below = new FlowLayout;
  below->addWidget(m_fold);
  below->addWidget(m_keep);
  column->addLayout(below);
  column->addWidget(m_picture);
  column->addLayout(m_ways);
  connect(m_fold, &QPushButton::toggled, this, [this] { answerFirst(); });
  connect(m_keep, &QPushButton::clicked, this, &BenchSection::keep);
}

bool BenchSection::suits(const StepContext& context) const {
  return !workshop::benchFor(context.view()).empty();
}

void BenchSection::suppose(const SharedJob& job) {
  if (isHidden() || m_job == job) return;
  m_job = job;
  answerFirst();
}

void BenchSection::fill(Showing showing) {
  m_job = context().job;
  if (showing == Showing::OtherStep) {
    m_names = workshop::benchFor(context().view());
    m_fold->setChecked(false);
    listWays();
  }
  answerFirst();
}

void BenchSection::listWays() {
  clearLayout(*m_ways);
  for (const std::string& name : m_names) {
    const auto calculation = compute::findCalculation(name);
    if (!calculation) continue;
    const std::string object = "toBench:" + name;
    auto* way = new WordButton(object.c_str(), text(std::string(calculation->title)), this);
    way->setAccessibleDescription(tr("Opens the calculation on the bench, filled in from the job"));
    connect(way, &QPushButton::clicked, this, [this, name] { openBench(name); });
    m_ways->addWidget(way);
  }
}

/// The first calculation, answered from what the job knows; nothing where that is not enough.
std::optional<compute::Answer> BenchSection::worked() {
  if (m_names.empty()) return std::nullopt;
  const auto calculation = compute::findCalculation(m_names.front());
  if (!calculation) return std::nullopt;
  const auto input =
      session().benchInput(*m_job, m_names.front(), {context().step, context().view().side});
  m_input = input.dump();
  m_description = calculation->describe();
  auto answer = compute::answerTo(*calculation, input);
  if (!answer) return std::nullopt;
  return std::move(*answer);
}

void BenchSection::answerFirst() {
  clearLayout(*m_lines);
  const auto answer = worked();
  m_words->setVisible(answer.has_value());
  m_fold->setVisible(answer && answer->draw);
  const bool supposed = m_job != context().job;
  m_head->setText(supposed ? tr("With what is typed") : tr("Work it out"));
  // What is put into the job rests on what is on record.
  m_keep->setVisible(answer && !supposed && !context().locked());
  m_picture->show(answer && m_fold->isChecked() ? answer->draw : compute::Draw{});
  if (!answer) return;
  const auto& notes = answer->json.at("notes");
  m_words->say(notes.empty() ? QString() : text(notes.front().value("text", std::string{})));
  // What the answer rests on stands below it.
  if (notes.size() > 1) {
    m_lines->addWidget(
        new TextLabel(text(notes.at(1).value("text", std::string{})), TextRole::Body, this));
  }
  showLines(*answer);
}

void BenchSection::showLines(const compute::Answer& answer) {
  const auto shown = compute::readableAnswer(m_description, answer);
  for (const auto& table : shown.tables) {
    if (table.rows.size() > kMostLines) continue;
    for (const auto& row : table.rows) {
      m_lines->addWidget(new TextLabel(lineOf(table, row), TextRole::Body, this));
    }
  }
}

void BenchSection::openBench(const std::string& calculation) {
  const Where here = whereOf(*context().job, context().step);
  Goal goal{PageId::Bench, here.job, {}, here.step, here.side};
  goal.calculation = calculation;
  emit goWanted(goal);
}

void BenchSection::keep() {
  workshop::Calculate action;
  action.calculation = m_names.front();
  action.input.text = m_input;
  send(std::move(action));
}

}  // namespace sw::ui
