// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <optional>
#include <string>

#include "base/clock.h"
#include "model/job_facts.h"
#include "model/shop_facts.h"

// METHOD CARD: numbers as they are printed
//   Display      value and U to the same place, U with two significant digits (JCGM 100:2008 7.2.6,
//                from memory); the unit after a no-break space (SI Brochure, 9th edition, 5.4.3,
//                from memory), the degree sign without one.
//   As typed     the figure keeps every digit that was typed; the SI value beside it has as many
//                significant digits as were typed, at least three.
//   Degenerate   U = 0 or unknown: the value in full.
//   Reference    tests/core/report/quantity_text_test.cpp.

namespace sw::report {

inline constexpr char16_t kNoBreak = u'\u00A0';

[[nodiscard]] inline QString fromUtf8(const std::string& text) {
  return QString::fromStdString(text);
}
/// The unit's symbol for print: "N m" with its space unbreakable, "°" for deg, "µm" for um.
[[nodiscard]] QString unitText(const std::string& symbol);
/// "18.5 N": the figure as given and its unit.
[[nodiscard]] QString withUnit(const std::string& number, const std::string& symbol);
/// As typed: "4.6 kgf".
[[nodiscard]] QString typed(const TypedQuantity& quantity);
/// As typed, and in the kind's own unit where that differs: "4.6 kgf (45.1 N)".
[[nodiscard]] QString typedAndSi(const TypedQuantity& quantity);
/// "(18.67 ± 0.76) N" in the kind's own unit.
[[nodiscard]] QString valueWithUncertainty(QuantityKind kind, double value, double expanded);
/// A value of known kind, three significant digits.
[[nodiscard]] QString siText(QuantityKind kind, double value, int significant = 3);
/// "15 N to 25 N", "at most 25 N", with the sheet's second figures in brackets.
[[nodiscard]] QString limitText(const model::SpecItem& limit);
/// A torque as the sheet has it: "45 N m (33 lbf ft)", "40 N m to 60 N m".
[[nodiscard]] QString torqueText(const model::SpecItem& spec);

/// "2031-04-05 10:20" on the wall clock where it was taken; the offset is not shown.
[[nodiscard]] QString timeText(const Timestamp& time);
[[nodiscard]] QString dateText(const Date& date);
[[nodiscard]] QString dateText(const Timestamp& time);
/// Minor units as "12.50 EUR".
[[nodiscard]] QString moneyText(std::int64_t minor, const std::string& currency);
/// "1 h 20 min".
[[nodiscard]] QString minutesText(double minutes);

}  // namespace sw::report
