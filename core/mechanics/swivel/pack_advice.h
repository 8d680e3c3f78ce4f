// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "measure/evaluation.h"
#include "mechanics/swivel/force_prior.h"
#include "mechanics/swivel/knee_line.h"
#include "mechanics/swivel/shim_packs.h"

// METHOD CARD: which shim pack next
// Formula: for every pack that can be made, the starting force by knee_line.h: expected value, the
//   middle 95 % of the true force, the middle 95 % of what the scale will show, P(within), the
//   probability that the true force lies within the limit, and P(proved), the probability that the
//   planned pulls will prove it within (their mean keeps the guard band of the verdict).
//   Recommended is the pack with the greatest P(proved); of those within 2 % of it the one nearest
//   to the other side's force where they differ by more than the scatter, then the one nearest to
//   the middle of the limit, or of fewest shims. Where the best pack lies beyond reach: the
//   farthest pack towards it that is not, save that it will not be more than 15 % likely to lie
//   beyond the limit on the far side (but at least one step). Where even the best is less than 2 %
//   likely to lie within: one step, unless it leads back or is 95 % likely to jump over the limit.
// Reach: until two packs are measured, one step, in the direction the limit asks for. A pack whose
//   pull probably lies on the flat part (float left) does not count as measured for a slope. From
//   two packs on the slope: at most twice the measured interval beyond them.
// Source: common practice, no source ("never extrapolate over more than the measured interval
//   times two, never from a reading without preload"); the choice by P(proved) is our own.
// Valid range: a limit with at least one side; pulls >= 0; u >= 0.
// Assumptions: pulls of one state, square to the arm, as long an arm as the limit's.
// Degenerate cases: nothing measured: the pack at the measured knee, if there is one, else none; no
//   history and one pack: no prediction, one step; packs end: said so.
// Reference test: tests/core/mechanics/swivel/pack_advice_test.cpp, tests/eval.

namespace sw::mechanics {

/// How a pack lies to what is measured.
enum class PackReach { Measured, Reachable, Beyond };
[[nodiscard]] std::string_view word(PackReach reach);

struct ForceRange {
  Force low, high;
};

struct PackRow {
  AllowedPack pack;
  PackReach reach = PackReach::Beyond;
  struct Prediction {
    Force expected;         ///< as likely more as less (a long tail does not move it)
    ForceRange trueForce;   ///< middle 95 %
    ForceRange shownForce;  ///< middle 95 % of the mean the scale will show
    double within = 0, below = 0, above = 0;
    double proved = 0;  ///< probability that the planned pulls will prove it within
    std::optional<Force> fromOtherSide;  ///< expected difference
  };
  std::optional<Prediction> prediction;  ///< empty where nothing can be said
};

/// What a prediction rests on.
enum class PredictionBasis { None, History, OwnPulls, OwnPullsAndHistory };
[[nodiscard]] std::string_view word(PredictionBasis basis);

/// Why a pack is recommended, or none.
enum class PackReason {
  Stay,             ///< the pack that is in is the best there is
  LikeliestWithin,  ///< the greatest P(proved) of all
  AsFarAsAllowed,   ///< the best lies beyond reach
  OneStep,          ///< fewer than two packs measured, or the float is not gone
  MeasuredKnee,     ///< nothing pulled yet: the pack that just takes up the float
  MeasureFirst,     ///< nothing pulled, nothing measured
  PacksEnd,         ///< no pack left in the direction wanted
  NoneLikely,       ///< no pack that can be made will probably do: the steps are too coarse
};
[[nodiscard]] std::string_view word(PackReason reason);

struct PackQuestion {
  ShimStock stock;
  ShimEffect effect = ShimEffect::ThinnerRaises;
  LimitBand limit;                  ///< N
  std::vector<PackPulls> measured;  ///< in the order they were pulled; the last is the one in
  PredictionTerms terms;
  std::optional<ScatterWords> scatter;  ///< of this scale and hand, from past series
  Force rebuildScatter;
  std::optional<MeasuredKnee> knee;
  std::optional<ShopHistory> history;
  std::optional<Force> otherSide;
};

struct PackAdvice {
  std::vector<PackRow> rows;  ///< every pack that can be made, thinnest first
  std::optional<std::size_t> recommended;
  PackReason reason = PackReason::MeasureFirst;
  PredictionBasis basis = PredictionBasis::None;
  std::optional<ForceDirection> direction;  ///< what the pulls so far ask for
  /// The pack, makeable or not, whose expected force lies in the middle of the limit (or on it).
  std::optional<Length> wanted;
  bool floatLikely = false;      ///< the last pack probably leaves float
  std::optional<KneeLine> line;  ///< for the picture; empty without a prediction
};

/// Totals this near to each other are one pack.
inline constexpr Length kSamePack = millimetres(0.005);

enum class AdviceDetail { RecommendationOnly, WholeTable };
/// Errors: those of allowedPacks; Missing "shims.no_limit"; OutOfRange "measure.not_finite",
/// "measure.not_positive" (field "pulls" or "planned"), "measure.empty_limit".
[[nodiscard]] Result<PackAdvice> advisePack(const PackQuestion& question,
                                            AdviceDetail detail = AdviceDetail::WholeTable);

}  // namespace sw::mechanics
