// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "measure/evaluation.h"
#include "workshop/job_state.h"

namespace sw::workshop {

/// What a series rests on, found in the shop's frozen revisions.
struct SeriesBasis {
  const model::Instrument* instrument = nullptr;
  const model::InstrumentCheck* check = nullptr;  ///< null where there is none
  const model::SpecItem* limit = nullptr;  ///< null where none is on file or the state differs
};
[[nodiscard]] Result<SeriesBasis> basisOf(const model::Series& series, const ShopState& shop);

/// The evaluation of the series' used readings by the one verdict rule.
[[nodiscard]] Result<SeriesOutcome> judgeSeries(const SeriesView& series, const SeriesBasis& basis);
/// How near to a limit a value stays undecided: u times the quantile of the bar that was asked for,
/// of the t distribution of its degrees of freedom. SI.
[[nodiscard]] double undecidedWithin(const SeriesOutcome& outcome);
/// The fact that stores it.
[[nodiscard]] model::VerdictGiven verdictFact(model::EntryId series, const SeriesOutcome& outcome);

/// The state a force limit belongs to: the sheet's own, or bare hub, first movement, straight
/// ahead. Grease is recorded but never part of the comparison.
[[nodiscard]] bool stateFits(const model::SpecItem& limit, const model::PullState& state);

}  // namespace sw::workshop
