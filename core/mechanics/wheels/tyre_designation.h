// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "units/quantity.h"

// METHOD CARD: reading the size marked on a tyre
// Formula: none, a grammar. [P|LT] size structure rim [marks | plies PR | LI[/LI][speed symbol]]...
//   size: 195/80 (width in mm and aspect in %), 205 (width in mm alone), 31x10.50 (diameter and
//   width in inches), 7.50 (width in inches alone); structure: R, ZR, RF, SR, HR, VR, -, D, B; rim
//   code in inches; marks: C, CP, LT, XL, RF, M+S, TT, TL and their longer spellings.
// Source: forms of ISO 4000-1, UN R30 and UN R54 (from memory); common practice for the spellings.
// Assumptions: three digits without a decimal mark are millimetres, anything smaller is inches. SR
//   and HR carry the speed symbol; ZR and VR name no highest speed (from memory).
// When not to use: rims in millimetres and markings that are not of these forms are refused, never
//   guessed at.
// Valid range: at most 60 characters; width 105 to 455 mm in steps of 10 ending in 5, aspect 20 to
//   100 %; flotation 20 to 60 in by 5 to 25 in and higher than its rim; inch width 3 to 19; rim
//   code 8 to 30 in whole or half inches; load index 40 to 200; plies 2 to 40.
// Degenerate cases: any other text, and any part of a text that is not understood, is an error.
// Accuracy: exact.
// Reference test: tests/core/mechanics/wheels/tyre_designation_test.cpp.

namespace sw::mechanics {

enum class SizeForm { MetricWithAspect, MetricWithoutAspect, Flotation, InchWidth };
[[nodiscard]] std::string_view word(SizeForm form);

enum class TyreConstruction { Radial, Diagonal, BiasBelted };
[[nodiscard]] std::string_view word(TyreConstruction construction);

struct TyreDesignation {
  SizeForm form = SizeForm::MetricWithAspect;
  TyreConstruction construction = TyreConstruction::Radial;
  Length sectionWidth;                    ///< nominal
  std::optional<double> aspect;           ///< percent, where it is marked
  std::optional<Length> overallDiameter;  ///< where it is marked: flotation
  double rimCode = 0;                     ///< inches
  std::optional<int> loadIndex;           ///< single fitting
  std::optional<int> loadIndexDual;
  std::optional<char> speedSymbol;
  std::optional<int> plyRating;
  std::vector<std::string> marks;  ///< "LT", "XL", ... in one spelling each, as they come
};

/// Errors: InvalidInput "tyre.not_understood" (details: text, part).
[[nodiscard]] Result<TyreDesignation> parseTyreDesignation(std::string_view text);

}  // namespace sw::mechanics
