// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <variant>

#include "model/words.h"
#include "workshop/shop_commands.h"

// What a user can do, as typed commands: the window and `job --script` send the same ones. Each
// action names its word (kName) and what it does (kSummary) and lists its fields once; a field that
// is not an optional is required. Quantities are texts as typed ("4.6 kgf"); they are read by the
// handler that knows what the field measures.

namespace sw::workshop {

struct OpenJob {
  static constexpr std::string_view kName = "open_job";
  static constexpr std::string_view kSummary =
      "Open a job for a vehicle; later lines may leave out `job`";
  Text registration;
  OptText odometer, request;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("registration", s.registration, "the vehicle (a new plate makes a new vehicle)");
    v("odometer", s.odometer, "reading; a bare number takes the vehicle's unit");
    v("request", s.request, "the owner's words");
  }
};

struct SetComplaint {
  static constexpr std::string_view kName = "complaint";
  static constexpr std::string_view kSummary =
      "The complaint as structured answers; unknown is not no";
  OptText words, onsetRising, releaseRising, onsetFalling, releaseFalling, whereFelt, recentWork,
      conditions;
  std::optional<model::SpeedSource> speedSource;
  std::optional<model::BrakingAnswer> braking;
  std::optional<model::YesNo> afterBump, speedBand;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("words", s.words, "the owner's words");
    v("onset_rising", s.onsetRising, "speed at which it starts while speeding up");
    v("release_rising", s.releaseRising, "speed at which it stops while speeding up");
    v("onset_falling", s.onsetFalling, "speed at which it starts while slowing down");
    v("release_falling", s.releaseFalling, "speed at which it stops while slowing down");
    v("speed_source", s.speedSource, "dial or GPS");
    v("braking", s.braking, "only, also, starts_and_stays, no or unknown");
    v("after_bump", s.afterBump, "does a bump start it?");
    v("speed_band", s.speedBand, "only in a band of road speed?");
    v("where_felt", s.whereFelt, "steering wheel, seat, floor ...");
    v("recent_work", s.recentWork, "work done lately");
    v("conditions", s.conditions, "load, road, weather");
  }
};

struct CheckCause {
  static constexpr std::string_view kName = "cause_checked";
  static constexpr std::string_view kSummary = "A cause looked at: ruled out, or found";
  Text cause, how;
  bool excluded = true;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("cause", s.cause, "which cause");
    v("excluded", s.excluded, "true = ruled out, false = found");
    v("how", s.how, "how it was checked");
  }
};

struct StartPlan {
  static constexpr std::string_view kName = "start_plan";
  static constexpr std::string_view kSummary = "Put the procedures of a plan into the job";
  Text plan;
  OptText sides;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("plan", s.plan, "e.g. swivel-preload");
    v("sides", s.sides, "both (default), left or right");
  }
};

struct StartProcedure {
  static constexpr std::string_view kName = "start_procedure";
  static constexpr std::string_view kSummary = "Put one procedure into the job, now or again";
  Text procedure;
  OptText sides, after;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("procedure", s.procedure, "its id");
    v("sides", s.sides, "both (default), left or right");
    v("after", s.after, "procedure behind whose newest run it is placed; default at the end");
  }
};

struct ChooseSupport {
  static constexpr std::string_view kName = "choose_support";
  static constexpr std::string_view kSummary = "What carries the vehicle";
  model::SupportKind support = model::SupportKind::Stands;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("support", s.support, "stands, two_post, four_post or pit");
  }
};

struct AnswerHold {
  static constexpr std::string_view kName = "answer";
  static constexpr std::string_view kSummary =
      "Answer one statement of a hold point with what was seen";
  Text statement, answer;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("statement", s.statement, "the statement's key");
    v("answer", s.answer, "the state or value seen");
  }
};

struct DoStep {
  static constexpr std::string_view kName = "do_step";
  static constexpr std::string_view kSummary =
      "A step is done (or: done before recording, not applicable, reopened)";
  std::optional<model::StepAction> action;
  OptText text;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("action", s.action, "done (default), done_before_recording, not_applicable, reopened");
    v("text", s.text, "note; required for not_applicable");
  }
};

struct MarkBefore {
  static constexpr std::string_view kName = "done_before";
  static constexpr std::string_view kSummary =
      "All that comes before the step was done before recording; stops at a hold that is open";
  OptText text;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("text", s.text, "note, e.g. who did it");
  }
};

