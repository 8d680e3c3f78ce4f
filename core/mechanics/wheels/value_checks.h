// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <initializer_list>
#include <optional>
#include <string_view>

#include "base/result.h"
#include "units/quantity.h"

// What a calculation of wheels or geometry may be given, said once.

namespace sw::mechanics {

enum class Need { Any, NotNegative, Positive };

struct NamedValue {
  std::string_view field;
  double value = 0;  ///< SI
  Need need = Need::Positive;
};

/// The first value that is not finite, has the wrong sign or is beyond all reason: more than 1e12
/// or, where it must be positive, less than 1e-12. OutOfRange "measure.not_finite",
/// "measure.not_positive" or "wheels.out_of_range" (detail: range), the field named.
[[nodiscard]] std::optional<Error> firstBad(std::initializer_list<NamedValue> values);

/// What is wrong with an angle that may be up to `most` either way; `range` says so in words.
[[nodiscard]] std::optional<Error> badAngle(std::string_view field, Angle angle, Angle most,
                                            std::string_view range);

/// OutOfRange "wheels.out_of_range" (detail: range).
[[nodiscard]] Error outOfRange(std::string_view field, std::string_view range);

/// Missing "wheels.missing".
[[nodiscard]] Error missing(std::string_view field);

}  // namespace sw::mechanics
