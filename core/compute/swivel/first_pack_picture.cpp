// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/swivel/first_pack_picture.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "compute/verdict_mark.h"
#include "figure/axes.h"
#include "figure/drawing.h"
#include "figure/number_line.h"

namespace sw::compute {

namespace {

using figure::Axes;
using figure::Figure;
using figure::Mark;
using figure::MarkShape;
using figure::NumberLine;
using figure::Path;
using figure::Point;
using figure::Range;
using figure::Room;
using figure::Side;
using figure::Size;
using figure::Text;
using figure::Tone;
using mechanics::AllowedPack;
using mechanics::FirstPack;
using mechanics::FirstPackInput;
using mechanics::FirstPackMethod;
using mechanics::GapPattern;

constexpr double kCoverage = 2;   // of the wanted pack's band
constexpr double kNoMarks = 1e6;  // a step beyond every bolt: the numbers are drawn here
constexpr double kPacksEm = 9.5;  // for the packs beside the gaps
constexpr double kTop = 2.2;

std::string lengthWords(Length length) {
  return limitWords(length.si(), defaultUnit(QuantityKind::Length));
}

/// "0.45 mm, 3 shims"
std::string packWords(const AllowedPack& pack) {
  return lengthWords(pack.total) + ", " + std::to_string(pack.count()) +
         (pack.count() == 1 ? " shim" : " shims");
}

Range lengthRange(const FirstPack& first, const std::vector<double>& more) {
  const double wanted = inMillimetres(first.wanted);
  const double u = kCoverage * inMillimetres(first.standardUncertainty);
  Range range{wanted - u, wanted + u};
  for (const double value : more) range.include(value);
  for (const auto& offered : first.packs) range.include(inMillimetres(offered.pack.total));
  range.widen(0.12, 0.05);
  return range;
}

void drawGaps(Figure& figure, const Axes& axes, const FirstPackInput& input,
              const FirstPack& first) {
  Path path;
  path.tone = Tone::Quiet;
  path.width = 0.08;
  for (std::size_t i = 0; i < input.readings.size(); ++i) {
    const auto bolt = static_cast<double>(i + 1);
    path.points.push_back(axes.inside(bolt, inMillimetres(input.readings[i])));
    figure.add(Text{{axes.at(bolt, axes.y().low).x, axes.bottom() + 0.2},
                    std::to_string(i + 1),
                    Side::Below,
                    Room::Optional,
                    Tone::Quiet,
                    0.85});
  }
  const auto places = path.points;
  figure.add(std::move(path));
  for (const Point& place : places) figure.add(Mark{place, MarkShape::Ring, Tone::Ink, 0.34});
  if (!first.gaps || !first.gaps->atBolt || first.gaps->pattern == GapPattern::Even) return;
  const auto at = static_cast<std::size_t>(*first.gaps->atBolt - 1);
  if (at >= places.size()) return;
  figure.add(Mark{places[at], MarkShape::Diamond, Tone::Doubt, 0.6});
  const bool high = input.readings[at] > first.wanted;
  figure.add(Text{{places[at].x, places[at].y + (high ? -0.4 : 0.4)},
                  first.gaps->pattern == GapPattern::Tilted ? "widest" : "does not fit",
                  high ? Side::Above : Side::Below,
                  Room::Movable,
                  Tone::Doubt,
                  0.9,
                  true});
}

/// The wanted pack as a band across, the packs that can be made at its right.
void drawPacksAcross(Figure& figure, const Axes& axes, const FirstPack& first, double from) {
  const double wanted = inMillimetres(first.wanted);
  const double u = kCoverage * inMillimetres(first.standardUncertainty);
  figure.add(figure::area(axes.inside(axes.x().low, wanted - u),
                          axes.inside(axes.x().high, wanted + u), Tone::Accent, 0.16));
  figure.add(
      figure::dashed(axes.at(axes.x().low, wanted), axes.at(axes.x().high, wanted), Tone::Accent));
  const double left = axes.at(from, 0).x;
  for (std::size_t i = 0; i < first.packs.size(); ++i) {
    const AllowedPack& pack = first.packs[i].pack;
    const double y = axes.inside(0, inMillimetres(pack.total)).y;
    const bool best = i == 0;
    const Tone tone = best ? Tone::Accent : Tone::Material;
    figure.add(figure::line({left, y}, {axes.right(), y}, tone, best ? 0.3 : 0.16));
    figure.add(Text{{left, y - 0.1},
                    packWords(pack),
                    Side::AboveRight,
                    Room::Movable,
                    best ? Tone::Accent : Tone::Ink,
                    0.85,
                    best});
  }
}

Figure nipPicture(const FirstPackInput& input, const FirstPack& first, Size size) {
  Figure figure;
  figure.size = size;
  std::vector<double> gaps;
  for (const Length gap : input.readings) gaps.push_back(inMillimetres(gap));
  const auto bolts = static_cast<double>(gaps.size());
  // The range is such that the packs get their room in em whatever the number of bolts.
  const double plot = size.width - 4.8;
  const double span = bolts - 0.2;
  const double packs = span * kPacksEm / (plot - kPacksEm);
  const Axes axes(size, {0.5, 0.5 + span + packs}, lengthRange(first, gaps));
  axes.draw(figure, {.title = "bolt", .step = kNoMarks}, {.title = "gap and pack, mm"});
  drawPacksAcross(figure, axes, first, 0.5 + span);
  drawGaps(figure, axes, input, first);
  return figure;
}

Length meanOf(const std::vector<Length>& readings) {
  return std::accumulate(readings.begin(), readings.end(), Length{}) /
         static_cast<double>(readings.size());
}

/// One link of the chain: from here to there, by name.
void drawLink(Figure& figure, const NumberLine& scale, double y, Length from, Length to,
              const std::string& words) {
  const Point a{scale.at(inMillimetres(from)), y};
  const Point b{scale.at(inMillimetres(to)), y};
  add(figure, figure::Arrow{a, b, Tone::Ink, 0.22});
  figure.add(Text{{0.5 * (a.x + b.x), y - 0.2}, words, Side::Above, Room::Movable, Tone::Ink, 0.9});
}

struct ChainRows {
  double found = 0, moved = 0, allowance = 0, wanted = 0, packs = 0;
};

void drawFound(Figure& figure, const NumberLine& scale, Length found, double y, double bottom) {
  const double x = scale.at(inMillimetres(found));
  figure.add(figure::dashed({x, y}, {x, bottom}, Tone::Quiet, 0.08));
  figure.add(Mark{{x, y}, MarkShape::Square, Tone::Ink, 0.45});
  figure.add(Text{
      {x, y - 0.3}, "found " + lengthWords(found), Side::Above, Room::Movable, Tone::Ink, 0.9});
}

void drawWanted(Figure& figure, const NumberLine& scale, const FirstPack& first, double y,
                double bottom) {
  const double wanted = inMillimetres(first.wanted);
  const double u = kCoverage * inMillimetres(first.standardUncertainty);
  const double x = scale.at(wanted);
  figure.add(
      figure::area({scale.at(wanted - u), y}, {scale.at(wanted + u), bottom}, Tone::Accent, 0.16));
  figure.add(figure::dashed({x, y}, {x, bottom}, Tone::Accent));
}

void drawPackRow(Figure& figure, const NumberLine& scale, const FirstPack& first, double y,
                 double bottom) {
  for (std::size_t i = 0; i < first.packs.size(); ++i) {
    const AllowedPack& pack = first.packs[i].pack;
    const bool best = i == 0;
    const double x = scale.at(inMillimetres(pack.total));
    const Tone tone = best ? Tone::Accent : Tone::Material;
    figure.add(figure::line({x, y}, {x, bottom}, tone, best ? 0.34 : 0.18));
    figure.add(Text{{x, y},
                    best ? packWords(pack) : lengthWords(pack.total),
                    Side::Above,
                    Room::Movable,
                    best ? Tone::Accent : Tone::Ink,
                    0.85,
                    best});
  }
}

Figure chainPicture(const FirstPackInput& input, const FirstPack& first, Size size) {
  Figure figure;
  figure.size = size;
  const Length found = input.found.value_or(Length{});
  const bool thinner = input.effect == mechanics::ShimEffect::ThinnerRaises;
  const Length play = meanOf(input.readings);
  const Length moved = thinner ? found - play : found + play;
  const double bottom = size.height - figure::kRoomBelowLine;
  const bool allowance = input.allowance.si() != 0;
  const double row = (bottom - kTop) / (allowance ? 4 : 3);
  const NumberLine scale(1.2, size.width - 1.2,
                         lengthRange(first, {inMillimetres(found), inMillimetres(moved)}));
  scale.draw(figure, kTop, bottom, "pack, mm");
  double y = kTop + 0.6 * row;
  drawFound(figure, scale, found, y, y + row);
  y += row;
  drawLink(figure, scale, y, found, moved, "end float " + lengthWords(play));
  if (allowance) {
    y += row;
    drawLink(figure, scale, y, moved, first.wanted, "allowance " + lengthWords(input.allowance));
  }
  drawWanted(figure, scale, first, y, bottom);
  drawPackRow(figure, scale, first, bottom - 0.42 * row, bottom);
  return figure;
}

}  // namespace

Figure firstPackPicture(const FirstPackInput& input, const FirstPack& first, Size size) {
  const bool nip = input.method == FirstPackMethod::Nip;
  Figure figure = nip ? nipPicture(input, first, size) : chainPicture(input, first, size);
  const std::string wanted =
      measuredWords(first.wanted.si(), kCoverage * first.standardUncertainty.si(),
                    defaultUnit(QuantityKind::Length));
  figure.title = nip ? "Gaps at the bolts and packs" : "From the pack found to the pack wanted";
  figure.description = "Pack wanted " + wanted;
  figure::headline(figure, "wanted " + wanted);
  return figure;
}

}  // namespace sw::compute
