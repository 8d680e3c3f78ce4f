// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "compute/calculation.h"
#include "compute/description.h"
#include "model/json.h"

// Inputs and answers of a calculation as people read them: names without underscores, quantities
// with the digits that mean something. For the bench, the sheet and the command line alike.

namespace sw::compute {

/// The values that are there, in the order of the description.
[[nodiscard]] Readable readable(const std::vector<FieldDescription>& fields,
                                const model::Json& values);
/// "max_pack" as "Max pack".
[[nodiscard]] std::string readableName(std::string_view name);

/// The answer: as the calculation says it for people where it does, else field by field.
[[nodiscard]] Readable readableAnswer(const Description& description, const Answer& answer);

}  // namespace sw::compute
