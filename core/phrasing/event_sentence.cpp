// SPDX-License-Identifier: GPL-3.0-or-later
#include "phrasing/event_sentence.h"

#include <algorithm>
#include <array>
#include <optional>

#include "phrasing/key_values.h"
#include "phrasing/named_table.h"
#include "phrasing/names.h"
#include "phrasing/verdict_phrase.h"

namespace sw::phrasing {

namespace {

/// The value that chooses among the sentences of an event.
struct Telling {
  std::string_view event;
  std::string_view value;
};
constexpr std::array kTelling = {
    Telling{"read_as", "how"},           Telling{"run_appended", "why"},
    Telling{"next_pack_unknown", "why"}, Telling{"stand_load", "verdict"},
    Telling{"verdict", "verdict"},       Telling{"wrench_calibration", "state"},
    Telling{"overridden", "rule"},       Telling{"vin_hint", "hint"},
};

const Source* sourceOf(const std::string& key, const KeyValues& values) {
  const auto telling = std::find_if(kTelling.begin(), kTelling.end(),
                                    [&](const Telling& row) { return row.event == key; });
  if (telling != kTelling.end()) {
    const std::string chosen = key + "/" + valueOf(values, telling->value);
    if (const Source* source = sourceIn(eventSentences(), chosen)) return source;
  }
  return sourceIn(eventSentences(), key);
}

struct Scale {
  std::string_view unit;  ///< the force that is shown
  Source marked;
  Source shows;
};
constexpr std::array kScales = {
    Scale{"kgf", QT_TRANSLATE_NOOP3("phrasing", "kg", "unit on a spring scale"),
          QT_TRANSLATE_NOOP3("phrasing", "kilogram-force", "what a spring scale shows")},
    Scale{"gf", QT_TRANSLATE_NOOP3("phrasing", "g", "unit on a spring scale"),
          QT_TRANSLATE_NOOP3("phrasing", "gram-force", "what a spring scale shows")},
    Scale{"lbf", QT_TRANSLATE_NOOP3("phrasing", "lb", "unit on a spring scale"),
          QT_TRANSLATE_NOOP3("phrasing", "pound-force", "what a spring scale shows")},
    Scale{"ozf", QT_TRANSLATE_NOOP3("phrasing", "oz", "unit on a spring scale"),
          QT_TRANSLATE_NOOP3("phrasing", "ounce-force", "what a spring scale shows")},
};

/// "1.95 kgf" -> "kgf".
std::string unitOf(const std::string& value) {
  const std::size_t space = value.find(' ');
  return space == std::string::npos ? std::string() : value.substr(space + 1);
}

QString scaleText(const std::string& value, const Source Scale::*part) {
  const std::string unit = unitOf(value);
  const auto scale = std::find_if(kScales.begin(), kScales.end(),
                                  [&](const Scale& row) { return row.unit == unit; });
  return scale == kScales.end() ? QString() : translated((*scale).*part);
}

/// The unit behind "18.80 +- 0.76 N".
const Unit* unitOfResult(const std::string& result) {
  const auto units = allUnits();
  const auto found = std::find_if(units.begin(), units.end(), [&](const Unit& unit) {
    return !unit.symbol.empty() && result.ends_with(" " + std::string(unit.symbol)) &&
           unit.symbol == defaultUnit(unit.kind).symbol;
  });
  return found == units.end() ? nullptr : &*found;
}

std::optional<AdviceCode> adviceCode(std::string_view text) {
  for (const AdviceCode code :
       {AdviceCode::MoreReadings, AdviceCode::FinerInstrument, AdviceCode::MoreCannotHelp,
        AdviceCode::CheckInstrument, AdviceCode::RepeatInconsistent, AdviceCode::OutOfRange,
        AdviceCode::Settled}) {
    if (word(code) == text) return code;
  }
  return std::nullopt;
}

/// "0.2 N" in SI of the unit; empty where it is not such a text.
std::optional<double> siOf(const std::string& text, const Unit& unit) {
  bool isNumber = false;
  const double number = QString::fromStdString(text.substr(0, text.find(' '))).toDouble(&isNumber);
  return isNumber && unitOf(text) == unit.symbol ? std::optional(number * unit.toSi) : std::nullopt;
}

/// Each piece of advice is followed by what belongs to it.
QString adviceText(const KeyValues& values) {
  const Unit* unit = unitOfResult(valueOf(values, "value"));
  if (unit == nullptr) return {};
  std::vector<Advice> all;
  for (const auto& [name, value] : values) {
    if (name == "advice") {
      if (const auto code = adviceCode(value)) all.push_back({*code, std::nullopt, std::nullopt});
    } else if (name == "readings" && !all.empty()) {
      all.back().readings = QString::fromStdString(value).toInt();
    } else if (name == "graduation" && !all.empty()) {
      all.back().graduation = siOf(value, *unit);
    }
  }
  return advicePhrase(all, *unit);
}

QString resultText(const std::string& value) {
  return shown(value).replace(QStringLiteral("+-"), QString(QChar(0x00B1)));
}

QString outcomeText(const std::string& value) {
  const auto outcome = fromWord<model::JobOutcome>(value);
  return outcome ? nameOf(*outcome) : shown(value);
}

/// What a placeholder of the sentence stands for.
QString valueText(const std::string& key, const KeyValues& values, const QString& placeholder) {
  const std::string name = placeholder.toStdString();
  const std::string value = valueOf(values, name);
  if (key == "verdict") {
    if (name == "advice") return adviceText(values);
    return name == "value" ? resultText(value) : verdictName(value, valueOf(values, "side"));
  }
  if (name == "marked") return scaleText(valueOf(values, "value"), &Scale::marked);
  if (name == "shows") return scaleText(valueOf(values, "value"), &Scale::shows);
  if (name == "hold") return holdName(value);
  if (name == "kind") return factName(value);
  if (name == "side") return sideWordName(value);
  if (name == "outcome") return outcomeText(value);
  const bool isKey = name == "key" || name == "field" || name == "limit" || name == "statement" ||
                     name == "plan" || name == "procedure" ||
                     (key == "runs_appended" && name != "count");
  return isKey ? spaced(value) : shown(value);
}

}  // namespace

QString eventSentence(const std::string& key, const KeyValues& values) {
  const Source* source = sourceOf(key, values);
  if (source == nullptr) return keyAndValues(key, values);
  return withCapital(filled(translated(*source),
                            [&](const QString& name) { return valueText(key, values, name); }));
}

std::vector<std::string_view> eventKeys() {
  std::vector<std::string_view> keys;
  for (const SentenceRow& row : eventSentences()) keys.push_back(row.key);
  return keys;
}

}  // namespace sw::phrasing
