// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <vector>

// Frozen like the steps that use it: what guards the facts of a book.

namespace sw::store {

/// Rows of the table are never changed, deleted or put in a second time.
void addInsertOnly(std::vector<std::string>& statements, std::string_view table,
                   std::string_view key);

/// A new kind of entry, whose table "fact_<kind>" exists: its word, insert-only rows, each under an
/// entry of its kind.
void addFactKind(std::vector<std::string>& statements, std::string_view kind);

}  // namespace sw::store
