// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "model/json.h"
#include "units/unit.h"

namespace sw::compute {

enum class Presence { Required, Optional };

/// One field of an input or output, as --describe tells it. Empty texts are left out.
struct FieldDescription {
  std::string_view name = {};
  std::string_view kind =
      {};  ///< "force", "number", "whole number", "word", "object", "list of force"
  std::string_view unit = {};  ///< taken for a JSON number, and the one that comes out
  Presence presence = Presence::Optional;
  std::string_view defaultValue = {};  ///< JSON text
  std::string_view range = {};
  std::string_view meaning = {};
  std::vector<FieldDescription> fields = {};  ///< of an object, or of each object of a list
};

struct Description {
  std::string_view title;
  std::string_view method;
  std::string_view source;
  /// As worked by hand, each symbol in words; a line each.
  std::string_view formula;
  /// What it rests on, its valid range, when not to use it: sentences.
  std::span<const std::string_view> assumptions;
  std::vector<FieldDescription> inputs;
  std::vector<FieldDescription> outputs;
  std::string_view exampleInput;   ///< JSON text
  std::string_view exampleOutput;  ///< JSON text: the whole answer
};

/// {"title","method":{"name","source","formula","assumptions":[...]},"inputs":[...],"outputs":[...],
/// "example":{"input","output"}}.
/// Errors: as parseJson, where an example is not JSON.
[[nodiscard]] Result<model::Json> toJson(const Description& description);

/// What a quantity field says besides its name, kind and meaning.
struct FieldNotes {
  Presence presence = Presence::Optional;
  std::string_view range = {};
  std::string_view defaultValue = {};  ///< JSON text
};
/// A field of a quantity in its kind's default unit.
[[nodiscard]] FieldDescription quantityField(std::string_view name, QuantityKind kind,
                                             std::string_view meaning,
                                             const FieldNotes& notes = {});

/// The fields "options" (with these inside) and "seed", which every calculation takes.
[[nodiscard]] std::vector<FieldDescription> envelopeFields(std::vector<FieldDescription> options);
/// The fields with those of the envelope behind them.
[[nodiscard]] std::vector<FieldDescription> withEnvelope(
    std::vector<FieldDescription> fields, std::vector<FieldDescription> options = {});

}  // namespace sw::compute
