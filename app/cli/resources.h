// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <filesystem>

#include "base/result.h"

namespace sw::app {

/// The folder with procedures/, demo/ and the other data files, the first of these that is there:
/// the environment variable SWIVELWRIGHT_RESOURCES (which must be right where it is set),
/// ../share/swivelwright beside the program's own folder, the source tree of a development build.
/// Errors: NotFound "cli.no_resources" (details: looked).
[[nodiscard]] Result<std::filesystem::path> resourceFolder();

/// The same with what it rests on given, for tests. An empty path or text means: not there.
struct ResourcePlaces {
  std::filesystem::path fromEnvironment;
  std::filesystem::path programFolder;
  std::filesystem::path sourceTree;
};
[[nodiscard]] Result<std::filesystem::path> resourceFolder(const ResourcePlaces& places);

}  // namespace sw::app
