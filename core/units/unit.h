// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <span>
#include <string_view>

namespace sw {

/// What a field measures. The words are stored in books and scripts; never rename one.
enum class QuantityKind {
  Length,
  Force,
  Torque,
  Angle,
  Mass,
  Speed,
  Frequency,
  Pressure,
  Duration,
  Volume,
  TemperatureDifference,
  Area,
  Stiffness,
  Unbalance,
  Number,
};

[[nodiscard]] std::string_view word(QuantityKind kind);
[[nodiscard]] std::optional<QuantityKind> quantityKindFromWord(std::string_view word);

/// One unit of the table below; the factors and their sources are in quantity.h. `symbol` is how we
/// write it ("N m", "lbf ft", "km/h"); value_si = value * toSi. Angles in degrees-minutes and
/// affine temperatures are not units of this table.
struct Unit {
  QuantityKind kind;
  std::string_view symbol;
  double toSi;
};

/// All units, in order of preference within a kind (first = the kind's default display unit:
/// mm, N, N m, deg, kg, km/h, Hz, bar, min, l, K, mm2, N/mm, g mm, "").
[[nodiscard]] std::span<const Unit> allUnits();
/// The unit with exactly this symbol within a kind.
[[nodiscard]] std::optional<Unit> findUnit(QuantityKind kind, std::string_view symbol);
[[nodiscard]] const Unit& defaultUnit(QuantityKind kind);

}  // namespace sw
