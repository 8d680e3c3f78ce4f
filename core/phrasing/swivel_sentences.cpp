// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>

#include "phrasing/sentence_tables.h"

namespace sw::phrasing {

namespace {

constexpr auto kRows = std::to_array<SentenceRow>({
    {"shims.no_limit",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]no limit on the starting force is given. Enter the lowest or "
                        "the highest force, or both.",
                        "shim advice")},
    {"shims.no_pack",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]no pack can be made from these shims within the thickest pack "
                        "and the most shims allowed. Enter more sizes, or check the limits.",
                        "shim advice")},
    {"first_pack.no_readings",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]nothing was measured. Enter the gap at every bolt, or the end "
                        "float.",
                        "first shim pack")},
    {"first_pack.no_found",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the pack that was in when the end float was measured is "
                        "missing. Measure it with a micrometer.",
                        "first shim pack")},
    {"first_pack.negative",
     QT_TRANSLATE_NOOP3("phrasing", "[{field}: ]a gap or float cannot be less than nothing.",
                        "first shim pack")},
    {"first_pack.bolts",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the gap is wanted at every bolt[, {least} to {most} of them].",
                        "{least} and {most} are numbers of bolts")},
    {"first_pack.nothing_left",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the pack would come out at [{text}, ]nothing or less. Check "
                        "the layout of the shims and the readings; else bearings or pins are worn.",
                        "{text} is a thickness")},
    {"first_pack.nip_needs_flange",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]a cap can be nipped without shims only where the shims sit "
                        "under its flange. Measure the end float instead.",
                        "first shim pack")},
    {"line.too_few",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]a line with its uncertainty needs three points or more.",
                        "straight line")},
    {"line.one_place",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]all points have the same x, which makes no line. Enter points "
                        "at different x.",
                        "straight line")},
    {"line.flat",
     QT_TRANSLATE_NOOP3("phrasing", "[{field}: ]the line is level and never reaches that value.",
                        "straight line")},
});

}  // namespace

std::span<const SentenceRow> swivelSentences() {
  return kRows;
}

}  // namespace sw::phrasing
