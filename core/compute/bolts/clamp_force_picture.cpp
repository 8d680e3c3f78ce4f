// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/bolts/clamp_force_picture.h"

#include <algorithm>
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
using figure::Path;
using figure::Point;
using figure::Range;
using figure::Room;
using figure::Side;
using figure::Text;
using figure::Tone;
using mechanics::Friction;
using mechanics::FrictionRange;

constexpr int kPieces = 40;
constexpr double kBeyond = 0.35;  // of the range of friction, shown on either side
constexpr double kPercent = 100;
constexpr double kNewtonsPerKilonewton = 1000;

enum class Shown { Utilisation, Force, Torque };

Shown shownOf(const ClampDrawing& drawing) {
  if (!drawing.torque) return Shown::Torque;
  return drawing.criterion && !drawing.clampForce ? Shown::Utilisation : Shown::Force;
}

/// Friction under the head goes along with that in the thread, as far within its own range.
Friction frictionAt(const ClampDrawing& drawing, double thread) {
  const auto& [threads, head] = drawing.friction;
  if (threads.most <= threads.least)
    return {thread, std::max(0.001, head.least + thread - threads.least)};
  const double share = (thread - threads.least) / (threads.most - threads.least);
  return {thread, std::max(0.001, head.least + share * (head.most - head.least))};
}

/// What is shown at a friction: per cent, kN or N m.
std::optional<double> valueAt(const ClampDrawing& drawing, Shown shown, double thread) {
  const Friction friction = frictionAt(drawing, thread);
  if (shown == Shown::Force) {
    return mechanics::clampForce(*drawing.torque, drawing.joint, friction).si() /
           kNewtonsPerKilonewton;
  }
  if (shown == Shown::Torque && drawing.clampForce) {
    return mechanics::tighteningTorque(*drawing.clampForce, drawing.joint, friction).si();
  }
  const mechanics::JointFriction one{{friction.thread, friction.thread},
                                     {friction.head, friction.head}};
  if (shown == Shown::Torque) {
    const auto most =
        mechanics::greatestTorque(drawing.joint, one, *drawing.criterion, drawing.share);
    return most ? std::optional(most->si()) : std::nullopt;
  }
  const auto u = mechanics::utilisation(*drawing.torque, drawing.joint, one, *drawing.criterion);
  return u ? std::optional(kPercent * u->most) : std::nullopt;
}

std::vector<Point> curve(const ClampDrawing& drawing, Shown shown, const Range& range) {
  std::vector<Point> points;
  for (int i = 0; i <= kPieces; ++i) {
    const double friction = range.low + (range.high - range.low) * i / kPieces;
    if (const auto value = valueAt(drawing, shown, friction)) points.push_back({friction, *value});
  }
  return points;
}

Range frictionAxis(const FrictionRange& friction) {
  Range range{friction.least, friction.most};
  range.widen(kBeyond, 0.08);
  return {std::max(range.low, 0.02), std::min(range.high, 1.0)};
}

const char* axisTitle(Shown shown) {
  switch (shown) {
    case Shown::Utilisation:
      return "share of yield, %";
    case Shown::Force:
      return "clamp force, kN";
    case Shown::Torque:
      return "tightening torque, N m";
  }
  return "";
}

std::string valueLabel(Shown shown, double value) {
  switch (shown) {
    case Shown::Utilisation:
      return shortNumber(value, 0) + " %";
    case Shown::Force:
      return withoutZeros(fixedDecimal(value, value < 10 ? 2 : 1) + " kN");
    case Shown::Torque:
      return labelText(newtonMetres(value));
  }
  return "";
}

void drawLimit(Figure& figure, const Axes& axes, double value, const std::string& name) {
  if (value > axes.y().high || value < axes.y().low) return;
  figure.add(figure::dashed(axes.at(axes.x().low, value), axes.at(axes.x().high, value),
                            Tone::Limit, 0.12));
  figure.add(Text{{axes.right() - 0.1, axes.at(0, value).y},
                  name,
                  Side::AboveLeft,
                  Room::Movable,
                  Tone::Limit,
                  figure::kLabelSize});
}

void drawLimits(Figure& figure, const ClampDrawing& drawing, Shown shown, const Axes& axes) {
  if (shown == Shown::Utilisation) {
    drawLimit(figure, axes, kPercent, "yields");
    if (drawing.share < 1) {
      drawLimit(figure, axes, kPercent * drawing.share,
                "usual most, " + shortNumber(kPercent * drawing.share, 0) + " %");
    }
  }
  if (shown == Shown::Force && drawing.clampForce) {
    const double force = drawing.clampForce->si() / kNewtonsPerKilonewton;
    drawLimit(figure, axes, force, "force given, " + valueLabel(shown, force));
  }
}

