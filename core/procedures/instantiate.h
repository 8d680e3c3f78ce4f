// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "model/shop_facts.h"
#include "procedures/procedure.h"

namespace sw::procedures {

/// What conditions are judged by. Words by fact name; absent = not known. "side" is never asked for
/// where the side is given.
using Facts = std::function<std::optional<std::string>(const std::string& fact,
                                                       std::optional<model::Side> side)>;
[[nodiscard]] bool holds(const Condition& condition, const Facts& facts,
                         std::optional<model::Side> side);
/// The word of an arrangement's field by its stored name; empty for what is not known yet, which a
/// recorded "unknown" is too.
[[nodiscard]] std::optional<std::string> arrangementWord(const model::AxleArrangement& arrangement,
                                                         const std::string& fact);

/// One step of a run for one side (or once). `step` points into the procedure.
struct StepInstance {
  const Step* step = nullptr;
  std::optional<model::Side> side;
  /// Indices (into the same list) of the instances that must be done first.
  std::vector<std::size_t> needs;
};

/// The run's instances in working order: a once step stands where the file has it; consecutive each
/// steps are listed left first then right, step by step. Steps whose condition fails are left out
/// and their needs pass through to what they needed. With the drag-link side unknown a
/// drag-link-side step is made for every side of the run.
[[nodiscard]] std::vector<StepInstance> instantiate(const Procedure& procedure,
                                                    const std::vector<model::Side>& sides,
                                                    const Facts& facts);

}  // namespace sw::procedures
