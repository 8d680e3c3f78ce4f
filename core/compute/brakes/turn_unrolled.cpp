// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/brakes/turn_unrolled.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <utility>

#include "compute/verdict_mark.h"
#include "figure/axes.h"
#include "figure/drawing.h"

namespace sw::compute {

namespace {

using figure::Axes;
using figure::AxisText;
using figure::Figure;
using figure::Mark;
using figure::MarkShape;
using figure::Path;
using figure::Point;
using figure::Range;
using figure::Room;
using figure::Side;
using figure::Text;
using figure::Tone;

constexpr double kNearStart = 75;  // degrees: a text there begins at its point
constexpr double kBeyond = 400;    // the range is drawn behind the end of the turn
constexpr double kRangeAt = 382;
constexpr double kThinnestBelow = 0.08;  // of the span: room for its figure
constexpr double kWordsBelow = 0.14;     // of the span: room for where discard lies

const AxisText kPlaces{.title = "place on the disc, deg", .decimals = 0, .step = 90};

struct Corner {
  Point at;
  Side side;
};

/// The end of the band's edges that lies furthest from the readings.
Corner freeCorner(const Axes& axes, const Extremes& edges, const std::vector<Length>& readings) {
  constexpr double kLeft = 55;  // the middle of a text there
  constexpr double kRight = 310;
  constexpr double kBeside = 0.8;  // em, of its middle from the edge
  const Point lowLeft = axes.inside(0, edges.low);
  const Point highLeft = axes.inside(0, edges.high);
  const Point lowRight = axes.inside(kRangeAt - 8, edges.low);
  const Point highRight = axes.inside(kRangeAt - 8, edges.high);
  const std::array<std::pair<Corner, Point>, 4> corners{
      {{{lowLeft, Side::BelowRight}, {axes.at(kLeft, 0).x, lowLeft.y + kBeside}},
       {{lowRight, Side::BelowLeft}, {axes.at(kRight, 0).x, lowRight.y + kBeside}},
       {{highLeft, Side::AboveRight}, {axes.at(kLeft, 0).x, highLeft.y - kBeside}},
       {{highRight, Side::AboveLeft}, {axes.at(kRight, 0).x, highRight.y - kBeside}}}};
  const auto apart = [&](const auto& corner) {
    double least = axes.right();
    for (std::size_t i = 0; i < readings.size(); ++i) {
      const Point place = axes.inside(placeOf(i, readings.size()), inMillimetres(readings[i]));
      least = std::min(least, std::hypot((place.x - corner.second.x) / 3,  // texts are wide
                                         place.y - corner.second.y));
    }
    return least;
  };
  return std::max_element(corners.begin(), corners.end(),
                          [&](const auto& a, const auto& b) { return apart(a) < apart(b); })
      ->first;
}

/// How far apart the readings may lie: a band of that height about their middle.
void drawAllowed(Figure& figure, const Axes& axes, const std::vector<Length>& readings,
                 Length limit) {
  const Extremes band = allowedBand(readings, limit);
  figure.add(
      figure::area(axes.inside(0, band.low), axes.inside(kBeyond, band.high), Tone::Limit, 0.08));
  for (const double edge : {band.low, band.high}) {
    figure.add(figure::dashed(axes.inside(0, edge), axes.inside(kBeyond, edge), Tone::Limit));
  }
  const Corner corner = freeCorner(axes, band, readings);
  figure.add(Text{corner.at, "limit " + limitWords(limit.si(), defaultUnit(QuantityKind::Length)),
                  corner.side, Room::Movable, Tone::Limit, 0.85});
}

void drawRange(Figure& figure, const Axes& axes, const Extremes& extremes, Verdict verdict) {
  add(figure, figure::Dimension{.from = axes.inside(kRangeAt, extremes.low),
                                .to = axes.inside(kRangeAt, extremes.high),
                                .tone = rangeTone(verdict),
                                .ends = figure::DimensionEnds::Stroked});
}

void drawTilt(Figure& figure, const Axes& axes, const mechanics::DiscRunout& runout) {
  figure.add(axes.line(tiltWave(runout), Tone::Accent));
  // Beside the falling flank, where the wave leaves room.
  const double flank = std::fmod(runout.tilt.angle.si() * 180 / std::numbers::pi + 90, kTurn);
  figure.add(Text{axes.inside(flank, inMillimetres(runout.extent.mean)),
                  "tilt " + figureWords(2 * runout.tilt.amount.si(), QuantityKind::Length),
                  flank > 0.6 * kTurn ? Side::BelowLeft : Side::AboveRight, Room::Movable,
                  Tone::Accent, 0.85, true});
}

/// The thinnest point of both radii by a mark and its figure.
void drawThinnest(Figure& figure, const Axes& axes, const mechanics::DiscThicknessInput& input,
                  const mechanics::DiscThickness& disc) {
  const Thinnest thinnest = thinnestOf(input);
  const Point at = axes.inside(thinnest.place, inMillimetres(thinnest.thickness));
  figure.add(verdictMark(at, disc.minimum.verdict, 0.55));
  figure.add(
      Text{{at.x, at.y + 0.45},
           "thinnest " + limitWords(thinnest.thickness.si(), defaultUnit(QuantityKind::Length)),
           thinnest.place < kNearStart ? Side::BelowRight : Side::Below,
           Room::Movable,
           Tone::Ink,
           0.9,
           true});
}

/// Discard as a line where it is near, else as words and an arrow to where it lies.
void drawDiscard(Figure& figure, const Axes& axes, const mechanics::DiscThickness& disc,
                 Length discard) {
  const double value = inMillimetres(discard);
  const std::string words =
      "discard " + limitWords(discard.si(), defaultUnit(QuantityKind::Length));
  const bool shown = value >= axes.y().low && value <= axes.y().high;
  if (shown) {
    figure.add(figure::line(axes.at(0, value), axes.at(kBeyond, value), Tone::Limit, 0.24));
    figure.add(Text{axes.at(0, value), words, Side::BelowRight, Room::Movable, Tone::Limit, 0.9});
    return;
  }
  const bool below = value < axes.y().low;
  const Point edge = axes.inside(6, value);
  add(figure, figure::Arrow{{edge.x, edge.y + (below ? -1.6 : 1.6)}, edge, Tone::Limit, 0.16});
  figure.add(
      Text{{edge.x + 0.3, edge.y + (below ? -0.9 : 0.9)},
           words + ", " +
               figureWords(std::abs(disc.minimum.value.si() - discard.si()), QuantityKind::Length) +
               (below ? " below" : " above"),
           Side::Right,
           Room::Movable,
           Tone::Limit,
           0.9});
}

}  // namespace

Figure unrolledRunout(const mechanics::DiscRunoutInput& input, const mechanics::DiscRunout& runout,
                      figure::Size size) {
  Figure figure;
  figure.size = size;
  const Extremes extremes = extremesOf(runout.averaged);
  Range range = turnRange(extremes, input.limit);
  const double mean = inMillimetres(runout.extent.mean);
  range.include(mean - 1.1 * inMillimetres(runout.tilt.amount));
  range.include(mean + 1.1 * inMillimetres(runout.tilt.amount));
  const Axes axes(size, {0, kBeyond}, range);
  const OnPaper onPaper = [&](double place, double value) { return axes.inside(place, value); };
  if (input.limit) drawAllowed(figure, axes, runout.averaged, *input.limit);
  axes.draw(figure, kPlaces, {.title = "reading, mm"});
  if (runout.tilt.amount.si() > 0) drawTilt(figure, axes, runout);
  drawTurn(figure, runout.averaged, onPaper, Tone::Ink, MarkShape::Ring);
  drawRange(figure, axes, extremes, runout.total.verdict);
  return figure;
}

Figure unrolledThickness(const mechanics::DiscThicknessInput& input,
                         const mechanics::DiscThickness& disc, figure::Size size) {
  Figure figure;
  figure.size = size;
  const auto& wider = widerOf(input);
  const Extremes extremes = extremesOf(wider);
  Range range = turnRange(extremes, input.variationLimit);
  for (const auto* readings : {&input.readings, &input.otherRadius}) {
    for (const Length reading : *readings) range.include(inMillimetres(reading));
  }
  range.low -= kThinnestBelow * (range.high - range.low);
  if (input.discard) {
    const double discard = inMillimetres(*input.discard);
    const double span = range.high - range.low;
    if (discard > range.low - span && discard < range.high + span) {
      range.include(discard - 0.08 * span);
      range.include(discard + 0.08 * span);
    } else if (discard < range.low) {
      range.low -= kWordsBelow * span;
    }
  }
  const Axes axes(size, {0, kBeyond}, range);
  const OnPaper onPaper = [&](double place, double value) { return axes.inside(place, value); };
  if (input.variationLimit) drawAllowed(figure, axes, wider, *input.variationLimit);
  axes.draw(figure, kPlaces, {.title = "thickness, mm"});
  if (input.discard) drawDiscard(figure, axes, disc, *input.discard);
  if (!input.otherRadius.empty()) {
    drawTurn(figure, input.otherRadius, onPaper, Tone::Second, MarkShape::Triangle);
    figure.add(Text{axes.inside(0, inMillimetres(input.otherRadius.front())), "other radius",
                    Side::AboveRight, Room::Movable, Tone::Second, 0.85});
  }
  drawTurn(figure, input.readings, onPaper, Tone::Ink, MarkShape::Ring);
  drawRange(figure, axes, extremes, disc.variation.verdict);
  drawThinnest(figure, axes, input, disc);
  return figure;
}

}  // namespace sw::compute
