// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/series_centre.h"

#include <algorithm>
#include <array>

#include "measure/consistency.h"

namespace sw::measure {

namespace {

constexpr int kMedianFrom = 5;
constexpr double kMedianSpread = 1.2;
constexpr double kOutlierLevel = 0.05;
constexpr double kRangeSlack = 1 + 1e-9;

std::optional<Scatter> ownScatter(const RepeatedReadings& series) {
  if (!series.standardDeviation) return std::nullopt;
  return Scatter{*series.standardDeviation, *series.degreesOfFreedom()};
}

std::optional<Scatter> withPast(const std::optional<Scatter>& own, const PooledScatter& past) {
  const Scatter known{past.standardDeviation, past.degreesOfFreedom};
  if (!own) return known;
  const std::array both{known, *own};
  const auto pooled = pool(both);
  return pooled ? std::optional<Scatter>(*pooled) : own;
}

bool rangeTooWide(const SeriesInput& input, const RepeatedReadings& series) {
  if (!input.pooled || series.count < 2) return false;
  const double repeatability =
      std::max(input.pooled->standardDeviation, input.instrument.graduation / 2);
  return series.range > largestAcceptedRange(series.count, repeatability) * kRangeSlack;
}

void markOutlier(const SeriesInput& input, const RepeatedReadings& series, SeriesCentre& centre) {
  if (!grubbsApplies(series, input.instrument.graduation)) return;
  const auto test = grubbs(input.readings);
  if (!test) return;
  if (test->statistic <= grubbsCritical(series.count, kOutlierLevel, Tail::TwoSided)) return;
  centre.outlier = test->index;
  if (centre.consistency != Consistency::InconsistentMedianUsed) {
    centre.consistency = Consistency::Outlier;
  }
}

}  // namespace

SeriesCentre centreOf(const SeriesInput& input, const RepeatedReadings& series) {
  SeriesCentre centre;
  centre.value = series.mean;
  centre.scatter = ownScatter(series);
  if (rangeTooWide(input, series)) {
    if (series.count < kMedianFrom) {
      centre.consistency = Consistency::RangeTooWide;
    } else {
      centre.consistency = Consistency::InconsistentMedianUsed;
      centre.value = median(input.readings);
      centre.spreadFactor = kMedianSpread;
    }
  } else {
    if (input.pooled) centre.scatter = withPast(centre.scatter, *input.pooled);
    const bool tested = input.pooled ? series.count >= 2 : series.count >= 6;
    if (tested) centre.consistency = Consistency::Consistent;
  }
  markOutlier(input, series, centre);
  return centre;
}

}  // namespace sw::measure
