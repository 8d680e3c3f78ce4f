// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

namespace sw::report {

using TextRow = std::vector<std::string>;

/// Columns of text two spaces apart, a row a line; the first row holds the headings. Control
/// characters become spaces. `rows` must not be empty and all rows must be of one length.
[[nodiscard]] std::string tableText(std::vector<TextRow> rows);

}  // namespace sw::report
