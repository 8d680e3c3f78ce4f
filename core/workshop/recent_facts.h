// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "store/book.h"
#include "workshop/job_state.h"

namespace sw::workshop {

/// The facts of the job that was read last: command after command concerns the same job, and none
/// should read all of it again. A book that grew by other hands is read again.
class RecentFacts {
 public:
  /// All facts of a job. Errors: as Book::jobEntries; NotFound "workshop.no_job".
  [[nodiscard]] Result<JobFacts> ofJob(const store::Book& book, model::JobId job);
  /// These were committed just now.
  void appended(const std::vector<model::Entry>& entries);
  /// The first entries of the actions that were appended here, oldest first: entries made within
  /// one tick of the clock belong to one action only where no other begins between them.
  [[nodiscard]] const std::vector<model::EntryId>& starts() const { return m_starts; }

 private:
  struct Known {
    model::JobId job;
    JobFacts facts;
    model::EntryId next;  ///< the id the book's next entry had when this was true
  };
  std::optional<Known> m_known;
  std::vector<model::EntryId> m_starts;
};

}  // namespace sw::workshop
