// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/bolts/prevailing_torque_picture.h"

#include <algorithm>
#include <string>
#include <utility>

#include "compute/picture_parts.h"
#include "figure/number_line.h"
#include "figure/vectors.h"

namespace sw::compute {

namespace {

using figure::Arrow;
using figure::Box;
using figure::Figure;
using figure::Mark;
using figure::MarkShape;
using figure::NumberLine;
using figure::Range;
using figure::Room;
using figure::Side;
using figure::Text;
using figure::Tone;
using mechanics::TorqueRange;
using mechanics::UsedNutVerdict;

constexpr double kEnd = 1.0;      // em from either edge
constexpr double kTallBar = 1.6;  // em

double most(const TorqueRange& range) {
  return range.most.value_or(range.least).si();
}

std::string rangeText(const TorqueRange& range) {
  if (!range.most) return labelText(range.least) + " and up";
  const std::string low = labelText(range.least);
  return low.substr(0, low.find(' ')) + " to " + labelText(*range.most);
}

/// A bar of the range; a mark where the sheet gives one figure.
void drawRange(Figure& figure, const NumberLine& line, const TorqueRange& range, double y,
               double height, const figure::Text& name) {
  if (range.most) {
    figure.add(line.bar({range.least.si(), most(range)}, y, height, name.tone, 0.4));
  } else {
    figure.add(Mark{{line.at(range.least.si()), y}, MarkShape::Diamond, name.tone, height / 2});
  }
  const double middle = (line.at(range.least.si()) + line.at(most(range))) / 2;
  Text text = name;
  text.at = {middle, y + (text.side == Side::Above ? -height / 2 : height / 2)};
  text.strong = true;
  figure.add(std::move(text));
}

std::string setWords(const DragDrawing::Tightening& tightening) {
  if (tightening.rule == mechanics::DragRule::Included) return "set, drag counted in: ";
  return tightening.final.added.si() > 0 || tightening.drag.si() <= 0 ? "set: "
                                                                      : "set, drag left out: ";
}

void drawTightening(Figure& figure, const DragDrawing::Tightening& tightening, const Box& box) {
  const TorqueRange& sheet = tightening.sheet;
  const TorqueRange& final = tightening.final.torque;
  Range range{sheet.least.si(), std::max(most(sheet), most(final))};
  range.include(range.low - tightening.drag.si());
  range.widen(0.25, 0.6 * sheet.least.si());
  range.low = std::max(range.low, 0.0);
  const NumberLine line(box.left, box.right, range);
  const double bottom = box.bottom - figure::kRoomBelowLine;
  line.draw(figure, box.top, bottom, "torque, N m");
  const double lane = (bottom - box.top) / 2;
  const double height = std::clamp(0.25 * lane, 0.6, kTallBar);
  const double upper = box.top + 1.4 + height / 2;
  const double lower = bottom - 1.5 - height / 2;
  const bool added = tightening.final.added.si() > 0;
  drawRange(figure, line, sheet, upper, height,
            Text{{}, "sheet: " + rangeText(sheet), Side::Above, Room::Movable, Tone::Quiet});
  drawRange(
      figure, line, final, lower, height,
      Text{{}, setWords(tightening) + rangeText(final), Side::Below, Room::Movable, Tone::Accent});
  for (const double torque : {sheet.least.si(), most(sheet)}) {
    add(figure, Arrow{{line.at(torque), upper + height / 2 + 0.1},
                      {line.at(torque + tightening.final.added.si()), lower - height / 2 - 0.1},
                      Tone::Ink,
                      0.12});
    if (!sheet.most) break;
  }
  if (!added) return;
  const double x = line.at(most(sheet) + tightening.final.added.si() / 2);
  figure.add(Text{{x + 0.5, (upper + lower) / 2},
                  "+ drag " + labelText(tightening.final.added),
                  Side::Right,
                  Room::Movable,
                  Tone::Ink,
                  figure::kLabelSize});
}

Mark nutMark(figure::Point at, UsedNutVerdict verdict) {
  switch (verdict) {
    case UsedNutVerdict::Reuse:
      return verdictMark(at, Verdict::Within, 0.55);
    case UsedNutVerdict::Discard:
      return verdictMark(at, Verdict::Outside, 0.55);
    case UsedNutVerdict::NoLimit:
      return verdictMark(at, Verdict::NoLimit, 0.55);
  }
  return verdictMark(at, Verdict::NoLimit, 0.55);
}

const char* phrase(UsedNutVerdict verdict) {
  switch (verdict) {
    case UsedNutVerdict::Reuse:
      return "still locks";
    case UsedNutVerdict::Discard:
      return "fit a new nut";
    case UsedNutVerdict::NoLimit:
      return "no limit on file";
  }
  return "";
}

void drawNut(Figure& figure, const DragDrawing::UsedNut& nut, const Box& box) {
  const double least = nut.least.value_or(Torque{}).si();
  Range range{0, 1.5 * std::max(nut.breakaway.si(), least)};
  if (range.high <= 0) range.high = 1;
  const NumberLine line(box.left, box.right, range);
  const double bottom = box.bottom - figure::kRoomBelowLine;
  line.draw(figure, box.top, bottom, "torque that starts the used nut, N m");
  if (nut.least) {
    figure::Path locks =
        line.bar({least, range.high}, (box.top + bottom) / 2, bottom - box.top, Tone::Limit, 0.08);
    locks.stroke = figure::Stroke::None;
    figure.add(std::move(locks));
    figure.add(line.upright(least, box.top, bottom, Tone::Limit, figure::Stroke::Dashed));
    figure.add(Text{{line.at(least), box.top},
                    "at least " + labelText(*nut.least),
                    Side::BelowRight,
                    Room::Movable,
                    Tone::Limit,
                    figure::kLabelSize});
  }
  const double y = box.top + 0.75 * (bottom - box.top);
  const Mark mark = nutMark({line.at(nut.breakaway.si()), y}, nut.verdict);
  figure.add(figure::line({line.at(0), y}, mark.at, mark.tone, 0.3));
  figure.add(mark);
  Text text = figure::label(mark, labelText(nut.breakaway) + ", " + phrase(nut.verdict),
                            nut.breakaway.si() < least ? Side::AboveLeft : Side::AboveRight);
  text.size = 1.0;
  text.strong = true;
  figure.add(std::move(text));
}

}  // namespace

Figure prevailingTorquePicture(const DragDrawing& drawing, figure::Size size) {
  Figure figure = newFigure(size, "Drag of a self-locking nut",
                            "The figure of the sheet moved up by the drag, and what a used nut "
                            "holds");
  Box box{kEnd, 0.4, size.width - kEnd, size.height};
  const bool both = drawing.tightening && drawing.nut;
  const double cut = both ? 0.58 * size.height : size.height;
  if (drawing.tightening) {
    drawTightening(figure, *drawing.tightening, {box.left, box.top, box.right, cut});
  }
  if (drawing.nut) {
    drawNut(figure, *drawing.nut, {box.left, both ? cut + 0.6 : box.top, box.right, box.bottom});
  }
  return figure;
}

}  // namespace sw::compute
