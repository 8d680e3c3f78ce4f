// SPDX-License-Identifier: GPL-3.0-or-later
// What would come about is what then comes about: every line of a whole job is rehearsed first.
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>

#include "model/entry_json.h"
#include "shop_fixture.h"
#include "workshop/command_json.h"

namespace sw::test {
namespace {

using model::Json;

std::string bytesOf(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

std::vector<std::string> linesOf(const std::string& file) {
  std::ifstream in(std::string(SW_SOURCE_DIR) + "/" + file);
  std::vector<std::string> lines;
  for (std::string line; std::getline(in, line);) {
    if (!line.empty()) lines.push_back(line);
  }
  return lines;
}

std::string textOf(const workshop::Outcome& outcome) {
  Json json = Json::object();
  for (const auto& entry : outcome.entries) json["entries"].push_back(entry.value);
  json["job"] = outcome.job ? outcome.job->value : 0;
  for (const auto& event : outcome.events) {
    Json told = Json::array({event.key});
    for (const auto& [name, value] : event.values) told.push_back(name + "=" + value);
    json["events"].push_back(told);
  }
  return json.dump();
}

std::string textOf(const Error& error) {
  std::string text = error.key + "|" + error.field;
  for (const auto& [name, value] : error.details) text += "|" + name + "=" + value;
  return text;
}

/// How many entries there are, and those from `first` on as exports write them.
std::vector<std::string> entriesOf(const workshop::JobState& job, model::EntryId first) {
  std::vector<std::string> entries{std::to_string(job.entries.size())};
  for (const auto& entry : job.entries) {
    if (entry->id >= first) entries.push_back(model::toJson(*entry).dump());
  }
  return entries;
}

/// What is derived, as far as it can be told in words.
std::vector<std::string> stepsOf(const workshop::JobState& job) {
  std::vector<std::string> steps;
  for (std::size_t i = 0; i < job.steps.size(); ++i) {
    const auto& step = job.steps[i];
    steps.push_back(job.stepName(i) + (step.done() ? " done" : "") +
                    (step.superseded ? " superseded" : ""));
  }
  for (const auto& item : job.ledger) steps.push_back(item.item + std::string(wordOf(item.state)));
  return steps;
}

class Rehearsing : public testing::Test {
 protected:
  /// The shop's clock stands behind every line of the scripts.
  void SetUp() override { shop.clock.set(*parseTimestamp("2031-12-30T08:00+01:00")); }

  Result<workshop::Command> read(const std::string& line) {
    auto json = model::parseJson(line);
    if (!json) return tl::make_unexpected(json.error());
    auto command = workshop::commandFromJson(*json);
    if (!command) return tl::make_unexpected(command.error());
    if (!command->job && job > 0) command->job = job;
    return command;
  }

  /// Rehearses, looks at the book, performs and compares. True where the command was accepted.
  bool both(const std::string& line) {
    const auto command = read(line);
    EXPECT_TRUE(command) << line;
    if (!command) return false;
    const auto next = shop.book->nextEntryId()->value;
    const auto rehearsed = shop.workshop->rehearse(*command);
    EXPECT_EQ(shop.book->nextEntryId()->value, next) << line;
    const auto performed = shop.workshop->perform(*command);
    EXPECT_EQ(rehearsed.has_value(), performed.has_value()) << line;
    if (!performed || !rehearsed) {
      EXPECT_EQ(rehearsed ? "" : textOf(rehearsed.error()),
                performed ? "" : textOf(performed.error()));
      return false;
    }
    EXPECT_EQ(textOf(rehearsed->outcome), textOf(*performed)) << line;
    if (performed->job) job = performed->job->value;
    if (rehearsed->job) {
      const auto now = shop.workshop->job({job});
      EXPECT_TRUE(now);
      EXPECT_EQ(entriesOf(*rehearsed->job, {next}), entriesOf(*now, {next})) << line;
      EXPECT_EQ(stepsOf(*rehearsed->job), stepsOf(*now)) << line;
    }
    return true;
  }

  Shop shop;
  std::int64_t job = 0;
};

TEST_F(Rehearsing, EveryLineOfAJobComesAboutAsRehearsed) {
  for (const std::string& line : linesOf("resources/demo/shop.jsonl")) {
    // Settings are not judged before they are set.
    if (line.find("set_setting") != std::string::npos) {
      shop.ok(line);
    } else {
      EXPECT_TRUE(both(line));
    }
  }
  std::size_t accepted = 0;
  for (const std::string& line : linesOf("tests/data/jobs/complete.jsonl")) {
    if (both(line)) ++accepted;
  }
  EXPECT_GT(accepted, 200U);
  EXPECT_TRUE(shop.workshop->job({job})->closed);
}

TEST_F(Rehearsing, NothingIsWrittenAndTheNextCommandIsJudgedOnTheBook) {
  shop.setUp();
  shop.ok(R"({"do":"start_procedure","procedure":"wheels-off"})");
  job = shop.job;
  const std::string before = bytesOf(shop.path);
  const auto file = std::filesystem::last_write_time(shop.path);
  for (const char* line :
       {R"({"do":"do_step","by":"KL","step":"wheels-off/wheel_off","side":"left"})",
        R"({"do":"set_vehicle","by":"KL","registration":"AB 12","owner":"Mara Quist"})",
        R"({"do":"start_procedure","by":"KL","procedure":"as-found-pull"})",
        R"({"do":"set_setting","by":"KL","key":"shop_name","value":"Elsewhere"})",
        R"({"do":"close","by":"KL","outcome":"closed_without_sign_off","reason":"x"})"}) {
    const auto command = read(line);
    ASSERT_TRUE(command) << line;
    ASSERT_TRUE(shop.workshop->rehearse(*command)) << line;
    EXPECT_EQ(bytesOf(shop.path), before) << line;
  }
  EXPECT_EQ(std::filesystem::last_write_time(shop.path), file);
  const auto state = shop.state();
  EXPECT_TRUE(state.ledger.empty());
  EXPECT_EQ(state.runs.size(), 1U);
  EXPECT_FALSE(state.closed);
  EXPECT_EQ(state.vehicle.fact.owner, "");
}

TEST_F(Rehearsing, ACommandOfTheShopHasNoJob) {
  const auto command = read(R"({"do":"set_person","initials":"KL","name":"Kaya Lindner"})");
  const auto rehearsed = shop.workshop->rehearse(*command);
  ASSERT_TRUE(rehearsed);
  EXPECT_FALSE(rehearsed->job);
  EXPECT_EQ(rehearsed->outcome.entries.size(), 1U);
  EXPECT_TRUE((*shop.workshop->shop())->people().empty());
}

}  // namespace
}  // namespace sw::test
