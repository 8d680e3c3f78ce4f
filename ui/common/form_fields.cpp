// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/common/form_fields.h"

#include <QComboBox>
#include <QLineEdit>
#include <QPushButton>
#include <QTimer>
#include <algorithm>

#include "ui/common/choice_row.h"
#include "ui/common/page_parts.h"

namespace sw::ui {

namespace {

constexpr int kSettleAfter = 400;  // ms after the last key

}  // namespace

FormFields::FormFields(QObject* parent) : QObject(parent), m_wait(new QTimer(this)) {
  m_wait->setSingleShot(true);
  m_wait->setInterval(kSettleAfter);
  connect(m_wait, &QTimer::timeout, this, &FormFields::settle);
}

void FormFields::add(const std::string& field, QLineEdit* edit) {
  m_fields.push_back({field,
                      edit,
                      [edit] { return typed(edit).value_or(""); },
                      [edit](const std::string& text) {
                        edit->setText(QString::fromStdString(text));
                        edit->setCursorPosition(0);  // long texts are read from their beginning
                      },
                      {}});
  connect(edit, &QLineEdit::textEdited, this, &FormFields::edited);
  connect(edit, &QLineEdit::textEdited, m_wait, qOverload<>(&QTimer::start));
  connect(edit, &QLineEdit::editingFinished, this, &FormFields::settle);
  connect(edit, &QLineEdit::returnPressed, this, &FormFields::entered);
}

void FormFields::add(const std::string& field, ChoiceRow* row) {
  m_fields.push_back({field,
                      row,
                      [row] { return row->chosen().value_or(""); },
                      [row](const std::string& word) {
                        row->clear();
                        row->choose(word);
                      },
                      {}});
  connect(row, &ChoiceRow::answered, this, &FormFields::edited);
  connect(row, &ChoiceRow::answered, this, &FormFields::settle);
}

void FormFields::add(const std::string& field, QComboBox* box) {
  m_fields.push_back({field,
                      box,
                      [box] { return box->currentData().toString().toStdString(); },
                      [box](const std::string& word) {
                        box->setCurrentIndex(box->findData(QString::fromStdString(word)));
                      },
                      {}});
  connect(box, &QComboBox::activated, this, &FormFields::edited);
  connect(box, &QComboBox::activated, this, &FormFields::settle);
}

void FormFields::show(const FieldTexts& record) {
  for (Field& field : m_fields) {
    const auto found = record.find(field.name);
    field.write(found == record.end() ? std::string{} : found->second);
    field.record = field.read();
  }
  m_settled.clear();
}

void FormFields::follow(const FieldTexts& record) {
  for (Field& field : m_fields) {
    const bool touched = field.read() != field.record;
    const auto found = record.find(field.name);
    field.record = found == record.end() ? std::string{} : found->second;
    if (touched) continue;
    field.write(field.record);
    field.record = field.read();
  }
}

const FormFields::Field* FormFields::find(const std::string& field) const {
  const auto found = std::find_if(m_fields.begin(), m_fields.end(),
                                  [&](const Field& one) { return one.name == field; });
  return found == m_fields.end() ? nullptr : &*found;
}

std::string FormFields::text(const std::string& field) const {
  const Field* found = find(field);
  return found == nullptr ? std::string{} : found->read();
}

std::optional<std::string> FormFields::changed(const std::string& field) const {
  const Field* found = find(field);
  if (found == nullptr) return std::nullopt;
  std::string text = found->read();
  if (text == found->record) return std::nullopt;
  return text;
}

bool FormFields::hasChanges() const {
  return std::any_of(m_fields.begin(), m_fields.end(),
                     [](const Field& field) { return field.read() != field.record; });
}

bool FormFields::focus(const std::string& field) const {
  const Field* found = find(field);
  if (found == nullptr) return false;
  QWidget* target = found->widget;
  if (auto* row = qobject_cast<ChoiceRow*>(target)) target = row->findChild<QPushButton*>();
  putCursor(target);
  if (auto* edit = qobject_cast<QLineEdit*>(target)) edit->selectAll();
  return true;
}

QString FormFields::draft() const {
  QString draft;
  for (const Field& field : m_fields) {
    const std::string text = field.read();
    if (text == field.record) continue;
    draft += QString::fromStdString(field.name + "=" + text + "\n");
  }
  return draft;
}

bool FormFields::takeDraft(const QString& draft) {
  bool taken = false;
  for (const QString& line : draft.split(QLatin1Char('\n'), Qt::SkipEmptyParts)) {
    const auto mark = line.indexOf(QLatin1Char('='));
    const Field* field = find(line.left(mark).toStdString());
    if (mark < 0 || field == nullptr) continue;
    field->write(line.mid(mark + 1).toStdString());
    taken = true;
  }
  m_settled = this->draft();
  return taken;
}

void FormFields::settle() {
  const QString now = draft();
  if (now == m_settled) return;
  m_settled = now;
  emit settled();
}

}  // namespace sw::ui
