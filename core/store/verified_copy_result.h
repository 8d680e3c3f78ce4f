// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <string>

namespace sw::store {

/// A copy of a book that was compared with it and found sound.
struct VerifiedCopy {
  std::string path;
  std::int64_t entries = 0;
  std::int64_t jobs = 0;
};

}  // namespace sw::store
