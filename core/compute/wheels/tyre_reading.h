// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "compute/calculation.h"
#include "compute/input_reader.h"
#include "mechanics/wheels/rolling_circumference.h"
#include "mechanics/wheels/tyre_dimensions.h"

// How the calculations of wheels take a tyre: as marked, or measured.

namespace sw::compute {

/// Reads the marking under the key; empty, with an error kept where it is not understood.
[[nodiscard]] std::optional<mechanics::TyreDesignation> readDesignation(InputReader& reader,
                                                                        std::string_view key);

/// Its diameter. Errors: as nominalDimensions, the key as field.
[[nodiscard]] Result<mechanics::TyreDimensions> dimensionsOf(const mechanics::TyreDesignation& tyre,
                                                             std::string_view key,
                                                             double assumedAspect);

/// What is worth saying about a diameter from a marking: assumed_aspect, nominal_inches.
void noteMarking(const mechanics::TyreDimensions& dimensions, std::string_view which,
                 std::vector<Note>& notes);

/// How far a wheel rolls, from one of: tyre_on, diameter, static_radius, roll_out with turns.
struct RollingInput {
  std::optional<mechanics::TyreDesignation> tyreOn;
  std::optional<Length> diameter, staticRadius, rollOut;
  int turns = 1;
  Length treadWorn;
  std::optional<mechanics::RollingConvention> convention;
  std::optional<double> relativeUncertainty;
  double assumedAspect = mechanics::kUsualAspect;
};

/// Reads its fields; refuses none or more than one source.
[[nodiscard]] RollingInput readRolling(InputReader& reader);
/// Its options, inside "options".
void readRollingOptions(InputReader& options, RollingInput& input);

/// Errors: as the calculations of rolling_circumference.h, fields as paths.
[[nodiscard]] Result<mechanics::RollingCircumference> rollingOf(const RollingInput& input,
                                                                std::vector<Note>& notes);

[[nodiscard]] std::vector<FieldDescription> rollingFields();
[[nodiscard]] std::vector<FieldDescription> rollingOptionFields();
/// The options as used.
void putRollingOptions(const RollingInput& input, const mechanics::RollingCircumference& rolling,
                       Json& options);

}  // namespace sw::compute
