// SPDX-License-Identifier: GPL-3.0-or-later
#include "diagnosis/cause_file.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "diagnosis/keyed.h"
#include "diagnosis/number_reading.h"
#include "model/json.h"

namespace sw::diagnosis {

namespace {

using model::Json;
using model::ObjectReader;

constexpr std::int64_t kSchema = 1;
constexpr std::string_view kOther = "other";

template <class Items>
std::string readNewKey(ObjectReader& in, const Items& items) {
  std::string key = in.requiredText("key");
  if (placeOfKey(items, key)) refuse(in, "key", "causes.duplicate_key", key);
  return key;
}

/// The place of a name among items read before.
template <class Items>
std::size_t placeOf(ObjectReader& in, std::string_view field, const Items& items,
                    const std::string& key) {
  const auto place = placeOfKey(items, key);
  if (!place) refuse(in, field, "causes.unknown_key", key);
  return place.value_or(0);
}

template <class Items>
std::vector<std::size_t> readPlaces(ObjectReader& in, std::string_view field, const Items& items) {
  std::vector<std::size_t> places;
  for (const std::string& key : readTexts(in, field)) {
    places.push_back(placeOf(in, field, items, key));
  }
  return places;
}

void readFeature(ObjectReader& in, CauseFile& file) {
  Feature feature;
  feature.key = readNewKey(in, file.table.features);
  feature.ask = in.requiredText("ask");
  readEach(in, "answers", [&](ObjectReader& answer) {
    std::string word = answer.requiredText("word");
    feature.answers.push_back({std::move(word), answer.requiredText("text")});
  });
  if (feature.answers.size() < 2) refuse(in, "answers", "causes.unknown_key");
  file.table.features.push_back(std::move(feature));
}

void readSetup(ObjectReader& in, CauseFile& file) {
  Setup setup;
  setup.key = readNewKey(in, file.setups);
  setup.name = in.requiredText("name");
  if (const auto parent = in.text("parent")) {
    setup.parent = placeOf(in, "parent", file.setups, *parent);
  }
  readSupports(in, "minutes", setup);
  file.setups.push_back(std::move(setup));
}

/// The chances of the answers to one feature; the last answer has what the others leave.
std::vector<double> readAnswers(ObjectReader& in, const Feature& feature) {
  std::vector<double> chances(feature.answers.size(), 0.0);
  readMembers(in, feature.key, [&](ObjectReader& row, const std::string& word) {
    const auto answer = feature.answer(word);
    if (!answer) return refuse(row, word, "causes.unknown_key", word);
    chances[*answer] = readChance(row, word);
  });
  double rest = 1;
  for (std::size_t i = 0; i + 1 < chances.size(); ++i) rest -= chances[i];
  if (rest < -1e-9) refuse(in, feature.key, "causes.bad_chance");
  chances.back() = std::max(0.0, rest);
  return chances;
}

void readCause(ObjectReader& in, CauseFile& file) {
  Cause cause;
  cause.key = readNewKey(in, file.table.causes);
  cause.name = in.requiredText("name");
  cause.weight = readWeight(in, "weight");
  if (const Json* answers = in.object("answers")) {
    ObjectReader inner(*answers, in.pathOf("answers"));
    for (const Feature& feature : file.table.features) {
      if (!inner.has(feature.key)) refuse(inner, feature.key, "json.missing");
      cause.answers.push_back(readAnswers(inner, feature));
    }
    if (const auto done = inner.finish(); !done) in.fail(done.error());
  } else {
    refuse(in, "answers", "json.missing");
  }
  file.table.causes.push_back(std::move(cause));
}

/// What a finding and a clear entry have alike: an observation with its words, or a limit.
template <class Entry>
void readRecorded(ObjectReader& in, Entry& entry) {
  entry.observed = in.text("observed").value_or("");
  entry.words = readTexts(in, "words");
  entry.limit = in.text("limit").value_or("");
  const bool seen = !entry.observed.empty() && !entry.words.empty() && entry.limit.empty();
  const bool judged = entry.observed.empty() && entry.words.empty() && !entry.limit.empty();
  if (!seen && !judged) refuse(in, "observed", "causes.no_evidence");
}

void readFinding(ObjectReader& in, CauseFile& file, Check& check) {
  Finding finding;
  const std::string cause = in.requiredText("cause");
  finding.cause = placeOf(in, "cause", file.table.causes, cause);
  readRecorded(in, finding);
  if (const auto beyond = in.text("beyond")) {
    finding.beyond = fromWord<Beyond>(*beyond);
    if (!finding.beyond) refuse(in, "beyond", "causes.unknown_key", *beyond);
    if (finding.limit.empty()) refuse(in, "beyond", "causes.no_evidence");
  }
  check.findings.push_back(std::move(finding));
}

void readClear(ObjectReader& in, Check& check) {
  Clear clear;
  readRecorded(in, clear);
  check.clear.push_back(std::move(clear));
}

void readVariant(ObjectReader& in, CauseFile& file, Check& check) {
  CheckVariant variant;
  const auto mount = fromWord<model::DiscMount>(in.requiredText("disc_mount"));
  if (!mount) return refuse(in, "disc_mount", "causes.unknown_key");
  variant.discMount = *mount;
  variant.setups = readPlaces(in, "setups", file.setups);
  variant.minutes = readMinutes(in, "minutes");
  check.variants.push_back(std::move(variant));
}

void readCheck(ObjectReader& in, CauseFile& file) {
  Check check;
  check.key = readNewKey(in, file.checks);
  check.name = in.requiredText("name");
  check.procedure = in.requiredText("procedure");
  check.first = in.boolean("first").value_or(false);
  check.after = readPlaces(in, "after", file.checks);
  check.equipment = readTexts(in, "equipment");
  check.setups = readPlaces(in, "setups", file.setups);
  if (check.setups.empty()) refuse(in, "setups", "json.missing");
  check.minutes = readMinutes(in, "minutes");
  readMembers(in, "finds", [&](ObjectReader& finds, const std::string& name) {
    const std::size_t cause = placeOf(finds, name, file.table.causes, name);
    check.finds.push_back({cause, readChance(finds, name)});
  });
  check.falseAlarm = readChance(in, "false_alarm");
  check.falseAlarmMinutes = readMinutes(in, "false_alarm_minutes");
  readEach(in, "findings", [&](ObjectReader& finding) { readFinding(finding, file, check); });
  readEach(in, "clear", [&](ObjectReader& clear) { readClear(clear, check); });
  readEach(in, "variants", [&](ObjectReader& variant) { readVariant(variant, file, check); });
  file.checks.push_back(std::move(check));
}

void readRepair(ObjectReader& in, CauseFile& file) {
  Repair repair;
  repair.cause = placeOf(in, "cause", file.table.causes, in.requiredText("cause"));
  repair.plan = in.requiredText("plan");
  repair.doneBy = readTexts(in, "done_by");
  file.repairs.push_back(std::move(repair));
}

void readPreset(ObjectReader& in, CauseFile& file) {
  Preset preset;
  preset.key = readNewKey(in, file.presets);
  preset.name = in.requiredText("name");
  const auto support = fromWord<model::SupportKind>(in.requiredText("support"));
  if (!support) return refuse(in, "support", "causes.unknown_key");
  preset.support = *support;
  preset.equipment = readTexts(in, "equipment");
  file.presets.push_back(std::move(preset));
}

bool has(const std::vector<std::string>& list, const std::string& item) {
  return std::find(list.begin(), list.end(), item) != list.end();
}

PlannedCheck plannedHere(const Check& check, const Circumstances& circumstances) {
  PlannedCheck planned = plannedCheck(check);
  for (const CheckVariant& variant : check.variants) {
    if (variant.discMount != circumstances.discMount) continue;
    planned.setups = variant.setups;
    planned.minutes = variant.minutes;
  }
  return planned;
}

}  // namespace

std::optional<std::size_t> CauseFile::check(std::string_view key) const {
  return placeOfKey(checks, key);
}

std::optional<std::size_t> CauseFile::setup(std::string_view key) const {
  return placeOfKey(setups, key);
}

const Preset& CauseFile::presetOrFirst(std::string_view key) const {
  return presets.at(placeOfKey(presets, key).value_or(0));
}

PlannedCheck plannedCheck(const Check& check) {
  return {check.finds, check.setups, check.minutes, check.falseAlarm, check.falseAlarmMinutes,
          check.after};
}

Result<CauseFile> parseCauses(std::string_view text) {
  const auto json = model::parseJson(text);
  if (!json) return failAs(json);
  CauseFile file;
  ObjectReader in(*json, "");
  if (in.integer("schema") != kSchema) refuse(in, "schema", "causes.unknown_schema");
  file.id = in.requiredText("id");
  file.version = in.integer("version").value_or(1);
  file.source = in.requiredText("source");
  file.fallbackMinutes = readMinutes(in, "fallback_minutes");
  file.comebackDays = readDays(in, "comeback_days");
  readEach(in, "features", [&](ObjectReader& item) { readFeature(item, file); });
  readEach(in, "setups", [&](ObjectReader& item) { readSetup(item, file); });
  readEach(in, "causes", [&](ObjectReader& item) { readCause(item, file); });
  readEach(in, "checks", [&](ObjectReader& item) { readCheck(item, file); });
  readEach(in, "repairs", [&](ObjectReader& item) { readRepair(item, file); });
  readEach(in, "presets", [&](ObjectReader& item) { readPreset(item, file); });
  const auto other = file.table.cause(kOther);
  if (!other) refuse(in, "causes", "causes.no_other");
  refuseWithoutWeight(in, file.table.causes);
  file.table.other = other.value_or(0);
  if (auto done = in.finish(); !done) return failAs(done);
  return file;
}

PlanProblem problemFor(const CauseFile& file, const Circumstances& circumstances) {
  PlanProblem problem;
  std::vector<SetupState> states;
  const auto support = static_cast<std::size_t>(circumstances.support);
  for (const Setup& setup : file.setups) {
    const auto& minutes = setup.minutes.at(support);
    states.push_back({setup.parent, minutes.open, minutes.close});
  }
  problem.moves = movesBetween(states);
  problem.start = circumstances.setup;
  problem.fallback = circumstances.fallbackMinutes;
  for (std::size_t i = 0; i < file.checks.size(); ++i) {
    const Check& check = file.checks[i];
    PlannedCheck planned = plannedHere(check, circumstances);
    const auto& out = circumstances.leftOut;
    const bool left = std::find(out.begin(), out.end(), i) != out.end();
    const bool able =
        std::all_of(check.equipment.begin(), check.equipment.end(),
                    [&](const std::string& one) { return has(circumstances.equipment, one); });
    if (left || !able) planned.finds.clear();
    if (check.first && !left) problem.first.push_back(i);
    problem.checks.push_back(std::move(planned));
  }
  return problem;
}

}  // namespace sw::diagnosis
