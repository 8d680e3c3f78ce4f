// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/vehicles/spec_sheet.h"

#include <QComboBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QTableWidget>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/common/flow_layout.h"
#include "ui/common/page_parts.h"
#include "ui/common/text_label.h"
#include "ui/vehicles/spec_editor.h"
#include "workshop/torque_doubts.h"

namespace sw::ui {

SpecSheet::SpecSheet(ShopSession& session, QWidget* parent)
    : QWidget(parent),
      m_session(session),
      m_missing(new TextLabel(TextRole::Strong, this)),
      m_another(new QPushButton(tr("&Another line"), this)),
      m_table(
          rowTable("specTable", tr("Spec sheet"), {tr("Line"), tr("Figure"), tr("Source")}, this)),
      m_sourceFields(new FormFields(this)) {
  m_missing->setObjectName(QStringLiteral("specMissing"));
  m_another->setObjectName(QStringLiteral("anotherSpec"));
  auto* inside = new QWidget(this);
  m_editor = new SpecEditor(session, inside);
  makeWholeSheet(inside);
  auto* column = new QVBoxLayout(inside);
  column->setContentsMargins(0, 0, column->contentsMargins().right(), 0);
  column->addWidget(m_editor);
  column->addWidget(m_whole);
  column->addStretch(1);
  auto* columns = new QHBoxLayout(this);
  columns->setContentsMargins(0, 0, 0, 0);
  columns->addWidget(laidOutList(), 11);
  columns->addWidget(scrolled(inside, "specScroll", this), 9);
  connectAll();
}

QWidget* SpecSheet::laidOutList() {
  auto* list = new QWidget(this);
  auto* column = new QVBoxLayout(list);
  column->setContentsMargins(0, 0, 0, 0);
  auto* top = new QHBoxLayout;
  top->addWidget(m_missing, 1);
  top->addWidget(m_another);
  column->addLayout(top);
  column->addWidget(m_table, 1);
  return list;
}

void SpecSheet::makeWholeSheet(QWidget* inside) {
  m_whole = new QWidget(inside);
  auto* title = new TextLabel(tr("The whole sheet"), TextRole::Heading, m_whole);
  auto* form = fieldForm();
  auto* source = addLine(form, "sheetSource", tr("One source &for all"),
                         tr("the book and its edition"), m_whole);
  auto* date = addLine(form, "sheetSourceDate", tr("Its date"), tr("like 2031-04-05"), m_whole);
  m_sourceFields->add("source", source);
  m_sourceFields->add("source_date", date);
  m_sourceAll = new QPushButton(tr("Use it for all lines"), m_whole);
  m_sourceAll->setObjectName(QStringLiteral("sourceAll"));
  m_copyPart = new QWidget(m_whole);
  m_from = comboBox("copyFrom", tr("Copy the sheet of"), m_copyPart);
  m_from->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
  m_copy = new QPushButton(tr("Copy the sheet"), m_copyPart);
  m_copy->setObjectName(QStringLiteral("copySheet"));
  auto* copyColumn = new QVBoxLayout(m_copyPart);
  copyColumn->setContentsMargins(0, 0, 0, 0);
  copyColumn->addWidget(new TextLabel(
      tr("Copy the sheet of another vehicle. Lines that are here too take its figures; compare "
         "them with this vehicle's own papers."),
      TextRole::Body, m_copyPart));
  copyColumn->addWidget(m_from);
  auto* copyRow = new FlowLayout;
  copyRow->addWidget(m_copy);
  copyColumn->addLayout(copyRow);
  auto* sourceRow = new FlowLayout;
  sourceRow->addWidget(m_sourceAll);
  auto* column = new QVBoxLayout(m_whole);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(title);
  column->addLayout(form);
  column->addLayout(sourceRow);
  column->addWidget(m_copyPart);
}

void SpecSheet::connectAll() {
  connect(m_another, &QPushButton::clicked, this, [this] {
    edit({});
    m_editor->putCursorFirst();
  });
  connect(m_table, &QTableWidget::itemSelectionChanged, this, [this] {
    const int row = m_table->currentRow();
    if (row >= 0) edit(m_lines.at(static_cast<std::size_t>(row)).need.key);
  });
  connect(m_table, &QTableWidget::cellActivated, m_editor, &SpecEditor::putCursorFirst);
  connect(m_editor, &SpecEditor::saved, this, &SpecSheet::editNextMissing);
  connect(m_sourceAll, &QPushButton::clicked, this, &SpecSheet::sourceAll);
  connect(m_sourceFields, &FormFields::entered, this, &SpecSheet::sourceAll);
  connect(m_copy, &QPushButton::clicked, this, &SpecSheet::copySheet);
}

std::string SpecSheet::registration() const {
  const auto shop = m_session.shop();
  const auto* vehicle = shop ? (*shop)->vehicle(m_vehicle) : nullptr;
  return vehicle == nullptr ? std::string{} : vehicle->fact.registration;
}

void SpecSheet::readLines() {
  m_lines.clear();
  const auto shop = m_session.shop();
  const auto* vehicle = shop ? (*shop)->vehicle(m_vehicle) : nullptr;
  if (vehicle == nullptr) return;
  std::shared_ptr<const workshop::JobState> job;
  if (m_job) {
    if (const auto state = m_session.job(*m_job)) job = *state;
  }
  m_lines = specLines(m_session.library(), **shop, m_vehicle, job.get());
}

void SpecSheet::show(model::VehicleId vehicle, std::optional<model::JobId> job) {
  const bool same = m_vehicle == vehicle && m_job == job;
  m_vehicle = vehicle;
  m_job = job;
  readLines();
  const auto first = std::find_if(m_lines.begin(), m_lines.end(),
                                  [](const SpecLine& line) { return line.missing(); });
  const auto start = first == m_lines.end() ? m_lines.begin() : first;
  if (!same) edit(start == m_lines.end() ? std::string{} : start->need.key);
  refresh();
}

void SpecSheet::refresh() {
  readLines();
  fillTable();
  listVehicles();
  for (const SpecLine& line : m_lines) {
    if (line.need.key == m_editor->key()) m_editor->follow(line);
  }
  const bool onFile = std::any_of(m_lines.begin(), m_lines.end(),
                                  [](const SpecLine& line) { return !line.missing(); });
  m_sourceAll->setEnabled(onFile);
  const auto count = missing();
  m_missing->setText(count == 0 ? tr("All lines the work asks for are on file.")
                                : tr("Missing lines the work asks for: %1").arg(count));
}

std::size_t SpecSheet::missing() const {
  return static_cast<std::size_t>(std::count_if(
      m_lines.begin(), m_lines.end(), [](const SpecLine& line) { return line.missing(); }));
}

/// A torque that its bolt would not bear says so where it stands.
QString SpecSheet::figureWithDoubt(const model::SpecItem& item) {
  const auto doubt = workshop::torqueDoubt(item);
  if (!doubt) return specFigure(item);
  return tr("%1 – look again: %2").arg(specFigure(item), QString::fromStdString(doubt->sentence));
}

void SpecSheet::fillTable() {
  const QSignalBlocker quiet(m_table);
  m_table->setRowCount(static_cast<int>(m_lines.size()));
  m_table->clearSelection();
  for (int row = 0; row < m_table->rowCount(); ++row) {
    const SpecLine& line = m_lines.at(static_cast<std::size_t>(row));
    const QString source = line.missing() ? QString() : specSource(*line.item);
    fillRow(m_table, row,
            {specName(line.need.key), line.missing() ? tr("missing") : figureWithDoubt(*line.item),
             line.missing() || !source.isEmpty() ? source : tr("no source")});
    if (line.missing()) {
      QFont bold = m_table->font();
      bold.setBold(true);
      m_table->item(row, 1)->setFont(bold);
    }
    if (line.need.key == m_editor->key()) m_table->selectRow(row);
  }
}

void SpecSheet::listVehicles() {
  const QVariant before = m_from->currentData();
  m_from->clear();
  const auto shop = m_session.shop();
  if (!shop) return;
  for (const auto* other : (*shop)->vehicles()) {
    const model::Vehicle& fact = other->fact;
    if (fact.vehicle == m_vehicle || (*shop)->specSheet(fact.vehicle).empty()) continue;
    const QString plate = QString::fromStdString(fact.registration);
    const QString what = QString::fromStdString(fact.makeModel);
    m_from->addItem(what.isEmpty() ? plate : tr("%1 – %2").arg(plate, what), plate);
  }
  m_copyPart->setVisible(m_from->count() > 0);
  m_from->setCurrentIndex(std::max(0, m_from->findData(before)));
}

void SpecSheet::edit(const std::string& key) {
  const auto shop = m_session.shop();
  const auto* vehicle = shop ? (*shop)->vehicle(m_vehicle) : nullptr;
  if (vehicle == nullptr) return;
  const auto found = std::find_if(m_lines.begin(), m_lines.end(),
                                  [&](const SpecLine& line) { return line.need.key == key; });
  if (found == m_lines.end()) {
    const QSignalBlocker quiet(m_table);
    m_table->clearSelection();
    m_table->setCurrentCell(-1, -1);
  }
  m_editor->show(vehicle->fact,
                 found == m_lines.end() ? std::nullopt : std::optional<SpecLine>(*found));
}

/// On to the next line that is missing, the cursor in its figure; at the end the table again.
void SpecSheet::editNextMissing() {
  readLines();
  const auto at = std::find_if(m_lines.begin(), m_lines.end(), [&](const SpecLine& line) {
    return line.need.key == m_editor->key();
  });
  const auto isMissing = [](const SpecLine& line) { return line.missing(); };
  auto next =
      std::find_if(at == m_lines.end() ? m_lines.begin() : at + 1, m_lines.end(), isMissing);
  if (next == m_lines.end()) next = std::find_if(m_lines.begin(), m_lines.end(), isMissing);
  const bool more = next != m_lines.end() && next != at;
  edit(more ? next->need.key : m_editor->key());
  fillTable();
  if (more) {
    m_editor->putCursorFirst();
  } else {
    m_table->setFocus();
  }
}

void SpecSheet::sourceAll() {
  workshop::SourceSpec action;
  action.registration = registration();
  action.source = m_sourceFields->text("source");
  action.sourceDate = m_sourceFields->changed("source_date");
  if (action.source.empty()) {
    m_sourceFields->focus("source");
    return;
  }
  const auto outcome = m_session.perform(action);
  if (!outcome) {
    m_sourceFields->focus(outcome.error().field);
    return;
  }
  m_sourceFields->show({});
}

void SpecSheet::copySheet() {
  workshop::CopySpec action;
  action.from = m_from->currentData().toString().toStdString();
  action.to = registration();
  (void)m_session.perform(action);
}

}  // namespace sw::ui
