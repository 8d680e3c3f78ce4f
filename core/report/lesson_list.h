// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "model/json.h"
#include "workshop/shop_learning.h"

// What ended jobs taught of causes, and how well it forecasts.

namespace sw::report {

/// "counts", "came_back" or "left_out".
[[nodiscard]] std::string_view lessonState(const workshop::Taught& job);

/// {"jobs": [{"job", "registration", "ended_at", "causes", "answers", "state", "why"}, ...],
///  "scores": {"starting": {"jobs", "brier", "log", "first_right"}, "learned", "guess"},
///  "in_use": "starting" or "learned", "damping": 1}
[[nodiscard]] model::Json lessonsJson(const workshop::ShopLearning& learning,
                                      const workshop::ShopState& shop);
/// The same as a table of jobs and one of scores.
[[nodiscard]] std::string lessonsText(const workshop::ShopLearning& learning,
                                      const workshop::ShopState& shop);

}  // namespace sw::report
