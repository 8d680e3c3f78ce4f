// SPDX-License-Identifier: GPL-3.0-or-later
#include "diagnosis/questions.h"

#include <algorithm>

namespace sw::diagnosis {

namespace {

/// The chance of an answer, given what is known.
double chanceOf(const CauseTable& table, std::span<const double> causes, std::size_t feature,
                std::size_t answer) {
  double chance = 0;
  for (std::size_t cause = 0; cause < causes.size(); ++cause) {
    chance += causes[cause] * table.causes[cause].answers[feature][answer];
  }
  return chance;
}

}  // namespace

Result<std::vector<QuestionValue>> questionValues(const CauseTable& table,
                                                  std::span<const Evidence> evidence,
                                                  const PlanProblem& problem,
                                                  std::span<const std::size_t> features,
                                                  double damping) {
  PlanProblem asked = problem;
  const auto now = probabilities(table, evidence, damping);
  asked.causes = now;
  const auto plan = bestPlan(asked);
  if (!plan) return failAs(plan);
  std::vector<Evidence> known(evidence.begin(), evidence.end());
  std::vector<QuestionValue> values;
  for (const std::size_t feature : features) {
    QuestionValue value{feature, plan->minutes, {}, {}};
    for (std::size_t answer = 0; answer < table.features[feature].answers.size(); ++answer) {
      const double chance = chanceOf(table, now, feature, answer);
      known.push_back(answered(table, feature, answer));
      asked.causes = probabilities(table, known, damping);
      known.pop_back();
      const auto after = bestPlan(asked);
      if (!after) return failAs(after);
      value.chances.push_back(chance);
      value.planMinutes.push_back(after->minutes);
      value.minutes -= chance * after->minutes;
    }
    value.minutes = std::max(0.0, value.minutes);
    values.push_back(std::move(value));
  }
  std::stable_sort(
      values.begin(), values.end(),
      [](const QuestionValue& a, const QuestionValue& b) { return a.minutes > b.minutes; });
  return values;
}

}  // namespace sw::diagnosis
