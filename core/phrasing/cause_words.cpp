// SPDX-License-Identifier: GPL-3.0-or-later
#include "phrasing/cause_words.h"

#include <QCoreApplication>
#include <array>
#include <cmath>
#include <limits>

namespace sw::phrasing {

namespace {

struct Step {
  double from;
  const char* words;
};

// Steps of our own; studies of such words differ widely, so the bar beside them says how much.
constexpr std::array kLikelihoods{Step{0.95, QT_TRANSLATE_NOOP("phrasing", "almost surely")},
                                  Step{0.75, QT_TRANSLATE_NOOP("phrasing", "very likely")},
                                  Step{0.50, QT_TRANSLATE_NOOP("phrasing", "more likely than not")},
                                  Step{0.30, QT_TRANSLATE_NOOP("phrasing", "may well be")},
                                  Step{0.15, QT_TRANSLATE_NOOP("phrasing", "possible")},
                                  Step{0.05, QT_TRANSLATE_NOOP("phrasing", "less likely")},
                                  Step{0.00, QT_TRANSLATE_NOOP("phrasing", "hardly")}};

constexpr std::array kSpeaks{
    Step{4.0, QT_TRANSLATE_NOOP("phrasing", "speaks strongly for it")},
    Step{1.5, QT_TRANSLATE_NOOP("phrasing", "speaks for it")},
    Step{1 / 1.5, QT_TRANSLATE_NOOP("phrasing", "hardly matters")},
    Step{1 / 4.0, QT_TRANSLATE_NOOP("phrasing", "speaks against it")},
    Step{0.0, QT_TRANSLATE_NOOP("phrasing", "speaks strongly against it")}};

template <std::size_t N>
QString stepOf(const std::array<Step, N>& steps, double value) {
  for (const Step& step : steps) {
    if (value >= step.from) return QCoreApplication::translate("phrasing", step.words);
  }
  return QCoreApplication::translate("phrasing", steps.back().words);
}

double odds(double probability) {
  return probability < 1 ? probability / (1 - probability)
                         : std::numeric_limits<double>::infinity();
}

}  // namespace

QString likelihoodWords(double probability) {
  return stepOf(kLikelihoods, probability);
}

QString speaksWords(double with, double without) {
  const double before = odds(without);
  const double after = odds(with);
  if (std::isinf(before) && std::isinf(after)) return stepOf(kSpeaks, 1);
  if (!(before > 0)) return stepOf(kSpeaks, after > 0 ? kSpeaks.front().from : 1);
  return stepOf(kSpeaks, after / before);
}

QString ofHundred(double probability) {
  if (probability > 0 && probability < 0.005) {
    return QCoreApplication::translate("phrasing", "under 1");
  }
  return QString::number(std::round(probability * 100));
}

QString workTime(double minutes) {
  constexpr int kHour = 60;
  constexpr double kRoughFrom = 30;
  const double step = minutes < kRoughFrom ? 1 : 5;
  const int whole = static_cast<int>(std::round(minutes / step) * step);
  if (whole < kHour) return QCoreApplication::translate("phrasing", "%1 min").arg(whole);
  if (whole % kHour == 0) return QCoreApplication::translate("phrasing", "%1 h").arg(whole / kHour);
  return QCoreApplication::translate("phrasing", "%1 h %2 min")
      .arg(whole / kHour)
      .arg(whole % kHour);
}

}  // namespace sw::phrasing
