// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/bench/method_card.h"

#include <QFrame>
#include <QGridLayout>
#include <QVBoxLayout>

#include "ui/bench/bench_words.h"
#include "ui/common/text_label.h"
#include "ui/common/theme.h"

namespace sw::ui {

namespace {

/// Between two lines of a list: half a text line, so that each is seen to begin anew.
int lineGap() {
  return sizesOf(currentTheme().mode).textPixels / 2;
}

/// A sign of arithmetic goes over to the next line with what follows it.
QString brokenBeforeSigns(QString text) {
  for (const QChar sign : QStringLiteral("=+−×÷")) {
    text.replace(sign + QStringLiteral(" "), sign + QString(QChar::Nbsp));
  }
  return text;
}

TextLabel* named(const char* name, std::string_view text, QWidget* parent) {
  auto* label = new TextLabel(brokenBeforeSigns(benchWords(text)), TextRole::Body, parent);
  label->setObjectName(QLatin1String(name));
  return label;
}

/// A line each, along a rule.
QLayout* formulaOf(std::string_view formula, QWidget* parent) {
  auto* beside = new QHBoxLayout;
  beside->setSpacing(lineGap());
  auto* rule = new QFrame(parent);
  rule->setFrameShape(QFrame::VLine);
  rule->setFrameShadow(QFrame::Sunken);
  beside->addWidget(rule);
  auto* lines = new QVBoxLayout;
  lines->setSpacing(lineGap());
  while (!formula.empty()) {
    const auto end = std::min(formula.find('\n'), formula.size());
    lines->addWidget(named("benchFormula", formula.substr(0, end), parent));
    formula.remove_prefix(std::min(end + 1, formula.size()));
  }
  beside->addLayout(lines, 1);
  return beside;
}

QLayout* listOf(std::span<const std::string_view> sentences, QWidget* parent) {
  auto* list = new QGridLayout;
  list->setHorizontalSpacing(lineGap());
  list->setVerticalSpacing(lineGap());
  list->setColumnStretch(1, 1);
  int row = 0;
  for (const std::string_view sentence : sentences) {
    auto* mark = new TextLabel(QStringLiteral("•"), TextRole::Quiet, parent);
    list->addWidget(mark, row, 0, Qt::AlignTop);
    list->addWidget(named("benchAssumption", sentence, parent), row, 1);
    ++row;
  }
  return list;
}

}  // namespace

MethodCard::MethodCard(const compute::Description& description, QWidget* parent) : QWidget(parent) {
  setObjectName(QStringLiteral("benchMethod"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 2 * lineGap(), 0, 0);
  const auto say = [&](const QString& text, TextRole role) {
    column->addWidget(new TextLabel(text, role, this));
  };
  say(tr("How it is worked out"), TextRole::Heading);
  say(tr("Method: %1.").arg(benchWords(description.method)), TextRole::Quiet);
  column->addLayout(formulaOf(description.formula, this));
  say(tr("What it rests on, and when not to use it"), TextRole::Strong);
  column->addLayout(listOf(description.assumptions, this));
  say(tr("Source: %1.").arg(benchWords(description.source)), TextRole::Quiet);
}

}  // namespace sw::ui
