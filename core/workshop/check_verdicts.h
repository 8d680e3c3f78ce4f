// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "store/check_book.h"

namespace sw::workshop {

/// Every verdict that was given is computed again from the readings, instrument, limit and plan it
/// rested on at that moment, and must come out the same. Keys: "check.verdict_differs" (entry,
/// given, computed), "check.verdict_without_basis" (entry).
[[nodiscard]] Result<std::vector<store::CheckFinding>> checkVerdicts(const store::Book& book);

}  // namespace sw::workshop
