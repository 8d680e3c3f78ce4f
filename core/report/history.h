// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <string>
#include <vector>

#include "model/json.h"
#include "store/book.h"
#include "workshop/shop_state.h"

// The history of one value, oldest first: what was recorded, by whom, and what took its place.

namespace sw::report {

struct HistoryRow {
  model::EntryId entry;
  std::string kind;   ///< the stored word of the kind of entry
  std::string value;  ///< its fields in words; "withdrawn"
  std::string reason;
  std::string by;  ///< initials
  Timestamp doneAt, enteredAt;
};

/// A fact of a job: its chain of corrections. A fact of the shop: every revision of the same
/// person, instrument, vehicle or line of a spec sheet. Errors: NotFound "report.no_entry".
[[nodiscard]] Result<std::vector<HistoryRow>> historyOf(const store::Book& book, model::EntryId id);

[[nodiscard]] model::Json toJson(std::span<const HistoryRow> rows);
[[nodiscard]] std::string toText(std::span<const HistoryRow> rows);

}  // namespace sw::report
