// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/json.h"
#include "workshop/job_state.h"

namespace sw::report {

/// The whole job as JSON, schema 1:
///   schema      1
///   job         {job, opened_at, closed_at?, outcome?, request?, odometer?}
///   vehicle     {entry, ...fields of the revision in force}
///   people, instruments, instrument_checks, spec
///               the revisions the job's facts point at, each {entry, ...fields}
///   procedures  [{id, version, hash}], each text once
///   entries     every fact of the job, in order, as model::toJson
///   summary     {outcome, series, packs, ledger}: derived, for reading; the entries are the record
/// Quantities keep what was typed beside the SI value. `shop` is the shop as of the job's closing,
/// so that later changes leave the export as it is.
[[nodiscard]] model::Json exportJob(const workshop::JobState& job, const workshop::ShopState& shop);

/// As recorded, or with left and right exchanged.
enum class SideMapping { AsRecorded, Exchanged };

/// What was measured and done, without what may differ when another hand types the same job: no
/// ids, times, people, typed texts or units. SI values with 12 significant digits; lists in the
/// order of procedure, round, step and side, so that the order in which two sides were worked on
/// does not matter.
[[nodiscard]] model::Json comparableJob(const workshop::JobState& job,
                                        SideMapping sides = SideMapping::AsRecorded);

}  // namespace sw::report
