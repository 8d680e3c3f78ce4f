// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "compute/common_fields.h"
#include "compute/input_reader.h"
#include "mechanics/bolts/strength_class.h"
#include "mechanics/bolts/thread.h"
#include "mechanics/bolts/torque_range.h"

// Fields that the calculations of fasteners share: threads, ranges, stresses.

namespace sw::compute {

/// A thread as written; a reading error is kept under the key's path.
[[nodiscard]] std::optional<mechanics::Thread> threadField(InputReader& reader,
                                                           std::string_view key);
/// The same, missing where the key is absent.
[[nodiscard]] std::optional<mechanics::Thread> requiredThread(InputReader& reader,
                                                              std::string_view key);
[[nodiscard]] FieldDescription threadDescription(Presence presence);
[[nodiscard]] FieldDescription strengthDescription(Presence presence, std::string_view meaning);

/// {"min", "max"}, max where there is one; errors are kept.
[[nodiscard]] std::optional<mechanics::TorqueRange> torqueRangeField(InputReader& reader,
                                                                     std::string_view key);
[[nodiscard]] Json torqueRangeJson(const mechanics::TorqueRange& range);
[[nodiscard]] FieldDescription torqueRangeDescription(std::string_view name,
                                                      std::string_view meaning);

/// "640 MPa".
[[nodiscard]] std::string stressText(Pressure stress);
[[nodiscard]] FieldDescription stressField(std::string_view name, std::string_view meaning);

/// What to check where a pitch was looked up, or the class is not one of the thread's standard.
void noteThread(const mechanics::Thread& thread, std::vector<Note>& notes);
void noteClass(const mechanics::Thread& thread, mechanics::StrengthClass strengthClass,
               std::vector<Note>& notes);

}  // namespace sw::compute
