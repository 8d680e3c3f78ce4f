// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

// Scripts of jobs in resources/ and tests/data, one command a line.

namespace sw::test {

/// The lines of a file named from the top of the sources; a failed test where there is none.
[[nodiscard]] std::vector<std::string> linesOf(const std::string& file);

}  // namespace sw::test
