// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/series_centre.h"

#include <cmath>

#include "check_rows.h"

namespace sw::measure {
namespace {

SeriesCentre centreFor(std::vector<double> readings, std::optional<PooledScatter> pooled,
                       double graduation = 0.1) {
  SeriesInput input;
  input.readings = std::move(readings);
  input.pooled = pooled;
  input.instrument.graduation = graduation;
  return centreOf(input, describe(input.readings).value());
}

TEST(SeriesCentre, RangeRuleAcceptsUpToTheFactor) {
  // Largest accepted range of 3 readings with s_r = 0.35: 1.1601 (SciPy; ISO 5725-6 from memory).
  const PooledScatter past{0.35, 20};
  const auto narrow = centreFor({19.0, 19.5, 20.159}, past);
  EXPECT_EQ(narrow.consistency, Consistency::Consistent);
  EXPECT_EQ(narrow.scatter->degreesOfFreedom, 22) << "past 20 and today's 2 pooled";
  const auto wide = centreFor({19.0, 19.5, 20.162}, past);
  EXPECT_EQ(wide.consistency, Consistency::RangeTooWide);
  EXPECT_EQ(wide.scatter->degreesOfFreedom, 2) << "today's scatter alone";
  EXPECT_NEAR(wide.value, (19.0 + 19.5 + 20.162) / 3, 1e-12);
}

TEST(SeriesCentre, PooledScatterIsWeightedByDegreesOfFreedom) {
  // s 0.42 (nu 4) with today's 0.5 (nu 2): sqrt((4 0.1764 + 2 0.25) / 6).
  const auto got = centreFor({18.5, 19.0, 19.5}, PooledScatter{0.42, 4});
  EXPECT_NEAR(got.scatter->standardDeviation, std::sqrt((4 * 0.1764 + 2 * 0.25) / 6), 1e-12);
  EXPECT_EQ(got.scatter->degreesOfFreedom, 6);
}

TEST(SeriesCentre, MedianStandsForFiveThatDisagree) {
  const auto got = centreFor({18.5, 19.0, 18.6, 19.1, 23.0}, PooledScatter{0.35, 20});
  EXPECT_EQ(got.consistency, Consistency::InconsistentMedianUsed);
  EXPECT_EQ(got.value, 19.0);
  EXPECT_EQ(got.spreadFactor, 1.2);
  EXPECT_EQ(got.scatter->degreesOfFreedom, 4);
}

TEST(SeriesCentre, RepeatabilityIsAtLeastHalfAGraduation) {
  // Pooled 0.01 on a 0.5 scale would reject two neighbouring marks; half a graduation accepts them.
  const auto got = centreFor({19.0, 19.0, 19.5}, PooledScatter{0.01, 20}, 0.5);
  EXPECT_EQ(got.consistency, Consistency::Consistent);
}

TEST(SeriesCentre, WithoutAPastThereIsNothingToHoldTheRangeAgainst) {
  const auto got = centreFor({18.5, 19.0, 18.5, 19.5, 19.0}, std::nullopt, 0.5);
  EXPECT_EQ(got.consistency, Consistency::TooFew);
  EXPECT_NEAR(got.value, 18.9, 1e-12);
  EXPECT_EQ(got.spreadFactor, 1);
}

TEST(SeriesCentre, OutlierAmongSixIsMarkedAndKept) {
  // J4: G = 1.99208 above 1.8871 (SciPy).
  const auto got = centreFor({18.5, 19.0, 18.5, 19.5, 19.0, 23.0}, std::nullopt, 0.5);
  EXPECT_EQ(got.consistency, Consistency::Outlier);
  EXPECT_EQ(got.outlier, 5U);
  EXPECT_NEAR(got.value, 117.5 / 6, 1e-12) << "the mean of all six";
  const auto coarse = centreFor({19.0, 19.0, 19.0, 19.0, 19.0, 19.5}, std::nullopt, 0.5);
  EXPECT_EQ(coarse.consistency, Consistency::Consistent) << "one graduation is no outlier";
  EXPECT_EQ(coarse.outlier, std::nullopt);
}

TEST(SeriesCentre, OneReadingTakesThePastScatterOrNone) {
  EXPECT_FALSE(centreFor({19.0}, std::nullopt).scatter);
  const auto got = centreFor({19.0}, PooledScatter{0.4, 10});
  EXPECT_EQ(got.scatter->standardDeviation, 0.4);
  EXPECT_EQ(got.consistency, Consistency::TooFew);
}

}  // namespace
}  // namespace sw::measure
