// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>

#include "compute/bolts/bolt_fields.h"
#include "compute/bolts/bolts.h"
#include "compute/bolts/thread_picture.h"
#include "compute/output.h"
#include "mechanics/bolts/thread_series.h"

namespace sw::compute {

namespace {

using mechanics::LookAlike;
using mechanics::StrengthClass;
using mechanics::Thread;
using mechanics::ThreadGeometry;
using mechanics::ThreadStandard;

struct ThreadInput {
  Thread thread;
  std::optional<StrengthClass> strengthClass;
};

Result<ThreadInput> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  ThreadInput input;
  const auto thread = requiredThread(reader, "thread");
  if (thread) input.thread = *thread;
  input.strengthClass = reader.choice<StrengthClass>("strength_class");
  reader.takeSeed();
  if (auto done = reader.finish(); !done) return failAs(done);
  return input;
}

Json lookAlikesJson(const std::vector<LookAlike>& all) {
  Json list = Json::array();
  for (const LookAlike& each : all) {
    list.push_back({{"thread", each.thread.name},
                    {"diameter_difference", quantityText(each.diameterDifference)},
                    {"pitch_difference", quantityText(each.pitchDifference)},
                    {"engaged_depth", plainNumber(each.engagedDepth)}});
  }
  return list;
}

void putGeometry(const Thread& thread, const ThreadGeometry& geometry, Json& result) {
  result["thread"] = thread.name;
  result["standard"] = wordOf(thread.standard);
  result["pitch_from"] = wordOf(thread.pitchFrom);
  result["diameter"] = quantityText(thread.diameter);
  result["pitch"] = quantityText(thread.pitch);
  if (thread.standard == ThreadStandard::UnifiedInch) {
    result["threads_per_inch"] = plainNumber(inches(1) / thread.pitch);
  }
  result["pitch_diameter"] = quantityText(geometry.pitchDiameter);
  result["nut_minor_diameter"] = quantityText(geometry.nutMinor);
  result["root_diameter"] = quantityText(geometry.root);
  result["stress_diameter"] = quantityText(geometry.stressDiameter);
  result["stress_area"] = quantityText(geometry.stressArea);
}

void noteLookAlikes(const std::vector<LookAlike>& all, std::vector<Note>& notes) {
  std::string names;
  for (const LookAlike& each : all) names += (names.empty() ? "" : ", ") + each.thread.name;
  if (names.empty()) return;
  notes.push_back({"look_alike", "Easily mistaken for " + names +
                                     ". Confirm the thread standard as well as the size; a nut "
                                     "that goes on is no proof."});
}

Result<void> putStrength(const ThreadInput& input, const ThreadGeometry& geometry,
                         Outcome& outcome) {
  const auto strength = mechanics::strengthOf(*input.strengthClass, input.thread.diameter);
  if (!strength) return asInputError(strength.error());
  outcome.result["tensile_strength"] = stressText(strength->tensile);
  outcome.result["yield_strength"] = stressText(strength->yield);
  outcome.result["proof_stress"] = stressText(strength->proof);
  outcome.result["proof_load"] =
      quantityText(mechanics::loadAt(strength->proof, geometry.stressArea));
  outcome.result["breaking_load"] =
      quantityText(mechanics::loadAt(strength->tensile, geometry.stressArea));
  noteClass(input.thread, *input.strengthClass, outcome.notes);
  if (mechanics::nominalStrength(*input.strengthClass)) {
    outcome.notes.push_back({"class_is_nominal",
                             "The number of a class is a nominal value; the minima of ISO 898-1 "
                             "stand here."});
  }
  return {};
}

FieldDescription lengthOut(std::string_view name, std::string_view meaning) {
  return quantityField(name, QuantityKind::Length, meaning, {.presence = Presence::Required});
}

std::vector<FieldDescription> geometryFields() {
  return {{.name = "thread",
           .kind = "text",
           .presence = Presence::Required,
           .meaning = "its full name"},
          {.name = "standard",
           .kind = "word",
           .presence = Presence::Required,
           .range = "iso_metric | unified_inch"},
          {.name = "pitch_from",
           .kind = "word",
           .presence = Presence::Required,
           .range = "designation | coarse_series | fine_series",
           .meaning = "written, or looked up in the series of the standard"},
          lengthOut("diameter", "nominal"),
          lengthOut("pitch", "from thread to thread"),
          {.name = "threads_per_inch", .kind = "number", .meaning = "of an inch thread"},
          lengthOut("pitch_diameter", "d2"),
          lengthOut("nut_minor_diameter", "D1, the bore of the nut"),
          lengthOut("root_diameter", "d3 of a metric bolt, UNR root of an inch bolt"),
          lengthOut("stress_diameter", "of the circle of the stress area"),
          quantityField("stress_area", QuantityKind::Area, "what carries the load",
                        {.presence = Presence::Required})};
}

std::vector<FieldDescription> outputFields() {
  auto fields = geometryFields();
  fields.push_back({.name = "look_alikes",
                    .kind = "list of object",
                    .presence = Presence::Required,
                    .meaning = "other threads of the series it is easily mistaken for",
                    .fields = {{.name = "thread", .kind = "text"},
                               quantityField("diameter_difference", QuantityKind::Length,
                                             "its diameter less this one's"),
                               quantityField("pitch_difference", QuantityKind::Length,
                                             "its pitch less this one's"),
                               {.name = "engaged_depth",
                                .kind = "number",
                                .meaning = "of the thread depth, if the smaller bolt goes into "
                                           "the larger nut"}}});
  fields.push_back(stressField("tensile_strength",
                               "minimum; this and the next four where a "
                               "strength class is given"));
  fields.push_back(stressField("yield_strength", "minimum"));
  fields.push_back(stressField("proof_stress", "held without lasting stretch"));
  fields.push_back(quantityField("proof_load", QuantityKind::Force, "proof stress x stress area"));
  fields.push_back(
      quantityField("breaking_load", QuantityKind::Force, "minimum: tensile strength x area"));
  return fields;
}

constexpr std::string_view kExampleOutput = R"({
  "result": {
    "thread": "M18x1.5",
    "standard": "iso_metric",
    "pitch_from": "designation",
    "diameter": "18 mm",
    "pitch": "1.5 mm",
    "pitch_diameter": "17.0257214207425 mm",
    "nut_minor_diameter": "16.3762023679042 mm",
    "root_diameter": "16.1596960169581 mm",
    "stress_diameter": "16.5927087188503 mm",
    "stress_area": "216.234237906801 mm2",
    "look_alikes": [
      {
        "thread": "3/4-16 UNF",
        "diameter_difference": "1.05 mm",
        "pitch_difference": "0.0875 mm",
        "engaged_depth": 0.389008848983578}],
    "tensile_strength": "830 MPa",
    "yield_strength": "660 MPa",
    "proof_stress": "600 MPa",
    "proof_load": "129740.542744081 N",
    "breaking_load": "179474.417462645 N"},
  "notes": [
    {
      "code": "look_alike",
      "text": "Easily mistaken for 3/4-16 UNF. Confirm the thread standard as well as the )"
                                            R"(size; a nut that goes on is no proof."},
    {
      "code": "class_is_nominal",
      "text": "The number of a class is a nominal value; the minima of ISO 898-1 stand )"
                                            R"(here."},
    {"code": "documentation", "text": "The vehicle's own documentation comes first: where it differs, it holds."}],
  "method": {
    "name": "basic profile of the thread; minimum strength x stress area",
    "source": "ISO 68-1, ISO 724, ISO 898-1, ASME B1.1, SAE J429",
    "options": {}}})";

