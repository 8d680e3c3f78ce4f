// SPDX-License-Identifier: GPL-3.0-or-later
#include "workshop/spec_needs.h"

#include <gmock/gmock.h>
#include <algorithm>
#include <filesystem>
#include <fstream>
#include <regex>
#include <set>
#include <sstream>

#include "shop_fixture.h"

namespace sw::test {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;
using workshop::SpecLineState;
using workshop::SpecNeed;

const SpecNeed* find(const std::vector<SpecNeed>& needs, const std::string& key) {
  const auto found = std::find_if(needs.begin(), needs.end(),
                                  [&](const SpecNeed& need) { return need.key == key; });
  return found == needs.end() ? nullptr : &*found;
}

std::set<std::string> keysOf(const std::vector<SpecNeed>& needs) {
  std::set<std::string> keys;
  for (const SpecNeed& need : needs) EXPECT_TRUE(keys.insert(need.key).second) << need.key;
  return keys;
}

/// A shop whose vehicle AB 12 has a full sheet but for tyre pressure, preload pull and the like.
class SpecNeeds : public testing::Test {
 protected:
  void SetUp() override { shop.setUp(); }

  std::vector<SpecNeed> ofPlan(const std::string& plan, const std::string& plate = "AB 12") {
    const auto* state = *shop.workshop->shop();
    const auto* vehicle = state->vehicleByRegistration(plate);
    const auto needs = workshop::specNeedsOf(shop.library, plan, *state, vehicle->fact.vehicle);
    EXPECT_TRUE(needs) << needs.error().key;
    return needs ? *needs : std::vector<SpecNeed>{};
  }
  SpecNeed need(const std::string& key) {
    const auto needs = ofPlan("swivel-preload");
    const SpecNeed* found = find(needs, key);
    EXPECT_NE(found, nullptr) << key;
    return found != nullptr ? *found : SpecNeed{};
  }
  bool isSatisfied(const std::string& key) {
    const auto needs = ofPlan("swivel-preload");
    return workshop::satisfied(*find(needs, key), needs);
  }
  void withdraw(const std::string& line) {
    shop.ok(R"({"do":"set_spec","registration":"AB 12","withdrawn":true,)" + line + "}");
  }

