// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "units/quantity.h"
#include "units/typed_quantity.h"

// METHOD CARD: shim packs that can be made, and the next one to try
// Formula: a pack is any selection of at least one shim from the sizes on hand, a size as often as
// it
//   is on hand, with at most maxCount shims and a total of at most maxPack. Packs whose totals
//   agree when rounded to 1 um count as one, made up with the fewest shims, of these with the
//   thickest. Sign: interference = (bearings + pin + inner shims) - (housing depth + flange shims).
//   Shims under the cap flange: a thinner pack raises the starting force. Shims between pin and
//   cap: a thicker one.
// Source: the sign by the dimension chain above; everything else is counting.
// Method: exact, size by size in whole nanometres, so that thou and tenths add up without drift.
// Valid range: sizes 1 um and up, 1..100 shims a pack; at most 100,000 packs that differ by a
// nanometre. Assumptions: shims add up to the sum of their thicknesses: clean, flat, without burrs.
// It says which
//   pack comes next in a direction, not which force it will give: force over pack has a knee.
// Degenerate cases: no pack within the bounds gives an empty list; beyond the last pack there is no
//   next one. The empty pack is not offered: whether a hub may run without shims is for its maker.
// Reference test: tests/core/mechanics/swivel/shim_packs_test.cpp (all selections by brute force).

namespace sw::mechanics {

/// What a change of the pack does to the starting force: it follows from where the shims sit.
enum class ShimEffect { ThinnerRaises, ThickerRaises };
enum class ForceDirection { RaiseForce, LowerForce };

/// Where a pack lies along the direction that raises the force: minus its thickness where a thinner
/// one raises it. Metres.
[[nodiscard]] constexpr double raising(ShimEffect effect, Length pack) {
  return effect == ShimEffect::ThinnerRaises ? -pack.si() : pack.si();
}

struct ShimSize {
  Length thickness;
  std::optional<int> onHand;  ///< empty = as many as wanted
};

struct ShimStock {
  std::vector<ShimSize> sizes;
  std::optional<Length> maxPack;
  int maxCount = 0;  ///< shims in one pack, at least 1
};

struct AllowedPack {
  std::vector<Length> shims;  ///< thickest first
  Length total;
  [[nodiscard]] int count() const { return static_cast<int>(shims.size()); }
};

/// All allowed packs, thinnest first. Errors: Missing "shims.no_sizes"; OutOfRange
/// "shims.not_positive" (field "shim_sizes", "on_hand" with detail position of the size, "max_pack"
/// or "max_count"), "shims.too_many_in_pack"; Degenerate "shims.too_many_packs".
[[nodiscard]] Result<std::vector<AllowedPack>> allowedPacks(const ShimStock& stock);

struct PackStep {
  Length current;  ///< total of the pack that is in
  ShimEffect effect = ShimEffect::ThinnerRaises;
  ForceDirection direction = ForceDirection::RaiseForce;
  Length sameWithin;  ///< totals this near to the current one are the same pack, measured
};

/// The nearest allowed pack in the direction asked for; nothing where the packs end. `allowed` as
/// allowedPacks gives it.
[[nodiscard]] std::optional<AllowedPack> nextPack(std::span<const AllowedPack> allowed,
                                                  const PackStep& step);

/// A stack of shims as typed.
struct ShimStack {
  std::vector<Length> shims;         ///< in the order typed
  std::vector<TypedQuantity> typed;  ///< the same, text and unit kept
  Length total;
};

/// Reads "0.50 + 0.25", "0,5 0,25 mm", "20 thou; 10 thou": '+', ';' and spaces separate, a comma is
/// a decimal mark only. A unit at the end counts for all; none at all means mm. Errors name the
/// field: those of parseSeries, InvalidInput "shims.empty_place" (nothing before, between or after
/// '+'), OutOfRange "shims.not_positive"; detail position (1-based).
[[nodiscard]] Result<ShimStack> parseStack(std::string_view text, const std::string& field);

}  // namespace sw::mechanics
