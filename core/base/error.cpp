// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/error.h"

namespace sw {

std::string_view word(ErrorCode code) {
  switch (code) {
    case ErrorCode::InvalidInput:
      return "invalid_input";
    case ErrorCode::OutOfRange:
      return "out_of_range";
    case ErrorCode::Missing:
      return "missing_field";
    case ErrorCode::NotFound:
      return "not_found";
    case ErrorCode::Conflict:
      return "conflict";
    case ErrorCode::Refused:
      return "refused";
    case ErrorCode::Degenerate:
      return "degenerate";
    case ErrorCode::BookMissing:
      return "book_missing";
    case ErrorCode::BookForeign:
      return "book_foreign";
    case ErrorCode::BookDamaged:
      return "book_damaged";
    case ErrorCode::BookNewer:
      return "book_newer";
    case ErrorCode::BookReadOnly:
      return "book_read_only";
    case ErrorCode::BookLocked:
      return "book_locked";
    case ErrorCode::BookOnNetwork:
      return "book_on_network";
    case ErrorCode::CannotWrite:
      return "cannot_write";
    case ErrorCode::Cancelled:
      return "cancelled";
    case ErrorCode::Internal:
      return "internal";
  }
  return "internal";
}

std::string Error::detail(std::string_view name) const {
  for (const auto& [key_, value] : details) {
    if (key_ == name) return value;
  }
  return {};
}

Error Error::about(std::string fieldName) const {
  Error copy = *this;
  copy.field = std::move(fieldName);
  return copy;
}

}  // namespace sw
