// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "diagnosis/cause_table.h"
#include "diagnosis/scores.h"

// METHOD CARD: what closed jobs add to the starting table
// Formula: weight of a cause = (S w0 + n) / (S + N), with w0 its share in the starting table and n
// of
//   the N jobs; chance of an answer where the cause is = (m q0 + k) / (m + K), with k of the K jobs
//   of that cause in which the question was answered. A job that was closed with two causes counts
//   a half for each; one in which no fault was found counts for the cause "other". An answer that
//   was not known adds nothing. Each posterior is Dirichlet (Beta where there are two answers).
// Use: the learned table is used only where it forecast the closed jobs better than the starting
//   table, each job forecast by a table that was learned without it. So is a damping of the answers
//   (see ranking.h), from kDampingJobs jobs on: the best of 0.5, 0.6 ... 0.9 where it betters 1.
// Source: Dirichlet-multinomial and Beta-binomial conjugacy (textbooks); the strengths S = 20 and
//   m = 10: starting values, common practice, no source.
// Assumptions: jobs are alike; the cause on record was the cause.
// Degenerate cases: no jobs: the starting table. A number that was 0 or 1 and never seen otherwise
//   stays certain; without strength and without jobs its interval is 0 to 1.
// Reference test: tests/core/diagnosis/learning_test.cpp.

namespace sw::diagnosis {

struct LearningStrength {
  double weights = 20;  ///< jobs that the starting weights are worth
  double answers = 10;  ///< jobs that each row of answers is worth
};

struct ClosedJob {
  std::vector<std::size_t> causes;                  ///< confirmed; empty = no fault was found
  std::vector<std::optional<std::size_t>> answers;  ///< one a feature
};

/// The table after these jobs; weights are shares of one.
[[nodiscard]] CauseTable learned(const CauseTable& start, std::span<const ClosedJob> jobs,
                                 const LearningStrength& strength = {});

/// A learned number with its standard deviation.
struct LearnedNumber {
  double value = 0;
  double deviation = 0;
  double low = 0, high = 0;  ///< the middle 95 % of its Beta posterior
};
/// The weight of a cause, and the chance of an answer where it is.
[[nodiscard]] LearnedNumber learnedWeight(const CauseTable& start, std::span<const ClosedJob> jobs,
                                          std::size_t cause, const LearningStrength& strength = {});
[[nodiscard]] LearnedNumber learnedAnswer(const CauseTable& start, std::span<const ClosedJob> jobs,
                                          std::size_t cause, std::size_t feature,
                                          std::size_t answer,
                                          const LearningStrength& strength = {});

/// How well the jobs are forecast from their answers.
struct LearningReport {
  Scores learned;   ///< each job by a table learned without it
  Scores starting;  ///< by the starting table
  Scores uniform;   ///< by a guess
  [[nodiscard]] bool useLearned() const { return learned.better(starting); }
};
[[nodiscard]] LearningReport report(const CauseTable& start, std::span<const ClosedJob> jobs,
                                    const LearningStrength& strength = {}, double damping = 1);

/// Jobs from which on a damping is chosen (starting value, no source).
inline constexpr std::size_t kDampingJobs = 30;

/// What to forecast with, after these jobs.
struct TableChoice {
  LearningReport report;  ///< without damping
  double damping = 1;
  Scores chosen;  ///< of the table and the damping taken
};
[[nodiscard]] TableChoice chooseTable(const CauseTable& start, std::span<const ClosedJob> jobs,
                                      const LearningStrength& strength = {});

}  // namespace sw::diagnosis
