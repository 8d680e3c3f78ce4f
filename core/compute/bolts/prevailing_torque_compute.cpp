// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>

#include "compute/bolts/bolt_fields.h"
#include "compute/bolts/bolts.h"
#include "compute/bolts/prevailing_torque_picture.h"
#include "compute/output.h"
#include "mechanics/bolts/prevailing_torque.h"

namespace sw::compute {

namespace {

using mechanics::DragRule;
using mechanics::UsedNutVerdict;

struct UsedNut {
  mechanics::Thread thread;
  Torque breakaway;
};

struct PrevailingInput {
  std::optional<mechanics::TorqueRange> torque;
  Torque drag;
  DragRule rule = DragRule::AddAlways;
  std::optional<UsedNut> nut;
};

void readNut(InputReader& reader, PrevailingInput& input) {
  reader.inObject("used_nut", [&](InputReader& inner) {
    UsedNut nut;
    const auto thread = requiredThread(inner, "thread");
    if (thread) nut.thread = *thread;
    nut.breakaway = inner.required<Torque>("breakaway_torque", Sign::NotNegative);
    input.nut = nut;
  });
}

Result<PrevailingInput> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  PrevailingInput input;
  input.torque = torqueRangeField(reader, "torque");
  const auto drag = reader.optional<Torque>("drag", Sign::NotNegative);
  const auto rule = reader.choice<DragRule>("rule");
  readNut(reader, input);
  reader.takeSeed();
  if (!input.nut) reader.requireKey("torque");
  if (input.torque) {
    reader.requireKey("drag");
    reader.requireKey("rule");
  }
  if (drag || rule) reader.requireKey("torque");
  if (auto done = reader.finish(); !done) return failAs(done);
  input.drag = drag.value_or(Torque{});
  input.rule = rule.value_or(input.rule);
  return input;
}

const char* ruleNote(DragRule rule) {
  switch (rule) {
    case DragRule::Included:
      return "The figure holds as it is: its maker has counted the drag in.";
    case DragRule::AddAlways:
      return "Drag is always added (FAA AC 43.13-1B). Other manuals leave small drag out: keep to "
             "the sheet the figure comes from.";
    case DragRule::AddIfThird:
      return "Drag below a third of the lower limit is left out (US Army practice). Other manuals "
             "always add it: keep to the sheet the figure comes from.";
  }
  return "";
}

Result<void> putTorque(const PrevailingInput& input, Outcome& outcome, DragDrawing& drawing) {
  const auto final = mechanics::finalTorque(*input.torque, input.drag, input.rule);
  if (!final) return asInputError(final.error());
  drawing.tightening = {*input.torque, input.drag, input.rule, *final};
  outcome.result["torque"] = torqueRangeJson(final->torque);
  outcome.result["added"] = quantityText(final->added);
  if (input.rule == DragRule::AddIfThird) {
    outcome.result["counts_from"] = quantityText(mechanics::dragThreshold(*input.torque));
  }
  outcome.notes.push_back({"rule", ruleNote(input.rule)});
  outcome.notes.push_back({"read_drag_running",
                           "Read the drag with the nut running, just short of seating, not at its "
                           "first movement."});
  return {};
}

const char* nutNote(UsedNutVerdict verdict) {
  switch (verdict) {
    case UsedNutVerdict::Reuse:
      return "It still holds the least figure of the table; other manuals ask for more. Nylon that "
             "was near 120 degrees C goes.";
    case UsedNutVerdict::Discard:
      return "It does not lock any more: fit a new one.";
    case UsedNutVerdict::NoLimit:
      return "No figure is on file for this thread, so no used nut of it is passed: fit a new one "
             "or follow the vehicle's documentation.";
  }
  return "";
}

Result<void> putNut(const UsedNut& nut, Outcome& outcome, DragDrawing& drawing) {
  const auto verdict = mechanics::judgeUsedNut(nut.thread, nut.breakaway);
  if (!verdict) return asInputError(verdict.error());
  Json result = {{"verdict", wordOf(*verdict)}, {"thread", nut.thread.name}};
  const auto least = mechanics::leastBreakaway(nut.thread);
  if (least) result["least_breakaway"] = quantityText(*least);
  drawing.nut = {nut.thread.name, nut.breakaway, least, *verdict};
  outcome.result["used_nut"] = std::move(result);
  outcome.notes.push_back({std::string(wordOf(*verdict)), nutNote(*verdict)});
  outcome.notes.push_back({"single_use",
                           "Nuts that the documentation calls single-use, staked nuts and "
                           "pre-coated bolts are replaced whatever they hold."});
  return {};
}

std::vector<FieldDescription> inputFields() {
  FieldDescription nutThread = threadDescription(Presence::Required);
  return withEnvelope(
      {torqueRangeDescription("torque", "of the sheet; needed but for a used nut alone"),
       quantityField("drag", QuantityKind::Torque,
                     "that keeps the nut running just short of seating; needed with torque",
                     {.range = "0 or more"}),
       {.name = "rule",
        .kind = "word",
        .range = "included | add_always | add_if_third",
        .meaning = "of the sheet the figure comes from; needed with torque, since sources differ"},
       {.name = "used_nut",
        .kind = "object",
        .meaning = "a used self-locking nut, tried before it goes on again",
        .fields = {std::move(nutThread),
                   quantityField("breakaway_torque", QuantityKind::Torque,
                                 "that starts it turning off, nothing clamped",
                                 {.presence = Presence::Required, .range = "0 or more"})}}});
}

std::vector<FieldDescription> outputFields() {
  return {torqueRangeDescription("torque", "what to tighten to"),
          quantityField("added", QuantityKind::Torque, "of the drag"),
          quantityField("counts_from", QuantityKind::Torque,
                        "drag is added from here on; for add_if_third"),
          {.name = "used_nut",
           .kind = "object",
           .fields = {{.name = "verdict", .kind = "word", .range = "reuse | discard | no_limit"},
                      {.name = "thread", .kind = "text"},
                      quantityField("least_breakaway", QuantityKind::Torque,
                                    "absent where none is on file")}}};
}

constexpr std::string_view kExampleOutput = R"({
  "result": {
    "torque": {"min": "48 N m", "max": "54 N m"},
    "added": "6 N m",
    "used_nut": {"verdict": "reuse", "thread": "5/16-24 UNF", "least_breakaway": )"
                                            R"("0.734401388679508 N m"}},
  "notes": [
    {
      "code": "rule",
      "text": "Drag is always added (FAA AC 43.13-1B). Other manuals leave small drag )"
                                            R"(out: keep to the sheet the figure comes from."},
    {
      "code": "read_drag_running",
      "text": "Read the drag with the nut running, just short of seating, not at its )"
                                            R"(first movement."},
    {
      "code": "reuse",
      "text": "It still holds the least figure of the table; other manuals ask for more. )"
                                            R"(Nylon that was near 120 degrees C goes."},
    {
      "code": "single_use",
      "text": "Nuts that the documentation calls single-use, staked nuts and pre-coated )"
                                            R"(bolts are replaced whatever they hold."},
    {"code": "documentation", "text": "The vehicle's own documentation comes first: where it differs, it holds."}],
  "method": {
    "name": "drag added by the rule of the sheet; breakaway torque against a table",
    "source": "FAA AC 43.13-1B 7-40; US Army TM 5-2330-325-13&P; TM 1-1500-204-23-6 table )"
                                            R"(2-8",
    "options": {}}})";

