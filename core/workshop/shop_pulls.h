// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/json.h"
#include "workshop/workshop.h"

namespace sw::workshop {

/// What this shop's own closed jobs tell of the starting force over the pack on an arrangement like
/// that of the job: a list of sides as the shim advisor takes it for history, the newest jobs
/// first. Same place of the shims and same kind of bearing; dry packs only; pulls at another arm
/// turned into those at this job's. Errors: those of the book.
[[nodiscard]] Result<model::Json> closedPulls(const Workshop& workshop, const JobState& job);

}  // namespace sw::workshop
