// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/geometry/trail_picture.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

#include "compute/picture_parts.h"
#include "figure/vectors.h"

namespace sw::compute {

namespace {

using figure::Arrow;
using figure::Box;
using figure::Dimension;
using figure::Figure;
using figure::Mark;
using figure::MarkShape;
using figure::Path;
using figure::Point;
using figure::Room;
using figure::Scale;
using figure::Side;
using figure::Text;
using figure::Tone;

constexpr double kAboveHub = 0.28;    // of the radius, shown
constexpr double kTyreWidth = 0.55;   // of the radius, drawn only
constexpr double kBelowGround = 3.7;  // em, for the dimension

Scale scaleIn(const Box& box, double radius, double reach) {
  const double half = std::max(0.75 * radius, reach + 0.1 * radius);
  return Scale({box.left, box.top + 1.6, box.right, box.bottom - kBelowGround}, {-half, half},
               {0, (1 + kAboveHub) * radius});
}

/// The ground, where the wheel stands and where the axis meets it, with their distance.
void drawGround(Figure& figure, const Scale& scale, const Box& box, double axisAt,
                const std::string& text, Tone tone) {
  const Point wheel = scale.at(0, 0);
  const Point axis = scale.at(axisAt, 0);
  const double y = wheel.y;
  figure.add(figure::line({box.left, y}, {box.right, y}, Tone::Quiet, 0.16));
  figure.add(Mark{axis, MarkShape::Disc, tone, 0.35});
  figure.add(Mark{wheel, MarkShape::Square, Tone::Ink, 0.35});
  const double below = y + 1.0;
  for (const Point& point : {axis, wheel}) {
    figure.add(figure::line({point.x, y}, {point.x, below + 0.3}, Tone::Quiet, 0.06));
  }
  const bool axisFirst = axis.x <= wheel.x;
  add(figure, Dimension{{(axisFirst ? axis : wheel).x, below},
                        {(axisFirst ? wheel : axis).x, below},
                        "",
                        Side::Below,
                        tone});
  figure.add(Text{
      {(axis.x + wheel.x) / 2, below + 0.2}, text, Side::Below, Room::Movable, tone, 1.05, true});
}

void drawUpright(Figure& figure, const Scale& scale, double at, double radius) {
  figure.add(
      figure::dashed(scale.at(at, 0), scale.at(at, (1 + kAboveHub) * radius), Tone::Quiet, 0.1));
}

/// From the side, forward to the left.
void drawTrail(Figure& figure, const TrailDrawing::Trail& trail, const Box& box) {
  const double radius = trail.input.loadedRadius.si();
  const double lean = std::tan(trail.input.caster.si());
  const double ahead = trail.trail.si();
  const Scale scale = scaleIn(box, radius, std::abs(ahead));
  Path tyre = figure::line({}, {}, Tone::Material, 0.4);
  const Point hub = scale.at(0, radius);
  // As much of the wheel as the box holds on either side.
  const double widest = std::min(hub.x - box.left, box.right - hub.x) - 0.3;
  const double side = std::asin(std::min(1.0, widest / scale.em(radius))) * 180 / std::numbers::pi;
  tyre.points = figure::arc(hub, scale.em(radius), 180 - side, 180 + side);
  figure.add(std::move(tyre));
  drawUpright(figure, scale, 0, radius);
  const double top = (1 + kAboveHub) * radius;
  figure.add(
      figure::line(scale.at(-ahead, 0), scale.at(-ahead + lean * top, top), Tone::Accent, 0.26));
  figure.add(Mark{hub, MarkShape::Ring, Tone::Ink, 0.4});
  figure.add(Text{scale.at(-ahead + lean * top, top), "caster " + degreesLabel(trail.input.caster),
                  ahead >= 0 ? Side::Right : Side::Left, Room::Movable, Tone::Accent,
                  figure::kLabelSize});
  drawGround(figure, scale, box, -ahead, "trail " + labelText(trail.trail), Tone::Accent);
  add(figure,
      Arrow{{box.left + 2.2, box.top + 0.7}, {box.left + 0.2, box.top + 0.7}, Tone::Quiet, 0.14});
  figure.add(Text{
      {box.left + 2.3, box.top + 0.7}, "forward", Side::Right, Room::Movable, Tone::Quiet, 0.85});
}

/// From behind, the left wheel: inboard to the right.
void drawScrub(Figure& figure, const TrailDrawing::Scrub& scrub, const Box& box) {
  const double radius = scrub.input.loadedRadius.si();
  const double lean = std::tan(scrub.input.inclination.si());
  const double camber = inDegrees(scrub.input.camber);
  const double inboard = scrub.scrub.si();
  const Scale scale = scaleIn(box, radius, std::abs(inboard) + kTyreWidth * radius / 2);
  const double top = (1 + kAboveHub) * radius;
  const Point contact = scale.at(0, 0);
  const double half = scale.em(kTyreWidth * radius) / 2;
  std::vector<Point> tyre{{contact.x - half, contact.y},
                          {contact.x + half, contact.y},
                          {contact.x + half, contact.y - scale.em(top)},
                          {contact.x - half, contact.y - scale.em(top)}};
  figure.add(figure::outline(figure::turned(std::move(tyre), contact, -camber), Tone::Material, 0.3,
                             0.14));
  drawUpright(figure, scale, 0, radius);
  figure.add(
      figure::line(scale.at(inboard, 0), scale.at(inboard + lean * top, top), Tone::Second, 0.26));
  figure.add(Text{scale.at(inboard + lean * top, top),
                  "inclined " + degreesLabel(scrub.input.inclination), Side::Above, Room::Movable,
                  Tone::Second, figure::kLabelSize});
  drawGround(figure, scale, box, inboard, "scrub " + labelText(scrub.scrub), Tone::Second);
  if (scrub.input.spacer.si() != 0) {
    const Point middle = scale.at(inboard / 2, 0);
    figure.add(Text{{middle.x, middle.y + 2.4},
                    "without spacer " + labelText(scrub.withoutSpacer),
                    Side::Below,
                    Room::Movable,
                    Tone::Quiet,
                    0.85});
  }
}

}  // namespace

Figure trailPicture(const TrailDrawing& drawing, figure::Size size) {
  Figure figure = newFigure(size, "Where the steering axis meets the ground",
                            "The lower half of the wheel from the side and from behind, to scale");
  const bool both = drawing.trail && drawing.scrub;
  const double cut = both ? size.width / 2 : size.width;
  if (drawing.trail) drawTrail(figure, *drawing.trail, {0.5, 0.2, cut - 0.6, size.height - 0.2});
  if (drawing.scrub) {
    drawScrub(figure, *drawing.scrub,
              {both ? cut + 0.6 : 0.5, 0.2, size.width - 0.5, size.height - 0.2});
  }
  return figure;
}

}  // namespace sw::compute
