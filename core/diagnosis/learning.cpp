// SPDX-License-Identifier: GPL-3.0-or-later
#include "diagnosis/learning.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

#include "diagnosis/ranking.h"
#include "measure/distributions.h"

namespace sw::diagnosis {

namespace {

constexpr std::array kDampings{0.9, 0.8, 0.7, 0.6, 0.5};

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

/// A job as it is to be forecast: weights of the causes, what was answered, what it was.
struct Asked {
  std::vector<double> weights;
  std::vector<Evidence> evidence;
  std::vector<std::size_t> truth;
};

/// By the table that these counts give.
Asked askedBy(const CauseTable& start, const Counts& counts, const LearningStrength& strength,
              const ClosedJob& job) {
  Asked asked;
  asked.truth = job.causes.empty() ? std::vector<std::size_t>{start.other} : job.causes;
  const double weights = weightSum(start);
  const double jobs = sumOf(counts.causes);
  for (std::size_t cause = 0; cause < start.causes.size(); ++cause) {
    asked.weights.push_back(
        drawn(strength.weights, start.causes[cause].weight / weights, counts.causes[cause], jobs));
  }
  for (std::size_t feature = 0; feature < job.answers.size(); ++feature) {
    if (!job.answers[feature]) continue;
    const std::size_t answer = *job.answers[feature];
    Evidence evidence{EvidenceKind::Answer, {}, {}};
    for (std::size_t cause = 0; cause < start.causes.size(); ++cause) {
      const auto& seen = counts.answers[cause][feature];
      evidence.likelihood.push_back(drawn(strength.answers,
                                          start.causes[cause].answers[feature][answer],
                                          seen[answer], sumOf(seen)));
    }
    asked.evidence.push_back(std::move(evidence));
  }
  return asked;
}

/// Each job by a table that was learned without it.
std::vector<Asked> leftOut(const CauseTable& start, std::span<const ClosedJob> jobs,
                           const LearningStrength& strength) {
  Counts counts = countsOf(start, jobs);
  std::vector<Asked> list;
  for (const ClosedJob& job : jobs) {
    counts.add(job, start, -1);
    list.push_back(askedBy(start, counts, strength, job));
    counts.add(job, start, 1);
  }
  return list;
}

std::vector<Asked> byStart(const CauseTable& start, std::span<const ClosedJob> jobs) {
  const Counts none(start);
  std::vector<Asked> list;
  for (const ClosedJob& job : jobs) list.push_back(askedBy(start, none, {}, job));
  return list;
}

Scores scoresAt(const std::vector<Asked>& jobs, double damping) {
  std::vector<Forecast> forecasts;
  for (const Asked& job : jobs) {
    forecasts.push_back({probabilities(job.weights, job.evidence, damping), job.truth});
  }
  return scoresOf(forecasts);
}

Scores scoresOfGuess(const std::vector<Asked>& jobs, std::size_t causes) {
  std::vector<Forecast> forecasts;
  for (const Asked& job : jobs) {
    forecasts.push_back(
        {std::vector<double>(causes, 1.0 / static_cast<double>(causes)), job.truth});
  }
  return scoresOf(forecasts);
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
  const auto starting = byStart(start, jobs);
  return {scoresAt(leftOut(start, jobs, strength), damping), scoresAt(starting, damping),
          scoresOfGuess(starting, start.causes.size())};
}

TableChoice chooseTable(const CauseTable& start, std::span<const ClosedJob> jobs,
                        const LearningStrength& strength) {
  const auto starting = byStart(start, jobs);
  const auto without = leftOut(start, jobs, strength);
  TableChoice choice{
      {scoresAt(without, 1), scoresAt(starting, 1), scoresOfGuess(starting, start.causes.size())},
      1,
      {}};
  const bool useLearned = choice.report.useLearned();
  const Scores undamped = useLearned ? choice.report.learned : choice.report.starting;
  choice.chosen = undamped;
  if (jobs.size() < kDampingJobs) return choice;
  for (const double damping : kDampings) {
    const Scores scores = scoresAt(useLearned ? without : starting, damping);
    if (!scores.better(undamped) || scores.log >= choice.chosen.log) continue;
    choice.damping = damping;
    choice.chosen = scores;
  }
  return choice;
}

}  // namespace sw::diagnosis
