// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bolts/strength_class.h"

#include <string>

#include "mechanics/number_checks.h"
#include "units/format.h"

namespace sw::mechanics {

namespace {

constexpr double kAnySize = 0;
constexpr double kSizeSlack = 1e-9;  // m: 5/8 in and 16 mm are far apart

/// Sizes above `above` up to `upTo`, in the unit of the standard; the first row also states the
/// smallest size.
struct Row {
  StrengthClass strengthClass;
  double above;
  double upTo;
  double tensile, yield, proof;
};

using C = StrengthClass;
// MPa and mm, ISO 898-1:2013.
constexpr auto kIso = std::to_array<Row>({
    {C::Iso4x6, kAnySize, 39, 400, 240, 225},
    {C::Iso4x8, kAnySize, 39, 420, 340, 310},
    {C::Iso5x6, kAnySize, 39, 500, 300, 280},
    {C::Iso5x8, kAnySize, 39, 520, 420, 380},
    {C::Iso6x8, kAnySize, 39, 600, 480, 440},
    {C::Iso8x8, kAnySize, 16, 800, 640, 580},
    {C::Iso8x8, 16, 39, 830, 660, 600},
    {C::Iso9x8, kAnySize, 16, 900, 720, 650},
    {C::Iso10x9, kAnySize, 39, 1040, 940, 830},
    {C::Iso12x9, kAnySize, 39, 1220, 1100, 970},
});
// ksi and inches, SAE J429.
constexpr auto kSae = std::to_array<Row>({
    {C::SaeGrade2, kAnySize, 0.75, 74, 57, 55},
    {C::SaeGrade5, kAnySize, 1, 120, 92, 85},
    {C::SaeGrade5, 1, 1.5, 105, 81, 74},
    {C::SaeGrade8, kAnySize, 1.5, 150, 130, 120},
});
constexpr double kSmallestSae = 0.25;

Pressure ksi(double value) {
  return Pressure::fromSi(value * 1000 * factor::kPascalsPerPsi);
}

bool isSae(StrengthClass strengthClass) {
  return strengthClass >= C::SaeGrade2;
}

Result<Strength> notInSize(StrengthClass strengthClass, Length diameter) {
  return fail(ErrorCode::OutOfRange, "bolts.class_not_in_size", "strength_class",
              {{"text", std::string(wordOf(strengthClass))},
               {"found", fullPrecision(inMillimetres(diameter)) + " mm"}});
}

}  // namespace

Result<Strength> strengthOf(StrengthClass strengthClass, Length diameter) {
  if (auto error = NumberChecks().positive("diameter", diameter).error()) {
    return tl::make_unexpected(*error);
  }
  const bool sae = isSae(strengthClass);
  if (sae && diameter.si() < inches(kSmallestSae).si() - kSizeSlack) {
    return notInSize(strengthClass, diameter);
  }
  const auto fits = [&](const Row& row) {
    const auto size = [&](double value) { return (sae ? inches(value) : millimetres(value)).si(); };
    return row.strengthClass == strengthClass && diameter.si() > size(row.above) + kSizeSlack &&
           diameter.si() <= size(row.upTo) + kSizeSlack;
  };
  for (const Row& row : kIso) {
    if (fits(row)) {
      return Strength{megapascals(row.tensile), megapascals(row.yield), megapascals(row.proof)};
    }
  }
  for (const Row& row : kSae) {
    if (fits(row)) return Strength{ksi(row.tensile), ksi(row.yield), ksi(row.proof)};
  }
  return notInSize(strengthClass, diameter);
}

std::optional<NominalStrength> nominalStrength(StrengthClass strengthClass) {
  if (isSae(strengthClass)) return std::nullopt;
  // "10.9": ten hundreds of MPa, and nine tenths of that.
  const std::string_view name = wordOf(strengthClass);
  const std::size_t point = name.find('.');
  const double tensile = 100.0 * std::stoi(std::string(name.substr(0, point)));
  const double ratio = (name[point + 1] - '0') / 10.0;
  return NominalStrength{megapascals(tensile), megapascals(tensile * ratio)};
}

ThreadStandard threadsOf(StrengthClass strengthClass) {
  return isSae(strengthClass) ? ThreadStandard::UnifiedInch : ThreadStandard::IsoMetric;
}

}  // namespace sw::mechanics
