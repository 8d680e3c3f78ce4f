// SPDX-License-Identifier: GPL-3.0-or-later
#include "diagnosis/learning.h"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "diagnosis/ranking.h"
#include "measure/distributions.h"

namespace sw::diagnosis {

namespace {

/// How often what was seen; shares, since a job may have two causes.
struct Counts {
  std::vector<double> causes;
  std::vector<std::vector<std::vector<double>>> answers;  ///< cause, feature, answer

  explicit Counts(const CauseTable& table) : causes(table.causes.size(), 0.0) {
    for (std::size_t cause = 0; cause < causes.size(); ++cause) {
      auto& rows = answers.emplace_back();
      for (const Feature& feature : table.features) rows.emplace_back(feature.answers.size(), 0.0);
    }
  }

  /// Adds the job this many times; -1 takes it out again.
  void add(const ClosedJob& job, const CauseTable& table, double times) {
    const std::vector<std::size_t> others{table.other};
    const auto& found = job.causes.empty() ? others : job.causes;
    const double share = times / static_cast<double>(found.size());
    for (const std::size_t cause : found) {
      causes[cause] += share;
      for (std::size_t feature = 0; feature < job.answers.size(); ++feature) {
        if (job.answers[feature]) answers[cause][feature][*job.answers[feature]] += share;
      }
    }
  }
};

Counts countsOf(const CauseTable& table, std::span<const ClosedJob> jobs) {
  Counts counts(table);
  for (const ClosedJob& job : jobs) counts.add(job, table, 1);
  return counts;
}

double sumOf(const std::vector<double>& values) {
  return std::accumulate(values.begin(), values.end(), 0.0);
}

double weightSum(const CauseTable& table) {
  double sum = 0;
  for (const Cause& cause : table.causes) sum += cause.weight;
  return sum;
}

/// (strength * share + count) / (strength + all).
double drawn(double strength, double share, double count, double all) {
  const double sum = strength + all;
  return sum > 0 ? (strength * share + count) / sum : share;
}

CauseTable tableFrom(const CauseTable& start, const Counts& counts,
                     const LearningStrength& strength) {
  CauseTable table = start;
  const double weights = weightSum(start);
  const double jobs = sumOf(counts.causes);
  for (std::size_t cause = 0; cause < table.causes.size(); ++cause) {
    Cause& one = table.causes[cause];
    one.weight = drawn(strength.weights, one.weight / weights, counts.causes[cause], jobs);
    for (std::size_t feature = 0; feature < one.answers.size(); ++feature) {
      const auto& seen = counts.answers[cause][feature];
      const double all = sumOf(seen);
      for (std::size_t answer = 0; answer < seen.size(); ++answer) {
        double& chance = one.answers[feature][answer];
        chance = drawn(strength.answers, chance, seen[answer], all);
      }
    }
  }
  return table;
}

/// Of a Beta posterior. Where one of its weights is nought it is certain; where both are, nothing
/// is known.
LearnedNumber numberOf(double strength, double share, double count, double all) {
  constexpr double kNought = 1e-12;
  const double forIt = strength * share + count;
  const double against = strength * (1 - share) + all - count;
  LearnedNumber number;
  number.value = drawn(strength, share, count, all);
  number.deviation =
      std::sqrt(std::max(0.0, number.value * (1 - number.value)) / (strength + all + 1));
  const bool never = forIt <= kNought, always = against <= kNought;
  if (never || always) {
    number.low = never ? 0 : 1;
    number.high = always ? 1 : 0;
    return number;
  }
  number.low = measure::betaQuantile(0.025, forIt, against);
  number.high = measure::betaQuantile(0.975, forIt, against);
  return number;
}

std::vector<Evidence> evidenceOf(const CauseTable& table, const ClosedJob& job) {
  std::vector<Evidence> evidence;
  for (std::size_t feature = 0; feature < job.answers.size(); ++feature) {
    if (job.answers[feature]) evidence.push_back(answered(table, feature, *job.answers[feature]));
  }
  return evidence;
}

}  // namespace

CauseTable learned(const CauseTable& start, std::span<const ClosedJob> jobs,
                   const LearningStrength& strength) {
  return tableFrom(start, countsOf(start, jobs), strength);
}

LearnedNumber learnedWeight(const CauseTable& start, std::span<const ClosedJob> jobs,
                            std::size_t cause, const LearningStrength& strength) {
  const Counts counts = countsOf(start, jobs);
  const double share = start.causes[cause].weight / weightSum(start);
  return numberOf(strength.weights, share, counts.causes[cause], sumOf(counts.causes));
}

LearnedNumber learnedAnswer(const CauseTable& start, std::span<const ClosedJob> jobs,
                            std::size_t cause, std::size_t feature, std::size_t answer,
                            const LearningStrength& strength) {
  const Counts counts = countsOf(start, jobs);
  const auto& row = counts.answers[cause][feature];
  const double chance = start.causes[cause].answers[feature][answer];
  return numberOf(strength.answers, chance, row[answer], sumOf(row));
}

LearningReport report(const CauseTable& start, std::span<const ClosedJob> jobs,
                      const LearningStrength& strength, double damping) {
  Counts counts = countsOf(start, jobs);
  std::vector<Forecast> byLearned, byStart, byGuess;
  const auto causes = start.causes.size();
  for (const ClosedJob& job : jobs) {
    const auto truth = job.causes.empty() ? std::vector<std::size_t>{start.other} : job.causes;
    counts.add(job, start, -1);
    const CauseTable without = tableFrom(start, counts, strength);
    counts.add(job, start, 1);
    byLearned.push_back({probabilities(without, evidenceOf(without, job), damping), truth});
    byStart.push_back({probabilities(start, evidenceOf(start, job), damping), truth});
    byGuess.push_back({std::vector<double>(causes, 1.0 / static_cast<double>(causes)), truth});
  }
  return {scoresOf(byLearned), scoresOf(byStart), scoresOf(byGuess)};
}

}  // namespace sw::diagnosis
