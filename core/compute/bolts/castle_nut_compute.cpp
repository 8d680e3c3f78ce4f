// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>

#include "compute/bolts/bolt_fields.h"
#include "compute/bolts/bolts.h"
#include "compute/bolts/castle_nut_picture.h"
#include "compute/output.h"
#include "mechanics/bolts/castle_nut.h"

namespace sw::compute {

namespace {

using mechanics::CastleAction;
using mechanics::CastleNut;
using mechanics::NutPurpose;
using mechanics::SlotPosition;
using mechanics::SlotReachedBy;

constexpr int kMostSlots = 100;

struct CastleInput {
  CastleNut nut;
  mechanics::Thread thread;
  int slots = 6;
  int crossHoles = 1;
};

Result<CastleInput> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  CastleInput input;
  const auto thread = requiredThread(reader, "thread");
  if (thread) input.thread = *thread;
  reader.requireKey("torque");
  const auto limits = torqueRangeField(reader, "torque");
  if (limits) input.nut.limits = *limits;
  input.nut.drag = reader.optional<Torque>("drag", Sign::NotNegative).value_or(Torque{});
  input.nut.reached = reader.required<Torque>("reached", Sign::NotNegative);
  input.nut.slot = reader.requiredChoice<SlotPosition>("slot").value_or(input.nut.slot);
  input.nut.by = reader.choice<SlotReachedBy>("reached_by").value_or(input.nut.by);
  input.nut.purpose = reader.choice<NutPurpose>("purpose").value_or(input.nut.purpose);
  input.slots = reader.wholeNumber("slots", 0, kMostSlots).value_or(input.slots);
  input.crossHoles = reader.wholeNumber("cross_holes", 0, kMostSlots).value_or(input.crossHoles);
  reader.takeSeed();
  if (auto done = reader.finish(); !done) return failAs(done);
  return input;
}

const char* whatToDo(CastleAction action) {
  switch (action) {
    case CastleAction::FitPin:
      return "Fit a new split pin and bend it over.";
    case CastleAction::TightenOn:
      return "Tighten on, to the lower limit at least and from there to the next slot.";
    case CastleAction::ChangeWasherOrNut:
      return "No slot lines up within the limits: take the nut off, change the washer or the nut "
             "and begin again. Look the thread over where the upper limit was passed.";
    case CastleAction::AskUpperLimit:
      return "The sheet gives one figure. Find the upper limit in the vehicle's documentation "
             "before tightening on; none is made up here.";
    case CastleAction::BackingOffRefused:
      return "A nut is never backed off to a slot: the clamp force goes with it. Tighten on, or "
             "change the washer or the nut.";
    case CastleAction::FollowProcedure:
      return "This nut sets a bearing: its procedure says how far it is backed off. Torque limits "
             "of a clamped joint do not apply.";
  }
  return "";
}

std::vector<FieldDescription> inputFields() {
  return withEnvelope(
      {threadDescription(Presence::Required),
       [] {
         auto torque = torqueRangeDescription("torque", "limits of the sheet; one figure is min");
         torque.presence = Presence::Required;
         return torque;
       }(),
       quantityField("drag", QuantityKind::Torque, "of a nut that also locks; goes on both limits",
                     {.range = "0 or more", .defaultValue = R"("0 N m")"}),
       quantityField("reached", QuantityKind::Torque, "torque the nut stands at now",
                     {.presence = Presence::Required, .range = "0 or more"}),
       {.name = "slot",
        .kind = "word",
        .presence = Presence::Required,
        .range = "aligned | not_aligned",
        .meaning = "a slot over the hole"},
       {.name = "reached_by",
        .kind = "word",
        .defaultValue = R"("tightening_on")",
        .range = "tightening_on | backing_off"},
       {.name = "purpose",
        .kind = "word",
        .defaultValue = R"("clamps_joint")",
        .range = "clamps_joint | sets_bearing"},
       {.name = "slots", .kind = "whole number", .defaultValue = "6", .range = "2 to 24, even"},
       {.name = "cross_holes",
        .kind = "whole number",
        .defaultValue = "1",
        .range = "1 or 2",
        .meaning = "holes through the bolt, 2 for crossed ones"}});
}

std::vector<FieldDescription> outputFields() {
  constexpr auto kAlways = Presence::Required;
  return {{.name = "action",
           .kind = "word",
           .presence = kAlways,
           .range = "fit_pin | tighten_on | change_washer_or_nut | ask_upper_limit | "
                    "backing_off_refused | follow_procedure"},
          torqueRangeDescription("limits", "with the drag"),
          quantityField("step", QuantityKind::Angle, "turn from one slot to the next",
                        {.presence = kAlways}),
          quantityField("step_travel", QuantityKind::Length, "of the nut along the bolt",
                        {.presence = kAlways})};
}

constexpr std::string_view kExampleOutput = R"({
  "result": {
    "action": "tighten_on",
    "limits": {"min": "72 N m", "max": "85 N m"},
    "step": "60 deg",
    "step_travel": "0.25 mm"},
  "notes": [
    {
      "code": "tighten_on",
      "text": "Tighten on, to the lower limit at least and from there to the next slot."},
    {"code": "new_pin", "text": "A split pin is used once."},
    {"code": "documentation", "text": "The vehicle's own documentation comes first: where it differs, it holds."}],
  "method": {
    "name": "on to the next slot between the limits, never back",
    "source": "FAA AC 43.13-1B 7-40; plane geometry; never back off: common practice, no )"
                                            R"(source",
    "options": {}}})";

