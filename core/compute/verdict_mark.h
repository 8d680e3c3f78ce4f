// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "figure/figure.h"
#include "measure/evaluation.h"
#include "units/unit.h"

// Verdicts and measured values in pictures: always by word and shape, too, never by colour alone.

namespace sw::compute {

struct VerdictLook {
  figure::MarkShape shape;
  figure::Tone tone;
};
/// Disc within, square outside, diamond undecided, ring without a limit: the shapes of the sheet.
[[nodiscard]] VerdictLook lookOf(Verdict verdict);
[[nodiscard]] figure::Mark verdictMark(figure::Point at, Verdict verdict, double radius = 0.5);

/// "outside, above the limit"; "no limit".
[[nodiscard]] std::string verdictWords(Verdict verdict, LimitSide side = LimitSide::None);
/// "18.80 ± 0.76 N".
[[nodiscard]] std::string measuredWords(double si, double expandedUncertainty, const Unit& unit);
/// "0.0907 mm": three digits, those at the end left out where they are zeros.
[[nodiscard]] std::string figureWords(double si, QuantityKind kind, int significant = 3);
/// The same for a limit: as it was typed, as far as its value tells.
[[nodiscard]] std::string limitWords(double si, const Unit& unit);

}  // namespace sw::compute
