// SPDX-License-Identifier: GPL-3.0-or-later
#include "workshop/judging.h"

#include <algorithm>
#include <cmath>

#include "measure/distributions.h"
#include "units/format.h"
#include "workshop/rules.h"
#include "workshop/runs.h"

namespace sw::workshop {

namespace {

constexpr double kPeakConfidence = 0.95;

void tellVerdict(Context& context, const model::Series& series, const SeriesOutcome& outcome) {
  const Unit& unit = defaultUnit(series.quantity);
  const auto shown = roundToUncertainty(outcome.correctedMean / unit.toSi,
                                        outcome.expandedUncertainty / unit.toSi);
  std::vector<std::pair<std::string, std::string>> values{
      {"verdict", std::string(word(outcome.verdict))},
      {"so_far", std::string(word(outcome.decisionSoFar))},
      {"value", shown.value + " +- " + shown.uncertainty + " " + std::string(unit.symbol)},
      {"side", std::string(word(outcome.side))}};
  for (const Advice& advice : outcome.advice) {
    values.emplace_back("advice", std::string(word(advice.code)));
    if (advice.readings) values.emplace_back("readings", std::to_string(*advice.readings));
    if (advice.graduation) {
      values.emplace_back("graduation", displayText(*advice.graduation, unit));
    }
  }
  context.tell("verdict", std::move(values));
}

struct MeanAndSpread {
  double mean = 0;
  double variance =
      0;  ///< of the mean, from scatter and reading error; the scale's own error is common
  double degreesOfFreedom = 0;
};

/// Mean and variance of the used readings. A scale reads to its mark: each mean carries d^2/12.
MeanAndSpread spreadOf(const SeriesView& series, double graduation) {
  MeanAndSpread result;
  std::vector<double> values;
  for (const ReadingView& reading : series.readings) {
    if (reading.fact.use == model::ReadingUse::Used) values.push_back(reading.fact.value.si);
  }
  const auto n = static_cast<double>(values.size());
  for (const double value : values) result.mean += value / n;
  double squares = 0;
  for (const double value : values) squares += (value - result.mean) * (value - result.mean);
  result.degreesOfFreedom = n - 1;
  result.variance = n > 1 ? squares / (n - 1) / n : 0;
  result.variance += graduation * graduation / 12.0;
  return result;
}

/// The newest series of a hub in a rest position, in the run and otherwise the same state.
const SeriesView* inPosition(const JobState& job, const SeriesView& like,
                             model::RestPosition position) {
  const SeriesView* newest = nullptr;
  for (const SeriesView& series : job.series) {
    if (series.run != like.run || series.side != like.side || !series.fact.state) continue;
    model::PullState state = *series.fact.state;
    const bool there = state.position == position;
    state.position = like.fact.state->position;
    if (there && state == *like.fact.state && series.fact.instrument == like.fact.instrument &&
        series.usedCount() >= 2) {
      newest = &series;
    }
  }
  return newest;
}

/// Is `ahead` higher than `turned` with the asked confidence? Welch's t on the two means.
bool higher(const MeanAndSpread& ahead, const MeanAndSpread& turned) {
  const double variance = ahead.variance + turned.variance;
  if (!(variance > 0)) return ahead.mean > turned.mean;
  const double degrees = std::min(ahead.degreesOfFreedom, turned.degreesOfFreedom);
  const double t = (ahead.mean - turned.mean) / std::sqrt(variance);
  return t > measure::studentQuantile(kPeakConfidence, degrees);
}

}  // namespace

Result<void> judgeAgain(Context& context, model::EntryId id) {
  const SeriesView* series = context.job().findSeries(id);
  if (series == nullptr || series->usedCount() == 0) return {};
  auto basis = basisOf(series->fact, context.shop());
  if (!basis) return failAs(basis);
  auto outcome = judgeSeries(*series, *basis);
  if (!outcome) return failAs(outcome);
  tellVerdict(context, series->fact, *outcome);
  const model::VerdictGiven fact = verdictFact(id, *outcome);
  const model::Entry* before =
      series->verdictEntry ? context.job().findEntry(*series->verdictEntry) : nullptr;
  if (before != nullptr) {
    context.replace(*before, fact, model::CorrectionReason::Other, "judged again", series->side);
  } else {
    context.add(fact, {series->run, series->step, series->side});
  }
  return context.refresh();
}

Result<void> lookForPeak(Context& context, std::size_t step) {
  const SeriesView* series = context.job().newestSeries(step);
  if (series == nullptr || !series->fact.state) return {};
  const auto* ahead = inPosition(context.job(), *series, model::RestPosition::Ahead);
  const auto* left = inPosition(context.job(), *series, model::RestPosition::LeftFifteen);
  const auto* right = inPosition(context.job(), *series, model::RestPosition::RightFifteen);
  if (ahead == nullptr || left == nullptr || right == nullptr || !series->side) return {};
  auto basis = basisOf(series->fact, context.shop());
  if (!basis) return failAs(basis);
  const double graduation = basis->instrument->graduation.si;
  const auto straight = spreadOf(*ahead, graduation);
  const auto toLeft = spreadOf(*left, graduation);
  const auto toRight = spreadOf(*right, graduation);
  const bool peak = higher(straight, toLeft) && higher(straight, toRight);
  context.add(model::Observation{std::string(kComputedPeak), peak ? "peak" : "none",
                                 fixedDecimal(straight.mean, 1) + " N straight ahead, " +
                                     fixedDecimal(toLeft.mean, 1) + " N and " +
                                     fixedDecimal(toRight.mean, 1) + " N turned"},
              context.placeOf(step));
  const model::Side side = *series->side;
  if (auto again = context.refresh(); !again) return failAs(again);
  return peak ? followWear(context, side) : Result<void>{};
}

}  // namespace sw::workshop