struct Observe {
  static constexpr std::string_view kName = "observe";
  static constexpr std::string_view kSummary = "What was seen or felt at a step";
  Text key, value;
  OptText text;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("key", s.key, "what is observed, e.g. feel");
    v("value", s.value, "one of the step's words");
    v("text", s.text, "in own words");
  }
};

struct TakeReadings {
  static constexpr std::string_view kName = "take_readings";
  static constexpr std::string_view kSummary =
      "One reading or a whole line of them with one instrument";
  Text readings, instrument;
  OptText angleWithin, arm, why;
  std::optional<std::int64_t> planned;
  std::optional<bool> newSeries;
  std::optional<model::OnOff> seal, rods, damper;
  std::optional<model::Sealant> sealant;
  std::optional<model::Grease> grease;
  std::optional<model::Movement> movement;
  std::optional<model::RestPosition> position;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("readings", s.readings, "e.g. 18.5 19 18.5 N");
    v("instrument", s.instrument, "its name");
    v("planned", s.planned, "number of readings fixed beforehand; default the step's");
    v("angle_within", s.angleWithin, "the pull was square within, e.g. 10 deg");
    v("arm", s.arm, "lever arm, to show the torque");
    v("new_series", s.newSeries, "true starts a series afresh; says why");
    v("why", s.why, "reason for a new series after a verdict");
    v("seal", s.seal, "seal off or on");
    v("rods", s.rods, "rods off or on");
    v("damper", s.damper, "damper off or on");
    v("sealant", s.sealant, "none, wet or cured");
    v("grease", s.grease, "dry, fresh or old");
    v("movement", s.movement, "first movement or steady");
    v("position", s.position, "ahead, left_15 or right_15");
  }
};

struct Correct {
  static constexpr std::string_view kName = "correct";
  static constexpr std::string_view kSummary =
      "Replace an entry's field by a new entry with a reason";
  std::int64_t entry = 0;
  model::CorrectionReason reason = model::CorrectionReason::TypingSlip;
  Text field, value;
  OptText reasonText;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("entry", s.entry, "the entry to correct");
    v("reason", s.reason, "typing_slip, wrong_side, wrong_unit, bad_pull or other");
    v("field", s.field, "the field as exports name it, e.g. value; or side");
    v("value", s.value, "the new value as typed");
    v("reason_text", s.reasonText, "in own words");
  }
};

struct Withdraw {
  static constexpr std::string_view kName = "withdraw";
  static constexpr std::string_view kSummary = "Take an entry back (undo); both stay on record";
  std::int64_t entry = 0;
  OptText reasonText;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("entry", s.entry, "the entry to take back");
    v("reason_text", s.reasonText, "why");
  }
};

struct Undo {
  static constexpr std::string_view kName = "undo";
  static constexpr std::string_view kSummary =
      "Take the last action of the job back; what it had corrected stands again, all stays on "
      "record";
  std::optional<std::int64_t> from, to;
  OptText reasonText;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("from", s.from, "first entry of the action; default the entries made last, at one time");
    v("to", s.to, "last entry of the action; default the newest");
    v("reason_text", s.reasonText, "why");
  }
};

struct MoveSeries {
  static constexpr std::string_view kName = "move_series";
  static constexpr std::string_view kSummary =
      "Move a whole series to the other side in one action";
  std::int64_t series = 0;
  OptText reasonText;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("series", s.series, "the entry that opened the series, or any of its readings");
    v("reason_text", s.reasonText, "why");
  }
};

struct MarkTorque {
  static constexpr std::string_view kName = "torque";
  static constexpr std::string_view kSummary = "A fastener group was tightened with a wrench";
  Text wrench;
  OptText set;
  std::optional<std::int64_t> stage, done;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("wrench", s.wrench, "the torque wrench's name");
    v("set", s.set, "what it was set to; default the spec sheet's figure");
    v("stage", s.stage, "stage just finished; default the last");
    v("done", s.done, "fasteners done; default all");
  }
};

