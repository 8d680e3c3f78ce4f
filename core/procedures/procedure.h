// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "base/words.h"
#include "model/pull_state.h"
#include "model/words.h"
#include "units/unit.h"

// Procedures are data: resources/procedures/<id>.json, one file a procedure, described by
// resources/procedures/procedure.schema.json. The structs below are that file, read.

namespace sw::procedures {

enum class StepKind { Do, Measure, Torque, Hold, Remove, Refit, PutOn, TakeOff, Wait, Note, Photo };
enum class StepSide { Once, Each, DragLinkSide, OtherSide };

/// What the readings of a step are to the calculations of the bench. Of a round: one reading at
/// each of as many even places, in their order, one turn from the mark.
enum class Reads {
  DiscThicknessRound,
  DiscThickness,    ///< at one place, the thinnest
  DiscRunoutRound,  ///< the dial at each place
  DiscRunoutTotal,  ///< largest less smallest of a turn, a reading a turn
  RockDiameter,     ///< on which the rock is read
  RockBrakeOn,
  RockBrakeOff,
  ToeDiameter,  ///< at which the toe is read
  ToeTotal,     ///< rear less front without its sign
  CapGaps,      ///< under the nipped cap, at the bolts in their order
  PackFloat     ///< end float with the pack that is in
};

/// A condition holds when every named fact has one of the listed words; a fact that is not known
/// yet counts as holding (the step is shown "if fitted"). Facts: the axle arrangement's fields by
/// their stored names (steering_arm_on_cap: yes | no, lubricant: oil, drag_link_fixes_to: track_rod
/// ...), "support" (stands | two_post | four_post | pit), "side" (left | right), "round" ("first" |
/// "later"), and "observed.<key>" (the latest observation of the job with that key on the step's
/// side; an observation not made does NOT hold).
using Condition = std::map<std::string, std::vector<std::string>>;

struct Tool {
  std::string name;
  std::vector<std::string> instead;  ///< alternatives, best first
};

struct Part {
  std::string key;  ///< "split_pin_track_rod"
  std::string name;
  std::int64_t quantity = 1;
  bool singleUse = false;  ///< sign-off asks for a new one (a side)
  Condition when;
};

struct Consumable {
  std::string name;
  std::string amount;  ///< "a little", "2 l"
};

/// What a step does to the ledger. `to`: removed items off | hand_tight | torqued | back; put-on
/// items on | taken_off. `fastened` items end only as torqued.
struct LedgerEffect {
  std::string item;  ///< key, the side added by the step
  std::string name;  ///< as people call it
  model::LedgerKind type = model::LedgerKind::Removed;
  model::LedgerState to = model::LedgerState::Off;
  bool fastened = false;
  Condition when;
};

struct MeasureSpec {
  QuantityKind quantity = QuantityKind::Force;
  std::string limit;  ///< spec key; empty = recorded without a limit
  std::optional<Reads> reads;
  std::int64_t planned = 3;
  std::int64_t settling = 0;              ///< first readings that only settle, not used
  std::optional<model::PullState> state;  ///< given for pulls: the state the procedure has produced
  std::optional<std::string> angleWithin;  ///< "10 deg"
  std::vector<model::InstrumentKind> instruments;
  bool safety = false;        ///< must be proved within before sign-off
  bool drivesRounds = false;  ///< the pull that decides whether the next pack is tried
};

struct TorqueSpec {
  std::string fasteners;       ///< spec key of the group
  std::string name;            ///< "upper swivel cap bolts"
  std::vector<double> stages;  ///< fractions of the torque, last = 1; empty = one stage
  std::string item;            ///< ledger item that is torqued with it
  bool castellated = false;    ///< tighten on to the slot, never back off
};

struct Choice {
  std::string word;
  std::string text;
  bool passes = true;  ///< for hold statements
  std::string means;   ///< "worn": renew, not shim; "loose": no preload; empty = nothing
};

struct Observe {
  std::string key;  ///< "feel"
  std::string ask;
  std::vector<Choice> choices;
};

enum class AnswerType { Choice, Count, Quantity, Text };

/// One safety statement of a hold point: it asks for what was seen, never for "OK".
struct Statement {
  std::string key;
  std::string ask;
  std::string why;  ///< one line: what falls on whom
  AnswerType answer = AnswerType::Choice;
  std::vector<Choice> choices;           ///< for Choice, shuffled by the window
  std::optional<std::int64_t> atLeast;   ///< for Count
  std::optional<QuantityKind> quantity;  ///< for Quantity
  std::string check;                     ///< named rule: "stand_rating_each", "stand_rating_pair",
                                         ///< "lift_rating", "wheel_nut_torque"
  Condition when;
};

struct Hold {
  std::string key;  ///< support | brakes_and_steering | wheel_nuts | walk_round | go_no_go
  std::string title;
  std::vector<Statement> statements;  ///< at most three that hold at once
};

struct RoadTestSpec {
  model::RoadTestWhen when = model::RoadTestWhen::After;
};

struct ShimPackSpec {
  model::PackRole role = model::PackRole::Found;
};

struct Step {
  std::string id;
  StepKind kind = StepKind::Do;
  StepSide side = StepSide::Once;
  std::string title;    ///< imperative, short: "Part the track rod"
  std::string text;     ///< how
  std::string caution;  ///< the usual caution of this very step, empty if none
  /// Ids of steps of the same file that must be done first (the same side; all sides of an `each`
  /// step for a `once` step). Absent in the file = the step before it; [] = none.
  std::vector<std::string> needs;
  double minutes = 0;
  std::vector<Tool> tools;
  std::vector<Part> parts;
  std::vector<Consumable> consumables;
  std::string onePerson;  ///< set = needs two; the one-person form
  bool needsTwo = false;
  Condition when;
  std::vector<LedgerEffect> ledger;
  std::optional<MeasureSpec> measure;
  std::optional<TorqueSpec> torque;
  std::vector<Observe> observe;
  std::optional<Hold> hold;
  std::optional<double> waitMinutes;  ///< for Wait
  std::optional<RoadTestSpec> roadTest;
  std::optional<ShimPackSpec> shimPack;
  bool raisesVehicle = false;  ///< after this step the support carries it
  bool lowersVehicle = false;  ///< after this step it stands on its wheels
  bool optional = false;       ///< may be skipped without a word
  /// Calculations that serve the step, the most useful first; empty = those its torque, pack or
  /// limit calls for.
  std::vector<std::string> bench;
};

struct Procedure {
  std::string id;
  std::int64_t version = 1;
  std::string title;
  std::string purpose;  ///< one sentence: what it is for
  std::vector<std::string>
      after;  ///< procedures whose newest runs in the job must be finished first
  std::vector<Step> steps;
  std::string hash;  ///< SHA-256 of the file's bytes, hex
  std::string text;  ///< the file's bytes
};

/// An ordered list of procedures to start together: resources/plans/<id>.json
/// {"schema":1,"id":"swivel-preload","title":"...","procedures":["free-checks", ...]}.
struct PlanTemplate {
  std::string id;
  std::string title;
  std::vector<std::string> procedures;
};

/// Larger files are refused: the text of every procedure a job ran is kept in the book.
inline constexpr std::size_t kMaxFileBytes = std::size_t{1024} * 1024;
inline constexpr std::size_t kMaxSteps = 400;

/// Reads one procedure file. Errors name the file and the step (details "file", "step": its id, or
/// its number where it has none) and the field (a JSON pointer): those of model::parseJson and
/// ObjectReader, and "procedure.*" for what is well formed but no workable procedure.
[[nodiscard]] Result<Procedure> parseProcedure(std::string_view text, const std::string& fileName);
[[nodiscard]] Result<PlanTemplate> parsePlan(std::string_view text, const std::string& fileName);

}  // namespace sw::procedures

