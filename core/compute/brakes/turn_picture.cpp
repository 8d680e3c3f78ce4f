// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/brakes/turn_picture.h"

#include "compute/brakes/turn_polar.h"
#include "compute/brakes/turn_unrolled.h"
#include "compute/verdict_mark.h"
#include "figure/drawing.h"

namespace sw::compute {

namespace {

using figure::Figure;
using figure::Size;

constexpr double kLeastForBoth = 40;  // em of width
constexpr double kHeadline = 1.6;     // em

void headlineOf(Figure& figure, const char* what, const mechanics::Judged<Length>& judged) {
  const VerdictLook look = lookOf(judged.verdict);
  std::string words =
      std::string(what) + " " + figureWords(judged.value.si(), QuantityKind::Length);
  const bool decided = judged.verdict == Verdict::Within || judged.verdict == Verdict::Outside ||
                       judged.verdict == Verdict::Undecided;
  if (decided) words += ", " + verdictWords(judged.verdict);
  figure::headline(figure, words, look.shape, look.tone);
}

/// The disc alone, or the disc and beside it the turn unrolled. `polar` and `unrolled` draw into a
/// size.
template <class Disc, class Unrolled>
void drawViews(Figure& figure, const Disc& polar, const Unrolled& unrolled) {
  const double height = figure.size.height - kHeadline;
  if (figure.size.width < kLeastForBoth) {
    figure::place(figure, polar(Size{figure.size.width, height}), {0, kHeadline});
    return;
  }
  figure::place(figure, polar(Size{height, height}), {0, kHeadline});
  figure::place(figure, unrolled(Size{figure.size.width - height, height}), {height, kHeadline});
}

}  // namespace

Figure runoutPicture(const mechanics::DiscRunoutInput& input, const mechanics::DiscRunout& runout,
                     Size size) {
  Figure figure;
  figure.size = size;
  figure.title = "Runout over one turn of the disc";
  figure.description = "Readings at " + std::to_string(runout.averaged.size()) + " places, total " +
                       figureWords(runout.total.value.si(), QuantityKind::Length) +
                       ", of it tilt " +
                       figureWords(2 * runout.tilt.amount.si(), QuantityKind::Length);
  drawViews(
      figure, [&](Size room) { return polarRunout(input, runout, room); },
      [&](Size room) { return unrolledRunout(input, runout, room); });
  headlineOf(figure, "total", runout.total);
  return figure;
}

Figure thicknessPicture(const mechanics::DiscThicknessInput& input,
                        const mechanics::DiscThickness& disc, Size size) {
  Figure figure;
  figure.size = size;
  figure.title = "Thickness round the disc";
  figure.description = "Thickness at " + std::to_string(input.readings.size()) +
                       " places, variation " +
                       figureWords(disc.variation.value.si(), QuantityKind::Length);
  drawViews(
      figure, [&](Size room) { return polarThickness(input, disc, room); },
      [&](Size room) { return unrolledThickness(input, disc, room); });
  headlineOf(figure, "variation", disc.variation);
  return figure;
}

}  // namespace sw::compute