constexpr std::string_view kFormula =
    "included: final torque = figure of the sheet\n"
    "add always: final torque = figure + drag\n"
    "add if a third: figure + drag where drag is a third of the figure's lower limit or "
    "more, else the figure\n"
    "used nut: thrown away where it starts to turn below 5/16-24 6.5, 3/8-24 9.5, 7/16-20 "
    "14, 1/2-20 18, 9/16-18 24 lbf in";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "Drag is the torque that keeps the nut turning while it is run down, just short of "
    "seating.",
    "Official sources contradict each other, so the rule belongs to the sheet the figure "
    "comes from and is asked for.",
    "A used nut is tried turning off, with all of its locking part on the thread and nothing "
    "clamped.",
    "No figure is on file for metric and for other inch sizes.",
    "Nylon softens near 121 degrees Celsius.",
    "Not for single-use nuts and where the vehicle's documentation asks for new ones: those "
    "are replaced whatever they hold.",
});

}  // namespace

Description describePrevailingTorque() {
  return {
      .title = "Drag of a self-locking nut, and may a used one go on again?",
      .method = "drag added by the rule of the sheet; breakaway torque against a table",
      .source = "FAA AC 43.13-1B 7-40; US Army TM 5-2330-325-13&P; TM 1-1500-204-23-6 table 2-8",
      .formula = kFormula,
      .assumptions = kAssumptions,
      .inputs = inputFields(),
      .outputs = outputFields(),
      .exampleInput = R"({"torque": {"min": "42 N m", "max": "48 N m"}, "drag": "6 N m",
                              "rule": "add_always",
                              "used_nut": {"thread": "5/16-24", "breakaway_torque": "0.9 N m"}})",
      .exampleOutput = kExampleOutput};
}

Result<Outcome> runPrevailingTorque(const Json& json) {
  Outcome outcome;
  const auto input = read(json, outcome.notes);
  if (!input) return failAs(input);
  DragDrawing drawing;
  if (input->torque) {
    if (const auto put = putTorque(*input, outcome, drawing); !put) return failAs(put);
  }
  if (input->nut) {
    if (const auto put = putNut(*input->nut, outcome, drawing); !put) return failAs(put);
  }
  outcome.notes.push_back(documentationNote());
  outcome.draw = [drawing](figure::Size size) { return prevailingTorquePicture(drawing, size); };
  return outcome;
}

}  // namespace sw::compute
