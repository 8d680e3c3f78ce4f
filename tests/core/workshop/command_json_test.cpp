// SPDX-License-Identifier: GPL-3.0-or-later
#include "workshop/command_json.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace sw::workshop {
namespace {

Result<Command> read(const std::string& text) {
  auto json = model::parseJson(text);
  if (!json) return tl::make_unexpected(json.error());
  return commandFromJson(*json);
}

TEST(CommandJson, ReadsWhereWhoAndWhat) {
  const auto command =
      read(R"({"id":"a7","do":"take_readings","by":"KL","job":4,"step":"as-found-pull/pull_ahead",)"
           R"("side":"left","readings":"17 17.5","instrument":"scale","sealant":"wet"})");
  ASSERT_TRUE(command) << command.error().key;
  EXPECT_EQ(command->id, "a7");
  EXPECT_EQ(command->side, model::Side::Left);
  const auto& take = std::get<TakeReadings>(command->action);
  EXPECT_EQ(take.readings, "17 17.5");
  EXPECT_EQ(take.sealant, model::Sealant::Wet);
  EXPECT_FALSE(take.seal.has_value());
}

TEST(CommandJson, WhatIsWrittenReadsBackTheSame) {
  const std::string text =
      R"({"id":"1","do":"set_spec","by":"KL","registration":"AB 12","key":"wheel_nuts",)"
      R"("type":"torque","value":"108 N m","count":5,"single_use":false})";
  const auto command = read(text);
  ASSERT_TRUE(command);
  const auto again = commandFromJson(toJson(*command));
  ASSERT_TRUE(again);
  EXPECT_EQ(toJson(*again), toJson(*command));
}

TEST(CommandJson, UnknownFieldIsNamed) {
  const auto command = read(R"({"do":"note","text":"x","tex":"y"})");
  ASSERT_FALSE(command);
  EXPECT_EQ(command.error().key, "json.unknown_field");
  EXPECT_EQ(command.error().field, "/tex");
}

TEST(CommandJson, DuplicateFieldIsAnError) {
  const auto command = read(R"({"do":"note","text":"x","text":"y"})");
  ASSERT_FALSE(command);
  EXPECT_EQ(command.error().key, "json.duplicate_key");
}

TEST(CommandJson, MissingFieldIsNamed) {
  const auto command = read(R"({"do":"take_readings","readings":"17"})");
  ASSERT_FALSE(command);
  EXPECT_EQ(command.error().key, "json.missing");
  EXPECT_EQ(command.error().field, "/instrument");
}

TEST(CommandJson, UnknownCommandAndUnknownWordAreErrors) {
  EXPECT_EQ(read(R"({"do":"fly"})").error().key, "workshop.unknown_command");
  EXPECT_EQ(read(R"({"do":"choose_support","support":"bricks"})").error().key, "json.not_one_of");
}

TEST(CommandJson, DescriptionNamesEveryCommandOnce) {
  const auto description = describeCommands();
  std::set<std::string> names;
  for (const auto& command : description["commands"]) {
    EXPECT_TRUE(names.insert(command["do"].get<std::string>()).second);
    EXPECT_FALSE(command["summary"].get<std::string>().empty());
    for (const auto& field : command["fields"]) {
      EXPECT_FALSE(field["meaning"].get<std::string>().empty()) << field["name"];
    }
  }
  EXPECT_EQ(names.size(), std::variant_size_v<Action>);
}

/// The example is what a script would hold: the strict reader takes it, and writes it again.
TEST(CommandJson, EveryCommandHasAnExampleThatReads) {
  const model::Json all = describeCommands();  // outlives the loop over its part
  ASSERT_EQ(all["commands"].size(), std::variant_size_v<Action>);
  for (const auto& described : all["commands"]) {
    const std::string name = described["do"].get<std::string>();
    const std::string example = described["example"].get<std::string>();
    const auto command = read(example);
    ASSERT_TRUE(command) << name << ": " << example;
    EXPECT_EQ(toJson(*command)["do"], name);
    const auto written = model::parseJson(example);
    ASSERT_TRUE(written);
    // The order of fields says nothing.
    EXPECT_EQ(nlohmann::json::parse(toJson(*command).dump()),
              nlohmann::json::parse(written->dump()))
        << name;
  }
}

}  // namespace
}  // namespace sw::workshop