Mark endMark(Point at, const ClampDrawing& drawing, Shown shown, double value) {
  if (shown != Shown::Utilisation) return {at, MarkShape::Disc, Tone::Accent, 0.4};
  const Verdict verdict = value > kPercent                   ? Verdict::Outside
                          : value > kPercent * drawing.share ? Verdict::Undecided
                                                             : Verdict::Within;
  return verdictMark(at, verdict, 0.5);
}

void drawEnds(Figure& figure, const ClampDrawing& drawing, Shown shown, const Axes& axes) {
  const FrictionRange& range = drawing.friction.thread;
  const auto put = [&](double friction, const char* name, Side side) {
    const auto value = valueAt(drawing, shown, friction);
    if (!value) return;
    const Mark mark = endMark(axes.inside(friction, *value), drawing, shown, *value);
    figure.add(mark);
    Text text = figure::label(mark, name + valueLabel(shown, *value), side);
    text.size = 1.0;
    text.strong = true;
    figure.add(std::move(text));
  };
  if (range.least == range.most) return put(range.least, "", Side::AboveRight);
  const bool rising = shown == Shown::Torque;
  put(range.least, "slippery: ", rising ? Side::BelowRight : Side::AboveRight);
  put(range.most, "rough: ", rising ? Side::AboveLeft : Side::BelowLeft);
}

void drawImplied(Figure& figure, const ClampDrawing& drawing, const Axes& axes) {
  const auto friction =
      mechanics::impliedFriction(*drawing.torque, *drawing.clampForce, drawing.joint);
  if (!friction) return;
  const Mark mark{axes.inside(*friction, drawing.clampForce->si() / kNewtonsPerKilonewton),
                  MarkShape::Disc, Tone::Accent, 0.45};
  figure.add(mark);
  Text text = figure::label(mark, "friction " + shortNumber(*friction, 3), Side::BelowLeft);
  text.size = 1.0;
  text.strong = true;
  figure.add(std::move(text));
}

Range valueRange(const ClampDrawing& drawing, Shown shown, const std::vector<Point>& within) {
  double most = shown == Shown::Utilisation ? 1.1 * kPercent : 0;
  for (const Point& point : within) most = std::max(most, 1.12 * point.y);
  if (shown == Shown::Force && drawing.clampForce) {
    most = std::max(most, 1.2 * drawing.clampForce->si() / kNewtonsPerKilonewton);
  }
  return {0, most > 0 ? most : 1};
}

/// Both given: the friction that fits is sought in the whole of what there is.
ClampDrawing widened(ClampDrawing drawing) {
  if (!drawing.torque || !drawing.clampForce) return drawing;
  const auto friction =
      mechanics::impliedFriction(*drawing.torque, *drawing.clampForce, drawing.joint);
  const double middle = friction.value_or(0.14);
  const FrictionRange range{std::clamp(0.6 * middle, 0.02, 0.9),
                            std::min(1.6 * middle + 0.02, 1.0)};
  drawing.friction = {range, range};
  return drawing;
}

}  // namespace

Figure clampForcePicture(const ClampDrawing& given, figure::Size size) {
  const ClampDrawing drawing = widened(given);
  const Shown shown = shownOf(drawing);
  const FrictionRange& friction = drawing.friction.thread;
  Figure figure = newFigure(size, std::string(axisTitle(shown)) + " over friction",
                            "The range of friction that counts and what it means at its ends");
  const Range x = frictionAxis(friction);
  const std::vector<Point> within =
      curve(drawing, shown, {friction.least, std::max(friction.most, friction.least)});
  const Axes axes(size, x, valueRange(drawing, shown, within));
  const bool both = drawing.torque && drawing.clampForce;
  axes.draw(figure, AxisText{.title = both ? "friction" : "friction in the thread"},
            AxisText{.title = axisTitle(shown)});
  if (!both) {
    Path band =
        axes.band({{friction.least, axes.y().low}, {friction.most, axes.y().low}},
                  {{friction.least, axes.y().high}, {friction.most, axes.y().high}}, Tone::Accent);
    band.fill = 0.1;
    figure.add(std::move(band));
  }
  drawLimits(figure, drawing, shown, axes);
  std::vector<Point> beyond = curve(drawing, shown, x);
  std::erase_if(beyond, [&](const Point& point) { return point.y > axes.y().high; });
  Path all = axes.line(beyond, Tone::Quiet);
  all.stroke = figure::Stroke::Dashed;
  all.width = 0.1;
  figure.add(std::move(all));
  Path line = axes.line(within, Tone::Accent);
  line.width = 0.26;
  figure.add(std::move(line));
  if (both) {
    drawImplied(figure, drawing, axes);
  } else {
    drawEnds(figure, drawing, shown, axes);
  }
  return figure;
}

}  // namespace sw::compute
