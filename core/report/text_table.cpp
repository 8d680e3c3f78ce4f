// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/text_table.h"

#include <algorithm>

namespace sw::report {

namespace {

/// Characters, not bytes.
std::size_t widthOf(const std::string& text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) {
    return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
  }));
}

std::string onOneLine(std::string text) {
  std::replace_if(
      text.begin(), text.end(), [](unsigned char c) { return c < 0x20 || c == 0x7F; }, ' ');
  return text;
}

}  // namespace

std::string tableText(std::vector<TextRow> rows) {
  std::vector<std::size_t> widths(rows.front().size(), 0);
  for (TextRow& row : rows) {
    for (std::size_t i = 0; i < row.size(); ++i) {
      row[i] = onOneLine(row[i]);
      widths[i] = std::max(widths[i], widthOf(row[i]));
    }
  }
  std::string text;
  for (const TextRow& row : rows) {
    std::string line;
    for (std::size_t i = 0; i < row.size(); ++i) {
      line += row[i];
      if (i + 1 < row.size()) line.append(widths[i] - widthOf(row[i]) + 2, ' ');
    }
    const auto end = line.find_last_not_of(' ');
    line.resize(end == std::string::npos ? 0 : end + 1);
    text += line + "\n";
  }
  return text;
}

}  // namespace sw::report
