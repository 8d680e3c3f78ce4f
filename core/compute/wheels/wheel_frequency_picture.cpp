// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/wheels/wheel_frequency_picture.h"

#include <algorithm>
#include <string>
#include <utility>

#include "compute/picture_parts.h"
#include "figure/axes.h"
#include "figure/vectors.h"

namespace sw::compute {

namespace {

using figure::Axes;
using figure::AxisText;
using figure::Figure;
using figure::Mark;
using figure::MarkShape;
using figure::Point;
using figure::Range;
using figure::Room;
using figure::Side;
using figure::Text;
using figure::Tone;

constexpr int kPieces = 24;
constexpr double kLeastTop = 120;  // km/h
constexpr double kHighest = 299;   // km/h, to which the growth is known
constexpr double kCoverage = 2;
constexpr std::size_t kFewValues = 2;  // so many have their label for sure

struct Line {
  double multiple = 1;
  std::string name;
  Tone tone = Tone::Accent;
};

std::vector<Line> linesOf(const FrequencyDrawing& drawing) {
  std::vector<Line> lines;
  for (int order = 1; order <= drawing.orders; ++order) {
    const std::string name = order == 1 ? "wheel" : std::to_string(order) + " x wheel";
    lines.push_back({static_cast<double>(order), name, Tone::Accent});
  }
  if (drawing.finalDrive) lines.push_back({*drawing.finalDrive, "prop shaft", Tone::Second});
  return lines;
}

double frequencyAt(const FrequencyDrawing& drawing, double speed, double multiple) {
  const Speed driven = kilometresPerHour(speed);
  double circumference = drawing.rolling.circumference.si();
  if (drawing.growth == SpeedGrowth::Linear) {
    const auto grown = mechanics::atSpeed(drawing.rolling, driven);
    if (grown) circumference = grown->circumference.si();
  }
  return multiple * driven.si() / circumference;
}

double speedAt(const FrequencyDrawing& drawing, double frequency, double multiple) {
  return inKilometresPerHour(
      Speed::fromSi(frequency * drawing.rolling.circumference.si() / multiple));
}

Range speedRange(const FrequencyDrawing& drawing) {
  double most = drawing.speeds.empty() && drawing.frequencies.empty() ? kLeastTop : 0;
  for (const Speed speed : drawing.speeds) most = std::max(most, 1.25 * inKilometresPerHour(speed));
  for (const Frequency frequency : drawing.frequencies) {
    most = std::max(most, 1.1 * speedAt(drawing, frequency.si(), 1));
  }
  return {0, std::clamp(most, kLeastTop, kHighest)};
}

/// So high that what was asked for is in it; a prop shaft alone does not flatten the wheel's line.
Range frequencyRange(const FrequencyDrawing& drawing, const std::vector<Line>& lines,
                     double speed) {
  double most = 0;
  for (const Line& line : lines) most = std::max(most, frequencyAt(drawing, speed, line.multiple));
  const double wheel = frequencyAt(drawing, speed, 1);
  most = std::min(most, 4.5 * wheel);
  for (const Frequency frequency : drawing.frequencies) most = std::max(most, 1.2 * frequency.si());
  return {0, most};
}

void drawLine(Figure& figure, const FrequencyDrawing& drawing, const Line& line, const Axes& axes) {
  std::vector<Point> low;
  std::vector<Point> middle;
  std::vector<Point> high;
  const double spread = kCoverage * drawing.rolling.relativeUncertainty;
  for (int i = 0; i <= kPieces; ++i) {
    const double speed = axes.x().high * i / kPieces;
    const double frequency = frequencyAt(drawing, speed, line.multiple);
    if (frequency > axes.y().high) {
      const Point& last = middle.back();
      const double share = (axes.y().high - last.y) / (frequency - last.y);
      const double end = last.x + share * (speed - last.x);
      for (auto* points : {&low, &middle, &high}) points->push_back({end, axes.y().high});
      low.back().y *= 1 - spread;
      break;
    }
    middle.push_back({speed, frequency});
    low.push_back({speed, frequency * (1 - spread)});
    high.push_back({speed, frequency * (1 + spread)});
  }
  figure.add(axes.band(low, high, line.tone));
  figure.add(axes.line(middle, line.tone));
  const Point end = axes.at(0.93 * middle.back().x, 0.93 * middle.back().y);
  figure.add(Text{end, line.name, Side::AboveLeft, Room::Movable, line.tone, figure::kLabelSize,
                  line.multiple == 1});
}

/// Of many marks those are named that there is room for; the rest is read off the axes.
void drawAsked(Figure& figure, const FrequencyDrawing& drawing, const Axes& axes) {
  const bool few = drawing.speeds.size() + drawing.frequencies.size() <= kFewValues;
  for (const Speed asked : drawing.speeds) {
    const double speed = inKilometresPerHour(asked);
    const double frequency = frequencyAt(drawing, speed, 1);
    const Mark mark{axes.inside(speed, frequency), MarkShape::Disc, Tone::Ink, 0.35};
    figure.add(figure::dashed({mark.at.x, axes.bottom()}, mark.at, Tone::Ink, 0.08));
    figure.add(mark);
    Text text = figure::label(
        mark, labelText(asked) + ": " + labelText(Frequency::fromSi(frequency)), Side::BelowRight);
    text.strong = true;
    if (!few) text.room = Room::Optional;
    figure.add(std::move(text));
  }
  for (const Frequency asked : drawing.frequencies) {
    const double frequency = asked.si();
    const double speed = speedAt(drawing, frequency, 1);
    const Mark mark{axes.inside(speed, frequency), MarkShape::Diamond, Tone::Ink, 0.42};
    figure.add(figure::dashed({axes.left(), mark.at.y}, mark.at, Tone::Ink, 0.08));
    figure.add(mark);
    Text text = figure::label(mark, labelText(asked) + ": " + labelText(kilometresPerHour(speed)),
                              drawing.speeds.empty() ? Side::BelowRight : Side::AboveLeft);
    text.strong = true;
    if (!few) text.room = Room::Optional;
    figure.add(std::move(text));
  }
}

}  // namespace

Figure wheelFrequencyPicture(const FrequencyDrawing& drawing, figure::Size size) {
  Figure figure = newFigure(size, "Frequency of the wheel over speed",
                            "A line for each order of the wheel with its 95 % band");
  const std::vector<Line> lines = linesOf(drawing);
  const Range speeds = speedRange(drawing);
  const Axes axes(size, speeds, frequencyRange(drawing, lines, speeds.high));
  axes.draw(figure, AxisText{.title = drawing.speedTitle},
            AxisText{.title = "shakes a second, Hz"});
  for (const Line& line : lines) drawLine(figure, drawing, line, axes);
  drawAsked(figure, drawing, axes);
  return figure;
}

}  // namespace sw::compute
