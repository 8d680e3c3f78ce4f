// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/wheels/balance_four_run.h"

#include <cmath>
#include <complex>
#include <string>

#include "mechanics/wheels/value_checks.h"
#include "units/format.h"

namespace sw::mechanics {

namespace {

using Complex = std::complex<double>;

constexpr double kLeastRatio = 0.75;
constexpr double kMostDeviations = 3;

Complex direction(std::size_t run) {
  return toComplex({1, degrees(120.0 * static_cast<double>(run))});
}

std::optional<Error> check(const FourRuns& runs) {
  return firstBad({{"initial", runs.initial},
                   {"with_trial/0", runs.withTrial[0], Need::NotNegative},
                   {"with_trial/1", runs.withTrial[1], Need::NotNegative},
                   {"with_trial/2", runs.withTrial[2], Need::NotNegative},
                   {"trial_weight", runs.trialWeight.si()},
                   {"reading_uncertainty", runs.readingUncertainty.value_or(1)}});
}

struct Solved {
  double squares = 0;  ///< sum of Ai^2
  double effect = 0;   ///< T
  Complex sum;         ///< S
};

/// Standard uncertainty of |S| - 3 A0 T for readings of standard uncertainty 1.
double spreadOfDisagreement(const FourRuns& runs, const Solved& solved) {
  const double a0 = runs.initial;
  const double t = solved.effect;
  const Complex unit = solved.sum / std::abs(solved.sum);
  // dT/dAi = Ai / (3 T), dT/dA0 = -A0 / T.
  double sum = std::pow(3 * t - 3 * a0 * a0 / t, 2);
  for (std::size_t run = 0; run < 3; ++run) {
    const double ai = runs.withTrial[run];
    const double along = (direction(run) * std::conj(unit)).real();
    sum += std::pow(2 * ai * along - a0 * ai / t, 2);
  }
  return std::sqrt(sum);
}

bool contradict(const FourRuns& runs, const Solved& solved) {
  const double size = std::abs(solved.sum);
  const double expected = 3 * runs.initial * solved.effect;
  if (size == 0) return true;
  if (!runs.readingUncertainty) {
    return size < kLeastRatio * expected || expected < kLeastRatio * size;
  }
  return std::abs(size - expected) >
         kMostDeviations * *runs.readingUncertainty * spreadOfDisagreement(runs, solved);
}

void putUncertainty(const FourRuns& runs, const Solved& solved, FourRunBalance& balance) {
  if (!runs.readingUncertainty) return;
  const double u = *runs.readingUncertainty;
  const double a0 = runs.initial;
  const double t = solved.effect;
  const double perReading = runs.trialWeight.si() / (t * t * t) *
                            std::hypot(t * t + a0 * a0, a0 * std::sqrt(solved.squares) / 3);
  balance.amountUncertainty = kilograms(u * perReading);
  double across = 0;
  for (std::size_t run = 0; run < 3; ++run) {
    const double part = (solved.sum * std::conj(direction(run))).imag();
    across += std::pow(runs.withTrial[run] * part, 2);
  }
  balance.angleUncertainty = radians(2 * u * std::sqrt(across) / std::norm(solved.sum));
}

}  // namespace

Result<FourRunBalance> balanceFourRuns(const FourRuns& runs) {
  if (auto error = check(runs)) return tl::make_unexpected(std::move(*error));
  Solved solved;
  for (std::size_t run = 0; run < 3; ++run) {
    const double square = runs.withTrial[run] * runs.withTrial[run];
    solved.squares += square;
    solved.sum += square * direction(run);
  }
  const double effectSquared = solved.squares / 3 - runs.initial * runs.initial;
  if (!(effectSquared > 0)) {
    return fail(ErrorCode::Degenerate, "balance.trial_imaginary", "with_trial");
  }
  solved.effect = std::sqrt(effectSquared);
  FourRunBalance balance;
  balance.trialEffect = solved.effect;
  balance.agreement = std::abs(solved.sum) / (3 * runs.initial * solved.effect);
  if (contradict(runs, solved)) {
    return fail(ErrorCode::Degenerate, "balance.runs_contradict", "with_trial",
                {{"ratio", fullPrecision(std::round(balance.agreement * 100) / 100)}});
  }
  const double amount = runs.trialWeight.si() * runs.initial / solved.effect;
  const Complex heavy = solved.sum / std::abs(solved.sum) * amount;
  balance.unbalance = toWeight(toPolar(heavy));
  balance.correction = toWeight(toPolar(-heavy));
  putUncertainty(runs, solved, balance);
  return balance;
}

}  // namespace sw::mechanics
