// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bearings/bearing_stiffness.h"

#include <cmath>
#include <numbers>
#include <string>

#include "mechanics/number_checks.h"

namespace sw::mechanics {

namespace {

constexpr double kLineContact = 7.68e-5;  // both contacts, mm and N
constexpr double kLoadExponent = 0.9;
constexpr double kLengthExponent = 0.8;
constexpr int kFewestRollers = 3;

Result<void> check(const TaperBearing& bearing) {
  if (bearing.rollers < kFewestRollers) {
    return fail(
        ErrorCode::OutOfRange, "bearing_stiffness.bad_rollers", "rollers",
        {{"rollers", std::to_string(bearing.rollers)}, {"least", std::to_string(kFewestRollers)}});
  }
  const auto checked = NumberChecks()
                           .positive("contact_angle", bearing.contactAngle)
                           .positive("roller_length", bearing.rollerLength)
                           .done();
  if (!checked) return checked;
  if (bearing.contactAngle.si() < std::numbers::pi / 2) return {};
  return fail(ErrorCode::OutOfRange, "bearing_stiffness.bad_angle", "contact_angle");
}

/// Displacement in mm of 1 N.
double unitDisplacement(const TaperBearing& bearing) {
  const double sine = std::sin(bearing.contactAngle.si());
  return kLineContact * std::pow(1 / (bearing.rollers * sine), kLoadExponent) /
         (sine * std::pow(inMillimetres(bearing.rollerLength), kLengthExponent));
}

AxialState stateOf(Force load, Length displacement) {
  AxialState state{load, displacement, {}, {}};
  if (displacement.si() > 0) {
    state.slope = Stiffness::fromSi(load.si() / (kLoadExponent * displacement.si()));
  }
  state.shimSlope = state.slope / 2;
  return state;
}

}  // namespace

Result<AxialState> axialDisplacement(const TaperBearing& bearing, Force load) {
  if (auto checked = check(bearing); !checked) return failAs(checked);
  if (auto checked = NumberChecks().notNegative("load", load).done(); !checked) {
    return failAs(checked);
  }
  const double displacement = unitDisplacement(bearing) * std::pow(inNewtons(load), kLoadExponent);
  return stateOf(load, millimetres(displacement));
}

Result<AxialState> axialLoad(const TaperBearing& bearing, Length displacement) {
  if (auto checked = check(bearing); !checked) return failAs(checked);
  if (auto checked = NumberChecks().notNegative("displacement", displacement).done(); !checked) {
    return failAs(checked);
  }
  const double load =
      std::pow(inMillimetres(displacement) / unitDisplacement(bearing), 1 / kLoadExponent);
  return stateOf(newtons(load), displacement);
}

}  // namespace sw::mechanics
