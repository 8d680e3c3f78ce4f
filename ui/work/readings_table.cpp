// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/work/readings_table.h"

#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QVBoxLayout>

#include "phrasing/names.h"
#include "report/quantity_text.h"
#include "ui/common/choice_row.h"
#include "ui/common/flow_layout.h"
#include "ui/common/form.h"
#include "ui/common/text_label.h"
#include "ui/common/theme.h"
#include "ui/common/word_button.h"
#include "ui/work/step_section.h"

namespace sw::ui {

namespace {

QString useText(const workshop::ReadingView& reading) {
  if (reading.fact.use == model::ReadingUse::Settling) {
    return ReadingsTable::tr("settling pull, not used");
  }
  if (reading.fact.use == model::ReadingUse::NotUsed) return ReadingsTable::tr("left out");
  return reading.corrected ? ReadingsTable::tr("corrected") : QString();
}

}  // namespace

ReadingsTable::ReadingsTable(QWidget* parent)
    : QWidget(parent),
      m_title(new TextLabel(tr("Recorded readings; choose one to mend it"), TextRole::Quiet, this)),
      m_list(new QListWidget(this)),
      m_editor(new QWidget(this)),
      m_value(namedField("correctedValue", tr("What it should read"), m_editor)) {
  setObjectName(QStringLiteral("readingsTable"));
  m_list->setObjectName(QStringLiteral("readingsList"));
  m_list->setAccessibleName(tr("Recorded readings"));
  m_list->setFlow(QListView::LeftToRight);
  m_list->setWrapping(true);
  m_list->setResizeMode(QListView::Adjust);
  m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  m_list->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  m_reason = new ChoiceRow(QStringLiteral("correctionReason"), tr("Why?"),
                           {{"typing_slip", phrasing::nameOf(model::CorrectionReason::TypingSlip)},
                            {"wrong_unit", phrasing::nameOf(model::CorrectionReason::WrongUnit)},
                            {"bad_pull", phrasing::nameOf(model::CorrectionReason::BadPull)},
                            {"other", phrasing::nameOf(model::CorrectionReason::Other)}},
                           m_editor);
  m_correct = new WordButton("correctReading", tr("Record the correction"), m_editor);
  m_leaveOut = new WordButton("leaveOutReading", tr("Bad pull: leave it out"), m_editor);
  m_withdraw = new WordButton("withdrawReading", tr("Take it back"), m_editor);
  m_move = new WordButton("moveSeries", tr("These belong to the other side"), this);
  layOut();
  connect(m_list, &QListWidget::currentRowChanged, this, &ReadingsTable::chosen);
  connect(m_correct, &QPushButton::clicked, this, &ReadingsTable::correct);
  connect(m_value, &QLineEdit::returnPressed, this, &ReadingsTable::correct);
  connect(m_leaveOut, &QPushButton::clicked, this, [this] {
    if (const auto entry = chosenEntry()) {
      emit actionWanted(workshop::Correct{entry->value, model::CorrectionReason::BadPull, "use",
                                          "not_used", std::nullopt});
    }
  });
  connect(m_withdraw, &QPushButton::clicked, this, [this] {
    if (const auto entry = chosenEntry()) {
      emit actionWanted(workshop::Withdraw{entry->value, std::nullopt});
    }
  });
  connect(m_move, &QPushButton::clicked, this, [this] {
    if (m_series) emit actionWanted(workshop::MoveSeries{m_series->value, std::nullopt});
  });
}

void ReadingsTable::layOut() {
  auto* form = newForm();
  form->addRow(tr("It reads"), m_value);
  auto* buttons = new FlowLayout;
  buttons->addWidget(m_correct);
  buttons->addWidget(m_leaveOut);
  buttons->addWidget(m_withdraw);
  auto* inEditor = new QVBoxLayout(m_editor);
  inEditor->setContentsMargins(0, 0, 0, 0);
  inEditor->addLayout(form);
  inEditor->addWidget(m_reason);
  inEditor->addLayout(buttons);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(m_title);
  column->addWidget(m_list);
  column->addWidget(m_editor);
  column->addWidget(m_move, 0, Qt::AlignLeft);
  m_editor->hide();
}

void ReadingsTable::present(const workshop::SeriesView& series) {
  const QSignalBlocker quiet(m_list);
  m_list->clear();
  m_entries.clear();
  m_series = series.id;
  for (const workshop::ReadingView& reading : series.readings) {
    QString text = report::typedAndSi(reading.fact.value);
    if (const QString use = useText(reading); !use.isEmpty()) text += tr(" – %1").arg(use);
    m_list->addItem(text);
    m_entries.push_back(reading.entry);
  }
  m_list->setCurrentRow(-1);
  const int rows = (m_list->count() + 2) / 3;
  m_list->setFixedHeight((qMin(rows, 3) + 0) * (sizesOf(currentTheme().mode).target + 4) + 6);
  m_move->setVisible(series.side.has_value() && !m_entries.empty());
  m_editor->hide();
  setVisible(!m_entries.empty());
}

void ReadingsTable::clear() {
  m_entries.clear();
  m_series.reset();
  hide();
}

std::optional<model::EntryId> ReadingsTable::chosenEntry() const {
  const int row = m_list->currentRow();
  if (row < 0 || row >= static_cast<int>(m_entries.size())) return std::nullopt;
  return m_entries[static_cast<std::size_t>(row)];
}

void ReadingsTable::chosen() {
  m_editor->setVisible(chosenEntry().has_value());
  m_value->clear();
  m_reason->clear();
}

void ReadingsTable::correct() {
  const auto entry = chosenEntry();
  const auto value = typedIn(*m_value);
  const auto reason = fromWord<model::CorrectionReason>(m_reason->chosen().value_or(""));
  if (!entry) return;
  if (!value) {
    m_value->setFocus();
    return;
  }
  if (!reason) {
    m_reason->findChild<QPushButton*>()->setFocus();
    return;
  }
  emit actionWanted(workshop::Correct{entry->value, *reason, "value", *value, std::nullopt});
}

}  // namespace sw::ui
