// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <ostream>
#include <string>
#include <vector>

namespace sw::layers {

/// A file of the tree as the rules see it.
struct SourceFile {
  std::string path;  ///< from the root of the tree, with forward slashes
  std::string text;
};

/// A broken rule.
struct Breach {
  std::string path;
  int line = 0;  ///< 0 where the whole file is meant
  std::string what;

  friend bool operator==(const Breach&, const Breach&) = default;
  friend std::ostream& operator<<(std::ostream& out, const Breach& breach) {
    return out << breach.path << ":" << breach.line << ": " << breach.what;
  }
};

using Breaches = std::vector<Breach>;

}  // namespace sw::layers
