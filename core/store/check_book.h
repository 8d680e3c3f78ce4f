// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <functional>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "base/clock.h"
#include "base/result.h"
#include "store/book.h"

namespace sw::store {

struct BookOptions;

enum class Severity {
  Note,   ///< worth knowing, nothing is wrong ("check.clock_went_back")
  Fault,  ///< the book does not hold what it promises
};

struct CheckFinding {
  Severity severity = Severity::Fault;
  std::string key;  ///< names the sentence
  std::vector<std::pair<std::string, std::string>> details;
};

struct CheckReport {
  std::vector<CheckFinding> findings;
  std::int64_t entries = 0;
  std::int64_t jobs = 0;

  [[nodiscard]] std::size_t faults() const;
  [[nodiscard]] std::size_t notes() const;
  [[nodiscard]] bool sound() const { return faults() == 0; }
  /// The one line: key "check.sound" or "check.faulty", details entries, jobs, faults, notes, first
  /// (the key of the first fault).
  [[nodiscard]] CheckFinding summary() const;
};

/// A further check by those who know more than the store (verdicts computed again from the
/// readings). Run only on a book that is sound so far.
using BookCheck = std::function<Result<std::vector<CheckFinding>>(const Book&)>;

/// Looks at everything a book promises, without changing it (a commit that a crash interrupted is
/// first finished or taken back, as at any opening): all pages and indexes, foreign keys, the
/// schema with its triggers, one fact under each entry, and that what facts point at is what it
/// should be. At most twenty findings of a kind are listed. Keys: check.integrity,
/// check.foreign_key, check.schema, check.gap, check.fact_missing, check.fact_extra,
/// check.replaces_*, check.run_not_started, check.by_not_a_person, check.job_not_opened,
/// check.wrong_reference, check.picture_missing, check.procedure_missing, check.clock_went_back
/// (note). Errors: as Book::open for a file that is missing, foreign, newer, or on a network.
[[nodiscard]] Result<CheckReport> checkBook(const std::string& path, const Clock& clock,
                                            std::span<const BookCheck> more = {});
[[nodiscard]] Result<CheckReport> checkBook(const std::string& path, const Clock& clock,
                                            std::span<const BookCheck> more,
                                            const BookOptions& options);

}  // namespace sw::store
