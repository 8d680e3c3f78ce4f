// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/wheels/balance.h"

#include <algorithm>
#include <cmath>
#include <complex>
#include <string>

#include "mechanics/wheels/value_checks.h"

namespace sw::mechanics {

namespace {

using Complex = std::complex<double>;
using Matrix = std::array<std::array<Complex, 2>, 2>;

constexpr double kAlike = 1e-9;
constexpr double kNoticeable = 0.3;
constexpr Angle kNoticeableTurn = degrees(30);

Complex toComplex(const WeightVector& weight) {
  return mechanics::toComplex(Polar{weight.amount.si(), weight.angle});
}

std::optional<Error> checkReading(const std::string& field, const Polar& reading) {
  return firstBad({{field + "/amount", reading.amount, Need::NotNegative},
                   {field + "/angle", reading.angle.si(), Need::Any}});
}

std::optional<Error> checkWeight(const std::string& field, const WeightVector& weight) {
  return firstBad({{field + "/amount", weight.amount.si(), Need::Positive},
                   {field + "/angle", weight.angle.si(), Need::Any}});
}

Error noEffect(std::string field) {
  return {ErrorCode::Degenerate, "balance.no_effect", std::move(field), {}};
}

bool changesLittle(const Polar& before, const Polar& after) {
  const Angle turn = withinATurn(after.angle - before.angle);
  const Angle other = degrees(360) - turn;
  return std::abs(after.amount - before.amount) < kNoticeable * before.amount &&
         std::min(turn, other) < kNoticeableTurn;
}

std::optional<Error> check(const TwoPlaneRuns& runs) {
  constexpr std::array<const char*, 2> kPlanes{"inner", "outer"};
  for (std::size_t plane = 0; plane < 2; ++plane) {
    const std::string at = kPlanes[plane];
    if (auto error = checkReading("initial/" + at, runs.initial[plane])) return error;
    if (auto error = checkWeight("trial_" + at + "/weight", runs.trialWeights[plane])) return error;
    for (std::size_t run = 0; run < 2; ++run) {
      const std::string field = std::string("trial_") + kPlanes[run] + "/" + at;
      if (auto error = checkReading(field, runs.withTrial[run][plane])) return error;
    }
  }
  return std::nullopt;
}

double squaredNorm(const Matrix& a) {
  return std::norm(a[0][0]) + std::norm(a[0][1]) + std::norm(a[1][0]) + std::norm(a[1][1]);
}

/// Of a 2 by 2 matrix: s1^2 + s2^2 is the squared norm, s1 s2 the determinant's size.
double conditionOf(double squaredNorm, double determinant) {
  const double half = squaredNorm / 2;
  const double root = std::sqrt(std::max(0.0, half * half - determinant * determinant));
  return (half + root) / determinant;
}

}  // namespace

WeightVector toWeight(const Polar& kilogramsAtAngle) {
  return {kilograms(kilogramsAtAngle.amount), kilogramsAtAngle.angle};
}

Result<OnePlaneBalance> balanceOnePlane(const OnePlaneRuns& runs) {
  if (auto error = checkReading("initial", runs.initial)) return tl::make_unexpected(*error);
  if (auto error = checkWeight("trial_weight", runs.trialWeight)) {
    return tl::make_unexpected(*error);
  }
  if (auto error = checkReading("with_trial", runs.withTrial)) return tl::make_unexpected(*error);
  const Complex initial = toComplex(runs.initial);
  const Complex change = toComplex(runs.withTrial) - initial;
  const double largest = std::max(runs.initial.amount, runs.withTrial.amount);
  if (std::abs(change) <= kAlike * largest) return tl::make_unexpected(noEffect("with_trial"));
  const Complex influence = change / toComplex(runs.trialWeight);
  OnePlaneBalance result;
  result.influence = toPolar(influence);
  result.unbalance = toWeight(toPolar(initial / influence));
  result.correction = toWeight(toPolar(-initial / influence));
  result.trialTooSmall = changesLittle(runs.initial, runs.withTrial);
  return result;
}

Polar residual(const Polar& initial, const Influence& influence, const WeightVector& fitted) {
  return toPolar(toComplex(initial) + toComplex(influence) * toComplex(fitted));
}

Result<TwoPlaneBalance> balanceTwoPlanes(const TwoPlaneRuns& runs) {
  if (auto error = check(runs)) return tl::make_unexpected(*error);
  const std::array<Complex, 2> initial{toComplex(runs.initial[0]), toComplex(runs.initial[1])};
  Matrix a{};
  for (std::size_t run = 0; run < 2; ++run) {
    const Complex weight = toComplex(runs.trialWeights[run]);
    for (std::size_t plane = 0; plane < 2; ++plane) {
      a[plane][run] = (toComplex(runs.withTrial[run][plane]) - initial[plane]) / weight;
    }
    if (std::abs(a[0][run]) + std::abs(a[1][run]) == 0) {
      return tl::make_unexpected(noEffect(run == 0 ? "trial_inner" : "trial_outer"));
    }
  }
  const Complex determinant = a[0][0] * a[1][1] - a[0][1] * a[1][0];
  const double squared = squaredNorm(a);
  if (std::abs(determinant) <= kAlike * squared) {
    return fail(ErrorCode::Degenerate, "balance.planes_alike", "trial_outer");
  }
  const std::array<Complex, 2> unbalance{
      (a[1][1] * initial[0] - a[0][1] * initial[1]) / determinant,
      (a[0][0] * initial[1] - a[1][0] * initial[0]) / determinant};
  TwoPlaneBalance result;
  result.condition = conditionOf(squared, std::abs(determinant));
  for (std::size_t plane = 0; plane < 2; ++plane) {
    result.influence[plane] = {toPolar(a[plane][0]), toPolar(a[plane][1])};
    result.unbalance[plane] = toWeight(toPolar(unbalance[plane]));
    result.correction[plane] = toWeight(toPolar(-unbalance[plane]));
  }
  return result;
}

PlanePair residual(const PlanePair& initial, const std::array<PlanePair, 2>& influence,
                   const WeightPair& fitted) {
  PlanePair left;
  for (std::size_t plane = 0; plane < 2; ++plane) {
    left[plane] =
        toPolar(toComplex(initial[plane]) + toComplex(influence[plane][0]) * toComplex(fitted[0]) +
                toComplex(influence[plane][1]) * toComplex(fitted[1]));
  }
  return left;
}

}  // namespace sw::mechanics
