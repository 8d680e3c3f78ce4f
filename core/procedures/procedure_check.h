// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "model/json.h"
#include "procedures/procedure.h"

// What must hold between the fields of one step, and between steps, for a procedure to be workable.

namespace sw::procedures {

/// The blocks a step's kind asks for are there, and no block that its kind would never show.
void checkStep(model::ObjectReader& in, const Step& step);
/// A hold asks at least one and at most three statements at once, whatever the facts of its
/// conditions turn out to be, and each can fail.
void checkHold(model::ObjectReader& in, const Step& step);

/// Step ids differ and needs name earlier steps, so that no two steps can wait for each other.
[[nodiscard]] std::optional<Error> checkSteps(const std::vector<Step>& steps);

}  // namespace sw::procedures
