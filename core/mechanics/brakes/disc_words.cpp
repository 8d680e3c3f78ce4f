// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>
#include <string_view>
#include <utility>

#include "base/words.h"
#include "mechanics/brakes/disc_decision.h"

namespace sw {

template <>
struct Words<mechanics::DiscAction> {
  using E = mechanics::DiscAction;
  static constexpr std::array<std::pair<E, std::string_view>, 5> table{
      {{E::Keep, "keep"},
       {E::CleanAndIndex, "clean_and_index"},
       {E::Resurface, "resurface"},
       {E::Replace, "replace"},
       {E::NotDecided, "not_decided"}}};
};

template <>
struct Words<mechanics::DiscReason> {
  using E = mechanics::DiscReason;
  static constexpr std::array<std::pair<E, std::string_view>, 17> table{
      {{E::Condition, "condition"},
       {E::BelowDiscard, "below_discard"},
       {E::MinimumNotProved, "minimum_not_proved"},
       {E::VariationOutside, "variation_outside"},
       {E::NotFlat, "not_flat"},
       {E::SeatTilted, "seat_tilted"},
       {E::NotMachinable, "not_machinable"},
       {E::MachiningNotProved, "machining_not_proved"},
       {E::MachiningUnknown, "machining_unknown"},
       {E::DifferenceTooLarge, "difference_too_large"},
       {E::DifferenceNotProved, "difference_not_proved"},
       {E::VariationUndecided, "variation_undecided"},
       {E::FlatnessUndecided, "flatness_undecided"},
       {E::RunoutUndecided, "runout_undecided"},
       {E::VariationMissing, "variation_missing"},
       {E::RunoutMissing, "runout_missing"},
       {E::AllWithin, "all_within"}}};
};

}  // namespace sw

namespace sw::mechanics {

std::string_view word(DiscCondition condition) {
  return wordOf(condition);
}
std::string_view word(DiscAction action) {
  return wordOf(action);
}
std::string_view word(DiscReason reason) {
  return wordOf(reason);
}

}  // namespace sw::mechanics
