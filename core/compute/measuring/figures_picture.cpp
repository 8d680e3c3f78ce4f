// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/measuring/figures_picture.h"

#include <algorithm>

#include "figure/drawing.h"
#include "figure/number_line.h"

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

constexpr double kTop = 2.2;
constexpr double kWords = 2.0;  // em of a row, for the figure above its bar

/// All values that round to a figure, in the unit of the first.
struct Rounded {
  std::string text;
  double middle = 0, half = 0;
};

Rounded rounded(const TypedQuantity& typed, double toFirstUnit) {
  return {typed.text(), typed.si * toFirstUnit, typed.roundingHalfWidthSi() * toFirstUnit};
}

void drawRow(Figure& figure, const NumberLine& scale, const Rounded& row, double top, double bottom,
             Tone tone) {
  const double low = scale.at(row.middle - row.half);
  const double high = scale.at(row.middle + row.half);
  const Point middle{scale.at(row.middle), 0.5 * (top + kWords + bottom)};
  figure.add(figure::box({low, top + kWords}, {high, bottom}, tone, 0.25));
  figure.add(figure::line({middle.x, top + kWords}, {middle.x, bottom}, tone, 0.2));
  figure.add(Text{{middle.x, top + kWords}, row.text, Side::Above, Room::Fixed, tone, 1.1, true});
}

/// Where the two ranges meet, or what lies between them.
void drawMeeting(Figure& figure, const NumberLine& scale, const Rounded& first,
                 const Rounded& second, Point rows) {
  const double from = std::max(first.middle - first.half, second.middle - second.half);
  const double to = std::min(first.middle + first.half, second.middle + second.half);
  const double left = scale.at(std::min(from, to));
  const double right = scale.at(std::max(from, to));
  if (to >= from) {
    figure.add(figure::area({left, rows.x}, {right, rows.y}, Tone::Good, 0.18));
    return;
  }
  figure.add(figure::dashed({left, rows.x}, {left, rows.y}, Tone::Bad, 0.1));
  figure.add(figure::dashed({right, rows.x}, {right, rows.y}, Tone::Bad, 0.1));
  figure::hatch(figure, {left, rows.x}, {right, rows.y}, Tone::Bad, 0.7);
}

}  // namespace

Figure figuresPicture(const TypedQuantity& first, const TypedQuantity& second,
                      const FigureComparison& compared, figure::Size size) {
  Figure figure;
  figure.size = size;
  const bool agree = compared.agreement == FigureAgreement::Agree;
  figure.title = "Do the two figures agree?";
  figure.description = first.text() + " and " + second.text() +
                       (agree ? " round from values in common" : " round from different values");
  const double toFirst = compared.secondInFirstUnit != 0 && second.si != 0
                             ? compared.secondInFirstUnit / second.si
                             : 1;
  const Rounded one = rounded(first, toFirst);
  const Rounded two = rounded(second, toFirst);
  Range range{one.middle - one.half, one.middle + one.half};
  range.include(two.middle - two.half);
  range.include(two.middle + two.half);
  range.widen(0.25, 1e-9);
  const NumberLine scale(1.2, size.width - 1.2, range);
  const double bottom = size.height - figure::kRoomBelowLine;
  const double row = (bottom - kTop) / 2;
  scale.draw(figure, kTop, bottom, first.unit);
  drawMeeting(figure, scale, one, two, {kTop + kWords, bottom - 0.6});
  drawRow(figure, scale, one, kTop, kTop + row - 0.2, Tone::Accent);
  drawRow(figure, scale, two, kTop + row, bottom - 0.6, Tone::Second);
  figure::headline(figure, agree ? "they agree" : "they do not agree",
                   agree ? MarkShape::Disc : MarkShape::Diamond, agree ? Tone::Good : Tone::Doubt);
  return figure;
}

}  // namespace sw::compute
