// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/support/stand_load_picture.h"

#include <algorithm>

#include "compute/verdict_mark.h"
#include "figure/drawing.h"
#include "figure/number_line.h"

namespace sw::compute {

namespace {

using figure::Figure;
using figure::MarkShape;
using figure::NumberLine;
using figure::Point;
using figure::Room;
using figure::Side;
using figure::Size;
using figure::Text;
using figure::Tone;

constexpr double kBars = 4.2;  // em, for the two bars
constexpr double kLeft = 6.2;  // for their names
constexpr double kTop = 1.8;
constexpr double kAxleHalf = 0.45;  // em

std::string massWords(Mass mass) {
  return limitWords(mass.si(), defaultUnit(QuantityKind::Mass));
}

/// From the plate under the axle to the feet on the ground.
void drawStand(Figure& figure, double x, double top, double ground) {
  const double height = ground - top;
  const double foot = std::min(0.42 * height, 3.2);
  const double post = 0.35;
  const double waist = top + 0.35 * height;
  figure.add(figure::box({x - 0.9, top}, {x + 0.9, top + 0.35}, Tone::Ink, 0.5));
  figure.add(figure::box({x - post, top + 0.35}, {x + post, waist}, Tone::Ink, 0.25));
  figure.add(figure::outline({{x - 2 * post, waist},
                              {x + 2 * post, waist},
                              {x + foot, ground},
                              {x + foot - 0.6, ground},
                              {x, waist + 0.9},
                              {x - foot + 0.6, ground},
                              {x - foot, ground}},
                             Tone::Ink, 0.25));
}

void drawAxle(Figure& figure, const StandOutcome& load, double ground) {
  const double width = figure.size.width;
  const double height = ground - kTop;
  const double axle = kTop + 0.36 * height;
  const double middle = width / 2;
  const double bulge = std::min(1.7, 0.2 * height);
  figure.add(figure::box({0.06 * width, axle - kAxleHalf}, {0.94 * width, axle + kAxleHalf},
                         Tone::Material, 0.3));
  figure.add(figure::disc({middle, axle}, bulge, Tone::Material, 0.3));
  for (const double hub : {0.05, 0.95}) {
    figure.add(figure::box({hub * width - 0.35, axle - 1.3}, {hub * width + 0.35, axle + 1.3},
                           Tone::Material, 0.5));
  }
  const double under = axle + kAxleHalf;
  for (const double at : {0.26, 0.74}) drawStand(figure, at * width, under, ground);
  add(figure, figure::Arrow{{middle, kTop}, {middle, axle - bulge - 0.1}, Tone::Accent, 0.3});
  figure.add(Text{{middle + 0.3, kTop + 0.6},
                  massWords(load.axleLoad) + " on the axle",
                  Side::Right,
                  Room::Movable,
                  Tone::Accent,
                  1.0,
                  true});
}

/// Half of it on either of two stands, whatever their number.
void drawNumber(Figure& figure, int stands, double ground) {
  if (stands <= 2) return;
  figure.add(Text{{figure.size.width / 2, ground - 0.8},
                  "of " + std::to_string(stands) + ", two count",
                  Side::Centre,
                  Room::Movable,
                  Tone::Quiet,
                  0.85});
}

void drawBars(Figure& figure, const StandOutcome& load, Tone tone) {
  const double bottom = figure.size.height - figure::kRoomBelowLine;
  const double top = bottom - kBars;
  const double highest = std::max(load.neededEach.si(), load.ratedEach.si());
  const NumberLine scale(kLeft, figure.size.width - 1.2, {0, 1.12 * highest});
  scale.draw(figure, top, bottom, "each stand, kg");
  const auto bar = [&](double y, const char* name, Mass mass, Tone barTone) {
    const double end = scale.at(mass.si());
    figure.add(figure::box({scale.left(), y - 0.6}, {end, y + 0.6}, barTone, 0.35));
    figure.add(Text{{kLeft - 0.3, y}, name, Side::Left, Room::Fixed, Tone::Ink, 0.9});
    figure.add(Text{
        {scale.left() + 0.1, y}, massWords(mass), Side::Right, Room::Fixed, Tone::Ink, 0.9, true});
  };
  bar(top + 0.27 * kBars, "must carry", load.neededEach, Tone::Accent);
  bar(top + 0.73 * kBars, "rated for", load.ratedEach, tone);
  const double needed = scale.at(load.neededEach.si());
  figure.add(figure::dashed({needed, top}, {needed, bottom}, Tone::Limit));
}

}  // namespace

Figure standLoadPicture(const StandInput& input, const StandOutcome& load, Size size) {
  Figure figure;
  figure.size = size;
  const bool enough = load.verdict == StandVerdict::Enough;
  figure.title = "Stands under the axle";
  figure.description = "Each stand must be rated for more than " + massWords(load.neededEach) +
                       " and is rated for " + massWords(load.ratedEach);
  const Tone tone = enough ? Tone::Good : Tone::Bad;
  const double ground = size.height - figure::kRoomBelowLine - kBars - 1.3;
  drawAxle(figure, load, ground);
  figure.add(figure::line({0.5, ground}, {size.width - 0.5, ground}, Tone::Material, 0.14));
  figure::hatch(figure, {0.5, ground}, {size.width - 0.5, ground + 0.6}, Tone::Material, 0.5);
  drawNumber(figure, input.stands, ground);
  drawBars(figure, load, tone);
  figure::headline(figure, enough ? "rating enough" : "rating not enough",
                   enough ? MarkShape::Disc : MarkShape::Square, tone);
  return figure;
}

}  // namespace sw::compute
