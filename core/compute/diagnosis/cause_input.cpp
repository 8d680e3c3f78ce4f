// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/diagnosis/cause_input.h"

#include <string>

#include "diagnosis/shipped_causes.h"

namespace sw::compute {

namespace {

using diagnosis::CauseFile;
using diagnosis::Check;

constexpr double kLeastDamping = 0.5;
constexpr double kMostTimes = 1000;
constexpr std::string_view kUnknown = "unknown";

void readAnswers(InputReader& answers, const CauseFile& file, KnownOfShake& known) {
  for (std::size_t feature = 0; feature < file.table.features.size(); ++feature) {
    const auto& one = file.table.features[feature];
    std::vector<std::string_view> words;
    for (const auto& answer : one.answers) words.push_back(answer.word);
    words.push_back(kUnknown);
    const auto word = answers.fields().oneOf(one.key, words);
    if (!word || *word == kUnknown) continue;
    known.evidence.push_back(answered(file.table, feature, *one.answer(*word)));
    known.asked.push_back(feature);
  }
}

/// What a road log says for one answer to one question.
void readTrace(InputReader& reader, const CauseFile& file, KnownOfShake& known) {
  const std::string key = reader.requiredWord("question", keysOf(file.table.features));
  const auto feature = file.table.feature(key);
  if (!feature) return;
  const auto& asked = file.table.features[*feature];
  std::vector<std::string_view> words;
  for (const auto& answer : asked.answers) words.push_back(answer.word);
  const std::string word = reader.requiredWord("answer", words);
  reader.requireKey("times");
  const auto times = reader.number(
      "times", {.least = 1 / kMostTimes, .most = kMostTimes, .text = "from 0.001 to 1000"});
  const auto answer = asked.answer(word);
  if (!answer || !times) return;
  std::vector<double> ratios(asked.answers.size(), 1.0);
  ratios[*answer] = *times;
  auto evidence = supported(file.table, *feature, ratios);
  evidence.answer = word;
  known.evidence.push_back(std::move(evidence));
}

void readCheck(InputReader& reader, const CauseFile& file, KnownOfShake& known) {
  const std::string key = reader.requiredWord("check", keysOf(file.checks));
  const std::string result = reader.requiredWord("result", {"nothing", "found"});
  if (result == "found") reader.requireKey("cause");
  const auto cause = reader.fields().oneOf("cause", keysOf(file.table.causes));
  const auto at = file.check(key);
  if (!at) return;
  const Check& check = file.checks[*at];
  known.made.push_back(*at);
  if (result == "nothing") {
    known.evidence.push_back(nothingFound(file.table, key, plannedCheck(check)));
  } else if (cause) {
    known.evidence.push_back(
        causeFound(file.table, key, plannedCheck(check), *file.table.cause(*cause)));
  }
}

void readRepaired(InputReader& reader, const CauseFile& file, KnownOfShake& known) {
  const Json* list = reader.fields().array("repaired");
  if (list == nullptr) return;
  for (std::size_t at = 0; at < list->size(); ++at) {
    const Json& item = list->at(at);
    const auto cause = item.is_string() ? file.table.cause(item.get<std::string>()) : std::nullopt;
    if (cause) {
      known.evidence.push_back(repaired(file.table, *cause));
      continue;
    }
    std::string choices;
    for (const auto key : keysOf(file.table.causes)) {
      choices.append(choices.empty() ? "" : ", ").append(key);
    }
    reader.fail({ErrorCode::InvalidInput,
                 "json.not_one_of",
                 reader.fields().pathOf("repaired") + "/" + std::to_string(at),
                 {{"text", item.is_string() ? item.get<std::string>() : item.dump()},
                  {"choices", choices}}});
  }
}

/// "yes | no | unknown".
std::string joined(const std::vector<std::string_view>& words) {
  std::string text;
  for (const auto word : words) text.append(text.empty() ? "" : " | ").append(word);
  return text;
}

/// The answers to each feature, kept for the descriptions that point at them.
const std::vector<std::string>& answerChoices(const CauseFile& file) {
  static const std::vector<std::string> kept = [&] {
    std::vector<std::string> all;
    for (const auto& feature : file.table.features) {
      std::vector<std::string_view> words;
      for (const auto& answer : feature.answers) words.push_back(answer.word);
      words.push_back(kUnknown);
      all.push_back(joined(words));
    }
    return all;
  }();
  return kept;
}

std::vector<FieldDescription> answerFields(const CauseFile& file) {
  std::vector<FieldDescription> fields;
  for (std::size_t at = 0; at < file.table.features.size(); ++at) {
    const auto& feature = file.table.features[at];
    fields.push_back({.name = feature.key,
                      .kind = "word",
                      .defaultValue = R"("unknown")",
                      .range = answerChoices(file)[at],
                      .meaning = feature.ask});
  }
  return fields;
}

}  // namespace

void readKnown(InputReader& reader, const CauseFile& file, KnownOfShake& known) {
  reader.inObject("answers", [&](InputReader& answers) { readAnswers(answers, file, known); });
  reader.eachObject("traces", [&](InputReader& trace) { readTrace(trace, file, known); });
  reader.eachObject("checks", [&](InputReader& check) { readCheck(check, file, known); });
  readRepaired(reader, file, known);
}

std::vector<FieldDescription> knownFields(const CauseFile& file) {
  static const std::vector<FieldDescription> answers = answerFields(file);
  static const std::string causes = joined(keysOf(file.table.causes));
  static const std::string questions = joined(keysOf(file.table.features));
  return {
      {.name = "answers",
       .kind = "object",
       .meaning = "what was told about the shake; what is not known is left out, it is not no",
       .fields = answers},
      {.name = "traces",
       .kind = "list of object",
       .meaning = "what a road log says of a question that nobody answered",
       .fields = {{.name = "question",
                   .kind = "word",
                   .presence = Presence::Required,
                   .range = questions},
                  {.name = "answer",
                   .kind = "word",
                   .presence = Presence::Required,
                   .meaning = "the answer it is about"},
                  {.name = "times",
                   .kind = "number",
                   .presence = Presence::Required,
                   .range = "from 0.001 to 1000",
                   .meaning = "how much more likely the log is where that answer is right"}}},
      {.name = "checks",
       .kind = "list of object",
       .meaning = "checks that were made",
       .fields = {{.name = "check",
                   .kind = "word",
                   .presence = Presence::Required,
                   .range = checkChoices()},
                  {.name = "result",
                   .kind = "word",
                   .presence = Presence::Required,
                   .range = "nothing | found",
                   .meaning = "a check that could not tell is left out"},
                  {.name = "cause", .kind = "word", .range = causes, .meaning = "that was found"}}},
      {.name = "repaired",
       .kind = "list of word",
       .range = causes,
       .meaning = "causes put right already while it went on shaking"}};
}

std::string_view checkChoices() {
  static const std::string kept = joined(keysOf(diagnosis::shippedCauses().checks));
  return kept;
}

double readDamping(InputReader& options) {
  return options.number("damping", {.least = kLeastDamping, .most = 1, .text = "from 0.5 to 1"})
      .value_or(1);
}

FieldDescription dampingField() {
  return {.name = "damping",
          .kind = "number",
          .defaultValue = "1",
          .range = "0.5 to 1",
          .meaning = "the power each answer's chance is taken to: related answers count less"};
}

std::string evidenceWords(const CauseFile& file, const diagnosis::Evidence& evidence) {
  using diagnosis::EvidenceKind;
  switch (evidence.kind) {
    case EvidenceKind::Answer:
    case EvidenceKind::Trace:
      if (const auto feature = file.table.feature(evidence.key)) {
        const auto& asked = file.table.features[*feature];
        const auto answer = asked.answer(evidence.answer);
        return answer ? asked.ask + " " + asked.answers[*answer].text : asked.ask;
      }
      break;
    case EvidenceKind::Check:
      if (const auto check = file.check(evidence.key)) return file.checks[*check].name;
      break;
    case EvidenceKind::Repair:
      if (const auto cause = file.table.cause(evidence.key)) {
        return "put right: " + file.table.causes[*cause].name;
      }
      break;
  }
  return evidence.key;
}

}  // namespace sw::compute
