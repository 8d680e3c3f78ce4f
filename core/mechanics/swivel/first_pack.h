// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <string_view>
#include <utility>
#include <vector>

#include "base/result.h"
#include "base/words.h"
#include "mechanics/swivel/shim_packs.h"
#include "units/quantity.h"

// METHOD CARD: the first shim pack, measured and not guessed
// Formula: nipped (shims under the cap flange): the cap is nipped evenly without shims to the drag
//   that is wanted, a feeler goes in at every bolt; pack = mean gap - allowance. End float (dial
//   gauge on the pin or the hub, the pack found in place): under the flange pack = found - float -
//   allowance, between pin and cap pack = found + float + allowance. The allowance is the
//   interference wanted beyond "no float"; 0 where the nip already gives the drag.
//   u^2 = (s / sqrt(n))^2 + u_one^2 + u(found)^2, u_one counted once: a feeler or gauge repeats its
//   own error. s is the spread of the gaps; a tilt is not scatter and is taken out first.
//   Gaps around the circle: g_i = m + c cos(2 pi i / n) + s sin(2 pi i / n); from 4 bolts on the
//   tilt is its first harmonic (peak to peak 2 sqrt(c^2 + s^2)), what is left names a single bolt.
// Source: dimension chain; common practice, no source (nip and feeler, dial gauge and allowance;
//   unequal gaps mean dirt or a tilted shim; uneven from 0.05 mm on unless told otherwise).
// Valid range: gaps and float >= 0; 2 to 12 bolts evenly spaced; a pack that comes out above 0.
// Assumptions: the housing does not give under the nip; shims lie flat.
// Degenerate cases: a pack of nothing or less: the parts are worn or the layout is wrong: refused.
// When not to use: instead of a pull. The pack found here is a start; the pull decides.
// Reference test: tests/core/mechanics/swivel/first_pack_test.cpp.

namespace sw::mechanics {

enum class FirstPackMethod { Nip, EndFloat };
[[nodiscard]] std::string_view word(FirstPackMethod method);

/// What the gaps at the bolts say.
enum class GapPattern { Even, Tilted, OneBoltOff };
[[nodiscard]] std::string_view word(GapPattern pattern);

/// Shims at both ends: the total sets the preload, the split centres the knuckle.
struct PackSplit {
  Length top, bottom;
};

struct FirstPackInput {
  FirstPackMethod method = FirstPackMethod::Nip;
  ShimEffect effect = ShimEffect::ThinnerRaises;
  ShimStock stock;
  std::vector<Length> readings;  ///< gaps in the order of the bolts, or end floats
  Length oneReading;             ///< standard uncertainty of one of them
  std::optional<Length> found;   ///< pack found, by micrometer; needed for end float
  Length foundUncertainty;       ///< standard
  Length allowance;
  Length unevenFrom = millimetres(0.05);
  std::optional<PackSplit> split;  ///< as found
};

struct GapShape {
  GapPattern pattern = GapPattern::Even;
  Length range;               ///< widest less narrowest
  Length tilt;                ///< peak to peak of the first harmonic
  std::optional<int> atBolt;  ///< 1-based: the widest side of a tilt, or the bolt that is off
};

struct SplitPack {
  AllowedPack pack;
  std::optional<PackSplit> split;  ///< of these very shims, nearest to the difference found
};

struct FirstPack {
  Length wanted;
  Length standardUncertainty;
  std::optional<GapShape> gaps;
  std::vector<SplitPack> packs;           ///< the nearest, then its neighbours; up to three
  std::optional<AllowedPack> foundStack;  ///< shims on hand that make the pack found
};

/// Errors: those of allowedPacks; Missing "first_pack.no_readings", "first_pack.no_found";
/// OutOfRange "first_pack.negative", "first_pack.bolts" (details: least, most), Degenerate
/// "first_pack.nothing_left" (detail text), "shims.no_pack"; OutOfRange
/// "first_pack.nip_needs_flange" for a nip with shims between pin and cap.
[[nodiscard]] Result<FirstPack> firstPack(const FirstPackInput& input);

}  // namespace sw::mechanics

namespace sw {

template <>
struct Words<mechanics::FirstPackMethod> {
  using E = mechanics::FirstPackMethod;
  static constexpr std::array<std::pair<E, std::string_view>, 2> table{
      {{E::Nip, "nip"}, {E::EndFloat, "end_float"}}};
};

}  // namespace sw
