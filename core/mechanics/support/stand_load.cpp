// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/support/stand_load.h"

#include <array>
#include <string>
#include <utility>

#include "base/words.h"
#include "mechanics/number_checks.h"

namespace sw {

template <>
struct Words<StandVerdict> {
  static constexpr std::array<std::pair<StandVerdict, std::string_view>, 2> table{
      {{StandVerdict::Enough, "enough"}, {StandVerdict::NotEnough, "not_enough"}}};
};

namespace {

constexpr int kFewestStands = 2;

Result<Mass> positive(const std::optional<Mass>& mass, const char* field) {
  if (!mass) return fail(ErrorCode::Missing, "stand_load.missing", field);
  return mechanics::NumberChecks().positive(field, *mass).done().map([&] { return *mass; });
}

Result<Mass> axleLoadOf(const StandInput& input) {
  switch (input.knowledge) {
    case AxleLoadKnowledge::Weighed:
    case AxleLoadKnowledge::FromVehicleDocuments:
      return positive(input.axleLoad, "axle_load");
    case AxleLoadKnowledge::MassOnly:
      return positive(input.vehicleMass, "vehicle_mass");
    case AxleLoadKnowledge::MassAndShare:
      break;
  }
  const auto mass = positive(input.vehicleMass, "vehicle_mass");
  if (!mass) return mass;
  if (!input.axleShare) return fail(ErrorCode::Missing, "stand_load.missing", "axle_share");
  if (!(*input.axleShare > 0 && *input.axleShare <= 1)) {
    return fail(ErrorCode::OutOfRange, "stand_load.bad_share", "axle_share");
  }
  return *mass * *input.axleShare;
}

}  // namespace

std::string_view word(StandRating rating) {
  return wordOf(rating);
}
std::string_view word(AxleLoadKnowledge knowledge) {
  return wordOf(knowledge);
}
std::string_view word(StandVerdict verdict) {
  return wordOf(verdict);
}

Result<StandOutcome> standLoad(const StandInput& input) {
  if (input.stands < kFewestStands) {
    return fail(ErrorCode::Refused, "stand_load.too_few_stands", "stands",
                {{"stands", std::to_string(input.stands)}});
  }
  const auto load = axleLoadOf(input);
  if (!load) return failAs(load);
  const auto rating = positive(input.rating, "rating");
  if (!rating) return failAs(rating);
  StandOutcome outcome;
  outcome.axleLoad = *load;
  outcome.neededEach = *load / 2;
  outcome.ratedEach = input.ratingMeans == StandRating::PerPair ? *rating / 2 : *rating;
  outcome.margin = outcome.ratedEach / outcome.neededEach - 1;
  outcome.knowledge = input.knowledge;
  if (outcome.ratedEach > outcome.neededEach) outcome.verdict = StandVerdict::Enough;
  return outcome;
}

}  // namespace sw
