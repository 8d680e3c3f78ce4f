// SPDX-License-Identifier: GPL-3.0-or-later
#include "job_scripts.h"

#include <gtest/gtest.h>

#include <fstream>

namespace sw::test {

std::vector<std::string> linesOf(const std::string& file) {
  std::ifstream in(std::string(SW_SOURCE_DIR) + "/" + file);
  EXPECT_TRUE(in) << file;
  std::vector<std::string> lines;
  for (std::string line; std::getline(in, line);) {
    if (!line.empty()) lines.push_back(line);
  }
  return lines;
}

}  // namespace sw::test
