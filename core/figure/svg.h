// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "figure/figure.h"

namespace sw::figure {

/// The picture as SVG 1.1 for a browser, `em` pixels to the unit. Texts stay on the side they ask
/// for. Black on white, verdict tones in colour.
[[nodiscard]] std::string toSvg(const Figure& figure, double em = 13.0);

}  // namespace sw::figure
