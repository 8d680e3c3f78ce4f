// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>
#include <cmath>
#include <random>
#include <vector>

#include "check_rows.h"
#include "measure/decision.h"

// What happens when one looks after each reading and stops as soon as it looks good. The true value
// lies exactly on the upper limit, so every "within" is wrong. Readings are normal, sigma 1,
// independent.

namespace sw::measure {
namespace {

constexpr int kSeries = 400000;
constexpr int kLooksFrom = 3;
constexpr int kMost = 30;

enum class Sigma { Known, Estimated };

/// The margin, in standard uncertainties of the mean, that passes the bar after n readings.
std::vector<double> margins(Sigma sigma, double (*barAfter)(int)) {
  std::vector<double> result(kMost + 1, 0);
  for (int n = kLooksFrom; n <= kMost; ++n) {
    const DegreesOfFreedom nu =
        sigma == Sigma::Known ? DegreesOfFreedom{} : DegreesOfFreedom{n - 1.0};
    result[static_cast<std::size_t>(n)] = guardBand(1, nu, barAfter(n));
  }
  return result;
}

struct WrongShares {
  std::array<int, kMost + 1> firstAt{};  ///< series that first pass after so many readings
  [[nodiscard]] double upTo(int most) const {
    int sum = 0;
    for (int n = 0; n <= most; ++n) sum += firstAt[static_cast<std::size_t>(n)];
    return static_cast<double>(sum) / kSeries;
  }
};

WrongShares simulate(Sigma sigma, double (*barAfter)(int), int most) {
  const auto margin = margins(sigma, barAfter);
  std::mt19937_64 random(4242);
  std::normal_distribution<double> noise(0, 1);
  WrongShares shares;
  for (int series = 0; series < kSeries; ++series) {
    double sum = 0;
    double squares = 0;
    for (int n = 1; n <= most; ++n) {
      const double x = noise(random);
      sum += x;
      squares += x * x;
      if (n < kLooksFrom) continue;
      const double mean = sum / n;
      const double s =
          sigma == Sigma::Known ? 1.0 : std::sqrt((squares - n * mean * mean) / (n - 1));
      if (-mean * std::sqrt(n) < margin[static_cast<std::size_t>(n)] * s) continue;
      ++shares.firstAt[static_cast<std::size_t>(n)];
      break;
    }
  }
  return shares;
}

double plainBar(int) {
  return 0.95;
}
double barUpToFive(int) {
  return decisionBar(0.95, 5, SeriesPlan::Extended);
}
double barUpToTen(int) {
  return decisionBar(0.95, 10, SeriesPlan::Extended);
}
double barBeyondTen(int) {
  return decisionBar(0.95, 30, SeriesPlan::Extended);
}

TEST(SequentialRule, LookingAfterEachReadingBreaksTheFivePercent) {
  const auto known = simulate(Sigma::Known, plainBar, 10);
  const auto estimated = simulate(Sigma::Estimated, plainBar, 10);
  const std::string_view source = "NumPy simulation of 4e5 series";
  test::check({{"J18 known, to 10", known.upTo(10), 0.134, 0.003, source},
               {"J18 t, to 10", estimated.upTo(10), 0.147, 0.003, source},
               {"J18 known, to 5", known.upTo(5), 0.086, 0.003, source},
               {"J18 t, to 5", estimated.upTo(5), 0.094, 0.003, source}});
}

/// 5 % and three standard errors of the simulated share.
const double kFivePercent = 0.05 + 3 * std::sqrt(0.05 * 0.95 / kSeries);

TEST(SequentialRule, RaisedBarsKeepTheFivePercent) {
  for (Sigma sigma : {Sigma::Known, Sigma::Estimated}) {
    EXPECT_LE(simulate(sigma, barUpToFive, 5).upTo(5), kFivePercent);
    EXPECT_LE(simulate(sigma, barUpToTen, 10).upTo(10), kFivePercent);
    EXPECT_LE(simulate(sigma, barBeyondTen, 30).upTo(30), kFivePercent);
  }
}

TEST(SequentialRule, RaisedBarOfFiveReadingsDoesNotHoldForTen) {
  EXPECT_GT(simulate(Sigma::Estimated, barUpToFive, 10).upTo(10), 0.06);
}

}  // namespace
}  // namespace sw::measure
