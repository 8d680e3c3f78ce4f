// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/work/pack_section.h"

#include <QComboBox>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include "phrasing/names.h"
#include "report/quantity_text.h"
#include "ui/common/choice_row.h"
#include "ui/common/form.h"
#include "ui/common/page_parts.h"
#include "ui/common/text_label.h"
#include "ui/common/word_button.h"
#include "workshop/runs.h"

namespace sw::ui {

PackSection::PackSection(ShopSession& session, QWidget* parent)
    : StepSection(session, "packSection", parent),
      m_packs(new TextLabel(TextRole::Body, this)),
      m_next(new TextLabel(TextRole::Strong, this)),
      m_place(new ChoiceRow(QStringLiteral("packPlace"), tr("Where does the pack sit?"),
                            {{"top", phrasing::nameOf(model::ShimPlace::Top)},
                             {"bottom", phrasing::nameOf(model::ShimPlace::Bottom)}},
                            this)),
      m_shims(namedField("packShims", tr("Shims of the pack"), this)),
      m_measured(namedField("packMeasured", tr("Thickness by micrometer"), this)),
      m_micrometer(comboBox("packMicrometer", tr("Micrometer"), this)),
      m_record(new WordButton(tr("Record the pack"), this)) {
  m_micrometer->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  m_micrometer->setMinimumContentsLength(8);
  m_record->setObjectName(QStringLiteral("recordPack"));
  m_record->setAutoDefault(true);
  guard(m_shims, tr("e.g. 0.50 + 0.25"));
  guard(m_measured, tr("may be left out"));
  auto* form = newForm();
  form->addRow(tr("Shims"), m_shims);
  form->addRow(tr("Measured"), m_measured);
  form->addRow(tr("With"), m_micrometer);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(m_packs);
  column->addWidget(m_next);
  column->addWidget(m_place);
  column->addLayout(form);
  column->addWidget(m_record, 0, Qt::AlignLeft);
  connect(m_record, &QPushButton::clicked, this, &PackSection::record);
  connect(m_shims, &QLineEdit::returnPressed, this, &PackSection::record);
  connect(m_measured, &QLineEdit::returnPressed, this, &PackSection::record);
}

bool PackSection::suits(const StepContext& context) const {
  return context.definition().shimPack.has_value();
}

QWidget* PackSection::firstField() {
  return m_shims;
}

void PackSection::fill(Showing showing) {
  if (showing == Showing::OtherStep) {
    m_place->clear();
    m_micrometer->clear();
    m_micrometer->addItem(tr("not measured"), QString());
    for (const auto* instrument : context().shop->instruments()) {
      const model::Instrument& fact = instrument->fact;
      const bool fits = fact.type == model::InstrumentKind::Micrometer ||
                        fact.type == model::InstrumentKind::Caliper;
      if (fits && fact.active) m_micrometer->addItem(QString::fromStdString(fact.name));
    }
    if (m_micrometer->count() > 1) m_micrometer->setCurrentIndex(1);
  }
  const bool both = context().job->vehicle.fact.arrangement.shimEnds.value_or(
                        model::ShimEnds::Both) == model::ShimEnds::Both;
  m_place->setVisible(both);
  for (QWidget* widget : {static_cast<QWidget*>(m_record), static_cast<QWidget*>(m_place),
                          static_cast<QWidget*>(m_micrometer)}) {
    widget->setEnabled(!context().locked());
  }
  showPacks();
  showNext();
}

void PackSection::showPacks() {
  QStringList lines;
  for (const workshop::PackView& pack : context().job->packs) {
    if (pack.side != context().view().side) continue;
    QString line = tr("%1, %2: %3")
                       .arg(phrasing::nameOf(pack.fact.role), phrasing::nameOf(pack.fact.place),
                            report::typed(pack.fact.total));
    if (!pack.fact.shims.empty()) {
      line += tr(" (%1)").arg(QString::fromStdString(pack.fact.shims));
    }
    lines += line;
  }
  m_packs->say(lines.isEmpty() ? tr("No pack of this side is on record yet.")
                               : lines.join(QLatin1Char('\n')));
}

void PackSection::showNext() {
  m_next->say({});
  const auto& view = context().view();
  const workshop::RunView& run = context().job->runs[view.run];
  const bool asked = context().definition().shimPack->role == model::PackRole::Fitted &&
                     run.fact.round > 1 && !view.done() && view.side;
  if (!asked) return;
  const auto direction = run.fact.why == "over_the_limit" ? workshop::ForceDirection::Lower
                                                          : workshop::ForceDirection::Raise;
  const auto next =
      workshop::nextAllowedPack(*context().job, *context().shop, *view.side, direction);
  if (!next || !next->pack) return;
  m_next->say(tr("Next allowed pack: %1 mm, %2 mm in all.")
                  .arg(QString::fromStdString(next->pack->stack))
                  .arg(inMillimetres(next->pack->total), 0, 'f', 2));
  if (m_shims->text().isEmpty()) m_shims->setText(QString::fromStdString(next->pack->stack));
}

void PackSection::record() {
  workshop::RecordPack action;
  action.role = context().definition().shimPack->role;
  action.shims = typedIn(*m_shims);
  action.measured = typedIn(*m_measured);
  if (action.measured && m_micrometer->currentIndex() > 0) {
    action.instrument = m_micrometer->currentText().toStdString();
  }
  const auto ends = context().job->vehicle.fact.arrangement.shimEnds;
  if (ends == model::ShimEnds::Bottom) action.place = model::ShimPlace::Bottom;
  if (const auto place = m_place->chosen(); place && m_place->isVisible()) {
    action.place = fromWord<model::ShimPlace>(*place);
  }
  if (!send(action)) {
    m_shims->setFocus();
    return;
  }
  m_shims->clear();
  m_measured->clear();
}

}  // namespace sw::ui
