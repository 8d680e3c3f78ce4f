// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/brakes/gauge_input.h"

#include <cmath>
#include <string>

#include "units/format.h"

namespace sw::compute {

namespace {

constexpr double kPlacesOfANote = 10000;  // a tenth of a micrometre

std::string_view orLengthOrForce(QuantityKind kind) {
  return kind == QuantityKind::Number ? std::string_view("length or force") : word(kind);
}

std::string_view unitOf(QuantityKind kind) {
  return kind == QuantityKind::Number ? std::string_view{} : defaultUnit(kind).symbol;
}

}  // namespace

InstrumentCapability readGauge(InputReader& reader, QuantityKind kind) {
  const QuantitySpec positive{.kind = kind, .sign = Sign::Positive};
  InstrumentCapability instrument;
  reader.requireKey("instrument");
  reader.inObject("instrument", [&](InputReader& inner) {
    instrument.graduation = inner.requiredQuantity("graduation", positive);
    instrument.permissibleError = inner.quantity("permissible_error", positive);
    instrument.localError = inner.quantity("local_error", positive);
  });
  return instrument;
}

FieldDescription gaugeField(QuantityKind kind) {
  const std::string_view kindWord = orLengthOrForce(kind);
  const std::string_view unit = unitOf(kind);
  return {.name = "instrument",
          .kind = "object",
          .presence = Presence::Required,
          .meaning = "what is known about the instrument",
          .fields = {{.name = "graduation",
                      .kind = kindWord,
                      .unit = unit,
                      .presence = Presence::Required,
                      .range = "more than 0",
                      .meaning = "smallest step that is read"},
                     {.name = "permissible_error",
                      .kind = kindWord,
                      .unit = unit,
                      .range = "more than 0",
                      .meaning = "plus or minus this, by the maker or a certificate; it cancels in "
                                 "a difference of two readings"},
                     {.name = "local_error",
                      .kind = kindWord,
                      .unit = unit,
                      .range = "more than 0",
                      .meaning = "plus or minus this over a short travel: what a difference of two "
                                 "readings keeps"}}};
}

Json confidenceOption(double confidence) {
  return {{"confidence", plainNumber(confidence)}};
}

std::optional<LengthAndUncertainty> readWithUncertainty(InputReader& reader, std::string_view key,
                                                        std::string_view uncertainty) {
  const auto value = reader.optional<Length>(key, Sign::NotNegative);
  if (value) reader.requireKey(uncertainty);
  const auto standard = reader.optional<Length>(uncertainty, Sign::NotNegative);
  if (!value) return std::nullopt;
  return LengthAndUncertainty{*value, standard.value_or(Length{})};
}

Error oneOfTwo(std::string_view first, std::string_view second) {
  return {ErrorCode::OutOfRange,
          "brakes.one_of_two",
          "/" + std::string(second),
          {{"first", std::string(first)}, {"second", std::string(second)}}};
}

Json judgedObject(const mechanics::JudgedNumber& number, const JudgedTexts& texts,
                  const std::optional<double>& degreesOfFreedom) {
  Json object = {{"value", texts.value},
                 {"standard_uncertainty", texts.standardUncertainty},
                 {"degrees_of_freedom", degreesOfFreedomJson(degreesOfFreedom)},
                 {"coverage_factor", plainNumber(number.coverageFactor)},
                 {"expanded_uncertainty", texts.expandedUncertainty},
                 {"verdict", word(number.verdict)},
                 {"side", word(number.side)}};
  if (number.conformanceProbability) {
    object["conformance_probability"] = plainNumber(*number.conformanceProbability);
  }
  return object;
}

FieldDescription judgedField(std::string_view name, QuantityKind kind, std::string_view meaning,
                             Presence presence) {
  const FieldNotes always{.presence = Presence::Required};
  return {
      .name = name,
      .kind = "object",
      .presence = presence,
      .meaning = meaning,
      .fields = {
          quantityField("value", kind, "", always),
          quantityField("standard_uncertainty", kind, "", always),
          {.name = "degrees_of_freedom",
           .kind = "number or infinity",
           .presence = Presence::Required},
          {.name = "coverage_factor",
           .kind = "number",
           .presence = Presence::Required,
           .meaning = "k"},
          quantityField("expanded_uncertainty", kind, "k times the standard uncertainty", always),
          {.name = "conformance_probability",
           .kind = "number",
           .range = "0 to 1",
           .meaning = "that the true value is inside the limit; absent without one"},
          {.name = "verdict",
           .kind = "word",
           .presence = Presence::Required,
           .range = "within | outside | undecided | provisional | instrument_too_coarse | "
                    "no_limit"},
          {.name = "side",
           .kind = "word",
           .presence = Presence::Required,
           .range = "none | below | above | inside_likely | outside_likely"}}};
}

std::string shown(Length length) {
  return fullPrecision(std::round(inMillimetres(length) * kPlacesOfANote) / kPlacesOfANote) + " mm";
}

}  // namespace sw::compute