constexpr std::string_view kFormula =
    "pitch diameter = diameter − 0.6495 × pitch; minor diameter of the nut = diameter − "
    "1.0825 × pitch\n"
    "metric: root diameter = diameter − 1.2269 × pitch; stress area = π ÷ 4 × (diameter − "
    "0.9382 × pitch)²\n"
    "inch: root diameter = diameter − 1.1908 × pitch; stress area = π ÷ 4 × (diameter − "
    "0.9743 × pitch)²; pitch = 25.4 mm ÷ threads per inch\n"
    "load = stress of the class × stress area\n"
    "look-alike: depth engaged = (diameter of the smaller bolt − minor diameter of the nut) "
    "÷ (diameter of the nut − its minor diameter)";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "The thread has 60 degrees and its nominal size; tolerances are left out.",
    "M10 alone is read with the coarse pitch; vehicles use fine pitches much, so confirm the "
    "pitch.",
    "The bolt is as marked, unworn and at room temperature; the nut and the thread in the "
    "part are at least as strong.",
    "Strengths are the minima of the standard, not the round numbers in the name of a class.",
    "Look-alikes lie within 7 % in diameter and 15 % in pitch (common practice, no source); "
    "a pitch gauge and a caliper tell threads apart.",
    "Not for Whitworth, BA, trapezoidal and pipe threads, stainless bolts, studs without "
    "marking, or weakened and waisted shanks.",
});

}  // namespace

Description describeThread() {
  return {.title = "Diameters, stress area, strength and look-alikes of a thread",
          .method = "basic profile of the thread; minimum strength x stress area",
          .source = "ISO 68-1, ISO 724, ISO 898-1, ASME B1.1, SAE J429",
          .formula = kFormula,
          .assumptions = kAssumptions,
          .inputs = withEnvelope({threadDescription(Presence::Required),
                                  strengthDescription(Presence::Optional,
                                                      "marking of the bolt; without it no "
                                                      "strength is given")}),
          .outputs = outputFields(),
          .exampleInput = R"({"thread": "M18x1.5", "strength_class": "8.8"})",
          .exampleOutput = kExampleOutput};
}

Result<Outcome> runThread(const Json& json) {
  Outcome outcome;
  const auto input = read(json, outcome.notes);
  if (!input) return failAs(input);
  const auto geometry = mechanics::threadGeometry(input->thread);
  if (!geometry) return asInputError(geometry.error());
  const auto alike = mechanics::lookAlikes(input->thread);
  if (!alike) return asInputError(alike.error());
  putGeometry(input->thread, *geometry, outcome.result);
  outcome.result["look_alikes"] = lookAlikesJson(*alike);
  noteThread(input->thread, outcome.notes);
  noteLookAlikes(*alike, outcome.notes);
  if (input->strengthClass) {
    if (auto put = putStrength(*input, *geometry, outcome); !put) return failAs(put);
  }
  outcome.notes.push_back(documentationNote());
  outcome.draw = [thread = input->thread, geometry = *geometry](figure::Size size) {
    return threadPicture(thread, geometry, size);
  };
  return outcome;
}

}  // namespace sw::compute
