// SPDX-License-Identifier: GPL-3.0-or-later
#include "tree.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

namespace sw::layers {
namespace {

namespace fs = std::filesystem;

std::string contentOf(const fs::path& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
}

void add(const fs::path& root, const fs::path& path, std::vector<SourceFile>& files) {
  auto text = contentOf(path);
  const bool binary = text.find('\0') != std::string::npos;
  if (!binary) files.push_back({fs::relative(path, root).generic_string(), std::move(text)});
}

/// Files at the root that belong to one person's checkout and not to the tree.
bool isLocal(const fs::path& path) {
  const auto name = path.filename();
  return name == ".git" || name == "compile_commands.json" || name == "CMakeUserPresets.json";
}

}  // namespace

std::vector<SourceFile> readTree() {
  const fs::path root(SW_SOURCE_DIR);
  std::vector<SourceFile> files;
  for (const auto& entry : fs::directory_iterator(root)) {
    if (entry.is_regular_file() && !isLocal(entry.path())) add(root, entry.path(), files);
  }
  for (const auto* folder :
       {"core", "app", "ui", "tests", "resources", "packaging", "cmake", ".ci"}) {
    if (!fs::exists(root / folder)) continue;
    for (const auto& entry : fs::recursive_directory_iterator(root / folder)) {
      if (entry.is_regular_file()) add(root, entry.path(), files);
    }
  }
  std::ranges::sort(files, {}, &SourceFile::path);
  return files;
}

std::vector<SourceFile> select(const std::vector<SourceFile>& files,
                               const std::vector<std::string_view>& folders,
                               const std::vector<std::string_view>& endings) {
  std::vector<SourceFile> chosen;
  std::ranges::copy_if(files, std::back_inserter(chosen), [&](const SourceFile& file) {
    const auto starts = [&](std::string_view part) { return file.path.starts_with(part); };
    const auto ends = [&](std::string_view part) { return file.path.ends_with(part); };
    return std::ranges::any_of(folders, starts) && std::ranges::any_of(endings, ends);
  });
  return chosen;
}

}  // namespace sw::layers
