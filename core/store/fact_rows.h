// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>
#include <utility>
#include <vector>

#include "base/result.h"
#include "model/entry.h"
#include "store/connection.h"

// The rows of the tables of facts, written and read through the fields of the structs alone.

namespace sw::store {

/// Inserts the row of one fact under its entry.
[[nodiscard]] Result<void> insertFact(Connection& connection, model::EntryId entry,
                                      const model::Payload& payload);

/// Which facts to read.
struct FactFilter {
  std::optional<model::JobId> job;  ///< absent = the facts of the shop
  model::EntryId last;              ///< up to and including this entry
};

using FactRow = std::pair<model::EntryId, model::Payload>;

/// The facts of one kind, in order of id. Errors: Internal "store.unknown_kind", BookDamaged
/// "store.bad_value" (details: entry, column).
[[nodiscard]] Result<std::vector<FactRow>> readFacts(Connection& connection, std::string_view kind,
                                                     const FactFilter& filter);
/// The fact of one entry. Errors: as readFacts, and BookDamaged "store.fact_missing".
[[nodiscard]] Result<model::Payload> readFact(Connection& connection, std::string_view kind,
                                              model::EntryId entry);

}  // namespace sw::store
