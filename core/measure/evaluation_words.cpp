// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>

#include "base/words.h"
#include "measure/evaluation.h"

namespace sw {

template <>
struct Words<Verdict> {
  static constexpr std::array<std::pair<Verdict, std::string_view>, 6> table{
      {{Verdict::Within, "within"},
       {Verdict::Outside, "outside"},
       {Verdict::Undecided, "undecided"},
       {Verdict::Provisional, "provisional"},
       {Verdict::InstrumentTooCoarse, "instrument_too_coarse"},
       {Verdict::NoLimit, "no_limit"}}};
};

template <>
struct Words<LimitSide> {
  static constexpr std::array<std::pair<LimitSide, std::string_view>, 5> table{
      {{LimitSide::None, "none"},
       {LimitSide::Below, "below"},
       {LimitSide::Above, "above"},
       {LimitSide::InsideLikely, "inside_likely"},
       {LimitSide::OutsideLikely, "outside_likely"}}};
};

template <>
struct Words<ErrorShape> {
  static constexpr std::array<std::pair<ErrorShape, std::string_view>, 3> table{
      {{ErrorShape::Rectangular, "rectangular"},
       {ErrorShape::Triangular, "triangular"},
       {ErrorShape::Certificate, "certificate"}}};
};

template <>
struct Words<DecisionRule> {
  static constexpr std::array<std::pair<DecisionRule, std::string_view>, 2> table{
      {{DecisionRule::ConformanceProbability, "conformance_probability"},
       {DecisionRule::GuardBandK2, "guard_band_k2"}}};
};

template <>
struct Words<Consistency> {
  static constexpr std::array<std::pair<Consistency, std::string_view>, 5> table{
      {{Consistency::TooFew, "too_few"},
       {Consistency::Consistent, "consistent"},
       {Consistency::RangeTooWide, "range_too_wide"},
       {Consistency::Outlier, "outlier"},
       {Consistency::InconsistentMedianUsed, "inconsistent_median_used"}}};
};

template <>
struct Words<AdviceCode> {
  static constexpr std::array<std::pair<AdviceCode, std::string_view>, 7> table{
      {{AdviceCode::MoreReadings, "more_readings"},
       {AdviceCode::FinerInstrument, "finer_instrument"},
       {AdviceCode::MoreCannotHelp, "more_cannot_help"},
       {AdviceCode::CheckInstrument, "check_instrument"},
       {AdviceCode::RepeatInconsistent, "repeat_inconsistent"},
       {AdviceCode::OutOfRange, "out_of_range"},
       {AdviceCode::Settled, "settled"}}};
};

std::string_view word(Verdict verdict) {
  return wordOf(verdict);
}
std::string_view word(LimitSide side) {
  return wordOf(side);
}
std::string_view word(ErrorShape shape) {
  return wordOf(shape);
}
std::string_view word(DecisionRule rule) {
  return wordOf(rule);
}
std::string_view word(Consistency consistency) {
  return wordOf(consistency);
}
std::string_view word(AdviceCode code) {
  return wordOf(code);
}

std::optional<Verdict> verdictFromWord(std::string_view text) {
  return fromWord<Verdict>(text);
}
std::optional<ErrorShape> errorShapeFromWord(std::string_view text) {
  return fromWord<ErrorShape>(text);
}
std::optional<DecisionRule> decisionRuleFromWord(std::string_view text) {
  return fromWord<DecisionRule>(text);
}

}  // namespace sw
