// SPDX-License-Identifier: GPL-3.0-or-later
#include "figure/figure.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <utility>

namespace sw::figure {

namespace {

constexpr int kArcPieces = 96;  // of a whole turn

}  // namespace

Colour printColour(Tone tone) {
  switch (tone) {
    case Tone::Ink:
      return {0x16, 0x19, 0x1d};
    case Tone::Quiet:
      return {0x4c, 0x53, 0x5b};
    case Tone::Grid:
      return {0xd5, 0xd9, 0xde};
    case Tone::Accent:
      return {0x3b, 0x5b, 0x92};
    case Tone::Limit:
      return {0x7a, 0x3e, 0x00};
    case Tone::Good:
      return {0x1b, 0x6e, 0x8c};
    case Tone::Doubt:
      return {0x8a, 0x5a, 0x00};
    case Tone::Bad:
      return {0xa3, 0x24, 0x3b};
    case Tone::Second:
      return {0x6a, 0x4c, 0x93};
    case Tone::Material:
      return {0x8b, 0x92, 0x9a};
  }
  return {};
}

Way wayTo(Side side) {
  switch (side) {
    case Side::Centre:
      return {0, 0};
    case Side::Right:
      return {1, 0};
    case Side::Left:
      return {-1, 0};
    case Side::Above:
      return {0, -1};
    case Side::Below:
      return {0, 1};
    case Side::AboveRight:
      return {1, -1};
    case Side::AboveLeft:
      return {-1, -1};
    case Side::BelowRight:
      return {1, 1};
    case Side::BelowLeft:
      return {-1, 1};
  }
  return {};
}

// Made in place and out of line: inlined moves of the variant make g++ 12 warn of members that were
// never set.

void Figure::add(Path path) {
  items.emplace_back(std::in_place_type<Path>, std::move(path));
}

void Figure::add(const Mark& mark) {
  items.emplace_back(std::in_place_type<Mark>, mark);
}

void Figure::add(Text text) {
  items.emplace_back(std::in_place_type<Text>, std::move(text));
}

void Figure::add(Item item) {
  std::visit([this](auto& each) { add(std::move(each)); }, item);
}

Point onCircle(Point centre, double radius, double degrees) {
  const double angle = degrees * std::numbers::pi / 180.0;
  return {centre.x + radius * std::sin(angle), centre.y - radius * std::cos(angle)};
}

std::vector<Point> arc(Point centre, double radius, double fromDegrees, double toDegrees) {
  const double share = std::abs(toDegrees - fromDegrees) / 360.0;
  const int pieces = std::max(2, static_cast<int>(std::ceil(kArcPieces * share)));
  std::vector<Point> points;
  for (int i = 0; i <= pieces; ++i) {
    points.push_back(
        onCircle(centre, radius, fromDegrees + (toDegrees - fromDegrees) * i / pieces));
  }
  return points;
}

std::vector<std::vector<Point>> markOutlines(const Mark& mark) {
  const auto [x, y] = mark.at;
  const double r = mark.radius;
  switch (mark.shape) {
    case MarkShape::Square: {
      const double h = 0.85 * r;
      return {{{x - h, y - h}, {x + h, y - h}, {x + h, y + h}, {x - h, y + h}}};
    }
    case MarkShape::Diamond:
      return {{{x, y - r}, {x + r, y}, {x, y + r}, {x - r, y}}};
    case MarkShape::Triangle:
      return {{{x, y - r}, {x + 0.87 * r, y + 0.5 * r}, {x - 0.87 * r, y + 0.5 * r}}};
    case MarkShape::Cross: {
      const double h = 0.75 * r;
      return {{{x - h, y - h}, {x + h, y + h}}, {{x - h, y + h}, {x + h, y - h}}};
    }
    case MarkShape::Disc:
    case MarkShape::Ring:
      return {arc(mark.at, r, 0, 360)};
  }
  return {};
}

}  // namespace sw::figure
