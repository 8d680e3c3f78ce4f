// SPDX-License-Identifier: GPL-3.0-or-later
#include "phrasing/named_table.h"
#include "phrasing/names.h"

namespace sw::phrasing {

namespace {

constexpr std::array kInstruments = {
    Named<model::InstrumentKind>{
        model::InstrumentKind::SpringScale,
        QT_TRANSLATE_NOOP3("phrasing", "spring scale", "measuring instrument")},
    Named<model::InstrumentKind>{
        model::InstrumentKind::Micrometer,
        QT_TRANSLATE_NOOP3("phrasing", "micrometer", "measuring instrument")},
    Named<model::InstrumentKind>{
        model::InstrumentKind::DialIndicator,
        QT_TRANSLATE_NOOP3("phrasing", "dial indicator", "measuring instrument")},
    Named<model::InstrumentKind>{model::InstrumentKind::Caliper,
                                 QT_TRANSLATE_NOOP3("phrasing", "caliper", "measuring instrument")},
    Named<model::InstrumentKind>{
        model::InstrumentKind::Feeler,
        QT_TRANSLATE_NOOP3("phrasing", "feeler gauge", "measuring instrument")},
    Named<model::InstrumentKind>{
        model::InstrumentKind::SteelRule,
        QT_TRANSLATE_NOOP3("phrasing", "steel rule", "measuring instrument")},
    Named<model::InstrumentKind>{
        model::InstrumentKind::TorqueWrench,
        QT_TRANSLATE_NOOP3("phrasing", "torque wrench", "measuring instrument")},
    Named<model::InstrumentKind>{
        model::InstrumentKind::PressureGauge,
        QT_TRANSLATE_NOOP3("phrasing", "pressure gauge", "measuring instrument")},
    Named<model::InstrumentKind>{
        model::InstrumentKind::Other,
        QT_TRANSLATE_NOOP3("phrasing", "other instrument", "measuring instrument")},
};

constexpr std::array kLedgerStates = {
    Named<model::LedgerState>{
        model::LedgerState::Off,
        QT_TRANSLATE_NOOP3("phrasing", "off",
                           "where an item that came off, or was put on for the work, stands")},
    Named<model::LedgerState>{
        model::LedgerState::HandTight,
        QT_TRANSLATE_NOOP3("phrasing", "hand-tight",
                           "where an item that came off, or was put on for the work, stands")},
    Named<model::LedgerState>{
        model::LedgerState::Torqued,
        QT_TRANSLATE_NOOP3("phrasing", "torqued",
                           "where an item that came off, or was put on for the work, stands")},
    Named<model::LedgerState>{
        model::LedgerState::Back,
        QT_TRANSLATE_NOOP3("phrasing", "back",
                           "where an item that came off, or was put on for the work, stands")},
    Named<model::LedgerState>{
        model::LedgerState::Replaced,
        QT_TRANSLATE_NOOP3("phrasing", "replaced",
                           "where an item that came off, or was put on for the work, stands")},
    Named<model::LedgerState>{
        model::LedgerState::LeftOff,
        QT_TRANSLATE_NOOP3("phrasing", "left off",
                           "where an item that came off, or was put on for the work, stands")},
    Named<model::LedgerState>{
        model::LedgerState::On,
        QT_TRANSLATE_NOOP3("phrasing", "still on",
                           "where an item that came off, or was put on for the work, stands")},
    Named<model::LedgerState>{
        model::LedgerState::TakenOff,
        QT_TRANSLATE_NOOP3("phrasing", "taken off again",
                           "where an item that came off, or was put on for the work, stands")},
};

constexpr std::array kSupports = {
    Named<model::SupportKind>{
        model::SupportKind::Stands,
        QT_TRANSLATE_NOOP3("phrasing", "axle stands", "what carries the vehicle")},
    Named<model::SupportKind>{
        model::SupportKind::TwoPost,
        QT_TRANSLATE_NOOP3("phrasing", "two-post lift", "what carries the vehicle")},
    Named<model::SupportKind>{
        model::SupportKind::FourPost,
        QT_TRANSLATE_NOOP3("phrasing", "four-post lift", "what carries the vehicle")},
    Named<model::SupportKind>{model::SupportKind::Pit,
                              QT_TRANSLATE_NOOP3("phrasing", "pit", "what carries the vehicle")},
};

constexpr std::array kLayouts = {
    Named<model::ShimLayout>{
        model::ShimLayout::CapFlange,
        QT_TRANSLATE_NOOP3("phrasing", "under the cap flange", "where the shims sit")},
    Named<model::ShimLayout>{
        model::ShimLayout::Inner,
        QT_TRANSLATE_NOOP3("phrasing", "between pin and cap", "where the shims sit")},
};

constexpr std::array kRoles = {
    Named<model::PackRole>{model::PackRole::Found,
                           QT_TRANSLATE_NOOP3("phrasing", "found", "a shim pack")},
    Named<model::PackRole>{model::PackRole::Fitted,
                           QT_TRANSLATE_NOOP3("phrasing", "fitted", "a shim pack")},
};

constexpr std::array kPlaces = {
    Named<model::ShimPlace>{
        model::ShimPlace::Top,
        QT_TRANSLATE_NOOP3("phrasing", "top", "end of the swivel a shim pack sits at")},
    Named<model::ShimPlace>{
        model::ShimPlace::Bottom,
        QT_TRANSLATE_NOOP3("phrasing", "bottom", "end of the swivel a shim pack sits at")},
};

constexpr std::array kOutcomes = {
    Named<model::JobOutcome>{model::JobOutcome::SignedOff,
                             QT_TRANSLATE_NOOP3("phrasing", "signed off", "how a job ended")},
    Named<model::JobOutcome>{model::JobOutcome::Declined,
                             QT_TRANSLATE_NOOP3("phrasing", "declined", "how a job ended")},
    Named<model::JobOutcome>{
        model::JobOutcome::ClosedWithoutSignOff,
        QT_TRANSLATE_NOOP3("phrasing", "closed without sign-off", "how a job ended")},
};

constexpr std::array kCorrections = {
    Named<model::CorrectionReason>{
        model::CorrectionReason::TypingSlip,
        QT_TRANSLATE_NOOP3("phrasing", "typing slip", "why an entry was corrected")},
    Named<model::CorrectionReason>{
        model::CorrectionReason::WrongSide,
        QT_TRANSLATE_NOOP3("phrasing", "wrong side", "why an entry was corrected")},
    Named<model::CorrectionReason>{
        model::CorrectionReason::WrongUnit,
        QT_TRANSLATE_NOOP3("phrasing", "wrong unit", "why an entry was corrected")},
    Named<model::CorrectionReason>{
        model::CorrectionReason::BadPull,
        QT_TRANSLATE_NOOP3("phrasing", "bad pull", "why an entry was corrected")},
    Named<model::CorrectionReason>{
        model::CorrectionReason::Withdrawn,
        QT_TRANSLATE_NOOP3("phrasing", "withdrawn", "why an entry was corrected")},
    Named<model::CorrectionReason>{
        model::CorrectionReason::Other,
        QT_TRANSLATE_NOOP3("phrasing", "other reason", "why an entry was corrected")},
};

constexpr std::array kShakes = {
    Named<model::ShakeResult>{
        model::ShakeResult::None,
        QT_TRANSLATE_NOOP3("phrasing", "no shake", "the shake on the road test")},
    Named<model::ShakeResult>{
        model::ShakeResult::Less,
        QT_TRANSLATE_NOOP3("phrasing", "less than before", "the shake on the road test")},
    Named<model::ShakeResult>{
        model::ShakeResult::Same,
        QT_TRANSLATE_NOOP3("phrasing", "the same as before", "the shake on the road test")},
    Named<model::ShakeResult>{
        model::ShakeResult::Worse,
        QT_TRANSLATE_NOOP3("phrasing", "worse than before", "the shake on the road test")},
};

constexpr std::array kSpeeds = {
    Named<model::SpeedSource>{
        model::SpeedSource::Dial,
        QT_TRANSLATE_NOOP3("phrasing", "by the dial", "how a speed was read")},
    Named<model::SpeedSource>{
        model::SpeedSource::Gps,
        QT_TRANSLATE_NOOP3("phrasing", "by satellite", "how a speed was read")},
};

}  // namespace

QString nameOf(model::InstrumentKind kind) {
  return nameIn(kInstruments, kind);
}

QString nameOf(model::LedgerState state) {
  return nameIn(kLedgerStates, state);
}

QString ledgerStateName(std::string_view state) {
  const auto known = fromWord<model::LedgerState>(state);
  return known ? nameOf(*known) : shown(std::string(state));
}

QString nameOf(model::SupportKind support) {
  return nameIn(kSupports, support);
}

QString nameOf(model::ShimLayout layout) {
  return nameIn(kLayouts, layout);
}

QString nameOf(model::PackRole role) {
  return nameIn(kRoles, role);
}

QString nameOf(model::ShimPlace place) {
  return nameIn(kPlaces, place);
}

QString nameOf(model::JobOutcome outcome) {
  return nameIn(kOutcomes, outcome);
}

QString nameOf(model::CorrectionReason reason) {
  return nameIn(kCorrections, reason);
}

QString nameOf(model::ShakeResult result) {
  return nameIn(kShakes, result);
}

QString nameOf(model::SpeedSource source) {
  return nameIn(kSpeeds, source);
}

}  // namespace sw::phrasing
