// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>

#include "phrasing/sentence_tables.h"

namespace sw::phrasing {

namespace {

constexpr auto kRows = std::to_array<SentenceRow>({
    {"plan.too_many_checks",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]too many checks to plan at once[ ({checks}, at most {most})]. "
                        "Leave some of them out.",
                        "plan of checks")},
    {"plan.no_weights",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]no cause has a weight above 0. Give the causes that are met "
                        "their weights.",
                        "plan of checks")},
    {"plan.bad_check",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ][check number {check} ]has a chance outside 0 to 1, or minutes "
                        "below 0. Correct its numbers.",
                        "plan of checks")},
    {"causes.unknown_schema",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]these causes are written in a form that this program does not "
                        "know. Use a newer program.",
                        "table of causes")},
    {"causes.unknown_key",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ][“{text}” ]is named here and stands nowhere in the table. Check "
         "its spelling.",
         "table of causes")},
    {"causes.duplicate_key",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ][“{text}” ]stands in the table twice. Give each its own name.",
                        "table of causes")},
    {"causes.bad_chance",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]a chance lies between 0 and 1, and those of one question add up "
         "to 1. Correct it.",
         "table of causes")},
    {"causes.bad_minutes",
     QT_TRANSLATE_NOOP3("phrasing", "[{field}: ]minutes lie between 0 and 10,000. Correct them.",
                        "table of causes")},
    {"causes.bad_days",
     QT_TRANSLATE_NOOP3("phrasing", "[{field}: ]days lie between 0 and 3,650. Correct them.",
                        "table of causes")},
    {"causes.bad_weight",
     QT_TRANSLATE_NOOP3(
         "phrasing", "[{field}: ]a weight is 0 or more, and one at least is above 0. Correct it.",
         "table of causes")},
    {"causes.no_evidence",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]name either what is observed, with its words, or a limit. Leave "
         "the other out.",
         "table of causes")},
    {"causes.no_other",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the cause “other” is missing: something not named must always "
                        "be possible. Add it.",
                        "table of causes")},
});

}  // namespace

std::span<const SentenceRow> diagnosisSentences() {
  return kRows;
}

}  // namespace sw::phrasing
