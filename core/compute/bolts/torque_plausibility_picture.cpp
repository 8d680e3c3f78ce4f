// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/bolts/torque_plausibility_picture.h"

#include <algorithm>
#include <array>

#include "compute/picture_parts.h"
#include "figure/number_line.h"
#include "figure/vectors.h"

namespace sw::compute {

namespace {

using figure::Figure;
using figure::Mark;
using figure::MarkShape;
using figure::NumberLine;
using figure::Point;
using figure::Range;
using figure::Room;
using figure::Side;
using figure::Text;
using figure::Tone;
using mechanics::TorquePlausibility;

constexpr double kLowUtilisation = 0.2;  // as the calculation has it
constexpr double kStrip = 0.08;          // of the height
constexpr double kStep = 1.35;           // em, least between two lanes
constexpr double kWidest = 4.5;
constexpr double kLine = 0.8;  // em from either edge
constexpr double kMark = 0.6;

/// A stretch of torques that are judged alike.
struct Zone {
  Range torques;
  Tone tone = Tone::Doubt;
  double fill = 0;
};

/// The bounds, from what the torque claimed makes of the bolt.
std::array<Zone, 5> zonesOf(double torque, const TorquePlausibility& judged, const Range& all) {
  const double low = torque * kLowUtilisation / judged.atLeastFriction;
  const double note = torque / judged.atLeastFriction;
  const double check = torque / judged.atMiddleFriction;
  const double impossible = torque / judged.atGreatestFriction;
  return {Zone{{all.low, low}, Tone::Doubt, 0.25}, Zone{{low, note}, Tone::Good, 0.55},
          Zone{{note, check}, Tone::Doubt, 0.25}, Zone{{check, impossible}, Tone::Doubt, 0.5},
          Zone{{impossible, all.high}, Tone::Bad, 0.75}};
}

Range torqueRange(double torque, const TorquePlausibility& judged) {
  Range range{0.5 * torque * kLowUtilisation / judged.atLeastFriction,
              2.0 * torque / judged.atGreatestFriction};
  range.include(0.7 * torque);
  range.include(1.4 * torque);
  return range;
}

struct Strip {
  double top = 0;
  double bottom = 0;
};

/// The strip, and below it how far the believable reaches.
void drawZones(Figure& figure, const NumberLine& line, const std::array<Zone, 5>& zones,
               const Strip& strip, double bottom) {
  const double middle = (strip.top + strip.bottom) / 2;
  figure::Path reach = line.bar(zones[1].torques, (strip.bottom + bottom) / 2,
                                bottom - strip.bottom, Tone::Good, 0.1);
  reach.stroke = figure::Stroke::None;
  figure.add(std::move(reach));
  for (const Zone& zone : zones) {
    figure.add(line.bar(zone.torques, middle, strip.bottom - strip.top, zone.tone, zone.fill));
  }
  const auto name = [&](double x, const char* text, Side side, Tone tone, Room room) {
    figure.add(Text{{x, strip.top}, text, side, room, tone, figure::kLabelSize});
  };
  const Range& believable = zones[1].torques;
  name((line.at(believable.low) + line.at(believable.high)) / 2, "believable", Side::Above,
       Tone::Good, Room::Movable);
  name(line.left(), "too little", Side::AboveRight, Tone::Doubt, Room::Optional);
  name(line.right(), "too much", Side::AboveLeft, Tone::Bad, Room::Optional);
}

const char* phrase(const TorquePlausibility& judged) {
  using mechanics::TorqueVerdict;
  switch (judged.exemptFrom.value_or(judged.verdict)) {
    case TorqueVerdict::Impossible:
      return "yields at any friction";
    case TorqueVerdict::Check:
      return "yields at usual friction";
    case TorqueVerdict::Note:
      return "yields if slippery";
    case TorqueVerdict::SuspiciouslyLow:
      return "hardly clamps";
    case TorqueVerdict::Plausible:
    case TorqueVerdict::Exempt:
      return "";
  }
  return "";
}

Mark verdictMarkOf(Point at, mechanics::TorqueVerdict verdict) {
  using mechanics::TorqueVerdict;
  switch (verdict) {
    case TorqueVerdict::Plausible:
      return verdictMark(at, Verdict::Within, kMark);
    case TorqueVerdict::Impossible:
      return verdictMark(at, Verdict::Outside, kMark);
    case TorqueVerdict::Note:
    case TorqueVerdict::Check:
    case TorqueVerdict::SuspiciouslyLow:
      return verdictMark(at, Verdict::Undecided, kMark);
    case TorqueVerdict::Exempt:
      return verdictMark(at, Verdict::NoLimit, kMark);
  }
  return verdictMark(at, Verdict::NoLimit, kMark);
}

/// One lane each, as many as there is room for.
void drawReadings(Figure& figure, const NumberLine& line, const TorquePlausibility& judged,
                  double top, double bottom) {
  const double lanes = static_cast<double>(judged.readings.size()) + 0.5;
  const double step = std::clamp((bottom - top) / lanes, kStep, kWidest);
  double height = top + step / 2;
  for (const auto& reading : judged.readings) {
    if (height + kStep / 2 > bottom) return;
    const Mark mark{{line.at(reading.torque.si), height}, MarkShape::Ring, Tone::Accent, 0.35};
    figure.add(mark);
    const char* as = reading.as == mechanics::Rereading::DecimalSlip ? "decimal point: " : "unit: ";
    figure.add(figure::label(mark, as + reading.torque.text() + "?",
                             line.roomySide(reading.torque.si), Room::Fixed));
    height += step;
  }
}

}  // namespace

Figure torquePlausibilityPicture(const mechanics::TorqueClaim& claim,
                                 const TorquePlausibility& judged, figure::Size size) {
  Figure figure =
      newFigure(size, "Torque for " + claim.thread.name + " between too little and too much",
                "The torque as typed, and what it could mean instead");
  const double torque = claim.torque.si;
  const Range range = torqueRange(torque, judged);
  const NumberLine line(kLine, size.width - kLine, range, figure::Spacing::Ratio);
  const auto zones = zonesOf(torque, judged, range);
  const double bottom = size.height - figure::kRoomBelowLine;
  const Strip strip{1.6, 1.6 + kStrip * size.height};
  line.draw(figure, strip.bottom, bottom, "tightening torque, N m");
  drawZones(figure, line, zones, strip, bottom);
  const double gap = std::min(0.5, 0.025 * size.height);
  const Mark mark =
      verdictMarkOf({line.at(torque), strip.bottom + gap + 2 * kMark}, judged.verdict);
  figure.add(figure::line({mark.at.x, strip.top - 0.2}, mark.at, Tone::Ink, 0.2));
  figure.add(mark);
  Text typed =
      figure::label(mark, "typed: " + claim.torque.text(), line.roomySide(torque), Room::Fixed);
  typed.tone = Tone::Ink;
  typed.size = 1.1;
  typed.strong = true;
  figure.add(typed);
  const std::string meaning = phrase(judged);
  const double below = mark.at.y + 1.35;
  if (!meaning.empty()) {
    figure.add(Text{{typed.at.x, below}, meaning, typed.side, Room::Fixed, mark.tone, 1.0});
  }
  drawReadings(figure, line, judged, below + (meaning.empty() ? -0.6 : 0.6), bottom);
  return figure;
}

}  // namespace sw::compute
