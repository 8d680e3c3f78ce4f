// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <fstream>
#include <sstream>
#include <string>
#include <vector>

namespace sw::test {

/// The lines of numbers of a file in tests/data/reference; lines that start with '#' are comments.
inline std::vector<std::vector<double>> readReference(const std::string& name) {
  std::vector<std::vector<double>> rows;
  std::ifstream file(std::string(SW_SOURCE_DIR) + "/tests/data/reference/" + name);
  for (std::string line; std::getline(file, line);) {
    if (line.empty() || line.front() == '#') continue;
    std::istringstream text(line);
    rows.emplace_back();
    for (double x = 0; text >> x;) rows.back().push_back(x);
  }
  return rows;
}

}  // namespace sw::test
