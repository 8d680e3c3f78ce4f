// SPDX-License-Identifier: GPL-3.0-or-later
#include <QtCore/QCoreApplication>
#include <QtCore/QStringList>
#include <algorithm>
#include <array>
#include <cmath>

#include "phrasing/template_text.h"
#include "phrasing/verdict_phrase.h"
#include "units/format.h"

namespace sw::phrasing {

namespace {

bool isPull(const Unit& unit) {
  return unit.kind == QuantityKind::Force;
}

/// Rounded down to two digits: a coarser graduation than computed might not decide.
QString graduationText(double si, const Unit& unit) {
  const double value = si / unit.toSi * (1 + 1e-9);
  const int places = 1 - static_cast<int>(std::floor(std::log10(value)));
  const double scale = std::pow(10.0, places);
  return measuredText(std::floor(value * scale) / scale * unit.toSi, 0, unit);
}

struct Pair {
  Source pull;
  Source other;
};

QString chosen(const Pair& pair, const Unit& unit, const QString& value = {}) {
  return filled(translated(isPull(unit) ? pair.pull : pair.other),
                [&](const QString&) { return value; });
}

/// The plural goes through Qt's numerus forms; the source texts read right without a translation.
QString moreReadings(int n, const Unit& unit) {
  if (isPull(unit)) {
    return n == 1 ? QCoreApplication::translate("phrasing", "1 more pull would probably decide.",
                                                "advice on a series of pulls")
                  : QCoreApplication::translate("phrasing", "%n more pulls would probably decide.",
                                                "advice on a series of pulls", n);
  }
  return n == 1 ? QCoreApplication::translate("phrasing", "1 more reading would probably decide.",
                                              "advice on a series of readings")
                : QCoreApplication::translate("phrasing", "%n more readings would probably decide.",
                                              "advice on a series of readings", n);
}

constexpr Pair kMore = {QT_TRANSLATE_NOOP3("phrasing", "More pulls would probably decide.",
                                           "advice on a series of pulls"),
                        QT_TRANSLATE_NOOP3("phrasing", "More readings would probably decide.",
                                           "advice on a series of readings")};
constexpr Pair kFiner = {
    QT_TRANSLATE_NOOP3("phrasing", "A scale graduated {graduation} or finer would decide.",
                       "advice on a series of pulls"),
    QT_TRANSLATE_NOOP3("phrasing", "An instrument graduated {graduation} or finer would decide.",
                       "advice on a series of readings")};
constexpr Pair kFinerUnknown = {
    QT_TRANSLATE_NOOP3("phrasing", "A finer scale is needed.", "advice on a series of pulls"),
    QT_TRANSLATE_NOOP3("phrasing", "A finer instrument is needed.",
                       "advice on a series of readings")};
constexpr Pair kCannotHelp = {
    QT_TRANSLATE_NOOP3("phrasing", "More pulls cannot help.", "advice on a series of pulls"),
    QT_TRANSLATE_NOOP3("phrasing", "More readings cannot help.", "advice on a series of readings")};
constexpr Pair kCannotHelpFiner = {
    QT_TRANSLATE_NOOP3("phrasing",
                       "More pulls cannot help: a scale graduated {graduation} or finer would.",
                       "advice on a series of pulls"),
    QT_TRANSLATE_NOOP3(
        "phrasing",
        "More readings cannot help: an instrument graduated {graduation} or finer would.",
        "advice on a series of readings")};
constexpr Pair kCheck = {
    QT_TRANSLATE_NOOP3("phrasing", "Check the scale against a known weight.",
                       "advice on a series of pulls"),
    QT_TRANSLATE_NOOP3("phrasing", "Check the instrument against a known gauge.",
                       "advice on a series of readings")};
constexpr Pair kRepeat = {
    QT_TRANSLATE_NOOP3("phrasing",
                       "The pulls do not agree: look for what changes and take the series again.",
                       "advice on a series of pulls"),
    QT_TRANSLATE_NOOP3(
        "phrasing", "The readings do not agree: look for what changes and take the series again.",
        "advice on a series of readings")};
constexpr Pair kRepeatMore = {
    QT_TRANSLATE_NOOP3("phrasing", "The pulls do not agree: take at least {count} more.",
                       "advice on a series of pulls"),
    QT_TRANSLATE_NOOP3("phrasing", "The readings do not agree: take at least {count} more.",
                       "advice on a series of readings")};
constexpr Pair kRange = {
    QT_TRANSLATE_NOOP3("phrasing", "A pull lies outside the range of the scale: use another one.",
                       "advice on a series of pulls"),
    QT_TRANSLATE_NOOP3("phrasing",
                       "A reading lies outside the range of the instrument: use another one.",
                       "advice on a series of readings")};
constexpr Pair kSettled = {
    QT_TRANSLATE_NOOP3("phrasing", "No more pulls are needed.", "advice on a series of pulls"),
    QT_TRANSLATE_NOOP3("phrasing", "No more readings are needed.",
                       "advice on a series of readings")};

bool namesGraduation(const Advice& advice) {
  return advice.code == AdviceCode::FinerInstrument && advice.graduation && *advice.graduation > 0;
}

}  // namespace

QString advicePhrase(const Advice& advice, const Unit& unit) {
  switch (advice.code) {
    case AdviceCode::MoreReadings:
      return advice.readings ? moreReadings(*advice.readings, unit) : chosen(kMore, unit);
    case AdviceCode::FinerInstrument:
      return namesGraduation(advice)
                 ? chosen(kFiner, unit, graduationText(*advice.graduation, unit))
                 : chosen(kFinerUnknown, unit);
    case AdviceCode::MoreCannotHelp:
      return chosen(kCannotHelp, unit);
    case AdviceCode::CheckInstrument:
      return chosen(kCheck, unit);
    case AdviceCode::RepeatInconsistent:
      return advice.readings ? chosen(kRepeatMore, unit, QString::number(*advice.readings))
                             : chosen(kRepeat, unit);
    case AdviceCode::OutOfRange:
      return chosen(kRange, unit);
    case AdviceCode::Settled:
      return chosen(kSettled, unit);
  }
  return {};
}

QString advicePhrase(std::span<const Advice> advice, const Unit& unit) {
  const auto isCannotHelp = [](const Advice& a) { return a.code == AdviceCode::MoreCannotHelp; };
  const auto finer = std::find_if(advice.begin(), advice.end(), namesGraduation);
  const bool together =
      finer != advice.end() && std::any_of(advice.begin(), advice.end(), isCannotHelp);
  QStringList sentences;
  for (const Advice& each : advice) {
    if (!together || !(isCannotHelp(each) || namesGraduation(each))) {
      sentences += advicePhrase(each, unit);
    } else if (isCannotHelp(each)) {
      sentences += chosen(kCannotHelpFiner, unit, graduationText(*finer->graduation, unit));
    }
  }
  return sentences.join(' ');
}

}  // namespace sw::phrasing
