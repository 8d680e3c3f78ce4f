// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>

#include "model/shop_facts.h"

namespace sw::workshop {

/// Why a torque of the spec sheet is hard to believe for its bolt, and what else the figure could
/// mean. Nothing is ever corrected.
struct TorqueDoubt {
  std::string verdict;  ///< impossible | check | suspiciously_low
  std::string sentence;
};
/// Nothing for a believable torque, and for a line without torque, thread or class.
[[nodiscard]] std::optional<TorqueDoubt> torqueDoubt(const model::SpecItem& item);

}  // namespace sw::workshop
