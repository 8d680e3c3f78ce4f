// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/brakes/disc_wear.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "measure/budget.h"
#include "mechanics/number_checks.h"

namespace sw::mechanics {

namespace {

Result<void> check(const DiscWearInput& input) {
  NumberChecks checks;
  for (std::size_t at = 0; at < input.visits.size(); ++at) {
    const std::string field = "visits/" + std::to_string(at);
    checks.notNegative(field + "/odometer", input.visits[at].odometer)
        .positive(field + "/minimum", input.visits[at].minimum)
        .positive(field + "/uncertainty", input.visits[at].standardUncertainty);
  }
  return checks.positive("discard", input.discard).confidence(input.confidence).done();
}

std::vector<WearVisit> inOrder(std::vector<WearVisit> visits) {
  std::stable_sort(visits.begin(), visits.end(),
                   [](const WearVisit& a, const WearVisit& b) { return a.odometer < b.odometer; });
  return visits;
}

/// A disc does not grow: a later visit thicker by more than both uncertainties allow.
Result<void> checkNotThicker(const std::vector<WearVisit>& visits, double confidence) {
  const double factor = measure::coverageFactor(confidence, {});
  for (std::size_t later = 1; later < visits.size(); ++later) {
    for (std::size_t earlier = 0; earlier < later; ++earlier) {
      const double rise = (visits[later].minimum - visits[earlier].minimum).si();
      const double u = std::hypot(visits[later].standardUncertainty.si(),
                                  visits[earlier].standardUncertainty.si());
      if (rise <= factor * u) continue;
      return fail(ErrorCode::Degenerate, "disc_wear.thicker_later", "visits",
                  {{"earlier", std::to_string(earlier + 1)}, {"later", std::to_string(later + 1)}});
    }
  }
  return {};
}

/// The line about its middle, in metres of thickness and metres of road.
struct WearLine {
  double middle = 0;     ///< weighted mean of the road
  double thickness = 0;  ///< at the middle
  double wear = 0;       ///< thickness lost a metre
  double thicknessVariance = 0;
  double wearVariance = 0;
  measure::DegreesOfFreedom degreesOfFreedom;
};

WearLine fitted(const std::vector<WearVisit>& visits) {
  WearLine line;
  double weights = 0;
  const auto weightOf = [](const WearVisit& visit) {
    return 1 / (visit.standardUncertainty.si() * visit.standardUncertainty.si());
  };
  for (const WearVisit& visit : visits) {
    weights += weightOf(visit);
    line.middle += weightOf(visit) * visit.odometer.si();
    line.thickness += weightOf(visit) * visit.minimum.si();
  }
  line.middle /= weights;
  line.thickness /= weights;
  double sxx = 0, sxy = 0;
  for (const WearVisit& visit : visits) {
    const double x = visit.odometer.si() - line.middle;
    sxx += weightOf(visit) * x * x;
    sxy += weightOf(visit) * x * (visit.minimum.si() - line.thickness);
  }
  line.wear = -sxy / sxx;
  line.thicknessVariance = 1 / weights;
  line.wearVariance = 1 / sxx;
  double chiSquared = 0;
  for (const WearVisit& visit : visits) {
    const double off =
        visit.minimum.si() - line.thickness + line.wear * (visit.odometer.si() - line.middle);
    chiSquared += weightOf(visit) * off * off;
  }
  const double freedom = static_cast<double>(visits.size()) - 2;
  if (freedom > 0 && chiSquared > freedom) {
    line.thicknessVariance *= chiSquared / freedom;
    line.wearVariance *= chiSquared / freedom;
    line.degreesOfFreedom = freedom;
  }
  return line;
}

void putDistance(const WearLine& line, double beyondMiddle, Length discard, DiscWear& result) {
  const double margin = line.thickness - discard.si();
  const double k2 = result.coverageFactor * result.coverageFactor;
  const double a = line.wear * line.wear - k2 * line.wearVariance;
  const double b = line.wear * margin;
  const double c = margin * margin - k2 * line.thicknessVariance;
  const double root = std::sqrt(std::max(0.0, b * b - a * c));
  const auto fromLast = [beyondMiddle](double q) {
    return metres(std::max(0.0, q - beyondMiddle));
  };
  result.distance = fromLast(margin / line.wear);
  // With neither wear nor margin proved there is no lower end but the visit itself.
  const bool bounded = a > 0 || c > 0;
  if (bounded) result.distanceLeast = fromLast(c / (b + root));
  if (a > 0) result.distanceMost = fromLast((b + root) / a);
  result.recheck = std::min(result.distanceLeast / 2, result.spanned);
}

}  // namespace

Result<DiscWear> discWear(const DiscWearInput& input) {
  if (auto checked = check(input); !checked) return failAs(checked);
  const auto visits = inOrder(input.visits);
  if (visits.empty() || visits.front().odometer == visits.back().odometer) {
    return fail(ErrorCode::Degenerate, "disc_wear.too_few_visits", "visits",
                {{"visits", std::to_string(visits.size())}});
  }
  if (auto steady = checkNotThicker(visits, input.confidence); !steady) return failAs(steady);
  const WearLine line = fitted(visits);
  if (!(line.wear > 0)) return fail(ErrorCode::Degenerate, "disc_wear.no_wear", "visits");
  DiscWear result;
  result.coverageFactor = measure::coverageFactor(input.confidence, line.degreesOfFreedom);
  result.scatterRaised = line.degreesOfFreedom.has_value();
  const double spread = result.coverageFactor * std::sqrt(line.wearVariance);
  result.rate = line.wear * kWearBase;
  result.rateLeast = (line.wear - spread) * kWearBase;
  result.rateMost = (line.wear + spread) * kWearBase;
  const double beyondMiddle = visits.back().odometer.si() - line.middle;
  result.thickness = metres(line.thickness - line.wear * beyondMiddle);
  result.spanned = visits.back().odometer - visits.front().odometer;
  result.atDiscard = result.thickness <= input.discard;
  if (result.atDiscard) {
    result.distanceMost = Length{};
    return result;
  }
  putDistance(line, beyondMiddle, input.discard, result);
  return result;
}

}  // namespace sw::mechanics
