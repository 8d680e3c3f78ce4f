// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/clock.h"
#include "store/connection.h"

namespace sw::store {

/// The time of a row: its text in this column, the offset of its clock in the next. Errors:
/// BookDamaged "store.bad_value".
[[nodiscard]] inline Result<Timestamp> timeAt(const Query& query, int column) {
  auto time = parseTimestamp(query.text(column));
  if (!time) return fail(ErrorCode::BookDamaged, "store.bad_value");
  time->offsetMinutes = static_cast<int>(query.integer(column + 1));
  return time;
}

}  // namespace sw::store
