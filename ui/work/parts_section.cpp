// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/work/parts_section.h"

#include <QVBoxLayout>

#include "ui/common/clear_layout.h"
#include "ui/common/flow_layout.h"
#include "ui/common/text_label.h"
#include "ui/common/word_button.h"

namespace sw::ui {

namespace {

std::vector<const procedures::Part*> partsOf(const StepContext& context) {
  std::vector<const procedures::Part*> parts;
  const auto& job = *context.job;
  const auto facts = workshop::factsOf(job, job.runs[context.view().run].fact.round);
  for (const auto& part : context.definition().parts) {
    if (procedures::holds(part.when, facts, context.view().side)) parts.push_back(&part);
  }
  return parts;
}

}  // namespace

PartsSection::PartsSection(ShopSession& session, QWidget* parent)
    : StepSection(session, "partsSection", parent),
      m_used(new TextLabel(TextRole::Body, this)),
      m_buttons(new FlowLayout) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(m_used);
  column->addLayout(m_buttons);
}

bool PartsSection::suits(const StepContext& context) const {
  return !partsOf(context).empty();
}

QWidget* PartsSection::firstField() {
  QLayoutItem* first = m_buttons->itemAt(0);
  return first == nullptr ? nullptr : first->widget();
}

void PartsSection::fill(Showing) {
  clearLayout(*m_buttons);
  QStringList used;
  for (const procedures::Part* part : partsOf(context())) {
    const bool recorded = std::any_of(context().job->valid.begin(), context().job->valid.end(),
                                      [&](const model::Entry* entry) {
                                        const auto* fact = model::as<model::PartUsed>(*entry);
                                        return fact != nullptr && fact->key == part->key &&
                                               context().job->belongsTo(*entry, context().step);
                                      });
    const QString name = QString::fromStdString(part->name);
    if (recorded) {
      used += tr("Fitted and recorded: %1").arg(name);
      continue;
    }
    auto* button =
        new WordButton(part->singleUse ? tr("New: %1 × %2").arg(part->quantity).arg(name)
                                       : tr("Used: %1 × %2").arg(part->quantity).arg(name),
                       this);
    button->setObjectName(QStringLiteral("part_") + QString::fromStdString(part->key));
    button->setAccessibleName(button->text());
    button->setEnabled(!context().locked());
    connect(button, &QPushButton::clicked, this, [this, part] { use(*part); });
    m_buttons->addWidget(button);
    button->show();
  }
  m_used->say(used.join(QLatin1Char('\n')));
}

void PartsSection::use(const procedures::Part& part) {
  workshop::UsePart action;
  action.name = part.name;
  action.key = part.key;
  action.quantity = std::to_string(part.quantity);
  (void)send(action);
}

}  // namespace sw::ui
