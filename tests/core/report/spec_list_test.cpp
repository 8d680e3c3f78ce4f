// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/spec_list.h"

#include <gmock/gmock.h>
#include <nlohmann/json.hpp>
#include <set>

#include "job_fixture.h"
#include "phrasing/names.h"

namespace sw::report {
namespace {

using testing::JobFixture;
using workshop::SpecNeed;

/// The keys as they stand in the files, and those the workshop reads itself.
std::set<std::string> keysAskedFor() {
  std::set<std::string> keys{
      std::string(workshop::kShimSizesKey), std::string(workshop::kShimMaxPackKey),
      std::string(workshop::kShimMaxCountKey), std::string(workshop::kWheelNutsKey)};
  const auto library = procedures::Library::load(std::string(SW_SOURCE_DIR) + "/resources");
  for (const auto& procedure : library.procedures()) {
    for (const auto& step : procedure.steps) {
      if (step.measure && !step.measure->limit.empty()) keys.insert(step.measure->limit);
      if (step.torque) keys.insert(step.torque->fasteners);
    }
  }
  return keys;
}

TEST(SpecList, EveryKeyAProcedureAsksForHasItsOwnName) {
  const auto keys = keysAskedFor();
  EXPECT_GT(keys.size(), 15U);
  std::set<std::string> names;
  for (const std::string& key : keys) {
    const std::string name = phrasing::specKeyName(key).toStdString();
    EXPECT_NE(name, key);
    EXPECT_EQ(name.find_first_of("_."), std::string::npos) << name;
    EXPECT_TRUE(names.insert(name).second) << key << ": " << name;
  }
}

SpecNeed need(const std::string& key, model::SpecKind type) {
  SpecNeed one;
  one.key = key;
  one.type = type;
  one.procedures = {"First", "Second"};
  return one;
}

TEST(SpecList, WhatIsThereAndWhatIsNot) {
  const JobFixture fixture;
  auto force = need("swivel.starting_force", model::SpecKind::Limit);
  force.state = workshop::SpecLineState::Complete;
  auto bolts = need("caliper_bolts", model::SpecKind::Torque);
  bolts.state = workshop::SpecLineState::Incomplete;
  bolts.lacks = {"figure", "count"};
  auto pack = need("shims.max_pack", model::SpecKind::Value);
  pack.instead = "shims.max_count";
  auto most = need("shims.max_count", model::SpecKind::Value);
  most.instead = "shims.max_pack";
  const auto rows = specRows({force, bolts, pack, most}, fixture.shopState(), {1});
  ASSERT_EQ(rows.size(), 4U);
  EXPECT_EQ(rows[0].name, "swivel starting force, hub bare");
  EXPECT_NE(rows[0].onFile, "");
  EXPECT_EQ(rows[0].missing, "");
  EXPECT_EQ(rows[1].missing, "no figure, number of fasteners");
  EXPECT_EQ(rows[2].missing, "not on file (or most shims in a pack)");
  most.state = workshop::SpecLineState::Complete;
  const auto with = specRows({force, bolts, pack, most}, fixture.shopState(), {1});
  EXPECT_EQ(with[2].missing, "");  // the other bound does as well
  const auto json = toJson(std::span<const SpecRow>(with));
  EXPECT_EQ(json[1]["state"], "incomplete");
  EXPECT_EQ(json[1]["to_enter"], true);
  EXPECT_EQ(json[2]["to_enter"], false);
  EXPECT_EQ(json[2]["state"], "missing");
  EXPECT_THAT(toText(with), ::testing::HasSubstr("First; Second"));
}

}  // namespace
}  // namespace sw::report
