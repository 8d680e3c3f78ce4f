// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <string_view>

namespace sw::ui {

/// A text of a description, which is UTF-8.
[[nodiscard]] inline QString benchWords(std::string_view text) {
  return QString::fromUtf8(text.data(), static_cast<int>(text.size()));
}

}  // namespace sw::ui
