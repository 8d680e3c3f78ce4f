// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "model/job_facts.h"
#include "model/shop_facts.h"
#include "phrasing/names.h"
#include "report/document.h"
#include "workshop/rules.h"

// The words of the printed documents for stored words and states.

namespace sw::report {

/// The word for people of any stored word: "short_of_target" -> "short of target" unless a better
/// one is listed.
[[nodiscard]] QString humanWord(std::string_view stored);
template <HasWords E>
[[nodiscard]] QString humanWord(E value) {
  if constexpr (requires { phrasing::nameOf(value); }) {
    return phrasing::nameOf(value);
  } else {
    return humanWord(wordOf(value));
  }
}
[[nodiscard]] QString capitalised(QString text);

/// "left", "right", or empty.
[[nodiscard]] QString sideText(std::optional<model::Side> side);
/// " (left)" or empty.
[[nodiscard]] QString sideSuffix(std::optional<model::Side> side);
/// "left and right" for a run.
[[nodiscard]] QString sidesText(const std::vector<model::Side>& sides);

/// A verdict's word and shape.
[[nodiscard]] Span verdictSpan(std::string_view stored);
/// The axle arrangement as short sentences; what is not known is left out.
[[nodiscard]] QString arrangementText(const model::AxleArrangement& arrangement);
/// Why a run was put into the plan.
[[nodiscard]] QString whyText(std::string_view why);
/// The rule an override set aside.
[[nodiscard]] QString overrideText(std::string_view rule);
/// A reason against sign-off.
[[nodiscard]] QString refusalText(const workshop::Refusal& refusal);
/// What a torque check proves: never more than that the set value was reached.
[[nodiscard]] QString torqueStateText(const model::TorqueCheck& check);

/// The verdict rule in one sentence, and what a sheet is not.
[[nodiscard]] QString ruleSentence();
[[nodiscard]] QString noClearanceSentence();

}  // namespace sw::report
