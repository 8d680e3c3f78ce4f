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
                        "[{field}: ]a pitch[ of {text}] does not go with this diameter. Check "
                        "both.",
                        "{text} is the pitch")},
    {"bolts.class_not_in_size",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the standard does not have class[ {text}] in this size[ "
                        "({found})]. Check the marking.",
                        "{text} is a strength class, {found} a diameter")},
    {"bolts.bad_friction",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]a coefficient of friction lies above 0 and not above 1, the "
                        "lower end first[; this is {min}][ to {max}]. Correct it.",
                        "range of friction")},
    {"bolts.open_friction_class",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]friction class[ {text}] has no upper end. Give the greatest "
                        "friction as max.",
                        "{text} is a friction class")},
    {"bolts.needs_face",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]for this size both diameters of the face that rubs are needed, "
                        "or none. Measure the other one.",
                        "face under the head of a bolt")},
    {"bolts.face_inside_hole",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the face that rubs[, {text},] is not larger than its hole[ "
                        "({min})]. Check both.",
                        "diameters of the face under a head")},
    {"bolts.bad_share",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]a share of the yield strength lies above 0 and not above 1[; "
                        "this is {text}]. Correct it.",
                        "utilisation of a bolt")},
    {"bolts.bad_scatter",
     QT_TRANSLATE_NOOP3(
         "phrasing", "[{field}: ]a scatter lies from 0 to below 1[; this is {text}]. Correct it.",
         "scatter of a clamp force, 0.23 for 23 %")},
    {"bolts.bad_tightening_factor",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]a tightening factor is 1 or more[; this is {text}]. It is the "
                        "greatest force divided by the least.",
                        "tightening factor of VDI 2230")},
    {"bolts.bad_adapter_angle",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ][{text}: ]the angle of an adapter lies from -180 to 180 "
                        "degrees. Correct it.",
                        "{text} is an angle")},
    {"bolts.adapter_has_no_lever",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the adapter reaches back to the hand, so there is no lever. "
                        "Turn it forward or take a shorter one.",
                        "crowfoot on a torque wrench")},
    {"bolts.bad_deviation",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]a permitted deviation lies between 0 and 1[; this is {text}]. "
                        "Write 0.04 for 4 %.",
                        "deviation of a torque wrench")},
    {"bolts.wrench_range",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the lowest mark of a wrench is below its maximum. Check both.",
                        "torque wrench")},
    {"bolts.range_upside_down",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the upper limit is below the lower one. Check both.",
                        "limits of a torque")},
    {"bolts.bad_slots",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ][{text}: ]a castellated nut has an even number of slots, from "
                        "2[ to {most}]. Count them.",
                        "{text} is a number of slots")},
    {"bolts.bad_cross_holes",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ][{text}: ]a bolt has one hole for the pin, or two crossed "
                        "ones. Look again.",
                        "{text} is a number of holes")},
    {"bolts.bad_stages",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]stages are shares of the torque, rising, the last one 1[, at "
                        "most {most} of them]. Write them like 0.5 and 1.",
                        "stages of tightening")},
    {"bolts.odometer_backwards",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the odometer reads less than when the wheel was fitted. Check "
                        "both readings.",
                        "odometer")},
    {"bolts.recheck_too_late",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the first check of wheel nuts comes earlier[, after {most} at "
                        "most]. Choose a shorter distance.",
                        "{most} is a distance")},
});

}  // namespace

std::span<const SentenceRow> boltSentences() {
  return kRows;
}

}  // namespace sw::phrasing
