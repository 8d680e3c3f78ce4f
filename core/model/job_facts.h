// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>

#include "base/clock.h"
#include "model/ids.h"
#include "model/pull_state.h"
#include "model/words.h"
#include "units/typed_quantity.h"

// Facts of a job. Which run, step and side a fact belongs to stands in the entry header (entry.h);
// conventions of the structs as in shop_facts.h.

namespace sw::model {

struct JobOpened {
  static constexpr std::string_view kKind = "job_opened";
  VehicleId vehicle;
  std::optional<TypedQuantity> odometer;  ///< kind Length, km or mi
  std::string request;                    ///< the owner's words

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("vehicle", self.vehicle);
    visit("odometer", self.odometer);
    visit("request", self.request);
  }
};

struct Complaint {
  static constexpr std::string_view kKind = "complaint";
  std::string words;
  std::optional<TypedQuantity> onsetRising, releaseRising, onsetFalling, releaseFalling;
  std::optional<SpeedSource> speedSource;
  BrakingAnswer braking = BrakingAnswer::Unknown;
  YesNo afterBump = YesNo::Unknown;
  YesNo speedBand = YesNo::Unknown;  ///< only in a band of road speed
  std::string whereFelt;             ///< "steering wheel", "seat", ...
  std::string recentWork;
  std::string conditions;  ///< load, road, temperature

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("words", self.words);
    visit("onset_rising", self.onsetRising);
    visit("release_rising", self.releaseRising);
    visit("onset_falling", self.onsetFalling);
    visit("release_falling", self.releaseFalling);
    visit("speed_source", self.speedSource);
    visit("braking", self.braking);
    visit("after_bump", self.afterBump);
    visit("speed_band", self.speedBand);
    visit("where_felt", self.whereFelt);
    visit("recent_work", self.recentWork);
    visit("conditions", self.conditions);
  }
};

/// A cause looked at and ruled out (or found) by a check.
struct CauseChecked {
  static constexpr std::string_view kKind = "cause_checked";
  std::string cause;
  bool excluded = true;
  std::string how;

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("cause", self.cause);
    visit("excluded", self.excluded);
    visit("how", self.how);
  }
};

struct RunStarted {
  static constexpr std::string_view kKind = "run_started";
  std::string procedure;
  std::string hash;   ///< of the ProcedureText it follows
  bool left = false;  ///< the run carries the left side
  bool right = false;
  std::int64_t round = 1;
  std::string why;  ///< key of the reason: "plan", "short_of_target", "still_shakes", "chosen"
  std::optional<EntryId>
      placedAfter;  ///< the run it stands behind in the plan; absent = at the end

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("procedure", self.procedure);
    visit("hash", self.hash);
    visit("left", self.left);
    visit("right", self.right);
    visit("round", self.round);
    visit("why", self.why);
    visit("placed_after", self.placedAfter);
  }
};

struct SupportChosen {
  static constexpr std::string_view kKind = "support_chosen";
  SupportKind support = SupportKind::Stands;

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("support", self.support);
  }
};

struct HoldAnswer {
  static constexpr std::string_view kKind = "hold_answer";
  std::string hold;          ///< "support"
  std::string statement;     ///< "stand_rating"
  std::string answer;        ///< the state or value that was seen, as given
  std::optional<double> si;  ///< for a quantity or a count
  bool passes = false;

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("hold", self.hold);
    visit("statement", self.statement);
    visit("answer", self.answer);
    visit("si", self.si);
    visit("passes", self.passes);
  }
};

struct StepMark {
  static constexpr std::string_view kKind = "step_mark";
  StepAction action = StepAction::Done;
  std::string text;

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("action", self.action);
    visit("text", self.text);
  }
};

/// What was seen or felt: key and chosen word ("feel" = "smooth").
struct Observation {
  static constexpr std::string_view kKind = "observation";
  std::string key;
  std::string value;
  std::string text;

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("key", self.key);
    visit("value", self.value);
    visit("text", self.text);
  }
};

/// Opens a series of readings: everything that all of them share.
struct Series {
  static constexpr std::string_view kKind = "series";
  QuantityKind quantity = QuantityKind::Force;
  std::string limitKey;                    ///< empty = recorded only
  std::optional<EntryId> limit;            ///< the SpecItem revision judged by
  EntryId instrument;                      ///< the Instrument revision
  std::optional<EntryId> instrumentCheck;  ///< the InstrumentCheck in force
  std::optional<PullState> state;          ///< for pulls
  std::optional<TypedQuantity>
      angleWithin;                   ///< half-width of the unknown angle off the line of pull
  std::optional<TypedQuantity> arm;  ///< lever arm, to show the torque
  std::int64_t planned = 3;
  std::int64_t settling = 0;  ///< how many first readings only settle the bearing
  bool safety = false;        ///< must be proved within before sign-off

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("quantity", self.quantity);
    visit("limit_key", self.limitKey);
    visit("limit", self.limit);
    visit("instrument", self.instrument);
    visit("instrument_check", self.instrumentCheck);
    visit("state", self.state);
    visit("angle_within", self.angleWithin);
    visit("arm", self.arm);
    visit("planned", self.planned);
    visit("settling", self.settling);
    visit("safety", self.safety);
  }
};

