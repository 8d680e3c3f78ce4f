// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/straight_line.h"

#include <array>
#include <vector>

#include "check_rows.h"

namespace sw::measure {
namespace {

using test::check;
using test::relative;

/// Thermometer calibration of JCGM 100 H.3 (data as in the documentation of GTC): correction over
/// temperature.
std::vector<LinePoint> thermometer(double zero) {
  constexpr std::array kTemperatures{21.521, 22.012, 22.512, 23.003, 23.507, 23.999,
                                     24.513, 25.002, 25.503, 26.010, 26.511};
  constexpr std::array kCorrections{-0.171, -0.169, -0.166, -0.159, -0.164, -0.165,
                                    -0.156, -0.157, -0.159, -0.161, -0.160};
  std::vector<LinePoint> points;
  for (std::size_t i = 0; i < kTemperatures.size(); ++i) {
    points.push_back({kTemperatures[i] - zero, kCorrections[i]});
  }
  return points;
}

/// NIST StRD Norris, linear regression of low difficulty (x : y).
std::vector<LinePoint> norris() {
  return {{0.2, 0.1},     {337.4, 338.8}, {118.2, 118.1}, {884.6, 888.0}, {10.1, 9.2},
          {226.5, 228.1}, {666.3, 668.5}, {996.3, 998.5}, {448.6, 449.1}, {777.0, 778.9},
          {558.2, 559.2}, {0.4, 0.3},     {0.6, 0.1},     {775.5, 778.1}, {666.9, 668.8},
          {338.0, 339.3}, {447.5, 448.9}, {11.6, 10.8},   {556.0, 557.7}, {228.1, 228.3},
          {995.8, 998.0}, {887.6, 888.8}, {120.2, 119.6}, {0.3, 0.3},     {0.3, 0.6},
          {556.8, 557.6}, {339.1, 339.3}, {887.2, 888.0}, {999.0, 998.5}, {779.0, 778.9},
          {11.1, 10.2},   {118.3, 117.6}, {229.2, 228.9}, {669.1, 668.4}, {448.9, 449.2},
          {0.5, 0.2}};
}

TEST(StraightLineFit, ThermometerOfTheGuide) {
  const auto line = fitLine(thermometer(20.0)).value();
  const auto at30 = line.at(10.0);
  constexpr auto kGuide = "JCGM 100 H.3 (from memory), digits by NumPy";
  check({{"y1", line.intercept, -0.1712038, 2e-7, kGuide},
         {"u(y1)", line.interceptUncertainty, 0.0028776, 1e-7, kGuide},
         {"y2", line.slope, 0.00218270, 1e-8, kGuide},
         {"u(y2)", line.slopeUncertainty, 0.00066794, 1e-8, kGuide},
         {"r", line.correlation, -0.930430, 1e-6, kGuide},
         {"s", line.scatter, 0.00349756, 1e-8, kGuide},
         {"SSR", line.squares, 1.1009658e-4, 1e-11, kGuide},
         {"nu", line.degreesOfFreedom, 9, 0, kGuide},
         {"b(30)", at30.value, -0.1493768, 1e-7, kGuide},
         {"u(b(30))", at30.standardUncertainty, 0.0041386, 1e-7, kGuide},
         {"u of a new reading", at30.standardUncertaintyNew, 0.00541857, 1e-8, kGuide}});
}

TEST(StraightLineFit, PrintedFiguresOfTheGuide) {
  const auto line = fitLine(thermometer(20.0)).value();
  constexpr auto kPrint = "JCGM 100 H.3, as printed (from memory)";
  check({{"y1", line.intercept, -0.1712, 5e-5, kPrint},
         {"u(y1)", line.interceptUncertainty, 0.0029, 5e-5, kPrint},
         {"y2", line.slope, 0.00218, 5e-6, kPrint},
         {"u(y2)", line.slopeUncertainty, 0.00067, 5e-6, kPrint},
         {"r", line.correlation, -0.930, 5e-4, kPrint},
         {"b(30)", line.at(10.0).value, -0.1494, 5e-5, kPrint},
         {"u(b(30))", line.at(10.0).standardUncertainty, 0.0041, 5e-5, kPrint}});
}

TEST(StraightLineFit, AboutTheMeanInterceptAndSlopeDoNotCorrelate) {
  double mean = 0;
  for (const auto& point : thermometer(0.0)) mean += point.x / 11.0;
  const auto line = fitLine(thermometer(mean)).value();
  const auto from20 = fitLine(thermometer(20.0)).value();
  check({{"r", line.correlation, 0, 1e-9, "JCGM 100 H.3.5"},
         {"slope", line.slope, from20.slope, 1e-9, "shift of the zero"},
         {"u(slope)", line.slopeUncertainty, from20.slopeUncertainty, 1e-9, "shift of the zero"},
         {"u(y1)", line.interceptUncertainty, 0.00105456, 1e-8, "s / sqrt(n)"}});
}

TEST(StraightLineFit, CertifiedValuesOfNorris) {
  const auto line = fitLine(norris()).value();
  constexpr auto kNist = "NIST StRD Norris, certified";
  const auto row = [&](std::string_view id, double got, double certified) {
    return test::CheckRow{id, got, certified, relative(certified, 1e-9), kNist};
  };
  check({row("B0", line.intercept, -0.262323073774029),
         row("s(B0)", line.interceptUncertainty, 0.232818234301152),
         row("B1", line.slope, 1.00211681802045),
         row("s(B1)", line.slopeUncertainty, 0.000429796848199937),
         row("s", line.scatter, 0.884796396144373),
         row("R2", line.determination(), 0.999993745883712),
         row("SS of regression", line.squaresOfRegression, 4255954.13232369),
         row("SS of residuals", line.squares, 26.6173985294224),
         row("F", line.fisher(), 5436385.54079785)});
  const auto at500 = line.at(500.0);
  check({{"at 500", at500.value, 500.796086, 1e-6, "NumPy"},
         {"u(line)", at500.standardUncertainty, 0.151502, 1e-6, "NumPy"},
         {"u(new)", at500.standardUncertaintyNew, 0.897673, 1e-6, "NumPy"},
         {"t95(34)", studentQuantile(0.975, line.degreesOfFreedom), 2.032245, 1e-6, "SciPy"}});
}

TEST(StraightLineFit, ForceOverShims) {
  const auto line =
      fitLine(std::array<LinePoint, 4>{{{0, 31.0}, {0.05, 23.4}, {0.10, 15.1}, {0.15, 7.6}}})
          .value();
  const auto there = line.at(0.08);
  const auto place = placeOf(line, 18.0, 0.0).value();
  constexpr auto kNumPy = "NumPy least squares";
  check({{"a", line.intercept, 31.05, 1e-6, kNumPy},
         {"u(a)", line.interceptUncertainty, 0.200624, 1e-6, kNumPy},
         {"k", line.slope, -157, 1e-6, kNumPy},
         {"u(k)", line.slopeUncertainty, 2.14476, 1e-5, kNumPy},
         {"r", line.correlation, -0.801784, 1e-6, kNumPy},
         {"s", line.scatter, 0.239792, 1e-6, kNumPy},
         {"at 0.08", there.value, 18.49, 1e-6, kNumPy},
         {"u", there.standardUncertainty, 0.120374, 1e-6, kNumPy},
         {"new", there.standardUncertaintyNew, 0.26831, 1e-5, kNumPy},
         {"for 18 N", place.value, 0.083121, 1e-6, kNumPy},
         {"u of it", place.standardUncertainty, 0.000771684, 1e-9, kNumPy}});
}

TEST(StraightLineFit, ALargeOffsetLosesNoDigits) {
  const auto near = fitLine(thermometer(20.0)).value();
  const auto far = fitLine(thermometer(20.0 - 1e7)).value();
  EXPECT_NEAR(far.slope, near.slope, 1e-9);
  EXPECT_NEAR(far.scatter, near.scatter, 1e-9);
}

TEST(StraightLineFit, RefusesWhatHasNoScatterOrNoSlope) {
  EXPECT_EQ(fitLine(std::array<LinePoint, 2>{{{0, 1}, {1, 2}}}).error().key, "line.too_few");
  EXPECT_EQ(fitLine(std::array<LinePoint, 3>{{{2, 1}, {2, 2}, {2, 3}}}).error().key,
            "line.one_place");
  EXPECT_EQ(fitLine(std::array<LinePoint, 3>{{{0, 1}, {1, 1.0 / 0.0}, {2, 3}}}).error().key,
            "measure.not_finite");
  const auto flat = fitLine(std::array<LinePoint, 3>{{{0, 1}, {1, 1}, {2, 1}}}).value();
  EXPECT_EQ(placeOf(flat, 2.0, 0.1).error().key, "line.flat");
}

}  // namespace
}  // namespace sw::measure
