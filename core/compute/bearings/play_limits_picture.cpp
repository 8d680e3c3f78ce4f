// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/bearings/play_limits_picture.h"

#include <algorithm>
#include <vector>

#include "compute/verdict_mark.h"
#include "figure/drawing.h"

namespace sw::compute {

namespace {

using figure::Figure;
using figure::Point;
using figure::Room;
using figure::Side;
using figure::Size;
using figure::Text;
using figure::Tone;

constexpr double kTextsHigh = 2.6;  // em, name and figure above or below a sketch
constexpr double kNoteHigh = 1.4;
constexpr double kLean = 4;          // degrees
constexpr double kTyreShare = 0.34;  // of its diameter: its width

struct Sketch {
  Figure figure;
  Point middle;
  double reach = 0;  ///< em up and down from the middle
};

Sketch sketchOf(Size size) {
  Sketch sketch;
  sketch.figure.size = size;
  sketch.middle = {size.width / 2, size.height / 2};
  sketch.reach = std::min(size.height / 2 - kTextsHigh, 0.9 * size.width);
  return sketch;
}

/// Two lines about `x`, the lower at `bottom`: what, and how much.
void words(Figure& figure, double x, double bottom, const std::string& what,
           const std::string& amount) {
  figure.add(Text{{x, bottom - 1.25}, what, Side::Above, Room::Fixed, Tone::Ink, 0.8});
  figure.add(Text{{x, bottom}, amount, Side::Above, Room::Fixed, Tone::Accent, 1.0, true});
}

std::string amountOf(Length limit) {
  return figureWords(limit.si(), QuantityKind::Length);
}

/// A wheel edge on with its axle, and the outline of where play lets it go, enlarged.
void wheelEdgeOn(Sketch& sketch) {
  const Point middle = sketch.middle;
  const double half = kTyreShare * sketch.reach;
  const Size wheel{2 * half, 2 * sketch.reach};
  const double axle = 0.22 * half;
  const double end = std::min(middle.x + 3.2 * half, sketch.figure.size.width - 0.2);
  Figure& figure = sketch.figure;
  figure.add(figure::box({middle.x + half, middle.y - axle}, {end, middle.y + axle}, Tone::Material,
                         0.15));
  figure::Path leaning = figure::roundedBox(middle, wheel, 0.5 * half, kLean, Tone::Material, 0);
  leaning.stroke = figure::Stroke::Dashed;
  leaning.width = 0.08;
  figure.add(std::move(leaning));
  figure.add(figure::roundedBox(middle, wheel, 0.5 * half, 0, Tone::Material, 0.35));
}

/// A play at the top or bottom edge of the wheel.
void acrossArrow(Sketch& sketch, double y) {
  const double half = 0.75 * kTyreShare * sketch.reach;
  add(sketch.figure, figure::Dimension{.from = {sketch.middle.x - half, y},
                                       .to = {sketch.middle.x + half, y},
                                       .tone = Tone::Accent,
                                       .ends = figure::DimensionEnds::Stroked});
}

Figure rockedWheel(const PlayLimitsShown& shown, Size size) {
  Sketch sketch = sketchOf(size);
  wheelEdgeOn(sketch);
  acrossArrow(sketch, sketch.middle.y - 0.82 * sketch.reach);
  words(sketch.figure, sketch.middle.x, sketch.middle.y - sketch.reach - 0.1, "wheel bearing",
        amountOf(shown.bearing));
  if (!shown.kingpin) return sketch.figure;
  acrossArrow(sketch, sketch.middle.y + 0.6 * sketch.reach);
  words(sketch.figure, sketch.middle.x, sketch.middle.y + sketch.reach + kTextsHigh,
        "kingpin, at the rim", amountOf(*shown.kingpin));
  return sketch.figure;
}

Figure steeredWheel(Length limit, Size size) {
  Sketch sketch = sketchOf(size);
  wheelEdgeOn(sketch);
  acrossArrow(sketch, sketch.middle.y - 0.82 * sketch.reach);
  acrossArrow(sketch, sketch.middle.y + 0.82 * sketch.reach);
  words(sketch.figure, sketch.middle.x, sketch.middle.y - sketch.reach - 0.1, "steering linkage",
        amountOf(limit));
  sketch.figure.add(Text{{sketch.middle.x, sketch.middle.y + sketch.reach + 0.2},
                         "seen from above",
                         Side::Below,
                         Room::Optional,
                         Tone::Quiet,
                         0.75});
  return sketch.figure;
}

Figure steeringWheel(const PlayLimitsShown& shown, Size size) {
  Sketch sketch = sketchOf(size);
  Figure& figure = sketch.figure;
  const double radius = std::min(0.72 * sketch.reach, 0.4 * size.width);
  const double rim = 0.16 * radius;
  figure.add(figure::disc(sketch.middle, radius, Tone::Material, 0.3));
  figure.add(figure::circle(sketch.middle, radius - rim, Tone::Material));
  figure.add(figure::disc(sketch.middle, 0.22 * radius, Tone::Material, 0.3));
  for (const double degrees : {90.0, 180.0, 270.0}) {
    figure.add(figure::line(figure::onCircle(sketch.middle, 0.22 * radius, degrees),
                            figure::onCircle(sketch.middle, radius - rim, degrees), Tone::Material,
                            0.3));
  }
  add(figure, figure::Turn{sketch.middle, radius - rim / 2, 0, 24, Tone::Accent, 0.2});
  add(figure, figure::Turn{sketch.middle, radius - rim / 2, 0, -24, Tone::Accent, 0.2});
  const double top = sketch.middle.y - radius - 0.2;
  words(figure, sketch.middle.x, top, "lash at its rim",
        amountOf(shown.lash.value_or(shown.lashBritish.value_or(Length{}))));
  if (!shown.lashBritish) return figure;
  const double below = sketch.middle.y + radius + 0.3;
  figure.add(Text{
      {sketch.middle.x, below}, "by a British guide", Side::Below, Room::Fixed, Tone::Ink, 0.8});
  figure.add(Text{{sketch.middle.x, below + 1.1},
                  amountOf(*shown.lashBritish),
                  Side::Below,
                  Room::Fixed,
                  Tone::Accent,
                  1.0,
                  true});
  return figure;
}

}  // namespace

Figure playLimitsPicture(const PlayLimitsShown& shown, Size size) {
  Figure figure;
  figure.size = size;
  figure.title = "Most play an inspection lets pass";
  figure.description = "Where play is read: wheel bearing " + amountOf(shown.bearing) +
                       (shown.kingpin ? ", kingpin " + amountOf(*shown.kingpin) : "") +
                       (shown.linkage ? ", steering linkage " + amountOf(*shown.linkage) : "") +
                       (shown.lash ? ", steering wheel " + amountOf(*shown.lash) : "");
  const int panels = 1 + (shown.linkage ? 1 : 0) + (shown.lash ? 1 : 0);
  const Size panel{size.width / panels, size.height - kNoteHigh};
  double left = 0;
  const auto add = [&](const Figure& part) {
    figure::place(figure, part, {left, 0});
    left += panel.width;
  };
  add(rockedWheel(shown, panel));
  if (shown.linkage) add(steeredWheel(*shown.linkage, panel));
  if (shown.lash) add(steeringWheel(shown, panel));
  figure.add(Text{{size.width / 2, size.height - 0.1},
                  "floors of roadworthiness, no targets",
                  Side::Above,
                  Room::Fixed,
                  Tone::Quiet,
                  0.8});
  return figure;
}

}  // namespace sw::compute
