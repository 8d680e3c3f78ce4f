// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/brakes/disc_wear_picture.h"

#include <algorithm>

#include "compute/verdict_mark.h"
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
using mechanics::DiscWear;
using mechanics::DiscWearInput;
using mechanics::WearVisit;

constexpr double kKilometre = 1000;
constexpr double kThousand = 1e6;  // m, of the axis: thousands of km
constexpr double kFurthest = 6;    // times the road watched: beyond it the picture stops
constexpr double kCoverage = 2;    // of the error bars

double thousands(Length road) {
  return road.si() / kThousand;
}

Length lastVisit(const DiscWearInput& input) {
  return std::max_element(
             input.visits.begin(), input.visits.end(),
             [](const WearVisit& a, const WearVisit& b) { return a.odometer < b.odometer; })
      ->odometer;
}

Range roads(const DiscWearInput& input, const DiscWear& wear, double last) {
  Range range{last, last};
  for (const WearVisit& visit : input.visits) range.include(thousands(visit.odometer));
  const double furthest = last + kFurthest * thousands(wear.spanned);
  range.include(std::min(furthest, last + thousands(wear.distanceMost.value_or(wear.distance))));
  range.widen(0.05, 1);
  range.low = std::max(range.low, 0.0);
  return range;
}

Range thicknesses(const DiscWearInput& input) {
  const double discard = inMillimetres(input.discard);
  Range range{discard, discard};
  for (const WearVisit& visit : input.visits) {
    const double u = kCoverage * inMillimetres(visit.standardUncertainty);
    range.include(inMillimetres(visit.minimum) - u);
    range.include(inMillimetres(visit.minimum) + u);
  }
  range.widen(0.12, 0.1);
  return range;
}

/// The way on to discard: as likely as not, and as soon or late as the interval allows.
void drawOutlook(Figure& figure, const Axes& axes, const DiscWearInput& input, const DiscWear& wear,
                 double last) {
  const double discard = inMillimetres(input.discard);
  const double now = inMillimetres(wear.thickness);
  const double soon = last + thousands(wear.distanceLeast);
  const double late = wear.distanceMost ? last + thousands(*wear.distanceMost) : axes.x().high;
  const double lateThickness = wear.distanceMost ? discard : now;
  figure.add(figure::outline(
      {axes.inside(last, now), axes.inside(late, lateThickness), axes.inside(soon, discard)},
      Tone::Accent, 0.16, 0.01));
  const double start = axes.x().low;
  const double slope = wear.distance.si() > 0 ? (now - discard) / thousands(wear.distance)
                                              : inMillimetres(wear.rate) / 10;
  const auto lineAt = [&](double road) { return Point{road, now - slope * (road - last)}; };
  figure.add(axes.line({lineAt(std::max(start, last - thousands(wear.spanned))), {last, now}},
                       Tone::Accent));
  if (wear.distance.si() <= 0) return;
  // Where the line leaves the picture before it meets discard, it ends at the edge.
  const double end = std::min(axes.x().high, last + thousands(wear.distance));
  figure.add(
      figure::dashed(axes.inside(last, now), axes.at(end, lineAt(end).y), Tone::Accent, 0.18));
  const Point middle = axes.inside(0.5 * (last + end), lineAt(0.5 * (last + end)).y);
  figure.add(
      Text{middle, "if wear goes on alike", Side::AboveRight, Room::Optional, Tone::Accent, 0.85});
}

void drawVisits(Figure& figure, const Axes& axes, const DiscWearInput& input) {
  for (const WearVisit& visit : input.visits) {
    const double road = thousands(visit.odometer);
    const double value = inMillimetres(visit.minimum);
    const double u = kCoverage * inMillimetres(visit.standardUncertainty);
    figure::errorBar(figure, axes.inside(road, value - u), axes.inside(road, value + u), Tone::Ink,
                     0.1);
    figure.add(Mark{axes.inside(road, value), MarkShape::Disc, Tone::Ink, 0.32});
  }
}

std::string roadWords(Length road) {
  return fixedDecimal(road.si() / kKilometre, -2) + " km";
}

/// Look again here: a line up from the axis with its odometer reading.
void drawRecheck(Figure& figure, const Axes& axes, const DiscWear& wear, double last) {
  const double road = last + thousands(wear.recheck);
  const Point foot = axes.inside(road, axes.y().low);
  figure.add(figure::line(foot, {foot.x, axes.top()}, Tone::Second, 0.16));
  figure.add(Mark{{foot.x, axes.top()}, MarkShape::Triangle, Tone::Second, 0.5});
  const bool left = foot.x > 0.5 * (axes.left() + axes.right());
  const Side side = left ? Side::Left : Side::Right;
  figure.add(Text{{foot.x, axes.top() + 0.9},
                  "by " + roadWords(Length::fromSi(road * kThousand)),
                  side,
                  Room::Movable,
                  Tone::Second,
                  1.0,
                  true});
  figure.add(
      Text{{foot.x, axes.top() + 2.1}, "measure again", side, Room::Movable, Tone::Second, 0.9});
}

}  // namespace

Figure discWearPicture(const DiscWearInput& input, const DiscWear& wear, figure::Size size) {
  Figure figure;
  figure.size = size;
  figure.title = "Wear of the disc";
  figure.description = "Thickness at " + std::to_string(input.visits.size()) +
                       " visits, discard, and where to measure again";
  const double last = thousands(lastVisit(input));
  const Axes axes(size, roads(input, wear, last), thicknesses(input));
  const double discard = inMillimetres(input.discard);
  figure.add(figure::area(axes.at(axes.x().low, axes.y().low), axes.at(axes.x().high, discard),
                          Tone::Limit, 0.1));
  axes.draw(figure, {.title = "odometer, thousand km"}, {.title = "thickness, mm"});
  drawOutlook(figure, axes, input, wear, last);
  figure.add(figure::line(axes.at(axes.x().low, discard), axes.at(axes.x().high, discard),
                          Tone::Limit, 0.2));
  figure.add(Text{axes.at(axes.x().low, discard),
                  "discard " + limitWords(input.discard.si(), defaultUnit(QuantityKind::Length)),
                  Side::AboveRight, Room::Movable, Tone::Limit, 0.9});
  drawVisits(figure, axes, input);
  drawRecheck(figure, axes, wear, last);
  if (wear.atDiscard) figure::headline(figure, "at discard", MarkShape::Square, Tone::Bad);
  return figure;
}

}  // namespace sw::compute
