// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>

#include "diagnosis/cause_file.h"

namespace sw::diagnosis {

/// The file with a shop's own numbers in the place of the shipped ones. `text` is a JSON object:
/// {"fallback_minutes": 300,
///  "causes": {"disc": {"weight": 12, "answers": {"steady": {"yes": 0.1}}}},
///  "checks": {"balance": {"minutes": 20, "false_alarm": 0.02, "false_alarm_minutes": 10,
///                         "finds": {"wheel_unbalance": 0.9}}},
///  "setups": {"lifted": {"stands": {"open": 15, "close": 5}}}}
/// Only what differs need stand in it; a chance that is not named gives way to those that are.
/// Errors: those of parseCauses; an empty text changes nothing.
[[nodiscard]] Result<CauseFile> withOwnNumbers(const CauseFile& shipped, std::string_view text);

}  // namespace sw::diagnosis
