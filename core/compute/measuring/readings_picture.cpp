// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/measuring/readings_picture.h"

#include <algorithm>
#include <cmath>

#include "compute/verdict_mark.h"
#include "figure/axes.h"
#include "figure/drawing.h"

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

constexpr double kEmAMark = 3.5;
constexpr double kNoMarks = 1e6;  // a step beyond every reading: the numbers are drawn here
constexpr std::size_t kFewReadings = 30;

/// Where readings and their mean lie from left to right.
struct Across {
  double step = 1;  ///< between the numbers
  double mean = 0;
  Range range;
};

Across acrossFor(double count, double width) {
  Across across;
  across.step = std::max(1.0, figure::roundStep(count, static_cast<int>(width / kEmAMark)));
  across.mean = count + std::max(1.0, 0.2 * count);
  across.range = {0.5, across.mean + std::max(0.7, 0.12 * count)};
  return across;
}

/// Values as shown on the axis.
struct Scaled {
  const ReadingsShown& shown;
  const Unit& unit;
  [[nodiscard]] double of(double si) const { return si / unit.toSi; }
};

Range valueRange(const Scaled& scaled) {
  const ReadingsShown& shown = scaled.shown;
  const double middle = scaled.of(shown.value);
  const double u = scaled.of(shown.expandedUncertainty);
  Range range{middle - u, middle + u};
  for (const double reading : shown.readings) range.include(scaled.of(reading));
  for (const auto& end : {shown.limit.min, shown.limit.max}) {
    if (end) range.include(scaled.of(*end));
  }
  range.widen(0.12, std::max(0.02 * std::abs(middle), 1e-6));
  return range;
}

void drawLimits(Figure& figure, const Axes& axes, const Scaled& scaled) {
  const LimitBand& limit = scaled.shown.limit;
  if (!limit.any()) return;
  const double low = limit.min ? scaled.of(*limit.min) : axes.y().low;
  const double high = limit.max ? scaled.of(*limit.max) : axes.y().high;
  figure.add(figure::area(axes.inside(axes.x().low, low), axes.inside(axes.x().high, high),
                          Tone::Limit, 0.08));
  const std::string before = scaled.shown.limitName.empty() ? "" : scaled.shown.limitName + ", ";
  const auto edge = [&](double si, const char* words, Side side) {
    const double y = axes.at(0, scaled.of(si)).y;
    figure.add(figure::dashed({axes.left(), y}, {axes.right(), y}, Tone::Limit));
    figure.add(Text{{axes.left() + 0.1, y},
                    before + words + " " + limitWords(si, scaled.unit),
                    side,
                    Room::Movable,
                    Tone::Limit,
                    0.85});
  };
  if (limit.max) edge(*limit.max, "at most", Side::AboveRight);
  if (limit.min) edge(*limit.min, "at least", Side::BelowRight);
}

void drawReadings(Figure& figure, const Axes& axes, const Scaled& scaled) {
  const auto& readings = scaled.shown.readings;
  const double radius = readings.size() > kFewReadings ? 0.2 : 0.32;
  figure::Path path;
  path.tone = Tone::Quiet;
  path.width = 0.06;
  for (std::size_t i = 0; i < readings.size(); ++i) {
    path.points.push_back(axes.inside(static_cast<double>(i + 1), scaled.of(readings[i])));
  }
  const auto places = path.points;
  figure.add(std::move(path));
  for (std::size_t i = 0; i < places.size(); ++i) {
    const bool off = scaled.shown.outlier == i;
    figure.add(Mark{places[i], off ? MarkShape::Cross : MarkShape::Ring, Tone::Ink,
                    off ? 2 * radius : radius});
    if (off) {
      figure.add(
          Text{places[i], "does not fit the others", Side::Above, Room::Movable, Tone::Ink, 0.85});
    }
  }
}

void drawNumbers(Figure& figure, const Axes& axes, double count, double step) {
  for (double number = step > 1 ? step : 1; number <= count; number += step) {
    figure.add(Text{{axes.at(number, axes.y().low).x, axes.bottom() + 0.2},
                    figure::markText(number, step),
                    Side::Below,
                    Room::Optional,
                    Tone::Quiet,
                    0.85});
  }
}

void drawMean(Figure& figure, const Axes& axes, const Scaled& scaled, double x) {
  const ReadingsShown& shown = scaled.shown;
  const double value = scaled.of(shown.value);
  const double u = scaled.of(shown.expandedUncertainty);
  const Point at = axes.at(x, value);
  const VerdictLook look = lookOf(shown.verdict);
  figure.add(figure::dashed({axes.left(), at.y}, at, look.tone, 0.08));
  if (u > 0) {
    figure::errorBar(figure, axes.inside(x, value - u), axes.inside(x, value + u), look.tone, 0.2);
  }
  figure.add(Mark{at, look.shape, look.tone, 0.6});
  // On the side that has more room.
  const bool high = at.y < 0.5 * (axes.top() + axes.bottom());
  const double end = axes.inside(x, high ? value - u : value + u).y;
  figure.add(Text{{at.x, end + (high ? 0.5 : -0.5)},
                  measuredWords(shown.value, shown.expandedUncertainty, scaled.unit),
                  high ? Side::Below : Side::Above,
                  Room::Movable,
                  Tone::Ink,
                  0.9});
  figure.add(
      Text{{at.x, axes.bottom() + 0.2}, "mean", Side::Below, Room::Fixed, Tone::Quiet, 0.85});
}

}  // namespace

Figure readingsPicture(const ReadingsShown& shown, figure::Size size) {
  Figure figure;
  figure.size = size;
  const Scaled scaled{shown, defaultUnit(shown.kind)};
  const std::string measured = measuredWords(shown.value, shown.expandedUncertainty, scaled.unit);
  figure.title = shown.title;
  figure.description = std::to_string(shown.readings.size()) + " readings, mean " + measured +
                       ", " + verdictWords(shown.verdict, shown.side);
  const auto count = static_cast<double>(shown.readings.size());
  const Across across = acrossFor(count, size.width);
  const Axes axes(size, across.range, valueRange(scaled));
  drawLimits(figure, axes, scaled);
  axes.draw(figure, {.title = "reading", .step = kNoMarks},
            {.title = shown.what + ", " + std::string(scaled.unit.symbol)});
  drawNumbers(figure, axes, count, across.step);
  drawReadings(figure, axes, scaled);
  drawMean(figure, axes, scaled, across.mean);
  const VerdictLook look = lookOf(shown.verdict);
  figure::headline(figure, verdictWords(shown.verdict), look.shape, look.tone);
  return figure;
}

}  // namespace sw::compute
