// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>

#include "base/clock.h"
#include "model/ids.h"
#include "model/job_facts.h"

namespace sw::store {

/// What an ended job taught, as it stands.
struct LessonRow {
  model::EntryId entry;
  model::JobId job;
  model::VehicleId vehicle;
  Timestamp endedAt;
  model::Lesson fact;
  std::string leftOutWhy;  ///< empty: not left out of learning
  /// The next job of the vehicle that came in with a shake.
  struct Next {
    model::JobId job;
    Timestamp openedAt;
  };
  std::optional<Next> next;
};

}  // namespace sw::store
