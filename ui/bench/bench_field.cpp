// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/bench/bench_field.h"

#include <QComboBox>
#include <QFormLayout>
#include <QLineEdit>
#include <QVBoxLayout>
#include <algorithm>
#include <charconv>
#include <nlohmann/json.hpp>

#include "compute/readable.h"
#include "ui/bench/bench_words.h"
#include "ui/common/flow_layout.h"
#include "ui/common/form.h"
#include "ui/common/page_parts.h"
#include "ui/common/tab_order.h"
#include "ui/common/text_label.h"
#include "ui/common/theme.h"
#include "ui/common/word_button.h"
#include "units/parse.h"

namespace sw::ui {

namespace {

using compute::FieldDescription;
using model::Json;

constexpr std::string_view kListOf = "list of ";
constexpr std::string_view kListOfObject = "list of object";
constexpr int kFieldEms = 22;  // widest
constexpr int kListEms = 40;

bool isListOfObjects(const FieldDescription& field) {
  return field.kind == kListOfObject;
}

QString nameOf(const FieldDescription& field) {
  return QString::fromStdString(compute::readableName(field.name));
}

/// "mm" or "18.5 N": what a good entry looks like.
QString placeholderOf(const FieldDescription& field) {
  QStringList parts;
  if (!field.unit.empty()) parts += benchWords(field.unit);
  std::string usual(field.defaultValue);
  usual.erase(std::remove(usual.begin(), usual.end(), '"'), usual.end());
  if (!usual.empty()) parts += QObject::tr("usually %1").arg(QString::fromStdString(usual));
  return parts.join(QStringLiteral(", "));
}

QString hintOf(const FieldDescription& field) {
  QStringList parts;
  const auto add = [&](std::string_view text) {
    if (!text.empty()) parts += benchWords(text);
  };
  add(field.meaning);
  if (field.kind != "word") add(field.range);
  return parts.join(QStringLiteral("; "));
}

std::vector<std::string> wordsIn(std::string_view range) {
  std::vector<std::string> words;
  std::string word;
  for (const char c : range) {
    if (c == '|') {
      words.push_back(std::exchange(word, {}));
    } else if (c != ' ') {
      word += c;
    }
  }
  if (!word.empty()) words.push_back(word);
  return words;
}

/// A decimal point or comma; nothing where the text is no number.
std::optional<double> numberIn(std::string text) {
  std::replace(text.begin(), text.end(), ',', '.');
  double value = 0;
  const char* const last = text.data() + text.size();
  const auto [end, error] = std::from_chars(text.data(), last, value);
  if (error != std::errc{} || end != last) return std::nullopt;
  return value;
}

bool isNumberKind(std::string_view kind) {
  return kind == "number" || kind == "whole number" || kind.starts_with("number ");
}

std::string trimmed(std::string text) {
  const auto blank = [](char c) { return c == ' ' || c == '\t'; };
  text.erase(text.begin(), std::find_if_not(text.begin(), text.end(), blank));
  while (!text.empty() && blank(text.back())) text.pop_back();
  return text;
}

std::string textOf(const Json& value) {
  return value.is_string() ? value.get<std::string>() : value.dump();
}

}  // namespace

BenchField::BenchField(const FieldDescription& field, std::string path, QWidget* parent)
    : QWidget(parent), m_field(field), m_path(std::move(path)) {}

bool BenchField::canShow(const FieldDescription& field) {
  return !isListOfObjects(field) ||
         std::none_of(field.fields.begin(), field.fields.end(), isListOfObjects);
}

BenchField* newBenchField(const FieldDescription& field, std::string path, QWidget* parent) {
  if (isListOfObjects(field)) return new RowsField(field, std::move(path), parent);
  if (field.kind == "object") return new GroupField(field, std::move(path), parent);
  if (field.kind == "word" || field.kind == "boolean") {
    return new ChoiceField(field, std::move(path), parent);
  }
  return new LineField(field, std::move(path), parent);
}

LineField::LineField(const FieldDescription& field, std::string path, QWidget* parent)
    : BenchField(field, std::move(path), parent),
      m_kind(field.kind),
      m_isList(field.kind.starts_with(kListOf)) {
  if (m_isList) m_kind = std::string(field.kind.substr(kListOf.size()));
  const std::string name = "bench:" + this->path();
  m_edit = lineEdit(
      name.c_str(), nameOf(field),
      m_isList ? tr("several, e.g. 1 2 3 %1").arg(placeholderOf(field)) : placeholderOf(field),
      this);
  m_edit->setAccessibleDescription(hintOf(field));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(m_edit);
  setFocusProxy(m_edit);
  const int em = sizesOf(Mode::Desk).textPixels;
  setMaximumWidth((m_isList ? kListEms : kFieldEms) * em);
  connect(m_edit, &QLineEdit::textEdited, this, &BenchField::edited);
}

Json LineField::scalar(const std::string& text) const {
  if (isNumberKind(m_kind)) {
    const auto number = numberIn(text);
    if (!number) return Json(text);
    const auto whole = static_cast<std::int64_t>(*number);
    return m_kind == "whole number" && static_cast<double>(whole) == *number ? Json(whole)
                                                                             : Json(*number);
  }
  return Json(text);
}

/// "11.5 12 11.5 N" or words with commas between them. What cannot be read stays whole, so that the
/// calculation names it.
Json LineField::list(const std::string& text) const {
  Json values = Json::array();
  const auto kind = quantityKindFromWord(m_kind);
  if (kind && *kind != QuantityKind::Number) {
    const auto series = parseSeries(text, {name(), *kind, std::string(field().unit)});
    if (!series) return Json::array({text});
    for (const auto& value : *series) values.push_back(value.value.text());
    return values;
  }
  std::string part;
  const auto take = [&] {
    if (!trimmed(part).empty()) values.push_back(scalar(trimmed(part)));
    part.clear();
  };
  const bool spaced = isNumberKind(m_kind);
  for (const char c : text) {
    if (c == ';' || (c == ',' && !spaced) || (c == ' ' && spaced)) {
      take();
    } else {
      part += c;
    }
  }
  take();
  return values;
}

std::optional<Json> LineField::value() const {
  const std::string text = trimmed(m_edit->text().toStdString());
  if (text.empty()) return std::nullopt;
  return m_isList ? list(text) : scalar(text);
}

void LineField::show(const Json& value) {
  QStringList parts;
  if (value.is_array()) {
    for (const Json& each : value) parts += QString::fromStdString(textOf(each));
  } else {
    parts += QString::fromStdString(textOf(value));
  }
  m_edit->setText(parts.join(QStringLiteral("; ")));
}

void LineField::clear() {
  m_edit->clear();
}

bool LineField::focusOn(const std::string& path) {
  if (!path.starts_with(this->path())) return false;
  putCursor(m_edit);
  m_edit->selectAll();
  return true;
}

ChoiceField::ChoiceField(const FieldDescription& field, std::string path, QWidget* parent)
    : BenchField(field, std::move(path), parent) {
  const std::string name = "bench:" + this->path();
  m_box = comboBox(name.c_str(), nameOf(field), this);
  m_box->setAccessibleDescription(hintOf(field));
  const QString usual = placeholderOf(field);
  m_box->addItem(usual.isEmpty() ? tr("choose") : usual, QString());
  if (field.kind == "boolean") {
    m_box->addItem(tr("yes"), QStringLiteral("true"));
    m_box->addItem(tr("no"), QStringLiteral("false"));
  } else {
    for (const std::string& word : wordsIn(field.range)) {
      QString shown = QString::fromStdString(word);
      m_box->addItem(shown.replace(QLatin1Char('_'), QLatin1Char(' ')),
                     QString::fromStdString(word));
    }
  }
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(m_box);
  setFocusProxy(m_box);
  setMaximumWidth(kListEms * sizesOf(Mode::Desk).textPixels);
  connect(m_box, &QComboBox::activated, this, &BenchField::edited);
}

std::optional<Json> ChoiceField::value() const {
  const std::string word = m_box->currentData().toString().toStdString();
  if (word.empty()) return std::nullopt;
  if (field().kind == "boolean") return Json(word == "true");
  return Json(word);
}

void ChoiceField::show(const Json& value) {
  const QString word = QString::fromStdString(textOf(value));
  m_box->setCurrentIndex(std::max(0, m_box->findData(word)));
}

void ChoiceField::clear() {
  m_box->setCurrentIndex(0);
}

bool ChoiceField::focusOn(const std::string& path) {
  if (!path.starts_with(this->path())) return false;
  putCursor(m_box);
  return true;
}

GroupField::GroupField(const FieldDescription& field, std::string path, QWidget* parent)
    : BenchField(field, std::move(path), parent) {
  auto* form = newForm(this);
  form->setContentsMargins(sizesOf(Mode::Desk).gap, 0, 0, 0);
  for (const FieldDescription& inner : field.fields) {
    auto* made = newBenchField(inner, this->path() + "/" + std::string(inner.name), this);
    connect(made, &BenchField::edited, this, &BenchField::edited);
    sw::ui::addRow(form, nameOf(inner), made);
    m_fields.push_back(made);
  }
}

std::optional<Json> GroupField::value() const {
  Json object = Json::object();
  for (const BenchField* each : m_fields) {
    if (auto value = each->value()) object[each->name()] = std::move(*value);
  }
  if (object.empty()) return std::nullopt;
  return object;
}

void GroupField::show(const Json& value) {
  for (BenchField* each : m_fields) {
    const auto found = value.find(each->name());
    found == value.end() ? each->clear() : each->show(*found);
  }
}

void GroupField::clear() {
  for (BenchField* each : m_fields) each->clear();
}

bool GroupField::focusOn(const std::string& path) {
  if (std::any_of(m_fields.begin(), m_fields.end(),
                  [&](BenchField* each) { return each->focusOn(path); })) {
    return true;
  }
  return path.starts_with(this->path()) && !m_fields.empty() &&
         m_fields.front()->focusOn(m_fields.front()->path());
}

RowsField::RowsField(const FieldDescription& field, std::string path, QWidget* parent)
    : BenchField(field, std::move(path), parent), m_lines(new QVBoxLayout) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addLayout(m_lines);
  const std::string name = "benchMore:" + this->path();
  auto* more = new WordButton(name.c_str(), tr("One more"), this);
  more->setAccessibleName(tr("One more: %1").arg(nameOf(field)));
  column->addWidget(more, 0, Qt::AlignLeft);
  connect(more, &QPushButton::clicked, this, [this] {
    addRow();
    emit edited();
    m_rows.back().fields.front()->setFocus();
  });
  addRow();
}

