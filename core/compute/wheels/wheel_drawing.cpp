// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/wheels/wheel_drawing.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "compute/picture_parts.h"
#include "units/format.h"

namespace sw::compute {

using figure::Arrow;
using figure::Box;
using figure::Figure;
using figure::Mark;
using figure::MarkShape;
using figure::Point;
using figure::Range;
using figure::Room;
using figure::Scale;
using figure::Side;
using figure::Text;
using figure::Tone;
using mechanics::Polar;
using mechanics::WeightVector;

std::string gramsLabel(Mass mass) {
  const auto grams = findUnit(QuantityKind::Mass, "g").value_or(defaultUnit(QuantityKind::Mass));
  return withoutZeros(displayText(mass.si(), grams));
}

std::string weightLabel(const WeightVector& weight) {
  return gramsLabel(weight.amount) + " at " + degreesLabel(weight.angle, 0);
}

namespace {

constexpr double kRimShare = 0.66;  // of the tyre's radius
constexpr double kAbove = 1.6;      // em, the mark
constexpr double kBeside = 1.0;     // em
constexpr double kKeyLine = 1.35;   // em
constexpr figure::Size kBlock{1.9, 1.1};
constexpr double kWide = 1.45;  // width over height
constexpr double kCoverage = 2;

bool hasHeavy(const WheelDrawing& drawing) {
  return drawing.heavy && drawing.heavy->amount.si() > 0;
}

struct Wheel {
  Point centre;
  double tyre = 0;
  double rim = 0;

  [[nodiscard]] Point at(Angle angle, double radius) const {
    return figure::onCircle(centre, radius, inDegrees(angle));
  }
};

void drawTyre(Figure& figure, const Wheel& wheel) {
  auto ring = figure::arc(wheel.centre, wheel.tyre, 0, 360);
  const auto inner = figure::arc(wheel.centre, wheel.rim + 0.5, 360, 0);
  ring.insert(ring.end(), inner.begin(), inner.end());
  figure::Path rubber = figure::outline(std::move(ring), Tone::Material, 0.3);
  rubber.stroke = figure::Stroke::None;
  figure.add(std::move(rubber));
  figure.add(figure::circle(wheel.centre, wheel.tyre, Tone::Quiet, 0.1));
  figure.add(figure::circle(wheel.centre, wheel.rim, Tone::Quiet, 0.14));
  const Point top = wheel.at({}, wheel.tyre);
  figure.add(figure::line(wheel.at({}, wheel.rim + 0.5), top, Tone::Ink, 0.2));
  figure.add(Text{top, "mark 0\u00b0", Side::Above, Room::Movable, Tone::Ink, 0.8});
  add(figure, figure::Turn{wheel.centre, wheel.tyre + 0.55, 18, 40, Tone::Quiet, 0.1});
}

/// A weight clipped to the rim, square to the spoke.
void drawWeight(Figure& figure, const Wheel& wheel, Angle angle, Tone tone, double fill) {
  const auto block = figure::rectangle(wheel.at(angle, wheel.rim), kBlock, inDegrees(angle));
  figure.add(figure::outline(block, tone, fill, 0.14));
}

/// What to fit stands in the middle, with an arrow to its place.
void drawCorrection(Figure& figure, const Wheel& wheel, const WheelDrawing& drawing) {
  const WeightVector& weight = *drawing.correction;
  if (drawing.angleUncertainty) {
    const double half = std::min(180.0, kCoverage * inDegrees(*drawing.angleUncertainty));
    figure::Path spread = figure::line({}, {}, Tone::Accent, 0.4);
    spread.points = figure::arc(wheel.centre, wheel.rim + 1.0, inDegrees(weight.angle) - half,
                                inDegrees(weight.angle) + half);
    figure.add(std::move(spread));
  }
  const bool any = weight.amount.si() > 0;
  if (any) drawWeight(figure, wheel, weight.angle, Tone::Accent, 0.9);
  const double size = std::clamp(0.28 * wheel.rim, 1.0, 1.5);
  const double clear = (1.5 + 1.1 * std::abs(std::sin(weight.angle.si()))) * size;
  const Point from = wheel.at(weight.angle, clear);
  const Point to = wheel.at(weight.angle, wheel.rim - 0.75);
  if (any && wheel.rim - 0.75 - clear > 1.0) add(figure, Arrow{from, to, Tone::Accent, 0.14});
  const std::array<std::string, 2> lines{any ? gramsLabel(weight.amount) : "nothing",
                                         any ? "at " + degreesLabel(weight.angle, 0) : "to fit"};
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const double y = wheel.centre.y + (static_cast<double>(i) - 0.5) * 1.32 * size;
    figure.add(
        Text{{wheel.centre.x, y}, lines[i], Side::Centre, Room::Fixed, Tone::Accent, size, true});
  }
}

/// A line of the key below the wheel.
struct KeyLine {
  std::string text;
  Tone tone = Tone::Ink;
  bool isBlock = true;
};

std::vector<KeyLine> keyOf(const WheelDrawing& drawing) {
  std::vector<KeyLine> lines;
  if (drawing.fitted) {
    lines.push_back({"fitted: " + weightLabel(*drawing.fitted), Tone::Second, true});
  }
  if (drawing.trial) {
    lines.push_back({"trial: " + weightLabel(*drawing.trial), Tone::Quiet, true});
  }
  if (hasHeavy(drawing)) lines.push_back({"heavy spot", Tone::Bad, false});
  return lines;
}

void drawKey(Figure& figure, const std::vector<KeyLine>& lines, Point corner) {
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const Point at{corner.x + 0.6, corner.y + kKeyLine * (static_cast<double>(i) + 0.5)};
    if (lines[i].isBlock) {
      figure.add(figure::outline(figure::rectangle(at, {1.0, 0.6}), lines[i].tone, 0.0, 0.14));
    } else {
      figure.add(Mark{at, MarkShape::Disc, lines[i].tone, 0.35});
    }
    figure.add(Text{{at.x + 0.5, at.y},
                    lines[i].text,
                    Side::Right,
                    Room::Fixed,
                    lines[i].tone,
                    figure::kLabelSize});
  }
}

}  // namespace

