// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bolts/thread.h"

#include <numbers>

#include "mechanics/number_checks.h"
#include "units/format.h"

namespace sw::mechanics {

namespace {

constexpr double kSharpHeight = std::numbers::sqrt3 / 2;  // H / P
constexpr double kUnrRoot = 1.190785;                     // ASME B1.1
constexpr double kInchStress = 9 * std::numbers::sqrt3 / 16;
constexpr double kCoarsestPitch = 0.25;
constexpr double kFinestPitch = 1.0 / 200;

}  // namespace

Result<ThreadGeometry> threadGeometry(const Thread& thread) {
  const Length d = thread.diameter;
  if (auto error = NumberChecks().positive("diameter", d).positive("pitch", thread.pitch).error()) {
    return tl::make_unexpected(std::move(*error));
  }
  if (thread.pitch > d * kCoarsestPitch || thread.pitch < d * kFinestPitch) {
    return fail(ErrorCode::OutOfRange, "bolts.bad_pitch", "pitch",
                {{"text", fullPrecision(inMillimetres(thread.pitch)) + " mm"}});
  }
  const Length height = kSharpHeight * thread.pitch;
  const bool metric = thread.standard == ThreadStandard::IsoMetric;
  ThreadGeometry geometry;
  geometry.pitchDiameter = d - 0.75 * height;
  geometry.nutMinor = d - 1.25 * height;
  geometry.root = metric ? d - 17.0 / 12 * height : d - kUnrRoot * thread.pitch;
  geometry.stressDiameter =
      metric ? 0.5 * (geometry.pitchDiameter + geometry.root) : d - kInchStress * thread.pitch;
  const double d0 = geometry.stressDiameter.si();
  geometry.stressArea = Area::fromSi(std::numbers::pi / 4 * d0 * d0);
  return geometry;
}

}  // namespace sw::mechanics
