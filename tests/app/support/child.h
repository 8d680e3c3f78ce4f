// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

namespace sw::test {

struct ChildRun {
  int exitCode = -1;  ///< -1 where it did not end by itself
  std::string out;
  std::string err;
};

struct ChildInput {
  std::vector<std::string> arguments;
  std::string input;
  std::vector<std::string> environment;  ///< "NAME=value", beside a bare PATH
  std::string outFile;                   ///< standard output goes here instead; empty = it is read
};

/// Runs a program to its end through files in a temporary folder.
[[nodiscard]] ChildRun runChild(const std::string& program, const ChildInput& input);

}  // namespace sw::test
