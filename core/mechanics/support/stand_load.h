// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <string_view>
#include <utility>

#include "base/result.h"
#include "base/words.h"
#include "units/quantity.h"

// METHOD CARD: are the stands under an axle strong enough?
// Formula: needed on each stand = half of what stands on the axle, and each must be rated for more
// than
//   that. Axle load = weighed, or vehicle mass x share; where the split is unknown the whole mass
//   of the vehicle is taken. Rating per pair counts half for each. Margin = rating / needed - 1.
// Source: common practice, no source, for "more than half on each"; stands in pairs, rated load not
//   exceeded: HSE guidance on working under vehicles (from memory).
// Assumptions: level hard ground, stands upright under the axle at the same height. More than two
// stands
//   do not lower the demand: when the vehicle shifts, two of them carry the axle.
// When not to use: it says nothing about chocks, ground, the condition of a stand, or a shake test;
// it
//   never says that a vehicle is safe to go under.
// Valid range: masses > 0, 0 < share <= 1. Fewer than two stands under an axle are refused.
// Reference test: tests/core/mechanics/support/stand_load_test.cpp.

namespace sw {

enum class StandRating { Each, PerPair };
[[nodiscard]] std::string_view word(StandRating rating);

/// How the axle load is known, best first.
enum class AxleLoadKnowledge { Weighed, FromVehicleDocuments, MassAndShare, MassOnly };
[[nodiscard]] std::string_view word(AxleLoadKnowledge knowledge);

struct StandInput {
  AxleLoadKnowledge knowledge = AxleLoadKnowledge::Weighed;
  std::optional<Mass> axleLoad;     ///< for Weighed and FromVehicleDocuments
  std::optional<Mass> vehicleMass;  ///< for MassAndShare and MassOnly
  std::optional<double> axleShare;  ///< for MassAndShare: part of the mass on this axle, 0..1
  int stands = 2;
  Mass rating;  ///< as marked on the stand
  StandRating ratingMeans = StandRating::Each;
};

enum class StandVerdict { Enough, NotEnough };
[[nodiscard]] std::string_view word(StandVerdict verdict);

struct StandOutcome {
  Mass axleLoad;      ///< what was taken as standing on the axle
  Mass neededEach;    ///< each stand must be rated for more than this
  Mass ratedEach;     ///< after halving a rating per pair
  double margin = 0;  ///< ratedEach / neededEach - 1
  StandVerdict verdict = StandVerdict::NotEnough;
  AxleLoadKnowledge knowledge = AxleLoadKnowledge::Weighed;
};

/// Errors: Refused "stand_load.too_few_stands" (detail: stands); Missing "stand_load.missing"
/// (field); OutOfRange "measure.not_positive" / "measure.not_finite" (field) and
/// "stand_load.bad_share".
[[nodiscard]] Result<StandOutcome> standLoad(const StandInput& input);

template <>
struct Words<StandRating> {
  using E = StandRating;
  static constexpr std::array<std::pair<E, std::string_view>, 2> table{
      {{E::Each, "each"}, {E::PerPair, "per_pair"}}};
};

template <>
struct Words<AxleLoadKnowledge> {
  using E = AxleLoadKnowledge;
  static constexpr std::array<std::pair<E, std::string_view>, 4> table{
      {{E::Weighed, "weighed"},
       {E::FromVehicleDocuments, "vehicle_documents"},
       {E::MassAndShare, "mass_and_share"},
       {E::MassOnly, "mass_only"}}};
};

}  // namespace sw
