// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/straight_line.h"

#include <cmath>

namespace sw::measure {

namespace {

constexpr std::size_t kLeastPoints = 3;

struct Centre {
  double x = 0;
  double y = 0;
};

Centre centreOf(std::span<const LinePoint> points) {
  Centre centre;
  for (const LinePoint& point : points) {
    centre.x += point.x;
    centre.y += point.y;
  }
  const auto n = static_cast<double>(points.size());
  centre.x /= n;
  centre.y /= n;
  // A second pass takes out what rounding left of the first.
  Centre rest;
  for (const LinePoint& point : points) {
    rest.x += point.x - centre.x;
    rest.y += point.y - centre.y;
  }
  return {centre.x + rest.x / n, centre.y + rest.y / n};
}

Result<void> checkPoints(std::span<const LinePoint> points) {
  if (points.size() < kLeastPoints) return fail(ErrorCode::Degenerate, "line.too_few", "points");
  for (const LinePoint& point : points) {
    if (!std::isfinite(point.x) || !std::isfinite(point.y)) {
      return fail(ErrorCode::OutOfRange, "measure.not_finite", "points");
    }
  }
  return {};
}

}  // namespace

LineEstimate StraightLine::at(double x) const {
  const double away = x - centre;
  const double share = 1.0 / count + away * away / spread;
  return {intercept + slope * x, scatter * std::sqrt(share), scatter * std::sqrt(1.0 + share)};
}

double StraightLine::determination() const {
  return squaresOfRegression / (squaresOfRegression + squares);
}

double StraightLine::fisher() const {
  return squaresOfRegression / (squares / degreesOfFreedom);
}

Result<StraightLine> fitLine(std::span<const LinePoint> points) {
  if (auto usable = checkPoints(points); !usable) return failAs(usable);
  const Centre centre = centreOf(points);
  double sxx = 0;
  double sxy = 0;
  for (const LinePoint& point : points) {
    sxx += (point.x - centre.x) * (point.x - centre.x);
    sxy += (point.x - centre.x) * (point.y - centre.y);
  }
  if (!(sxx > 0)) return fail(ErrorCode::Degenerate, "line.one_place", "points");
  StraightLine line;
  line.count = static_cast<double>(points.size());
  line.centre = centre.x;
  line.spread = sxx;
  line.slope = sxy / sxx;
  line.intercept = centre.y - line.slope * centre.x;
  for (const LinePoint& point : points) {
    const double residual = point.y - centre.y - line.slope * (point.x - centre.x);
    line.squares += residual * residual;
  }
  line.squaresOfRegression = line.slope * sxy;
  line.degreesOfFreedom = line.count - 2.0;
  line.scatter = std::sqrt(line.squares / line.degreesOfFreedom);
  line.slopeUncertainty = line.scatter / std::sqrt(sxx);
  const double atZero = std::sqrt(1.0 / line.count + centre.x * centre.x / sxx);
  line.interceptUncertainty = line.scatter * atZero;
  line.correlation = -centre.x / std::sqrt(sxx) / atZero;
  return line;
}

Result<LineEstimate> placeOf(const StraightLine& line, double value, double valueUncertainty) {
  if (line.slope == 0.0) return fail(ErrorCode::Degenerate, "line.flat", "points");
  const double x = (value - line.intercept) / line.slope;
  const LineEstimate there = line.at(x);
  const double steep = std::abs(line.slope);
  return LineEstimate{x, std::hypot(there.standardUncertainty, valueUncertainty) / steep,
                      std::hypot(there.standardUncertaintyNew, valueUncertainty) / steep};
}

}  // namespace sw::measure