struct Reading {
  static constexpr std::string_view kKind = "reading";
  EntryId series;
  TypedQuantity value;
  ReadingUse use = ReadingUse::Used;

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("series", self.series);
    visit("value", self.value);
    visit("use", self.use);
  }
};

/// A verdict as it was given; recomputed by check-book from the readings before it.
struct VerdictGiven {
  static constexpr std::string_view kKind = "verdict";
  EntryId series;
  std::string verdict;  ///< word of sw::Verdict
  std::string soFar;    ///< the bare decision beside "provisional"
  double value = 0;     ///< corrected mean, SI
  double standardUncertainty = 0;
  std::optional<double> degreesOfFreedom;
  double expandedUncertainty = 0;
  std::optional<double> probability;  ///< of conformance
  double bar = 0.95;
  std::int64_t used = 0;
  std::string rule;       ///< word of sw::DecisionRule
  std::string limitSide;  ///< word of sw::LimitSide
  std::string consistency;

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("series", self.series);
    visit("verdict", self.verdict);
    visit("so_far", self.soFar);
    visit("value", self.value);
    visit("standard_uncertainty", self.standardUncertainty);
    visit("degrees_of_freedom", self.degreesOfFreedom);
    visit("expanded_uncertainty", self.expandedUncertainty);
    visit("probability", self.probability);
    visit("bar", self.bar);
    visit("used", self.used);
    visit("rule", self.rule);
    visit("limit_side", self.limitSide);
    visit("consistency", self.consistency);
  }
};

struct TorqueCheck {
  static constexpr std::string_view kKind = "torque_check";
  std::string group;            ///< spec key: "swivel_cap_bolts"
  std::optional<EntryId> spec;  ///< the SpecItem revision
  TypedQuantity set;            ///< what the wrench was set to
  EntryId wrench;               ///< Instrument revision
  std::int64_t stage = 1;
  std::int64_t stages = 1;
  std::int64_t done = 0;   ///< fasteners done in this stage
  std::int64_t count = 0;  ///< fasteners in the group
  std::string pattern;
  bool wrenchInRange = true;
  std::string calibration;  ///< ok | due | overdue | unknown, on the day

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("group", self.group);
    visit("spec", self.spec);
    visit("set", self.set);
    visit("wrench", self.wrench);
    visit("stage", self.stage);
    visit("stages", self.stages);
    visit("done", self.done);
    visit("count", self.count);
    visit("pattern", self.pattern);
    visit("wrench_in_range", self.wrenchInRange);
    visit("calibration", self.calibration);
  }
};

struct LedgerMove {
  static constexpr std::string_view kKind = "ledger_move";
  std::string item;  ///< key, a side apart by the header's side
  std::string name;  ///< as shown
  LedgerKind type = LedgerKind::Removed;
  LedgerState state = LedgerState::Off;
  bool fastened = false;             ///< ends only as torqued (or replaced, left off)
  std::optional<std::int64_t> done;  ///< "2 of 4" hand-tight
  std::optional<std::int64_t> count;
  std::string reason;  ///< for left off

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("item", self.item);
    visit("name", self.name);
    visit("type", self.type);
    visit("state", self.state);
    visit("fastened", self.fastened);
    visit("done", self.done);
    visit("count", self.count);
    visit("reason", self.reason);
  }
};

struct PartUsed {
  static constexpr std::string_view kKind = "part_used";
  std::string name;
  std::string key;                             ///< the procedure's part key, for single-use items
  std::string number;                          ///< the shop's own number
  TypedQuantity quantity;                      ///< kind Number, Volume, Mass or Length
  std::optional<std::int64_t> unitPriceMinor;  ///< in the currency's minor unit
  std::string currency;                        ///< ISO 4217
  bool consumable = false;

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("name", self.name);
    visit("key", self.key);
    visit("number", self.number);
    visit("quantity", self.quantity);
    visit("unit_price_minor", self.unitPriceMinor);
    visit("currency", self.currency);
    visit("consumable", self.consumable);
  }
};

struct ShimPack {
  static constexpr std::string_view kKind = "shim_pack";
  PackRole role = PackRole::Found;
  ShimPlace place = ShimPlace::Top;
  std::string shims;  ///< the stack as typed: "0.50 + 0.25"; empty if only the total is known
  std::int64_t count = 0;
  TypedQuantity total;                    ///< sum of the stack, or as measured
  std::optional<TypedQuantity> measured;  ///< by micrometer
  std::optional<EntryId> instrument;

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("role", self.role);
    visit("place", self.place);
    visit("shims", self.shims);
    visit("count", self.count);
    visit("total", self.total);
    visit("measured", self.measured);
    visit("instrument", self.instrument);
  }
};

