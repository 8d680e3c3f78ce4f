// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/resources.h"

#include <cstdlib>
#include <system_error>
#include <vector>

namespace sw::app {

namespace {

namespace fs = std::filesystem;

bool holdsResources(const fs::path& folder) {
  std::error_code ignored;
  return fs::is_directory(folder / "procedures", ignored);
}

fs::path programFolder() {
  std::error_code error;
  const fs::path program = fs::read_symlink("/proc/self/exe", error);
  return error ? fs::path{} : program.parent_path();
}

}  // namespace

Result<fs::path> resourceFolder(const ResourcePlaces& places) {
  std::vector<fs::path> candidates;
  if (!places.fromEnvironment.empty()) {
    candidates = {places.fromEnvironment};
  } else {
    if (!places.programFolder.empty()) {
      candidates.push_back(places.programFolder.parent_path() / "share" / "swivelwright");
    }
    if (!places.sourceTree.empty()) candidates.push_back(places.sourceTree);
  }
  std::string looked;
  for (const auto& folder : candidates) {
    if (holdsResources(folder)) return folder;
    looked += (looked.empty() ? "" : ", ") + folder.string();
  }
  return fail(ErrorCode::NotFound, "cli.no_resources", {}, {{"looked", looked}});
}

Result<fs::path> resourceFolder() {
  // Read once at the start, before any thread exists.
  const char* const set = std::getenv("SWIVELWRIGHT_RESOURCES");  // NOLINT(concurrency-mt-unsafe)
  return resourceFolder({set == nullptr ? fs::path{} : fs::path(set), programFolder(),
                         fs::path(SW_SOURCE_RESOURCES)});
}

}  // namespace sw::app
