// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/geometry/ackermann_picture.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "compute/geometry/axle_drawing.h"
#include "compute/picture_parts.h"
#include "figure/vectors.h"

namespace sw::compute {

namespace {

using figure::Figure;
using figure::Mark;
using figure::MarkShape;
using figure::Point;
using figure::Room;
using figure::Scale;
using figure::Side;
using figure::Stroke;
using figure::Text;
using figure::Tone;

constexpr double kWheelLength = 0.28;  // of the wheelbase
constexpr double kWheelWidth = 0.09;
constexpr double kFarthest = 2.6;   // wheelbases from the vehicle that are shown
constexpr double kStraight = 1e-6;  // rad

struct Layout {
  double half = 0;  ///< of the spacing
  double base = 0;
  std::optional<double> centre;  ///< x of the turning centre, 0 in the middle of the vehicle
};

Layout layoutOf(const AckermannDrawing& drawing) {
  Layout layout{drawing.axle.kingpinSpacing.si() / 2, drawing.axle.wheelbase.si(), {}};
  if (drawing.inner.si() > kStraight) {
    layout.centre = -layout.half - layout.base / std::tan(drawing.inner.si());
  }
  return layout;
}

void drawVehicle(Figure& figure, const Scale& scale, const Layout& layout,
                 const AckermannDrawing& drawing) {
  const figure::Size wheel{scale.em(kWheelWidth * layout.base),
                           scale.em(kWheelLength * layout.base)};
  const auto put = [&](double x, double y, double degrees, Tone tone, Stroke stroke) {
    drawWheelFromAbove(figure, scale.at(x, y), wheel, degrees, tone, stroke);
  };
  figure.add(
      figure::line(scale.at(-layout.half, 0), scale.at(layout.half, 0), Tone::Material, 0.3));
  figure.add(figure::line(scale.at(-layout.half, layout.base), scale.at(layout.half, layout.base),
                          Tone::Material, 0.3));
  figure.add(figure::line(scale.at(0, 0), scale.at(0, layout.base), Tone::Material, 0.2));
  put(-layout.half, 0, 0, Tone::Quiet, Stroke::Solid);
  put(layout.half, 0, 0, Tone::Quiet, Stroke::Solid);
  put(layout.half, layout.base, -inDegrees(drawing.outer), Tone::Second, Stroke::Solid);
  put(-layout.half, layout.base, -inDegrees(drawing.inner), Tone::Accent, Stroke::Solid);
  if (drawing.measuredInner) {
    put(-layout.half, layout.base, -inDegrees(*drawing.measuredInner), Tone::Ink, Stroke::Dashed);
  }
}

/// From a front wheel towards the centre, as far as is shown.
void drawRadius(Figure& figure, const Scale& scale, const Layout& layout, double wheelX,
                double shown, Tone tone) {
  const double reach = std::max(*layout.centre, shown);
  const double share = (wheelX - reach) / (wheelX - *layout.centre);
  figure.add(figure::dashed(scale.at(wheelX, layout.base),
                            scale.at(reach, layout.base * (1 - share)), tone, 0.12));
}

void drawBend(Figure& figure, const Scale& scale, const Layout& layout, double shown) {
  if (!layout.centre) return;
  drawRadius(figure, scale, layout, -layout.half, shown, Tone::Accent);
  drawRadius(figure, scale, layout, layout.half, shown, Tone::Second);
  const double reach = std::max(*layout.centre, shown);
  figure.add(figure::dashed(scale.at(-layout.half, 0), scale.at(reach, 0), Tone::Quiet, 0.12));
  const Point at = scale.at(reach, 0);
  const double metres = -*layout.centre;
  if (*layout.centre >= shown) figure.add(Mark{at, MarkShape::Disc, Tone::Ink, 0.4});
  figure.add(Text{{at.x, at.y + 0.4},
                  "turning centre, " + shortNumber(metres, 1) + " m",
                  2 * at.x < figure.size.width ? Side::BelowRight : Side::BelowLeft,
                  Room::Movable,
                  Tone::Ink,
                  figure::kLabelSize});
}

void drawAngles(Figure& figure, const Scale& scale, const Layout& layout,
                const AckermannDrawing& drawing) {
  const double up = layout.base * (1 + kWheelLength / 2);
  const Point outer = scale.at(layout.half, up);
  const Point inner = scale.at(-layout.half, up);
  figure.add(Text{{outer.x, outer.y - 1.4},
                  "outer " + degreesLabel(drawing.outer),
                  Side::AboveRight,
                  Room::Movable,
                  Tone::Second,
                  1.0,
                  true});
  figure.add(Text{{inner.x, inner.y - 0.2},
                  "inner " + degreesLabel(drawing.inner),
                  Side::AboveLeft,
                  Room::Movable,
                  Tone::Accent,
                  1.0,
                  true});
  if (!drawing.measuredInner) return;
  const Point low = scale.at(-layout.half, layout.base * (1 - kWheelLength / 2));
  figure.add(Text{{low.x - 0.2, low.y},
                  "dashed: measured " + degreesLabel(*drawing.measuredInner),
                  Side::BelowLeft,
                  Room::Movable,
                  Tone::Ink,
                  figure::kLabelSize});
}

}  // namespace

Figure ackermannPicture(const AckermannDrawing& drawing, figure::Size size) {
  Figure figure = newFigure(size, "Front wheels on a bend",
                            "The vehicle from above; both front wheels about one point");
  const Layout layout = layoutOf(drawing);
  const double shown = -layout.half - kFarthest * layout.base;
  const double left = layout.centre ? std::max(*layout.centre, shown) : -layout.half;
  const double wheel = kWheelLength * layout.base / 2;
  const Scale scale({1.0, 2.9, size.width - 1.0, size.height - 1.6},
                    {std::min(left, -layout.half - 1.2 * wheel), layout.half + 1.8 * wheel},
                    {-wheel, layout.base + wheel});
  drawBend(figure, scale, layout, shown);
  drawVehicle(figure, scale, layout, drawing);
  drawAngles(figure, scale, layout, drawing);
  return figure;
}

}  // namespace sw::compute
