// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/geometry/caster_swing.h"

#include <cmath>
#include <utility>

#include "base/words.h"
#include "mechanics/wheels/value_checks.h"

namespace sw {

namespace mechanics {

namespace {

constexpr Angle kLeastTurn = degrees(5);
constexpr Angle kMostTurn = degrees(45);
constexpr Angle kMostReading = degrees(40);
constexpr Angle kMostAxis = degrees(30);
constexpr Angle kMostCamber = degrees(15);
constexpr double kMostTurnAboutAxis = 1.3;  // rad; enough for 45 degrees of heading at any axis
constexpr int kHalvings = 60;               // down to the last bit
constexpr int kRounds = 30;

/// x forward, y left, z up.
struct Vector {
  double x = 0, y = 0, z = 0;
};

double dot(const Vector& a, const Vector& b) {
  return a.x * b.x + a.y * b.y + a.z * b.z;
}
Vector cross(const Vector& a, const Vector& b) {
  return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}

/// The left wheel, steered outward by turning left. The right one is its mirror image.
struct LeftWheel {
  Vector axis;
  Vector spindle;  ///< pointing outward
  Vector foreAndAft{1, 0, 0};

  LeftWheel(const SteeringAxis& angles, Angle camberAhead)
      : spindle{0, std::cos(camberAhead.si()), -std::sin(camberAhead.si())} {
    const double back = std::tan(angles.caster.si());
    const double inboard = std::tan(angles.inclination.si());
    const double length = std::sqrt(1 + back * back + inboard * inboard);
    axis = {-back / length, -inboard / length, 1 / length};
  }

