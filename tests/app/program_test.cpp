// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <array>
#include <ostream>
#include <sstream>

#include "cli/run.h"
#include "support/program_run.h"

namespace sw::app {
namespace {

/// Says what it was given, to see what reaches a command.
int echo(CommandContext& context) {
  if (context.arguments.has("fail")) {
    return context.fail({ErrorCode::BookLocked, "book.locked", {}, {}});
  }
  context.streams.out << toIso(context.clock.now()) << ' ' << context.seed.value_or(0) << '\n';
  return 1;
}

constexpr std::array kOptions{OptionSpec{"fail", "", "end with an error"}};

struct EchoRun {
  int exitCode = -1;
  std::string out;
  std::string err;
};

EchoRun runEcho(const std::vector<std::string>& arguments, bool deaf = false) {
  const std::array table{Command{.name = "echo",
                                 .summary = "say it",
                                 .usage = "echo [--fail]",
                                 .details = {},
                                 .options = kOptions,
                                 .run = echo}};
  std::istringstream in;
  std::ostringstream out;
  std::ostringstream err;
  if (deaf) out.setstate(std::ios::badbit);
  const ManualClock clock(Timestamp{1000, 0});
  const int code = sw::app::runProgram(arguments, table, {in, out, err}, clock);
  return {code, out.str(), err.str()};
}

TEST(Program, HandsOnTheCommandsOwnNumber) {
  const EchoRun run = runEcho({"echo"});
  EXPECT_EQ(run.exitCode, 1);
  EXPECT_EQ(run.out, "1970-01-01T00:00:01.000+00:00 0\n");
}

TEST(Program, TimeAndSeedAreWhatWasAsked) {
  const EchoRun run =
      runEcho({"--seed", "18446744073709551615", "echo", "--now", "2031-04-05T10:20:30+02:00"});
  EXPECT_EQ(run.out, "2031-04-05T10:20:30.000+02:00 18446744073709551615\n");
}

TEST(Program, BadTimeSeedAndErrorsAreUsage) {
  EXPECT_EQ(runEcho({"echo", "--now", "yesterday"}).exitCode, 2);
  EXPECT_EQ(runEcho({"echo", "--seed", "-1"}).exitCode, 2);
  EXPECT_EQ(runEcho({"echo", "--seed", "1.5"}).exitCode, 2);
  EXPECT_EQ(runEcho({"echo", "--seed", "18446744073709551616"}).exitCode, 2);
  EXPECT_EQ(runEcho({"echo", "--errors", "xml"}).exitCode, 2);
  const EchoRun run = runEcho({"echo", "--seed", "many"});
  EXPECT_EQ(run.out, "");
  EXPECT_EQ(run.err, "swivelwright echo: --seed: \"many\" is not a whole number; write e.g. 7\n");
}

TEST(Program, UsageErrorsAreJsonWhereThatWasAskedForAnywhere) {
  for (const std::vector<std::string>& arguments :
       {std::vector<std::string>{"echo", "--wrong", "--errors", "json"},
        std::vector<std::string>{"--errors=json", "nothing"},
        std::vector<std::string>{"--errors", "json"}}) {
    const EchoRun run = runEcho(arguments);
    EXPECT_EQ(run.exitCode, 2);
    EXPECT_EQ(run.out, "");
    EXPECT_TRUE(run.err.starts_with("{\"error\":{\"code\":")) << run.err;
  }
}

TEST(Program, AnUnknownCommandIsUsage) {
  const EchoRun run = runEcho({"sing"});
  EXPECT_EQ(run.exitCode, 2);
  EXPECT_TRUE(run.err.starts_with("swivelwright: \"sing\" is not a command")) << run.err;
  EXPECT_EQ(runEcho({}).exitCode, 2);
}

TEST(Program, ErrorsOfTheBookEndWithThree) {
  EXPECT_EQ(runEcho({"echo", "--fail"}).exitCode, 3);
}

TEST(Program, OutputThatIsNotTakenEndsWithFour) {
  EXPECT_EQ(runEcho({"echo"}, true).exitCode, 4);
  EXPECT_EQ(runEcho({"--help"}, true).exitCode, 4);
  EXPECT_NE(runEcho({"echo"}, true).err, "");
}

TEST(Program, VersionAndHelpNeedNothingElse) {
  EXPECT_EQ(runEcho({"--version"}).out, "swivelwright " SW_VERSION "\n");
  EXPECT_EQ(runEcho({"echo", "--version"}).exitCode, 0);
  EXPECT_EQ(runEcho({"--help"}).exitCode, 0);
  EXPECT_NE(runEcho({"echo", "--help"}).out.find("echo [--fail]"), std::string::npos);
}

}  // namespace
}  // namespace sw::app
