// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/verdict_mark.h"

#include <string_view>

#include "phrasing/verdict_phrase.h"
#include "units/format.h"

namespace sw::compute {

using figure::MarkShape;
using figure::Tone;

VerdictLook lookOf(Verdict verdict) {
  switch (verdict) {
    case Verdict::Within:
      return {MarkShape::Disc, Tone::Good};
    case Verdict::Outside:
      return {MarkShape::Square, Tone::Bad};
    case Verdict::Undecided:
    case Verdict::Provisional:
    case Verdict::InstrumentTooCoarse:
      return {MarkShape::Diamond, Tone::Doubt};
    case Verdict::NoLimit:
      break;
  }
  return {MarkShape::Ring, Tone::Ink};
}

figure::Mark verdictMark(figure::Point at, Verdict verdict, double radius) {
  const VerdictLook look = lookOf(verdict);
  return {at, look.shape, look.tone, radius};
}

std::string verdictWords(Verdict verdict, LimitSide side) {
  if (verdict == Verdict::NoLimit) return "no limit";
  return phrasing::verdictName(std::string(word(verdict)), word(side)).toStdString();
}

std::string measuredWords(double si, double expandedUncertainty, const Unit& unit) {
  return phrasing::measuredText(si, expandedUncertainty, unit).toStdString();
}

std::string limitWords(double si, const Unit& unit) {
  return phrasing::measuredText(si, 0.0, unit).toStdString();
}

std::string figureWords(double si, QuantityKind kind, int significant) {
  const Unit& unit = defaultUnit(kind);
  std::string text = displayText(si, unit, significant);
  const std::size_t end = text.find(' ');
  std::string number = text.substr(0, end);
  if (number.find('.') == std::string::npos) return text;
  number.erase(number.find_last_not_of('0') + 1);
  if (number.back() == '.') number.pop_back();
  return end == std::string::npos ? number : number + text.substr(end);
}

}  // namespace sw::compute