void RowsField::addRow() {
  const std::string place = path() + "/" + std::to_string(m_rows.size());
  auto* line = new QWidget(this);
  auto* flow = new FlowLayout(line);
  Row row{line, {}};
  for (const FieldDescription& inner : field().fields) {
    auto* cell = new QWidget(line);
    auto* column = new QVBoxLayout(cell);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(new TextLabel(nameOf(inner), TextRole::Quiet, cell));
    auto* made = newBenchField(inner, place + "/" + std::string(inner.name), cell);
    made->setMinimumWidth(3 * sizesOf(Mode::Workshop).target);
    column->addWidget(made);
    connect(made, &BenchField::edited, this, &BenchField::edited);
    flow->addWidget(cell);
    row.fields.push_back(made);
  }
  const std::string name = "benchLess:" + place;
  auto* last = new QWidget(line);
  auto* lastColumn = new QVBoxLayout(last);
  lastColumn->setContentsMargins(0, 0, 0, 0);
  // As high as the names above the fields beside it.
  lastColumn->addWidget(new TextLabel(QStringLiteral(" "), TextRole::Quiet, last));
  auto* less = new WordButton(name.c_str(), tr("Take away"), last);
  lastColumn->addWidget(less);
  less->setAccessibleName(
      tr("Take away line %1 of %2").arg(m_rows.size() + 1).arg(nameOf(field())));
  connect(less, &QPushButton::clicked, this, [this, line] {
    removeRow(line);
    emit edited();
  });
  flow->addWidget(last);
  m_lines->addWidget(line);
  m_rows.push_back(std::move(row));
  tabAsLaidOut(*this);
}

