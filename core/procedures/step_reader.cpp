// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>

#include "procedures/fact_words.h"
#include "procedures/procedure_check.h"
#include "procedures/reading.h"
#include "units/parse.h"

namespace sw::procedures {

using model::Json;
using model::ObjectReader;

namespace {

constexpr std::size_t kMaxIdLength = 64;
constexpr std::int64_t kMaxCount = 10'000;
constexpr double kMaxMinutes = 100'000;

bool blank(std::string_view text) {
  return text.find_first_not_of(" \n\t") == std::string_view::npos;
}

bool hasControlCharacter(std::string_view text) {
  return std::any_of(text.begin(), text.end(), [](char c) {
    return (static_cast<unsigned char>(c) < 0x20 && c != '\n') || c == '\x7f';
  });
}

bool isName(std::string_view text, std::string_view alsoAllowed) {
  const auto allowed = [&](char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_' || c == '-' ||
           alsoAllowed.find(c) != std::string_view::npos;
  };
  return !text.empty() && text.size() <= kMaxIdLength &&
         std::all_of(text.begin(), text.end(), allowed);
}

/// Lower-case words with a hyphen between each: "disc-thickness".
bool isCalculationName(std::string_view text) {
  const bool words = !text.empty() && text.front() != '-' && text.back() != '-' &&
                     text.find("--") == std::string_view::npos;
  return words && isName(text, "") && text.find('_') == std::string_view::npos;
}

void readBench(ObjectReader& in, std::vector<std::string>& bench) {
  if (!in.has("bench")) return;
  readTexts(in, "bench", bench);
  if (in.ok() && bench.empty()) return refuse(in, "bench", "procedure.empty_list");
  for (auto name = bench.begin(); name != bench.end(); ++name) {
    if (!isCalculationName(*name)) {
      return refuse(in, "bench", "procedure.bad_calculation", {{"text", *name}});
    }
    if (std::find(bench.begin(), name, *name) != name) {
      return refuse(in, "bench", "procedure.duplicate_word", {{"text", *name}});
    }
  }
}

void readConditionWords(ObjectReader& in, const std::string& fact, std::vector<std::string>& out) {
  readTexts(in, fact, out);
  if (!in.ok()) return;
  if (out.empty()) return refuse(in, fact, "procedure.empty_list");
  if (isObserved(fact)) return;
  const auto known = wordsOfFact(fact);
  if (!known) return refuse(in, fact, "procedure.unknown_fact", {{"fact", fact}});
  for (const std::string& word : out) {
    if (std::find(known->begin(), known->end(), word) != known->end()) continue;
    std::string choices;
    for (const auto each : *known) choices += (choices.empty() ? "" : ", ") + std::string(each);
    return refuse(in, fact, "procedure.unknown_fact_word", {{"text", word}, {"choices", choices}});
  }
}

void readTool(ObjectReader& in, Tool& tool) {
  requireText(in, "name", tool.name);
  readTexts(in, "instead", tool.instead);
}

void readPart(ObjectReader& in, Part& part) {
  requireId(in, "key", part.key);
  requireText(in, "name", part.name);
  readCount(in, "quantity", 1, part.quantity);
  readFlag(in, "single_use", part.singleUse);
  readCondition(in, "when", part.when);
}

void readConsumable(ObjectReader& in, Consumable& consumable) {
  requireText(in, "name", consumable.name);
  readText(in, "amount", consumable.amount);
}

bool fits(model::LedgerKind type, model::LedgerState state) {
  using enum model::LedgerState;
  if (type == model::LedgerKind::PutOn) return state == On || state == TakenOff;
  return state == Off || state == HandTight || state == Torqued || state == Back;
}

void readLedgerEffect(ObjectReader& in, LedgerEffect& effect) {
  requireId(in, "item", effect.item);
  requireText(in, "name", effect.name);
  readWord(in, "type", effect.type);
  requireWord(in, "to", effect.to);
  readFlag(in, "fastened", effect.fastened);
  readCondition(in, "when", effect.when);
  if (in.ok() && !fits(effect.type, effect.to)) {
    refuse(in, "to", "procedure.ledger_state",
           {{"text", std::string(wordOf(effect.to))}, {"type", std::string(wordOf(effect.type))}});
  }
}

void readPullState(ObjectReader& in, model::PullState& state) {
  model::PullState::fields(
      state, [&](std::string_view name, auto& value) { requireWord(in, name, value); });
}

void readAngle(ObjectReader& in, std::optional<std::string>& out) {
  constexpr double kRightAngle = 1.5707963267948966;
  if (!in.has("angle_within")) return;
  requireText(in, "angle_within", out.emplace());
  if (!in.ok()) return;
  const auto angle = parseQuantity(*out, {in.pathOf("angle_within"), QuantityKind::Angle, "deg"});
  if (!angle || angle->value.si < 0 || angle->value.si >= kRightAngle) {
    refuse(in, "angle_within", "procedure.bad_angle", {{"text", *out}});
  }
}

void readInstruments(ObjectReader& in, std::vector<model::InstrumentKind>& out) {
  std::vector<std::string> words;
  readTexts(in, "instruments", words);
  for (const std::string& word : words) {
    const auto kind = fromWord<model::InstrumentKind>(word);
    if (!kind) return refuse(in, "instruments", "procedure.unknown_instrument", {{"text", word}});
    out.push_back(*kind);
  }
}

void readMeasure(ObjectReader& in, MeasureSpec& measure) {
  requireQuantityKind(in, "quantity", measure.quantity);
  readSpecKey(in, "limit", measure.limit);
  if (in.has("reads")) readWord(in, "reads", measure.reads.emplace());
  readCount(in, "planned", 1, measure.planned);
  readCount(in, "settling", 0, measure.settling);
  readObject(in, "state", measure.state, readPullState);
  readAngle(in, measure.angleWithin);
  readInstruments(in, measure.instruments);
  readFlag(in, "safety", measure.safety);
  readFlag(in, "drives_rounds", measure.drivesRounds);
  const bool judged = measure.safety || measure.drivesRounds;
  if (judged && measure.limit.empty()) refuse(in, "limit", "procedure.needs_limit");
  if (measure.drivesRounds && !measure.state) refuse(in, "state", "procedure.needs_state");
}

void readStages(ObjectReader& in, std::vector<double>& stages) {
  const Json* list = in.array("stages");
  if (list == nullptr) return;
  for (const Json& json : *list) {
    const double before = stages.empty() ? 0.0 : stages.back();
    const double stage = json.is_number() ? json.get<double>() : 0.0;
    if (!(stage > before && stage <= 1.0)) return refuse(in, "stages", "procedure.bad_stages");
    stages.push_back(stage);
  }
  if (!stages.empty() && stages.back() < 1.0) refuse(in, "stages", "procedure.bad_stages");
}

void readTorque(ObjectReader& in, TorqueSpec& torque) {
  readSpecKey(in, "fasteners", torque.fasteners);
  if (torque.fasteners.empty()) {
    in.fail({ErrorCode::Missing, "json.missing", in.pathOf("fasteners"), {}});
  }
  requireText(in, "name", torque.name);
  readStages(in, torque.stages);
  if (in.has("item")) requireId(in, "item", torque.item);
  readFlag(in, "castellated", torque.castellated);
}

void readObservedChoice(ObjectReader& in, Choice& choice) {
  requireId(in, "word", choice.word);
  requireText(in, "text", choice.text);
  choice.means = in.oneOf("means", {"worn", "loose"}).value_or(std::string{});
}

void readAnswerChoice(ObjectReader& in, Choice& choice) {
  requireId(in, "word", choice.word);
  requireText(in, "text", choice.text);
  readFlag(in, "passes", choice.passes);
}

void checkChoices(ObjectReader& in, const std::vector<Choice>& choices) {
  if (choices.size() < 2) return refuse(in, "choices", "procedure.too_few_choices");
  for (auto it = choices.begin(); it != choices.end(); ++it) {
    const bool twice = std::any_of(choices.begin(), it,
                                   [&](const Choice& other) { return other.word == it->word; });
    if (twice) return refuse(in, "choices", "procedure.duplicate_word", {{"text", it->word}});
  }
}

void readObserve(ObjectReader& in, Observe& observe) {
  requireId(in, "key", observe.key);
  requireText(in, "ask", observe.ask);
  readList(in, "choices", observe.choices, readObservedChoice);
  checkChoices(in, observe.choices);
}

void readAnswer(ObjectReader& in, Statement& statement) {
  requireWord(in, "type", statement.answer);
  readList(in, "choices", statement.choices, readAnswerChoice);
  if (in.has("at_least")) readCount(in, "at_least", 0, statement.atLeast.emplace());
  if (in.has("quantity")) requireQuantityKind(in, "quantity", statement.quantity.emplace());
  statement.check = in.oneOf("check", {"stand_rating_each", "stand_rating_pair", "lift_rating",
                                       "wheel_nut_torque"})
                        .value_or(std::string{});
  const bool quantity = statement.answer == AnswerType::Quantity;
  if (quantity && !statement.quantity) refuse(in, "quantity", "procedure.block_missing");
  if (!in.ok() || statement.answer != AnswerType::Choice) return;
  checkChoices(in, statement.choices);
  const auto passing = std::count_if(statement.choices.begin(), statement.choices.end(),
                                     [](const Choice& choice) { return choice.passes; });
  if (passing == 0) refuse(in, "choices", "procedure.choice_cannot_pass");
  if (passing == std::ssize(statement.choices))
    refuse(in, "choices", "procedure.choice_cannot_fail");
}

void readStatement(ObjectReader& in, Statement& statement) {
  requireId(in, "key", statement.key);
  requireText(in, "ask", statement.ask);
  requireText(in, "why", statement.why);
  const Json* answer = in.object("answer");
  if (answer == nullptr) {
    in.fail({ErrorCode::Missing, "json.missing", in.pathOf("answer"), {}});
  } else {
    readWhole(in, *answer, in.pathOf("answer"), statement, readAnswer);
  }
  readCondition(in, "when", statement.when);
}

void readHold(ObjectReader& in, Hold& hold) {
  hold.key =
      in.oneOf("key", {"support", "brakes_and_steering", "wheel_nuts", "walk_round", "go_no_go"})
          .value_or(std::string{});
  if (!in.has("key")) in.fail({ErrorCode::Missing, "json.missing", in.pathOf("key"), {}});
  requireText(in, "title", hold.title);
  readList(in, "statements", hold.statements, readStatement);
}

void readRoadTest(ObjectReader& in, RoadTestSpec& spec) {
  requireWord(in, "when", spec.when);
}

void readShimPack(ObjectReader& in, ShimPackSpec& spec) {
  requireWord(in, "role", spec.role);
}

void readNeedsTwo(ObjectReader& in, Step& step) {
  const Json* json = in.object("needs_two");
  if (json == nullptr) return;
  step.needsTwo = true;
  readWhole(in, *json, in.pathOf("needs_two"), step.onePerson,
            [](ObjectReader& inner, std::string& text) { requireText(inner, "one_person", text); });
}

void readWaitMinutes(ObjectReader& in, std::optional<double>& out) {
  if (!in.has("wait_minutes")) return;
  readMinutes(in, "wait_minutes", out.emplace());
  if (in.ok() && *out <= 0) refuse(in, "wait_minutes", "procedure.out_of_range");
}

void readWords(ObjectReader& in, Step& step) {
  requireId(in, "id", step.id);
  requireWord(in, "kind", step.kind);
  readWord(in, "side", step.side);
  requireText(in, "title", step.title);
  readText(in, "text", step.text);
  readText(in, "caution", step.caution);
  readTexts(in, "needs", step.needs);
  readMinutes(in, "minutes", step.minutes);
  readNeedsTwo(in, step);
  readCondition(in, "when", step.when);
}

}  // namespace

void refuse(ObjectReader& in, std::string_view key, std::string_view what,
            std::vector<std::pair<std::string, std::string>> details) {
  in.fail({ErrorCode::InvalidInput, std::string(what), in.pathOf(key), std::move(details)});
}

void readText(ObjectReader& in, std::string_view key, std::string& out) {
  const auto text = in.text(key);
  if (!text) return;
  if (!text->empty() && blank(*text)) return refuse(in, key, "procedure.empty_text");
  if (hasControlCharacter(*text)) return refuse(in, key, "procedure.control_character");
  out = *text;
}

void requireText(ObjectReader& in, std::string_view key, std::string& out) {
  if (!in.has(key)) return in.fail({ErrorCode::Missing, "json.missing", in.pathOf(key), {}});
  readText(in, key, out);
  if (in.ok() && out.empty()) refuse(in, key, "procedure.empty_text");
}

void readTexts(ObjectReader& in, std::string_view key, std::vector<std::string>& out) {
  const Json* list = in.array(key);
  if (list == nullptr) return;
  for (const Json& json : *list) {
    const auto* text = json.get_ptr<const std::string*>();
    if (text == nullptr) {
      return in.fail(
          {ErrorCode::InvalidInput, "json.wrong_kind", in.pathOf(key), {{"expected", "texts"}}});
    }
    if (blank(*text)) return refuse(in, key, "procedure.empty_text");
    if (hasControlCharacter(*text)) return refuse(in, key, "procedure.control_character");
    out.push_back(*text);
  }
}

void requireId(ObjectReader& in, std::string_view key, std::string& out) {
  requireText(in, key, out);
  if (in.ok() && !isName(out, "")) refuse(in, key, "procedure.bad_id", {{"text", out}});
}

void readSpecKey(ObjectReader& in, std::string_view key, std::string& out) {
  readText(in, key, out);
  if (in.ok() && !out.empty() && !isName(out, "."))
    refuse(in, key, "procedure.bad_id", {{"text", out}});
}

void readFlag(ObjectReader& in, std::string_view key, bool& out) {
  out = in.boolean(key).value_or(out);
}

void readCount(ObjectReader& in, std::string_view key, std::int64_t least, std::int64_t& out) {
  out = in.integer(key).value_or(std::max(out, least));
  if (in.ok() && (out < least || out > kMaxCount)) refuse(in, key, "procedure.out_of_range");
}

void readMinutes(ObjectReader& in, std::string_view key, double& out) {
  out = in.number(key).value_or(out);
  if (in.ok() && !(out >= 0 && out <= kMaxMinutes)) refuse(in, key, "procedure.out_of_range");
}

void requireQuantityKind(ObjectReader& in, std::string_view key, QuantityKind& out) {
  std::string word;
  requireText(in, key, word);
  if (!in.ok()) return;
  const auto kind = quantityKindFromWord(word);
  if (!kind) return refuse(in, key, "procedure.unknown_quantity", {{"text", word}});
  out = *kind;
}

void readCondition(ObjectReader& in, std::string_view key, Condition& out) {
  const Json* json = in.object(key);
  if (json == nullptr) return;
  readWhole(in, *json, in.pathOf(key), out, [json](ObjectReader& facts, Condition& condition) {
    for (const auto& item : json->items()) {
      readConditionWords(facts, item.key(), condition[item.key()]);
    }
  });
}

void readStep(ObjectReader& in, Step& step) {
  readWords(in, step);
  readList(in, "tools", step.tools, readTool);
  readList(in, "parts", step.parts, readPart);
  readList(in, "consumables", step.consumables, readConsumable);
  readList(in, "ledger", step.ledger, readLedgerEffect);
  readObject(in, "measure", step.measure, readMeasure);
  readObject(in, "torque", step.torque, readTorque);
  readList(in, "observe", step.observe, readObserve);
  readObject(in, "hold", step.hold, readHold);
  readWaitMinutes(in, step.waitMinutes);
  readObject(in, "road_test", step.roadTest, readRoadTest);
  readObject(in, "shim_pack", step.shimPack, readShimPack);
  readFlag(in, "raises_vehicle", step.raisesVehicle);
  readFlag(in, "lowers_vehicle", step.lowersVehicle);
  readFlag(in, "optional", step.optional);
  readBench(in, step.bench);
  if (in.ok()) checkStep(in, step);
  if (in.ok() && step.hold) checkHold(in, step);
}

}  // namespace sw::procedures