struct MoveLedger {
  static constexpr std::string_view kName = "ledger";
  static constexpr std::string_view kSummary =
      "Something came off, went back, was put on or taken off";
  Text item;
  model::LedgerState state = model::LedgerState::Off;
  OptText name, reason;
  std::optional<bool> fastened;
  std::optional<std::int64_t> done, count;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("item", s.item, "key of the item, or a new word for 'also removed'");
    v("state", s.state, "off, hand_tight, torqued, back, replaced, left_off, on or taken_off");
    v("name", s.name, "as people call it");
    v("fastened", s.fastened, "true: ends only as torqued");
    v("done", s.done, "how many are hand-tight or torqued");
    v("count", s.count, "of how many");
    v("reason", s.reason, "required for left_off");
  }
};

struct UsePart {
  static constexpr std::string_view kName = "use_part";
  static constexpr std::string_view kSummary = "A part or consumable used";
  Text name;
  OptText key, number, quantity, unitPrice, currency;
  std::optional<bool> consumable;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("name", s.name, "what it is");
    v("key", s.key, "the procedure's key, for single-use items");
    v("number", s.number, "the shop's own number");
    v("quantity", s.quantity, "default 1; may carry a unit (0.5 l)");
    v("unit_price", s.unitPrice, "e.g. 4.50");
    v("currency", s.currency, "ISO 4217; default the shop's");
    v("consumable", s.consumable, "true for grease, sealant ...");
  }
};

struct RecordPack {
  static constexpr std::string_view kName = "shim_pack";
  static constexpr std::string_view kSummary = "The shim pack found or fitted at one place";
  model::PackRole role = model::PackRole::Found;
  OptText shims, measured, instrument;
  std::optional<model::ShimPlace> place;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("role", s.role, "found or fitted");
    v("place", s.place, "top (default) or bottom");
    v("shims", s.shims, "the stack, e.g. 0.50 + 0.25");
    v("measured", s.measured, "thickness by micrometer");
    v("instrument", s.instrument, "the micrometer's name");
  }
};

struct AddLabour {
  static constexpr std::string_view kName = "labour";
  static constexpr std::string_view kSummary = "Labour time";
  Text time;
  OptText text, hourlyRate, currency;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("time", s.time, "e.g. 90 min or 1.5 h");
    v("text", s.text, "what for");
    v("hourly_rate", s.hourlyRate, "e.g. 48.00");
    v("currency", s.currency, "ISO 4217; default the shop's");
  }
};

struct DeclineWork {
  static constexpr std::string_view kName = "decline";
  static constexpr std::string_view kSummary = "Work the owner declined";
  Text what;
  OptText words;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("what", s.what, "the work");
    v("words", s.words, "the owner's reason");
  }
};

struct AddNote {
  static constexpr std::string_view kName = "note";
  static constexpr std::string_view kSummary = "A note";
  Text text;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("text", s.text, "the note");
  }
};

/// A JSON value inside a command, kept as text.
struct JsonText {
  std::string text;
};

struct Calculate {
  static constexpr std::string_view kName = "calculate";
  static constexpr std::string_view kSummary =
      "A calculation of the bench, put into the job with its input and answer";
  Text calculation;
  JsonText input;
  OptText remark;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("calculation", s.calculation, "its name; compute --list shows them");
    v("input", s.input, "what compute NAME takes");
    v("remark", s.remark, "what it was for");
  }
};

struct TellOfShake {
  static constexpr std::string_view kName = "tell";
  static constexpr std::string_view kSummary = "An answer about the shake";
  Text feature, answer;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("feature", s.feature, "the question; compute rank-causes --describe shows them");
    v("answer", s.answer, "its word, or unknown");
  }
};

struct LeaveOutOfLearning {
  static constexpr std::string_view kName = "leave_out_of_learning";
  static constexpr std::string_view kSummary = "Causes are not learned from this job";
  Text why;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("why", s.why, "why it is no lesson");
  }
};

struct TakeIntoLearning {
  static constexpr std::string_view kName = "take_into_learning";
  static constexpr std::string_view kSummary = "A job that was left out of learning counts again";
  template <class Self, class V>
  static void fields(Self&, V&&) {}
};

struct PutCauseRight {
  static constexpr std::string_view kName = "put_right";
  static constexpr std::string_view kSummary = "A cause was put right, here or elsewhere";
  Text cause, how;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("cause", s.cause, "key of the cause; compute rank-causes --describe shows them");
    v("how", s.how, "what was done");
  }
};

