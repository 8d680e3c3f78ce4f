// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <string_view>
#include <utility>

#include "base/result.h"
#include "base/words.h"
#include "mechanics/bolts/thread.h"

// METHOD CARD: the strength that the marking of a bolt promises
// Values: minimum tensile strength, yield strength (lower yield for 4.6 and 5.6, Rpf for 4.8, 5.8
//   and 6.8, Rp0.2 from 8.8 up) and proof stress. Load = stress x stress area.
// Source: ISO 898-1:2013, mechanical properties; SAE J429 grades 2, 5 and 8 (ksi, exact factor).
// Trap: the name of a class gives nominal values (10.9: 1000 and 900 MPa), the standard's minima
//   are other ones (1040 and 940). 8.8 splits above 16 mm; structural bolting splits at M12.
// Valid range: ISO up to 39 mm, 9.8 up to 16 mm; SAE grade 2 from 1/4 to 3/4 in, grade 5 to
//   1-1/2 in with a split above 1 in, grade 8 to 1-1/2 in.
// Assumptions: bolt as marked, unworn, at room temperature; the nut and the thread in the part are
//   at least as strong.
// When not to use: stainless bolts, studs without marking, weakened or waisted shanks.
// Reference test: tests/core/mechanics/bolts/strength_class_test.cpp.

namespace sw::mechanics {

enum class StrengthClass {
  Iso4x6,
  Iso4x8,
  Iso5x6,
  Iso5x8,
  Iso6x8,
  Iso8x8,
  Iso9x8,
  Iso10x9,
  Iso12x9,
  SaeGrade2,
  SaeGrade5,
  SaeGrade8
};

struct Strength {
  Pressure tensile;  ///< minimum Rm
  Pressure yield;    ///< minimum
  Pressure proof;    ///< Sp
};
/// What the name of an ISO class says, which is not what is guaranteed.
struct NominalStrength {
  Pressure tensile;
  Pressure yield;
};

/// Errors: OutOfRange "bolts.class_not_in_size" (details: text, found); "measure.not_positive".
[[nodiscard]] Result<Strength> strengthOf(StrengthClass strengthClass, Length diameter);
/// Empty for SAE grades, whose numbers are no strengths.
[[nodiscard]] std::optional<NominalStrength> nominalStrength(StrengthClass strengthClass);
/// The standard whose threads the class is made for.
[[nodiscard]] ThreadStandard threadsOf(StrengthClass strengthClass);

[[nodiscard]] constexpr Force loadAt(Pressure stress, Area area) {
  return Force::fromSi(stress.si() * area.si());
}
[[nodiscard]] constexpr Pressure megapascals(double value) {
  return Pressure::fromSi(value * 1e6);
}
[[nodiscard]] constexpr double inMegapascals(Pressure value) {
  return value.si() / 1e6;
}

}  // namespace sw::mechanics

namespace sw {

template <>
struct Words<mechanics::StrengthClass> {
  using E = mechanics::StrengthClass;
  static constexpr std::array<std::pair<E, std::string_view>, 12> table{
      {{E::Iso4x6, "4.6"},
       {E::Iso4x8, "4.8"},
       {E::Iso5x6, "5.6"},
       {E::Iso5x8, "5.8"},
       {E::Iso6x8, "6.8"},
       {E::Iso8x8, "8.8"},
       {E::Iso9x8, "9.8"},
       {E::Iso10x9, "10.9"},
       {E::Iso12x9, "12.9"},
       {E::SaeGrade2, "grade_2"},
       {E::SaeGrade5, "grade_5"},
       {E::SaeGrade8, "grade_8"}}};
};

}  // namespace sw
