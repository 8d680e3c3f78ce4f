// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/geometry/limit_line.h"

#include <algorithm>
#include <utility>

#include "compute/picture_parts.h"
#include "figure/number_line.h"

namespace sw::compute {

namespace {

using figure::Box;
using figure::Figure;
using figure::Mark;
using figure::NumberLine;
using figure::Range;
using figure::Side;
using figure::Text;
using figure::Tone;

constexpr double kCoverage = 2;

Range rangeOf(const LimitLine& line) {
  Range range{line.value, line.value};
  const double spread = kCoverage * line.standardUncertainty;
  range.include(line.value - spread);
  range.include(line.value + spread);
  if (line.limit.min) range.include(*line.limit.min);
  if (line.limit.max) range.include(*line.limit.max);
  range.widen(0.25, 1.0);
  return range;
}

}  // namespace

void drawLimitLine(Figure& figure, const LimitLine& line, const Box& box) {
  const Range range = rangeOf(line);
  const NumberLine axis(box.left, box.right, range);
  const double bottom = box.bottom - figure::kRoomBelowLine;
  axis.draw(figure, box.top, bottom, line.title);
  const Range within{line.limit.min.value_or(range.low), line.limit.max.value_or(range.high)};
  figure::Path band = axis.bar(within, (box.top + bottom) / 2, bottom - box.top, Tone::Limit, 0.12);
  band.stroke = figure::Stroke::None;
  figure.add(std::move(band));
  for (const auto& end : {line.limit.min, line.limit.max}) {
    if (!end) continue;
    figure.add(axis.upright(*end, box.top, bottom, Tone::Limit, figure::Stroke::Dashed));
  }
  const double y = box.top + 0.7 * (bottom - box.top);
  const Mark mark = verdictMark({axis.at(line.value), y}, line.verdict, 0.5);
  const double spread = kCoverage * line.standardUncertainty;
  if (spread > 0) {
    const double left = axis.at(line.value - spread);
    const double right = axis.at(line.value + spread);
    figure.add(figure::line({left, y}, {right, y}, mark.tone, 0.18));
    for (const double x : {left, right}) {
      figure.add(figure::line({x, y - 0.35}, {x, y + 0.35}, mark.tone, 0.14));
    }
  }
  figure.add(mark);
  Text text = figure::label(mark, line.text, Side::Above);
  text.strong = true;
  text.size = 1.0;
  figure.add(std::move(text));
}

}  // namespace sw::compute
