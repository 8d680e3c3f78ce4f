// SPDX-License-Identifier: GPL-3.0-or-later
#include "commands/commands.h"

#include <gtest/gtest.h>

#include <set>

#include "support/program_run.h"

namespace sw::app {
namespace {

TEST(CommandsTable, EveryRowIsCompleteAndItsOptionsAreNotTheCommonOnes) {
  std::set<std::string_view> names;
  for (const Command& command : commands()) {
    EXPECT_TRUE(names.insert(command.name).second) << command.name;
    EXPECT_FALSE(command.summary.empty()) << command.name;
    EXPECT_TRUE(command.usage.starts_with(command.name)) << command.name;
    EXPECT_NE(command.run, nullptr) << command.name;
    std::set<std::string_view> options;
    for (const auto& option : commonOptions()) options.insert(option.name);
    for (const auto& option : command.options) {
      EXPECT_TRUE(options.insert(option.name).second) << command.name << " --" << option.name;
      EXPECT_FALSE(option.help.empty()) << command.name << " --" << option.name;
    }
  }
}

TEST(CommandsTable, HelpOfEveryCommandNamesItsOptions) {
  for (const Command& command : commands()) {
    const auto help = test::runProgram({std::string(command.name), "--help"});
    EXPECT_EQ(help.exitCode, 0);
    EXPECT_EQ(help.err, "");
    for (const auto& option : command.options) {
      EXPECT_NE(help.out.find("--" + std::string(option.name)), std::string::npos);
    }
    EXPECT_NE(test::runProgram({"--help"}).out.find(command.summary), std::string::npos);
  }
}

}  // namespace
}  // namespace sw::app
