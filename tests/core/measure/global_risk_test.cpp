// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/global_risk.h"

#include <cmath>
#include <numbers>

#include "check_rows.h"
#include "measure/distributions.h"

namespace sw::measure {
namespace {

using test::check;

PartSpread normalParts(double mean, double sigma) {
  const auto density = [mean, sigma](double x) {
    const double z = (x - mean) / sigma;
    return std::exp(-z * z / 2) / (sigma * std::sqrt(2 * std::numbers::pi));
  };
  return {density, mean - 12 * sigma, mean + 12 * sigma};
}

/// Radial error of bearings in micrometres: gamma with shape 4 and rate 4.
PartSpread bearingParts() {
  const auto density = [](double x) {
    return x <= 0 ? 0.0 : std::pow(4.0, 4) * x * x * x * std::exp(-4 * x) / 6.0;
  };
  return {density, 0, 20};
}

GlobalRisk riskOf(const RiskQuestion& question) {
  return globalRisk(question).value();
}

TEST(GlobalRisk, BearingExample) {
  RiskQuestion bearing{bearingParts(), {{}, 2.0}, {{}, 2.0}, 0.25};
  const GlobalRisk plain = riskOf(bearing);
  const std::string_view source = "suncal, JCGM 106 9.5.4";
  check({{"G1", plain.outOfTolerance, 0.0423801, 1e-7, source},
         {"G2 R_C", plain.consumer, 0.00801911, 1e-8, source},
         {"G2 R_P", plain.producer, 0.0174446, 1e-7, "SciPy 1.10.1"}});
  const double guard = guardForConsumerRisk(bearing, 0.001).value();
  check({{"G3 guard", guard, 0.328171, 1e-5, source}});
  bearing.acceptance.max = 2.0 - guard;
  const GlobalRisk guarded = riskOf(bearing);
  check({{"G3 limit", *bearing.acceptance.max, 1.67183, 1e-5, source},
         {"G3 R_C", guarded.consumer, 0.001, 1e-7, source},
         {"G3 R_P", guarded.producer, 0.0754939, 1e-5, "SciPy 1.10.1"}});
}

TEST(GlobalRisk, OffCentreNormalParts) {
  const RiskQuestion question{normalParts(9.5, 0.3), {9.0, 10.0}, {9.0, 10.0}, 0.1};
  const GlobalRisk got = riskOf(question);
  check({{"G4 out", got.outOfTolerance, 0.0955807, 1e-7, "suncal"},
         {"G4 R_C", got.consumer, 0.0189422, 1e-7, "suncal"},
         {"G4 R_P", got.producer, 0.0372078, 1e-7, "suncal"},
         {"G5 guard", guardForConsumerRisk(question, 0.005).value(), 0.0920660, 1e-6, "suncal"}});
  // G6: the same in another unit and place, 1500 +/- 0.2, sigma 0.12, u_m 0.04.
  const GlobalRisk scaled =
      riskOf({normalParts(1500, 0.12), {1499.8, 1500.2}, {1499.8, 1500.2}, 0.04});
  check({{"G6 R_C", scaled.consumer, got.consumer, 1e-9, "scaling"},
         {"G6 R_P", scaled.producer, got.producer, 1e-9, "scaling"}});
}

TEST(GlobalRisk, GuardBandPaperCases) {
  const GlobalRisk seven = riskOf({normalParts(0, 1), {-2.0, 2.0}, {-2.0, 2.0}, 0.25});
  const GlobalRisk eight = riskOf({normalParts(0, 1), {-2.0, 2.0}, {-1.82, 1.82}, 0.5});
  const std::string_view source = "suncal (Deaver), prints 0.8, 1.5, 0.8, 6.6 %";
  check({{"G7 R_C", seven.consumer, 0.0080061, 1e-6, source},
         {"G7 R_P", seven.producer, 0.0148509, 1e-6, source},
         {"G8 R_C", eight.consumer, 0.0080516, 1e-6, source},
         {"G8 R_P", eight.producer, 0.0661065, 1e-6, source}});
}

struct ShareRow {
  double inTolerance, consumer, badAmongAccepted;
};

TEST(GlobalRisk, ShareOfBadAmongAccepted) {
  for (const ShareRow& row :
       {ShareRow{0.60, 4.838603, 8.260082}, ShareRow{0.80, 2.855831, 3.632272},
        ShareRow{0.95, 0.871010, 0.923897}}) {
    const double sigma = 1 / normalQuantile((1 + row.inTolerance) / 2);
    const GlobalRisk got = riskOf({normalParts(0, sigma), {-1.0, 1.0}, {-1.0, 1.0}, sigma / 4});
    check({{"G9 R_C %", got.consumer * 100, row.consumer, 1e-5, "suncal (NCSLI RP-19 draft)"},
           {"G9 of accepted %", got.badAmongAccepted() * 100, row.badAmongAccepted, 1e-5,
            "suncal (NCSLI RP-19 draft)"}});
  }
}

TEST(GlobalRisk, RefusesWhatHasNoAnswer) {
  RiskQuestion question{normalParts(0, 1), {-2.0, 2.0}, {-2.0, 2.0}, 0};
  EXPECT_EQ(globalRisk(question).error().key, "measure.not_positive");
  question.measurementUncertainty = 0.25;
  EXPECT_EQ(guardForConsumerRisk(question, 0.9).error().key, "measure.no_guard_band");
  question.parts.supportMax = question.parts.supportMin;
  EXPECT_EQ(globalRisk(question).error().key, "measure.not_positive");
  question = {normalParts(0, 1), {}, {}, 0.25};
  EXPECT_EQ(globalRisk(question).error().key, "measure.no_limit");
}

}  // namespace
}  // namespace sw::measure
