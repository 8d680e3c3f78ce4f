// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "base/error.h"

namespace sw::app {

/// What the program ends with. Scripts rest on these numbers.
enum class ExitCode {
  Done = 0,         ///< also when a verdict is "outside"
  Findings = 1,     ///< check-book found something
  BadInput = 2,     ///< bad input or usage
  Book = 3,         ///< missing, foreign, damaged, newer, read-only or locked
  CannotWrite = 4,  ///< an output cannot be written
  Cancelled = 5,
  Internal = 70,
};

[[nodiscard]] constexpr int toInt(ExitCode code) {
  return static_cast<int>(code);
}
[[nodiscard]] ExitCode exitCodeFor(ErrorCode code);

}  // namespace sw::app
