// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "figure/figure.h"
#include "figure/vectors.h"

// What drawings of parts are made of beside lines and arrows: boxes, discs, hatching, a headline,
// and one figure as a part of another.

namespace sw::figure {

/// A rectangle between two corners, filled at this opacity, with its outline.
[[nodiscard]] Path box(Point a, Point b, Tone tone, double fill);
/// The same without an outline.
[[nodiscard]] Path area(Point a, Point b, Tone tone, double fill);
/// A rectangle with round corners, turned clockwise about its middle.
[[nodiscard]] Path roundedBox(Point middle, Size size, double radius, double degrees, Tone tone,
                              double fill);
/// A circle filled at this opacity, with its outline.
[[nodiscard]] Path disc(Point centre, double radius, Tone tone, double fill, double width = 0.12);

/// A line between two short end strokes: from here to there lies the value.
void errorBar(Figure& figure, Point a, Point b, Tone tone, double width = 0.16);
/// Slanted lines within a rectangle: cut metal, or ground.
void hatch(Figure& figure, Point topLeft, Point bottomRight, Tone tone, double spacing = 0.6);

/// The answer in a few words at the top right, its mark at the end.
void headline(Figure& figure, const std::string& words, MarkShape mark, Tone tone);
void headline(Figure& figure, const std::string& words);

/// All of `part`, its corner at `corner`.
void place(Figure& figure, const Figure& part, Point corner);

/// Room for a text, in em, rather too much than too little.
[[nodiscard]] double roomFor(const std::string& text, double size = 1.0);

}  // namespace sw::figure
