// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/decision.h"

#include <algorithm>
#include <cmath>

namespace sw::measure {

namespace {

constexpr double kClassicGuardFactor = 2.0;

Conformance byPosition(double value, const LimitBand& limit) {
  if (limit.min && value < *limit.min) return {0, 1, 0};
  if (limit.max && value > *limit.max) return {0, 0, 1};
  return {1, 0, 0};
}

/// F(high) - F(low) taken in the tail where both are small, so that digits survive.
double shareBetween(double low, double high, DegreesOfFreedom nu) {
  if (low > 0) return studentCdf(-low, nu) - studentCdf(-high, nu);
  return studentCdf(high, nu) - studentCdf(low, nu);
}

LimitSide sideOf(Verdict verdict, const Conformance& share) {
  if (verdict == Verdict::Within) return LimitSide::None;
  if (verdict == Verdict::Outside) {
    return share.below > share.above ? LimitSide::Below : LimitSide::Above;
  }
  return share.inside >= 0.5 ? LimitSide::InsideLikely : LimitSide::OutsideLikely;
}

bool liesWithin(double value, const LimitBand& limit) {
  return (!limit.min || value >= *limit.min) && (!limit.max || value <= *limit.max);
}

Verdict byProbability(const Conformance& share, double value, const LimitBand& limit, double bar) {
  if (share.inside >= bar) return Verdict::Within;
  if (share.outside() >= bar && !liesWithin(value, limit)) return Verdict::Outside;
  return Verdict::Undecided;
}

Verdict byGuard(double value, const LimitBand& limit, double guard) {
  const bool above = limit.max && value > *limit.max + guard;
  const bool below = limit.min && value < *limit.min - guard;
  if (above || below) return Verdict::Outside;
  const bool clearOfMax = !limit.max || value <= *limit.max - guard;
  const bool clearOfMin = !limit.min || value >= *limit.min + guard;
  return clearOfMax && clearOfMin ? Verdict::Within : Verdict::Undecided;
}

double widthOf(const LimitBand& limit) {
  return *limit.max - *limit.min;
}

}  // namespace

Conformance conformance(const Estimate& estimate, const LimitBand& limit) {
  const double u = estimate.standardUncertainty;
  if (!(u > 0)) return byPosition(estimate.value, limit);
  const DegreesOfFreedom nu = estimate.degreesOfFreedom;
  Conformance share;
  if (limit.min) share.below = studentCdf((*limit.min - estimate.value) / u, nu);
  if (limit.max) share.above = studentCdf((estimate.value - *limit.max) / u, nu);
  if (limit.min && limit.max) {
    share.inside =
        shareBetween((*limit.min - estimate.value) / u, (*limit.max - estimate.value) / u, nu);
  } else if (limit.max) {
    share.inside = studentCdf((*limit.max - estimate.value) / u, nu);
  } else if (limit.min) {
    share.inside = studentCdf((estimate.value - *limit.min) / u, nu);
  } else {
    share.inside = 1;
  }
  return share;
}

double decisionBar(double confidence, int readings, SeriesPlan plan) {
  if (plan == SeriesPlan::FixedBeforehand) return confidence;
  const double risk = 1 - confidence;
  if (readings <= 5) return 1 - 0.5 * risk;
  return readings <= 10 ? 1 - 0.26 * risk : 1 - 0.1 * risk;
}

Decision decide(const Estimate& estimate, const LimitBand& limit, const DecisionTerms& terms) {
  Decision decision;
  decision.conformance = conformance(estimate, limit);
  decision.verdict = byProbability(decision.conformance, estimate.value, limit, terms.bar);
  if (terms.rule == DecisionRule::GuardBandK2) {
    const Verdict guarded =
        byGuard(estimate.value, limit, kClassicGuardFactor * estimate.standardUncertainty);
    const bool overruled = terms.plan == SeriesPlan::Extended && decision.verdict != guarded;
    decision.verdict = overruled ? Verdict::Undecided : guarded;
  }
  decision.side = sideOf(decision.verdict, decision.conformance);
  return decision;
}

bool instrumentTooCoarse(const LimitBand& limit, double instrumentUncertainty, double confidence,
                         DecisionRule rule) {
  if (!limit.min || !limit.max || !(instrumentUncertainty > 0)) return false;
  const double halves = widthOf(limit) / (2 * instrumentUncertainty);
  if (rule == DecisionRule::GuardBandK2) return halves < kClassicGuardFactor;
  return 2 * normalCdf(halves) - 1 < confidence;
}

std::optional<double> measurementCapability(const LimitBand& limit, double standardUncertainty) {
  if (!limit.min || !limit.max || !(standardUncertainty > 0)) return std::nullopt;
  return widthOf(limit) / (4 * standardUncertainty);
}

double guardBand(double standardUncertainty, DegreesOfFreedom nu, double bar) {
  return studentQuantile(bar, nu) * standardUncertainty;
}

std::optional<double> guardBandTwoSided(double width, double standardUncertainty,
                                        DegreesOfFreedom nu, double bar) {
  const LimitBand band{0.0, width};
  const auto insideAt = [&](double y) {
    return conformance({y, standardUncertainty, nu}, band).inside;
  };
  if (insideAt(width / 2) < bar) return std::nullopt;
  double low = 0;
  double high = width / 2;
  while (true) {
    const double middle = (low + high) / 2;
    if (middle <= low || middle >= high) return high;
    (insideAt(middle) < bar ? low : high) = middle;
  }
}

}  // namespace sw::measure
