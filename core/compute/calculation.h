// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <nlohmann/json.hpp>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "compute/description.h"
#include "model/json.h"

// What the bench and `swivelwright compute` offer: one JSON object in, one out. The same bytes in
// give the same bytes out; no clock, locale or book is used.

namespace sw::compute {

using model::Json;

/// Something worth saying beside a result: how an input was read, what the result rests on.
struct Note {
  std::string code;
  std::string text;

  friend bool operator==(const Note&, const Note&) = default;
};

struct Outcome {
  Json result = Json::object();
  std::vector<Note> notes;
  Json options = Json::object();  ///< the options as used, defaults filled in
};

/// What a calculation belongs to, as the trade would look for it.
enum class Subject { Measuring, Swivel, Brakes, Bolts, Wheels, Geometry, Support };

/// One row of the table. `run` gets the whole input object; its errors name fields as paths into
/// it.
struct Calculation {
  std::string_view name;
  std::string_view title;
  Subject subject = Subject::Measuring;
  Description (*describe)() = nullptr;
  Result<Outcome> (*run)(const Json& input) = nullptr;
};

[[nodiscard]] std::span<const Calculation> calculations();
/// Errors: NotFound "compute.unknown_name" (details: text, choices).
[[nodiscard]] Result<Calculation> findCalculation(std::string_view name);

/// {"result":{...},"notes":[...],"method":{"name","source","options"}}. Errors: as the calculation.
[[nodiscard]] Result<Json> evaluate(const Calculation& calculation, const Json& input);

}  // namespace sw::compute
