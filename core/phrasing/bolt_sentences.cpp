// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>

#include "phrasing/sentence_tables.h"

namespace sw::phrasing {

namespace {

constexpr auto kRows = std::to_array<SentenceRow>({
    {"bolts.unknown_thread",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ][“{text}” is ]not a thread this program reads.[ Write it like "
                        "{example}.]",
                        "{text} is what was typed, {example} a good entry")},
    {"bolts.other_thread_form",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ][“{text}”: ]Whitworth, BA and pipe threads are of another form "
                        "and are not calculated here. Use the vehicle's documentation.",
                        "{text} is what was typed")},
    {"bolts.needs_pitch",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ][“{text}” leaves ]the pitch open. Measure it with a pitch "
                        "gauge[ and write it like {example}].",
                        "{text} is what was typed, {example} a good entry")},
    {"bolts.series_differs",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ][“{text}”: ]series and pitch do not belong together[; the "
                        "series has {expected}]. Check both on the part.",
                        "{text} is what was typed, {expected} a thread")},
    {"bolts.bad_pitch",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]a pitch[ of {text}] is too coarse for this diameter. Check "
                        "both.",
                        "{text} is the pitch")},
    {"bolts.class_not_in_size",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the standard does not have class[ {text}] in this size[ "
                        "({found})]. Check the marking.",
                        "{text} is a strength class, {found} a diameter")},
});

}  // namespace

std::span<const SentenceRow> boltSentences() {
  return kRows;
}

}  // namespace sw::phrasing
