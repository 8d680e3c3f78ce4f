// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/decision.h"

#include <cmath>
#include <random>

#include "check_rows.h"

namespace sw::measure {
namespace {

using test::check;

LimitBand atMost(double max) {
  return {{}, max};
}
LimitBand atLeast(double min) {
  return {min, {}};
}

Verdict verdictOf(const Estimate& estimate, const LimitBand& limit) {
  return decide(estimate, limit, {}).verdict;
}

TEST(Decision, PublishedConformanceProbabilities) {
  const std::string_view jcgm = "JCGM 106 example (mem), printed digits recomputed";
  const auto oil = conformance({13.6, 1.8, {}}, {12.5, 16.3});
  const auto six = conformance({9.8, 0.1, {}}, {9.0, 10.0});
  const auto seven = conformance({10.5, 0.4, {}}, {9.0, 11.0});
  check({{"F2 diode", conformance({-5.47, 0.05, {}}, atMost(-5.40)).inside, 0.919243, 1e-6, jcgm},
         {"F3 container", conformance({507, 10, {}}, atLeast(490)).inside, 0.955435, 1e-6, jcgm},
         {"F4 oil", oil.inside, 0.66263, 1e-6, jcgm},
         {"F6 above", six.above, 0.0227501, 1e-7, "suncal"},
         {"F6 p_nc", six.outside(), 0.0227501, 1e-7, "suncal"},
         {"F6 below", six.below, 6.2e-16, 0.2e-16, "suncal prints 6e-16"},
         {"F7 p_nc", seven.outside(), 0.10574, 1e-4, "suncal"},
         {"F7 below", seven.below, 0.00009, 1e-5, "suncal"},
         {"F7 above", seven.above, 0.10565, 1e-4, "suncal"}});
}

TEST(Decision, SpeedCheckWithRelativeUncertainty) {
  // Rejection at 99.9 % against 100 km/h, u = 2 % of the reading: y - 3.0902 u = 100.
  const double threshold = 100 / (1 - 0.02 * normalQuantile(0.999));
  check({{"F5", threshold, 106.588, 1e-3, "JCGM 106 example (mem), prints 107"}});
  EXPECT_NEAR(conformance({106.588, 0.02 * 106.588, {}}, atMost(100)).above, 0.999, 1e-6);
}

TEST(Decision, GuardBandsAgainstOneLimit) {
  const Estimate eight{21.3, 0.40, {}};
  const Estimate nine{20.5, 0.9, 4.0};
  check({{"F8 p_c", conformance(eight, atMost(22)).inside, 0.959941, 1e-5, "SciPy 1.10.1"},
         {"F8 95 % edge", 22 - guardBand(0.40, {}, 0.95), 21.3421, 1e-4, "SciPy 1.10.1"},
         {"F9 p_c t", conformance(nine, atMost(22)).inside, 0.914546, 1e-6, "SciPy 1.10.1"},
         {"F9 p_c normal", conformance({20.5, 0.9, {}}, atMost(22)).inside, 0.95221, 1e-6,
          "SciPy 1.10.1"},
         {"F9 g95", guardBand(0.9, 4.0, 0.95), 1.91866, 1e-5, "SciPy 1.10.1"}});
  EXPECT_EQ(verdictOf(eight, atMost(22)), Verdict::Within);
  EXPECT_EQ(decide(eight, atMost(22), {0.95, DecisionRule::GuardBandK2}).verdict,
            Verdict::Undecided);
}

struct VerdictRow {
  const char* id;
  Estimate estimate;
  LimitBand limit;
  double probability;
  Verdict verdict;
};

TEST(Decision, MicrometerAndForceAgainstLimits) {
  const Estimate disc{11.016, 0.00464551, 51.748};
  const Estimate force{18.80419, 0.380911, 70.153};
  const Estimate normal{18.80419, 0.380911, {}};
  const VerdictRow rows[]{
      {"F10 20", force, atMost(20), 0.998761, Verdict::Within},
      {"F10 19.5", force, atMost(19.5), 0.964000, Verdict::Within},
      {"F10 19", force, atMost(19), 0.695586, Verdict::Undecided},
      {"F10 18", force, atMost(18), 0.019159, Verdict::Outside},
      {"F10 20 normal", normal, atMost(20), 0.999153, Verdict::Within},
      {"F10 19.5 normal", normal, atMost(19.5), 0.966127, Verdict::Within},
      {"F10 19 normal", normal, atMost(19), 0.696393, Verdict::Undecided},
      {"F10 18 normal", normal, atMost(18), 0.017376, Verdict::Outside},
      {"F11 11.000", disc, atLeast(11.000), 0.999428, Verdict::Within},
      {"F11 11.010", disc, atLeast(11.010), 0.898877, Verdict::Undecided},
      {"F11 normal", {11.016, 0.00464551, {}}, atLeast(11.000), 0.999714, Verdict::Within},
      {"F11 normal", {11.016, 0.00464551, {}}, atLeast(11.010), 0.901747, Verdict::Undecided},
      {"F12 15.2", {15.2, 0.5, {}}, {14.0, 22.0}, 0.991802, Verdict::Within},
      {"F12 14.6", {14.6, 0.5, {}}, {14.0, 22.0}, 0.884930, Verdict::Undecided},
      {"F12 13.1", {13.1, 0.5, {}}, {14.0, 22.0}, 0.035930, Verdict::Outside}};
  for (const VerdictRow& row : rows) {
    check({{row.id, conformance(row.estimate, row.limit).inside, row.probability, 1e-6,
            "SciPy 1.10.1"}});
    EXPECT_EQ(verdictOf(row.estimate, row.limit), row.verdict) << row.id;
  }
}

TEST(Decision, BestPossibleInTheCentreOfABand) {
  struct Row {
    double ratio, best;
  };
  for (const Row& row :
       {Row{3, 0.866386}, Row{3.92, 0.950004}, Row{4, 0.954500}, Row{6, 0.997300}}) {
    const LimitBand band{0, row.ratio};
    check({{"F13", conformance({row.ratio / 2, 1, {}}, band).inside, row.best, 1e-6,
            "SciPy 1.10.1"}});
    EXPECT_EQ(instrumentTooCoarse(band, 1, 0.95, DecisionRule::ConformanceProbability),
              row.best < 0.95);
  }
  EXPECT_FALSE(instrumentTooCoarse(atMost(1), 100, 0.95, DecisionRule::ConformanceProbability))
      << "a single limit can always be passed from far enough";
}

TEST(Decision, ExactTwoSidedGuardBand) {
  struct Row {
    double ratio, guard;
  };
  for (const Row& row : {Row{4, 1.79621}, Row{5, 1.64877}, Row{6, 1.64492}, Row{8, 1.64485}}) {
    const auto guard = guardBandTwoSided(row.ratio, 1, {}, 0.95);
    ASSERT_TRUE(guard);
    check({{"F14", *guard, row.guard, 1e-5, "SciPy 1.10.1"}});
  }
  EXPECT_TRUE(guardBandTwoSided(3.91994, 1, {}, 0.95));
  EXPECT_FALSE(guardBandTwoSided(3.91992, 1, {}, 0.95)) << "F14: none below T/u = 3.91993";
}

TEST(Decision, FalseAcceptanceAtTheEdge) {
  check({{"F15 g = 2u", conformance({22 - 0.8, 0.4, {}}, atMost(22)).above, 0.0227501, 1e-6,
          "ILAC-G8: below 2.5 %; SciPy 1.10.1"},
         {"F15 g = 0", conformance({22, 0.4, {}}, atMost(22)).above, 0.5, 1e-6, "symmetry"}});
}

TEST(Decision, CapabilityOfAMeasurement) {
  EXPECT_NEAR(measurementCapability({14.0, 22.0}, 0.5).value(), 4.0, 1e-12);  // T / (4u)
  EXPECT_EQ(measurementCapability(atMost(22), 0.5), std::nullopt);
}

TEST(Decision, BarRisesAfterAnExtension) {
  EXPECT_EQ(decisionBar(0.95, 3, SeriesPlan::FixedBeforehand), 0.95);
  EXPECT_EQ(decisionBar(0.95, 40, SeriesPlan::FixedBeforehand), 0.95);
  EXPECT_DOUBLE_EQ(decisionBar(0.95, 4, SeriesPlan::Extended), 0.975);
  EXPECT_DOUBLE_EQ(decisionBar(0.95, 5, SeriesPlan::Extended), 0.975);
  EXPECT_DOUBLE_EQ(decisionBar(0.95, 6, SeriesPlan::Extended), 0.987);
  EXPECT_DOUBLE_EQ(decisionBar(0.95, 10, SeriesPlan::Extended), 0.987);
  EXPECT_DOUBLE_EQ(decisionBar(0.95, 11, SeriesPlan::Extended), 0.995);
}

TEST(Decision, SidesOfOutsideAndUndecidedValues) {
  const LimitBand band{14, 22};
  const auto sideAt = [&](double y) { return decide({y, 0.5, {}}, band, {}).side; };
  EXPECT_EQ(sideAt(18), LimitSide::None);
  EXPECT_EQ(sideAt(12), LimitSide::Below);
  EXPECT_EQ(sideAt(24), LimitSide::Above);
  EXPECT_EQ(sideAt(14.2), LimitSide::InsideLikely);
  EXPECT_EQ(sideAt(13.8), LimitSide::OutsideLikely);
}

TEST(Decision, ClassicGuardBandNeedsTheRaisedBarAfterAnExtension) {
  // 2.1 u from the limit: past 2u, p_c 0.982, short of 0.987.
  const Estimate estimate{22 - 2.1 * 0.4, 0.4, {}};
  const DecisionRule rule = DecisionRule::GuardBandK2;
  EXPECT_EQ(decide(estimate, atMost(22), {0.987, rule, SeriesPlan::FixedBeforehand}).verdict,
            Verdict::Within);
  EXPECT_EQ(decide(estimate, atMost(22), {0.987, rule, SeriesPlan::Extended}).verdict,
            Verdict::Undecided);
  EXPECT_TRUE(instrumentTooCoarse({0.0, 3.99}, 1, 0.95, rule));
  EXPECT_FALSE(instrumentTooCoarse({0.0, 4.0}, 1, 0.95, rule));
}

TEST(Decision, BandFarNarrowerThanUncertaintyCondemnsNoValueInIt) {
  const LimitBand narrow{20.0, 20.05};
  EXPECT_GT(conformance({20.02, 1, {}}, narrow).outside(), 0.95);
  EXPECT_EQ(verdictOf({20.02, 1, {}}, narrow), Verdict::Undecided);
  EXPECT_EQ(verdictOf({22.5, 1, {}}, narrow), Verdict::Outside);
}

TEST(Decision, ZeroUncertaintyDecidesByPosition) {
  EXPECT_EQ(verdictOf({22, 0, {}}, atMost(22)), Verdict::Within);
  EXPECT_EQ(verdictOf({22.001, 0, {}}, atMost(22)), Verdict::Outside);
  EXPECT_EQ(verdictOf({13.9, 0, {}}, {14.0, 22.0}), Verdict::Outside);
}

class RandomEstimates : public testing::Test {
 protected:
  Estimate next() {
    const double y = std::uniform_real_distribution<double>(5, 40)(m_random);
    const double u = std::uniform_real_distribution<double>(0.05, 5)(m_random);
    const double nu = std::uniform_real_distribution<double>(1, 60)(m_random);
    return m_random() % 3 == 0 ? Estimate{y, u, {}} : Estimate{y, u, nu};
  }
  std::mt19937_64 m_random{20};
};

TEST_F(RandomEstimates, ProbabilityGrowsWithTheUpperLimit) {
  for (int i = 0; i < 300; ++i) {
    const Estimate estimate = next();
    double before = 0;
    for (double max = 0; max < 60; max += 1.7) {
      const double now = conformance(estimate, atMost(max)).inside;
      EXPECT_GE(now, before);
      before = now;
    }
  }
}

TEST_F(RandomEstimates, ScalingAndShiftingLeaveTheProbability) {
  for (int i = 0; i < 300; ++i) {
    const Estimate e = next();
    const LimitBand band{e.value - 3, e.value + 1.5};
    const double p = conformance(e, band).inside;
    for (double c : {1e-3, 0.25, 9.80665}) {
      const Estimate scaled{c * e.value, c * e.standardUncertainty, e.degreesOfFreedom};
      const LimitBand scaledBand{c * *band.min, c * *band.max};
      EXPECT_NEAR(conformance(scaled, scaledBand).inside, p, 1e-12);
    }
    const Estimate shifted{e.value + 100, e.standardUncertainty, e.degreesOfFreedom};
    EXPECT_NEAR(conformance(shifted, {*band.min + 100, *band.max + 100}).inside, p, 1e-11);
    const Estimate mirrored{-e.value, e.standardUncertainty, e.degreesOfFreedom};
    EXPECT_NEAR(conformance(mirrored, {-*band.max, -*band.min}).inside, p, 1e-14);
  }
}

TEST_F(RandomEstimates, SharesAddUpToOne) {
  for (int i = 0; i < 300; ++i) {
    const auto share = conformance(next(), {12.0, 25.0});
    EXPECT_NEAR(share.inside + share.below + share.above, 1, 1e-12);
    EXPECT_GE(share.inside, 0);
  }
}

}  // namespace
}  // namespace sw::measure
