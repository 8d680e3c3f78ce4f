// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>

#include "phrasing/sentence_tables.h"

namespace sw::phrasing {

namespace {

constexpr auto kRows = std::to_array<SentenceRow>({
    {"compute.unknown_name",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]“{text}” is not a calculation[; there are: {choices}].",
                        "{choices} are names of calculations")},
    {"compute.out_of_range",
     QT_TRANSLATE_NOOP3("phrasing", "[{field}: ]{text} is out of range[; it must be {range}].",
                        "{text} is what was typed")},
    {"compute.not_a_quantity",
     QT_TRANSLATE_NOOP3(
         "phrasing", "[{field}: ]“{text}” is not a number with a unit.[ Type it like {example}.]",
         "{text} is what was typed")},
    {"compute.not_a_unit",
     QT_TRANSLATE_NOOP3("phrasing", "[{field}: ]“{text}” is not a unit.[ Type it like {example}.]",
                        "{text} is what was typed")},
});

}  // namespace

std::span<const SentenceRow> computeSentences() {
  return kRows;
}

}  // namespace sw::phrasing
