// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/conjugate_line.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "check_rows.h"

// Synthetic example: scatter 1.2 N known like from 6 readings, prior a = 30 +- 6 N, k = -180 +- 60
// N/mm; readings in order. Figures: NumPy; probabilities also by integration of prior times
// likelihood on a three-dimensional grid and by two million draws.

namespace sw::measure {
namespace {

using test::check;
using test::relative;

constexpr LinePrior kPrior{.intercept = 30,
                           .interceptSpread = 6,
                           .slope = -180,
                           .slopeSpread = 60,
                           .scatter = 1.2,
                           .scatterReadings = 6};
constexpr std::array kReadings{LineGroup{0.00, 31.0}, LineGroup{0.05, 23.5}, LineGroup{0.10, 14.0}};

LineBelief after(std::size_t readings) {
  return updated(beliefOf(kPrior), std::span(kReadings).first(readings)).belief;
}

double below(const LineBelief& belief, const StudentPlace& place, double limit) {
  return studentCdf((limit - place.location) / place.scale, belief.degreesOfFreedom());
}

struct BeliefRow {
  std::size_t readings;
  double intercept, slope, vII, vIS, vSS, shape, rate;
};

TEST(ConjugateLine, BeliefReadingByReading) {
  for (const BeliefRow& row :
       {BeliefRow{0, 30.0, -180.0, 25.0, 0.0, 2500.0, 3, 4.32},
        BeliefRow{1, 30.961538, -180.0, 0.961538, 0.0, 2500.0, 3.5, 4.339231},
        BeliefRow{2, 31.141686, -156.580796, 0.848946, -14.637002, 597.18970, 4, 4.483349},
        BeliefRow{3, 31.328069, -170.248863, 0.771716, -8.973439, 181.86169, 4.5, 4.708251}}) {
    const LineBelief belief = after(row.readings);
    constexpr auto kSource = "NumPy";
    const auto line = [&](std::string_view id, double got, double expected) {
      return test::CheckRow{id, got, expected, std::max(1e-9, relative(expected, 1e-6)), kSource};
    };
    check({line("a", belief.intercept, row.intercept), line("k", belief.slope, row.slope),
           line("V aa", belief.varianceIntercept, row.vII),
           line("V ak", belief.covariance, row.vIS), line("V kk", belief.varianceSlope, row.vSS),
           line("shape", belief.shape, row.shape), line("rate", belief.rate, row.rate)});
  }
}

struct PredictionRow {
  std::size_t readings;
  double x, limit, mean, scaleReading, scaleLine, nu, pReading, pLine;
  std::optional<double> pBand;  ///< 14 to 20 N
};

TEST(ConjugateLine, PredictionsReadingByReading) {
  for (const PredictionRow& row :
       {PredictionRow{0, 0.08, 20, 15.6, 7.776889, 7.683749, 6, 0.703971, 0.706155, 0.282072},
        PredictionRow{1, 0.08, 20, 16.561538, 4.718936, 4.585693, 7, 0.755066, 0.761100, 0.453017},
        PredictionRow{2, 0.08, 20, 18.615222, 1.931660, 1.615696, 8, 0.753080, 0.791832, 0.731126},
        PredictionRow{3, 0.08, 20, 17.708160, 1.252714, 0.723197, 9, 0.949712, 0.994308, 0.941734},
        PredictionRow{1, 0.15, 10, 3.961538, 8.495264, 8.421979, 7, 0.749901, 0.751699, {}},
        PredictionRow{3, 0.15, 10, 5.790739, 1.821633, 1.507338, 9, 0.976909, 0.989516, {}}}) {
    const LineBelief belief = after(row.readings);
    const StudentPlace line = belief.at(row.x);
    const StudentPlace reading = belief.at(row.x, 1.0);
    constexpr auto kSource = "NumPy, SciPy; grid integration";
    check({{"mean", line.location, row.mean, 2e-6, kSource},
           {"scale of a reading", reading.scale, row.scaleReading, 2e-6, kSource},
           {"scale of the line", line.scale, row.scaleLine, 2e-6, kSource},
           {"nu", belief.degreesOfFreedom(), row.nu, 0, kSource},
           {"P(reading)", below(belief, reading, row.limit), row.pReading, 2e-6, kSource},
           {"P(line)", below(belief, line, row.limit), row.pLine, 2e-6, kSource}});
    if (row.pBand) {
      const double band = below(belief, reading, 20) - below(belief, reading, 14);
      EXPECT_NEAR(band, *row.pBand, 2e-6) << row.readings;
    }
  }
}

TEST(ConjugateLine, TheShimThatIsMostProbablyWithin) {
  const LineBelief belief = after(3);
  const std::array<std::pair<double, double>, 6> rows{{{0.05, 0.0203},
                                                       {0.075, 0.8616},
                                                       {0.08, 0.9417},
                                                       {0.085, 0.9558},
                                                       {0.09, 0.9138},
                                                       {0.10, 0.5838}}};
  for (const auto& [shim, expected] : rows) {
    const StudentPlace reading = belief.at(shim, 1.0);
    EXPECT_NEAR(below(belief, reading, 20) - below(belief, reading, 14), expected, 1e-4) << shim;
  }
  check({{"slope", belief.slopeAlone().location, -170.24886, 1e-5, "NumPy"},
         {"its scale", belief.slopeAlone().scale, 13.79412, 1e-5, "NumPy"}});
}

TEST(ConjugateLine, WithoutBeliefItIsTheLineOfTheGuide) {
  // JCGM 100 H.3: b(30) -0.149377, u 0.00413860, new reading 0.00541857, nu 9.
  constexpr std::array kX{1.521, 2.012, 2.512, 3.003, 3.507, 3.999,
                          4.513, 5.002, 5.503, 6.010, 6.511};
  constexpr std::array kY{-0.171, -0.169, -0.166, -0.159, -0.164, -0.165,
                          -0.156, -0.157, -0.159, -0.161, -0.160};
  std::vector<LineGroup> groups;
  for (std::size_t i = 0; i < kX.size(); ++i) groups.push_back({kX[i], kY[i]});
  LineBelief nothing;
  nothing.varianceIntercept = nothing.varianceSlope = 1e12;
  nothing.shape = -1;
  nothing.rate = 0;
  const LineBelief belief = updated(nothing, groups).belief;
  check({{"b(30)", belief.at(10).location, -0.149377, 1e-6, "JCGM 100 H.3"},
         {"line", belief.at(10).scale, 0.00413860, 5e-9, "JCGM 100 H.3"},
         {"reading", belief.at(10, 1).scale, 0.00541857, 5e-9, "NumPy"},
         {"nu", belief.degreesOfFreedom(), 9, 0, "n - 2"}});
}

TEST(ConjugateLine, ThreePullsOnOneShim) {
  const std::array<double, 3> pulls{23.0, 23.5, 24.0};
  std::vector<LineGroup> apart{kReadings[0]};
  for (const double pull : pulls) apart.push_back({0.05, pull});
  apart.push_back(kReadings[2]);
  const std::array together{kReadings[0], groupOf(0.05, pulls), kReadings[2]};
  for (const auto& belief :
       {updated(beliefOf(kPrior), apart).belief, updated(beliefOf(kPrior), together).belief}) {
    EXPECT_DOUBLE_EQ(belief.shape, 3.0 + 5.0 / 2.0);
    EXPECT_NEAR(belief.slope, -170.2, 0.3);
  }
  const auto a = updated(beliefOf(kPrior), apart).belief;
  const auto b = updated(beliefOf(kPrior), together).belief;
  EXPECT_NEAR(a.rate, b.rate, 1e-12);
  EXPECT_NEAR(a.intercept, b.intercept, 1e-12);
  EXPECT_NEAR(a.varianceSlope, b.varianceSlope, 1e-9);
}

TEST(ConjugateLine, OneShimPulledThreeTimesAlone) {
  // Pulls 23.0, 23.5, 24.0 at 0.05 alone: NumPy.
  const LineBelief belief =
      updated(beliefOf(kPrior), std::array{groupOf(0.05, std::array<double, 3>{23.0, 23.5, 24.0})})
          .belief;
  const auto reading = belief.at(0.05, 1.0);
  const auto line = belief.at(0.05);
  check({{"a", belief.intercept, 31.978892, 1e-6, "NumPy"},
         {"k", belief.slope, -170.10554, 1e-5, "NumPy"},
         {"shape", belief.shape, 4.5, 0, "3 + 3/2"},
         {"rate", belief.rate, 4.668945, 1e-6, "NumPy"},
         {"at .05", line.location, 23.473615, 1e-6, "NumPy"},
         {"reading", reading.scale, 1.174624, 1e-6, "NumPy"},
         {"line", line.scale, 0.584977, 1e-6, "NumPy"}});
}

TEST(ConjugateLine, OneByOneInAnyOrderIsAllAtOnce) {
  const LineBelief once = after(3);
  std::array order{0U, 1U, 2U};
  do {
    LineBelief belief = beliefOf(kPrior);
    for (const unsigned i : order) belief = updated(belief, std::array{kReadings[i]}).belief;
    EXPECT_NEAR(belief.intercept, once.intercept, 1e-10);
    EXPECT_NEAR(belief.slope, once.slope, 1e-9);
    EXPECT_NEAR(belief.rate, once.rate, 1e-10);
    EXPECT_NEAR(belief.covariance, once.covariance, 1e-10);
  } while (std::next_permutation(order.begin(), order.end()));
}

TEST(ConjugateLine, EvidenceIsTheProductOfPredictiveDensities) {
  // p(y1, y2, y3) = p(y1) p(y2 | y1) p(y3 | y1, y2), each a Student t (definition of evidence).
  const auto density = [](const LineBelief& belief, const LineGroup& reading) {
    const auto place = belief.at(reading.x, 1.0);
    const double nu = belief.degreesOfFreedom();
    const double t = (reading.mean - place.location) / place.scale;
    return std::lgamma((nu + 1) / 2) - std::lgamma(nu / 2) - 0.5 * std::log(nu * M_PI) -
           (nu + 1) / 2 * std::log1p(t * t / nu) - std::log(place.scale);
  };
  const auto differenceOf = [&](LinePrior prior) {
    LineBelief belief = beliefOf(prior);
    const double all = updated(belief, kReadings).logEvidence;
    double chain = 0;
    for (const LineGroup& reading : kReadings) {
      chain += density(belief, reading);
      belief = updated(belief, std::array{reading}).belief;
    }
    return all - chain;
  };
  LinePrior other = kPrior;
  other.slope = -60;
  other.slopeSpread = 10;
  other.intercept = 22;
  // The same constant for every belief of the same shape and rate.
  EXPECT_NEAR(differenceOf(kPrior), differenceOf(other), 1e-9);
}

TEST(ConjugateLine, ScalingTheForceLeavesEveryProbability) {
  for (const double c : {0.1, 4.448, 1000.0}) {
    LineBelief scaled = beliefOf(kPrior);
    scaled.intercept *= c;
    scaled.slope *= c;
    scaled.rate *= c * c;
    std::vector<LineGroup> readings(kReadings.begin(), kReadings.end());
    for (auto& reading : readings) reading.mean *= c;
    scaled = updated(scaled, readings).belief;
    EXPECT_NEAR(below(scaled, scaled.at(0.08), 20 * c), below(after(3), after(3).at(0.08), 20),
                1e-12);
  }
}

TEST(ConjugateLine, RepeatsAtOnePlaceShrinkTheLineThereAndNeverBelowZero) {
  std::vector<LineGroup> readings(kReadings.begin(), kReadings.end());
  double before = updated(beliefOf(kPrior), readings).belief.at(0.05).scale;
  for (int i = 0; i < 50; ++i) {
    readings.push_back({0.05, 23.0 + (i % 2)});
    const double scale = updated(beliefOf(kPrior), readings).belief.at(0.05).scale;
    EXPECT_GT(scale, 0);
    if (i > 4) {
      EXPECT_LT(scale, before);
    }
    before = scale;
  }
}

TEST(ConjugateLine, SetUpsOfOnePlaceCountAsOneReadingWhenTheyDifferALot) {
  // With a set-up spread far above the scatter a hundred pulls of one set-up weigh like one.
  const std::array many{LineGroup{0.05, 23.5, 100, 0.0}};
  const std::array one{LineGroup{0.05, 23.5, 1, 0.0}};
  constexpr double kRatio = 400.0;
  const double manyScale = updated(beliefOf(kPrior), many, kRatio).belief.varianceIntercept;
  const double oneScale = updated(beliefOf(kPrior), one, kRatio).belief.varianceIntercept;
  EXPECT_NEAR(manyScale, oneScale, 0.01 * oneScale);
  // And a ratio of 0 changes nothing.
  EXPECT_EQ(updated(beliefOf(kPrior), many, 0.0).belief.rate,
            updated(beliefOf(kPrior), many).belief.rate);
}

}  // namespace
}  // namespace sw::measure
