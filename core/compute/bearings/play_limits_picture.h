// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "compute/calculation.h"
#include "units/quantity.h"

namespace sw::compute {

struct PlayLimitsShown {
  Length bearing;
  std::optional<Length> kingpin, linkage;
  std::optional<Length> lash;         ///< by 49 CFR 570.60
  std::optional<Length> lashBritish;  ///< by the superseded British guide
};

/// Where each play is read, with the most that an inspection lets pass: a wheel from the front, one
/// from above, the steering wheel.
[[nodiscard]] figure::Figure playLimitsPicture(const PlayLimitsShown& shown, figure::Size size);

}  // namespace sw::compute
