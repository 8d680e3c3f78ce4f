// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/work/torque_section.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include "phrasing/error_sentence.h"
#include "report/quantity_text.h"
#include "ui/common/form.h"
#include "ui/common/page_parts.h"
#include "ui/common/text_label.h"
#include "ui/common/word_button.h"
#include "ui/work/fastener_drawing.h"
#include "units/format.h"

namespace sw::ui {

namespace {

QString patternText(const std::string& pattern) {
  if (pattern == "cross" || pattern == "star") return TorqueSection::tr("crosswise");
  if (pattern.empty() || pattern == "none") return {};
  return QString::fromStdString(pattern);
}

QString calibrationText(const std::string& state) {
  if (state == "due") return TorqueSection::tr("calibration due soon");
  if (state == "overdue") return TorqueSection::tr("calibration overdue");
  if (state == "unknown") return TorqueSection::tr("calibration not known");
  return {};
}

/// The same torque in the unit of the other half of the world.
QString otherUnit(const TypedQuantity& set) {
  const Unit unit = defaultUnit(QuantityKind::Torque);
  const bool metric = set.unit == unit.symbol;
  const auto other = metric ? findUnit(QuantityKind::Torque, "lbf ft") : std::optional(unit);
  return QString::fromStdString(displayText(set.si, other.value_or(unit)))
      .replace(QLatin1Char(' '), QChar(report::kNoBreak));
}

QString rangeText(workshop::WrenchRange range) {
  switch (range) {
    case workshop::WrenchRange::TooSmall:
      return TorqueSection::tr("too small for this torque");
    case workshop::WrenchRange::TooLarge:
      return TorqueSection::tr("too large for this torque");
    case workshop::WrenchRange::Fits:
      break;
  }
  return {};
}

}  // namespace

TorqueSection::TorqueSection(ShopSession& session, QWidget* parent)
    : StepSection(session, "torqueSection", parent),
      m_drawing(new FastenerDrawing(this)),
      m_set(new TextLabel(TextRole::Value, this)),
      m_other(new TextLabel(TextRole::Strong, this)),
      m_group(new TextLabel(TextRole::Body, this)),
      m_stages(new TextLabel(TextRole::Body, this)),
      m_wrench(comboBox("torqueWrench", tr("Torque wrench"), this)),
      m_warning(new TextLabel(TextRole::Strong, this)),
      m_value(namedField("torqueSet", tr("What the wrench is set to"), this)),
      m_done(namedField("torqueDone", tr("How many fasteners are done"), this)),
      m_judged(new TextLabel(TextRole::Strong, this)),
      m_record(new WordButton("recordTorque", {}, this)),
      m_spec(new WordButton(tr("Fill in the spec sheet"), this)),
      m_addWrench(new WordButton(tr("Put a torque wrench on file"), this)) {
  m_set->setObjectName(QStringLiteral("torqueFigure"));
  m_wrench->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  m_wrench->setMinimumContentsLength(8);
  m_warning->setObjectName(QStringLiteral("wrenchWarning"));
  m_judged->setObjectName(QStringLiteral("torqueJudged"));
  m_spec->setObjectName(QStringLiteral("torqueSpec"));
  m_addWrench->setObjectName(QStringLiteral("addWrench"));
  guard(m_value, tr("as the wrench shows it"));
  guard(m_done, tr("all"));
  layOut();
  connect(m_wrench, &QComboBox::activated, this, &TorqueSection::wrenchChosen);
  connect(m_value, &QLineEdit::textChanged, this, &TorqueSection::judge);
  connect(m_done, &QLineEdit::textChanged, this, &TorqueSection::judge);
  // Enter on a field that holds nothing records nothing: it only goes on to the button.
  for (QLineEdit* field : {m_value, m_done}) {
    connect(field, &QLineEdit::returnPressed, this, [this, field] {
      if (m_choices.empty()) {
        m_addWrench->setFocus();
      } else if (field->text().trimmed().isEmpty()) {
        m_record->setFocus();
      } else {
        record();
      }
    });
  }
  connect(m_record, &QPushButton::clicked, this, &TorqueSection::record);
  connect(m_spec, &QPushButton::clicked, this, [this] {
    emit goWanted({PageId::Vehicle, this->context().job->job, {}, {}, {}});
  });
  connect(m_addWrench, &QPushButton::clicked, this, [this] {
    emit goWanted({PageId::Instruments,
                   this->context().job->job,
                   {},
                   {},
                   {},
                   model::InstrumentKind::TorqueWrench});
  });
}

void TorqueSection::layOut() {
  auto* form = newForm();
  form->addRow(tr("Wrench"), m_wrench);
  form->addRow(tr("Set to"), m_value);
  form->addRow(tr("Done"), m_done);
  auto* figures = new QVBoxLayout;
  figures->addWidget(m_set);
  figures->addWidget(m_other);
  figures->addWidget(m_group);
  figures->addWidget(m_stages);
  figures->addStretch(1);
  auto* top = new QHBoxLayout;
  top->addWidget(m_drawing, 0, Qt::AlignTop);
  top->addLayout(figures, 1);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addLayout(top);
  column->addLayout(form);
  column->addWidget(m_warning);
  column->addWidget(m_judged);
  column->addWidget(m_record);
  column->addWidget(m_spec, 0, Qt::AlignLeft);
  column->addWidget(m_addWrench, 0, Qt::AlignLeft);
}

bool TorqueSection::suits(const StepContext& context) const {
  return context.definition().torque.has_value();
}

QWidget* TorqueSection::firstField() {
  return m_plan ? static_cast<QWidget*>(m_value) : m_spec;
}

void TorqueSection::fill(Showing) {
  auto plan = workshop::torquePlan(*context().job, *context().shop, context().step);
  m_plan = plan ? std::optional(*plan) : std::nullopt;
  for (QWidget* widget : {static_cast<QWidget*>(m_wrench), static_cast<QWidget*>(m_value),
                          static_cast<QWidget*>(m_done), static_cast<QWidget*>(m_record)}) {
    widget->setVisible(plan.has_value());
  }
  m_spec->setVisible(!plan);
  m_addWrench->setVisible(false);
  m_wrench->setEnabled(!context().locked());
  m_record->setEnabled(!context().locked());
  if (!plan) {
    m_drawing->hide();
    m_set->say({});
    m_other->say({});
    m_stages->say({});
    m_warning->say({});
    m_group->say(phrasing::sentence(plan.error()));
    return;
  }
  showPlan(*plan);
}

void TorqueSection::showPlan(const workshop::TorquePlan& plan) {
  const bool finished = plan.next == plan.stages.size();
  const workshop::TorqueStage& stage = plan.stages[finished ? plan.next - 1 : plan.next];
  m_drawing->present(static_cast<int>(plan.count), static_cast<int>(stage.done));
  m_set->say(report::typed(stage.set));
  m_other->say(tr("that is %1").arg(otherUnit(stage.set)));
  QStringList group{tr("%1 × %2")
                        .arg(plan.count)
                        .arg(QString::fromStdString(context().definition().torque->name))};
  if (!plan.spec->fastenerSize.empty()) group += QString::fromStdString(plan.spec->fastenerSize);
  if (const QString pattern = patternText(plan.pattern); !pattern.isEmpty()) group += pattern;
  QString text = group.join(QStringLiteral(", ")) + QLatin1Char('\n') +
                 tr("Sheet: %1").arg(report::torqueText(*plan.spec));
  if (!plan.spec->source.empty()) {
    text += tr(" (%1)").arg(QString::fromStdString(plan.spec->source));
  }
  if (context().definition().torque->castellated) {
    text += QLatin1Char('\n') + tr("Slotted nut: tighten on to the next slot, never back off.");
  }
  m_group->say(text);
  QStringList stages;
  for (const workshop::TorqueStage& one : plan.stages) {
    const QString done = one.finished ? tr("done") : tr("%1 of %2").arg(one.done).arg(plan.count);
    stages += tr("Stage %1: %2, %3").arg(one.number).arg(report::typed(one.set), done);
  }
  m_stages->say(stages.join(QLatin1Char('\n')));
  listWrenches(stage);
  const bool noWrench = m_choices.empty();
  m_record->setVisible(!finished && !noWrench);
  m_addWrench->setVisible(!finished && noWrench);
  judge();
}

void TorqueSection::listWrenches(const workshop::TorqueStage& stage) {
  const QString before = m_wrench->currentData().toString();
  m_choices = workshop::wrenchesFor(*context().shop, stage.set, session().workshop().clock().now());
  m_wrench->clear();
  for (const workshop::WrenchChoice& choice : m_choices) {
    QStringList text{QString::fromStdString(choice.name)};
    for (const QString& note : {rangeText(choice.range), calibrationText(choice.calibration)}) {
      if (!note.isEmpty()) text += note;
    }
    m_wrench->addItem(text.join(QStringLiteral(" – ")), QString::fromStdString(choice.name));
  }
  const int again = m_wrench->findData(before);
  const bool fits =
      again >= 0 && m_choices[static_cast<std::size_t>(again)].range == workshop::WrenchRange::Fits;
  m_wrench->setCurrentIndex(fits ? again : m_choices.empty() ? -1 : 0);
  wrenchChosen();
}

void TorqueSection::wrenchChosen() {
  const int index = m_wrench->currentIndex();
  if (index < 0) {
    m_warning->say(tr("No torque wrench is on file yet."));
    return;
  }
  const workshop::WrenchChoice& choice = m_choices[static_cast<std::size_t>(index)];
  m_value->setPlaceholderText(context().locked() ? context().lockedWhy : report::typed(choice.set));
  QStringList notes;
  if (const QString range = rangeText(choice.range); !range.isEmpty()) {
    notes += tr("This wrench is %1.").arg(range);
  }
  if (const QString calibration = calibrationText(choice.calibration); !calibration.isEmpty()) {
    notes += tr("%1: it stands on the sheet.").arg(calibration);
  }
  m_warning->say(notes.join(QLatin1Char('\n')));
  judge();
}

std::optional<workshop::MarkTorque> TorqueSection::action() const {
  if (!m_plan || m_plan->next == m_plan->stages.size() || m_wrench->currentIndex() < 0) {
    return std::nullopt;
  }
  workshop::MarkTorque mark;
  mark.wrench = m_wrench->currentData().toString().toStdString();
  mark.stage = m_plan->stages[m_plan->next].number;
  const auto& choice = m_choices[static_cast<std::size_t>(m_wrench->currentIndex())];
  mark.set = typedIn(*m_value).value_or(choice.set.text());
  if (const auto done = typedIn(*m_done)) mark.done = QString::fromStdString(*done).toLongLong();
  return mark;
}

void TorqueSection::judge() {
  const auto mark = action();
  if (!mark) {
    m_judged->say({});
    return;
  }
  QStringList words{tr("%1 of %2").arg(mark->done.value_or(m_plan->count)).arg(m_plan->count)};
  if (const QString pattern = patternText(m_plan->pattern); !pattern.isEmpty()) words += pattern;
  words += QString::fromStdString(*mark->set);
  words += QString::fromStdString(mark->wrench);
  m_record->setText(words.join(QStringLiteral(", ")));
  m_record->setAccessibleName(tr("Record: %1").arg(m_record->text()));
  const auto tried = context().locked() ? Result<workshop::Rehearsal>{} : rehearse(*mark);
  m_judged->say(tried ? QString() : whyNot(tried.error()));
}

void TorqueSection::record() {
  const auto mark = action();
  if (!mark || context().locked()) return;
  if (!send(*mark)) {
    m_value->setFocus();
    return;
  }
  m_value->clear();
  m_done->clear();
}

}  // namespace sw::ui
