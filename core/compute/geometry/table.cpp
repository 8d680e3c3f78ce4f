// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>

#include "compute/calculations.h"
#include "compute/geometry/geometry.h"

namespace sw::compute {

namespace {

constexpr std::array kTable{
    Calculation{"toe", "Toe in millimetres and degrees", Subject::Geometry, describeToe, runToe},
    Calculation{"track-rod-turns", "Turns of the track rod to a wanted toe", Subject::Geometry,
                describeTrackRodTurns, runTrackRodTurns},
    Calculation{"caster", "Caster and kingpin inclination from a swing of the wheel",
                Subject::Geometry, describeCaster, runCaster},
    Calculation{"trail", "Caster trail and kingpin offset at the ground", Subject::Geometry,
                describeTrail, runTrail},
    Calculation{"lift", "What a lift does to the caster of a live axle", Subject::Geometry,
                describeLift, runLift},
    Calculation{"ackermann", "Steer angles of inner and outer wheel on a bend", Subject::Geometry,
                describeAckermann, runAckermann},
};

}  // namespace

std::span<const Calculation> geometryCalculations() {
  return kTable;
}

}  // namespace sw::compute
