// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "report/document.h"

namespace sw::testing {

/// All texts of the document, a cell or line a line; struck text stands in [[ ]].
[[nodiscard]] std::string textOf(const report::Document& document);
/// The texts of the section with this title, empty where there is none.
[[nodiscard]] std::string sectionText(const report::Document& document, const std::string& title);
/// The cells of every row of a section's tables, spans joined.
[[nodiscard]] std::vector<std::vector<std::string>> rowsOf(const report::Document& document,
                                                           const std::string& title);

}  // namespace sw::testing