constexpr std::string_view kFormula =
    "step to the next slot = 360° ÷ smallest common multiple of slots and 2 × holes: 6 slots "
    "and one hole 60°, two crossed holes 30°\n"
    "travel of a step = pitch × step ÷ 360°\n"
    "limits = figures of the sheet + drag of the nut\n"
    "tighten to the lower limit, then on to the next slot, never past the upper limit and "
    "never back; no slot by then: nut off, change washer or nut, begin again";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "The number of slots is even, so that a straight pin passes both sides; the pin is new "
    "every time.",
    "One figure alone is the lower limit; where no slot lines up at it the upper limit is "
    "asked for and not invented.",
    "Never to back off is a trade rule, common practice.",
    "Not for nuts that set the preload or play of a bearing: there the procedure itself "
    "backs off.",
});

}  // namespace

Description describeCastleNut() {
  return {.title = "A castellated nut: fit the pin, tighten on, or change the washer?",
          .method = "on to the next slot between the limits, never back",
          .source =
              "FAA AC 43.13-1B 7-40; plane geometry; never back off: common practice, no "
              "source",
          .formula = kFormula,
          .assumptions = kAssumptions,
          .inputs = inputFields(),
          .outputs = outputFields(),
          .exampleInput = R"({"thread": "M14x1.5", "torque": {"min": "72 N m", "max": "85 N m"},
                              "reached": "78 N m", "slot": "not_aligned"})",
          .exampleOutput = kExampleOutput};
}

Result<Outcome> runCastleNut(const Json& json) {
  Outcome outcome;
  const auto input = read(json, outcome.notes);
  if (!input) return failAs(input);
  const auto step = mechanics::castleStep(input->slots, input->crossHoles, input->thread.pitch);
  if (!step) return asInputError(step.error());
  const auto decision = mechanics::decideCastleNut(input->nut);
  if (!decision) return asInputError(decision.error());
  outcome.result = {{"action", wordOf(decision->action)},
                    {"limits", torqueRangeJson(decision->limits)},
                    {"step", quantityText(step->turn)},
                    {"step_travel", quantityText(step->travel)}};
  outcome.notes.push_back({std::string(wordOf(decision->action)), whatToDo(decision->action)});
  noteThread(input->thread, outcome.notes);
  outcome.notes.push_back({"new_pin", "A split pin is used once."});
  outcome.notes.push_back(documentationNote());
  outcome.draw = [drawing =
                      CastleDrawing{input->nut, *decision, *step, input->slots, input->crossHoles}](
                     figure::Size size) { return castleNutPicture(drawing, size); };
  return outcome;
}

}  // namespace sw::compute
