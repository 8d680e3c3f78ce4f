// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <string_view>
#include <utility>
#include <vector>

#include "base/result.h"
#include "base/words.h"
#include "measure/evaluation.h"
#include "mechanics/judged.h"
#include "units/quantity.h"

// METHOD CARD: setting of a wheel bearing
// Three kinds, each with its own rule; the wrong one ruins a bearing, so the kind is always asked:
//   end float: a pair of taper bearings that must keep a little play, read by dial gauge as the
//     travel between push and pull;
//   preload by pull: a pair set without play, read as the pull at a stud that keeps the hub
//   turning,
//     torque = pull x radius of the stud (swivel/starting_force.h);
//   unit without setting: only its play can be read; nothing is adjusted.
// Formula and uncertainty: series of measure/evaluation.h (play as a difference of two readings);
//   torque with the uncertainty of the radius; decision rule of measure/decision.h.
// Plausible end float, where the vehicle's figure is not known: 0.001 to 0.005 in (0.025 to 0.127
//   mm), recommended practice for heavy vehicles (TMC RP 618, as quoted). Not a limit.
// Source: as named; JCGM 100:2008, JCGM 106:2012 (from memory).
// Valid range: readings >= 0, radius > 0, limits >= 0 with min <= max.
// Assumptions: hub turned while it was tightened; brake off and not dragging; for a pull, seals in
//   place or not as the documentation says.
// When not to use: to compute a preload force from the pull.
// Degenerate cases: fewer than three readings are provisional.
// Reference test: tests/core/mechanics/bearings/wheel_bearing_test.cpp.

namespace sw::mechanics {

enum class WheelBearingKind { EndFloat, PreloadPull, UnitWithoutSetting };
[[nodiscard]] std::string_view word(WheelBearingKind kind);

inline constexpr Length kPlausibleFloatLeast = inches(0.001);
inline constexpr Length kPlausibleFloatMost = inches(0.005);

struct PlaySetting {
  std::vector<Length> readings;
  InstrumentCapability instrument;
  Limits<Length> limits;
  double confidence = 0.95;
};

struct PlayJudged {
  Judged<Length> play;
  SeriesOutcome series;
  std::optional<Verdict> plausibility;  ///< of an end float without limits
};

/// Errors: as playSeries (field "readings").
[[nodiscard]] Result<PlayJudged> endFloat(const PlaySetting& setting);
/// The play a unit may have has no lower limit. Errors: the same, and OutOfRange
/// "wheel_bearing.not_for_kind" for limits.min (details: kind).
[[nodiscard]] Result<PlayJudged> unitPlay(const PlaySetting& setting);

struct PullSetting {
  std::vector<Force> readings;
  InstrumentCapability instrument;
  Length radius;  ///< of the stud that is pulled
  Length radiusUncertainty;
  Angle offSquareWithin;  ///< half-width of an unknown deviation
  Limits<Torque> limits;
  double confidence = 0.95;
};

struct PullJudged {
  Judged<Torque> torque;
  SeriesOutcome series;  ///< of the pulls
};

/// Errors: as endFloat and swivelTorque (field "readings", "radius", ...).
[[nodiscard]] Result<PullJudged> preloadPull(const PullSetting& setting);

}  // namespace sw::mechanics

namespace sw {

template <>
struct Words<mechanics::WheelBearingKind> {
  using E = mechanics::WheelBearingKind;
  static constexpr std::array<std::pair<E, std::string_view>, 3> table{
      {{E::EndFloat, "end_float"},
       {E::PreloadPull, "preload_pull"},
       {E::UnitWithoutSetting, "unit_without_setting"}}};
};

}  // namespace sw
