// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/swivel/starting_force_picture.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include "compute/verdict_mark.h"
#include "figure/drawing.h"

namespace sw::compute {

namespace {

using figure::Figure;
using figure::Mark;
using figure::MarkShape;
using figure::Point;
using figure::Room;
using figure::Side;
using figure::Size;
using figure::Text;
using figure::Tone;

constexpr double kHalfTurn = 180;
constexpr double kLeastShown = 0.5;  // degrees: a smaller deviation is drawn as square
constexpr double kSteep = 60;        // degrees: from here on the pull lies along the arm
constexpr double kPivot = 1.5;       // em, radius
constexpr double kPivotSide = 1.02;  // from its middle to where the arm leaves it

double degreesOf(Angle angle) {
  return angle.si() * kHalfTurn / std::numbers::pi;
}

/// Where the swivel stands and the scale is hooked in, and how long the pull is drawn.
struct Layout {
  Point pivot, hook;
  double pull = 0;  ///< em
};

Layout layoutFor(Size size, double degrees) {
  Layout layout;
  layout.pivot = {0.12 * size.width + 1.2, 0.7 * size.height};
  layout.hook = {0.67 * size.width, layout.pivot.y};
  layout.pull = 0.55 * size.height;
  // Far off square the pull runs along the arm, and needs its room there.
  const double along = std::abs(std::sin(degrees * std::numbers::pi / kHalfTurn));
  const double room = size.width - layout.hook.x - 1.0;
  if (along * layout.pull > room) layout.pull = room / along;
  return layout;
}

void drawArm(Figure& figure, const Layout& layout, Length arm) {
  const auto [x, y] = layout.pivot;
  figure.add(figure::outline({{x + kPivotSide, y - 1.1},
                              {layout.hook.x, y - 0.5},
                              {layout.hook.x + 0.5, y},
                              {layout.hook.x, y + 0.5},
                              {x + kPivotSide, y + 1.1}},
                             Tone::Material, 0.3));
  figure.add(figure::disc(layout.pivot, kPivot, Tone::Material, 0.45));
  figure.add(Mark{layout.pivot, MarkShape::Cross, Tone::Ink, 0.5});
  figure.add(
      Text{{x, y - kPivot - 1.9}, "swivel axis", Side::Above, Room::Movable, Tone::Quiet, 0.85});
  const double below = y + kPivot + 1.0;
  add(figure, figure::Dimension{.from = {x, below},
                                .to = {layout.hook.x, below},
                                .tone = Tone::Ink,
                                .ends = figure::DimensionEnds::Stroked});
  figure.add(Text{{0.5 * (x + layout.hook.x), below + 0.2},
                  "arm " + limitWords(arm.si(), defaultUnit(QuantityKind::Length)),
                  Side::Below,
                  Room::Movable,
                  Tone::Ink,
                  1.0});
}

/// Where the pull may lie when only its bounds are known.
void drawWithin(Figure& figure, const Layout& layout, double degrees, double within) {
  if (within < kLeastShown) return;
  std::vector<Point> wedge =
      figure::arc(layout.hook, 0.9 * layout.pull, degrees - within, degrees + within);
  wedge.push_back(layout.hook);
  figure.add(figure::outline(std::move(wedge), Tone::Accent, 0.15, 0.02));
}

/// The part square to the arm, and the angle between.
void drawSquare(Figure& figure, const Layout& layout, const StartingForceShown& shown,
                double degrees) {
  const double radians = shown.pull.offSquare.si();
  const Point tip = figure::onCircle(layout.hook, layout.pull, degrees);
  const Point square{layout.hook.x, layout.hook.y - layout.pull * std::cos(radians)};
  add(figure, figure::Arrow{layout.hook, square, Tone::Second, 0.2});
  figure.add(figure::dashed(square, tip, Tone::Quiet, 0.08));
  const double mark = 0.45 * layout.pull;
  figure::Path between;
  between.points = figure::arc(layout.hook, mark, 0, degrees);
  between.tone = Tone::Ink;
  between.width = 0.1;
  figure.add(std::move(between));
  figure.add(Text{figure::onCircle(layout.hook, mark, degrees / 2),
                  figureWords(std::abs(radians), QuantityKind::Angle), Side::Above, Room::Movable,
                  Tone::Ink, 0.9});
  if (!shown.torque) return;
  const bool right = degrees > 0;
  figure.add(Text{square,
                  "square " + figureWords(shown.torque->squareForce.si(), QuantityKind::Force),
                  right ? (degrees > kSteep ? Side::AboveLeft : Side::Left) : Side::Right,
                  Room::Movable, Tone::Second, 0.9});
}

void drawPull(Figure& figure, const Layout& layout, const StartingForceShown& shown) {
  const double degrees = degreesOf(shown.pull.offSquare);
  drawWithin(figure, layout, degrees, degreesOf(shown.pull.offSquareWithin));
  const bool off = std::abs(degrees) >= kLeastShown;
  if (off) drawSquare(figure, layout, shown, degrees);
  const Point tip = figure::onCircle(layout.hook, layout.pull, degrees);
  add(figure, figure::Arrow{layout.hook, tip, Tone::Accent, 0.3});
  const double force = shown.torque ? shown.pull.force.si() : shown.forTarget->si();
  figure.add(Text{tip, "pull " + figureWords(force, QuantityKind::Force),
                  std::abs(degrees) > kSteep ? Side::Above
                  : degrees < 0              ? Side::Left
                                             : Side::Right,
                  Room::Movable, Tone::Accent, 1.0, true});
  figure.add(Mark{layout.hook, MarkShape::Disc, Tone::Ink, 0.35});
}

}  // namespace

Figure startingForcePicture(const StartingForceShown& shown, Size size) {
  Figure figure;
  figure.size = size;
  figure.title = "Pull on the steering arm";
  const Layout layout = layoutFor(size, degreesOf(shown.pull.offSquare));
  add(figure, figure::Turn{layout.pivot, kPivot + 1.3, 78, -20, Tone::Ink, 0.2});
  drawArm(figure, layout, shown.pull.arm);
  std::string words;
  if (shown.torque) {
    words = shown.torque->expandedUncertainty.si() > 0
                ? measuredWords(shown.torque->torque.si(), shown.torque->expandedUncertainty.si(),
                                defaultUnit(QuantityKind::Torque))
                : figureWords(shown.torque->torque.si(), QuantityKind::Torque);
  } else if (shown.target) {
    words = limitWords(shown.target->si(), defaultUnit(QuantityKind::Torque));
  }
  figure.description = "Pull at an arm of " +
                       limitWords(shown.pull.arm.si(), defaultUnit(QuantityKind::Length)) +
                       ", torque " + words;
  if (shown.torque || shown.forTarget) drawPull(figure, layout, shown);
  figure::headline(figure, words);
  if (shown.torque && shown.forTarget && shown.target) {
    figure.add(Text{{0.2, size.height - 0.1},
                    "for " + limitWords(shown.target->si(), defaultUnit(QuantityKind::Torque)) +
                        " pull " + figureWords(shown.forTarget->si(), QuantityKind::Force),
                    Side::AboveRight,
                    Room::Movable,
                    Tone::Second,
                    0.9});
  }
  return figure;
}

}  // namespace sw::compute
