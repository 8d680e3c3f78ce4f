// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/bolts/wrench_setting_picture.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include "compute/picture_parts.h"
#include "figure/number_line.h"
#include "figure/vectors.h"

namespace sw::compute {

namespace {

using figure::Arrow;
using figure::Box;
using figure::Dimension;
using figure::Figure;
using figure::Mark;
using figure::NumberLine;
using figure::Point;
using figure::Range;
using figure::Room;
using figure::Scale;
using figure::Side;
using figure::Text;
using figure::Tone;
using mechanics::WrenchFit;
using mechanics::WrenchUse;

constexpr double kAdapterHeight = 7.5;  // em, least of each part
constexpr double kLaneHeight = 2.5;
constexpr double kCheckHeight = 6.2;
constexpr double kGripBeyond = 0.22;  // of the lever, beyond the middle of the grip
constexpr double kEnd = 0.8;
constexpr double kEmALetter = 0.56;

void drawAdapter(Figure& figure, const WrenchDrawing& drawing, const Box& box) {
  const auto& adapter = *drawing.adapter;
  const double lever = adapter.lever.si();
  const double angle = adapter.angle.si();
  const double x = lever + adapter.adapter.si() * std::cos(angle);
  const double y = adapter.adapter.si() * std::sin(angle);
  Range across{-kGripBeyond * lever, std::max(x, lever)};
  across.include(x);
  across.widen(0.05, lever);
  Range up{std::min(y, 0.0), std::max(y, 0.0)};
  up.widen(0.1, 0.05 * lever);
  const Scale scale({box.left, box.top + 2.9, box.right, box.bottom - 2.6}, across, up);
  const Point grip = scale.at(0, 0);
  const Point drive = scale.at(lever, 0);
  const Point bolt = scale.at(x, y);
  figure.add(figure::line(scale.at(-kGripBeyond * lever, 0), drive, Tone::Material, 0.5));
  figure.add(figure::line(scale.at(-kGripBeyond * lever, 0), scale.at(kGripBeyond * lever, 0),
                          Tone::Quiet, 1.0));
  figure.add(figure::line(drive, bolt, Tone::Accent, 0.4));
  figure.add(figure::outline(figure::rectangle(drive, {0.9, 0.9}), Tone::Ink, 0.8));
  figure.add(figure::circle(bolt, 0.6, Tone::Accent, 0.22));
  add(figure, Arrow{{grip.x, grip.y - 2.2}, {grip.x, grip.y - 0.6}, Tone::Ink, 0.2});
  figure.add(Text{{grip.x + 0.3, grip.y - 1.7},
                  "hand here",
                  Side::Right,
                  Room::Movable,
                  Tone::Ink,
                  figure::kLabelSize});
  figure.add(Text{{drive.x - 0.4, drive.y - 0.5},
                  "set " + labelText(*drawing.setting),
                  Side::AboveLeft,
                  Room::Movable,
                  Tone::Ink,
                  1.1,
                  true});
  const double above = box.top + 1.1;
  figure.add(figure::line({bolt.x, bolt.y - 0.7}, {bolt.x, above + 0.1}, Tone::Accent, 0.08));
  figure.add(Text{{bolt.x + 0.5, above},
                  "bolt gets " + labelText(*drawing.wanted),
                  Side::AboveLeft,
                  Room::Movable,
                  Tone::Accent,
                  1.0,
                  true});
  const double below = std::max(grip.y, bolt.y) + 1.2;
  for (const Point& point : {grip, drive}) {
    figure.add(figure::line({point.x, point.y + 0.6}, {point.x, below + 0.3}, Tone::Quiet, 0.06));
  }
  add(figure, Dimension{{grip.x, below}, {drive.x, below}, labelText(adapter.lever), Side::Below});
  if (adapter.adapter.si() <= 0) return;
  const double away = 1.2;
  const Point shift{away * std::sin(angle), away * std::cos(angle)};
  add(figure, Dimension{{drive.x + shift.x, drive.y + shift.y},
                        {bolt.x + shift.x, bolt.y + shift.y},
                        labelText(adapter.adapter),
                        Side::Below,
                        Tone::Accent});
}

Mark useMark(Point at, WrenchUse use) {
  switch (use) {
    case WrenchUse::Ok:
      return verdictMark(at, Verdict::Within);
    case WrenchUse::Warn:
      return verdictMark(at, Verdict::Undecided);
    case WrenchUse::Refuse:
      return verdictMark(at, Verdict::Outside);
  }
  return verdictMark(at, Verdict::NoLimit);
}

const char* useText(WrenchUse use) {
  switch (use) {
    case WrenchUse::Ok:
      return "";
    case WrenchUse::Warn:
      return ", with care";
    case WrenchUse::Refuse:
      return ", not this one";
  }
  return "";
}

Range wrenchRange(const WrenchFit& fit) {
  const double most = fit.wrench.maximum.si();
  const double least =
      fit.wrench.lowestMark ? fit.wrench.lowestMark->si() : mechanics::kLeastShareOfMaximum * most;
  return {std::min(least, most), most};
}

void drawWrench(Figure& figure, const NumberLine& line, const WrenchFit& fit, double top,
                double lane) {
  const double y = top + 0.5 * lane + 0.55;
  const Mark mark = useMark({line.left() + 0.5, y - 0.95}, fit.use);
  const Range range = wrenchRange(fit);
  figure.add(line.bar(range, y, 0.7, mark.tone, fit.use == WrenchUse::Refuse ? 0.12 : 0.4));
  Mark beside = mark;
  const std::string words = fit.wrench.name + useText(fit.use);
  const double width = kEmALetter * static_cast<double>(words.size()) + 1.0;
  beside.at.x =
      std::max(line.left() + 0.5, std::min(line.at(range.low) + 0.45, line.right() - width));
  figure.add(beside);
  Text text = figure::label(beside, words, Side::Right, Room::Fixed);
  figure.add(std::move(text));
}

void drawWrenches(Figure& figure, const WrenchDrawing& drawing, const Box& box) {
  const double setting = drawing.setting->si();
  Range range{setting, setting};
  for (const WrenchFit& fit : drawing.fits) {
    range.include(wrenchRange(fit).low);
    range.include(wrenchRange(fit).high);
  }
  const NumberLine line(box.left, box.right, {0.8 * range.low, 1.25 * range.high},
                        figure::Spacing::Ratio);
  const double bottom = box.bottom - figure::kRoomBelowLine;
  const double top = box.top + 1.3;
  line.draw(figure, top, bottom, "setting, N m");
  const auto fits = static_cast<std::size_t>(std::max(1.0, (bottom - top) / kLaneHeight));
  const std::size_t shown = std::min(drawing.fits.size(), fits);
  const double lane = (bottom - top) / static_cast<double>(shown);
  for (std::size_t i = 0; i < shown; ++i) {
    drawWrench(figure, line, drawing.fits[i], top + static_cast<double>(i) * lane, lane);
  }
  if (shown < drawing.fits.size()) {
    figure.add(Text{{box.left, bottom + 1.5},
                    std::to_string(drawing.fits.size() - shown) + " more",
                    Side::BelowRight,
                    Room::Optional,
                    Tone::Quiet,
                    0.85});
  }
  figure.add(line.upright(setting, top, bottom, Tone::Ink));
  figure.add(Text{{line.at(setting), top},
                  "set " + labelText(*drawing.setting),
                  Side::Above,
                  Room::Fixed,
                  Tone::Ink,
                  1.0,
                  true});
}

void drawCheck(Figure& figure, const WrenchDrawing::Check& check, const Box& box) {
  const auto& band = check.found.band;
  Range range{band.least.si(), band.most.si()};
  range.include(check.reference.si());
  range.widen(0.35, 1.0);
  const NumberLine line(box.left, box.right, range);
  const double bottom = box.bottom - figure::kRoomBelowLine;
  const double top = box.top + 1.2;
  line.draw(figure, top, bottom, "what the tester reads, N m");
  figure.add(line.bar({band.least.si(), band.most.si()}, (top + bottom) / 2, bottom - top,
                      Tone::Limit, 0.12));
  figure.add(Text{{(line.at(band.least.si()) + line.at(band.most.si())) / 2, top},
                  "the wrench passes within",
                  Side::Above,
                  Room::Movable,
                  Tone::Limit,
                  figure::kLabelSize});
  const bool within = check.found.verdict == mechanics::WrenchCheckVerdict::Within;
  const Mark mark = verdictMark({line.at(check.reference.si()), (top + bottom) / 2},
                                within ? Verdict::Within : Verdict::Outside, 0.55);
  figure.add(mark);
  Text text = figure::label(mark, labelText(check.reference), Side::Right);
  text.strong = true;
  figure.add(std::move(text));
}

}  // namespace

Figure wrenchSettingPicture(const WrenchDrawing& drawing, figure::Size size) {
  Figure figure = newFigure(size, "Setting of the torque wrench",
                            "The wrench with its adapter, the ranges of the wrenches, and a check");
  const bool adapter = drawing.adapter && drawing.setting && drawing.wanted;
  const bool wrenches = !drawing.fits.empty() && drawing.setting;
  const double lanes = static_cast<double>(std::min<std::size_t>(drawing.fits.size(), 2));
  double adapterNeeds = adapter ? kAdapterHeight : 0;
  double wrenchesNeed = wrenches ? figure::kRoomBelowLine + 1.3 + kLaneHeight * lanes : 0;
  const double both = adapterNeeds + wrenchesNeed;
  const bool check = drawing.check && both + kCheckHeight <= size.height;
  const double checkNeeds = check ? kCheckHeight : 0;
  const double stretch = size.height / std::max(both + checkNeeds, 1.0);
  double top = 0;
  const auto part = [&](double needs) {
    const Box box{kEnd, top + 0.2, size.width - kEnd, top + needs * stretch};
    top += needs * stretch;
    return box;
  };
  if (adapter) drawAdapter(figure, drawing, part(adapterNeeds));
  if (wrenches) drawWrenches(figure, drawing, part(wrenchesNeed));
  if (check) drawCheck(figure, *drawing.check, part(checkNeeds));
  return figure;
}

}  // namespace sw::compute
