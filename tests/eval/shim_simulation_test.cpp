// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include "shim_coverage.h"
#include "shim_race.h"

namespace sw::eval {
namespace {

TEST(ShimCoverage, TheIntervalHoldsTheTruthAsOftenAsItSays) {
  // 10,000 axles drawn from the belief: 95 % within sampling error, thick shims and film among
  // them.
  const Coverage coverage = simulateCoverage(10000, Flaw::None, 5);
  EXPECT_EQ(coverage.axles, 10000);
  for (const double share : {coverage.share(), coverage.thickShare(), coverage.filmShare()}) {
    EXPECT_GE(share, 0.935);
    EXPECT_LE(share, 0.965);
  }
}

TEST(ShimCoverage, AModelThatIsWrongHoldsLess) {
  const Coverage bent = simulateCoverage(4000, Flaw::Power, 5);
  EXPECT_LT(bent.share(), 0.935);
  EXPECT_GT(bent.share(), 0.85);
}

TEST(ShimRace, TheAdvisorNeedsFewerStripDownsInEitherLayout) {
  for (const auto effect :
       {mechanics::ShimEffect::ThinnerRaises, mechanics::ShimEffect::ThickerRaises}) {
    const Tallies tallies = race(effect, 16);
    const double usual = tallies[0].stripDownsAnAxle();
    for (std::size_t way = 1; way < kWays; ++way) {
      EXPECT_LT(tallies[way].stripDownsAnAxle(), 0.68 * usual) << way;
      EXPECT_GT(tallies[way].proved / tallies[way].packs, 0.94) << way;
      EXPECT_LT(tallies[way].over / tallies[way].packs, 0.02) << way;
    }
  }
}

}  // namespace
}  // namespace sw::eval
