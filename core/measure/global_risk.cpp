// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/global_risk.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "measure/distributions.h"

namespace sw::measure {

namespace {

using Function = std::function<double(double)>;

// Abscissae and weights of the 15-point Kronrod rule and its 7-point Gauss rule (QUADPACK qk15).
constexpr std::array<double, 8> kNodes{
    0.991455371120812639206854697526329, 0.949107912342758524526189684047851,
    0.864864423359769072789712788640926, 0.741531185599394439863864773280788,
    0.586087235467691130294144691693311, 0.405845151377397166906606412076961,
    0.207784955007898467600689403773245, 0.0};
constexpr std::array<double, 8> kKronrod{
    0.022935322010529224963732008058970, 0.063092092629978553290700663189204,
    0.104790010322250183839876322541518, 0.140653259715525918745189590510238,
    0.169004726639267902826583426598550, 0.190350578064785409913256402421014,
    0.204432940075298892414161999234649, 0.209482141084727828012999174891714};
constexpr std::array<double, 4> kGauss{
    0.129484966168869693270611432679082, 0.279705391489276667901467771423780,
    0.381830050505118944950369775488975, 0.417959183673469387755102040816327};

constexpr double kTolerance = 1e-13;
constexpr int kDeepest = 30;

double integrate(const Function& f, double low, double high, int depth = 0) {
  const double centre = (low + high) / 2;
  const double half = (high - low) / 2;
  double kronrod = kKronrod.back() * f(centre);
  double gauss = kGauss.back() * f(centre);
  for (std::size_t i = 0; i + 1 < kNodes.size(); ++i) {
    const double pair = f(centre - half * kNodes[i]) + f(centre + half * kNodes[i]);
    kronrod += kKronrod[i] * pair;
    if (i % 2 == 1) gauss += kGauss[i / 2] * pair;
  }
  const bool fine = std::abs(kronrod - gauss) * half <= kTolerance;
  // The first levels always split, so that a narrow peak between the nodes is not overlooked.
  if (depth >= kDeepest || (fine && depth >= 4)) return kronrod * half;
  return integrate(f, low, centre, depth + 1) + integrate(f, centre, high, depth + 1);
}

bool holds(const LimitBand& band, double x) {
  return (!band.min || x >= *band.min) && (!band.max || x <= *band.max);
}

double acceptProbability(const RiskQuestion& question, double part) {
  const double u = question.measurementUncertainty;
  const LimitBand& band = question.acceptance;
  const double upper = band.max ? normalCdf((*band.max - part) / u) : 1;
  const double lower = band.min ? normalCdf((*band.min - part) / u) : 0;
  return std::max(0.0, upper - lower);
}

std::vector<double> breakpoints(const RiskQuestion& question) {
  std::vector<double> points{question.parts.supportMin, question.parts.supportMax};
  for (const auto& limit : {question.tolerance.min, question.tolerance.max, question.acceptance.min,
                            question.acceptance.max}) {
    if (limit && *limit > points[0] && *limit < points[1]) points.push_back(*limit);
  }
  std::sort(points.begin(), points.end());
  return points;
}

GlobalRisk riskOf(const RiskQuestion& question) {
  const std::vector<double> points = breakpoints(question);
  const Function& density = question.parts.density;
  const Function both = [&](double x) { return density(x) * acceptProbability(question, x); };
  GlobalRisk risk;
  for (std::size_t i = 0; i + 1 < points.size(); ++i) {
    const double all = integrate(density, points[i], points[i + 1]);
    const double accepted = integrate(both, points[i], points[i + 1]);
    risk.accepted += accepted;
    if (holds(question.tolerance, (points[i] + points[i + 1]) / 2)) {
      risk.producer += all - accepted;
    } else {
      risk.outOfTolerance += all;
      risk.consumer += accepted;
    }
  }
  return risk;
}

RiskQuestion withGuard(RiskQuestion question, double guard) {
  question.acceptance = question.tolerance;
  if (question.acceptance.min) *question.acceptance.min += guard;
  if (question.acceptance.max) *question.acceptance.max -= guard;
  return question;
}

}  // namespace

Result<GlobalRisk> globalRisk(const RiskQuestion& question) {
  if (!(question.measurementUncertainty > 0)) {
    return fail(ErrorCode::OutOfRange, "measure.not_positive", "measurement_uncertainty");
  }
  if (!(question.parts.supportMax > question.parts.supportMin)) {
    return fail(ErrorCode::OutOfRange, "measure.not_positive", "support");
  }
  if (!question.tolerance.any()) return fail(ErrorCode::Missing, "measure.no_limit", "tolerance");
  return riskOf(question);
}

Result<double> guardForConsumerRisk(const RiskQuestion& question, double consumerRisk) {
  if (const auto checked = globalRisk(question); !checked) return failAs(checked);
  const double span = question.parts.supportMax - question.parts.supportMin;
  const LimitBand& band = question.tolerance;
  const auto riskAt = [&](double guard) { return riskOf(withGuard(question, guard)).consumer; };
  double low = -span;
  double high = band.min && band.max ? (*band.max - *band.min) / 2 : span;
  if (riskAt(low) < consumerRisk || riskAt(high) > consumerRisk) {
    return fail(ErrorCode::Degenerate, "measure.no_guard_band", "consumer_risk");
  }
  for (int i = 0; i < 60; ++i) {
    const double middle = (low + high) / 2;
    (riskAt(middle) > consumerRisk ? low : high) = middle;
  }
  return (low + high) / 2;
}

}  // namespace sw::measure
