// SPDX-License-Identifier: GPL-3.0-or-later
#include "figure/number_line.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

#include "figure/vectors.h"

namespace sw::figure {

namespace {

constexpr double kEmAMark = 4.5;
constexpr double kNumberSize = 0.85;
constexpr double kTitleSize = 0.85;

int decadeOf(double value) {
  return static_cast<int>(std::floor(std::log10(value) + 1e-9));
}

}  // namespace

NumberLine::NumberLine(double left, double right, const Range& range, Spacing spacing)
    : m_left(left), m_right(right), m_range(range), m_spacing(spacing) {}

double NumberLine::at(double value) const {
  const double within = std::clamp(value, m_range.low, m_range.high);
  const double share = m_spacing == Spacing::Ratio
                           ? std::log(within / m_range.low) / std::log(m_range.high / m_range.low)
                           : (within - m_range.low) / (m_range.high - m_range.low);
  return m_left + share * (m_right - m_left);
}

Side NumberLine::roomySide(double value) const {
  return 2 * at(value) < m_left + m_right ? Side::Right : Side::Left;
}

std::vector<double> NumberLine::marks() const {
  if (m_spacing == Spacing::Even) {
    const int room = std::max(2, static_cast<int>((m_right - m_left) / kEmAMark));
    return roundMarks(m_range, roundStep(m_range.high - m_range.low, room));
  }
  std::vector<double> values;
  const int first = decadeOf(m_range.low);
  for (int decade = first; decade <= decadeOf(m_range.high); ++decade) {
    for (const double lead : {1.0, 2.0, 5.0}) {
      const double value = lead * std::pow(10.0, decade);
      if (value >= m_range.low && value <= m_range.high) values.push_back(value);
    }
  }
  return values;
}

void NumberLine::draw(Figure& figure, double top, double bottom, const std::string& title) const {
  const std::vector<double> values = marks();
  const double even = values.size() > 1 ? values[1] - values[0] : 1.0;
  for (const double value : values) {
    const double x = at(value);
    figure.add(line({x, bottom}, {x, top}, Tone::Grid, 0.06));
    const double step = m_spacing == Spacing::Even ? even : std::pow(10.0, decadeOf(value));
    figure.add(Text{{x, bottom + 0.2},
                    markText(value, step),
                    Side::Below,
                    Room::Optional,
                    Tone::Quiet,
                    kNumberSize});
  }
  figure.add(line({m_left, bottom}, {m_right, bottom}, Tone::Quiet, 0.1));
  figure.add(
      Text{{m_right, bottom + 1.5}, title, Side::BelowLeft, Room::Fixed, Tone::Quiet, kTitleSize});
}

Path NumberLine::bar(const Range& values, double middle, double height, Tone tone,
                     double fill) const {
  const double x0 = at(values.low);
  const double x1 = at(values.high);
  return outline({{x0, middle - height / 2},
                  {x1, middle - height / 2},
                  {x1, middle + height / 2},
                  {x0, middle + height / 2}},
                 tone, fill, 0.1);
}

Path NumberLine::upright(double value, double top, double bottom, Tone tone, Stroke stroke) const {
  Path path = line({at(value), top}, {at(value), bottom}, tone, 0.14);
  path.stroke = stroke;
  return path;
}

}  // namespace sw::figure
