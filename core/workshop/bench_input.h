// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "model/json.h"
#include "workshop/job_state.h"

// Which calculations serve a step, and what a job already knows of their input: the spec sheet, the
// axle arrangement, what was measured with which instrument. What it does not know is left out, to
// be typed.

namespace sw::workshop {

/// Names of calculations, the most useful first: those the procedure names, else those that the
/// step's torque, pack or limit calls for.
[[nodiscard]] std::vector<std::string> benchFor(const StepView& step);

struct BenchPlace {
  std::optional<std::size_t> step;  ///< index into JobState::steps
  std::optional<model::Side> side;
};
/// The input as far as it is known; an empty object for a calculation the job knows nothing of.
/// Quantities as typed.
[[nodiscard]] model::Json benchInput(const JobState& job, const ShopState& shop,
                                     std::string_view calculation, const BenchPlace& place);

/// The pulls of one side of a job, pack by pack with the words of their state: what its starting
/// force tells a later job. Pulls at another arm than `arm` are turned into those at it. Empty
/// where none was pulled.
[[nodiscard]] model::Json pulledPacks(const JobState& job, model::Side side,
                                      const std::optional<TypedQuantity>& arm);
/// The arm at which the job pulls on this side, or failing that on the other.
[[nodiscard]] std::optional<TypedQuantity> pullingArm(const JobState& job, model::Side side);

}  // namespace sw::workshop
