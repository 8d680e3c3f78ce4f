// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/readable.h"

#include <algorithm>
#include <charconv>
#include <nlohmann/json.hpp>

#include "compute/kind_of_text.h"
#include "phrasing/verdict_phrase.h"
#include "units/format.h"
#include "units/parse.h"
#include "units/unit.h"

namespace sw::compute {

namespace {

using model::Json;

constexpr int kDigits = 4;
constexpr std::string_view kListOfObject = "list of object";

std::string spaced(std::string_view word) {
  std::string text(word);
  std::replace(text.begin(), text.end(), '_', ' ');
  return text;
}

std::string numberText(double value) {
  return displayText(value, defaultUnit(QuantityKind::Number), kDigits);
}

/// "5.16461933187449 N m" with the digits that mean something; what was typed with few stays.
std::string quantityForPeople(const std::string& text) {
  double value = 0;
  const char* const last = text.data() + text.size();
  const auto [end, error] = std::from_chars(text.data(), last, value);
  if (error != std::errc{} || end == last || *end != ' ') return text;
  const auto digits = std::count_if(text.data(), end, [](char c) { return c >= '0' && c <= '9'; });
  if (digits <= kDigits) return text;
  std::string shown = numberText(value);
  return shown + std::string(end, last);
}

std::string scalarText(const FieldDescription& field, const Json& value) {
  if (value.is_string()) {
    const auto text = value.get<std::string>();
    return field.kind == "word" ? spaced(text) : quantityForPeople(text);
  }
  if (value.is_boolean()) return value.get<bool>() ? "yes" : "no";
  if (value.is_number_integer()) return std::to_string(value.get<std::int64_t>());
  if (value.is_number()) return numberText(value.get<double>());
  return value.dump();
}

std::string listText(const FieldDescription& field, const Json& list) {
  std::string text;
  for (const Json& value : list) {
    if (!text.empty()) text += ", ";
    text += scalarText(field, value);
  }
  return text;
}

/// What was judged, with its verdict: "22.4000 ± 0.0034 mm, within"; nothing for other objects.
std::optional<std::string> judgedText(const Json& object) {
  const auto text = [&](const char* key) {
    const auto found = object.find(key);
    return found != object.end() && found->is_string() ? found->get<std::string>() : std::string();
  };
  const auto kind = commonKind({text("value"), text("expanded_uncertainty")});
  if (!kind || text("verdict").empty()) return std::nullopt;
  const auto value = parseQuantity(text("value"), {"value", *kind, {}});
  const auto doubt = parseQuantity(text("expanded_uncertainty"), {"value", *kind, {}});
  if (!value || !doubt) return std::nullopt;
  const auto measured =
      phrasing::measuredText(value->value.si, doubt->value.si, defaultUnit(*kind)).toStdString();
  if (text("verdict") == word(Verdict::NoLimit)) return measured;
  return measured + ", " + phrasing::verdictName(text("verdict"), text("side")).toStdString();
}

std::string cellText(const FieldDescription& field, const Json& object) {
  const auto found = object.find(std::string(field.name));
  if (found == object.end()) return {};
  if (found->is_array()) return listText(field, *found);
  if (!found->is_object()) return scalarText(field, *found);
  if (auto judged = judgedText(*found)) return std::move(*judged);
  std::string text;
  for (const FieldDescription& inner : field.fields) {
    const std::string value = cellText(inner, *found);
    if (value.empty()) continue;
    if (!text.empty()) text += ", ";
    text += spaced(inner.name) + " " + value;
  }
  return text;
}

ReadableTable tableOf(const FieldDescription& field, const Json& list) {
  ReadableTable table;
  table.name = readableName(field.name);
  std::vector<const FieldDescription*> used;
  for (const FieldDescription& column : field.fields) {
    const bool there = std::any_of(list.begin(), list.end(), [&](const Json& row) {
      return row.is_object() && row.contains(std::string(column.name));
    });
    if (!there) continue;
    used.push_back(&column);
    table.columns.push_back(readableName(column.name));
  }
  for (const Json& row : list) {
    std::vector<std::string> cells;
    for (const FieldDescription* column : used) cells.push_back(cellText(*column, row));
    table.rows.push_back(std::move(cells));
  }
  return table;
}

}  // namespace

std::string readableName(std::string_view name) {
  std::string text = spaced(name);
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') {
    text[0] = static_cast<char>(text[0] - 'a' + 'A');
  }
  return text;
}

Readable readable(const std::vector<FieldDescription>& fields, const Json& values) {
  Readable result;
  for (const FieldDescription& field : fields) {
    const auto found = values.find(std::string(field.name));
    if (found == values.end()) continue;
    if (field.kind == kListOfObject && found->is_array()) {
      if (!found->empty()) result.tables.push_back(tableOf(field, *found));
      continue;
    }
    const std::string text = cellText(field, values);
    if (!text.empty()) result.rows.push_back({readableName(field.name), text});
  }
  return result;
}

Readable readableAnswer(const Description& description, const Answer& answer) {
  if (answer.shown) return *answer.shown;
  return readable(description.outputs, answer.json.at("result"));
}

}  // namespace sw::compute
