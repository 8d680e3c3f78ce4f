// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <nlohmann/json.hpp>
#include <set>

#include "procedures/fact_words.h"
#include "shipped.h"

namespace sw::test {
namespace {

using procedures::Procedure;
using procedures::Step;
using procedures::StepKind;

TEST(ShippedFiles, AreReadWithoutAProblem) {
  const auto& library = shippedLibrary();
  for (const Error& error : library.problems()) {
    std::string details;
    for (const auto& [key, value] : error.details) details += key + "=" + value + " ";
    ADD_FAILURE() << error.key << " " << error.field << " " << details;
  }
  EXPECT_EQ(library.procedures().size(), shippedFiles("procedures").size());
  EXPECT_EQ(library.plans().size(), shippedFiles("plans").size());
}

TEST(ShippedFiles, HoldTheProceduresOfTheJob) {
  const std::vector<std::string> wanted{
      "free-checks",      "road-test-before",      "make-safe-and-lift",   "rock-tests",
      "wheels-off",       "caliper-off",           "prepare-to-measure",   "as-found-pull",
      "cap-off-and-pack", "fit-shims-and-pull",    "seal-the-cap",         "refit-swivel",
      "caliper-refit",    "dressed-pull",          "wheels-on-and-down",   "road-test-after",
      "follow-up",        "renew-swivel-bearings", "what-else-to-suspect", "before-it-moves"};
  for (const std::string& id : wanted) {
    EXPECT_NE(shippedLibrary().procedure(id), nullptr) << id;
  }
}

TEST(Steps, WaitForEarlierStepsOfTheirFile) {
  for (const auto& [name, json] : shippedFiles("procedures")) {
    std::set<std::string> earlier;
    for (const auto& step : json["steps"]) {
      for (const auto& need : step.value("needs", nlohmann::json::array())) {
        EXPECT_TRUE(earlier.contains(need)) << name << "/" << step["id"] << " needs " << need;
      }
      EXPECT_TRUE(earlier.insert(step["id"]).second) << name << " has " << step["id"] << " twice";
    }
  }
}

TEST(Steps, ObservedFactsAreAskedForInTheJob) {
  std::map<std::string, std::set<std::string>> words;
  eachStep([&](const Procedure&, const Step& step) {
    for (const auto& observe : step.observe) {
      for (const auto& choice : observe.choices)
        words["observed." + observe.key].insert(choice.word);
    }
  });
  eachStep([&](const Procedure& procedure, const Step& step) {
    for (const auto& [fact, wanted] : step.when) {
      if (!procedures::isObserved(fact)) continue;
      for (const std::string& word : wanted) {
        EXPECT_TRUE(words[fact].contains(word)) << placeOf(procedure, step) << " " << fact << word;
      }
    }
  });
}

TEST(Steps, ObservationsOfOneKeyOfferTheSameWords) {
  std::map<std::string, std::set<std::string>> words;
  eachStep([&](const Procedure& procedure, const Step& step) {
    for (const auto& observe : step.observe) {
      std::set<std::string> offered;
      for (const auto& choice : observe.choices) offered.insert(choice.word);
      const auto [it, first] = words.emplace(observe.key, offered);
      EXPECT_EQ(it->second, offered) << placeOf(procedure, step) << " " << observe.key;
    }
  });
}

// Common practice, no source: dented, gritty or burnt bearings are renewed, not shimmed; a hub
// that moves by itself or has play has no preload.
TEST(Steps, WearAndLoosenessAreToldApart) {
  std::map<std::string, std::string> means;
  eachStep([&](const Procedure&, const Step& step) {
    for (const auto& observe : step.observe) {
      for (const auto& choice : observe.choices)
        means[observe.key + "." + choice.word] = choice.means;
    }
  });
  for (const char* worn : {"feel.gritty", "feel.notchy", "peak_ahead.peak", "peak_ahead.notch",
                           "bearing.dents", "bearing.flaked", "bearing.rust_or_blue"}) {
    EXPECT_EQ(means[worn], "worn") << worn;
  }
  for (const char* loose : {"stays_put.swings", "end_float_felt.play"}) {
    EXPECT_EQ(means[loose], "loose") << loose;
  }
  for (const char* good : {"feel.smooth", "peak_ahead.even", "stays_put.stays"}) {
    EXPECT_TRUE(means.contains(good)) << good;
    EXPECT_EQ(means[good], "") << good;
  }
}

TEST(Steps, TorqueNamesAnItemThatComesOff) {
  std::set<std::string> fastened;
  eachStep([&](const Procedure&, const Step& step) {
    for (const auto& effect : step.ledger) {
      if (effect.fastened) fastened.insert(effect.item);
    }
  });
  eachStep([&](const Procedure& procedure, const Step& step) {
    if (!step.torque) return;
    EXPECT_TRUE(fastened.contains(step.torque->item)) << placeOf(procedure, step);
  });
}

TEST(Steps, SpecSheetLinesAreTheKnownOnes) {
  const std::set<std::string> known{"swivel.starting_force",
                                    "swivel.dressed_pull",
                                    "swivel.end_float",
                                    "tyre.front_pressure",
                                    "tyre.radial_runout",
                                    "tyre.lateral_runout",
                                    "rim.radial_runout",
                                    "rim.lateral_runout",
                                    "caster.angle",
                                    "wheel_bearing.end_float",
                                    "wheel_bearing.preload_pull",
                                    "swivel_cap_bolts",
                                    "lower_swivel_cap_bolts",
                                    "steering_arm_nuts",
                                    "caliper_bolts",
                                    "wheel_nuts",
                                    "track_rod_nut",
                                    "drag_link_nut",
                                    "damper_nut",
                                    "seal_retainer_bolts",
                                    "stub_axle_bolts",
                                    "hub_nut",
                                    "drive_flange_bolts",
                                    "hub_unit_bolts",
                                    "disc.min_thickness",
                                    "disc.runout",
                                    "disc_bolts",
                                    "toe.total",
                                    "adjuster_clamp_bolts",
                                    "arm_axle_bolts",
                                    "arm_pivot_nuts",
                                    "panhard_bolts"};
  std::set<std::string> used;
  eachStep([&](const Procedure&, const Step& step) {
    if (step.measure && !step.measure->limit.empty()) used.insert(step.measure->limit);
    if (step.torque) used.insert(step.torque->fasteners);
  });
  EXPECT_EQ(used, known);
}

// Pulls of different states are never judged by the same limit: seal, rods and damper drag, a peak
// shows off centre, and the first movement takes more force than the steady one.
TEST(Steps, OneLimitJudgesOneStateOfTheHub) {
  std::map<std::string, std::set<std::string>> states;
  eachStep([&](const Procedure& procedure, const Step& step) {
    if (!step.measure || !step.measure->state) return;
    EXPECT_EQ(step.measure->quantity, QuantityKind::Force) << placeOf(procedure, step);
    if (step.measure->limit.empty()) return;
    auto state = *step.measure->state;
    state.sealant = model::Sealant::None;  // the joint does not turn: no drag in either state
    state.grease = model::Grease::Fresh;   // what the figure was given for is not known
    std::string words;
    model::PullState::fields(
        state, [&](std::string_view, auto& value) { words += std::string(wordOf(value)) + " "; });
    states[step.measure->limit].insert(words);
  });
  EXPECT_EQ(states.size(), 2U);
  for (const auto& [limit, seen] : states) EXPECT_EQ(seen.size(), 1U) << limit;
}

TEST(Steps, TheRoundIsDrivenByOneProvedPull) {
  std::vector<std::string> driving;
  eachStep([&](const Procedure& procedure, const Step& step) {
    if (!step.measure || !step.measure->drivesRounds) return;
    driving.push_back(placeOf(procedure, step));
    EXPECT_TRUE(step.measure->safety);
    EXPECT_EQ(step.measure->limit, "swivel.starting_force");
    EXPECT_EQ(step.measure->planned, 3);
    EXPECT_EQ(step.measure->settling, 1);
  });
  EXPECT_EQ(driving, std::vector<std::string>{"fit-shims-and-pull/pull"});
}

// FAA AC 43.13-1B 7-38 and 7-40: tighten on to the next slot, never back off; a new pin each time.
TEST(Steps, CastellatedNutsAreLockedWithANewPin) {
  int nuts = 0;
  for (const Procedure& procedure : shippedLibrary().procedures()) {
    for (std::size_t i = 0; i < procedure.steps.size(); ++i) {
      const Step& step = procedure.steps[i];
      if (!step.torque || !step.torque->castellated) continue;
      ++nuts;
      EXPECT_NE(step.text.find("Never back off"), std::string::npos) << step.id;
      ASSERT_LT(i + 1, procedure.steps.size());
      const Step& pin = procedure.steps[i + 1];
      ASSERT_EQ(pin.parts.size(), 1U) << pin.id;
      EXPECT_TRUE(pin.parts[0].singleUse);
      EXPECT_EQ(pin.side, step.side);
      EXPECT_EQ(pin.when, step.when);
    }
  }
  EXPECT_EQ(nuts, 5);  // two at refitting, three where the joints are renewed
}

TEST(Steps, SingleUsePartsAreTakenOnceWhereTheyAreFitted) {
  std::map<std::string, std::string> takenAt;
  eachStep([&](const Procedure& procedure, const Step& step) {
    for (const auto& part : step.parts) {
      if (!part.singleUse) continue;
      const auto [it, first] = takenAt.emplace(part.key, placeOf(procedure, step));
      EXPECT_TRUE(first) << part.key << " at " << it->second << " and " << placeOf(procedure, step);
      EXPECT_NE(step.kind, StepKind::Remove) << placeOf(procedure, step);
    }
  });
  EXPECT_TRUE(takenAt.contains("split_pin_track_rod"));
  EXPECT_TRUE(takenAt.contains("split_pin_drag_link"));
}

TEST(Steps, EveryStepSaysHowAndHowLong) {
  eachStep([](const Procedure& procedure, const Step& step) {
    EXPECT_FALSE(step.text.empty()) << placeOf(procedure, step);
    EXPECT_TRUE(step.minutes > 0 || step.waitMinutes) << placeOf(procedure, step);
    if (step.needsTwo) {
      EXPECT_FALSE(step.onePerson.empty()) << placeOf(procedure, step);
    }
  });
}

}  // namespace
}  // namespace sw::test
