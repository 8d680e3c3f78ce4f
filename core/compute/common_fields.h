// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compute/calculation.h"
#include "compute/input_reader.h"

// What many calculations ask for or say alike.

namespace sw::compute {

/// "confidence" of the options: the probability asked for, 0.95 unless said otherwise.
[[nodiscard]] double readConfidence(InputReader& options);
/// The same where it is the only option.
[[nodiscard]] double readConfidenceOption(InputReader& reader);
[[nodiscard]] FieldDescription confidenceField();

/// The vehicle's own documentation comes first.
[[nodiscard]] Note documentationNote();

}  // namespace sw::compute