  Shop shop;
};

// Read off the files of the plan: free-checks, as-found-pull, fit-shims-and-pull, seal-the-cap,
// refit-swivel, caliper-refit, dressed-pull, wheels-on-and-down.
TEST_F(SpecNeeds, DiscsReadRoundTheTurnNeedTheirVariation) {
  const auto needs = ofPlan("brake-disc-check");
  const SpecNeed* variation = find(needs, "disc.thickness_variation");
  ASSERT_NE(variation, nullptr);
  EXPECT_EQ(variation->type, model::SpecKind::Limit);
  EXPECT_EQ(variation->quantity, QuantityKind::Length);
  EXPECT_EQ(variation->procedures, std::vector<std::string>{"Check the brake discs"});
  // Whether a disc may be machined is the documentation's to say.
  EXPECT_EQ(find(needs, "disc.machine_to"), nullptr);
}

TEST_F(SpecNeeds, TheWholeJobNeedsTheseLines) {
  EXPECT_THAT(
      keysOf(ofPlan("swivel-preload")),
      testing::UnorderedElementsAre(
          "tyre.front_pressure", "swivel.starting_force", "swivel.end_float", "swivel.dressed_pull",
          "swivel_cap_bolts", "caliper_bolts", "track_rod_nut", "drag_link_nut", "damper_nut",
          "seal_retainer_bolts", "wheel_nuts", "shims.sizes", "shims.max_pack", "shims.max_count"));
}

TEST_F(SpecNeeds, AWheelSwapNeedsTheWheelNutsAlone) {
  const auto needs = ofPlan("wheel-swap-check");
  EXPECT_THAT(keysOf(needs), testing::Contains("wheel_nuts"));
  EXPECT_EQ(find(needs, "swivel.starting_force"), nullptr);
  EXPECT_EQ(find(needs, "shims.sizes"), nullptr);
}

TEST_F(SpecNeeds, TheArrangementDecidesWhatIsAskedFor) {
  // The fixture's vehicle has its shims at the top under a plain cap.
  EXPECT_EQ(find(ofPlan("swivel-preload"), "lower_swivel_cap_bolts"), nullptr);
  EXPECT_EQ(find(ofPlan("swivel-preload"), "steering_arm_nuts"), nullptr);
  shop.ok(R"({"do":"set_vehicle","registration":"AB 12","shim_ends":"bottom"})");
  EXPECT_NE(find(ofPlan("swivel-preload"), "lower_swivel_cap_bolts"), nullptr);
  EXPECT_EQ(find(ofPlan("swivel-preload"), "swivel_cap_bolts"), nullptr);
  shop.ok(R"({"do":"set_vehicle","registration":"AB 12","shim_ends":"top",)"
          R"("steering_arm_on_cap":"yes"})");
  EXPECT_NE(find(ofPlan("swivel-preload"), "steering_arm_nuts"), nullptr);
  // Not known yet: asked for, since it may be needed.
  shop.ok(R"({"do":"set_vehicle","registration":"NEW 1"})");
  EXPECT_NE(find(ofPlan("swivel-preload", "NEW 1"), "lower_swivel_cap_bolts"), nullptr);
  for (const SpecNeed& need : ofPlan("swivel-preload", "NEW 1")) {
    EXPECT_EQ(need.state, SpecLineState::Missing) << need.key;
  }
}

TEST_F(SpecNeeds, KindsAndTitles) {
  const auto force = need("swivel.starting_force");
  EXPECT_EQ(force.type, model::SpecKind::Limit);
  EXPECT_EQ(force.quantity, QuantityKind::Force);
  EXPECT_THAT(force.procedures,
              ElementsAre("As-found pull, feel and end float", "Fit a shim pack and pull"));
  EXPECT_EQ(need("swivel.end_float").quantity, QuantityKind::Length);
  EXPECT_EQ(need("wheel_nuts").type, model::SpecKind::Torque);
  EXPECT_EQ(need("wheel_nuts").quantity, QuantityKind::Torque);
  EXPECT_EQ(need("swivel_cap_bolts").group, "upper swivel cap bolts");
  EXPECT_EQ(need("shims.sizes").type, model::SpecKind::Text);
  EXPECT_FALSE(need("shims.sizes").quantity);
  EXPECT_EQ(need("shims.max_count").quantity, QuantityKind::Number);
  EXPECT_THAT(need("shims.sizes").procedures, ElementsAre("Fit a shim pack and pull"));
}

TEST_F(SpecNeeds, WhatIsOnFileIsSeen) {
  EXPECT_EQ(need("swivel.starting_force").state, SpecLineState::Complete);
  EXPECT_EQ(need("tyre.front_pressure").state, SpecLineState::Missing);
  EXPECT_FALSE(isSatisfied("tyre.front_pressure"));
  EXPECT_FALSE(need("swivel.starting_force").sourced);
  shop.spec(R"("key":"swivel.starting_force","type":"limit","source":"own figures")");
  EXPECT_TRUE(need("swivel.starting_force").sourced);
  withdraw(R"("key":"swivel.starting_force","type":"limit")");
  EXPECT_EQ(need("swivel.starting_force").state, SpecLineState::Missing);
}

TEST_F(SpecNeeds, ATorqueNeedsItsCount) {
  EXPECT_EQ(need("caliper_bolts").state, SpecLineState::Complete);
  withdraw(R"("key":"caliper_bolts","type":"torque")");
  shop.spec(R"("key":"caliper_bolts","type":"torque","value":"79 N m")");
  EXPECT_EQ(need("caliper_bolts").state, SpecLineState::Incomplete);
  EXPECT_THAT(need("caliper_bolts").lacks, ElementsAre("count"));
  shop.spec(R"("key":"caliper_bolts","type":"torque","count":2)");
  EXPECT_EQ(need("caliper_bolts").state, SpecLineState::Complete);
  EXPECT_THAT(need("caliper_bolts").lacks, IsEmpty());
}

TEST_F(SpecNeeds, ALineOfAnotherQuantityDoesNotDo) {
  withdraw(R"("key":"swivel.end_float","type":"limit")");
  shop.spec(R"("key":"swivel.end_float","type":"limit","max":"3 N")");
  EXPECT_THAT(need("swivel.end_float").lacks, ElementsAre("kind"));
}

TEST_F(SpecNeeds, SizesMustBeReadable) {
  shop.spec(R"("key":"shims.sizes","type":"text","text":"see the drawer")");
  EXPECT_THAT(need("shims.sizes").lacks, ElementsAre("sizes"));
}

// runs.cpp reckons with either bound of a pack; with neither it reckons no pack.
TEST_F(SpecNeeds, OneBoundOfAPackIsEnough) {
  withdraw(R"("key":"shims.max_pack","type":"value")");
  EXPECT_EQ(need("shims.max_pack").state, SpecLineState::Missing);
  EXPECT_TRUE(isSatisfied("shims.max_pack"));
  withdraw(R"("key":"shims.max_count","type":"value")");
  EXPECT_FALSE(isSatisfied("shims.max_pack"));
  EXPECT_FALSE(isSatisfied("shims.max_count"));
}

TEST_F(SpecNeeds, AJobNeedsWhatItsOwnStepsNeed) {
  shop.ok(R"({"do":"start_procedure","procedure":"caliper-refit"})");
  const auto state = shop.state();
  const auto needs = workshop::specNeedsOf(state, **shop.workshop->shop());
  EXPECT_THAT(keysOf(needs), testing::Contains("caliper_bolts"));
  EXPECT_EQ(find(needs, "swivel.starting_force"), nullptr);
  EXPECT_EQ(find(needs, "caliper_bolts")->state, SpecLineState::Complete);
}

// dressed-pull.json has a pull for wet, cured and no sealant, chosen by what is seen there.
TEST_F(SpecNeeds, WhatAnObservationWillDecideIsAskedForBefore) {
  shop.ok(R"({"do":"start_procedure","procedure":"dressed-pull"})");
  const auto& state = **shop.workshop->shop();
  const auto needs = workshop::specNeedsOf(shop.state(), state);
  EXPECT_THAT(keysOf(needs), ElementsAre("swivel.dressed_pull"));
  EXPECT_EQ(needs.front().state, SpecLineState::Complete);
}

TEST_F(SpecNeeds, WhatIsNotThereIsAnError) {
  const auto& state = **shop.workshop->shop();
  const auto noPlan = workshop::specNeedsOf(shop.library, "no-such-plan", state, {1});
  ASSERT_FALSE(noPlan);
  EXPECT_EQ(noPlan.error().key, "workshop.no_plan");
  const auto noVehicle = workshop::specNeedsOf(shop.library, "swivel-preload", state, {77});
  ASSERT_FALSE(noVehicle);
  EXPECT_EQ(noVehicle.error().key, "workshop.no_vehicle");
}

/// Whoever reads another line of the sheet by a fixed key must name it in spec_needs.h.
TEST(SpecNeedsSources, TheWorkshopReadsNoOtherLineByItsKey) {
  const std::regex read(R"rx(spec\([^;"]*"([a-z_.]+)"\))rx");
  EXPECT_TRUE(std::regex_search(std::string(R"(shop.spec(vehicle, "a.key"))"), read));
  std::size_t files = 0;
  for (const auto& file : std::filesystem::directory_iterator(std::filesystem::path(SW_SOURCE_DIR) /
                                                              "core" / "workshop")) {
    std::stringstream text;
    text << std::ifstream(file.path()).rdbuf();
    std::smatch found;
    const std::string content = text.str();
    EXPECT_FALSE(std::regex_search(content, found, read))
        << file.path().filename() << ": " << found[1];
    ++files;
  }
  EXPECT_GT(files, 20U);
}

}  // namespace
}  // namespace sw::test
