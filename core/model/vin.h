// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>
#include <vector>

// METHOD CARD: hints about a vehicle identification number
// Formula: 17 characters, digits and letters without I, O and Q. Check digit in place 9: letters
//   become numbers (A-H 1-8, J-N 1-5, P 7, R 9, S-Z 2-9), times the weights 8 7 6 5 4 3 2 10 0 9 8
//   7 6 5 4 3 2, summed; the remainder by 11 is the digit, 10 is written X.
// Source: ISO 3779:2009 for length and characters; 49 CFR 565.15(c) for the letters as
//   numbers, the weights and the check digit (both from memory).
// Valid range: any text. Spaces and hyphens are skipped, small letters count as capitals.
// Assumptions: only North America (49 CFR 565) demands the check digit; elsewhere place 9 is free,
//   so one that differs is worth a second look at the plate, nothing more. It finds every single
//   wrong character but those that share a number (A, J, 1), and not every pair exchanged.
// When not to use: to refuse anything, or to tell maker, year or place. Older chassis numbers have
//   any length and any letters.
// Degenerate cases: nothing typed gives no hint. Not 17 characters: only that is said, since the
//   rules for characters and check digit are those of 17. A forbidden character: no check digit.
// Reference test: tests/core/model/vin_test.cpp.

namespace sw::model {

enum class VinHint { NotSeventeen, ForbiddenCharacter, CheckDigitDiffers, CheckDigitAgrees };
[[nodiscard]] std::string_view word(VinHint hint);

/// What can be said about a VIN or chassis number (UTF-8). Hints only: never a reason to refuse it.
[[nodiscard]] std::vector<VinHint> vinHints(std::string_view text);

}  // namespace sw::model
