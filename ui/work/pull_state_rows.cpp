// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/work/pull_state_rows.h"

#include <QVBoxLayout>

#include "ui/common/choice_row.h"

namespace sw::ui {

namespace {

template <HasWords E>
E chosenOf(const ChoiceRow& row, E otherwise) {
  return fromWord<E>(row.chosen().value_or("")).value_or(otherwise);
}

template <HasWords E>
void choose(ChoiceRow& row, E value) {
  row.clear();
  row.choose(std::string(wordOf(value)));
}

}  // namespace

PullStateRows::PullStateRows(QWidget* parent) : QWidget(parent) {
  setObjectName(QStringLiteral("pullState"));
  const auto onOff = [this](const char* name, const QString& question) {
    return new ChoiceRow(QString::fromLatin1(name), question,
                         {{"off", tr("off")}, {"on", tr("on")}}, this);
  };
  m_seal = onOff("stateSeal", tr("Seal"));
  m_rods = onOff("stateRods", tr("Rods"));
  m_damper = onOff("stateDamper", tr("Damper"));
  m_sealant =
      new ChoiceRow(QStringLiteral("stateSealant"), tr("Sealant at the cap"),
                    {{"none", tr("none")}, {"wet", tr("wet")}, {"cured", tr("cured")}}, this);
  m_grease = new ChoiceRow(QStringLiteral("stateGrease"), tr("Grease"),
                           {{"dry", tr("dry")}, {"fresh", tr("fresh")}, {"old", tr("old")}}, this);
  m_movement =
      new ChoiceRow(QStringLiteral("stateMovement"), tr("Read at"),
                    {{"first", tr("first movement")}, {"steady", tr("steady turning")}}, this);
  m_position = new ChoiceRow(QStringLiteral("statePosition"), tr("The hub points"),
                             {{"ahead", tr("straight ahead")},
                              {"left_15", tr("about 15° left")},
                              {"right_15", tr("about 15° right")}},
                             this);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  for (ChoiceRow* row : {m_seal, m_rods, m_damper, m_sealant, m_grease, m_movement, m_position}) {
    column->addWidget(row);
    connect(row, &ChoiceRow::answered, this, &PullStateRows::changed);
  }
}

void PullStateRows::present(const model::PullState& state) {
  choose(*m_seal, state.seal);
  choose(*m_rods, state.rods);
  choose(*m_damper, state.damper);
  choose(*m_sealant, state.sealant);
  choose(*m_grease, state.grease);
  choose(*m_movement, state.movement);
  choose(*m_position, state.position);
}

model::PullState PullStateRows::state() const {
  model::PullState state;
  state.seal = chosenOf(*m_seal, state.seal);
  state.rods = chosenOf(*m_rods, state.rods);
  state.damper = chosenOf(*m_damper, state.damper);
  state.sealant = chosenOf(*m_sealant, state.sealant);
  state.grease = chosenOf(*m_grease, state.grease);
  state.movement = chosenOf(*m_movement, state.movement);
  state.position = chosenOf(*m_position, state.position);
  return state;
}

void PullStateRows::putInto(workshop::TakeReadings& action) const {
  const model::PullState now = state();
  action.seal = now.seal;
  action.rods = now.rods;
  action.damper = now.damper;
  action.sealant = now.sealant;
  action.grease = now.grease;
  action.movement = now.movement;
  action.position = now.position;
}

}  // namespace sw::ui
