// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>

#include "phrasing/sentence_tables.h"

namespace sw::phrasing {

namespace {

constexpr auto kRows = std::to_array<SentenceRow>({
    {"tyre.not_understood",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ][“{text}” is ]not a tyre size as it is marked[; “{part}” could not be read]. "
         "Type it like 195/80 R15 96S, 205 R16, 31x10.50 R15 or 7.50-16.",
         "{text} is what was typed, {part} the end that was not understood")},
    {"tyre.not_computable",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]this size does not tell the diameter. Measure the diameter, or "
                        "better a roll-out, and enter that.",
                        "tyre marked by its width in inches")},
    {"wheels.out_of_range",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]the value is outside what is possible here[ ({range})]. Check the figure and "
         "its unit.",
         "{range} says what is possible")},
    {"wheels.missing",
     QT_TRANSLATE_NOOP3("phrasing", "[{field}: ]this is needed for what is asked. Enter it.",
                        "input of a calculation of wheels or geometry")},
    {"wheels.one_source",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the same thing is given in more than one way. Leave one of "
                        "them in.",
                        "input of a calculation of wheels or geometry")},
    {"balance.no_effect",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the trial weight changed nothing, so nothing follows from it. "
                        "Use a heavier one and read again at the same speed.",
                        "balancing a wheel")},
    {"balance.planes_alike",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]a weight in either plane changed both readings in the same "
                        "way, so the planes cannot be told apart. Read at two places further "
                        "apart, or balance one plane.",
                        "balancing a wheel")},
    {"balance.trial_imaginary",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the runs with the trial weight are no worse on the whole than "
                        "the one without, which no wheel does. Repeat all four runs on the same "
                        "road at the same speed, with a heavier trial weight.",
                        "balancing a wheel in four runs")},
    {"balance.runs_contradict",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the four runs contradict each other[ (agreement {ratio}, 1 "
                        "would be right)]. Repeat them on the same road at the same speed.",
                        "balancing a wheel in four runs")},
});

}  // namespace

std::span<const SentenceRow> wheelSentences() {
  return kRows;
}

}  // namespace sw::phrasing
