// SPDX-License-Identifier: GPL-3.0-or-later
#include "learning_shops.h"

#include <algorithm>
#include <numeric>

#include "diagnosis/learning.h"
#include "simulated_vehicle.h"

namespace sw::eval {

namespace {

using diagnosis::CauseTable;

constexpr double kMoved = 0.7;

/// A Dirichlet draw around these shares.
std::vector<double> drawShares(const std::vector<double>& shares, double strength,
                               std::mt19937_64& random) {
  std::vector<double> drawn;
  for (const double share : shares) {
    drawn.push_back(share > 0 ? std::gamma_distribution<double>(strength * share)(random) : 0.0);
  }
  const double sum = std::accumulate(drawn.begin(), drawn.end(), 0.0);
  for (double& one : drawn) one /= sum;
  return drawn;
}

std::vector<double> sharesOf(const CauseTable& table) {
  std::vector<double> shares;
  for (const auto& cause : table.causes) shares.push_back(cause.weight);
  const double sum = std::accumulate(shares.begin(), shares.end(), 0.0);
  for (double& one : shares) one /= sum;
  return shares;
}

CauseTable drawFromBelief(const CauseTable& start, std::mt19937_64& random) {
  const diagnosis::LearningStrength strength;
  CauseTable truth = start;
  const auto weights = drawShares(sharesOf(start), strength.weights, random);
  for (std::size_t cause = 0; cause < weights.size(); ++cause) {
    truth.causes[cause].weight = weights[cause];
    for (auto& row : truth.causes[cause].answers) row = drawShares(row, strength.answers, random);
  }
  return truth;
}

CauseTable drawTruth(const diagnosis::CauseFile& start, Truth truth, std::mt19937_64& random) {
  if (truth == Truth::FromBelief) return drawFromBelief(start.table, random);
  if (truth == Truth::Moved) return perturbed(start, kMoved, random).table;
  return start.table;
}

std::vector<diagnosis::ClosedJob> closeJobs(const CauseTable& truth, int jobs,
                                            std::mt19937_64& random) {
  std::vector<std::size_t> all(truth.features.size());
  std::iota(all.begin(), all.end(), 0U);
  std::vector<diagnosis::ClosedJob> closed;
  for (int job = 0; job < jobs; ++job) {
    const std::size_t cause = drawCause(truth, random);
    closed.push_back({{cause}, drawAnswers(truth, cause, all, random)});
  }
  return closed;
}

double shareHeld(const CauseTable& start, const CauseTable& truth,
                 const std::vector<diagnosis::ClosedJob>& jobs) {
  const auto shares = sharesOf(truth);
  double held = 0;
  for (std::size_t cause = 0; cause < shares.size(); ++cause) {
    const auto weight = learnedWeight(start, jobs, cause);
    held += weight.low <= shares[cause] && shares[cause] <= weight.high ? 1 : 0;
  }
  return held / static_cast<double>(shares.size());
}

}  // namespace

LearningShops learnInShops(const diagnosis::CauseFile& start, const ShopTerms& terms) {
  std::mt19937_64 random(terms.seed);
  LearningShops means;
  for (int shop = 0; shop < terms.shops; ++shop) {
    const CauseTable truth = drawTruth(start, terms.truth, random);
    const auto jobs = closeJobs(truth, terms.jobs, random);
    const auto report = diagnosis::report(start.table, jobs);
    means.held += shareHeld(start.table, truth, jobs);
    means.learnedBrier += report.learned.brier;
    means.startingBrier += report.starting.brier;
    means.learnedLog += report.learned.log;
    means.startingLog += report.starting.log;
    means.used += report.useLearned() ? 1 : 0;
  }
  for (double* one : {&means.held, &means.learnedBrier, &means.startingBrier, &means.learnedLog,
                      &means.startingLog, &means.used}) {
    *one /= terms.shops;
  }
  return means;
}

}  // namespace sw::eval
