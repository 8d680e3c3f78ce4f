// SPDX-License-Identifier: GPL-3.0-or-later
#include "diagnosis/number_reading.h"

#include <algorithm>
#include <cmath>

namespace sw::diagnosis {

namespace {

using model::Json;
using model::ObjectReader;

constexpr double kMostMinutes = 10'000;
constexpr double kMostDays = 3650;

}  // namespace

void refuse(ObjectReader& in, std::string_view key, const char* what, std::string text) {
  std::vector<std::pair<std::string, std::string>> details;
  if (!text.empty()) details.emplace_back("text", std::move(text));
  in.fail({ErrorCode::InvalidInput, what, in.pathOf(key), std::move(details)});
}

double readChance(ObjectReader& in, std::string_view key) {
  const double chance = in.number(key).value_or(0);
  if (!(chance >= 0 && chance <= 1)) refuse(in, key, "causes.bad_chance");
  return chance;
}

double readMinutes(ObjectReader& in, std::string_view key) {
  const double minutes = in.number(key).value_or(0);
  if (!(minutes >= 0 && minutes <= kMostMinutes)) refuse(in, key, "causes.bad_minutes");
  return minutes;
}

double readDays(ObjectReader& in, std::string_view key) {
  const double days = in.number(key).value_or(0);
  if (!(days >= 0 && days <= kMostDays)) refuse(in, key, "causes.bad_days");
  return days;
}

double readWeight(ObjectReader& in, std::string_view key) {
  const double weight = in.number(key).value_or(-1);
  if (!(weight >= 0 && std::isfinite(weight))) refuse(in, key, "causes.bad_weight");
  return weight;
}

void refuseWithoutWeight(ObjectReader& in, const std::vector<Cause>& causes) {
  if (std::none_of(causes.begin(), causes.end(), [](const Cause& one) { return one.weight > 0; })) {
    refuse(in, "causes", "causes.bad_weight");
  }
}

std::vector<std::string> readTexts(ObjectReader& in, std::string_view key) {
  std::vector<std::string> texts;
  const Json* list = in.array(key);
  if (list == nullptr) return texts;
  for (const Json& item : *list) {
    if (!item.is_string()) {
      refuse(in, key, "causes.unknown_key");
      return texts;
    }
    texts.push_back(item.get<std::string>());
  }
  return texts;
}

void readSupports(ObjectReader& in, std::string_view key, Setup& setup) {
  readMembers(in, key, [&](ObjectReader& minutes, const std::string& name) {
    const auto support = fromWord<model::SupportKind>(name);
    const Json* object = minutes.object(name);
    if (!support || object == nullptr) return refuse(minutes, name, "causes.unknown_key", name);
    ObjectReader inner(*object, minutes.pathOf(name));
    auto& pair = setup.minutes.at(static_cast<std::size_t>(*support));
    pair.open = readMinutes(inner, "open");
    pair.close = readMinutes(inner, "close");
    if (const auto done = inner.finish(); !done) minutes.fail(done.error());
  });
}

}  // namespace sw::diagnosis
