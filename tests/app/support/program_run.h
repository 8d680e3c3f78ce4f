// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "model/json.h"

namespace sw::test {

/// What one run of the program gave.
struct ProgramRun {
  int exitCode = -1;
  std::string out;
  std::string err;
};

/// Runs the program in-process with the real table of commands and a clock that stands still.
[[nodiscard]] ProgramRun runProgram(std::vector<std::string> arguments, std::string input = {});

/// The answer of `compute NAME`, or null with a failed check where it did not end with 0.
[[nodiscard]] model::Json computed(const std::string& name, const std::string& input);

/// What `compute NAME --errors json` says about a bad input: its "error" object. Checks that it
/// ends with 2 and that nothing is on standard output.
[[nodiscard]] model::Json refused(const std::string& name, const std::string& input);

/// The number in front of a quantity: 18.5 of "18.5 N"; checks that the rest is " " and the unit.
[[nodiscard]] double amount(const model::Json& quantity, const std::string& unit);

}  // namespace sw::test
