// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <vector>

#include "diagnosis/cause_file.h"
#include "workshop/job_state.h"

namespace sw::workshop {

/// A cause that was put right: by a finished run of a procedure that does it, or as somebody said.
struct PutRight {
  std::size_t cause = 0;
  model::EntryId entry;  ///< with which it was done; the newest
};

/// Of this job, in the order of the table.
[[nodiscard]] std::vector<PutRight> putRightIn(const JobState& job,
                                               const diagnosis::CauseFile& file);

}  // namespace sw::workshop