struct Labour {
  static constexpr std::string_view kKind = "labour";
  double minutes = 0;
  std::string text;
  std::optional<std::int64_t> hourlyRateMinor;
  std::string currency;

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("minutes", self.minutes);
    visit("text", self.text);
    visit("hourly_rate_minor", self.hourlyRateMinor);
    visit("currency", self.currency);
  }
};

struct WorkDeclined {
  static constexpr std::string_view kKind = "work_declined";
  std::string what;
  std::string words;  ///< the owner's reason

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("what", self.what);
    visit("words", self.words);
  }
};

struct Note {
  static constexpr std::string_view kKind = "note";
  std::string text;

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("text", self.text);
  }
};

/// A picture copied into the book: bytes stand in the blob table under the hash.
struct Photo {
  static constexpr std::string_view kKind = "photo";
  std::string hash;      ///< SHA-256 of the stored picture, hex
  std::string fileName;  ///< as it was called, for display only
  std::string mime;
  std::int64_t width = 0;
  std::int64_t height = 0;
  std::string caption;

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("hash", self.hash);
    visit("file_name", self.fileName);
    visit("mime", self.mime);
    visit("width", self.width);
    visit("height", self.height);
    visit("caption", self.caption);
  }
};

struct TimerStarted {
  static constexpr std::string_view kKind = "timer_started";
  double minutes = 0;
  std::string what;

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("minutes", self.minutes);
    visit("what", self.what);
  }
};

struct Override {
  static constexpr std::string_view kKind = "override";
  std::string rule;  ///< "order", "not_proved", "drive_without_round" ...
  std::string what;  ///< the step or reading it is about
  std::string why;

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("rule", self.rule);
    visit("what", self.what);
    visit("why", self.why);
  }
};

struct RoadTest {
  static constexpr std::string_view kKind = "road_test";
  RoadTestWhen when = RoadTestWhen::After;
  ShakeResult shake = ShakeResult::None;
  std::optional<TypedQuantity> onset, release;
  std::optional<SpeedSource> speedSource;
  std::string selfReturn;  ///< "returns" | "sluggish" | "sticks" | ""
  std::string text;

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("when", self.when);
    visit("shake", self.shake);
    visit("onset", self.onset);
    visit("release", self.release);
    visit("speed_source", self.speedSource);
    visit("self_return", self.selfReturn);
    visit("text", self.text);
  }
};

struct RecheckDue {
  static constexpr std::string_view kKind = "recheck_due";
  std::string what;
  std::optional<Date> on;
  std::optional<TypedQuantity> atOdometer;

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("what", self.what);
    visit("on", self.on);
    visit("at_odometer", self.atOdometer);
  }
};

/// A recheck was carried out, usually after its job was closed.
struct RecheckDone {
  static constexpr std::string_view kKind = "recheck_done";
  EntryId recheck;     ///< the RecheckDue
  std::string result;  ///< what was found

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("recheck", self.recheck);
    visit("result", self.result);
  }
};

/// A calculation put into the job: what went in and what came out, as computed then.
struct Calculated {
  static constexpr std::string_view kKind = "calculated";
  std::string calculation;  ///< its name, "shim-pack"
  std::string input;        ///< JSON text
  std::string answer;       ///< JSON text: result, notes, method
  std::string remark;       ///< of whoever put it in

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("calculation", self.calculation);
    visit("input", self.input);
    visit("answer", self.answer);
    visit("remark", self.remark);
  }
};

/// What was told about the shake: the answer to one question of the table of causes. The newest
/// answer to a question counts; "unknown" takes it back.
struct ShakeTold {
  static constexpr std::string_view kKind = "shake_told";
  std::string feature;  ///< key of the question, "braking"
  std::string answer;   ///< its word, "only"

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("feature", self.feature);
    visit("answer", self.answer);
  }
};

/// Somebody put a cause right, in this job or elsewhere, without a procedure of its own.
struct CausePutRight {
  static constexpr std::string_view kKind = "cause_put_right";
  std::string cause;  ///< key of the table of causes
  std::string how;    ///< what was done

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("cause", self.cause);
    visit("how", self.how);
  }
};

/// What a job taught of its shake, as it was known when the job ended: the causes that its last
/// drive proved to be put right, and what had been told.
struct Lesson {
  static constexpr std::string_view kKind = "lesson";
  std::string causes;   ///< keys, a blank between; empty = looked for, and no fault was found
  std::string answers;  ///< "braking=only steady=no"

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("causes", self.causes);
    visit("answers", self.answers);
  }
};

/// The job is no lesson: causes are not learned from it.
struct LearningLeftOut {
  static constexpr std::string_view kKind = "learning_left_out";
  std::string why;

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("why", self.why);
  }
};

struct JobClosed {
  static constexpr std::string_view kKind = "job_closed";
  JobOutcome outcome = JobOutcome::SignedOff;
  std::string reason;

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("outcome", self.outcome);
    visit("reason", self.reason);
  }
};

/// Takes an entry back (undo appends this); the header's `replaces` names it.
struct Withdrawal {
  static constexpr std::string_view kKind = "withdrawal";
  std::string text;

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("text", self.text);
  }
};

}  // namespace sw::model
