// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/brakes/turn_polar.h"

#include <numbers>
#include <utility>

#include "compute/verdict_mark.h"
#include "figure/drawing.h"

namespace sw::compute {

namespace {

using figure::Figure;
using figure::Mark;
using figure::MarkShape;
using figure::Path;
using figure::Point;
using figure::Polar;
using figure::Room;
using figure::Side;
using figure::Text;
using figure::Tone;

constexpr double kBesideMark = 0.9;  // em, of a text from the mark it names

const std::vector<std::string> kSpokes{"0°", "90°", "180°", "270°"};

/// Beside a place on the turn, away from the centre.
Side outward(double degrees) {
  const double right = figure::onCircle({}, 1, degrees).x;
  const double down = figure::onCircle({}, 1, degrees).y;
  if (right > 0.4) return down > 0 ? Side::BelowRight : Side::AboveRight;
  if (right < -0.4) return down > 0 ? Side::BelowLeft : Side::AboveLeft;
  return down > 0 ? Side::Below : Side::Above;
}

Path closed(const Polar& polar, const std::vector<Point>& values, Tone tone, double width) {
  Path path;
  path.tone = tone;
  path.width = width;
  path.closed = true;
  for (const Point& value : values) path.points.push_back(polar.at(value.x, value.y));
  return path;
}

/// The ring between two values, and its edges.
void drawAllowed(Figure& figure, const Polar& polar, const Extremes& band) {
  const Point centre = polar.centre();
  const auto radius = [&](double value) { return centre.y - polar.at(0, value).y; };
  Path ring;
  ring.points = figure::arc(centre, radius(band.high), 0, kTurn);
  const auto inner = figure::arc(centre, radius(band.low), kTurn, 0);
  ring.points.insert(ring.points.end(), inner.begin(), inner.end());
  ring.tone = Tone::Limit;
  ring.stroke = figure::Stroke::None;
  ring.closed = true;
  ring.fill = 0.1;
  figure.add(std::move(ring));
  for (const double edge : {band.low, band.high}) {
    Path path = figure::circle(centre, radius(edge), Tone::Limit, 0.1);
    path.stroke = figure::Stroke::Dashed;
    figure.add(std::move(path));
  }
}

void name(Figure& figure, Point at, double degrees, const std::string& words, Tone tone) {
  const Point beside = figure::onCircle(at, kBesideMark, degrees);
  figure.add(Text{beside, words, outward(degrees), Room::Movable, tone, 0.9, true});
}

Figure emptyTurn(figure::Size size) {
  Figure figure;
  figure.size = size;
  return figure;
}

}  // namespace

Figure polarRunout(const mechanics::DiscRunoutInput& input, const mechanics::DiscRunout& runout,
                   figure::Size size) {
  Figure figure = emptyTurn(size);
  figure::Range range = turnRange(extremesOf(runout.averaged), input.limit);
  const auto wave = tiltWave(runout);
  for (const Point& value : wave) range.include(value.y);
  const Polar polar(size, range);
  const OnPaper onPaper = [&](double place, double value) { return polar.at(place, value); };
  if (input.limit) drawAllowed(figure, polar, allowedBand(runout.averaged, *input.limit));
  polar.draw(figure, "mm", kSpokes);
  drawTurn(figure, runout.averaged, onPaper, Tone::Ink, MarkShape::Ring);
  if (!(runout.tilt.amount.si() > 0)) return figure;
  figure.add(closed(polar, wave, Tone::Accent, 0.16));
  const double high = runout.tilt.angle.si() * 180 / std::numbers::pi;
  const Point spot =
      polar.at(high, inMillimetres(runout.extent.mean) + inMillimetres(runout.tilt.amount));
  figure.add(Mark{spot, MarkShape::Diamond, Tone::Accent, 0.5});
  name(figure, spot, high, "high spot", Tone::Accent);
  return figure;
}

Figure polarThickness(const mechanics::DiscThicknessInput& input,
                      const mechanics::DiscThickness& disc, figure::Size size) {
  Figure figure = emptyTurn(size);
  const auto& wider = widerOf(input);
  figure::Range range = turnRange(extremesOf(wider), input.variationLimit);
  for (const auto* readings : {&input.readings, &input.otherRadius}) {
    for (const Length reading : *readings) range.include(inMillimetres(reading));
  }
  const Polar polar(size, range);
  const OnPaper onPaper = [&](double place, double value) { return polar.at(place, value); };
  if (input.variationLimit) drawAllowed(figure, polar, allowedBand(wider, *input.variationLimit));
  polar.draw(figure, "mm", kSpokes);
  if (!input.otherRadius.empty()) {
    drawTurn(figure, input.otherRadius, onPaper, Tone::Second, MarkShape::Triangle);
  }
  drawTurn(figure, input.readings, onPaper, Tone::Ink, MarkShape::Ring);
  const Thinnest thinnest = thinnestOf(input);
  const Point spot = polar.at(thinnest.place, inMillimetres(thinnest.thickness));
  figure.add(verdictMark(spot, disc.minimum.verdict, 0.55));
  name(figure, spot, thinnest.place,
       "thinnest " + limitWords(thinnest.thickness.si(), defaultUnit(QuantityKind::Length)),
       Tone::Ink);
  return figure;
}

}  // namespace sw::compute
