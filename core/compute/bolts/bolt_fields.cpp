// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/bolts/bolt_fields.h"

#include <nlohmann/json.hpp>

#include "compute/output.h"
#include "mechanics/bolts/thread_designation.h"
#include "mechanics/bolts/thread_series.h"
#include "units/format.h"

namespace sw::compute {

namespace {

Unit stressUnit() {
  return findUnit(QuantityKind::Pressure, "MPa").value_or(defaultUnit(QuantityKind::Pressure));
}

}  // namespace

std::optional<mechanics::Thread> threadField(InputReader& reader, std::string_view key) {
  const auto text = reader.fields().text(key);
  if (!text) return std::nullopt;
  auto thread = mechanics::parseThread(*text);
  if (thread) return std::move(*thread);
  reader.fail(thread.error().about(reader.fields().pathOf(key)));
  return std::nullopt;
}

std::optional<mechanics::Thread> requiredThread(InputReader& reader, std::string_view key) {
  reader.requireKey(key);
  return threadField(reader, key);
}

FieldDescription threadDescription(Presence presence) {
  return {.name = "thread",
          .kind = "text",
          .presence = presence,
          .range = "M10 | M10x1.25 | 7/16-20 UNF | 1/2-13 | #10-32, at most 40 characters",
          .meaning = "as it is written; a size after M alone takes the coarse pitch"};
}

FieldDescription strengthDescription(Presence presence, std::string_view meaning) {
  return {.name = "strength_class",
          .kind = "word",
          .presence = presence,
          .range =
              "4.6 | 4.8 | 5.6 | 5.8 | 6.8 | 8.8 | 9.8 | 10.9 | 12.9 | grade_2 | grade_5 | "
              "grade_8",
          .meaning = meaning};
}

std::optional<mechanics::TorqueRange> torqueRangeField(InputReader& reader, std::string_view key) {
  std::optional<mechanics::TorqueRange> range;
  reader.inObject(key, [&](InputReader& inner) {
    mechanics::TorqueRange read;
    read.least = inner.required<Torque>("min", Sign::Positive);
    read.most = inner.optional<Torque>("max", Sign::Positive);
    if (const auto error = mechanics::findBadRange(read)) {
      inner.fail(error->about(inner.fields().pathOf(error->field)));
    }
    range = read;
  });
  return range;
}

Json torqueRangeJson(const mechanics::TorqueRange& range) {
  Json json = {{"min", quantityText(range.least)}};
  if (range.most) json["max"] = quantityText(*range.most);
  return json;
}

FieldDescription torqueRangeDescription(std::string_view name, std::string_view meaning) {
  return {.name = name,
          .kind = "object",
          .meaning = meaning,
          .fields = {
              quantityField("min", QuantityKind::Torque, "lower limit, or the only figure",
                            {.presence = Presence::Required, .range = "more than 0"}),
              quantityField("max", QuantityKind::Torque, "upper limit", {.range = "min or more"})}};
}

std::string stressText(Pressure stress) {
  return exactText(stress.si(), stressUnit());
}

FieldDescription stressField(std::string_view name, std::string_view meaning) {
  return {.name = name, .kind = "pressure", .unit = "MPa", .meaning = meaning};
}

void noteThread(const mechanics::Thread& thread, std::vector<Note>& notes) {
  if (thread.pitchFrom != mechanics::PitchFrom::Designation) {
    notes.push_back({"pitch_looked_up", "No pitch was written; read as " + thread.name +
                                            ". Vehicles use fine pitches much: check with a pitch "
                                            "gauge."});
  } else if (!mechanics::findInSeries(thread.standard, thread.diameter, thread.pitch)) {
    notes.push_back({"unusual_pitch", thread.name +
                                          " is not in the usual series: check diameter and pitch "
                                          "again."});
  }
}

void noteClass(const mechanics::Thread& thread, mechanics::StrengthClass strengthClass,
               std::vector<Note>& notes) {
  if (threadsOf(strengthClass) == thread.standard) return;
  notes.push_back({"class_of_other_standard",
                   "This class belongs to threads of the other standard. Look at the marking and "
                   "the thread again."});
}

}  // namespace sw::compute
