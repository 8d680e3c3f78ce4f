// SPDX-License-Identifier: GPL-3.0-or-later
#include "diagnosis/own_numbers.h"

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "diagnosis/keyed.h"
#include "diagnosis/number_reading.h"
#include "model/json.h"

namespace sw::diagnosis {

namespace {

using model::ObjectReader;

/// The chances that are named; the answers that are not share what is left as they did before.
void readRow(ObjectReader& in, const Feature& feature, std::vector<double>& row) {
  std::vector<char> named(row.size(), 0);
  double sum = 0, others = 0;
  readMembers(in, feature.key, [&](ObjectReader& inner, const std::string& word) {
    const auto answer = feature.answer(word);
    if (!answer) return refuse(inner, word, "causes.unknown_key", word);
    row[*answer] = readChance(inner, word);
    named[*answer] = 1;
  });
  for (std::size_t i = 0; i < row.size(); ++i) (named[i] != 0 ? sum : others) += row[i];
  const bool all = std::all_of(named.begin(), named.end(), [](char one) { return one != 0; });
  if (sum > 1 + 1e-9 || (all && std::abs(sum - 1) > 1e-9)) {
    return refuse(in, feature.key, "causes.bad_chance");
  }
  const auto left = static_cast<double>(std::count(named.begin(), named.end(), 0));
  for (std::size_t i = 0; i < row.size(); ++i) {
    if (named[i] != 0) continue;
    row[i] = others > 0 ? row[i] * (1 - sum) / others : (1 - sum) / left;
  }
}

void readCause(ObjectReader& in, const CauseTable& table, Cause& cause) {
  if (in.has("weight")) cause.weight = readWeight(in, "weight");
  readMembers(in, "answers", [&](ObjectReader& answers, const std::string& key) {
    const auto feature = table.feature(key);
    if (!feature) return refuse(answers, key, "causes.unknown_key", key);
    readRow(answers, table.features[*feature], cause.answers[*feature]);
  });
}

void readCheck(ObjectReader& in, const CauseTable& table, Check& check) {
  if (in.has("minutes")) check.minutes = readMinutes(in, "minutes");
  if (in.has("false_alarm")) check.falseAlarm = readChance(in, "false_alarm");
  if (in.has("false_alarm_minutes"))
    check.falseAlarmMinutes = readMinutes(in, "false_alarm_minutes");
  readMembers(in, "finds", [&](ObjectReader& finds, const std::string& key) {
    const auto cause = table.cause(key);
    const auto found = std::find_if(check.finds.begin(), check.finds.end(),
                                    [&](const Detection& one) { return one.cause == cause; });
    if (!cause || found == check.finds.end()) {
      return refuse(finds, key, "causes.unknown_key", key);
    }
    found->chance = readChance(finds, key);
  });
}

/// Reads the object under each key of the object `list` into the item of that key.
template <class Items, class Read>
void readKeyed(ObjectReader& in, std::string_view list, Items& items, const Read& read) {
  readMembers(in, list, [&](ObjectReader& inner, const std::string& key) {
    const auto place = placeOfKey(items, key);
    const auto* object = inner.object(key);
    if (object == nullptr) return;
    if (!place) return refuse(inner, key, "causes.unknown_key", key);
    ObjectReader deep(*object, inner.pathOf(key));
    read(deep, items[*place]);
    if (const auto done = deep.finish(); !done) inner.fail(done.error());
  });
}

}  // namespace

Result<CauseFile> withOwnNumbers(const CauseFile& shipped, std::string_view text) {
  CauseFile file = shipped;
  if (text.empty()) return file;
  const auto json = model::parseJson(text);
  if (!json) return failAs(json);
  ObjectReader in(*json, "");
  if (in.has("fallback_minutes")) file.fallbackMinutes = readMinutes(in, "fallback_minutes");
  if (in.has("comeback_days")) file.comebackDays = readDays(in, "comeback_days");
  const CauseTable& table = shipped.table;
  readKeyed(in, "causes", file.table.causes,
            [&](ObjectReader& one, Cause& cause) { readCause(one, table, cause); });
  refuseWithoutWeight(in, file.table.causes);
  readKeyed(in, "checks", file.checks,
            [&](ObjectReader& one, Check& check) { readCheck(one, table, check); });
  readMembers(in, "setups", [&](ObjectReader& inner, const std::string& key) {
    const auto setup = file.setup(key);
    if (!setup) return refuse(inner, key, "causes.unknown_key", key);
    readSupports(inner, key, file.setups[*setup]);
  });
  if (auto done = in.finish(); !done) return failAs(done);
  return file;
}

}  // namespace sw::diagnosis
