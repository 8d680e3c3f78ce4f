// SPDX-License-Identifier: GPL-3.0-or-later
#include "workshop/checks_ahead.h"

#include <algorithm>
#include <charconv>
#include <sstream>

#include "diagnosis/own_numbers.h"
#include "diagnosis/pair_guess.h"
#include "diagnosis/second_looks.h"
#include "diagnosis/shipped_causes.h"
#include "store/book.h"
#include "workshop/lesson.h"

namespace sw::workshop {

namespace {

using diagnosis::CauseFile;
using diagnosis::Circumstances;

/// How the vehicle stands, as far as the job says: its wheels on or off the ground.
std::size_t setupOf(const JobState& job, const CauseFile& file, const std::string& wished) {
  if (const auto setup = file.setup(wished)) return *setup;
  return file.setup(job.vehicleUp ? "lifted" : "ground").value_or(0);
}

Circumstances circumstancesOf(const JobState& job, const CauseFile& file, const CheckWishes& wishes,
                              const ShakeKnown& known) {
  const auto& preset = file.presetOrFirst(wishes.preset);
  Circumstances here;
  here.support = job.support.value_or(preset.support);
  here.discMount = job.vehicle.fact.arrangement.discMount;
  here.equipment = preset.equipment;
  here.setup = setupOf(job, file, wishes.setup);
  here.fallbackMinutes = wishes.givingUp.value_or(file.fallbackMinutes);
  for (const std::string& key : wishes.leftOut) {
    if (const auto check = file.check(key)) here.leftOut.push_back(*check);
  }
  for (std::size_t check = 0; check < file.checks.size(); ++check) {
    if (known.hasMade(check)) here.leftOut.push_back(check);
  }
  return here;
}

std::vector<std::string> wordsIn(const std::string& text) {
  std::istringstream in(text);
  std::vector<std::string> words;
  for (std::string word; in >> word;) words.push_back(word);
  return words;
}

std::optional<double> minutesIn(const std::string& text) {
  double minutes = 0;
  const char* const end = text.data() + text.size();
  const auto [last, error] = std::from_chars(text.data(), end, minutes);
  if (error != std::errc{} || last != end || !(minutes >= 0)) return std::nullopt;
  return minutes;
}

/// The check that was clear and is most worth a second look.
std::optional<std::size_t> lookAgain(const CauseFile& file, const ChecksAhead& ahead) {
  std::vector<diagnosis::Look> looks;
  std::vector<std::size_t> checks;
  for (const MadeCheck& made : ahead.known.made) {
    if (!made.clear) continue;
    // The chances are those after the first look, so that this one is the next.
    diagnosis::Look look;
    for (const diagnosis::Detection& one : file.checks[made.check].finds) {
      look.chance += ahead.problem.causes[one.cause] * one.chance;
    }
    look.minutes = ahead.problem.checks[made.check].minutes;
    looks.push_back(look);
    checks.push_back(made.check);
  }
  const auto next = diagnosis::nextLook(looks);
  return next ? std::optional(checks[*next]) : std::nullopt;
}

}  // namespace

Result<CauseFile> causesOf(const ShopState& shop) {
  return diagnosis::withOwnNumbers(diagnosis::shippedCauses(), shop.causeNumbers());
}

std::string leftOutSetting(model::JobId job) {
  return "causes.left_out/" + std::to_string(job.value);
}

std::string setupSetting(model::JobId job) {
  return "causes.set_up/" + std::to_string(job.value);
}

Result<CheckWishes> checkWishes(const store::Book& book, model::JobId job) {
  std::vector<std::string> texts;
  for (const std::string& key : {std::string(kPresetSetting), std::string(kGivingUpSetting),
                                 leftOutSetting(job), setupSetting(job)}) {
    auto setting = book.setting(key);
    if (!setting) return failAs(setting);
    texts.push_back(setting->value_or(""));
  }
  return CheckWishes{texts[0], minutesIn(texts[1]), wordsIn(texts[2]), texts[3]};
}

std::optional<std::string> placeForCheck(const JobState& job) {
  std::size_t first = job.runs.size();  // run with a hold that is not passed
  for (const HoldView& hold : job.holds) {
    if (!hold.passed()) first = std::min(first, job.steps[hold.step].run);
  }
  if (first == job.runs.size()) return std::nullopt;
  for (std::size_t run = first; run-- > 0;) {
    const std::string& procedure = job.runs[run].fact.procedure;
    if (job.newestRun(procedure, std::nullopt) == run) return procedure;
  }
  return std::nullopt;
}

Result<ChecksAhead> checksAhead(const JobState& job, const CauseFile& file,
                                const CheckWishes& wishes) {
  ChecksAhead ahead;
  ahead.known = shakeKnown(job, file);
  ahead.ranking = diagnosis::rank(file.table, ahead.known.evidence, file.damping);
  ahead.problem = problemFor(file, circumstancesOf(job, file, wishes, ahead.known));
  ahead.problem.causes = probabilities(file.table, ahead.known.evidence, file.damping);
  auto plan = diagnosis::bestPlan(ahead.problem);
  if (!plan) return failAs(plan);
  ahead.plan = std::move(*plan);
  ahead.pair = diagnosis::likelyPair(file.table, ahead.known.told);
  ahead.cured = curedCauses(job, file, ahead.known);
  if (ahead.plan.steps.empty()) ahead.lookAgain = lookAgain(file, ahead);
  return ahead;
}

}  // namespace sw::workshop
