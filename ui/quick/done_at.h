// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <optional>
#include <string>

#include "base/clock.h"

namespace sw::ui {

/// When work was done, as people write it on a card, as ISO 8601 for a command: "14:05" and
/// "1405" are today, "2031-03-02 14:05" (or with a T, or with a zone) that day; a time without a
/// zone is on the clock of `now`. Nothing typed = nothing said. Errors: InvalidInput
/// "clock.not_a_time".
[[nodiscard]] Result<std::optional<std::string>> doneAtOf(const QString& text,
                                                          const Timestamp& now);
/// The same with its day, "2031-03-03 14:05", so that it still means that day tomorrow; what is no
/// time stays as it was typed.
[[nodiscard]] QString withItsDay(const QString& text, const Timestamp& now);

}  // namespace sw::ui
