// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/measuring/line_picture.h"

#include <algorithm>
#include <cmath>

#include "figure/axes.h"
#include "figure/drawing.h"
#include "units/format.h"

namespace sw::compute {

namespace {

using figure::Axes;
using figure::Figure;
using figure::Mark;
using figure::MarkShape;
using figure::Point;
using figure::Range;
using figure::Room;
using figure::Side;
using figure::Text;
using figure::Tone;

constexpr int kSteps = 60;
constexpr double kNearLeft = 0.3;  // of the width: a text there goes to the right
constexpr double kCoverage = 2;
constexpr std::size_t kFewPoints = 40;

Range rangeX(const LineShown& shown) {
  Range range{shown.points.front().x, shown.points.front().x};
  for (const auto& point : shown.points) range.include(point.x);
  if (shown.at) range.include(*shown.at);
  if (shown.place) range.include(*shown.place);
  range.widen(0.06, 1.0);
  return range;
}

struct Band {
  std::vector<Point> low, middle, high;
};

Band bandOver(const measure::StraightLine& line, const Range& x) {
  Band band;
  for (int i = 0; i <= kSteps; ++i) {
    const double at = x.low + (x.high - x.low) * i / kSteps;
    const auto there = line.at(at);
    band.low.push_back({at, there.value - kCoverage * there.standardUncertainty});
    band.middle.push_back({at, there.value});
    band.high.push_back({at, there.value + kCoverage * there.standardUncertainty});
  }
  return band;
}

Range rangeY(const LineShown& shown, const Band& band) {
  Range range{shown.points.front().y, shown.points.front().y};
  for (const auto& point : shown.points) range.include(point.y);
  for (const auto& point : band.low) range.include(point.y);
  for (const auto& point : band.high) range.include(point.y);
  if (shown.reach) range.include(*shown.reach);
  range.widen(0.08, 1.0);
  return range;
}

std::string shortNumber(double value) {
  constexpr int kDigits = 4;
  const int before = value == 0 ? 1 : static_cast<int>(std::floor(std::log10(std::abs(value)))) + 1;
  std::string text = fixedDecimal(value, kDigits - before);
  if (text.find('.') == std::string::npos) return text;
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

/// Large and small numbers get a power of a thousand, named at their axis.
struct Scaling {
  double factor = 1;
  std::string name;
};

Scaling scalingFor(const Range& range) {
  const double largest = std::max(std::abs(range.low), std::abs(range.high));
  constexpr double kPlainFrom = 0.01;
  constexpr double kPlainTo = 1e4;
  if (!(largest > 0) || (largest >= kPlainFrom && largest < kPlainTo)) return {};
  const int power = 3 * static_cast<int>(std::floor(std::log10(largest) / 3));
  return {std::pow(10.0, -power), ", in 1e" + std::to_string(power)};
}

/// From one axis to the line and on to the other.
void drawAsked(Figure& figure, const Axes& axes, Point at, const std::string& words, Point first,
               Point last) {
  const Point corner = axes.inside(at.x, at.y);
  figure.add(figure::dashed(first, corner, Tone::Second));
  add(figure, figure::Arrow{corner, last, Tone::Second, 0.12});
  figure.add(Mark{corner, MarkShape::Diamond, Tone::Second, 0.5});
  figure.add(Text{corner, words,
                  corner.x < kNearLeft * figure.size.width ? Side::AboveRight : Side::AboveLeft,
                  Room::Movable, Tone::Second, 1.0, true});
}

LineShown scaled(LineShown shown, double x, double y) {
  for (auto& point : shown.points) point = {point.x * x, point.y * y};
  measure::StraightLine& line = shown.line;
  line.slope *= y / x;
  line.intercept *= y;
  line.scatter *= y;
  line.centre *= x;
  line.spread *= x * x;
  for (auto* value : {&shown.at, &shown.place}) {
    if (*value) **value *= x;
  }
  if (shown.reach) *shown.reach *= y;
  return shown;
}

/// What was asked for, with its numbers as they are.
void drawQuestions(Figure& figure, const Axes& axes, const LineShown& shown,
                   const LineShown& typed) {
  if (shown.at) {
    const double y = shown.line.at(*shown.at).value;
    drawAsked(figure, axes, {*shown.at, y}, "y = " + shortNumber(typed.line.at(*typed.at).value),
              axes.inside(*shown.at, axes.y().low), axes.inside(axes.x().low, y));
  }
  if (shown.reach && shown.place) {
    drawAsked(figure, axes, {*shown.place, *shown.reach}, "x = " + shortNumber(*typed.place),
              axes.inside(axes.x().low, *shown.reach), axes.inside(*shown.place, axes.y().low));
  }
}

}  // namespace

Figure linePicture(const LineShown& typed, figure::Size size) {
  Figure figure;
  figure.size = size;
  figure.title = "Straight line through points";
  figure.description = std::to_string(typed.points.size()) +
                       " points, their line and its band of two standard uncertainties";
  const Range asTyped = rangeX(typed);
  const Scaling ofX = scalingFor(asTyped);
  const Scaling ofY = scalingFor(rangeY(typed, bandOver(typed.line, asTyped)));
  const LineShown shown = scaled(typed, ofX.factor, ofY.factor);
  const Range x = rangeX(shown);
  const Band band = bandOver(shown.line, x);
  const Axes axes(size, x, rangeY(shown, band));
  axes.draw(figure, {.title = "x" + ofX.name}, {.title = "y" + ofY.name});
  figure.add(axes.band(band.low, band.high, Tone::Accent));
  figure.add(axes.line(band.middle, Tone::Accent));
  const double radius = shown.points.size() > kFewPoints ? 0.18 : 0.3;
  for (const auto& point : shown.points) {
    figure.add(Mark{axes.inside(point.x, point.y), MarkShape::Ring, Tone::Ink, radius});
  }
  drawQuestions(figure, axes, shown, typed);
  return figure;
}

}  // namespace sw::compute
