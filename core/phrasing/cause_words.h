// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QtCore/QString>

namespace sw::phrasing {

/// A probability as people say it: "almost surely", "very likely", ... "hardly".
[[nodiscard]] QString likelihoodWords(double probability);

/// What one answer or check did to a cause: "speaks strongly for it", "speaks against it", "hardly
/// matters". By the odds with it against those without it: 4 and 1.5 are the steps (own rule).
[[nodiscard]] QString speaksWords(double with, double without);

/// A chance as a figure, to stand before "of 100": "57"; "under 1" where it is that small.
[[nodiscard]] QString ofHundred(double probability);

/// A time of work: "4 min", "1 h 25 min"; whole minutes, five by five from half an hour on.
[[nodiscard]] QString workTime(double minutes);

}  // namespace sw::phrasing
