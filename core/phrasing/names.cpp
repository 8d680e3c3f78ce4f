// SPDX-License-Identifier: GPL-3.0-or-later
#include "phrasing/names.h"
#include "phrasing/named_table.h"

namespace sw::phrasing {

namespace {

constexpr std::array kQuantities = {
    Named<QuantityKind>{QuantityKind::Length,
                        QT_TRANSLATE_NOOP3("phrasing", "length", "what a field measures")},
    Named<QuantityKind>{QuantityKind::Force,
                        QT_TRANSLATE_NOOP3("phrasing", "force", "what a field measures")},
    Named<QuantityKind>{QuantityKind::Torque,
                        QT_TRANSLATE_NOOP3("phrasing", "torque", "what a field measures")},
    Named<QuantityKind>{QuantityKind::Angle,
                        QT_TRANSLATE_NOOP3("phrasing", "angle", "what a field measures")},
    Named<QuantityKind>{QuantityKind::Mass,
                        QT_TRANSLATE_NOOP3("phrasing", "mass", "what a field measures")},
    Named<QuantityKind>{QuantityKind::Speed,
                        QT_TRANSLATE_NOOP3("phrasing", "speed", "what a field measures")},
    Named<QuantityKind>{QuantityKind::Frequency,
                        QT_TRANSLATE_NOOP3("phrasing", "frequency", "what a field measures")},
    Named<QuantityKind>{QuantityKind::Pressure,
                        QT_TRANSLATE_NOOP3("phrasing", "pressure", "what a field measures")},
    Named<QuantityKind>{QuantityKind::Duration,
                        QT_TRANSLATE_NOOP3("phrasing", "time", "what a field measures")},
    Named<QuantityKind>{QuantityKind::Volume,
                        QT_TRANSLATE_NOOP3("phrasing", "volume", "what a field measures")},
    Named<QuantityKind>{
        QuantityKind::TemperatureDifference,
        QT_TRANSLATE_NOOP3("phrasing", "temperature difference", "what a field measures")},
    Named<QuantityKind>{QuantityKind::Area,
                        QT_TRANSLATE_NOOP3("phrasing", "area", "what a field measures")},
    Named<QuantityKind>{QuantityKind::Stiffness,
                        QT_TRANSLATE_NOOP3("phrasing", "stiffness", "what a field measures")},
    Named<QuantityKind>{QuantityKind::Unbalance,
                        QT_TRANSLATE_NOOP3("phrasing", "unbalance", "what a field measures")},
    Named<QuantityKind>{QuantityKind::Number,
                        QT_TRANSLATE_NOOP3("phrasing", "number", "what a field measures")},
};

constexpr std::array kVerdicts = {
    Named<Verdict>{Verdict::Within,
                   QT_TRANSLATE_NOOP3("phrasing", "within", "verdict on a series of readings")},
    Named<Verdict>{Verdict::Outside,
                   QT_TRANSLATE_NOOP3("phrasing", "outside", "verdict on a series of readings")},
    Named<Verdict>{Verdict::Undecided,
                   QT_TRANSLATE_NOOP3("phrasing", "undecided", "verdict on a series of readings")},
    Named<Verdict>{Verdict::Provisional, QT_TRANSLATE_NOOP3("phrasing", "provisional",
                                                            "verdict on a series of readings")},
    Named<Verdict>{
        Verdict::InstrumentTooCoarse,
        QT_TRANSLATE_NOOP3("phrasing", "instrument too coarse", "verdict on a series of readings")},
    Named<Verdict>{Verdict::NoLimit, QT_TRANSLATE_NOOP3("phrasing", "no limit on file",
                                                        "verdict on a series of readings")},
};

constexpr std::array kFacts = {
    Named<std::string_view>{"person",
                            QT_TRANSLATE_NOOP3("phrasing", "person", "kind of entry in the book")},
    Named<std::string_view>{
        "instrument", QT_TRANSLATE_NOOP3("phrasing", "instrument", "kind of entry in the book")},
    Named<std::string_view>{"instrument_check", QT_TRANSLATE_NOOP3("phrasing", "instrument check",
                                                                   "kind of entry in the book")},
    Named<std::string_view>{"vehicle",
                            QT_TRANSLATE_NOOP3("phrasing", "vehicle", "kind of entry in the book")},
    Named<std::string_view>{"spec_item", QT_TRANSLATE_NOOP3("phrasing", "line of the spec sheet",
                                                            "kind of entry in the book")},
    Named<std::string_view>{"procedure_text", QT_TRANSLATE_NOOP3("phrasing", "text of a procedure",
                                                                 "kind of entry in the book")},
    Named<std::string_view>{"job_opened", QT_TRANSLATE_NOOP3("phrasing", "opening of the job",
                                                             "kind of entry in the book")},
    Named<std::string_view>{
        "complaint", QT_TRANSLATE_NOOP3("phrasing", "complaint", "kind of entry in the book")},
    Named<std::string_view>{"cause_checked", QT_TRANSLATE_NOOP3("phrasing", "cause checked",
                                                                "kind of entry in the book")},
    Named<std::string_view>{"run_started", QT_TRANSLATE_NOOP3("phrasing", "start of a procedure",
                                                              "kind of entry in the book")},
    Named<std::string_view>{"support_chosen", QT_TRANSLATE_NOOP3("phrasing", "choice of support",
                                                                 "kind of entry in the book")},
    Named<std::string_view>{"hold_answer", QT_TRANSLATE_NOOP3("phrasing", "answer at a hold point",
                                                              "kind of entry in the book")},
    Named<std::string_view>{
        "step_mark", QT_TRANSLATE_NOOP3("phrasing", "mark on a step", "kind of entry in the book")},
    Named<std::string_view>{
        "observation", QT_TRANSLATE_NOOP3("phrasing", "observation", "kind of entry in the book")},
    Named<std::string_view>{"series", QT_TRANSLATE_NOOP3("phrasing", "series of readings",
                                                         "kind of entry in the book")},
    Named<std::string_view>{"reading",
                            QT_TRANSLATE_NOOP3("phrasing", "reading", "kind of entry in the book")},
    Named<std::string_view>{"verdict",
                            QT_TRANSLATE_NOOP3("phrasing", "verdict", "kind of entry in the book")},
    Named<std::string_view>{"torque_check", QT_TRANSLATE_NOOP3("phrasing", "torque check",
                                                               "kind of entry in the book")},
    Named<std::string_view>{
        "ledger_move",
        QT_TRANSLATE_NOOP3("phrasing", "item taken off or put back", "kind of entry in the book")},
    Named<std::string_view>{
        "part_used", QT_TRANSLATE_NOOP3("phrasing", "part used", "kind of entry in the book")},
    Named<std::string_view>{
        "shim_pack", QT_TRANSLATE_NOOP3("phrasing", "shim pack", "kind of entry in the book")},
    Named<std::string_view>{"labour",
                            QT_TRANSLATE_NOOP3("phrasing", "labour", "kind of entry in the book")},
    Named<std::string_view>{"work_declined", QT_TRANSLATE_NOOP3("phrasing", "declined work",
                                                                "kind of entry in the book")},
    Named<std::string_view>{"note",
                            QT_TRANSLATE_NOOP3("phrasing", "note", "kind of entry in the book")},
    Named<std::string_view>{"photo",
                            QT_TRANSLATE_NOOP3("phrasing", "photo", "kind of entry in the book")},
    Named<std::string_view>{"timer_started",
                            QT_TRANSLATE_NOOP3("phrasing", "timer", "kind of entry in the book")},
    Named<std::string_view>{
        "override", QT_TRANSLATE_NOOP3("phrasing", "override", "kind of entry in the book")},
    Named<std::string_view>{
        "road_test", QT_TRANSLATE_NOOP3("phrasing", "road test", "kind of entry in the book")},
    Named<std::string_view>{
        "recheck_due", QT_TRANSLATE_NOOP3("phrasing", "recheck due", "kind of entry in the book")},
    Named<std::string_view>{"job_closed", QT_TRANSLATE_NOOP3("phrasing", "closing of the job",
                                                             "kind of entry in the book")},
    Named<std::string_view>{"shop_named", QT_TRANSLATE_NOOP3("phrasing", "name of the shop",
                                                             "kind of entry in the book")},
    Named<std::string_view>{
        "calculated", QT_TRANSLATE_NOOP3("phrasing", "calculation", "kind of entry in the book")},
    Named<std::string_view>{"shake_told", QT_TRANSLATE_NOOP3("phrasing", "answer about the shake",
                                                             "kind of entry in the book")},
    Named<std::string_view>{
        "learning_left_out",
        QT_TRANSLATE_NOOP3("phrasing", "left out of learning", "kind of entry in the book")},
    Named<std::string_view>{"cause_put_right", QT_TRANSLATE_NOOP3("phrasing", "cause put right",
                                                                  "kind of entry in the book")},
    Named<std::string_view>{"lesson", QT_TRANSLATE_NOOP3("phrasing", "what the job taught",
                                                         "kind of entry in the book")},
    Named<std::string_view>{"cause_numbers", QT_TRANSLATE_NOOP3("phrasing", "own numbers of causes",
                                                                "kind of entry in the book")},
    Named<std::string_view>{"recheck_done", QT_TRANSLATE_NOOP3("phrasing", "recheck done",
                                                               "kind of entry in the book")},
    Named<std::string_view>{
        "withdrawal", QT_TRANSLATE_NOOP3("phrasing", "withdrawal", "kind of entry in the book")},
};

constexpr std::array kHolds = {
    Named<std::string_view>{
        "support", QT_TRANSLATE_NOOP3("phrasing", "support of the vehicle",
                                      "hold point: the job stops here until it is answered")},
    Named<std::string_view>{
        "brakes_and_steering",
        QT_TRANSLATE_NOOP3("phrasing", "brakes and steering back together",
                           "hold point: the job stops here until it is answered")},
    Named<std::string_view>{
        "wheel_nuts", QT_TRANSLATE_NOOP3("phrasing", "wheel nuts",
                                         "hold point: the job stops here until it is answered")},
    Named<std::string_view>{
        "walk_round", QT_TRANSLATE_NOOP3("phrasing", "walk-round before the road",
                                         "hold point: the job stops here until it is answered")},
    Named<std::string_view>{
        "go_no_go", QT_TRANSLATE_NOOP3("phrasing", "go or no-go for the road",
                                       "hold point: the job stops here until it is answered")},
};

constexpr std::array kReasons = {
    Named<std::string_view>{"too_short",
                            QT_TRANSLATE_NOOP3("phrasing", "it is too short",
                                               "why a book file was refused, within brackets")},
    Named<std::string_view>{"other_application",
                            QT_TRANSLATE_NOOP3("phrasing", "another program wrote it",
                                               "why a book file was refused, within brackets")},
    Named<std::string_view>{"not_a_database",
                            QT_TRANSLATE_NOOP3("phrasing", "it is no database",
                                               "why a book file was refused, within brackets")},
    Named<std::string_view>{"not_a_file",
                            QT_TRANSLATE_NOOP3("phrasing", "it is not a file",
                                               "why a book file was refused, within brackets")},
    Named<std::string_view>{"header",
                            QT_TRANSLATE_NOOP3("phrasing", "its header is damaged",
                                               "why a book file was refused, within brackets")},
    Named<std::string_view>{"version",
                            QT_TRANSLATE_NOOP3("phrasing", "its version number is damaged",
                                               "why a book file was refused, within brackets")},
    Named<std::string_view>{"file",
                            QT_TRANSLATE_NOOP3("phrasing", "the file is write-protected",
                                               "why a book file was refused, within brackets")},
    Named<std::string_view>{"folder",
                            QT_TRANSLATE_NOOP3("phrasing", "its folder is write-protected",
                                               "why a book file was refused, within brackets")},
};

QString nameOrWord(const QString& name, std::string_view word) {
  return name.isEmpty() ? shown(std::string(word)) : name;
}

}  // namespace

QString nameOf(QuantityKind kind) {
  return nameIn(kQuantities, kind);
}

QString nameOf(Verdict verdict) {
  return nameIn(kVerdicts, verdict);
}

QString factName(std::string_view kind) {
  return nameOrWord(nameIn(kFacts, kind), kind);
}

QString holdName(std::string_view key) {
  return nameOrWord(nameIn(kHolds, key), key);
}

QString reasonName(const std::string& reason) {
  return nameOrWord(nameIn(kReasons, std::string_view(reason)), reason);
}

}  // namespace sw::phrasing
