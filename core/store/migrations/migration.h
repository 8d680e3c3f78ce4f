// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <string>
#include <vector>

namespace sw::store {

/// One forward step of the schema: the statements that turn a book of version `to - 1` into one of
/// version `to`. Steps are never edited after release; the texts hold no value of any user.
struct Migration {
  int to = 0;
  std::string name;
  std::vector<std::string> statements;
};

/// Version 1: the first book.
[[nodiscard]] Migration firstBook();

/// Version 2: rechecks done, the shop's name.
[[nodiscard]] Migration rechecksDone();

/// Version 3: calculations put into a job, and the kinds of quantity they bring.
[[nodiscard]] Migration calculationsKept();

/// Version 4: what was told of a shake, the shop's own numbers of causes, jobs left out of
/// learning.
[[nodiscard]] Migration causesLearned();

/// Version 5: causes put right, what a job taught of its shake.
[[nodiscard]] Migration lessonsKept();

/// All steps of this program, in order; the last one's `to` is the program's schema version.
[[nodiscard]] std::vector<Migration> allMigrations();

}  // namespace sw::store