  [[nodiscard]] Vector turned(const Vector& v, double by) const {
    const Vector across = cross(axis, v);
    const double along = dot(axis, v) * (1 - std::cos(by));
    const auto part = [&](double own, double side, double axial) {
      return own * std::cos(by) + side * std::sin(by) + axial * along;
    };
    return {part(v.x, across.x, axis.x), part(v.y, across.y, axis.y), part(v.z, across.z, axis.z)};
  }
  [[nodiscard]] double heading(double by) const {
    const Vector turnedSpindle = turned(spindle, by);
    return std::atan2(-turnedSpindle.x, turnedSpindle.y);
  }
};

/// The root of an increasing function between two ends of opposite sign.
template <class Function>
double root(Function function, double low, double high) {
  for (int i = 0; i < kHalvings; ++i) {
    const double middle = (low + high) / 2;
    (function(middle) < 0 ? low : high) = middle;
  }
  return (low + high) / 2;
}

double turnAboutAxis(const LeftWheel& wheel, double turn, TurnShown shown) {
  if (shown == TurnShown::AboutAxis) return turn;
  return root([&](double by) { return wheel.heading(by) - turn; }, -kMostTurnAboutAxis,
              kMostTurnAboutAxis);
}

/// sin(outward) - sin(inward) of what the gauge would read.
struct Difference {
  double camber = 0;
  double tilt = 0;
};
Difference differenceOf(const SteeringAxis& angles, Angle turn, const SwingSetting& setting) {
  const LeftWheel wheel(angles, setting.camberAhead);
  const double out = turnAboutAxis(wheel, turn.si(), setting.shown);
  const double in = turnAboutAxis(wheel, -turn.si(), setting.shown);
  return {wheel.turned(wheel.spindle, in).z - wheel.turned(wheel.spindle, out).z,
          wheel.turned(wheel.foreAndAft, out).z - wheel.turned(wheel.foreAndAft, in).z};
}

std::optional<Error> checkTurn(Angle turn) {
  if (auto error = badAngle("turn", turn, kMostTurn, "5 to 45 deg")) return error;
  if (turn < kLeastTurn) return outOfRange("turn", "5 to 45 deg");
  return std::nullopt;
}

std::optional<Error> check(const Swing& swing) {
  if (auto error = checkTurn(swing.turn)) return error;
  if (auto error = badAngle("outward", swing.outward, kMostReading, "-40 to 40 deg")) return error;
  return badAngle("inward", swing.inward, kMostReading, "-40 to 40 deg");
}

double measuredDifference(const Swing& swing) {
  return std::sin(swing.outward.si()) - std::sin(swing.inward.si());
}

/// Seeks the angle, within 30 degrees, whose difference is the measured one.
template <class Model>
Result<Angle> soughtAngle(const Swing& swing, Model model) {
  const double measured = measuredDifference(swing);
  const double most = kMostAxis.si();
  if (model(-most) > measured || model(most) < measured) {
    return tl::make_unexpected(
        outOfRange("outward", "readings that an axis within 30 deg of upright can give"));
  }
  return radians(root([&](double angle) { return model(angle) - measured; }, -most, most));
}

std::optional<Error> checkExact(const Swing& swing, Angle other, std::string_view otherField,
                                const SwingSetting& setting) {
  if (auto error = check(swing)) return error;
  if (auto error = badAngle(otherField, other, kMostAxis, "-30 to 30 deg")) return error;
  return badAngle("camber_ahead", setting.camberAhead, kMostCamber, "-15 to 15 deg");
}

}  // namespace

std::string_view word(TurnShown shown) {
  return wordOf(shown);
}

Result<Angle> smallAngleSwing(const Swing& swing) {
  if (auto error = check(swing)) return tl::make_unexpected(std::move(*error));
  return (swing.outward - swing.inward) / (2 * std::sin(swing.turn.si()));
}

Result<Angle> exactCaster(const Swing& cambers, Angle inclination, const SwingSetting& setting) {
  if (auto error = checkExact(cambers, inclination, "kingpin_inclination", setting)) {
    return tl::make_unexpected(std::move(*error));
  }
  return soughtAngle(cambers, [&](double caster) {
    return differenceOf({radians(caster), inclination}, cambers.turn, setting).camber;
  });
}

Result<Angle> exactInclination(const Swing& tilts, Angle caster, const SwingSetting& setting) {
  if (auto error = checkExact(tilts, caster, "caster", setting)) {
    return tl::make_unexpected(std::move(*error));
  }
  return soughtAngle(tilts, [&](double inclination) {
    return differenceOf({caster, radians(inclination)}, tilts.turn, setting).tilt;
  });
}

Result<SteeringAxis> exactAxis(const Swing& cambers, const Swing& tilts,
                               const SwingSetting& setting) {
  SteeringAxis axis;
  // Either angle moves the other by a few per cent at most, so that this settles in a few rounds.
  for (int i = 0; i < kRounds; ++i) {
    const auto caster = exactCaster(cambers, axis.inclination, setting);
    if (!caster) return failAs(caster);
    const auto inclination = exactInclination(tilts, *caster, setting);
    if (!inclination) return failAs(inclination);
    const bool settled = axis.caster == *caster && axis.inclination == *inclination;
    axis = {*caster, *inclination};
    if (settled) break;
  }
  return axis;
}

Result<Angle> uncertaintyOfSwing(Angle angle, Angle turn, const SwingUncertainty& uncertainty) {
  if (auto error = checkTurn(turn)) return tl::make_unexpected(std::move(*error));
  if (auto error = firstBad({{"reading_uncertainty", uncertainty.reading.si(), Need::NotNegative},
                             {"turn_uncertainty", uncertainty.turn.si(), Need::NotNegative},
                             {"caster", angle.si(), Need::Any}})) {
    return tl::make_unexpected(std::move(*error));
  }
  const double fromReadings =
      std::hypot(uncertainty.reading.si(), uncertainty.reading.si()) / (2 * std::sin(turn.si()));
  const double fromTurn = angle.si() * uncertainty.turn.si() / std::tan(turn.si());
  return radians(std::hypot(fromReadings, fromTurn));
}

Result<Angle> casterAtLevelFrame(Angle measured, Angle frame) {
  if (auto error = badAngle("frame_angle", frame, kMostAxis, "-30 to 30 deg")) {
    return tl::make_unexpected(std::move(*error));
  }
  return measured + frame;
}

Result<Angle> casterToMeasure(Angle specified, Angle frame) {
  return casterAtLevelFrame(specified, -frame);
}

}  // namespace mechanics
}  // namespace sw
