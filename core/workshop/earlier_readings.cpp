// SPDX-License-Identifier: GPL-3.0-or-later
#include "workshop/earlier_readings.h"

#include <map>

namespace sw::workshop {

namespace {

/// As JobState::packTotal, at the time the series began: top and bottom packs add up, and the last
/// pack of a place takes the place of the one before.
std::optional<Length> packAt(const std::vector<store::PackSummary>& packs,
                             const store::SeriesSummary& series) {
  std::map<model::ShimPlace, double> totals;
  for (const store::PackSummary& pack : packs) {
    const bool counts = pack.job == series.job && pack.side && pack.side == series.side &&
                        pack.first < series.first;
    if (counts) totals[pack.place] = pack.total;
  }
  if (totals.empty()) return std::nullopt;
  double sum = 0;
  for (const auto& [place, total] : totals) sum += total;
  return Length::fromSi(sum);
}

}  // namespace

EarlierQuestion earlierQuestionAt(const JobState& job, std::size_t step) {
  const StepView& view = job.steps.at(step);
  const RunView& run = job.runs[view.run];
  EarlierQuestion question;
  question.which.vehicle = job.opened.vehicle;
  if (view.step->measure) question.which.limitKey = view.step->measure->limit;
  question.which.procedure = run.fact.procedure;
  question.which.step = view.step->id;
  question.which.side = view.side;
  question.job = job.job;
  question.run = run.id;
  return question;
}

Result<std::vector<EarlierReading>> earlierReadings(const store::Book& book,
                                                    const EarlierQuestion& question) {
  auto series = book.seriesOfVehicle(question.which);
  if (!series) return failAs(series);
  const auto packs = book.packsOfVehicle(question.which.vehicle);
  if (!packs) return failAs(packs);
  std::vector<EarlierReading> earlier;
  for (store::SeriesSummary& one : *series) {
    const bool thisJob = one.job == question.job;
    if (thisJob && one.run && one.run == question.run) continue;
    const auto pack = packAt(*packs, one);
    earlier.push_back({std::move(one), thisJob, pack});
  }
  return earlier;
}

}  // namespace sw::workshop