namespace sw {

template <>
struct Words<procedures::StepKind> {
  using E = procedures::StepKind;
  static constexpr auto table =
      std::to_array<std::pair<E, std::string_view>>({{E::Do, "do"},
                                                     {E::Measure, "measure"},
                                                     {E::Torque, "torque"},
                                                     {E::Hold, "hold"},
                                                     {E::Remove, "remove"},
                                                     {E::Refit, "refit"},
                                                     {E::PutOn, "put_on"},
                                                     {E::TakeOff, "take_off"},
                                                     {E::Wait, "wait"},
                                                     {E::Note, "note"},
                                                     {E::Photo, "photo"}});
};

template <>
struct Words<procedures::StepSide> {
  using E = procedures::StepSide;
  static constexpr auto table =
      std::to_array<std::pair<E, std::string_view>>({{E::Once, "once"},
                                                     {E::Each, "each"},
                                                     {E::DragLinkSide, "drag_link_side"},
                                                     {E::OtherSide, "other_side"}});
};

template <>
struct Words<procedures::Reads> {
  using E = procedures::Reads;
  static constexpr auto table = std::to_array<std::pair<E, std::string_view>>(
      {{E::DiscThicknessRound, "disc_thickness_round"},
       {E::DiscThickness, "disc_thickness"},
       {E::DiscRunoutRound, "disc_runout_round"},
       {E::DiscRunoutTotal, "disc_runout_total"},
       {E::RockDiameter, "rock_diameter"},
       {E::RockBrakeOn, "rock_brake_on"},
       {E::RockBrakeOff, "rock_brake_off"},
       {E::ToeDiameter, "toe_diameter"},
       {E::ToeTotal, "toe_total"},
       {E::CapGaps, "cap_gaps"},
       {E::PackFloat, "pack_float"}});
};

template <>
struct Words<procedures::AnswerType> {
  using E = procedures::AnswerType;
  static constexpr auto table = std::to_array<std::pair<E, std::string_view>>(
      {{E::Choice, "choice"}, {E::Count, "count"}, {E::Quantity, "quantity"}, {E::Text, "text"}});
};

}  // namespace sw
