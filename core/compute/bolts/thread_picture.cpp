// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/bolts/thread_picture.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <ranges>

#include "compute/picture_parts.h"
#include "figure/vectors.h"

namespace sw::compute {

namespace {

using figure::Box;
using figure::Dimension;
using figure::Figure;
using figure::Point;
using figure::Room;
using figure::Side;
using figure::Text;
using figure::Tone;

// Of the basic profile of ISO 68-1 and ASME B1.1, in pitches.
constexpr double kCrestHalf = 1.0 / 16;
constexpr double kSharpRoot = (0.5 - kCrestHalf) * std::numbers::sqrt3;  // below the crest

constexpr double kLabels = 12.4;      // em, room of the diameters
constexpr double kApartLabels = 1.4;  // em
constexpr double kBody = 0.25;        // pitches of solid metal shown beyond the thread
constexpr double kFewestPitches = 1.4;

/// One bolt thread about its crest at 0, depth below the crest, both in pitches: root to root.
std::vector<Point> boltThread(double depth) {
  const double radius = kSharpRoot - depth;
  const Point centre{-0.5, kSharpRoot - 2 * radius};
  std::vector<Point> half;
  for (int degrees = 0; degrees <= 60; degrees += 10) {
    const double angle = degrees * std::numbers::pi / 180;
    half.push_back({centre.x + radius * std::sin(angle), centre.y + radius * std::cos(angle)});
  }
  half.push_back({-kCrestHalf, 0});
  std::vector<Point> points = half;
  for (const Point& point : std::views::reverse(half)) points.push_back({-point.x, point.y});
  return points;
}

/// The nut about the same crest; it meets the bolt but for its bore.
std::vector<Point> nutThread(double bore) {
  const double flank = kCrestHalf + bore / std::numbers::sqrt3;
  return {{-0.5, bore},    {-flank, bore}, {-kCrestHalf, 0},
          {kCrestHalf, 0}, {flank, bore},  {0.5, bore}};
}

struct Section {
  Box box;
  double crest = 0;  ///< em from the top
  double pitch = 1;  ///< em
};

/// Threads side by side, cut off at the edges of the section.
std::vector<Point> row(const Section& section, const std::vector<Point>& thread) {
  const double middle = section.box.centre().x;
  const int each = static_cast<int>(std::ceil(section.box.width() / section.pitch / 2)) + 1;
  std::vector<Point> points;
  for (int i = -each; i <= each; ++i) {
    for (const Point& point : thread) {
      points.push_back(
          {middle + (i + point.x) * section.pitch, section.crest + point.y * section.pitch});
    }
  }
  std::vector<Point> cut;
  for (std::size_t i = 0; i + 1 < points.size(); ++i) {
    for (const double edge : {section.box.left, section.box.right}) {
      const Point& a = points[i];
      const Point& b = points[i + 1];
      if ((a.x - edge) * (b.x - edge) < 0) {
        cut.push_back(figure::between(a, b, (edge - a.x) / (b.x - a.x)));
      }
    }
    if (points[i + 1].x >= section.box.left && points[i + 1].x <= section.box.right) {
      cut.push_back(points[i + 1]);
    }
  }
  return cut;
}

void drawBodies(Figure& figure, const Section& section, double depth, double bore) {
  std::vector<Point> nut = row(section, nutThread(bore));
  figure::Path nutEdge = figure::line({}, {}, Tone::Quiet, 0.12);
  nutEdge.points = nut;
  nut.push_back({section.box.right, section.box.top});
  nut.push_back({section.box.left, section.box.top});
  figure::Path nutBody = figure::outline(std::move(nut), Tone::Material, 0.22);
  nutBody.stroke = figure::Stroke::None;
  figure.add(std::move(nutBody));
  figure.add(std::move(nutEdge));
  std::vector<Point> bolt = row(section, boltThread(depth));
  figure::Path boltEdge = figure::line({}, {}, Tone::Ink, 0.18);
  boltEdge.points = bolt;
  bolt.push_back({section.box.right, section.box.bottom});
  bolt.push_back({section.box.left, section.box.bottom});
  figure::Path boltBody = figure::outline(std::move(bolt), Tone::Material, 0.6);
  boltBody.stroke = figure::Stroke::None;
  figure.add(std::move(boltBody));
  figure.add(std::move(boltEdge));
}

struct Level {
  double height = 0;  ///< em from the top
  std::string text;
  Tone tone = Tone::Ink;
};

/// The diameters beside the section, apart from one another, each led to its height.
void drawLevels(Figure& figure, const Section& section, const std::array<Level, 4>& levels) {
  double last = section.box.top - kApartLabels;
  for (const Level& level : levels) {
    last = std::max(level.height, last + kApartLabels);
    const double right = section.box.right;
    figure.add(
        figure::dashed({section.box.left, level.height}, {right, level.height}, level.tone, 0.08));
    figure.add(figure::line({right, level.height}, {right + 0.9, last}, level.tone, 0.08));
    figure.add(Text{
        {right + 0.8, last}, level.text, Side::Right, Room::Fixed, level.tone, figure::kLabelSize});
  }
}

}  // namespace

Figure threadPicture(const mechanics::Thread& thread, const mechanics::ThreadGeometry& geometry,
                     figure::Size size) {
  Figure figure = newFigure(size, "Thread of " + thread.name + " in section",
                            "Bolt and nut in section with nominal, pitch and root diameter and the "
                            "bore of the nut");
  const double pitch = thread.pitch.si();
  const auto below = [&](Length diameter) {
    return (thread.diameter.si() - diameter.si()) / 2 / pitch;
  };
  const double depth = below(geometry.root);
  Section section{{0.5, 0.5, size.width - kLabels, size.height - 0.5}, 0, 1};
  section.pitch = std::min(section.box.width() / kFewestPitches,
                           (section.box.height() - 3.2) / (depth + 2 * kBody));
  section.crest = section.box.centre().y - section.pitch * depth / 2 + 0.6;
  drawBodies(figure, section, depth, below(geometry.nutMinor));
  const auto level = [&](Length diameter, const char* name, Tone tone) {
    return Level{section.crest + below(diameter) * section.pitch,
                 "\u00d8 " + labelText(diameter, 4) + " " + name, tone};
  };
  drawLevels(figure, section,
             {level(thread.diameter, "nominal", Tone::Ink),
              level(geometry.pitchDiameter, "pitch", Tone::Quiet),
              level(geometry.nutMinor, "bore of nut", Tone::Second),
              level(geometry.root, "root", Tone::Accent)});
  const double middle = section.box.centre().x;
  const double above = section.crest - 0.8;
  add(figure, Dimension{{middle - section.pitch / 2, above},
                        {middle + section.pitch / 2, above},
                        "pitch " + shortNumber(inMillimetres(thread.pitch), 3) + " mm",
                        Side::Above});
  figure.add(Text{{section.box.left + 0.3, section.box.top + 0.2},
                  "nut",
                  Side::BelowRight,
                  Room::Fixed,
                  Tone::Quiet,
                  figure::kLabelSize});
  figure.add(Text{{section.box.left + 0.3, section.box.bottom - 0.2},
                  "bolt " + thread.name,
                  Side::AboveRight,
                  Room::Fixed,
                  Tone::Ink,
                  figure::kLabelSize,
                  true});
  return figure;
}

}  // namespace sw::compute
