// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "store/book.h"
#include "workshop/job_state.h"

// What this vehicle gave before: the judged series of its other jobs and of this job's other runs,
// to stand beside the readings being taken. Read by a query; no job is derived.

namespace sw::workshop {

struct EarlierReading {
  store::SeriesSummary series;
  bool thisJob = false;
  /// The pack that was in on that side when the series began, as far as its job recorded one.
  std::optional<Length> packTotal;
};

struct EarlierQuestion {
  store::SeriesFilter which;
  std::optional<model::JobId> job;  ///< the job that asks
  std::optional<model::RunId> run;  ///< its run that is being worked on: left out of the answer
};

/// The question of a measuring step: the same limit on the same side, or, where the step has no
/// limit, the same step of the same procedure.
[[nodiscard]] EarlierQuestion earlierQuestionAt(const JobState& job, std::size_t step);
/// Oldest first. Errors: those of the book.
[[nodiscard]] Result<std::vector<EarlierReading>> earlierReadings(const store::Book& book,
                                                                  const EarlierQuestion& question);

}  // namespace sw::workshop
