// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bolts/wrench_adapter.h"

#include <cmath>
#include <numbers>

#include "mechanics/number_checks.h"
#include "units/format.h"

namespace sw::mechanics {

namespace {

constexpr double kSlack = 1e-12;  // radians, and of the lever: 180 degrees is not exact in binary

}  // namespace

Result<double> adapterRatio(const WrenchAdapter& adapter) {
  if (auto error = NumberChecks().positive("lever_length", adapter.lever).error()) {
    return tl::make_unexpected(std::move(*error));
  }
  if (auto error = NumberChecks().notNegative("adapter_length", adapter.adapter).error()) {
    return tl::make_unexpected(std::move(*error));
  }
  const double angle = adapter.angle.si();
  if (!std::isfinite(angle)) {
    return fail(ErrorCode::OutOfRange, "measure.not_finite", "adapter_angle");
  }
  if (std::abs(angle) > std::numbers::pi + kSlack) {
    return fail(ErrorCode::OutOfRange, "bolts.bad_adapter_angle", "adapter_angle",
                {{"text", fullPrecision(inDegrees(adapter.angle)) + " deg"}});
  }
  const double ratio = 1 + adapter.adapter / adapter.lever * std::cos(angle);
  if (ratio <= kSlack) {
    return fail(ErrorCode::Degenerate, "bolts.adapter_has_no_lever", "adapter_length");
  }
  return ratio;
}

Result<Torque> wrenchSetting(Torque atFastener, const WrenchAdapter& adapter) {
  if (auto error = NumberChecks().positive("torque", atFastener).error()) {
    return tl::make_unexpected(std::move(*error));
  }
  return adapterRatio(adapter).map([&](double ratio) { return atFastener / ratio; });
}

Result<Torque> torqueAtFastener(Torque setting, const WrenchAdapter& adapter) {
  if (auto error = NumberChecks().positive("torque", setting).error()) {
    return tl::make_unexpected(std::move(*error));
  }
  return adapterRatio(adapter).map([&](double ratio) { return setting * ratio; });
}

}  // namespace sw::mechanics
