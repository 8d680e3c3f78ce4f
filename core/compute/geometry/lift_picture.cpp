// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/geometry/lift_picture.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "compute/picture_parts.h"
#include "figure/vectors.h"

namespace sw::compute {

namespace {

using figure::Arrow;
using figure::Figure;
using figure::Mark;
using figure::MarkShape;
using figure::Point;
using figure::Range;
using figure::Room;
using figure::Scale;
using figure::Side;
using figure::Stroke;
using figure::Text;
using figure::Tone;
using mechanics::ArmLayout;
using mechanics::AxleLift;

constexpr double kAxisUp = 0.42;  // of the arm's length, the axis above the axle
constexpr double kAxisDown = 0.18;
constexpr double kLinkApart = 0.16;  // of parallel links
constexpr double kUsualArm = 0.7;    // m, where links are parallel and no length is given

double armLength(const AxleLift& lift) {
  const double given = lift.armLength.si();
  const double least = 1.2 * (std::abs(lift.pivotHeight.si()) + std::abs(lift.lift.si()));
  return given > 0 ? given : std::max(kUsualArm, least);
}

/// Of the pivot from the axle: x backwards, y up.
Point pivot(const AxleLift& lift, double height) {
  const double length = armLength(lift);
  const double along = std::sqrt(std::max(0.0, length * length - height * height));
  return {lift.layout == ArmLayout::Trailing ? -along : along, height};
}

void drawArm(Figure& figure, const Scale& scale, Point from, Point to, Stroke stroke) {
  const bool solid = stroke == Stroke::Solid;
  figure::Path arm = figure::line(scale.at(from.x, from.y), scale.at(to.x, to.y),
                                  solid ? Tone::Ink : Tone::Quiet, solid ? 0.4 : 0.14);
  arm.stroke = stroke;
  figure.add(std::move(arm));
  figure.add(Mark{scale.at(to.x, to.y), solid ? MarkShape::Disc : MarkShape::Ring,
                  solid ? Tone::Ink : Tone::Quiet, 0.4});
}

/// The swivel axis through the axle, leaning back at the top.
void drawAxis(Figure& figure, const Scale& scale, double length, Angle caster, Stroke stroke) {
  const double lean = std::sin(caster.si());
  const double up = std::cos(caster.si());
  figure::Path axis = figure::line(scale.at(-kAxisDown * length * lean, -kAxisDown * length * up),
                                   scale.at(kAxisUp * length * lean, kAxisUp * length * up),
                                   stroke == Stroke::Solid ? Tone::Accent : Tone::Quiet,
                                   stroke == Stroke::Solid ? 0.26 : 0.14);
  axis.stroke = stroke;
  figure.add(std::move(axis));
}

void drawArms(Figure& figure, const Scale& scale, const AxleLift& lift) {
  const double before = lift.pivotHeight.si();
  const double after = before + lift.lift.si();
  const bool parallel = lift.layout == ArmLayout::Parallel;
  const double offset = parallel ? kLinkApart * armLength(lift) / 2 : 0;
  for (const double shift : {offset, -offset}) {
    for (const auto& [height, stroke] :
         {std::pair{before, Stroke::Dashed}, std::pair{after, Stroke::Solid}}) {
      const Point end = pivot(lift, height);
      drawArm(figure, scale, {0, shift}, {end.x, end.y + shift}, stroke);
    }
    if (!parallel) break;
  }
  const Point low = pivot(lift, before);
  const Point high = pivot(lift, after);
  const double beside =
      std::max(low.x, high.x) > 0 ? std::max(low.x, high.x) : std::min(low.x, high.x);
  const double away = beside > 0 ? 1.1 : -1.1;
  const Point from = scale.at(beside, low.y);
  const Point to = scale.at(beside, high.y);
  if (lift.lift.si() != 0) {
    add(figure, Arrow{{from.x + away, from.y}, {to.x + away, to.y}, Tone::Accent, 0.2});
  }
  const bool rises = to.y <= from.y;
  figure.add(Text{
      {to.x + away, to.y + (rises ? -0.5 : 0.5) + (rises ? -1 : 1) * scale.em(offset)},
      std::string(rises ? "body up " : "body down ") + labelText(rises ? lift.lift : -lift.lift),
      rises ? Side::Above : Side::Below,
      Room::Movable,
      Tone::Accent,
      1.0,
      true});
}

std::string casterText(Angle change, const std::optional<Angle>& before) {
  if (before) {
    return "caster " + degreesLabel(*before) + " before, " + degreesLabel(*before + change) +
           " after";
  }
  if (change.si() == 0) return "caster stays";
  return std::string("caster ") + (change.si() > 0 ? "+" : "") + degreesLabel(change);
}

}  // namespace

Figure liftPicture(const AxleLift& lift, Angle change, const std::optional<Angle>& casterBefore,
                   figure::Size size) {
  Figure figure = newFigure(size, "Lift and caster from the side",
                            "Axle, arm and pivot before and after the lift, to scale");
  const double length = armLength(lift);
  const double before = lift.pivotHeight.si();
  const double after = before + lift.lift.si();
  const double towards = lift.layout == ArmLayout::Trailing ? -1 : 1;
  Range x{std::min(towards * length, -0.2 * length * towards),
          std::max(towards * length, -0.2 * length * towards)};
  Range y{-kAxisDown * length, kAxisUp * length};
  for (const double height : {before, after}) {
    y.include(height + 0.1 * length);
    y.include(height - 0.1 * length);
  }
  const Scale scale({1.6, 2.2, size.width - 3.0, size.height - 2.4}, x, y);
  const Angle first = casterBefore.value_or(Angle{});
  drawArms(figure, scale, lift);
  drawAxis(figure, scale, length, first, Stroke::Dashed);
  drawAxis(figure, scale, length, first + change, Stroke::Solid);
  const Point axle = scale.at(0, 0);
  figure.add(figure::circle(axle, std::clamp(scale.em(0.05 * length), 0.6, 1.4), Tone::Ink, 0.22));
  figure.add(Text{{axle.x + 1.2, axle.y + 1.0},
                  "axle",
                  Side::BelowRight,
                  Room::Optional,
                  Tone::Quiet,
                  figure::kLabelSize});
  figure.add(Text{{0.4, 0.1},
                  casterText(change, casterBefore),
                  Side::BelowRight,
                  Room::Fixed,
                  Tone::Accent,
                  1.15,
                  true});
  const double foot = size.height - 0.9;
  add(figure, Arrow{{2.8, foot}, {0.6, foot}, Tone::Quiet, 0.14});
  figure.add(
      Text{{2.9, foot}, "forward; dashed: before", Side::Right, Room::Fixed, Tone::Quiet, 0.85});
  return figure;
}

}  // namespace sw::compute
