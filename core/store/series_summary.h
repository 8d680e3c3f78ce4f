// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "base/clock.h"
#include "model/ids.h"
#include "model/pull_state.h"
#include "model/words.h"
#include "units/unit.h"

namespace sw::store {

/// Which series of a vehicle are meant.
struct SeriesFilter {
  model::VehicleId vehicle;
  std::string limitKey;         ///< the line of the spec sheet; empty: those of the step
  std::string procedure, step;  ///< used where limitKey is empty
  std::optional<model::Side> side;
};

/// A series of readings with its newest verdict, as it stands.
struct SeriesSummary {
  model::EntryId series;
  model::EntryId first;  ///< the entry it began as, before any correction
  model::JobId job;
  std::optional<model::RunId> run;
  std::string procedure;
  std::int64_t round = 1;
  std::string step;
  std::optional<model::Side> side;
  Timestamp doneAt;  ///< of `first`
  QuantityKind quantity = QuantityKind::Force;
  std::string limitKey;
  std::optional<model::PullState> state;
  std::string verdict;             ///< word of sw::Verdict
  double value = 0;                ///< corrected mean, SI
  double expandedUncertainty = 0;  ///< SI
};

/// A shim pack of a vehicle, as it stands.
struct PackSummary {
  model::EntryId entry;
  model::EntryId first;  ///< the entry it began as, before any correction
  model::JobId job;
  std::optional<model::Side> side;
  model::ShimPlace place = model::ShimPlace::Top;
  double total = 0;  ///< metres
};

}  // namespace sw::store
