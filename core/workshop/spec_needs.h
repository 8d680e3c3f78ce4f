// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/words.h"
#include "procedures/library.h"
#include "workshop/job_state.h"

// Which lines the spec sheet of a vehicle needs, and which of them are there: the limits and torque
// groups the procedures name, and the lines the workshop reads itself (shims, wheel nuts, variation
// of discs).

namespace sw::workshop {

/// The lines read by a fixed key, whatever the procedures say.
inline constexpr std::string_view kShimSizesKey = "shims.sizes";
inline constexpr std::string_view kShimMaxPackKey = "shims.max_pack";
inline constexpr std::string_view kShimMaxCountKey = "shims.max_count";
inline constexpr std::string_view kWheelNutsKey = "wheel_nuts";
inline constexpr std::string_view kDiscVariationKey = "disc.thickness_variation";
/// Never asked for: many documents forbid machining.
inline constexpr std::string_view kDiscMachineToKey = "disc.machine_to";

enum class SpecLineState {
  Missing,
  Incomplete,  ///< `lacks` says what is not on the line
  Complete
};

struct SpecNeed {
  std::string key;  ///< phrasing::specKeyName has its name
  model::SpecKind type = model::SpecKind::Limit;
  std::optional<QuantityKind> quantity;  ///< absent for texts
  std::string group;                     ///< as the procedure calls the fasteners
  bool safety = false;                   ///< a reading that must be proved within rests on it
  std::string instead;                   ///< another key that does as well; empty if none
  std::vector<std::string> procedures;   ///< titles, in the order of the plan
  SpecLineState state = SpecLineState::Missing;
  /// "figure", "kind" (a figure of another quantity), "count" (of fasteners), "sizes" (the text is
  /// no list of sizes).
  std::vector<std::string> lacks;
  bool sourced = false;  ///< the line on file names its source
};

/// The lines the runs of the job need, in the order of first use. Steps that wait for something to
/// be observed count until it is; steps marked as not applicable do not.
[[nodiscard]] std::vector<SpecNeed> specNeedsOf(const JobState& job, const ShopState& shop);
/// The lines a plan of the library needs on this vehicle, later rounds included. Steps whose
/// condition is not known yet count. Errors: NotFound "workshop.no_plan", "workshop.no_vehicle".
[[nodiscard]] Result<std::vector<SpecNeed>> specNeedsOf(const procedures::Library& library,
                                                        const std::string& plan,
                                                        const ShopState& shop,
                                                        model::VehicleId vehicle);
/// The lines any procedure of the library can ask of this vehicle. Errors: NotFound
/// "workshop.no_vehicle".
[[nodiscard]] Result<std::vector<SpecNeed>> specNeedsOf(const procedures::Library& library,
                                                        const ShopState& shop,
                                                        model::VehicleId vehicle);
/// Nothing more has to be entered for it: the line is complete, or the one that does as well is.
[[nodiscard]] bool satisfied(const SpecNeed& need, const std::vector<SpecNeed>& all);

}  // namespace sw::workshop

namespace sw {

template <>
struct Words<workshop::SpecLineState> {
  using E = workshop::SpecLineState;
  static constexpr auto table = std::to_array<std::pair<E, std::string_view>>(
      {{E::Missing, "missing"}, {E::Incomplete, "incomplete"}, {E::Complete, "complete"}});
};

}  // namespace sw
