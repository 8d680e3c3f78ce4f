// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <string_view>
#include <utility>
#include <vector>

#include "base/result.h"
#include "base/words.h"
#include "mechanics/judged.h"

// METHOD CARD: what becomes of the two brake discs of an axle
// Rules, in this order, for the axle as a pair:
//   1 cracks, blue spots or heavy corrosion on either, or a minimum proved below discard: replace.
//   2 variation or residual runout (the disc is not flat) of either proved over its limit: both
//     sides of both discs are cut, if minimum - 2 x cut per side is proved at least machine-to on
//     both; proved below on either: replace; else not decided. Left and right then differ by less
//     than a limit, or it is not decided (cut the thicker one further).
//   3 a minimum, variation or residual that is undecided or missing: not decided, measure again.
//   4 total runout over the limit (the seat's tilt): clean and index; undecided: not decided.
//   5 else keep. A disc is never kept whose minimum is not proved above discard.
// Between machine-to and discard a disc may be used, not machined: they are two limits.
// Source: common practice, no source; two separate limits "after refinishing" and "discard":
//   government maintenance manuals (seen). Decision rule: measure/decision.h.
// Uncertainty: of each figure as given (standard). After machining the figure is the lathe's, its
//   uncertainty that of the minimum; the difference of two carries both.
// Valid range: thicknesses and the minimum's uncertainty > 0 (a minimum is proved
//   by it), cut >= 0, machine-to >= discard.
// Assumptions: figures of both discs taken the same way, at the thinnest place found.
// When not to use: where the vehicle's documentation forbids machining, leave machine-to out.
// Degenerate cases: no limit for variation or runout: not judged, named as such.
// Reference test: tests/core/mechanics/brakes/disc_decision_test.cpp.

namespace sw::mechanics {

enum class DiscCondition { None, Cracks, BlueSpots, HeavyCorrosion };
[[nodiscard]] std::string_view word(DiscCondition condition);

enum class DiscAction { Keep, CleanAndIndex, Resurface, Replace, NotDecided };
[[nodiscard]] std::string_view word(DiscAction action);

/// A length with its standard uncertainty.
struct MeasuredLength {
  Length value;
  Length standardUncertainty;
};

struct DiscFigures {
  MeasuredLength minimum;
  std::optional<MeasuredLength> variation;
  std::optional<MeasuredLength> runout;    ///< total, TIR at the track
  std::optional<MeasuredLength> residual;  ///< without the first order
  std::optional<Length> firstOrder;        ///< R1: the seat's part is twice this
  DiscCondition condition = DiscCondition::None;
  std::optional<Length> cutPerSide;
};

struct DiscLimits {
  Length discard;
  std::optional<Length> machineTo;
  std::optional<Length> variation;
  std::optional<Length> runout;
  Length differenceAfter = millimetres(0.5);  ///< common practice, no source
};

inline constexpr std::size_t kDiscsOfAnAxle = 2;

struct DiscDecisionInput {
  std::array<DiscFigures, kDiscsOfAnAxle> discs;
  DiscLimits limits;
  double confidence = 0.95;
};

struct JudgedDisc {
  DiscCondition condition = DiscCondition::None;
  Judged<Length> minimum;
  std::optional<Judged<Length>> variation, runout, residual;
  std::optional<Length> tilt;                    ///< 2 R1
  std::optional<Judged<Length>> afterMachining;  ///< against machine-to; where both are known
};

/// What spoke for the decision.
enum class DiscReason {
  Condition,
  BelowDiscard,
  MinimumNotProved,
  VariationOutside,
  NotFlat,
  SeatTilted,
  NotMachinable,
  MachiningNotProved,
  MachiningUnknown,
  DifferenceTooLarge,
  DifferenceNotProved,
  VariationUndecided,
  FlatnessUndecided,
  RunoutUndecided,
  VariationMissing,
  RunoutMissing,
  AllWithin
};
[[nodiscard]] std::string_view word(DiscReason reason);

struct DiscFinding {
  DiscReason reason{};
  std::optional<std::size_t> disc;  ///< 0 or 1; empty: of the axle
  std::optional<Length> value, limit;
};

struct DiscDecision {
  DiscAction action = DiscAction::NotDecided;
  std::vector<DiscFinding> findings;  ///< the deciding ones first
  std::array<JudgedDisc, kDiscsOfAnAxle> discs;
  std::optional<Judged<Length>> differenceAfter;  ///< left against right, after machining
};

/// Errors: OutOfRange "disc_decision.machine_to_below_discard", "measure.not_positive",
/// "measure.not_finite", "measure.bad_confidence" (field as "discs/0/minimum").
[[nodiscard]] Result<DiscDecision> discDecision(const DiscDecisionInput& input);

}  // namespace sw::mechanics

namespace sw {

template <>
struct Words<mechanics::DiscCondition> {
  using E = mechanics::DiscCondition;
  static constexpr std::array<std::pair<E, std::string_view>, 4> table{
      {{E::None, "none"},
       {E::Cracks, "cracks"},
       {E::BlueSpots, "blue_spots"},
       {E::HeavyCorrosion, "heavy_corrosion"}}};
};

}  // namespace sw
