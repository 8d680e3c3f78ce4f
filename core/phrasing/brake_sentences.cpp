// SPDX-License-Identifier: GPL-3.0-or-later
#include "phrasing/sentence_tables.h"

namespace sw::phrasing {

std::span<const SentenceRow> brakeSentences() {
  return {};
}

}  // namespace sw::phrasing
