// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/conjugate_line.h"

#include <cmath>

namespace sw::measure {

namespace {

/// A symmetric 2 x 2 matrix.
struct Symmetric {
  double ii = 0, is = 0, ss = 0;

  [[nodiscard]] double determinant() const { return ii * ss - is * is; }
  [[nodiscard]] Symmetric inverse() const {
    const double det = determinant();
    return {ss / det, -is / det, ii / det};
  }
  [[nodiscard]] double form(double i, double s) const {
    return ii * i * i + 2.0 * is * i * s + ss * s * s;
  }
};

double weightOf(const LineGroup& group, double setUpRatio) {
  return 1.0 / (1.0 / group.count + setUpRatio);
}

}  // namespace

LineGroup groupOf(double x, std::span<const double> readings) {
  LineGroup group{x, 0.0, static_cast<double>(readings.size()), 0.0};
  for (const double y : readings) group.mean += y;
  group.mean /= group.count;
  for (const double y : readings) group.squares += (y - group.mean) * (y - group.mean);
  return group;
}

StudentPlace LineBelief::at(double x, double share) const {
  const double h = varianceIntercept + 2.0 * covariance * x + varianceSlope * x * x;
  return {intercept + slope * x, std::sqrt(rate / shape * (h + share))};
}

StudentPlace LineBelief::slopeAlone() const {
  return {slope, std::sqrt(rate / shape * varianceSlope)};
}

LineBelief beliefOf(const LinePrior& prior) {
  LineBelief belief;
  belief.intercept = prior.intercept;
  belief.slope = prior.slope;
  const double perScatter = 1.0 / prior.scatter;
  belief.varianceIntercept = std::pow(prior.interceptSpread * perScatter, 2);
  belief.varianceSlope = std::pow(prior.slopeSpread * perScatter, 2);
  belief.shape = prior.scatterReadings / 2.0;
  belief.rate = belief.shape * prior.scatter * prior.scatter;
  return belief;
}

UpdatedLine updated(const LineBelief& before, std::span<const LineGroup> groups,
                    double setUpRatio) {
  const Symmetric v0{before.varianceIntercept, before.covariance, before.varianceSlope};
  const Symmetric p0 = v0.inverse();
  Symmetric precision = p0;
  double toIntercept = p0.ii * before.intercept + p0.is * before.slope;
  double toSlope = p0.is * before.intercept + p0.ss * before.slope;
  double count = 0;
  double logWeights = 0;
  for (const LineGroup& group : groups) {
    const double w = weightOf(group, setUpRatio);
    precision.ii += w;
    precision.is += w * group.x;
    precision.ss += w * group.x * group.x;
    toIntercept += w * group.mean;
    toSlope += w * group.x * group.mean;
    count += group.count;
    if (setUpRatio > 0) logWeights += std::log(w / group.count);
  }
  const Symmetric v = precision.inverse();
  UpdatedLine after;
  LineBelief& belief = after.belief;
  belief.intercept = v.ii * toIntercept + v.is * toSlope;
  belief.slope = v.is * toIntercept + v.ss * toSlope;
  belief.varianceIntercept = v.ii;
  belief.covariance = v.is;
  belief.varianceSlope = v.ss;
  double squares = p0.form(belief.intercept - before.intercept, belief.slope - before.slope);
  for (const LineGroup& group : groups) {
    const double residual = group.mean - belief.intercept - belief.slope * group.x;
    squares += group.squares + weightOf(group, setUpRatio) * residual * residual;
  }
  belief.shape = before.shape + count / 2.0;
  belief.rate = before.rate + squares / 2.0;
  after.logEvidence = 0.5 * (std::log(v.determinant() / v0.determinant()) + logWeights) -
                      belief.shape * std::log(belief.rate);
  return after;
}

}  // namespace sw::measure
