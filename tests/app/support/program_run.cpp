// SPDX-License-Identifier: GPL-3.0-or-later
#include "support/program_run.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <charconv>
#include <sstream>

#include "cli/run.h"
#include "commands/commands.h"

namespace sw::test {

using model::Json;

ProgramRun runProgram(std::vector<std::string> arguments, std::string input) {
  std::istringstream in(std::move(input));
  std::ostringstream out;
  std::ostringstream err;
  const ManualClock clock(Timestamp{1700000000000, 0});
  ProgramRun run;
  run.exitCode = app::runProgram(arguments, app::commands(), {in, out, err}, clock);
  run.out = out.str();
  run.err = err.str();
  return run;
}

Json computed(const std::string& name, const std::string& input) {
  const ProgramRun run = runProgram({"compute", name}, input);
  EXPECT_EQ(run.exitCode, 0) << run.err;
  EXPECT_EQ(run.err, "");
  const auto json = model::parseJson(run.out);
  EXPECT_TRUE(json) << run.out;
  return json.value_or(Json());
}

Json refused(const std::string& name, const std::string& input) {
  const ProgramRun run = runProgram({"compute", name, "--errors", "json"}, input);
  EXPECT_EQ(run.exitCode, 2) << run.err;
  EXPECT_EQ(run.out, "");
  const auto json = model::parseJson(run.err);
  EXPECT_TRUE(json) << run.err;
  return json ? json->value("error", Json::object()) : Json::object();
}

double amount(const Json& quantity, const std::string& unit) {
  const auto text = quantity.get<std::string>();
  double value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  EXPECT_EQ(error, std::errc{}) << text;
  EXPECT_EQ(std::string(end, text.data() + text.size()), " " + unit);
  return value;
}

}  // namespace sw::test
