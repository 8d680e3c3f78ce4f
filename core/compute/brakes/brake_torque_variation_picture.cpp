// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/brakes/brake_torque_variation_picture.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "compute/verdict_mark.h"
#include "figure/axes.h"
#include "figure/drawing.h"

namespace sw::compute {

namespace {

using figure::Axes;
using figure::Figure;
using figure::Point;
using figure::Room;
using figure::Side;
using figure::Text;
using figure::Tone;

constexpr double kStrip = 4.4;  // em, for the disc above the torque
constexpr double kDiscMiddle = 3.0;
constexpr double kThick = 1.1;  // half, at a thick place
constexpr double kThin = 0.4;
constexpr double kAir = 1.2;  // of the torque, to the ends of its axis
constexpr double kBeyond = 400;
constexpr double kRangeAt = 382;
constexpr int kPieces = 40;  // of one wave

double wave(double degrees, int order) {
  // The first thick place a quarter of a wave from the start, so that it stands free.
  return std::sin(order * degrees * std::numbers::pi / 180);
}

/// The disc unrolled: both faces swell at a thick place.
void drawDisc(Figure& figure, const Axes& axes, const TorqueVariationShown& shown) {
  std::vector<Point> faces;
  const int pieces = kPieces * shown.order;
  const bool even = shown.thicknessVariation.si() <= 0;
  const auto half = [&](int i) {
    const double share = even ? 0.5 : 0.5 * (1 + wave(360.0 * i / pieces, shown.order));
    return kThin + share * (kThick - kThin);
  };
  const auto x = [&](int i) { return axes.at(360.0 * i / pieces, 0).x; };
  for (int i = 0; i <= pieces; ++i) faces.push_back({x(i), kDiscMiddle - half(i)});
  for (int i = pieces; i >= 0; --i) faces.push_back({x(i), kDiscMiddle + half(i)});
  figure.add(figure::outline(std::move(faces), Tone::Material, 0.3));
  const double crest = (90.0 + 360.0 * (shown.order - 1)) / shown.order;
  figure.add(Text{{axes.at(crest, 0).x, kDiscMiddle},
                  "+" + figureWords(shown.thicknessVariation.si(), QuantityKind::Length),
                  Side::Centre,
                  Room::Movable,
                  Tone::Ink,
                  0.85});
}

/// Where a thick place meets the torque it makes.
void drawGuides(Figure& figure, const Axes& axes, int order, double corner) {
  constexpr int kMostGuides = 8;
  if (order > kMostGuides) return;
  for (int k = 0; k < order; ++k) {
    const double place = (90.0 + 360.0 * k) / order;
    const Point crest = axes.at(place, axes.y().high);
    figure.add(figure::dashed({crest.x, kDiscMiddle + kThick},
                              {crest.x, corner + axes.at(0, axes.y().high / kAir).y}, Tone::Accent,
                              0.08));
  }
}

Figure torqueFigure(const Axes& axes, const TorqueVariationShown& shown, figure::Size size) {
  Figure figure;
  figure.size = size;
  const double half = 0.5 * shown.variation.torque.si();
  axes.draw(figure, {.title = "turn of the disc, deg", .decimals = 0, .step = 90},
            {.title = "torque about its mean, N m"});
  std::vector<Point> points;
  const int pieces = kPieces * shown.order;
  for (int i = 0; i <= pieces; ++i) {
    const double place = 360.0 * i / pieces;
    points.push_back({place, half * wave(place, shown.order)});
  }
  figure.add(axes.line(points, Tone::Ink));
  add(figure, figure::Dimension{.from = axes.at(kRangeAt, -half),
                                .to = axes.at(kRangeAt, half),
                                .tone = Tone::Accent,
                                .ends = figure::DimensionEnds::Stroked});
  return figure;
}

}  // namespace

Figure torqueVariationPicture(const TorqueVariationShown& shown, figure::Size size) {
  Figure figure;
  figure.size = size;
  figure.title = "Brake torque over one turn of the disc";
  figure.description =
      "Thickness varies by " + figureWords(shown.thicknessVariation.si(), QuantityKind::Length) +
      ", brake torque by " + figureWords(shown.variation.torque.si(), QuantityKind::Torque) +
      " peak to peak";
  const double torque = shown.variation.torque.si();
  const double half = torque > 0 ? 0.5 * torque : 1.0;
  const figure::Size part{size.width, size.height - kStrip};
  const Axes axes(part, {0, kBeyond}, {-kAir * half, kAir * half});
  drawGuides(figure, axes, shown.order, kStrip);
  drawDisc(figure, axes, shown);
  figure::place(figure, torqueFigure(axes, shown, part), {0, kStrip});
  std::string words = "swings by " + figureWords(shown.variation.torque.si(), QuantityKind::Torque);
  if (shown.frequency) {
    words += ", " + figureWords(shown.frequency->si(), QuantityKind::Frequency);
  }
  figure::headline(figure, words);
  figure.add(Text{{0.2, 0.85}, "disc", Side::Right, Room::Movable, Tone::Quiet, 0.85});
  return figure;
}

}  // namespace sw::compute
