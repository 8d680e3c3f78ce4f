// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/wheels/vector_reading.h"

#include <nlohmann/json.hpp>

#include "compute/output.h"
#include "units/format.h"

namespace sw::compute {

namespace {

constexpr std::string_view kGrams = "g";
constexpr double kGramsPerKilogram = 1000;
constexpr Mass kManyGrams = kilograms(0.1);

Unit gramsUnit() {
  return findUnit(QuantityKind::Mass, kGrams).value_or(defaultUnit(QuantityKind::Mass));
}

Angle readAngle(InputReader& reader) {
  return reader.required<Angle>("angle");
}

FieldDescription angleField() {
  return quantityField("angle", QuantityKind::Angle,
                       "from the mark, in one sense for marks, weights and readings",
                       {.presence = Presence::Required});
}

}  // namespace

std::string gramsText(Mass mass) {
  return exactText(mass.si(), gramsUnit());
}

QuantitySpec gramsSpec(Sign sign) {
  return {.kind = QuantityKind::Mass, .sign = sign, .unit = kGrams};
}

FieldDescription gramsField(std::string_view name, std::string_view meaning,
                            const FieldNotes& notes) {
  FieldDescription field = quantityField(name, QuantityKind::Mass, meaning, notes);
  field.unit = kGrams;
  return field;
}

mechanics::Polar readReading(InputReader& reader, std::string_view key) {
  mechanics::Polar reading;
  reader.requireKey(key);
  reader.inObject(key, [&](InputReader& inner) {
    inner.requireKey("amount");
    reading.amount = inner.number("amount", {.least = 0, .text = "0 or more"}).value_or(0);
    reading.angle = readAngle(inner);
  });
  return reading;
}

mechanics::WeightVector readWeight(InputReader& reader, std::string_view key, Sign sign) {
  mechanics::WeightVector weight;
  reader.requireKey(key);
  reader.inObject(key, [&](InputReader& inner) {
    weight.amount = Mass::fromSi(inner.requiredQuantity("amount", gramsSpec(sign)));
    weight.angle = readAngle(inner);
  });
  return weight;
}

Json readingJson(const mechanics::Polar& reading) {
  return {{"amount", plainNumber(reading.amount)}, {"angle", quantityText(reading.angle)}};
}

Json influenceJson(const mechanics::Influence& influence) {
  return readingJson({influence.amount / kGramsPerKilogram, influence.angle});
}

Json weightJson(const mechanics::WeightVector& weight) {
  return {{"amount", gramsText(weight.amount)}, {"angle", quantityText(weight.angle)}};
}

FieldDescription readingField(std::string_view name, std::string_view meaning, Presence presence) {
  return {.name = name,
          .kind = "object",
          .presence = presence,
          .meaning = meaning,
          .fields = {{.name = "amount",
                      .kind = "number",
                      .presence = Presence::Required,
                      .range = "0 or more",
                      .meaning = "in any unit, the same for all readings"},
                     angleField()}};
}

FieldDescription weightField(std::string_view name, std::string_view meaning, Presence presence,
                             Sign sign) {
  const std::string_view range = sign == Sign::Positive ? "more than 0" : "0 or more";
  return {.name = name,
          .kind = "object",
          .presence = presence,
          .meaning = meaning,
          .fields = {gramsField("amount", "mass of the weight",
                                {.presence = Presence::Required, .range = range}),
                     angleField()}};
}

void noteBalancing(Mass largest, std::vector<Note>& notes) {
  notes.push_back({"same_speed",
                   "All runs at one speed, on clean wheels without old weights; each "
                   "trial weight off again before the next."});
  notes.push_back({"check_by_a_run",
                   "Fit the correction and run again: what is read then is the "
                   "proof, not this figure."});
  if (largest <= kManyGrams) return;
  notes.push_back({"many_grams",
                   "More than about 100 g in one plane: look for mud, runout, a tyre "
                   "not seated, or turn the tyre on its rim (common practice)."});
}

}  // namespace sw::compute
