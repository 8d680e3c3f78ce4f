// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/fact_text.h"

#include <QStringList>
#include <algorithm>
#include <nlohmann/json.hpp>

#include "model/entry_json.h"
#include "report/quantity_text.h"
#include "report/wording.h"

namespace sw::report {

namespace {

using model::Entry;
using model::Json;

/// A stored word, not a text somebody typed.
bool isWord(const std::string& text) {
  return text.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789_") == std::string::npos;
}

/// One field of a fact as people read it.
QString valueText(const Json& value) {
  if (value.is_string()) {
    const auto text = value.get<std::string>();
    return isWord(text) ? humanWord(text) : fromUtf8(text);
  }
  if (value.is_boolean()) return value.get<bool>() ? QStringLiteral("yes") : QStringLiteral("no");
  if (value.is_object() && value.contains("number")) {
    return withUnit(value["number"].get<std::string>(), value["unit"].get<std::string>());
  }
  if (value.is_object()) {
    QStringList parts;
    for (const auto& [key, one] : value.items())
      parts += humanWord(key) + QChar(u' ') + valueText(one);
    return parts.join(QStringLiteral(", "));
  }
  return fromUtf8(value.dump());
}

/// Ids of other facts say nothing on paper.
bool isReference(const std::string& key) {
  constexpr std::string_view kKeys[] = {"series",           "limit",        "instrument",
                                        "instrument_check", "spec",         "wrench",
                                        "vehicle",          "placed_after", "hash"};
  return std::find(std::begin(kKeys), std::end(kKeys), key) != std::end(kKeys);
}

Json fieldsOf(const Entry& entry) {
  Json fields = model::payloadJson(entry.payload);
  if (entry.side) fields["side"] = std::string(wordOf(*entry.side));
  return fields;
}

QString fieldText(const std::string& key, const Json& value) {
  const bool bare = key == "value" || key == "text";
  return bare ? valueText(value) : humanWord(key) + QStringLiteral(": ") + valueText(value);
}

}  // namespace

QString fieldsText(const Entry& entry, const Entry* other) {
  const Json mine = fieldsOf(entry);
  const Json theirs = other == nullptr ? Json::object() : fieldsOf(*other);
  QStringList parts;
  for (const auto& [key, value] : mine.items()) {
    const bool same = theirs.contains(key) && theirs[key] == value;
    const bool empty = value.is_string() && value.get<std::string>().empty();
    if (same || isReference(key) || (empty && other == nullptr)) continue;
    parts += empty ? humanWord(key) + QStringLiteral(": (empty)") : fieldText(key, value);
  }
  return parts.join(QStringLiteral("; "));
}

QString reasonText(const Entry& entry) {
  QString text = entry.reason ? humanWord(*entry.reason) : QString{};
  if (!entry.reasonText.empty()) {
    text += (text.isEmpty() ? QString{} : QStringLiteral(": ")) + fromUtf8(entry.reasonText);
  }
  return text;
}

}  // namespace sw::report
