// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "figure/vectors.h"
#include "units/quantity.h"

// A front axle from above, forward up, with its wheels turned for toe; shared by toe and track rod.

namespace sw::compute {

struct AxlePlaces {
  figure::Point left, right;  ///< middles of the wheels
  figure::Size wheel;
};
/// Both wheels as large as the box has room for.
[[nodiscard]] AxlePlaces axleIn(const figure::Box& box);

/// How many times an angle is drawn larger, so that it shows: 1, 2, 5, 10 and on to 100.
[[nodiscard]] double enlargement(Angle largest, double mostDegrees);

/// A wheel about its middle, turned clockwise by so many degrees.
void drawWheelFromAbove(figure::Figure& figure, figure::Point middle, figure::Size wheel,
                        double degrees, figure::Tone tone, figure::Stroke stroke);
/// An arrow up with its word.
void drawForward(figure::Figure& figure, figure::Point at);

}  // namespace sw::compute
