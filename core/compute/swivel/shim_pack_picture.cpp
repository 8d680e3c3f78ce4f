// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/swivel/shim_pack_picture.h"

#include <algorithm>
#include <cmath>

#include "figure/axes.h"
#include "units/format.h"

namespace sw::compute {

namespace {

using figure::Axes;
using figure::AxisText;
using figure::Figure;
using figure::Mark;
using figure::MarkShape;
using figure::Path;
using figure::Point;
using figure::Range;
using figure::Room;
using figure::Side;
using figure::Stroke;
using figure::Text;
using figure::Tone;
using mechanics::PackAdvice;
using mechanics::PackQuestion;
using mechanics::PackReach;
using mechanics::PackRow;

constexpr double kHighest = 1.6;  // of the upper limit or the highest pull

/// The packs worth showing: measured, within reach, wanted, and the one recommended.
Range packRange(const PackQuestion& question, const PackAdvice& advice) {
  std::vector<double> packs;
  for (const auto& measured : question.measured) packs.push_back(inMillimetres(measured.pack));
  for (const PackRow& row : advice.rows) {
    if (row.reach != PackReach::Beyond) packs.push_back(inMillimetres(row.pack.total));
  }
  if (advice.recommended) {
    packs.push_back(inMillimetres(advice.rows[*advice.recommended].pack.total));
  }
  if (advice.wanted) packs.push_back(inMillimetres(*advice.wanted));
  if (packs.empty()) {
    for (const PackRow& row : advice.rows) packs.push_back(inMillimetres(row.pack.total));
  }
  const auto [low, high] = std::minmax_element(packs.begin(), packs.end());
  Range range{*low, *high};
  range.widen(0.06, 0.1);
  range.low = std::max(range.low, 0.0);
  return range;
}

Range forceRange(const PackQuestion& question) {
  double highest = 0;
  for (const auto& measured : question.measured) {
    for (const Force pull : measured.pulls) highest = std::max(highest, pull.si());
  }
  for (const auto& end : {question.limit.min, question.limit.max}) {
    highest = std::max(highest, kHighest * end.value_or(0.0));
  }
  return {0.0, highest > 0 ? 1.05 * highest : 1.0};
}

void drawLimit(Figure& figure, const Axes& axes, double force, const std::string& name) {
  Path path;
  path.points = {axes.inside(axes.x().low, force), axes.inside(axes.x().high, force)};
  path.tone = Tone::Limit;
  path.stroke = Stroke::Dashed;
  figure.add(std::move(path));
  figure.add(Text{{axes.right(), axes.at(0, force).y},
                  name + " " + displayText(force, defaultUnit(QuantityKind::Force), 3),
                  Side::AboveLeft,
                  Room::Movable,
                  Tone::Limit,
                  0.85});
}

void drawLimits(Figure& figure, const PackQuestion& question, const Axes& axes) {
  const double low = question.limit.min.value_or(axes.y().low);
  const double high = question.limit.max.value_or(axes.y().high);
  Path band = axes.band({{axes.x().low, low}, {axes.x().high, low}},
                        {{axes.x().low, high}, {axes.x().high, high}}, Tone::Limit);
  band.fill = 0.08;
  figure.add(std::move(band));
  if (question.limit.max) drawLimit(figure, axes, *question.limit.max, "at most");
  if (question.limit.min) drawLimit(figure, axes, *question.limit.min, "at least");
}

void drawPrediction(Figure& figure, const PackAdvice& advice, const Axes& axes) {
  std::vector<Point> low;
  std::vector<Point> high;
  std::vector<Point> middle;
  for (const PackRow& row : advice.rows) {
    const double pack = inMillimetres(row.pack.total);
    if (!row.prediction || pack < axes.x().low || pack > axes.x().high) continue;
    low.push_back({pack, row.prediction->trueForce.low.si()});
    high.push_back({pack, row.prediction->trueForce.high.si()});
    middle.push_back({pack, row.prediction->expected.si()});
  }
  if (middle.empty()) return;
  figure.add(axes.band(low, high, Tone::Accent));
  figure.add(axes.line(middle, Tone::Accent));
}

void drawPulls(Figure& figure, const PackQuestion& question, const Axes& axes) {
  for (const auto& measured : question.measured) {
    for (const Force pull : measured.pulls) {
      figure.add(Mark{axes.inside(inMillimetres(measured.pack), pull.si()), MarkShape::Ring,
                      Tone::Ink, 0.28});
    }
  }
}

/// A tick on the axis for each pack that can be made, and the recommended one by name.
void drawPacks(Figure& figure, const PackAdvice& advice, const Axes& axes) {
  for (std::size_t i = 0; i < advice.rows.size(); ++i) {
    const PackRow& row = advice.rows[i];
    const double pack = inMillimetres(row.pack.total);
    if (pack < axes.x().low || pack > axes.x().high) continue;
    const Point foot = axes.at(pack, axes.y().low);
    Path tick;
    tick.points = {foot, {foot.x, foot.y - (row.reach == PackReach::Beyond ? 0.35 : 0.7)}};
    tick.tone = row.reach == PackReach::Beyond ? Tone::Quiet : Tone::Ink;
    figure.add(std::move(tick));
    if (advice.recommended != i) continue;
    const double force = row.prediction ? row.prediction->expected.si() : axes.y().low;
    const Point place = axes.inside(pack, force);
    figure.add(Mark{row.prediction ? place : Point{foot.x, foot.y - 0.9}, MarkShape::Triangle,
                    Tone::Accent, 0.5});
    figure.add(Text{{place.x, row.prediction ? place.y : foot.y - 0.9},
                    displayText(row.pack.total.si(), defaultUnit(QuantityKind::Length), 3),
                    Side::AboveRight,
                    Room::Movable,
                    Tone::Accent,
                    1.0,
                    true});
  }
}

}  // namespace

Figure shimPackPicture(const PackQuestion& question, const PackAdvice& advice, figure::Size size) {
  Figure figure;
  figure.size = size;
  figure.title = "Starting force over shim pack";
  figure.description = "Pulls on " + std::to_string(question.measured.size()) +
                       " packs, the limit, and what is expected of the packs that can be made";
  const Axes axes(size, packRange(question, advice), forceRange(question));
  axes.draw(figure, AxisText{.title = "pack, mm"}, AxisText{.title = "starting force, N"});
  drawLimits(figure, question, axes);
  drawPrediction(figure, advice, axes);
  drawPulls(figure, question, axes);
  drawPacks(figure, advice, axes);
  return figure;
}

}  // namespace sw::compute
