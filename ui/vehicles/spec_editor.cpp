// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/vehicles/spec_editor.h"

#include <QComboBox>
#include <QFormLayout>
#include <QIntValidator>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>

#include "phrasing/error_sentence.h"
#include "ui/common/choice_row.h"
#include "ui/common/flow_layout.h"
#include "ui/common/page_parts.h"
#include "ui/common/text_label.h"
#include "units/parse.h"

namespace sw::ui {

namespace {

using model::SpecKind;

constexpr int kMostFasteners = 99;

/// The fields a kind of line has; all have a source.
std::vector<std::string> fieldsOf(SpecKind type) {
  switch (type) {
    case SpecKind::Limit:
      return {"min", "max", "second_min", "second_max"};
    case SpecKind::Torque:
      return {"value",          "max",   "second_value", "second_max", "fastener_size",
              "fastener_class", "count", "pattern",      "single_use"};
    case SpecKind::Value:
      return {"value", "second_value"};
    case SpecKind::Text:
      break;
  }
  return {"text"};
}

/// What a line of this kind does not have is not sent unseen.
void clearField(QWidget* widget) {
  if (auto* edit = qobject_cast<QLineEdit*>(widget)) edit->clear();
  if (auto* box = qobject_cast<QComboBox*>(widget)) box->setCurrentIndex(0);
  if (auto* row = qobject_cast<ChoiceRow*>(widget)) row->clear();
}

}  // namespace

SpecEditor::SpecEditor(ShopSession& session, QWidget* parent)
    : QWidget(parent),
      m_session(session),
      m_fields(new FormFields(this)),
      m_title(new TextLabel(TextRole::Heading, this)),
      m_unsaved(new TextLabel(tr("What was typed before and not saved stands here again."),
                              TextRole::Quiet, this)),
      m_form(fieldForm()) {
  m_title->setObjectName(QStringLiteral("specTitle"));
  m_title->setWordWrap(true);
  makeFields();
  m_problem = new TextLabel(TextRole::Strong, this);
  m_problem->setObjectName(QStringLiteral("specProblem"));
  m_save = new QPushButton(tr("Save the &line"), this);
  m_save->setObjectName(QStringLiteral("saveSpec"));
  m_takeOff = new QPushButton(tr("Take it off the sheet"), this);
  m_takeOff->setObjectName(QStringLiteral("takeOffSpec"));
  auto* buttons = new FlowLayout;
  buttons->addWidget(m_save);
  buttons->addWidget(m_takeOff);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(m_title);
  column->addWidget(m_unsaved);
  column->addLayout(m_form);
  column->addWidget(m_problem);
  column->addLayout(buttons);

  connect(m_type, &QComboBox::currentIndexChanged, this, &SpecEditor::fitToType);
  connect(m_fields, &FormFields::entered, this, &SpecEditor::save);
  connect(m_fields, &FormFields::settled, this,
          [this] { m_session.keepDraft(place(), m_fields->draft()); });
  connect(m_save, &QPushButton::clicked, this, &SpecEditor::save);
  connect(m_takeOff, &QPushButton::clicked, this, &SpecEditor::takeOff);
}

QLineEdit* SpecEditor::add(const char* field, const char* name, const QString& label,
                           const QString& example) {
  auto* edit = addLine(m_form, name, label, example, this);
  m_fields->add(field, edit);
  m_rows.push_back({field, edit});
  return edit;
}

void SpecEditor::makeFields() {
  add("key", "specKey", tr("&Name"), tr("what the line is called"));
  m_type = comboBox("specType", tr("Kind"), this);
  m_type->addItem(tr("a limit"), QStringLiteral("limit"));
  m_type->addItem(tr("a torque"), QStringLiteral("torque"));
  m_type->addItem(tr("a value"), QStringLiteral("value"));
  m_type->addItem(tr("a text"), QStringLiteral("text"));
  addRow(m_form, tr("&Kind"), m_type);
  m_rows.push_back({"type", m_type});
  add("min", "specMin", tr("At l&east"), {});
  add("value", "specValue", tr("Fi&gure"), {});
  add("max", "specMax", tr("At &most"), {});
  const QString other = tr("if the source has it");
  add("second_min", "specSecondMin", tr("At least, other unit"), other);
  add("second_value", "specSecondValue", tr("Figure, other unit"), other);
  add("second_max", "specSecondMax", tr("At most, other unit"), other);
  add("text", "specText", tr("&Text"), tr("in own words, with units"));
  add("fastener_size", "fastenerSize", tr("Thread si&ze"), tr("like M10x1.5"));
  add("fastener_class", "fastenerClass", tr("Property &class"), tr("like 8.8"));
  add("count", "fastenerCount", tr("How many on one side"), {})
      ->setValidator(new QIntValidator(1, kMostFasteners, this));
  m_pattern = comboBox("fastenerPattern", tr("Order of tightening"), this);
  m_pattern->addItem(tr("not said"), QString());
  m_pattern->addItem(tr("crosswise"), QStringLiteral("cross"));
  m_pattern->addItem(tr("in a star"), QStringLiteral("star"));
  m_pattern->addItem(tr("in any order"), QStringLiteral("none"));
  addRow(m_form, tr("&Order of tightening"), m_pattern);
  m_fields->add("pattern", m_pattern);
  m_rows.push_back({"pattern", m_pattern});
  m_singleUse = new ChoiceRow(QStringLiteral("singleUse"), tr("Are they used once only?"),
                              {{"yes", tr("yes")}, {"no", tr("no")}}, this);
  m_form->addRow(m_singleUse);
  m_fields->add("single_use", m_singleUse);
  m_rows.push_back({"single_use", m_singleUse});
  add("source", "specSource", tr("So&urce"), tr("book and page"));
  add("source_date", "specSourceDate", tr("&Date of the source"), tr("like 2031-04-05"));
}

SpecKind SpecEditor::type() const {
  if (!m_need.key.empty()) return m_need.type;
  return fromWord<SpecKind>(m_type->currentData().toString().toStdString())
      .value_or(SpecKind::Text);
}

void SpecEditor::fitToType() {
  const std::vector<std::string> fields = fieldsOf(type());
  const bool own = m_need.key.empty();
  for (const Row& row : m_rows) {
    const bool named = std::find(fields.begin(), fields.end(), row.field) != fields.end();
    const bool ofOwn = row.field == "key" || row.field == "type";
    const bool always = row.field == "source" || row.field == "source_date";
    m_form->setRowVisible(row.widget, ofOwn ? own : named || always);
    if (own && !ofOwn && !named && !always) clearField(row.widget);
    const bool figure = row.field == "min" || row.field == "value" || row.field == "max";
    auto* edit = qobject_cast<QLineEdit*>(row.widget);
    if (!figure || edit == nullptr) continue;
    const bool slot = row.field == "max" && type() == SpecKind::Torque;
    edit->setPlaceholderText(slot ? tr("only for a slotted nut") : unitsHint(m_need.quantity));
  }
}

QString SpecEditor::place() const {
  return QStringLiteral("vehicle/%1/spec/%2")
      .arg(m_vehicle.value)
      .arg(QString::fromStdString(m_need.key));
}

void SpecEditor::show(const model::Vehicle& vehicle, const std::optional<SpecLine>& line) {
  m_vehicle = vehicle.vehicle;
  m_registration = vehicle.registration;
  m_need = line ? line->need : SpecNeed{};
  m_onFile = line && !line->missing();
  m_fields->show(m_onFile ? textsOf(*line->item) : FieldTexts{});
  m_unsaved->setVisible(m_fields->takeDraft(m_session.draft(place())));
  m_problem->hide();
  m_title->setText(line ? specName(m_need.key) : tr("Another line"));
  m_takeOff->setVisible(m_onFile);
  fitToType();
}

void SpecEditor::follow(const SpecLine& line) {
  m_onFile = !line.missing();
  m_fields->follow(m_onFile ? textsOf(*line.item) : FieldTexts{});
  m_takeOff->setVisible(m_onFile);
}

void SpecEditor::putCursorFirst() {
  for (const Row& row : m_rows) {
    if (!row.widget->isVisibleTo(this)) continue;
    m_fields->focus(row.field);
    return;
  }
}

/// A bare number takes the unit of what is measured. False where the figure cannot be read.
bool SpecEditor::readBareNumber(const char* field, workshop::OptText& text) {
  if (!m_need.quantity || !text || text->empty()) return true;
  const auto read = parseQuantity(*text, {field, *m_need.quantity, {}});
  if (!read) {
    m_problem->say(phrasing::sentence(read.error()));
    m_fields->focus(field);
    return false;
  }
  const auto& notes = read->notes;
  const bool bare = std::find(notes.begin(), notes.end(), ReadNote::BareNumber) != notes.end();
  if (bare) text = read->value.text();
  return true;
}

void SpecEditor::save() {
  m_problem->hide();
  if (!m_fields->hasChanges()) {
    m_problem->say(m_onFile ? tr("Nothing is different from what is on file.")
                            : tr("Type the figure first."));
    return;
  }
  workshop::SetSpec action;
  takeChanges(*m_fields, action);
  action.registration = m_registration;
  action.key = m_need.key.empty() ? m_fields->text("key") : m_need.key;
  action.type = type();
  const auto shop = m_session.shop();
  const bool known = shop && (*shop)->spec(m_vehicle, action.key) != nullptr;
  if (m_need.key.empty() && (known || action.key.empty())) {
    m_problem->say(known ? tr("There is a line of this name. Choose it in the list to change it.")
                         : tr("Name: say what the line is called."));
    m_fields->focus("key");
    return;
  }
  const bool readable = readBareNumber("min", action.min) && readBareNumber("max", action.max) &&
                        readBareNumber("value", action.value);
  if (readable) send(action);
}

void SpecEditor::takeOff() {
  workshop::SetSpec action;
  action.registration = m_registration;
  action.key = m_need.key;
  action.type = m_need.type;
  action.withdrawn = true;
  send(action);
}

void SpecEditor::send(const workshop::SetSpec& action) {
  const QString kept = place();
  const auto outcome = m_session.perform(action);
  if (!outcome) {
    const std::string& field = outcome.error().field;
    const bool shown = field != "value" || m_need.type != SpecKind::Limit;
    m_fields->focus(shown ? field : "min");
    return;
  }
  m_session.keepDraft(kept, {});
  emit saved();
}

}  // namespace sw::ui
