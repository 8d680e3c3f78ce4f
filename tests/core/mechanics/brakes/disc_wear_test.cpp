// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/brakes/disc_wear.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace sw::mechanics {
namespace {

constexpr double kKilometre = 1000;

WearVisit visit(double kilometres, double minimum, double uncertainty = 0.005) {
  return {metres(kilometres * kKilometre), millimetres(minimum), millimetres(uncertainty)};
}

DiscWearInput inputOf(std::vector<WearVisit> visits) {
  return {std::move(visits), millimetres(11.0), 0.95};
}

double inKilometres(Length length) {
  return length.si() / kKilometre;
}

TEST(DiscWear, TwoVisits) {
  // 0.3 mm over 30 000 km; interval by root search on the quotient's condition (SciPy 1.10.1).
  const auto got = discWear(inputOf({visit(10000, 12.0), visit(40000, 11.7)})).value();
  EXPECT_NEAR(inMillimetres(got.rate), 0.1, 1e-9);
  EXPECT_NEAR(inMillimetres(got.rateLeast), 0.0953803, 1e-6);
  EXPECT_NEAR(inMillimetres(got.rateMost), 0.1046197, 1e-6);
  EXPECT_NEAR(inMillimetres(got.thickness), 11.7, 1e-9);
  EXPECT_NEAR(inKilometres(got.distance), 70000, 1e-3);
  EXPECT_NEAR(inKilometres(got.distanceLeast), 66185.989, 0.01);
  ASSERT_TRUE(got.distanceMost);
  EXPECT_NEAR(inKilometres(*got.distanceMost), 74177.592, 0.01);
  EXPECT_NEAR(inKilometres(got.recheck), 30000, 1e-3) << "no further than was watched";
  EXPECT_FALSE(got.scatterRaised);
}

TEST(DiscWear, FourVisitsThatAgree) {
  // scipy.optimize.curve_fit with absolute uncertainties, root search.
  const auto got = discWear(inputOf({visit(10000, 12.00, 0.010), visit(25000, 11.86, 0.012),
                                     visit(40000, 11.69, 0.010), visit(52000, 11.585, 0.011)}))
                       .value();
  EXPECT_FALSE(got.scatterRaised);
  EXPECT_NEAR(inMillimetres(got.rate), 0.1004967, 1e-6);
  EXPECT_NEAR(inMillimetres(got.rateLeast), 0.0940033, 1e-6);
  EXPECT_NEAR(inKilometres(got.distance), 57641.636, 0.1);
  EXPECT_NEAR(inKilometres(got.distanceLeast), 52783.558, 0.1);
  EXPECT_NEAR(inKilometres(*got.distanceMost), 63156.276, 0.1);
}

TEST(DiscWear, VisitsThatScatterMoreThanTheyShouldWidenTheInterval) {
  // The same path, scaled by chi^2 / 2 = 102.4 with Student's t for 2 degrees of freedom (SciPy).
  const auto got = discWear(inputOf({visit(10000, 12.00, 0.004), visit(25000, 11.80, 0.006),
                                     visit(40000, 11.74, 0.004), visit(52000, 11.55, 0.005)}))
                       .value();
  EXPECT_TRUE(got.scatterRaised);
  EXPECT_NEAR(got.coverageFactor, 4.3026527, 1e-6);  // JCGM 100 table G.2: 4.30
  EXPECT_NEAR(inMillimetres(got.rateLeast), 0.0380804, 1e-6);
  EXPECT_NEAR(inMillimetres(got.rateMost), 0.1597344, 1e-6);
  EXPECT_NEAR(inKilometres(got.distance), 58830.480, 0.1);
  EXPECT_NEAR(inKilometres(got.distanceLeast), 27267.347, 0.1);
  EXPECT_NEAR(inKilometres(*got.distanceMost), 187993.586, 1);
  EXPECT_NEAR(got.recheck.si(), got.distanceLeast.si() / 2, 1e-6) << "half of the lower end";
}

TEST(DiscWear, WearThatIsNotProvedHasNoUpperEnd) {
  // 5 um over 2000 km with 5 um each (SciPy).
  const auto got = discWear(inputOf({visit(10000, 12.0), visit(12000, 11.995)})).value();
  EXPECT_LT(got.rateLeast.si(), 0);
  EXPECT_FALSE(got.distanceMost);
  EXPECT_NEAR(inKilometres(got.distanceLeast), 104781.266, 0.1);
  EXPECT_LT(got.distanceLeast, got.distance);
}

TEST(DiscWear, OrderOfVisitsDoesNotMatterAndScaleCarriesOver) {
  std::vector<WearVisit> visits{visit(10000, 12.0), visit(25000, 11.86), visit(40000, 11.7)};
  const auto forward = discWear(inputOf(visits)).value();
  std::reverse(visits.begin(), visits.end());
  const auto backward = discWear(inputOf(visits)).value();
  EXPECT_NEAR(forward.distanceLeast.si(), backward.distanceLeast.si(), 1e-3);
  for (WearVisit& each : visits) each.odometer = 2 * each.odometer;
  const auto stretched = discWear(inputOf(visits)).value();
  EXPECT_NEAR(stretched.rate.si(), forward.rate.si() / 2, 1e-12);
  EXPECT_NEAR(stretched.distanceLeast.si(), 2 * forward.distanceLeast.si(), 1);
}

TEST(DiscWear, AtDiscardThereIsNoDistanceLeft) {
  auto got = discWear(inputOf({visit(10000, 11.3), visit(40000, 10.98)})).value();
  EXPECT_TRUE(got.atDiscard);
  EXPECT_EQ(got.recheck.si(), 0);
  EXPECT_EQ(got.distance.si(), 0);
  // Above it, but by less than is proved: looked at again at once.
  got = discWear(inputOf({visit(10000, 11.3), visit(40000, 11.004)})).value();
  EXPECT_FALSE(got.atDiscard);
  EXPECT_GT(got.distance.si(), 0);
  EXPECT_EQ(got.recheck.si(), 0);
}

TEST(DiscWear, RefusesToExtrapolateWithoutReason) {
  const auto keyOf = [](std::vector<WearVisit> visits) {
    const auto got = discWear(inputOf(std::move(visits)));
    return got ? std::string("accepted") : got.error().key + " " + got.error().field;
  };
  EXPECT_EQ(keyOf({}), "disc_wear.too_few_visits visits");
  EXPECT_EQ(keyOf({visit(10000, 12)}), "disc_wear.too_few_visits visits");
  EXPECT_EQ(keyOf({visit(10000, 12), visit(10000, 11.9)}), "disc_wear.too_few_visits visits");
  EXPECT_EQ(keyOf({visit(10000, 11.8), visit(30000, 11.9)}), "disc_wear.thicker_later visits");
  // A new disc between the visits, even where the line as a whole still falls.
  EXPECT_EQ(keyOf({visit(0, 12), visit(30000, 11.2), visit(40000, 11.9), visit(90000, 11.1)}),
            "disc_wear.thicker_later visits");
  EXPECT_EQ(keyOf({visit(10000, 11.8), visit(30000, 11.8)}), "disc_wear.no_wear visits");
  EXPECT_EQ(keyOf({visit(10000, 11.8), visit(30000, 11.805)}), "disc_wear.no_wear visits");
  EXPECT_EQ(keyOf({visit(10000, 12), visit(30000, 11.8, 0)}),
            "measure.not_positive visits/1/uncertainty");
  EXPECT_EQ(keyOf({visit(-1, 12), visit(30000, 11.8)}), "measure.not_positive visits/0/odometer");
}

}  // namespace
}  // namespace sw::mechanics
