// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "diagnosis/cause_file.h"
#include "diagnosis/learning.h"
#include "workshop/shake_known.h"

// What a job teaches of causes when it ends. A cause counts as confirmed when it was put right and
// the next drive was without the shake; what was put right before a drive that still shook does
// not. Where every check that was made found nothing and it still shakes, no fault was found.
// Without a drive at the end, and where nothing shook to begin with, a job teaches nothing; nor
// does a part that hides a shake (a weak damper) while other play was not ruled out.

namespace sw::workshop {

/// The causes that the last drive proves to be put right, in the order of the table; none while it
/// shakes.
[[nodiscard]] std::vector<std::size_t> curedCauses(const JobState& job,
                                                   const diagnosis::CauseFile& file,
                                                   const ShakeKnown& known);

[[nodiscard]] std::optional<model::Lesson> lessonOf(const JobState& job,
                                                    const diagnosis::CauseFile& file);

/// The lesson as learning takes it; keys and words that the table does not know are left out.
/// Nothing where causes were named and none of them is known.
[[nodiscard]] std::optional<diagnosis::ClosedJob> closedJobOf(const model::Lesson& lesson,
                                                              const diagnosis::CauseTable& table);

}  // namespace sw::workshop
