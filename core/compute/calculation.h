// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <nlohmann/json.hpp>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "compute/description.h"
#include "figure/figure.h"
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

/// One name and its value.
struct ReadableRow {
  std::string name;
  std::string value;
};
struct ReadableTable {
  std::string name;
  std::vector<std::string> columns;
  std::vector<std::vector<std::string>> rows;
};
struct Readable {
  std::vector<ReadableRow> rows;
  std::vector<ReadableTable> tables;
};

/// The picture of an answer for the room there is, in units of its text.
using Draw = std::function<figure::Figure(figure::Size)>;

struct Outcome {
  Json result = Json::object();
  std::vector<Note> notes;
  Json options = Json::object();  ///< the options as used, defaults filled in
  Draw draw;                      ///< empty where a picture would say nothing
  /// The figures for people, where the bare fields would bury what matters.
  std::optional<Readable> shown;
};

/// What a calculation belongs to, as the trade would look for it.
enum class Subject {
  Diagnosis,
  Measuring,
  Swivel,
  Brakes,
  Bearings,
  Bolts,
  Wheels,
  Geometry,
  Support
};

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

/// What a calculation gave: the JSON that goes out, and its picture.
struct Answer {
  Json json;
  Draw draw;
  std::optional<Readable> shown;
};
/// Errors: as the calculation.
[[nodiscard]] Result<Answer> answerTo(const Calculation& calculation, const Json& input);

/// {"result":{...},"notes":[...],"method":{"name","source","options"}}. Errors: as the calculation.
[[nodiscard]] Result<Json> evaluate(const Calculation& calculation, const Json& input);

}  // namespace sw::compute
