// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "base/result.h"
#include "model/entry.h"
#include "store/connection.h"
#include "store/fact_rows.h"

// Whole entries: the header row with the fact under it.

namespace sw::store {

[[nodiscard]] Result<void> insertEntry(Connection& connection, const model::Entry& entry);
[[nodiscard]] Result<std::optional<model::Entry>> readEntry(Connection& connection,
                                                            model::EntryId id);
/// In order of id.
[[nodiscard]] Result<std::vector<model::Entry>> readEntries(Connection& connection,
                                                            const FactFilter& filter);
/// The entries after `id`, whatever job they belong to, in order of id.
[[nodiscard]] Result<std::vector<model::Entry>> readEntriesAfter(Connection& connection,
                                                                 model::EntryId id);
/// The entry that replaces this one.
[[nodiscard]] Result<std::optional<model::EntryId>> replacementOf(Connection& connection,
                                                                  model::EntryId id);

}  // namespace sw::store
