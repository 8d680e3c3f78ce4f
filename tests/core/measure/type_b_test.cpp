// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/type_b.h"

#include <cmath>
#include <numbers>

#include "check_rows.h"

namespace sw::measure {
namespace {

using test::check;

constexpr double kDegree = std::numbers::pi / 180;

TEST(TypeB, ShapesOfLimits) {
  check({{"B1", graduationUncertainty(0.5), 0.144338, 1e-6, "JCGM 100 F.2.2.1 (mem)"},
         {"B1 as limits", rectangular(0.25), 0.144338, 1e-6, "JCGM 100 F.2.2.1 (mem)"},
         // 1 kgf = 9.80665 N, exact: 3rd CGPM 1901
         {"B2", graduationUncertainty(0.1 * 9.80665), 0.283094, 1e-6, "NumPy"},
         {"B3", triangular(0.25), 0.102062, 1e-6, "NumPy"},
         {"B4", arcsine(0.5), 0.353553, 1e-6, "rule: GTC, JCGM 100 H.1"}});
}

TEST(TypeB, TrapezoidOfTheCaliperExample) {
  // Half-widths 50 and 25 um: a = 75 um, beta = 1/3.
  const Trapezoid caliper{50, 25};
  check(
      {{"B5 u", caliper.standardUncertainty(), 32.2749, 1e-4, "EA-4/02 S10 (mem), 33 with others"},
       {"B5 k", caliper.coverageFactor(0.95), 1.8339, 1e-4, "EA-4/02 S10 (mem) prints 1.83"}});
  // Its two ends: equal parts make a triangle, one part alone a rectangle (k 1.65).
  EXPECT_NEAR((Trapezoid{1, 1}).standardUncertainty(), triangular(2), 1e-15);
  EXPECT_NEAR((Trapezoid{2, 0}).standardUncertainty(), rectangular(2), 1e-15);
  EXPECT_NEAR((Trapezoid{2, 0}).coverageFactor(0.95), 0.95 * std::sqrt(3.0), 0.1);
  EXPECT_EQ((Trapezoid{0, 0}).standardUncertainty(), 0);
}

TEST(TypeB, CertificatesAndStatedLimits) {
  check(
      {{"B6", fromCertificate(75, 3), 25, 0, "suncal, JCGM 100 H.1"},
       {"B7", fromConfidenceLimits(10, 0.95, 5), 3.89017, 1e-5, "suncal, JCGM 100 H.1 prints 3.9"},
       {"normal 95 %", fromConfidenceLimits(1.959964, 0.95, {}), 1, 1e-6, "SciPy 1.10.1"},
       {"B10", rectangular(0.04 * 75), 1.73205, 1e-5, "limit of a torque tester's manual"},
       {"B14 25 %", degreesOfFreedomFromDoubt(0.25), 8, 0, "JCGM 100 G.4.2 (mem)"},
       {"B14 20 %", degreesOfFreedomFromDoubt(0.20), 12.5, 1e-14, "JCGM 100 G.4.2 (mem)"}});
}

TEST(TypeB, UnevenLimitsShiftTheValue) {
  const auto got = asymmetric(0.3, 0.1);
  EXPECT_NEAR(got.shift, 0.1, 1e-15);
  EXPECT_NEAR(got.standardUncertainty, 0.4 / std::sqrt(12.0), 1e-15);  // JCGM 100 4.3.8 (mem)
  EXPECT_NEAR(asymmetric(0.2, 0.2).standardUncertainty, rectangular(0.2), 1e-15);
}

TEST(TypeB, LengthMeasures) {
  const std::string_view source = "UK SI 2016/1153 schedule 1I";
  const double two = lengthMeasureError(LengthClass::Two, 0.6, LengthStart::BetweenMarks);
  check({{"B8", two * 1000, 0.5, 1e-12, source},
         {"B8 u", rectangular(two) * 1000, 0.288675, 1e-6, source},
         {"B9 III", lengthMeasureError(LengthClass::Three, 2.4, LengthStart::BetweenMarks) * 1000,
          1.8, 1e-12, source},
         {"B9 I", lengthMeasureError(LengthClass::One, 1.2, LengthStart::EndFace) * 1000, 0.4,
          1e-12, source},
         {"whole metre",
          lengthMeasureError(LengthClass::One, 0.1 + 0.2 + 0.7, LengthStart::BetweenMarks) * 1000,
          0.2, 1e-12, source}});
}

struct AngleRow {
  double degrees, factor, uncertainty;
};

TEST(TypeB, PullOffTheLine) {
  for (const AngleRow& row :
       {AngleRow{5, 0.9987312, 0.00113462}, AngleRow{10, 0.9949308, 0.0045311},
        AngleRow{15, 0.9886159, 0.0101673}, AngleRow{20, 0.9798155, 0.0180064}}) {
    const auto got = pullAngleFactor(row.degrees * kDegree).value();
    check({{"B11", got.factor, row.factor, 1e-6, "SciPy 1.10.1, integral of cos"},
           {"B12", got.standardUncertainty, row.uncertainty, 1e-6, "SciPy 1.10.1"}});
  }
}

/// Midpoint rule: mean and spread of cos over an even spread of angles within +/-a.
AngleFactor factorByIntegration(double a) {
  constexpr int kSteps = 20000;
  double sum = 0;
  double squares = 0;
  for (int i = 0; i < kSteps; ++i) {
    // 1 - cos keeps its digits where cos itself is nearly 1.
    const double loss = 2 * std::pow(std::sin(a * (i + 0.5) / kSteps / 2), 2);
    sum += loss;
    squares += loss * loss;
  }
  const double mean = sum / kSteps;
  return {1 - mean, std::sqrt(squares / kSteps - mean * mean)};
}

TEST(TypeB, SmallAnglesAgreeWithIntegration) {
  for (double degrees : {0.01, 0.5, 2.0, 2.999, 3.001, 5.0, 40.0}) {
    const double a = degrees * kDegree;
    const auto got = pullAngleFactor(a).value();
    const AngleFactor integral = factorByIntegration(a);
    EXPECT_NEAR(got.factor, integral.factor, 1e-9);
    // The short form of small angles leaves out a term of order a^2 / 5.
    EXPECT_NEAR(got.standardUncertainty / integral.standardUncertainty, 1, 1e-3) << degrees;
  }
}

TEST(TypeB, MeasuredAngle) {
  // A reading of 25 N is the useful force over the cosine: F cos(20 deg).
  check({{"B13 useful", 25 * std::cos(20 * kDegree), 23.4923, 1e-4, "NumPy"},
         {"B13 u", measuredAngleUncertainty(25, 20 * kDegree, rectangular(3 * kDegree)), 0.258482,
          1e-5, "NumPy"}});
}

TEST(TypeB, AngleOutOfRangeIsRefused) {
  EXPECT_EQ(pullAngleFactor(-0.01).error().key, "measure.angle_too_large");
  EXPECT_EQ(pullAngleFactor(std::numbers::pi / 2).error().key, "measure.angle_too_large");
  EXPECT_EQ(pullAngleFactor(std::nan("")).error().key, "measure.not_finite");
  EXPECT_EQ(pullAngleFactor(0).value().factor, 1);
  EXPECT_EQ(pullAngleFactor(0).value().standardUncertainty, 0);
}

}  // namespace
}  // namespace sw::measure
