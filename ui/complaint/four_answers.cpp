// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/complaint/four_answers.h"

#include <QVBoxLayout>

#include "ui/common/choice_row.h"

namespace sw::ui {

namespace {

const std::string kUnknown = "unknown";

}  // namespace

FourAnswers::FourAnswers(QWidget* parent) : QWidget(parent) {
  const ChoiceRow::Answer yes{"yes", tr("yes")};
  const ChoiceRow::Answer no{"no", tr("no")};
  const ChoiceRow::Answer unknown{kUnknown, tr("not known")};
  m_braking = new ChoiceRow(QStringLiteral("braking"), tr("Does it shake under braking?"),
                            {no,
                             {"only", tr("only then")},
                             {"also", tr("then too")},
                             {"starts_and_stays", tr("braking starts it, it stays")},
                             unknown},
                            this);
  m_band = new ChoiceRow(QStringLiteral("speedBand"), tr("Only in a band of road speed?"),
                         {yes, no, unknown}, this);
  m_bump = new ChoiceRow(QStringLiteral("afterBump"), tr("Does a bump start it?"),
                         {yes, no, unknown}, this);
  m_felt = new ChoiceRow(QStringLiteral("whereFelt"), tr("Where is it felt?"),
                         {{"steering wheel", tr("steering wheel")},
                          {"seat or floor", tr("seat or floor")},
                          {"both", tr("both")},
                          unknown},
                         this);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  for (ChoiceRow* row : {m_braking, m_band, m_bump, m_felt}) column->addWidget(row);
}

std::optional<std::string> FourAnswers::felt() const {
  const auto felt = m_felt->chosen();
  return felt && *felt != kUnknown ? felt : std::nullopt;
}

void FourAnswers::fill(workshop::SetComplaint& complaint) const {
  if (const auto word = m_braking->chosen()) {
    complaint.braking = fromWord<model::BrakingAnswer>(*word);
  }
  if (const auto word = m_band->chosen()) complaint.speedBand = fromWord<model::YesNo>(*word);
  if (const auto word = m_bump->chosen()) complaint.afterBump = fromWord<model::YesNo>(*word);
  complaint.whereFelt = felt();
}

void FourAnswers::clear() {
  for (ChoiceRow* row : {m_braking, m_band, m_bump, m_felt}) row->clear();
}

}  // namespace sw::ui
