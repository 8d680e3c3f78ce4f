// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/brakes/decision_texts.h"

#include <algorithm>

#include "compute/brakes/gauge_input.h"

namespace sw::compute {

namespace {

using mechanics::DiscAction;
using mechanics::DiscReason;

std::string_view plainReason(DiscReason reason) {
  switch (reason) {
    case DiscReason::Condition:
      return "cracks, blue spots or heavy corrosion";
    case DiscReason::BelowDiscard:
      return "the minimum is below discard";
    case DiscReason::MinimumNotProved:
      return "the minimum is not proved above discard";
    case DiscReason::VariationOutside:
      return "the thickness varies more than allowed";
    case DiscReason::NotFlat:
      return "the disc is not flat: runout without tilt over the limit";
    case DiscReason::SeatTilted:
      return "the total runout is over the limit";
    case DiscReason::NotMachinable:
      return "after machining it would be below the machining limit";
    case DiscReason::MachiningNotProved:
      return "after machining it is not proved above the machining limit";
    case DiscReason::MachiningUnknown:
      return "machine_to or cut_per_side is missing";
    case DiscReason::DifferenceTooLarge:
      return "left and right would differ too much: cut the thicker one further";
    case DiscReason::DifferenceNotProved:
      return "left and right are not proved alike after machining";
    case DiscReason::VariationUndecided:
      return "the variation is neither proved within its limit nor outside";
    case DiscReason::FlatnessUndecided:
      return "the runout without tilt is neither proved within the limit nor outside";
    case DiscReason::RunoutUndecided:
      return "the total runout is neither proved within the limit nor outside";
    case DiscReason::VariationMissing:
      return "the variation was not measured";
    case DiscReason::RunoutMissing:
      return "the runout was not measured, or not split";
    case DiscReason::AllWithin:
      return "all that was judged is proved within its limit";
  }
  return {};
}

std::string_view nextStep(DiscAction action) {
  switch (action) {
    case DiscAction::Keep:
      return "Keep both, and measure again at the next service.";
    case DiscAction::CleanAndIndex:
      return "Clean hub and disc seats to bright metal, turn the disc on the hub to its best "
             "position and read again; then look at hub and bearing.";
    case DiscAction::Resurface:
      return "Cut both sides of both discs alike, then measure thickness and runout again; new "
             "pads.";
    case DiscAction::Replace:
      return "Renew both discs of the axle and their pads.";
    case DiscAction::NotDecided:
      return "Not to be taken as good: measure again, finer or more often, or supply what is "
             "missing.";
  }
  return {};
}

/// Discs that may be used but not machined.
bool betweenLimits(const mechanics::DiscDecisionInput& input,
                   const mechanics::DiscDecision& decision) {
  if (!input.limits.machineTo) return false;
  return std::any_of(decision.discs.begin(), decision.discs.end(), [&](const auto& disc) {
    return disc.minimum.value < *input.limits.machineTo;
  });
}

}  // namespace

std::string reasonText(const mechanics::DiscFinding& finding, const DecisionInput& input) {
  std::string text;
  if (finding.disc) text = input.sides[*finding.disc] + ": ";
  text += plainReason(finding.reason);
  if (finding.value && finding.limit) {
    text += ", " + shown(*finding.value) + " against " + shown(*finding.limit);
  }
  return text;
}

std::vector<Note> decisionNotes(const DecisionInput& input,
                                const mechanics::DiscDecision& decision) {
  std::vector<Note> notes{{"next", std::string(nextStep(decision.action))}};
  const auto& limits = input.decision.limits;
  if (!limits.variation) {
    notes.push_back({"variation_not_judged", "Variation is not judged: no limit was given."});
  }
  if (!limits.runout) {
    notes.push_back({"runout_not_judged", "Runout is not judged: no limit was given."});
  }
  if (decision.action == DiscAction::Keep && betweenLimits(input.decision, decision)) {
    notes.push_back({"not_machinable_later",
                     "Thinner than the machining limit: it may be used "
                     "down to discard, not machined."});
  }
  const bool comesOff =
      decision.action == DiscAction::Resurface || decision.action == DiscAction::Replace;
  if (input.behindHub && comesOff) {
    notes.push_back({"hub_comes_off",
                     "The disc is bolted behind the hub: the hub comes off with it. Allow more "
                     "time, fit a new seal, and set the wheel bearing anew."});
  }
  notes.push_back({"pair", "The two discs of an axle share one fate: unequal discs pull."});
  return notes;
}

}  // namespace sw::compute
