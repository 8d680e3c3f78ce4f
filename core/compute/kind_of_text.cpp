// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/kind_of_text.h"

#include <algorithm>

#include "units/parse.h"

namespace sw::compute {

namespace {

enum class MassReading { Refused, Allowed };

bool readsAs(std::string_view text, QuantityKind kind, MassReading mass) {
  const auto parsed = parseQuantity(text, {.field = {}, .kind = kind, .defaultUnit = {}});
  if (!parsed) return false;
  return std::none_of(parsed->notes.begin(), parsed->notes.end(), [mass](ReadNote note) {
    const bool asForce = note == ReadNote::MassAsForce || note == ReadNote::MassAsTorque;
    return note == ReadNote::BareNumber || (asForce && mass == MassReading::Refused);
  });
}

}  // namespace

std::vector<QuantityKind> measuredKinds() {
  std::vector<QuantityKind> kinds;
  for (const Unit& unit : allUnits()) {
    const bool known = std::find(kinds.begin(), kinds.end(), unit.kind) != kinds.end();
    if (!known && unit.kind != QuantityKind::Number) kinds.push_back(unit.kind);
  }
  return kinds;
}

std::optional<QuantityKind> commonKind(std::initializer_list<std::string_view> texts) {
  for (const MassReading mass : {MassReading::Refused, MassReading::Allowed}) {
    for (const QuantityKind kind : measuredKinds()) {
      const bool all = std::all_of(texts.begin(), texts.end(), [&](std::string_view text) {
        return readsAs(text, kind, mass);
      });
      if (all) return kind;
    }
  }
  return std::nullopt;
}

Result<QuantityKind> kindFromField(const std::string& text, std::string path) {
  const auto kinds = measuredKinds();
  const auto kind = quantityKindFromWord(text);
  if (kind && std::find(kinds.begin(), kinds.end(), *kind) != kinds.end()) return *kind;
  std::string choices;
  for (const QuantityKind each : kinds)
    choices.append(choices.empty() ? "" : ", ").append(word(each));
  return fail(ErrorCode::InvalidInput, "json.not_one_of", std::move(path),
              {{"text", text}, {"choices", choices}});
}

Error notAQuantity(std::string_view text, std::string path) {
  return {ErrorCode::InvalidInput,
          "compute.not_a_quantity",
          std::move(path),
          {{"text", std::string(text)}, {"example", "18.5 N"}}};
}

}  // namespace sw::compute
