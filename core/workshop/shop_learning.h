// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "diagnosis/cause_file.h"
#include "diagnosis/learning.h"
#include "store/lesson_row.h"
#include "workshop/workshop.h"

// What the ended jobs of a book teach of causes. A job counts unless somebody left it out or the
// vehicle came back with a shake within the time that the table of causes sets: that takes back
// what had been confirmed.

namespace sw::workshop {

/// As many of the newest lessons are learned from.
inline constexpr std::size_t kMostLessons = 2000;

struct Taught {
  store::LessonRow row;
  diagnosis::ClosedJob closed;
  bool takenBack = false;  ///< it came back

  [[nodiscard]] bool counts() const { return !takenBack && row.leftOutWhy.empty(); }
};

struct ShopLearning {
  diagnosis::CauseFile start;  ///< shipped, with the shop's own numbers
  std::vector<Taught> jobs;    ///< oldest first
  diagnosis::TableChoice choice;
  diagnosis::CauseFile inUse;  ///< learned where that forecast better, and so damped

  /// Those that count.
  [[nodiscard]] std::vector<diagnosis::ClosedJob> lessons() const;
};

/// Errors: those of the book, and as causesOf.
[[nodiscard]] Result<ShopLearning> shopLearning(const Workshop& workshop);

/// An earlier visit of the vehicle that is taken back by this one: the newest that confirmed a
/// cause within the time set, where this job says that it shakes again. Errors: those of the book.
[[nodiscard]] Result<std::optional<store::LessonRow>> comebackOf(const Workshop& workshop,
                                                                 const JobState& job,
                                                                 const diagnosis::CauseFile& file);

}  // namespace sw::workshop
