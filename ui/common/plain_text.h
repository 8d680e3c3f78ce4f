// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <string>

namespace sw::ui {

/// Words of core (UTF-8) as Qt shows them.
[[nodiscard]] inline QString text(const std::string& words) {
  return QString::fromStdString(words);
}

}  // namespace sw::ui
