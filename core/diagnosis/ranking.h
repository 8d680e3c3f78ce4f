// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <vector>

#include "diagnosis/cause_table.h"

// METHOD CARD: how likely each cause is after what was told, seen and checked
// Formula: probability of a cause = its weight times, for each piece of evidence, the chance of
// that
//   evidence where the cause is; brought to a sum of 1 (naive Bayes). An answer that is not known
//   is no evidence. A trace that speaks for an answer with a ratio r counts r q + (1 - q). A check
//   that found nothing leaves 1 - d of its causes and 1 - f of the others; one that found a cause,
//   d of it and f of the others. What was repaired keeps kRepairFails.
// Damping: related answers are counted twice by this; each chance of an answer (or a trace) is
// taken
//   to a power of 0.5 to 1, chosen by its score on closed jobs (common practice, no source). What a
//   check or a repair says is not damped: one does not follow from another.
// Source: Bayes' rule; Heckerman, Breese and Rommelse, Comm. ACM 38 (1995) 49-57 (from memory).
// Assumptions: one fault; answers are independent given the fault.
// When not to use: two faults at once, see two_faults.h; after a repair ask anew.
// Degenerate cases: nothing known: the weights. Answers that fit no cause: `surprising`.
// Reference test: tests/core/diagnosis/ranking_test.cpp.

namespace sw::diagnosis {

/// Chance that a repair that was done has not cured its cause (starting value, no source).
inline constexpr double kRepairFails = 0.05;
/// Answers less likely than this altogether contradict each other or the table.
inline constexpr double kSurprising = 1e-4;

enum class EvidenceKind { Answer, Trace, Check, Repair };

/// One piece of evidence: how likely it is under each cause, not all of them zero.
struct Evidence {
  EvidenceKind kind = EvidenceKind::Answer;
  std::string key;  ///< of the feature, the check or the cause that was repaired
  std::vector<double> likelihood;
  std::string answer = {};  ///< the word of an answer
};

/// An answer that was given.
[[nodiscard]] Evidence answered(const CauseTable& table, std::size_t feature, std::size_t answer);
/// Evidence for the answers of a feature: how much more likely it is under each, as ratios.
[[nodiscard]] Evidence supported(const CauseTable& table, std::size_t feature,
                                 std::span<const double> ratios);
/// A check that found nothing.
[[nodiscard]] Evidence nothingFound(const CauseTable& table, const std::string& key,
                                    const PlannedCheck& check);
/// A check that found this cause.
[[nodiscard]] Evidence causeFound(const CauseTable& table, const std::string& key,
                                  const PlannedCheck& check, std::size_t cause);
[[nodiscard]] Evidence repaired(const CauseTable& table, std::size_t cause);

/// What one piece of evidence did to one cause.
struct Shift {
  std::size_t evidence = 0;
  double without = 0;  ///< probability of the cause if this were not known
};

struct RankedCause {
  std::size_t cause = 0;
  double probability = 0;
  std::vector<Shift> shifts;  ///< one a piece of evidence, in their order
};

struct Ranking {
  std::vector<RankedCause> causes;  ///< the most likely first; equal ones as in the table
  double evidenceChance = 1;        ///< of all answers together, before damping
  bool surprising = false;
};

/// `damping` in (0, 1]: the power each chance of an answer is taken to.
[[nodiscard]] Ranking rank(const CauseTable& table, std::span<const Evidence> evidence,
                           double damping = 1);
/// The probabilities alone, in the order of the table.
[[nodiscard]] std::vector<double> probabilities(const CauseTable& table,
                                                std::span<const Evidence> evidence,
                                                double damping = 1);
/// The same from weights of the causes, not all of them zero.
[[nodiscard]] std::vector<double> probabilities(std::vector<double> weights,
                                                std::span<const Evidence> evidence,
                                                double damping = 1);

}  // namespace sw::diagnosis
