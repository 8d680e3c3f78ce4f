// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/brakes/disc_index_picture.h"

#include <algorithm>

#include "compute/verdict_mark.h"
#include "figure/axes.h"
#include "figure/drawing.h"

namespace sw::compute {

namespace {

using figure::Axes;
using figure::Figure;
using figure::MarkShape;
using figure::Point;
using figure::Room;
using figure::Side;
using figure::Size;
using figure::Text;
using figure::Tone;
using mechanics::DiscIndex;
using mechanics::IndexPosition;

constexpr double kBarHalf = 0.34;     // of a stud
constexpr double kDiscShare = 0.36;   // of the width, for the disc beside the bars
constexpr double kLeastForDisc = 29;  // em of width
constexpr double kNoMarks = 1e6;      // a step beyond every position: the numbers are drawn here

double runoutOf(const IndexPosition& position) {
  return 2 * inMillimetres(position.runout.vector.amount);
}

void drawBars(Figure& figure, const Axes& axes, const DiscIndex& index) {
  for (const IndexPosition& each : index.positions) {
    const double value = runoutOf(each);
    const double at = each.position;
    const bool best = each.position == index.best;
    figure.add(figure::box(axes.at(at - kBarHalf, 0), axes.inside(at + kBarHalf, value),
                           best ? Tone::Accent : Tone::Material, best ? 0.75 : 0.3));
    const Point foot = axes.at(at, 0);
    figure.add(Text{{foot.x, foot.y + 0.2},
                    std::to_string(each.position),
                    Side::Below,
                    Room::Fixed,
                    best ? Tone::Accent : Tone::Quiet,
                    best ? 1.0 : 0.85,
                    best});
    if (!best) continue;
    figure.add(Text{axes.inside(at, value), figureWords(value, QuantityKind::Number), Side::Above,
                    Room::Movable, Tone::Accent, 1.0, true});
  }
}

Figure barsFigure(const DiscIndex& index, const std::optional<Length>& limit, Size size) {
  Figure figure;
  figure.size = size;
  figure::Range range{0, 2 * inMillimetres(index.ceiling)};
  if (limit) range.include(inMillimetres(*limit));
  range.high = std::max(1.12 * range.high, 1e-3);
  const auto studs = static_cast<double>(index.positions.size());
  const Axes axes(size, {-0.7, studs - 0.3}, range);
  axes.draw(figure, {.title = "turned on by, studs", .step = kNoMarks},
            {.title = "runout by tilt, mm"});
  drawBars(figure, axes, index);
  if (!limit) return figure;
  const double y = axes.at(0, inMillimetres(*limit)).y;
  figure.add(figure::dashed({axes.left(), y}, {axes.right(), y}, Tone::Limit));
  figure.add(Text{{axes.left() - 0.3, y}, "limit", Side::Left, Room::Fixed, Tone::Limit, 0.85});
  return figure;
}

/// The disc from its outside, studs numbered from the mark on the hub on.
Figure discFigure(const DiscIndex& index, Size size) {
  Figure figure;
  figure.size = size;
  const Point centre{size.width / 2, size.height / 2};
  const double outer = std::min(size.width, size.height) / 2 - 0.4;
  const double studs = 0.58 * outer;
  figure.add(figure::disc(centre, outer, Tone::Material, 0.25));
  figure.add(figure::circle(centre, 0.87 * outer, Tone::Material, 0.06));
  figure.add(figure::circle(centre, 0.2 * outer, Tone::Material));
  const auto count = static_cast<int>(index.positions.size());
  for (int stud = 0; stud < count; ++stud) {
    const double degrees = 360.0 * stud / count;
    const Point at = figure::onCircle(centre, studs, degrees);
    const bool named = stud == index.best || stud == 0;
    figure.add(figure::disc(at, 0.42, stud == index.best ? Tone::Accent : Tone::Ink,
                            stud == index.best ? 1.0 : 0.0));
    figure.add(Text{figure::onCircle(centre, studs - 1.05, degrees), std::to_string(stud),
                    Side::Centre, named ? Room::Fixed : Room::Optional,
                    named ? Tone::Ink : Tone::Quiet, 0.85});
  }
  figure.add(
      figure::Mark{figure::onCircle(centre, 0.94 * outer, 0), MarkShape::Triangle, Tone::Ink, 0.4});
  if (index.best > 0) {
    add(figure,
        figure::Turn{centre, 0.76 * outer, 0, 360.0 * index.best / count, Tone::Accent, 0.22});
  }
  return figure;
}

std::string headlineWords(const DiscIndex& index) {
  if (index.best == 0) return "leave it as it is";
  return "turn on " + std::to_string(index.best) + (index.best == 1 ? " stud" : " studs");
}

}  // namespace

Figure discIndexPicture(const DiscIndex& index, const mechanics::Judged<Length>& best,
                        const std::optional<Length>& limit, Size size) {
  Figure figure;
  figure.size = size;
  figure.title = "Which way round the disc goes";
  figure.description = "Runout by tilt in " + std::to_string(index.positions.size()) +
                       " positions, least when turned on by " + std::to_string(index.best);
  const bool withDisc = size.width >= kLeastForDisc;
  const double disc = withDisc ? kDiscShare * size.width : 0;
  figure::place(figure, barsFigure(index, limit, {size.width - disc, size.height}), {0, 0});
  if (withDisc) {
    constexpr double kTop = 1.8;
    figure::place(figure, discFigure(index, {disc, size.height - kTop - 1.4}),
                  {size.width - disc, kTop});
    figure.add(Text{{size.width - disc / 2, size.height - 0.2},
                    "the way angles grow",
                    Side::Above,
                    Room::Movable,
                    Tone::Quiet,
                    0.85});
  }
  const VerdictLook look = lookOf(best.verdict);
  figure::headline(figure, headlineWords(index), look.shape, look.tone);
  return figure;
}

}  // namespace sw::compute
