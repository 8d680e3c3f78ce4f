// SPDX-License-Identifier: GPL-3.0-or-later
#include "phrasing/key_values.h"

#include <QtCore/QStringList>
#include <algorithm>

namespace sw::phrasing {

std::string valueOf(const KeyValues& values, std::string_view name) {
  const auto found = std::find_if(values.begin(), values.end(),
                                  [&](const auto& value) { return value.first == name; });
  return found == values.end() ? std::string() : found->second;
}

const Source* sourceIn(std::span<const SentenceRow> table, std::string_view key) {
  const auto found = std::find_if(table.begin(), table.end(),
                                  [&](const SentenceRow& row) { return row.key == key; });
  return found == table.end() ? nullptr : &found->source;
}

QString keyAndValues(const std::string& key, const KeyValues& values) {
  static constexpr Source kOther =
      QT_TRANSLATE_NOOP3("phrasing", "{key}[ ({values})].",
                         "Something without a sentence of its own; {key} is its technical name");
  QStringList all;
  for (const auto& [name, value] : values) all += shown(name + " = " + value);
  return withCapital(filled(translated(kOther), [&](const QString& name) {
    return name == "key" ? spaced(key) : all.join(QStringLiteral(", "));
  }));
}

QString spaced(const std::string& word) {
  QString text = shown(word);
  for (const char mark : {'_', '.', '-'}) text.replace(QLatin1Char(mark), QLatin1Char(' '));
  return text;
}

QString withCapital(QString text) {
  if (!text.isEmpty()) text[0] = text.at(0).toUpper();
  return text;
}

}  // namespace sw::phrasing
