// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "compute/description.h"
#include "compute/input_reader.h"
#include "diagnosis/cause_file.h"
#include "diagnosis/ranking.h"

// What is known of a shake, as both calculations read it: answers, traces of a road log, checks
// that were made, repairs.

namespace sw::compute {

/// The keys of causes, checks, set-ups or presets.
template <class Items>
[[nodiscard]] std::vector<std::string_view> keysOf(const Items& items) {
  std::vector<std::string_view> keys;
  for (const auto& item : items) keys.push_back(item.key);
  return keys;
}

struct KnownOfShake {
  std::vector<diagnosis::Evidence> evidence;
  std::vector<std::size_t> asked;  ///< features with an answer
  std::vector<std::size_t> made;   ///< checks with a result
  double damping = 1;
};

/// Reads "answers", "traces", "checks" and "repaired".
void readKnown(InputReader& reader, const diagnosis::CauseFile& file, KnownOfShake& known);
[[nodiscard]] std::vector<FieldDescription> knownFields(const diagnosis::CauseFile& file);

/// The names of the checks, "walk_round | joints | ...".
[[nodiscard]] std::string_view checkChoices();

/// The option "damping".
[[nodiscard]] double readDamping(InputReader& options);
[[nodiscard]] FieldDescription dampingField();

/// What a piece of evidence is called: "At a steady speed ...? No".
[[nodiscard]] std::string evidenceWords(const diagnosis::CauseFile& file,
                                        const diagnosis::Evidence& evidence);

}  // namespace sw::compute
