// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/diagnosis/plan_picture.h"

#include <algorithm>
#include <cmath>

#include "compute/picture_parts.h"
#include "figure/drawing.h"
#include "figure/number_line.h"

namespace sw::compute {

namespace {

using figure::Figure;
using figure::NumberLine;
using figure::Room;
using figure::Side;
using figure::Text;
using figure::Tone;

constexpr double kRow = 2.4;    // em: a name and its bar
constexpr double kName = 1.35;  // em of it, for the name
constexpr double kBar = 0.8;
constexpr double kLeastOpacity = 0.12;

void drawRow(Figure& figure, const NumberLine& scale, const PlanBar& bar, double from, double top) {
  const double begin = scale.at(from);
  const double work = scale.at(from + bar.setupMinutes);
  const double end = scale.at(from + bar.setupMinutes + bar.minutes);
  const double y = top + kName;
  const bool right = 2 * begin > scale.left() + scale.right();
  figure.add(Text{{right ? end : begin, y - 0.1},
                  bar.name,
                  right ? Side::AboveLeft : Side::AboveRight,
                  Room::Fixed,
                  Tone::Ink,
                  0.85});
  if (work > begin) {
    figure.add(figure::line({begin, y + kBar / 2}, {work, y + kBar / 2}, Tone::Quiet, 0.16));
  }
  const double opacity = kLeastOpacity + (0.75 - kLeastOpacity) * bar.stillLooking;
  figure.add(figure::box({work, y}, {end, y + kBar}, Tone::Accent, opacity));
}

}  // namespace

Figure planPicture(const std::vector<PlanBar>& bars, figure::Size size) {
  const double room = size.height - figure::kRoomBelowLine - 0.3;
  const auto rows = std::min(bars.size(), static_cast<std::size_t>(std::floor(room / kRow)));
  Figure figure = newFigure(
      size, "Checks in their order, with the time each takes",
      bars.empty() ? std::string("No check is worth its time") : "First: " + bars.front().name);
  if (rows == 0) {
    figure.add(Text{{size.width / 2, size.height / 2},
                    figure.description,
                    Side::Centre,
                    Room::Fixed,
                    Tone::Quiet,
                    1.0});
    return figure;
  }
  double all = 0;
  for (std::size_t i = 0; i < rows; ++i) all += bars[i].setupMinutes + bars[i].minutes;
  const NumberLine scale(0.5, size.width - 1.2, {0, std::max(all, 1.0)});
  const double bottom = 0.3 + kRow * static_cast<double>(rows);
  scale.draw(figure, 0.3, bottom, "minutes, as long as nothing is found");
  double from = 0;
  for (std::size_t i = 0; i < rows; ++i) {
    drawRow(figure, scale, bars[i], from, 0.2 + kRow * static_cast<double>(i));
    from += bars[i].setupMinutes + bars[i].minutes;
  }
  return figure;
}

}  // namespace sw::compute
