// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/work/observe_section.h"

#include <QPushButton>
#include <QVBoxLayout>

#include "phrasing/names.h"
#include "ui/common/choice_row.h"

namespace sw::ui {

ObserveSection::ObserveSection(ShopSession& session, QWidget* parent)
    : StepSection(session, "observeSection", parent), m_column(new QVBoxLayout(this)) {
  m_column->setContentsMargins(0, 0, 0, 0);
}

bool ObserveSection::suits(const StepContext& context) const {
  return !context.definition().observe.empty();
}

QWidget* ObserveSection::firstField() {
  for (ChoiceRow* row : m_rows) {
    if (!row->chosen()) return row->findChild<QPushButton*>();
  }
  return nullptr;
}

void ObserveSection::build() {
  for (ChoiceRow* row : m_rows) {
    row->hide();
    row->deleteLater();
  }
  m_rows.clear();
  for (const procedures::Observe& observe : context().definition().observe) {
    std::vector<ChoiceRow::Answer> answers;
    for (const procedures::Choice& choice : observe.choices) {
      answers.emplace_back(choice.word, QString::fromStdString(choice.text));
    }
    auto* row = new ChoiceRow(QStringLiteral("observe_") + QString::fromStdString(observe.key),
                              QString::fromStdString(observe.ask), answers, this);
    row->leaveToSpace();
    connect(row, &ChoiceRow::answered, this, [this, row, key = observe.key] {
      // What was not taken does not look chosen.
      if (!send(workshop::Observe{key, row->chosen().value_or(""), std::nullopt})) {
        fill(Showing::SameStep);
      }
    });
    m_column->addWidget(row);
    row->show();
    m_rows.push_back(row);
  }
}

void ObserveSection::fill(Showing showing) {
  if (showing == Showing::OtherStep) build();
  const auto& questions = context().definition().observe;
  for (std::size_t i = 0; i < m_rows.size(); ++i) {
    m_rows[i]->setEnabled(!context().locked());
    m_rows[i]->clear();
    for (const model::Entry* entry : context().job->valid) {
      const auto* seen = model::as<model::Observation>(*entry);
      if (seen != nullptr && seen->key == questions[i].key &&
          context().job->belongsTo(*entry, context().step)) {
        m_rows[i]->choose(seen->value);
      }
    }
  }
}

SupportSection::SupportSection(ShopSession& session, QWidget* parent)
    : StepSection(session, "supportSection", parent) {
  std::vector<ChoiceRow::Answer> answers;
  for (const auto& [support, word] : Words<model::SupportKind>::table) {
    answers.emplace_back(word, phrasing::nameOf(support));
  }
  m_support =
      new ChoiceRow(QStringLiteral("support"), tr("What carries the front axle?"), answers, this);
  m_support->leaveToSpace();
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(m_support);
  connect(m_support, &ChoiceRow::answered, this, [this] {
    const auto chosen = fromWord<model::SupportKind>(m_support->chosen().value_or(""));
    if (!chosen) return;
    // Chosen at the hold, it answers the step that asks for it, too.
    const auto& job = *this->context().job;
    const auto asks = job.findStep(this->context().view().run, "choose_support", std::nullopt);
    const auto where = whereOf(job, asks.value_or(this->context().step));
    if (!this->session().perform(workshop::ChooseSupport{*chosen}, where)) {
      return fill(Showing::SameStep);
    }
    emit recorded();
  });
}

bool SupportSection::suits(const StepContext& context) const {
  // Until it is known, the support hold offers the choice, too.
  const bool holdWithout = context.definition().hold &&
                           context.definition().hold->key == "support" && !context.job->support;
  return holdWithout || context.definition().id == "choose_support";
}

QWidget* SupportSection::firstField() {
  return m_support->findChild<QPushButton*>();
}

void SupportSection::fill(Showing) {
  m_support->setEnabled(!context().locked());
  m_support->clear();
  // In another round it is asked anew: what was chosen then is no answer for now.
  if (context().job->support && context().view().done()) {
    m_support->choose(std::string(wordOf(*context().job->support)));
  }
}

}  // namespace sw::ui
