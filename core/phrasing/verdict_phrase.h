// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QtCore/QString>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>

#include "measure/evaluation.h"
#include "model/job_facts.h"
#include "units/unit.h"

namespace sw::phrasing {

/// What a verdict's line says; SI values of the unit's kind.
struct JudgedValue {
  Verdict verdict = Verdict::NoLimit;
  Verdict soFar = Verdict::NoLimit;  ///< beside "provisional"
  LimitSide side = LimitSide::None;
  double value = 0;
  double expandedUncertainty = 0;
  std::int64_t used = 0;
  std::int64_t planned = 0;
  LimitBand limit;
};
[[nodiscard]] JudgedValue judgedValue(const SeriesOutcome& outcome, const SeriesInput& input);
/// The same from a verdict in the book and the series and limit it belongs to.
[[nodiscard]] JudgedValue judgedValue(const model::VerdictGiven& given, std::int64_t planned,
                                      const LimitBand& limit);

/// "18.80 ± 0.76 N": the uncertainty to two significant digits, the value to the same place,
/// no-break spaces between. Where no uncertainty is known the value stands alone.
[[nodiscard]] QString measuredText(double value, double expandedUncertainty, const Unit& unit);
/// "12 to 20 N", "at least 12 N", "at most 20 N"; empty without a limit.
[[nodiscard]] QString limitText(const LimitBand& limit, const Unit& unit);
/// The verdict in plain words: "undecided, probably inside: 19.6 ± 0.8 N (limit 12 to 20 N)".
[[nodiscard]] QString verdictPhrase(const JudgedValue& judged, const Unit& unit);

/// A verdict with the side of the limit, by their stored words: "outside, above the limit". A word
/// not known is shown as it is.
[[nodiscard]] QString verdictName(const std::string& verdict, std::string_view side);

/// One piece of advice as a sentence. Forces are pulls on a scale; everything else is a reading.
[[nodiscard]] QString advicePhrase(const Advice& advice, const Unit& unit);
/// All pieces as one text; "cannot help" and "a finer scale would" become one sentence.
[[nodiscard]] QString advicePhrase(std::span<const Advice> advice, const Unit& unit);

}  // namespace sw::phrasing
