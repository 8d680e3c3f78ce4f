// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/bolts/castle_nut_picture.h"

#include <algorithm>
#include <numbers>
#include <string>
#include <utility>

#include "compute/picture_parts.h"
#include "figure/number_line.h"
#include "figure/vectors.h"

namespace sw::compute {

namespace {

using figure::Arrow;
using figure::Box;
using figure::Figure;
using figure::Mark;
using figure::NumberLine;
using figure::Point;
using figure::Range;
using figure::Room;
using figure::Side;
using figure::Text;
using figure::Tone;
using mechanics::CastleAction;
using mechanics::SlotPosition;

constexpr double kSlotShare = 0.34;  // of the radius, depth of a slot
constexpr double kBoltShare = 0.5;
constexpr double kSlotWidth = 0.2;  // of the radius
constexpr double kRim = 1.4;        // em, room of the turn around the nut
constexpr double kWide = 1.3;       // width over height from which the two stand side by side

struct Advice {
  const char* text;
  Verdict verdict;
};

Advice adviceOf(CastleAction action) {
  switch (action) {
    case CastleAction::FitPin:
      return {"fit a new split pin", Verdict::Within};
    case CastleAction::TightenOn:
      return {"tighten on to the next slot", Verdict::Undecided};
    case CastleAction::ChangeWasherOrNut:
      return {"change the washer or the nut", Verdict::Outside};
    case CastleAction::AskUpperLimit:
      return {"find the upper limit first", Verdict::Undecided};
    case CastleAction::BackingOffRefused:
      return {"never back off to a slot", Verdict::Outside};
    case CastleAction::FollowProcedure:
      return {"follow the bearing's procedure", Verdict::NoLimit};
  }
  return {"", Verdict::NoLimit};
}

/// The outline of the nut from above: a circle with slots cut into it.
std::vector<Point> castle(Point centre, double radius, int slots, double first) {
  const double half = std::min(kSlotWidth / 2, 0.3 * std::numbers::pi / slots);
  const double degrees = std::asin(half) * 180 / std::numbers::pi;
  const double inner = std::asin(half / (1 - kSlotShare)) * 180 / std::numbers::pi;
  std::vector<Point> points;
  for (int i = 0; i < slots; ++i) {
    const double at = first + 360.0 * i / slots;
    points.push_back(figure::onCircle(centre, (1 - kSlotShare) * radius, at - inner));
    points.push_back(figure::onCircle(centre, (1 - kSlotShare) * radius, at + inner));
    const auto rim = figure::arc(centre, radius, at + degrees, at + 360.0 / slots - degrees);
    points.insert(points.end(), rim.begin(), rim.end());
  }
  return points;
}

void drawNut(Figure& figure, const CastleDrawing& drawing, const Box& box) {
  const Point centre = box.centre();
  const double radius = std::min(box.width(), box.height()) / 2 - kRim;
  const bool aligned = drawing.nut.slot == SlotPosition::Aligned;
  const double turn = aligned ? 0 : inDegrees(drawing.step.turn) / 2;
  figure.add(
      figure::outline(castle(centre, radius, drawing.slots, -turn), Tone::Material, 0.35, 0.16));
  figure.add(figure::circle(centre, kBoltShare * radius, Tone::Ink, 0.14));
  for (int hole = 0; hole < drawing.crossHoles; ++hole) {
    const double degrees = 180.0 * hole / drawing.crossHoles;
    const auto edges =
        figure::rectangle(centre, {0.7 * kSlotWidth * radius, 1.98 * kBoltShare * radius}, degrees);
    figure.add(figure::dashed(edges[0], edges[3], Tone::Ink, 0.09));
    figure.add(figure::dashed(edges[1], edges[2], Tone::Ink, 0.09));
  }
  if (aligned) {
    const auto pin = figure::rectangle(centre, {0.5 * kSlotWidth * radius, 2.15 * radius});
    figure.add(figure::outline(pin, Tone::Accent, 0.85, 0.05));
    figure.add(Text{{centre.x, centre.y - radius},
                    "slot over the hole",
                    Side::Above,
                    Room::Movable,
                    Tone::Accent,
                    figure::kLabelSize});
    return;
  }
  figure.add(figure::dashed({centre.x, centre.y - kBoltShare * radius},
                            {centre.x, centre.y - radius - 0.3}, Tone::Ink, 0.1));
  add(figure, figure::Turn{centre, radius + 0.6, -turn, 0, Tone::Accent, 0.14});
  figure.add(Text{{centre.x + 0.2, centre.y - radius - 0.3},
                  "a slot every " + degreesLabel(drawing.step.turn, 0),
                  Side::AboveRight,
                  Room::Movable,
                  Tone::Accent,
                  figure::kLabelSize});
}

Range torqueRange(const CastleDrawing& drawing) {
  const auto& limits = drawing.decision.limits;
  Range range{limits.least.si(), limits.most.value_or(limits.least).si()};
  range.include(drawing.nut.reached.si());
  range.widen(0.3, 0.5 * limits.least.si());
  range.low = std::max(0.0, range.low);
  return range;
}

void drawTorque(Figure& figure, const CastleDrawing& drawing, const Box& box) {
  const auto& limits = drawing.decision.limits;
  const NumberLine line(box.left, box.right, torqueRange(drawing));
  const double bottom = box.bottom - figure::kRoomBelowLine;
  const double top = box.top + 1.3;
  line.draw(figure, top, bottom, "torque, N m");
  const Range window{limits.least.si(),
                     limits.most.value_or(Torque::fromSi(line.range().high)).si()};
  figure::Path band = line.bar(window, (top + bottom) / 2, bottom - top, Tone::Limit, 0.12);
  band.stroke = figure::Stroke::None;
  figure.add(std::move(band));
  const auto limit = [&](Torque torque, const char* name, Side side) {
    figure.add(line.upright(torque.si(), top, bottom, Tone::Limit, figure::Stroke::Dashed));
    figure.add(Text{{line.at(torque.si()), top},
                    name + labelText(torque),
                    side,
                    Room::Movable,
                    Tone::Limit,
                    figure::kLabelSize});
  };
  const bool one = limits.most && *limits.most == limits.least;
  limit(limits.least, one ? "just " : "from ", limits.most ? Side::AboveLeft : Side::AboveRight);
  if (limits.most && !one) limit(*limits.most, "to ", Side::AboveRight);
  const Advice advice = adviceOf(drawing.decision.action);
  const double y = top + 0.62 * (bottom - top);
  const Mark mark = verdictMark({line.at(drawing.nut.reached.si()), y}, advice.verdict, 0.55);
  const bool on = drawing.decision.action == CastleAction::TightenOn;
  if (on && limits.most) {
    add(figure, Arrow{{mark.at.x + 0.6, y}, {line.at(limits.most->si()), y}, mark.tone, 0.2});
  }
  figure.add(mark);
  Text text = figure::label(mark, "now " + labelText(drawing.nut.reached), Side::Above);
  text.tone = Tone::Ink;
  text.strong = true;
  figure.add(std::move(text));
}

void drawAdvice(Figure& figure, CastleAction action) {
  const Advice advice = adviceOf(action);
  const Mark sign = verdictMark({1.0, 0.9}, advice.verdict, 0.5);
  figure.add(sign);
  Text headline = figure::label(sign, advice.text, Side::Right, Room::Fixed);
  headline.size = 1.15;
  headline.strong = true;
  figure.add(std::move(headline));
}

}  // namespace

Figure castleNutPicture(const CastleDrawing& drawing, figure::Size size) {
  Figure figure = newFigure(size, "Castellated nut: slots, hole and torque",
                            "The nut from above, and its torque between the limits");
  drawAdvice(figure, drawing.decision.action);
  if (size.width > kWide * size.height) {
    const double cut = 0.42 * size.width;
    drawNut(figure, drawing, {0.3, 1.8, cut, size.height - 0.3});
    drawTorque(figure, drawing, {cut + 0.8, 2.4, size.width - 1.0, size.height - 0.5});
  } else {
    const double cut = 0.62 * size.height;
    drawNut(figure, drawing, {0.3, 1.6, size.width - 0.3, cut});
    drawTorque(figure, drawing, {1.0, cut + 0.2, size.width - 1.0, size.height});
  }
  return figure;
}

}  // namespace sw::compute
