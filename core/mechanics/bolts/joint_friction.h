// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <string_view>
#include <utility>

#include "base/result.h"
#include "base/words.h"
#include "mechanics/bolts/thread.h"

// METHOD CARD: what is known of the friction of a bolt
// Friction classes: A 0.04-0.10, B 0.08-0.16, C 0.14-0.24, D 0.20-0.35, E 0.30 and more. Steel
// bare,
//   phosphated or zinc plated: A-B with solid lubricant, wax or paste, B with grease or oil, C as
//   delivered or slightly oiled, D dry zinc, E dry zinc alloys and dry stainless. VDI 2230-1, table
//   of friction classes.
// Where nothing is known: 0.08 to 0.24, the span of B and C (our choice).
// Mean friction diameter under the turned part: (d_w + d_h) / 2. d_w: bearing face of a hexagon
//   head, ISO 4014 grade A, minimum, M5 to M20 (M18 from memory); d_h: ISO 273 medium (from
//   memory). For other sizes and for inch threads 1.3 d (handbook rule; M10: 13.0 against 12.8).
// When not to use: flange heads, washers that turn along, cone and ball seats of wheel nuts: give
//   the diameters of the face that rubs.
// Degenerate cases: class E has no upper end; its upper end must be given.
// Reference test: tests/core/mechanics/bolts/clamp_force_test.cpp.

namespace sw::mechanics {

/// A coefficient of friction that lies anywhere from least to most.
struct FrictionRange {
  double least = 0.08;
  double most = 0.24;
};
struct JointFriction {
  FrictionRange thread;
  FrictionRange head;  ///< under the turned part
};
/// One value each.
struct Friction {
  double thread = 0;
  double head = 0;
};

/// Errors: OutOfRange "bolts.bad_friction" (details: min, max) unless 0 < least <= most <= 1.
[[nodiscard]] Result<void> checkFriction(const FrictionRange& range, std::string_view field);

enum class FrictionClass { A, B, C, D, E };
/// The range of a class, either end replaced where it is given. Errors: Missing
/// "bolts.open_friction_class" for E without an upper end; those of checkFriction. Field
/// "friction".
[[nodiscard]] Result<FrictionRange> frictionOf(FrictionClass frictionClass,
                                               std::optional<double> least,
                                               std::optional<double> most);

enum class FrictionDiameterFrom { Given, StandardHead, RuleOfThumb };
struct FrictionDiameter {
  Length diameter;
  FrictionDiameterFrom from = FrictionDiameterFrom::RuleOfThumb;
};
/// What is known of the face that rubs; what is not given is taken from the standard head.
struct BearingFace {
  std::optional<Length> outer;
  std::optional<Length> hole;
};
/// Errors: OutOfRange "measure.not_positive", "measure.not_finite", "bolts.face_inside_hole";
/// Missing "bolts.needs_face" where one of the two is given and the size has no standard head.
/// Fields bearing_diameter, hole_diameter.
[[nodiscard]] Result<FrictionDiameter> frictionDiameter(const Thread& thread,
                                                        const BearingFace& face);

}  // namespace sw::mechanics

namespace sw {

template <>
struct Words<mechanics::FrictionClass> {
  using E = mechanics::FrictionClass;
  static constexpr std::array<std::pair<E, std::string_view>, 5> table{
      {{E::A, "A"}, {E::B, "B"}, {E::C, "C"}, {E::D, "D"}, {E::E, "E"}}};
};

template <>
struct Words<mechanics::FrictionDiameterFrom> {
  using E = mechanics::FrictionDiameterFrom;
  static constexpr std::array<std::pair<E, std::string_view>, 3> table{
      {{E::Given, "given"}, {E::StandardHead, "standard_head"}, {E::RuleOfThumb, "rule_of_thumb"}}};
};

}  // namespace sw
