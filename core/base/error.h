// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace sw {

/// What the caller can do about an error; the sentence for people is made in phrasing from
/// Error::key.
enum class ErrorCode {
  InvalidInput,  ///< the text or value cannot be understood: type it again
  OutOfRange,    ///< understood, but outside what is physically or formally possible
  Missing,       ///< a required field is absent
  NotFound,      ///< names something that does not exist
  Conflict,      ///< contradicts what is already recorded
  Refused,       ///< a rule of the job forbids it now; the details name the step
  Degenerate,    ///< the calculation has no answer for these inputs
  BookMissing,
  BookForeign,  ///< a file, but not one of our books
  BookDamaged,
  BookNewer,  ///< written by a newer program
  BookReadOnly,
  BookLocked,  ///< another program has it
  BookOnNetwork,
  CannotWrite,  ///< an output or the disk does not take the data
  Cancelled,
  Internal,
};

/// The code as the word used in scripts and on the command line, e.g. "out_of_range".
[[nodiscard]] std::string_view word(ErrorCode code);

/// One failure. `key` is stable and names the sentence (e.g. "units.wrong_kind"); `field` is what
/// the person was filling in; `details` are named values for the sentence, in order.
struct Error {
  ErrorCode code = ErrorCode::Internal;
  std::string key;
  std::string field;
  std::vector<std::pair<std::string, std::string>> details;

  /// The first detail with this name, or an empty text.
  [[nodiscard]] std::string detail(std::string_view name) const;
  /// The same error about another field (used when a reader knows the name and the parser does
  /// not).
  [[nodiscard]] Error about(std::string fieldName) const;

  friend bool operator==(const Error&, const Error&) = default;
};

}  // namespace sw
