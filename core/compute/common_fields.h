// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "compute/calculation.h"
#include "compute/input_reader.h"
#include "measure/evaluation.h"

// What many calculations ask for or say alike.

namespace sw::compute {

/// "confidence" of the options: the probability asked for, 0.95 unless said otherwise.
[[nodiscard]] double readConfidence(InputReader& options);
/// The same where it is the only option.
[[nodiscard]] double readConfidenceOption(InputReader& reader);
[[nodiscard]] FieldDescription confidenceField();

/// The limits "min" and "max" of an object, each where it is there.
[[nodiscard]] LimitBand readBand(InputReader& limit, const QuantitySpec& spec);

/// Scatter known beforehand, of an object: "amount", and from how many "readings".
[[nodiscard]] PooledScatter readPooledScatter(InputReader& scatter, QuantityKind kind);

/// The vehicle's own documentation comes first.
[[nodiscard]] Note documentationNote();

}  // namespace sw::compute
