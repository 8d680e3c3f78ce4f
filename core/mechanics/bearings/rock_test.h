// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "measure/evaluation.h"
#include "mechanics/judged.h"
#include "units/quantity.h"

// METHOD CARD: is it the wheel bearing or the swivel?
// Formula: the wheel is rocked top and bottom, brake on and brake off; the rock is the whole travel
//   at the rim. Brake on, disc and pads take the wheel bearing out: what is left is swivel or
//   suspension. The increase with the brake off is the wheel bearing: mean(off) - mean(on).
// States of either part: none noticeable where its upper end (one-sided, the confidence) is below
//   what is noticeable; else found where its lower end is above 0; else cannot tell. Cannot tell
//   too where nothing was repeated, or where brake off rocks provably less than brake on.
// Limits: swivel 10 mm per 500 mm of diameter, bearing 1/8 in at the tyre sidewall (play_limits.h):
//   floors of roadworthiness, far too loose to cure shimmy.
// Uncertainty: each rock is a difference of two positions (graduation twice, own error cancels);
//   the increase carries both rocks. Scatter by repetition; Welch-Satterthwaite.
// Expected rock of taper bearings with axial float e, contact angle a, spread of the bearings s, at
//   radius R: 2 e tan(a) R / s (own, simplified: each bearing gives e tan(a) / 2 either way).
// Source: order of isolation and brake-on rock: British inspection guides; common practice.
// Assumptions: same hands, same place, same effort; the brake holds hub and carrier together.
// When not to use: drums or pads that move in their carrier add play of their own with the brake
// on. Degenerate cases: one reading each: values, no states. Reference test:
// tests/core/mechanics/bearings/rock_test_test.cpp.

namespace sw::mechanics {

enum class PlayState { Found, NoneNoticeable, CannotTell };
[[nodiscard]] std::string_view word(PlayState state);

struct RockTestInput {
  std::vector<Length> brakeOn, brakeOff;
  InstrumentCapability instrument;
  Length diameter;                       ///< where the rock is read
  Length noticeable = millimetres(0.5);  ///< common practice, no source
  double confidence = 0.95;
};

struct RockPart {
  Judged<Length> rock;  ///< against its floor
  Length floor;
  PlayState state = PlayState::CannotTell;
};

struct RockTest {
  RockPart swivel;        ///< brake on
  RockPart bearing;       ///< the increase
  bool reversed = false;  ///< brake off rocks provably less
  bool repeated = true;   ///< both series show their scatter
};

/// Errors: Missing "measure.no_readings" (field); OutOfRange "measure.not_positive",
/// "measure.not_finite" (field), "measure.bad_confidence".
[[nodiscard]] Result<RockTest> rockTest(const RockTestInput& input);

struct BearingFloat {
  Length endFloat;
  Angle contactAngle;
  Length spread;  ///< between the bearings of the pair
};
/// Errors: OutOfRange "measure.not_positive", "measure.not_finite" (field named),
/// "rock_test.bad_angle".
[[nodiscard]] Result<Length> rockFromFloat(const BearingFloat& bearing, Length radius);

}  // namespace sw::mechanics
