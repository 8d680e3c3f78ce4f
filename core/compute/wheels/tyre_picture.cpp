// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/wheels/tyre_picture.h"

#include <algorithm>
#include <array>
#include <ranges>
#include <string>

#include "compute/picture_parts.h"
#include "figure/vectors.h"

namespace sw::compute {

namespace {

using figure::Dimension;
using figure::Figure;
using figure::Path;
using figure::Point;
using figure::Room;
using figure::Scale;
using figure::Side;
using figure::Text;
using figure::Tone;

constexpr double kBead = 0.72;    // of the width, at the rim
constexpr double kTread = 0.78;   // of the width, flat on the ground
constexpr double kBetween = 2.0;  // em between side and section
constexpr double kLeft = 0.4;
constexpr double kDimensions = 6.6;  // em right of the section
constexpr double kRoomyRim = 3.0;    // em, for a text in it
constexpr double kBelow = 1.9;       // em, the width below the section
constexpr double kWallPieces = 8;

/// The right half of a section from bead to middle of the tread: shares of half the width, and of
/// the height of the wall.
std::vector<Point> halfSection(double half, double rim, double outer) {
  std::vector<Point> points{{kBead * half, rim}};
  const double height = outer - rim;
  for (int i = 1; i < kWallPieces; ++i) {
    const double share = i / kWallPieces;
    const double bulge = 4 * share * (1 - share);
    const double chord = kBead + (kTread - kBead) * share;
    points.push_back({half * (chord + (1 - (kBead + kTread) / 2) * bulge), rim + height * share});
  }
  points.push_back({kTread * half, outer - 0.02 * height});
  points.push_back({0.4 * half, outer});
  return points;
}

/// Of the tyre cut through, upper or lower half.
std::vector<Point> section(const TyreDrawing& drawing, double sign) {
  const double half = drawing.width.si() / 2;
  auto points = halfSection(half, drawing.rimDiameter.si() / 2, drawing.diameter.si() / 2);
  std::vector<Point> whole = points;
  for (const Point& point : std::views::reverse(points)) whole.push_back({-point.x, point.y});
  for (Point& point : whole) point.y *= sign;
  return whole;
}

void drawSide(Figure& figure, const TyreDrawing& drawing, Point centre, double em) {
  const double outer = em * drawing.diameter.si() / 2;
  const double rim = em * drawing.rimDiameter.si() / 2;
  auto ring = figure::arc(centre, outer, 0, 360);
  const auto inner = figure::arc(centre, rim, 360, 0);
  ring.insert(ring.end(), inner.begin(), inner.end());
  Path rubber = figure::outline(std::move(ring), Tone::Material, 0.55);
  rubber.stroke = figure::Stroke::None;
  figure.add(std::move(rubber));
  figure.add(figure::circle(centre, outer, Tone::Ink, 0.18));
  figure.add(figure::circle(centre, rim, Tone::Ink, 0.14));
  const Point from{centre.x - rim, centre.y};
  const Point to{centre.x + rim, centre.y};
  add(figure,
      Dimension{from, to, "rim " + labelText(drawing.rimDiameter, 4), Side::Above, Tone::Quiet});
  const double below = centre.y + outer + 0.7;
  add(figure, Dimension{{centre.x - outer, below},
                        {centre.x + outer, below},
                        "\u00d8 " + labelText(drawing.diameter, 4),
                        Side::Below});
  if (!drawing.least || !drawing.most || rim < kRoomyRim) return;
  const std::array<std::string, 2> lines{"new: " + shortNumber(inMillimetres(*drawing.least), 0),
                                         "to " + millimetresLabel(*drawing.most, 0)};
  for (std::size_t i = 0; i < lines.size(); ++i) {
    figure.add(Text{{centre.x, centre.y + 0.38 * rim + 1.15 * static_cast<double>(i)},
                    lines[i],
                    Side::Centre,
                    Room::Optional,
                    Tone::Quiet,
                    0.8});
  }
}

}  // namespace

Figure tyrePicture(const TyreDrawing& drawing, figure::Size size) {
  Figure figure = newFigure(size, "Tyre", "The tyre from the side and in section, to scale");
  const double diameter = drawing.diameter.si();
  const double width = drawing.width.si();
  const double em = std::min((size.height - 0.8 - kBelow) / diameter,
                             (size.width - kLeft - kBetween - kDimensions) / (diameter + width));
  const double used = kLeft + em * (diameter + width) + kBetween + kDimensions;
  const double left = kLeft + std::max(0.0, (size.width - used) / 2);
  const double middle = (size.height - kBelow) / 2 + 0.2;
  drawSide(figure, drawing, {left + em * diameter / 2, middle}, em);
  const double sectionLeft = left + em * diameter + kBetween;
  const double sectionRight = sectionLeft + em * width;
  const Scale scale(
      {sectionLeft, middle - em * diameter / 2, sectionRight, middle + em * diameter / 2},
      {-width / 2, width / 2}, {-diameter / 2, diameter / 2});
  for (const double sign : {1.0, -1.0}) {
    auto points = section(drawing, sign);
    for (Point& point : points) point = scale.at(point.x, point.y);
    figure.add(figure::outline(std::move(points), Tone::Material, 0.55, 0.14));
  }
  const double top = scale.at(0, diameter / 2).y;
  const double bottom = scale.at(0, -diameter / 2).y;
  const double rim = scale.at(0, drawing.rimDiameter.si() / 2).y;
  const double right = sectionRight + 0.8;
  for (const double y : {top, rim}) {
    figure.add(
        figure::line({sectionRight - 0.15 * em * width, y}, {right + 0.3, y}, Tone::Quiet, 0.06));
  }
  const Length height = (drawing.diameter - drawing.rimDiameter) / 2;
  add(figure, Dimension{{right, top}, {right, rim}, labelText(height, 3), Side::Right});
  add(figure, Dimension{{sectionLeft, bottom + 0.7},
                        {sectionRight, bottom + 0.7},
                        labelText(drawing.width, 4),
                        Side::Below});
  return figure;
}

}  // namespace sw::compute
