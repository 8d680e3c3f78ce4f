// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/picture_parts.h"

namespace sw::compute {

using figure::Mark;
using figure::MarkShape;
using figure::Tone;

std::string degreesLabel(Angle angle, int decimals) {
  return fixedDecimal(inDegrees(angle), decimals) + "\u00b0";
}

std::string millimetresLabel(Length length, int decimals) {
  return fixedDecimal(inMillimetres(length), decimals) + " mm";
}

std::string shortNumber(double value, int most) {
  std::string text = fixedDecimal(value, most);
  if (text.find('.') == std::string::npos) return text;
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

Tone verdictTone(Verdict verdict) {
  switch (verdict) {
    case Verdict::Within:
      return Tone::Good;
    case Verdict::Outside:
      return Tone::Bad;
    case Verdict::Undecided:
    case Verdict::Provisional:
    case Verdict::InstrumentTooCoarse:
      return Tone::Doubt;
    case Verdict::NoLimit:
      return Tone::Ink;
  }
  return Tone::Ink;
}

Mark verdictMark(figure::Point at, Verdict verdict, double radius) {
  const auto shape = [verdict] {
    switch (verdict) {
      case Verdict::Within:
        return MarkShape::Disc;
      case Verdict::Outside:
        return MarkShape::Square;
      case Verdict::Undecided:
      case Verdict::InstrumentTooCoarse:
        return MarkShape::Diamond;
      case Verdict::Provisional:
      case Verdict::NoLimit:
        return MarkShape::Ring;
    }
    return MarkShape::Ring;
  };
  return Mark{at, shape(), verdictTone(verdict), radius};
}

}  // namespace sw::compute
