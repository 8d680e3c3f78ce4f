// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/instruments/instrument_text.h"

#include <QCoreApplication>
#include <QStringList>
#include <cmath>
#include <numbers>

#include "measure/instrument.h"
#include "report/quantity_text.h"
#include "report/wording.h"
#include "units/format.h"

namespace sw::ui {

namespace {

using model::InstrumentKind;

QString words(const char* text) {
  return QCoreApplication::translate("Instruments", text);
}

#define SW_TEXT(text) words(QT_TRANSLATE_NOOP("Instruments", text))

QString rangeText(const model::Instrument& instrument) {
  const auto& [min, max] = std::tie(instrument.rangeMin, instrument.rangeMax);
  if (min && max) return SW_TEXT("%1 to %2").arg(report::typed(*min), report::typed(*max));
  if (min) return SW_TEXT("from %1").arg(report::typed(*min));
  if (max) return SW_TEXT("up to %1").arg(report::typed(*max));
  return {};
}

/// A value in the unit the instrument is read in.
QString inItsUnit(const model::Instrument& instrument, double si) {
  const auto& scale = instrument.graduation;
  const auto unit = findUnit(scale.kind, scale.unit);
  if (!unit) return report::siText(scale.kind, si, 2);
  return report::withUnit(displayText(si, {unit->kind, "", unit->toSi}, 2), scale.unit);
}

InstrumentCapability capabilityOf(const model::Instrument& instrument,
                                  const model::InstrumentCheck& check) {
  InstrumentCapability capability;
  capability.graduation = instrument.graduation.si;
  // A share of the reading counts at the size of what was applied.
  if (const auto& error = instrument.permissibleError) {
    capability.permissibleError =
        error->unit == "%" ? error->si * std::abs(check.applied.si) : error->si;
  }
  const double width = check.appliedUncertainty ? check.appliedUncertainty->si : 0.0;
  capability.check = OwnCheck{check.applied.si, check.shown.si, width / std::numbers::sqrt3};
  return capability;
}

/// Why nothing is proved with it, and what mends that.
QString unknownText(InstrumentKind kind) {
  switch (kind) {
    case InstrumentKind::SpringScale:
      return SW_TEXT(
          "Nobody knows yet how far this scale is off, so it proves nothing that safety rests on. "
          "Hanging a known mass on it mends that: two bags of flour weighed on a kitchen balance.");
    case InstrumentKind::TorqueWrench:
      return SW_TEXT(
          "Nobody knows yet how far this wrench is off, so a torque set with it is recorded and "
          "proves nothing. A calibration mends that.");
    case InstrumentKind::PressureGauge:
      return SW_TEXT(
          "Nobody knows yet how far this gauge is off, so it proves nothing that safety rests on. "
          "Reading the same tyre with a gauge in calibration mends that.");
    default:
      return SW_TEXT(
          "Nobody knows yet how far this instrument is off, so it proves nothing that safety rests "
          "on. Measuring something of known size mends that.");
  }
}

}  // namespace

QString readsText(const model::Instrument& instrument) {
  QStringList parts{SW_TEXT("reads to %1").arg(report::typed(instrument.graduation))};
  parts += instrument.permissibleError
               ? QStringLiteral("±\u00A0") + report::typed(*instrument.permissibleError)
               : SW_TEXT("error not known");
  const QString range = rangeText(instrument);
  if (!range.isEmpty()) parts += range;
  return parts.join(QStringLiteral(", "));
}

QString calibrationText(const model::Instrument& instrument, const Date& today) {
  const auto state =
      measure::calibrationState({instrument.calibratedOn, instrument.calibrationDue}, today);
  QString text = report::humanWord(measure::word(state));
  if (instrument.calibrationDue) {
    const QString due = report::dateText(*instrument.calibrationDue);
    const bool over = state == measure::CalibrationState::Overdue;
    text += over ? SW_TEXT(", was due %1").arg(due) : SW_TEXT(", until %1").arg(due);
  } else if (instrument.calibratedOn) {
    text += SW_TEXT(", on %1").arg(report::dateText(*instrument.calibratedOn));
  }
  return text;
}

QString checkText(const model::InstrumentCheck* check) {
  if (check == nullptr) return {};
  const QString text =
      SW_TEXT("showed %1 for %2").arg(report::typed(check->shown), report::typed(check->applied));
  if (check->against.empty()) return text;
  return text + QStringLiteral(": ") + report::fromUtf8(check->against);
}

QString worthText(const model::Instrument& instrument, const model::InstrumentCheck* check) {
  if (check == nullptr) {
    return instrument.permissibleError ? QString{} : unknownText(instrument.type);
  }
  const InstrumentCapability capability = capabilityOf(instrument, *check);
  const double correction =
      measure::correctionFrom(*capability.check, capability.graduation).correction;
  const QString size = inItsUnit(instrument, std::abs(correction));
  QStringList sentences;
  if (correction > 0) {
    sentences += SW_TEXT("By its newest own check %1 is added to what it shows.").arg(size);
  } else if (correction < 0) {
    sentences += SW_TEXT("By its newest own check %1 is taken from what it shows.").arg(size);
  } else {
    sentences += SW_TEXT("Its newest own check found it true.");
  }
  sentences +=
      SW_TEXT("The check counts for readings from half to twice of what it was made with.");
  if (measure::compareWithPermissible(capability) == measure::CheckAgreement::ExceedsPermissible) {
    sentences += SW_TEXT(
        "It is further off than its permissible error allows: have it looked at before anything "
        "rests on it.");
  }
  return sentences.join(QLatin1Char(' '));
}

QString graduationExample(InstrumentKind kind) {
  switch (kind) {
    case InstrumentKind::SpringScale:
      return QStringLiteral("0.5 N, 50 g");
    case InstrumentKind::TorqueWrench:
      return QStringLiteral("1 N m, 1 lbf ft");
    case InstrumentKind::PressureGauge:
      return QStringLiteral("0.05 bar, 1 psi");
    case InstrumentKind::SteelRule:
      return QStringLiteral("0.5 mm");
    default:
      return QStringLiteral("0.01 mm, 0.001 in");
  }
}

QString checkExample(InstrumentKind kind) {
  switch (kind) {
    case InstrumentKind::SpringScale:
      return SW_TEXT("two bags of flour on the kitchen balance");
    case InstrumentKind::TorqueWrench:
      return SW_TEXT("a known mass on a known arm");
    case InstrumentKind::PressureGauge:
      return SW_TEXT("a gauge in calibration");
    default:
      return SW_TEXT("a gauge or feeler of known size");
  }
}

#undef SW_TEXT

}  // namespace sw::ui
