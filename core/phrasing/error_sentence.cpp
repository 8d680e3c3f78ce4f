// SPDX-License-Identifier: GPL-3.0-or-later
#include "phrasing/error_sentence.h"

#include <QtCore/QStringList>
#include <array>

#include "phrasing/key_values.h"
#include "phrasing/names.h"
#include "phrasing/sentence_tables.h"
#include "units/unit.h"

namespace sw::phrasing {

namespace {

std::array<std::span<const SentenceRow>, 11> allTables() {
  return {measuringSentences(), computeSentences(),  swivelSentences(),    brakeSentences(),
          boltSentences(),      wheelSentences(),    diagnosisSentences(), procedureSentences(),
          storeSentences(),     workshopSentences(), sheetSentences()};
}

const Source* sourceOf(std::string_view key) {
  for (const auto table : allTables()) {
    if (const Source* source = sourceIn(table, key)) return source;
  }
  return nullptr;
}

/// "pull_angle_within" reads better with spaces; a place within a file is left as it is.
QString fieldName(const std::string& field) {
  const QString name = shown(field);
  return name.startsWith('/') ? name : QString(name).replace('_', ' ');
}

/// Details that hold a stored word are shown by its name.
QString detailText(const QString& name, const std::string& value) {
  const bool isKind = name == "expected" || name == "found" || name == "first" || name == "second";
  const auto kind = isKind ? quantityKindFromWord(value) : std::nullopt;
  if (kind) return nameOf(*kind);
  if (name == "reason") return reasonName(value);
  if (name == "kind") return factName(value);
  if (name == "state") return ledgerStateName(value);
  return name == "side" ? sideWordName(value) : shown(value);
}

QString refusals(const Error& error) {
  QStringList all;
  for (const auto& [name, value] : error.details) {
    if (name == "refusal") all += refusalPhrase(value);
  }
  return all.join(QStringLiteral("; "));
}

QString otherSentence(const Error& error) {
  static constexpr Source kOther = QT_TRANSLATE_NOOP3(
      "phrasing", "[{field}: ]this was not accepted ({code}: {key}).[ Details: {details}.]",
      "An error without a sentence of its own; {key} is its technical name");
  QStringList details;
  for (const auto& [name, value] : error.details) details += shown(name + " = " + value);
  return filled(translated(kOther), [&](const QString& name) {
    if (name == "field") return fieldName(error.field);
    if (name == "code") return shown(std::string(word(error.code)));
    return name == "key" ? shown(error.key) : details.join(QStringLiteral(", "));
  });
}

}  // namespace

QString sentence(const Error& error) {
  const Source* source = sourceOf(error.key);
  if (source == nullptr) return withCapital(otherSentence(error));
  return withCapital(filled(translated(*source), [&](const QString& name) {
    if (name == "field") return fieldName(error.field);
    if (name == "refusals") return refusals(error);
    return detailText(name, error.detail(name.toStdString()));
  }));
}

bool hasSentence(std::string_view key) {
  return sourceOf(key) != nullptr;
}

std::vector<std::string_view> sentenceKeys() {
  std::vector<std::string_view> keys;
  for (const auto table : allTables()) {
    for (const SentenceRow& row : table) keys.push_back(row.key);
  }
  return keys;
}

}  // namespace sw::phrasing
