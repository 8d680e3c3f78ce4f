// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "units/unit.h"

// How people write units; used by the readers of parse.h only.

namespace sw::spelling {

/// How a spelling is understood, apart from the unit itself.
enum class Reading { Plain, MassAsForce, MassAsTorque };

/// Whether capitals may differ from the spelling. Exact where a capital would change the prefix or
/// the quantity ("Mm", "mPa", "G").
enum class Capitals { Any, Exact };

/// A blank in `text` stands for any product sign between the factors, or for none: "lb ft" also
/// reads "lb-ft", "lb.ft" and "lbft".
struct Spelling {
  QuantityKind kind;
  std::string_view text;
  std::string_view symbol;
  Reading reading = Reading::Plain;
  Capitals capitals = Capitals::Any;
};

/// All spellings besides the symbols of the unit table.
[[nodiscard]] std::span<const Spelling> allSpellings();

struct UnitMatch {
  Unit unit;
  Reading reading = Reading::Plain;
};

/// The unit within the kind that this (normalised, trimmed) text names.
[[nodiscard]] std::optional<UnitMatch> matchUnit(QuantityKind kind, std::string_view text);
/// The other kind the text names a unit of, as written, or from three letters on with any capitals;
/// a kind that has the unit itself goes before one that only reads it so.
[[nodiscard]] std::optional<QuantityKind> otherKindOf(QuantityKind kind, std::string_view text);

}  // namespace sw::spelling
