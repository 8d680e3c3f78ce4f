// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/id.h"

namespace sw::model {

using EntryId = Id<struct EntryTag>;  ///< one appended fact; also names the revision it carries
using JobId = Id<struct JobTag>;      ///< the job's number, 1, 2, 3 ...
using VehicleId = Id<struct VehicleTag>;
using PersonId = Id<struct PersonTag>;
using InstrumentId = Id<struct InstrumentTag>;
using RunId = Id<struct RunTag>;  ///< a procedure run = the entry id of its RunStarted

}  // namespace sw::model