struct AddPhoto {
  static constexpr std::string_view kName = "photo";
  static constexpr std::string_view kSummary = "A picture file copied into the book";
  Text file;
  OptText caption;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("file", s.file, "path of the picture");
    v("caption", s.caption, "what it shows");
  }
};

struct StartTimer {
  static constexpr std::string_view kName = "start_timer";
  static constexpr std::string_view kSummary = "Start the timer of a waiting step";
  OptText time;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("time", s.time, "default the step's, e.g. 12 h by the tube's own figure");
  }
};

struct OverrideRule {
  static constexpr std::string_view kName = "override";
  static constexpr std::string_view kSummary =
      "Go against a rule of order or measurement, with a reason that is printed";
  Text rule, why;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("rule", s.rule, "order, wait or not_proved");
    v("why", s.why, "the reason, printed on the sheet");
  }
};

struct RecordRoadTest {
  static constexpr std::string_view kName = "road_test";
  static constexpr std::string_view kSummary = "What the drive showed";
  model::ShakeResult shake = model::ShakeResult::None;
  OptText onset, release, selfReturn, text;
  std::optional<model::SpeedSource> speedSource;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("shake", s.shake, "none, less, same or worse");
    v("onset", s.onset, "speed at which it starts");
    v("release", s.release, "speed at which it stops");
    v("speed_source", s.speedSource, "dial or GPS");
    v("self_return", s.selfReturn, "returns, sluggish or sticks");
    v("text", s.text, "in own words");
  }
};

struct AddRecheck {
  static constexpr std::string_view kName = "recheck";
  static constexpr std::string_view kSummary = "A recheck that is due later";
  Text what;
  OptText on, atOdometer;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("what", s.what, "what to look at");
    v("on", s.on, "date");
    v("at_odometer", s.atOdometer, "odometer reading");
  }
};

struct FinishRecheck {
  static constexpr std::string_view kName = "recheck_done";
  static constexpr std::string_view kSummary = "A recheck was carried out";
  std::int64_t recheck = 0;
  Text result;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("recheck", s.recheck, "entry number of the recheck");
    v("result", s.result, "what was found");
  }
};

struct SignOff {
  static constexpr std::string_view kName = "sign_off";
  static constexpr std::string_view kSummary =
      "Sign the job off; refused by name while anything is open";
  template <class Self, class V>
  static void fields(Self&, V&&) {}
};

struct CloseJob {
  static constexpr std::string_view kName = "close";
  static constexpr std::string_view kSummary =
      "Close as declined, or without sign-off, with a reason";
  model::JobOutcome outcome = model::JobOutcome::ClosedWithoutSignOff;
  Text reason;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("outcome", s.outcome, "declined or closed_without_sign_off");
    v("reason", s.reason, "why");
  }
};

struct SetSetting {
  static constexpr std::string_view kName = "set_setting";
  static constexpr std::string_view kSummary =
      "A setting of the shop (shop_name, currency, backup_folder ...)";
  Text key, value;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("key", s.key, "its name");
    v("value", s.value, "its value");
  }
};

using Action =
    std::variant<SetPerson, SetInstrument, CheckInstrument, SetVehicle, SetSpec, CopySpec,
                 SourceSpec, OpenJob, SetComplaint, CheckCause, StartPlan, StartProcedure,
                 ChooseSupport, AnswerHold, DoStep, MarkBefore, Observe, TakeReadings, Correct,
                 Withdraw, Undo, MoveSeries, MarkTorque, MoveLedger, UsePart, RecordPack, AddLabour,
                 DeclineWork, AddNote, Calculate, TellOfShake, LeaveOutOfLearning, TakeIntoLearning,
                 PutCauseRight, AddPhoto, StartTimer, OverrideRule, RecordRoadTest, AddRecheck,
                 FinishRecheck, SignOff, CloseJob, SetSetting>;

/// Where and by whom an action happens. `step` is "procedure/step"; with no `round` the newest run
/// is meant. `doneAt` is when the hands did it; when it was entered is the clock's.
struct Command {
  std::string id;  ///< the sender's own mark, echoed in the answer
  OptText by;      ///< initials
  OptText doneAt;  ///< ISO 8601
  std::optional<std::int64_t> job;
  OptText step;
  std::optional<model::Side> side;
  std::optional<std::int64_t> round;
  Action action;
};

}  // namespace sw::workshop
