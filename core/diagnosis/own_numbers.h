// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "diagnosis/cause_file.h"

namespace sw::diagnosis {

/// The file with a shop's own numbers in the place of the shipped ones. `text` is a JSON object:
/// {"fallback_minutes": 300, "comeback_days": 60,
///  "causes": {"disc": {"weight": 12, "answers": {"steady": {"yes": 0.1}}}},
///  "checks": {"balance": {"minutes": 20, "false_alarm": 0.02, "false_alarm_minutes": 10,
///                         "finds": {"wheel_unbalance": 0.9}}},
///  "setups": {"lifted": {"stands": {"open": 15, "close": 5}}}}
/// Only what differs need stand in it; a chance that is not named gives way to those that are.
/// Errors: those of parseCauses; an empty text changes nothing.
[[nodiscard]] Result<CauseFile> withOwnNumbers(const CauseFile& shipped, std::string_view text);

enum class NumberKind { Weight, Chance, Minutes, Days };

/// A number for which a shop may put its own. `path` are the names that lead to it in that object:
/// {"checks", "balance", "minutes"}.
struct NumberPlace {
  std::vector<std::string> path;
  NumberKind kind = NumberKind::Chance;
  double value = 0;  ///< in the file asked
};
/// All of a file, in its order.
[[nodiscard]] std::vector<NumberPlace> numbersOf(const CauseFile& file);

/// Those of the places for which the text, one that withOwnNumbers takes, names a number of its
/// own.
[[nodiscard]] std::vector<NumberPlace> ownAmong(const std::vector<NumberPlace>& places,
                                                std::string_view text);
/// Does it name one here or below?
[[nodiscard]] bool isOwn(std::string_view text, const std::vector<std::string>& path);
struct NumberChange {
  std::vector<std::string> path;
  std::optional<double> value;  ///< absent = the shipped one again
};
/// The text with all of these changes. Errors: those of withOwnNumbers.
[[nodiscard]] Result<std::string> withChanges(const CauseFile& shipped, std::string_view text,
                                              const std::vector<NumberChange>& changes);
/// The text without what it names here or below; an empty path: without anything.
[[nodiscard]] std::string withoutNumber(std::string_view text,
                                        const std::vector<std::string>& path);

}  // namespace sw::diagnosis
