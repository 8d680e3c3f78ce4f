// SPDX-License-Identifier: GPL-3.0-or-later
#include "store/migrations/migration.h"

namespace sw::store {

std::vector<Migration> allMigrations() {
  std::vector<Migration> steps;
  steps.push_back(firstBook());
  steps.push_back(rechecksDone());
  steps.push_back(calculationsKept());
  steps.push_back(causesLearned());
  steps.push_back(lessonsKept());
  return steps;
}

}  // namespace sw::store
