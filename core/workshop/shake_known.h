// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "diagnosis/cause_file.h"
#include "diagnosis/pair_guess.h"
#include "diagnosis/ranking.h"
#include "workshop/job_state.h"
#include "workshop/put_right.h"

// What a job knows of its shake: what was told, which checks were made with what result, what was
// put right. All of it is derived from the facts of the job, so a verdict comes back as evidence by
// itself.

namespace sw::workshop {

/// A check that was made.
struct MadeCheck {
  std::size_t check = 0;
  std::size_t run = 0;             ///< index into JobState::runs
  model::EntryId last;             ///< the newest entry that says so
  std::vector<std::size_t> found;  ///< causes it found
  bool clear = false;              ///< it found nothing; neither: it could not be told
  /// Checks that must be clear before what it found counts: a weak damper proves nothing while
  /// play was not looked for.
  std::vector<std::size_t> waitsFor;
};

using ToldAnswer = diagnosis::GivenAnswer;

struct ShakeKnown {
  std::vector<ToldAnswer> told;
  std::vector<MadeCheck> made;
  std::vector<PutRight> putRight;  ///< in this job, and not found again since
  std::vector<diagnosis::Evidence> evidence;

  [[nodiscard]] bool hasMade(std::size_t check) const;
  [[nodiscard]] bool hasAnswer(std::size_t feature) const;
  [[nodiscard]] bool isPutRight(std::size_t cause) const;
};

[[nodiscard]] ShakeKnown shakeKnown(const JobState& job, const diagnosis::CauseFile& file);

/// A shake that was felt to go on below this share of the speed at which it began goes on when
/// slowing (starting value, no source).
inline constexpr double kGoesOnBelow = 0.9;

}  // namespace sw::workshop
