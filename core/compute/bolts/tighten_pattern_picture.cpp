// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/bolts/tighten_pattern_picture.h"

#include <algorithm>
#include <numbers>
#include <string>

#include "compute/picture_parts.h"
#include "figure/vectors.h"

namespace sw::compute {

namespace {

using figure::Arrow;
using figure::Box;
using figure::Figure;
using figure::Point;
using figure::Room;
using figure::Side;
using figure::Text;
using figure::Tone;
using mechanics::RoundPurpose;
using mechanics::TighteningRound;

constexpr double kRoundsWidth = 11;    // em
constexpr double kRowHeight = 1.45;    // em, least
constexpr double kRoomyRow = 2.6;      // em, most
constexpr double kOwnNumber = 1.3;     // em, room of the own number of a fastener above it
constexpr double kBesideNumber = 2.6;  // and beside it
constexpr double kNarrow = 28;         // em; the rounds go below the circle
constexpr double kLargestNut = 1.7;    // em, radius

/// The flange, its fasteners and the way from one to the next.
struct Ring {
  Point centre;
  double radius = 0;
  double nut = 0;
  int count = 0;

  [[nodiscard]] Point at(int fastener) const {
    return figure::onCircle(centre, radius, 360.0 * (fastener - 1) / count);
  }
};

Ring ringIn(const Box& box, int count) {
  const double outer = std::min(box.width() / 2 - kBesideNumber, box.height() / 2 - kOwnNumber);
  const double apart = count > 1 ? 2 * std::sin(std::numbers::pi / count) : 2.0;
  Ring ring{box.centre(), 0, 0, count};
  ring.nut = std::min({kLargestNut, 0.16 * outer, 0.4 * apart * 0.85 * outer});
  ring.nut = std::max(ring.nut, 0.9);
  ring.radius = outer - ring.nut;
  return ring;
}

std::vector<Point> hexagon(Point centre, double radius) {
  std::vector<Point> points;
  for (int i = 0; i < 6; ++i) points.push_back(figure::onCircle(centre, radius, 60.0 * i));
  return points;
}

/// Clear of the fastener whichever side of the circle it is on.
Point ownNumberAt(const Ring& ring, int fastener) {
  const Point way = figure::onCircle({0, 0}, 1.0, 360.0 * (fastener - 1) / ring.count);
  const Point at = ring.at(fastener);
  return {at.x + way.x * (ring.nut + 1.4), at.y + way.y * (ring.nut + 0.65)};
}

/// Between the fasteners, so that their numbers stand on nothing.
void drawCircle(Figure& figure, const Ring& ring) {
  const double clear = (ring.nut + 0.3) / ring.radius * 180 / std::numbers::pi;
  const double each = 360.0 / ring.count;
  for (int i = 0; i < ring.count; ++i) {
    if (each <= 2 * clear) return;
    figure::Path path = figure::line({}, {}, Tone::Grid, 0.3);
    path.points = figure::arc(ring.centre, ring.radius, i * each + clear, (i + 1) * each - clear);
    figure.add(std::move(path));
  }
}

void drawWay(Figure& figure, const Ring& ring, const std::vector<int>& order) {
  for (std::size_t i = 0; i + 1 < order.size(); ++i) {
    const Point from = ring.at(order[i]);
    const Point to = ring.at(order[i + 1]);
    const double length = figure::distance(from, to);
    const double clear = (ring.nut + 0.2) / length;
    if (clear >= 0.5) continue;
    add(figure, Arrow{figure::between(from, to, clear), figure::between(to, from, clear),
                      Tone::Accent, 0.12});
  }
}

void drawFasteners(Figure& figure, const Ring& ring, const std::vector<int>& order) {
  const double text = std::clamp(1.1 * ring.nut, 1.0, 1.7);
  for (std::size_t i = 0; i < order.size(); ++i) {
    const Point at = ring.at(order[i]);
    const bool first = i == 0;
    figure.add(figure::outline(hexagon(at, ring.nut), first ? Tone::Accent : Tone::Ink, 0,
                               first ? 0.3 : 0.14));
    figure.add(Text{at, std::to_string(i + 1), Side::Centre, Room::Fixed, Tone::Ink, text, true});
    figure.add(Text{ownNumberAt(ring, order[i]), "no. " + std::to_string(order[i]), Side::Centre,
                    Room::Optional, Tone::Quiet, 0.75});
  }
}

std::string roundText(const TighteningRound& round, std::size_t number) {
  if (round.purpose == RoundPurpose::Confirm) return "once more, " + labelText(round.torque);
  return "round " + std::to_string(number) + ": " + labelText(round.torque);
}

/// "48 N m, 96 N m, once more 96 N m", the first left out where they are many.
std::string roundsInOneLine(const std::vector<TighteningRound>& rounds) {
  constexpr std::size_t kMost = 3;
  std::string text = rounds.size() > kMost ? std::to_string(rounds.size()) + " rounds: ... " : "";
  for (std::size_t i = rounds.size() > kMost ? rounds.size() - 2 : 0; i < rounds.size(); ++i) {
    if (rounds[i].purpose == RoundPurpose::Confirm)
      text += ", once more ";
    else if (i > 0 && rounds.size() <= kMost)
      text += ", ";
    text += labelText(rounds[i].torque);
  }
  return text;
}

/// The rounds as bars as long as their torque; the last ones where there is no room for all.
void drawRounds(Figure& figure, const Box& box, const std::vector<TighteningRound>& rounds) {
  const auto fits = static_cast<std::size_t>(box.height() / (kRowHeight + 0.75));
  const std::size_t shown = std::min(rounds.size(), std::max<std::size_t>(fits, 1));
  const double row = std::min(kRoomyRow, box.height() / static_cast<double>(shown));
  double top = box.centre().y - row * static_cast<double>(shown) / 2;
  for (std::size_t i = rounds.size() - shown; i < rounds.size(); ++i) {
    const TighteningRound& round = rounds[i];
    const bool confirm = round.purpose == RoundPurpose::Confirm;
    const double right = box.left + round.share * box.width();
    figure.add(Text{{box.left, top + 0.6},
                    roundText(round, i + 1),
                    Side::Right,
                    Room::Fixed,
                    confirm ? Tone::Quiet : Tone::Ink,
                    figure::kLabelSize,
                    !confirm});
    const double y = top + 1.35;
    figure.add(figure::outline(
        {{box.left + 0.25, y}, {right, y}, {right, y + 0.5}, {box.left + 0.25, y + 0.5}},
        confirm ? Tone::Quiet : Tone::Accent, confirm ? 0.0 : 0.5, 0.08));
    top += row;
  }
}

}  // namespace

Figure tightenPatternPicture(const std::vector<int>& order,
                             const std::vector<TighteningRound>& rounds, figure::Size size) {
  Figure figure = newFigure(size, "Order of tightening",
                            "The circle of fasteners, each with its place in the order");
  const bool below = size.width < kNarrow && !rounds.empty();
  const double rounded = rounds.empty() || below ? 0 : kRoundsWidth;
  // Circle and rounds side by side, and both in the middle.
  const double ringWidth =
      std::min(size.width - rounded - 1, size.height + 2 * (kBesideNumber - kOwnNumber));
  const double left = (size.width - ringWidth - rounded) / 2;
  const Ring ring = ringIn({left, 0.2, left + ringWidth, size.height - (below ? 2.0 : 0.2)},
                           static_cast<int>(order.size()));
  drawCircle(figure, ring);
  drawWay(figure, ring, order);
  drawFasteners(figure, ring, order);
  if (below) {
    figure.add(Text{{size.width / 2, size.height - 0.2},
                    roundsInOneLine(rounds),
                    Side::Above,
                    Room::Fixed,
                    Tone::Ink,
                    figure::kLabelSize,
                    true});
  } else if (!rounds.empty()) {
    drawRounds(figure,
               {left + ringWidth + 0.8, 0.5, left + ringWidth + rounded - 0.4, size.height - 0.5},
               rounds);
  }
  return figure;
}

}  // namespace sw::compute
