// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>
#include <vector>

#include "source_file.h"

namespace sw::layers {

/// The text files of the tree: those at the root and all under the folders that hold our own work.
/// Build folders, output and hidden folders other than .ci stay out.
[[nodiscard]] std::vector<SourceFile> readTree();

/// Those of `files` whose path starts with one of `folders` and ends with one of `endings`.
[[nodiscard]] std::vector<SourceFile> select(const std::vector<SourceFile>& files,
                                             const std::vector<std::string_view>& folders,
                                             const std::vector<std::string_view>& endings);

}  // namespace sw::layers
