// SPDX-License-Identifier: GPL-3.0-or-later
#include "figure/axes.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "figure/vectors.h"

namespace sw::figure {

namespace {

constexpr double kLeftRoom = 3.6;   // em, numbers of the y axis
constexpr double kRightRoom = 1.2;  // half a number of the x axis
constexpr double kTopRoom = 1.9;    // title of the y axis
constexpr double kBottomRoom = 3.0;
constexpr double kNumberSize = 0.85;
constexpr double kEmAMark = 4.5;
constexpr double kPolarRoom = 1.9;
constexpr double kPolarInner = 0.35;  // of the outer radius: small values stay apart

}  // namespace

void Range::include(double value) {
  low = std::min(low, value);
  high = std::max(high, value);
}

void Range::widen(double share, double least) {
  const double span = high - low;
  const double more = span > 0 ? share * span : 0.5 * least;
  low -= more;
  high += more;
}

double roundStep(double span, int marks) {
  const double rough = span / std::max(marks, 1);
  if (!(rough > 0) || !std::isfinite(rough)) return 1.0;
  const double power = std::pow(10.0, std::floor(std::log10(rough)));
  const double lead = rough / power;
  return (lead < 1.5 ? 1 : lead < 3.5 ? 2 : lead < 7.5 ? 5 : 10) * power;
}

std::vector<double> roundMarks(const Range& range, double step) {
  std::vector<double> marks;
  const double slack = 1e-9 * step;
  for (double k = std::ceil((range.low - slack) / step); k * step <= range.high + slack; ++k) {
    marks.push_back(k * step);
  }
  return marks;
}

std::string markText(double value, double step, int decimals) {
  const int needed = std::max(0, static_cast<int>(-std::floor(std::log10(step) + 1e-9)));
  std::array<char, 64> text{};
  const double shown = std::abs(value) < 1e-9 * step ? 0.0 : value;
  const auto end = std::to_chars(text.data(), text.data() + text.size(), shown,
                                 std::chars_format::fixed, decimals < 0 ? needed : decimals);
  return {text.data(), end.ptr};
}

Axes::Axes(Size size, const Range& x, const Range& y)
    : m_x(x),
      m_y(y),
      m_left(kLeftRoom),
      m_right(size.width - kRightRoom),
      m_top(kTopRoom),
      m_bottom(size.height - kBottomRoom) {}

Point Axes::at(double x, double y) const {
  return {m_left + (x - m_x.low) / (m_x.high - m_x.low) * (m_right - m_left),
          m_bottom - (y - m_y.low) / (m_y.high - m_y.low) * (m_bottom - m_top)};
}

Point Axes::inside(double x, double y) const {
  return at(std::clamp(x, m_x.low, m_x.high), std::clamp(y, m_y.low, m_y.high));
}

void Axes::draw(Figure& figure, const AxisText& x, const AxisText& y) const {
  const auto marksFor = [](double room) { return std::max(2, static_cast<int>(room / kEmAMark)); };
  const auto stepFor = [&](const AxisText& text, const Range& range, double room) {
    return text.step > 0 ? text.step : roundStep(range.high - range.low, marksFor(room));
  };
  const double stepX = stepFor(x, m_x, m_right - m_left);
  const double stepY = stepFor(y, m_y, 1.6 * (m_bottom - m_top));
  for (const double value : roundMarks(m_x, stepX)) {
    const Point foot = at(value, m_y.low);
    figure.add(figure::line(foot, {foot.x, m_top}, Tone::Grid, 0.06));
    figure.add(Text{{foot.x, m_bottom + 0.2},
                    markText(value, stepX, x.decimals),
                    Side::Below,
                    Room::Optional,
                    Tone::Quiet,
                    kNumberSize});
  }
  for (const double value : roundMarks(m_y, stepY)) {
    const Point foot = at(m_x.low, value);
    figure.add(figure::line(foot, {m_right, foot.y}, Tone::Grid, 0.06));
    figure.add(Text{{m_left - 0.3, foot.y},
                    markText(value, stepY, y.decimals),
                    Side::Left,
                    Room::Optional,
                    Tone::Quiet,
                    kNumberSize});
  }
  figure.add(figure::line({m_left, m_bottom}, {m_right, m_bottom}, Tone::Quiet, 0.1));
  figure.add(figure::line({m_left, m_top}, {m_left, m_bottom}, Tone::Quiet, 0.1));
  figure.add(Text{{m_right, figure.size.height - 0.1},
                  x.title,
                  Side::AboveLeft,
                  Room::Fixed,
                  Tone::Quiet,
                  kNumberSize});
  figure.add(Text{{0.2, 0.1}, y.title, Side::BelowRight, Room::Fixed, Tone::Quiet, kNumberSize});
}

Path Axes::line(const std::vector<Point>& values, Tone tone) const {
  Path path;
  path.tone = tone;
  path.width = 0.18;
  for (const Point& value : values) path.points.push_back(inside(value.x, value.y));
  return path;
}

Path Axes::band(const std::vector<Point>& low, const std::vector<Point>& high, Tone tone) const {
  Path path = line(low, tone);
  for (auto it = high.rbegin(); it != high.rend(); ++it) {
    path.points.push_back(inside(it->x, it->y));
  }
  path.stroke = Stroke::None;
  path.closed = true;
  path.fill = 0.18;
  return path;
}

Polar::Polar(Size size, const Range& radius)
    : m_radius(radius),
      m_centre{size.width / 2, size.height / 2},
      m_inner(0),
      m_outer(std::min(size.width, size.height) / 2 - kPolarRoom) {
  m_inner = kPolarInner * m_outer;
}

Point Polar::at(double degrees, double value) const {
  const double share = (value - m_radius.low) / (m_radius.high - m_radius.low);
  return onCircle(m_centre, m_inner + std::max(0.0, share) * (m_outer - m_inner), degrees);
}

void Polar::draw(Figure& figure, const std::string& unit,
                 const std::vector<std::string>& spokes) const {
  const double step = roundStep(m_radius.high - m_radius.low, 3);
  for (const double value : roundMarks(m_radius, step)) {
    Path ring;
    const Point top = at(0, value);
    ring.points = arc(m_centre, m_centre.y - top.y, 0, 360);
    ring.tone = Tone::Grid;
    ring.width = 0.06;
    figure.add(std::move(ring));
  }
  const auto n = static_cast<double>(spokes.size());
  for (std::size_t i = 0; i < spokes.size(); ++i) {
    const double degrees = 360.0 * static_cast<double>(i) / n;
    figure.add(
        figure::line(at(degrees, m_radius.low), at(degrees, m_radius.high), Tone::Grid, 0.06));
    figure.add(Text{onCircle(m_centre, m_outer + 0.9, degrees), spokes[i], Side::Centre,
                    Room::Optional, Tone::Quiet, kNumberSize});
  }
  // The numbers of the rings between two spokes, so that no trace point sits on them.
  const double between = n > 0 ? 180.0 / n : 15.0;
  for (const double value : roundMarks(m_radius, step)) {
    figure.add(Text{at(between, value), markText(value, step) + " " + unit, Side::Centre,
                    Room::Optional, Tone::Quiet, 0.75});
  }
}

}  // namespace sw::figure
