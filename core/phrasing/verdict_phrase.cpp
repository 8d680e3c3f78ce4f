// SPDX-License-Identifier: GPL-3.0-or-later
#include "phrasing/verdict_phrase.h"

#include <array>
#include <cmath>

#include "phrasing/names.h"
#include "phrasing/template_text.h"
#include "units/format.h"

namespace sw::phrasing {

namespace {

constexpr QChar kNoBreakSpace(0x00A0);
constexpr int kLimitDigits = 6;

QString withUnit(const QString& number, const Unit& unit) {
  if (unit.symbol.empty()) return number;
  return number + kNoBreakSpace +
         QString::fromUtf8(unit.symbol.data(), static_cast<qsizetype>(unit.symbol.size()))
             .replace(' ', kNoBreakSpace);
}

/// A limit as it was typed, as far as its SI value tells: 45.1106 N are 4.6 kgf again.
QString limitNumber(double si, const Unit& unit) {
  const double value = si / unit.toSi;
  if (value == 0.0) return QStringLiteral("0");
  const int before = static_cast<int>(std::floor(std::log10(std::abs(value)))) + 1;
  QString text = QString::fromStdString(fixedDecimal(value, kLimitDigits - before));
  while (text.contains('.') && (text.endsWith('0') || text.endsWith('.'))) text.chop(1);
  return text;
}

QString sideWords(const JudgedValue& judged) {
  static constexpr Source kBelow =
      QT_TRANSLATE_NOOP3("phrasing", "outside, below the limit", "verdict on a series of readings");
  static constexpr Source kAbove =
      QT_TRANSLATE_NOOP3("phrasing", "outside, above the limit", "verdict on a series of readings");
  static constexpr Source kInside = QT_TRANSLATE_NOOP3("phrasing", "undecided, probably inside",
                                                       "verdict on a series of readings");
  static constexpr Source kOutside = QT_TRANSLATE_NOOP3("phrasing", "undecided, probably outside",
                                                        "verdict on a series of readings");
  const bool outside = judged.verdict == Verdict::Outside;
  const bool undecided = judged.verdict == Verdict::Undecided;
  if (outside && judged.side == LimitSide::Below) return translated(kBelow);
  if (outside && judged.side == LimitSide::Above) return translated(kAbove);
  if (undecided && judged.side == LimitSide::InsideLikely) return translated(kInside);
  if (undecided && judged.side == LimitSide::OutsideLikely) return translated(kOutside);
  return nameOf(judged.verdict);
}

QString verdictWords(const JudgedValue& judged) {
  static constexpr Source kProvisional =
      QT_TRANSLATE_NOOP3("phrasing", "provisional after {used} of {planned}, so far {verdict}",
                         "verdict before all planned readings are taken; {used} and {planned} are "
                         "numbers of readings");
  if (judged.verdict != Verdict::Provisional) return sideWords(judged);
  JudgedValue soFar = judged;
  soFar.verdict = judged.soFar;
  return filled(translated(kProvisional), [&](const QString& name) {
    if (name == "used") return QString::number(judged.used);
    return name == "planned" ? QString::number(judged.planned) : sideWords(soFar);
  });
}

LimitSide limitSideFromWord(std::string_view text) {
  for (const LimitSide side :
       {LimitSide::Below, LimitSide::Above, LimitSide::InsideLikely, LimitSide::OutsideLikely}) {
    if (word(side) == text) return side;
  }
  return LimitSide::None;
}

}  // namespace

JudgedValue judgedValue(const SeriesOutcome& outcome, const SeriesInput& input) {
  return {outcome.verdict,
          outcome.decisionSoFar,
          outcome.side,
          outcome.correctedMean,
          outcome.expandedUncertainty,
          outcome.used,
          input.planned,
          input.limit};
}

JudgedValue judgedValue(const model::VerdictGiven& given, std::int64_t planned,
                        const LimitBand& limit) {
  return {verdictFromWord(given.verdict).value_or(Verdict::NoLimit),
          verdictFromWord(given.soFar).value_or(Verdict::NoLimit),
          limitSideFromWord(given.limitSide),
          given.value,
          given.expandedUncertainty,
          given.used,
          planned,
          limit};
}

QString measuredText(double value, double expandedUncertainty, const Unit& unit) {
  if (!(expandedUncertainty > 0) || !std::isfinite(expandedUncertainty)) {
    return withUnit(limitNumber(value, unit), unit);
  }
  const RoundedPair pair = roundToUncertainty(value / unit.toSi, expandedUncertainty / unit.toSi);
  const QString number = QString::fromStdString(pair.value) + kNoBreakSpace + QChar(0x00B1) +
                         kNoBreakSpace + QString::fromStdString(pair.uncertainty);
  return withUnit(number, unit);
}

QString limitText(const LimitBand& limit, const Unit& unit) {
  static constexpr Source kBoth =
      QT_TRANSLATE_NOOP3("phrasing", "{min} to {max}", "a limit with its unit behind {max}");
  static constexpr Source kLeast =
      QT_TRANSLATE_NOOP3("phrasing", "at least {min}", "a limit with its unit");
  static constexpr Source kMost =
      QT_TRANSLATE_NOOP3("phrasing", "at most {max}", "a limit with its unit");
  if (!limit.any()) return {};
  const Source& source = limit.min && limit.max ? kBoth : limit.min ? kLeast : kMost;
  return filled(translated(source), [&](const QString& name) {
    if (name == "max") return withUnit(limitNumber(*limit.max, unit), unit);
    const QString number = limitNumber(*limit.min, unit);
    return limit.max ? number : withUnit(number, unit);
  });
}

QString verdictName(const std::string& verdict, std::string_view side) {
  const auto known = verdictFromWord(verdict);
  if (!known) return shown(verdict);
  JudgedValue judged;
  judged.verdict = *known;
  judged.side = limitSideFromWord(side);
  return sideWords(judged);
}

QString verdictPhrase(const JudgedValue& judged, const Unit& unit) {
  static constexpr Source kLine =
      QT_TRANSLATE_NOOP3("phrasing", "{verdict}: {value}[ (limit {limit})]",
                         "a verdict, the measured value with its uncertainty, and the limit");
  return filled(translated(kLine), [&](const QString& name) {
    if (name == "verdict") return verdictWords(judged);
    if (name == "limit") return limitText(judged.limit, unit);
    return measuredText(judged.value, judged.expandedUncertainty, unit);
  });
}

}  // namespace sw::phrasing
