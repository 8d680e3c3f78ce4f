// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "model/json.h"
#include "workshop/workshop.h"

// What typed words find in a book, as rows for people.

namespace sw::report {

struct SearchRow {
  model::VehicleId vehicle;
  std::string registration;  ///< as it is now
  std::optional<model::JobId> job;
  model::EntryId entry;
  std::string kind;  ///< the stored word: "vehicle", "part", "note" ...
  std::string what;  ///< the same for people: "owner's words"
  std::string text;
};

/// Vehicles first, then what was recorded in jobs, the newest job first; at most `limit`.
[[nodiscard]] std::vector<SearchRow> searchRows(std::span<const store::SearchHit> hits,
                                                const workshop::ShopState& shop);
/// Errors: those of Book::search.
[[nodiscard]] Result<std::vector<SearchRow>> searchRowsOf(const workshop::Workshop& workshop,
                                                          const std::string& text,
                                                          std::size_t limit);

[[nodiscard]] model::Json toJson(std::span<const SearchRow> rows);
[[nodiscard]] std::string toText(std::span<const SearchRow> rows);

}  // namespace sw::report
