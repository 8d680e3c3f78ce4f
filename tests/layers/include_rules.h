// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <set>
#include <span>
#include <string>
#include <string_view>

#include "source_file.h"

namespace sw::layers {

/// The folders of core, lowest first.
[[nodiscard]] std::span<const std::string_view> coreFolders();

/// The core folders a core folder may use: its arrows and all they reach, and itself.
[[nodiscard]] std::set<std::string> reachableFrom(std::string_view folder);

/// Which part of Qt a header named as its class belongs to, as far as core may know it.
enum class QtPart { None, Core, Sql, Gui, Other };
[[nodiscard]] QtPart qtPartOf(std::string_view header);

/// The classes taken to be Qt Core's and Qt Gui's; any other Qt header counts as Widgets or worse.
[[nodiscard]] std::span<const std::string_view> qtCoreClasses();
[[nodiscard]] std::span<const std::string_view> qtGuiClasses();

/// Checks every include of a file under core/ or app/; other files have no include rules.
[[nodiscard]] Breaches checkIncludes(const SourceFile& file);

/// Checks the LINKS of a core folder's CMakeLists.txt against the same arrows.
[[nodiscard]] Breaches checkLinks(const SourceFile& file);

}  // namespace sw::layers
