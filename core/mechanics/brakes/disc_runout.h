// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "base/result.h"
#include "mechanics/brakes/even_samples.h"
#include "mechanics/judged.h"

// METHOD CARD: runout of a brake disc, and what it is made of
// Formula: readings at N even steps over one or more turns, averaged place by place and multiplied
//   by cos a where the plunger stands a off square to the face (it then reads TIR / cos a). Total
//   TIR = largest - smallest; orders (even_samples.h); residual = largest - smallest without
//   order 1. Pure tilt of the seat has TIR = 2 R1; order 2 and up means that the disc is not flat.
// Turns: drift = last turn's mean - first turn's mean; repeatability = pooled scatter of each place
//   about its mean, N (turns - 1) degrees of freedom.
// Uncertainty: TIR as a difference of two readings (graduation twice, own error cancels, local
// error
//   stays, repeatability over the turns); R1 and the other amounts as in even_samples.h.
// Source: plane geometry, discrete Fourier sum (textbook); JCGM 100:2008 (from memory). Twelve
//   places over two turns: common practice, no source.
// Valid range: 4 places or more, readings finite, |a| < 60 degrees.
// Assumptions: disc held by all wheel nuts at even torque on flat washers, bearing play taken out
// or
//   known, indicator on a rigid part of the knuckle, one radius.
// When not to use: thickness variation is another fault: runout alone is followed by a floating
//   caliper. Few places read the residual low (captured share).
// Degenerate cases: equal readings: all amounts 0, phases 0.
// Reference test: tests/core/mechanics/brakes/disc_runout_test.cpp.

namespace sw::mechanics {

inline constexpr int kFewestRunoutPlaces = 4;
inline constexpr int kMostTurns = 20;
inline constexpr Angle kMostPlungerTilt = degrees(60);

struct DiscRunoutInput {
  std::vector<Length> readings;  ///< turn after turn
  int turns = 1;
  InstrumentCapability instrument;
  Angle plungerOffSquare;
  std::optional<Length> limit;  ///< on the TIR
  double confidence = 0.95;
};

struct DiscRunout {
  std::vector<Length> averaged;  ///< place by place, corrected
  Extent extent;
  Judged<Length> total;  ///< TIR against the limit
  std::vector<Order> orders;
  VectorAmount tilt;                    ///< order 1; the seat's part of the TIR is twice its amount
  Length tiltUncertainty;               ///< standard, of its amount and across it
  Length residual;                      ///< largest - smallest without order 1
  Length residualUncertainty;           ///< standard
  std::optional<Length> repeatability;  ///< of one reading; from two turns on
  std::optional<Length> drift;          ///< from two turns on
};

/// Errors: OutOfRange "disc_runout.too_few_places" (details: points, least),
/// "disc_runout.uneven_turns" (details: readings, turns), "disc_runout.bad_turns",
/// "disc_runout.off_square"; "measure.not_finite", "measure.not_positive",
/// "measure.bad_confidence".
[[nodiscard]] Result<DiscRunout> discRunout(const DiscRunoutInput& input);

/// One reading with the place it was taken at.
struct PlacedReading {
  Angle place;
  Length reading;
};
struct TurnSamples {
  std::vector<Length> readings;  ///< turn after turn, each from the smallest angle on
  int turns = 1;
};
/// Readings in any order as even steps. One place must be at 0. Errors: OutOfRange
/// "disc_runout.uneven_places" where the places are not even steps from 0 on (to 1 degree),
/// "disc_runout.uneven_turns" where a place was read more often than another.
[[nodiscard]] Result<TurnSamples> evenTurns(const std::vector<PlacedReading>& points);

}  // namespace sw::mechanics
