// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/bolts/wheel_nut_recheck_picture.h"

#include <algorithm>
#include <string>

#include "compute/picture_parts.h"
#include "figure/number_line.h"
#include "figure/vectors.h"

namespace sw::compute {

namespace {

using figure::Figure;
using figure::Mark;
using figure::MarkShape;
using figure::NumberLine;
using figure::Range;
using figure::Room;
using figure::Side;
using figure::Text;
using figure::Tone;
using mechanics::RecheckState;
using mechanics::WheelNutRecheck;
using mechanics::WheelNutsFitted;

constexpr double kMostBeyond = 1.6;  // of the last check, that is shown
constexpr double kEnd = 1.2;         // em from either edge
constexpr double kNowRoom = 2.4;     // em, the lane of the vehicle
constexpr double kBarShare = 0.3;    // of a lane
constexpr double kEndText = 0.85;

std::string onOdometer(Length length, const Unit& unit) {
  return fixedDecimal(length.si() / unit.toSi, 0) + " " + std::string(unit.symbol);
}

struct Look {
  Tone tone = Tone::Accent;
  double fill = 0.3;
  const char* word = "";
};

Look lookOf(const std::optional<RecheckState>& state) {
  if (!state) return {Tone::Accent, 0.3, ""};
  switch (*state) {
    case RecheckState::NotYet:
      return {Tone::Quiet, 0.15, "not yet"};
    case RecheckState::Due:
      return {Tone::Accent, 0.6, "due now"};
    case RecheckState::Passed:
      return {Tone::Bad, 0.6, "passed"};
  }
  return {};
}

struct Lane {
  double top = 0;
  double height = 0;
};

void drawCheck(Figure& figure, const NumberLine& line, const WheelNutRecheck& check,
               const std::string& name, const Unit& unit, const Lane& lane) {
  const Look look = lookOf(check.state);
  const Range way{check.after.si() / unit.toSi, check.by.si() / unit.toSi};
  const double height = std::clamp(kBarShare * lane.height, 0.8, 2.0);
  const double middle = lane.top + lane.height / 2 + 0.2;
  figure.add(line.bar(way, middle, height, look.tone, look.fill));
  const double left = line.at(way.low);
  const double right = line.at(way.high);
  const std::string word = look.word;
  figure.add(Text{{(left + right) / 2, middle - height / 2 - 0.1},
                  word.empty() ? name : name + ": " + word,
                  Side::Above,
                  Room::Movable,
                  look.tone,
                  1.0,
                  true});
  figure.add(Text{{left - 0.1, middle},
                  onOdometer(check.afterReading, unit),
                  Side::Left,
                  Room::Movable,
                  Tone::Ink,
                  kEndText});
  figure.add(Text{{right + 0.1, middle},
                  onOdometer(check.byReading, unit),
                  Side::Right,
                  Room::Movable,
                  Tone::Ink,
                  kEndText});
}

void drawNow(Figure& figure, const NumberLine& line, const WheelNutsFitted& fitted,
             const Unit& unit, const Lane& lane) {
  if (!fitted.odometerNow) return;
  const double since = (*fitted.odometerNow - fitted.odometer).si() / unit.toSi;
  figure::Path way = line.upright(since, lane.top + 1.2, lane.top + lane.height, Tone::Ink,
                                  figure::Stroke::Dashed);
  way.width = 0.09;
  figure.add(std::move(way));
  const Mark mark{{line.at(since), lane.top + 0.9}, MarkShape::Triangle, Tone::Ink, 0.5};
  figure.add(mark);
  Text text = figure::label(mark, "now " + onOdometer(*fitted.odometerNow, unit),
                            line.roomySide(since), Room::Fixed);
  text.strong = true;
  figure.add(std::move(text));
}

}  // namespace

Figure wheelNutRecheckPicture(const WheelNutsFitted& fitted,
                              const std::vector<WheelNutRecheck>& rechecks, const Unit& unit,
                              figure::Size size) {
  Figure figure = newFigure(size, "When the wheel nuts are checked again",
                            "The checks along the way since the wheel was fitted");
  Range range{0, 0};
  for (const auto& check : rechecks) range.include(check.by.si() / unit.toSi);
  if (fitted.odometerNow) {
    const double since = (*fitted.odometerNow - fitted.odometer).si() / unit.toSi;
    range.include(std::min(since, kMostBeyond * range.high));
  }
  range.high *= 1.18;
  const NumberLine line(kEnd, size.width - kEnd, range);
  const double bottom = size.height - figure::kRoomBelowLine;
  line.draw(figure, kNowRoom, bottom, std::string(unit.symbol) + " since the wheel was fitted");
  figure.add(line.upright(0, kNowRoom, bottom, Tone::Quiet));
  drawNow(figure, line, fitted, unit, {0.1, bottom - 0.1});
  const double height = (bottom - kNowRoom) / static_cast<double>(rechecks.size());
  double top = kNowRoom;
  for (std::size_t i = 0; i < rechecks.size(); ++i) {
    const std::string name = rechecks.size() > 1 ? "check " + std::to_string(i + 1) : "check";
    drawCheck(figure, line, rechecks[i], name, unit, {top, height});
    top += height;
  }
  return figure;
}

}  // namespace sw::compute
