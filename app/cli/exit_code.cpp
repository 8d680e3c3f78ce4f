// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/exit_code.h"

namespace sw::app {

ExitCode exitCodeFor(ErrorCode code) {
  switch (code) {
    case ErrorCode::InvalidInput:
    case ErrorCode::OutOfRange:
    case ErrorCode::Missing:
    case ErrorCode::NotFound:
    case ErrorCode::Conflict:
    case ErrorCode::Refused:
    case ErrorCode::Degenerate:
      return ExitCode::BadInput;
    case ErrorCode::BookMissing:
    case ErrorCode::BookForeign:
    case ErrorCode::BookDamaged:
    case ErrorCode::BookNewer:
    case ErrorCode::BookReadOnly:
    case ErrorCode::BookLocked:
    case ErrorCode::BookOnNetwork:
      return ExitCode::Book;
    case ErrorCode::CannotWrite:
      return ExitCode::CannotWrite;
    case ErrorCode::Cancelled:
      return ExitCode::Cancelled;
    case ErrorCode::Internal:
      return ExitCode::Internal;
  }
  return ExitCode::Internal;
}

}  // namespace sw::app