/// Paths follow from places, so the lines are made anew with what stands in them.
void RowsField::removeRow(const QWidget* widget) {
  Json rest = Json::array();
  for (const Row& row : m_rows) {
    if (row.widget == widget) continue;
    Json object = Json::object();
    for (const BenchField* each : row.fields) {
      if (auto value = each->value()) object[each->name()] = std::move(*value);
    }
    rest.push_back(std::move(object));
  }
  show(rest);
}

void RowsField::setCount(std::size_t rows) {
  while (m_rows.size() > rows) {
    m_rows.back().widget->hide();
    m_rows.back().widget->deleteLater();
    m_rows.pop_back();
  }
  while (m_rows.size() < rows) addRow();
}

std::optional<Json> RowsField::value() const {
  Json list = Json::array();
  for (const Row& row : m_rows) {
    Json object = Json::object();
    for (const BenchField* each : row.fields) {
      if (auto value = each->value()) object[each->name()] = std::move(*value);
    }
    if (!object.empty()) list.push_back(std::move(object));
  }
  if (list.empty()) return std::nullopt;
  return list;
}

void RowsField::show(const Json& value) {
  setCount(std::max<std::size_t>(1, value.size()));
  for (std::size_t i = 0; i < m_rows.size(); ++i) {
    for (BenchField* each : m_rows[i].fields) {
      each->clear();
      if (i >= value.size()) continue;
      const auto found = value[i].find(each->name());
      if (found != value[i].end()) each->show(*found);
    }
  }
}

void RowsField::clear() {
  setCount(1);
  for (BenchField* each : m_rows.front().fields) each->clear();
}

bool RowsField::focusOn(const std::string& path) {
  for (const Row& row : m_rows) {
    for (BenchField* each : row.fields) {
      if (each->focusOn(path)) return true;
    }
  }
  if (!path.starts_with(this->path())) return false;
  BenchField* first = m_rows.front().fields.front();
  return first->focusOn(first->path());
}

}  // namespace sw::ui