bool isWide(figure::Size size) {
  return size.width > kWide * size.height;
}

void drawWheel(Figure& figure, const WheelDrawing& drawing, const Box& box) {
  const std::vector<KeyLine> key = keyOf(drawing);
  const double keyHeight = kKeyLine * static_cast<double>(key.size());
  const Box room{box.left, box.top + kAbove, box.right, box.bottom - keyHeight - 0.3};
  Wheel wheel{room.centre(), std::min(room.width() / 2 - kBeside, room.height() / 2), 0};
  wheel.rim = kRimShare * wheel.tyre;
  drawTyre(figure, wheel);
  if (!drawing.name.empty()) {
    figure.add(Text{{box.left + 0.2, box.top + 0.1},
                    drawing.name,
                    Side::BelowRight,
                    Room::Movable,
                    Tone::Ink,
                    1.0,
                    true});
  }
  if (hasHeavy(drawing)) {
    const double radius = wheel.rim + 0.5 * (wheel.tyre - wheel.rim);
    figure.add(Mark{wheel.at(drawing.heavy->angle, radius), MarkShape::Disc, Tone::Bad, 0.55});
  }
  if (drawing.trial) drawWeight(figure, wheel, drawing.trial->angle, Tone::Quiet, 0.0);
  if (drawing.correction) drawCorrection(figure, wheel, drawing);
  if (drawing.fitted) drawWeight(figure, wheel, drawing.fitted->angle, Tone::Second, 0.0);
  // The key stands close below the wheel, not at the foot of a tall box.
  const double widest = 9.5;
  drawKey(figure, key,
          {std::max(box.left, wheel.centre.x - widest / 2), wheel.centre.y + wheel.tyre + 0.5});
}

namespace {

/// Beside the middle of an arrow, on the side away from the middle of all.
void nameArrow(Figure& figure, const ReadingArrow& arrow, Point start, Point tip, Point middle) {
  const Point at = figure::between(start, tip, 0.55);
  double across = figure::bearing(start, tip) + 90;
  const Point one = figure::onCircle(at, 0.5, across);
  if (figure::distance(one, middle) < figure::distance(at, middle)) across += 180;
  const Point placed = figure::onCircle(at, 0.3, across);
  const Point way = figure::onCircle({0, 0}, 1.0, across);
  const bool right = way.x > 0;
  const Side slanted = way.y > 0 ? (right ? Side::BelowRight : Side::BelowLeft)
                                 : (right ? Side::AboveRight : Side::AboveLeft);
  const Side side = std::abs(way.x) > 0.92   ? (right ? Side::Right : Side::Left)
                    : std::abs(way.y) > 0.97 ? (way.y > 0 ? Side::Below : Side::Above)
                                             : slanted;
  figure.add(Text{placed, arrow.name, side, Room::Movable, arrow.tone, figure::kLabelSize});
}

}  // namespace

void drawReadings(Figure& figure, const std::vector<ReadingArrow>& arrows, const Box& box) {
  const auto placeOf = [](const Polar& polar) {
    return Point{polar.amount * std::sin(polar.angle.si()),
                 polar.amount * std::cos(polar.angle.si())};
  };
  Range x{0, 0};
  Range y{0, 0};
  for (const ReadingArrow& arrow : arrows) {
    for (const Polar& end : {arrow.from, arrow.to}) {
      x.include(placeOf(end).x);
      y.include(placeOf(end).y);
    }
  }
  const double span = std::max(x.high - x.low, y.high - y.low);
  const double least = span > 0 ? 0.3 * span : 1.0;
  if (x.high - x.low < least) x.widen(0, least);
  if (y.high - y.low < least) y.widen(0, least);
  const Scale scale({box.left + 3.5, box.top + 3.0, box.right - 3.5, box.bottom - 2.0}, x, y);
  const Point zero = scale.at(0, 0);
  const Point middle = scale.at((x.low + x.high) / 2, (y.low + y.high) / 2);
  figure.add(figure::dashed(zero, {zero.x, box.top + 1.4}, Tone::Quiet, 0.08));
  figure.add(
      Text{{zero.x, box.top + 1.4}, "0\u00b0", Side::Above, Room::Movable, Tone::Quiet, 0.85});
  figure.add(Mark{zero, MarkShape::Disc, Tone::Ink, 0.22});
  for (const ReadingArrow& arrow : arrows) {
    const Point from = placeOf(arrow.from);
    const Point to = placeOf(arrow.to);
    const Point start = scale.at(from.x, from.y);
    const Point tip = scale.at(to.x, to.y);
    add(figure, Arrow{start, tip, arrow.tone, 0.2, arrow.stroke});
    nameArrow(figure, arrow, start, tip, middle);
  }
}

}  // namespace sw::compute
