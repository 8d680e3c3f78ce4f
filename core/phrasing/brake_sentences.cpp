// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>

#include "phrasing/sentence_tables.h"

namespace sw::phrasing {

namespace {

constexpr auto kRows = std::to_array<SentenceRow>({
    {"disc_thickness.too_few_points",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]there are too few points round the disc[ ({points})]. Read more at even "
         "steps[, at least {least}]; eight to twelve where a brake judders.",
         "thickness of a brake disc")},
    {"disc_runout.too_few_places",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]there are too few places on a turn[ ({points})]. Read more at "
                        "even steps[, at least {least}]; twelve are usual.",
                        "runout of a brake disc")},
    {"disc_runout.uneven_turns",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the readings[ ({readings})] do not make whole turns of equally "
                        "many places[ ({turns} turns)]. Read every place equally often.",
                        "runout of a brake disc")},
    {"disc_runout.bad_turns",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]this number of turns[ ({turns})] cannot be averaged. Enter 1 "
                        "or more[, up to {most}].",
                        "runout of a brake disc")},
    {"disc_runout.off_square",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]a plunger this far off square tells little. Set it square to "
                        "the face and read again.",
                        "runout of a brake disc")},
    {"disc_runout.uneven_places",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the places are not even steps round the turn, beginning at 12 "
                        "o'clock or 0°. Mark even steps and read those.",
                        "runout of a brake disc")},
    {"disc_index.bad_studs",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]a hub with this number of studs[ ({studs})] is not known here. "
                        "Count them again[; {least} to {most} are possible].",
                        "indexing a disc on its hub")},
    {"disc_index.bad_position",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]there is no such position[ ({position})]. Count the studs "
                        "turned on, from 0 for as found[, up to {most}].",
                        "indexing a disc on its hub")},
    {"disc_index.same_position",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]both runs were read in the same position. Turn the disc on by "
                        "one stud or more and read again.",
                        "indexing a disc on its hub")},
    {"disc_wear.too_few_visits",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]one visit tells no rate of wear[ ({visits} given)]. Enter at "
                        "least two visits at different odometer readings.",
                        "wear of a brake disc")},
    {"disc_wear.thicker_later",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the disc is thicker at a later visit than before[ (visit "
                        "{later} against visit {earlier}, by odometer)]. A disc does not grow: "
                        "look for another disc between them or a reading at another place.",
                        "wear of a brake disc, {earlier} and {later} number the visits")},
    {"disc_wear.no_wear",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the thickness does not fall from visit to visit, so nothing "
                        "can be foretold. Measure again at a later visit.",
                        "wear of a brake disc")},
    {"disc_decision.machine_to_below_discard",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the thickness to machine to must not be below the discard "
                        "thickness: they are two limits. Check both figures.",
                        "limits of a brake disc")},
    {"bearing_friction.bad_start_factor",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]a bearing does not start more easily than it runs. Enter 1 or more.",
         "friction of a bearing")},
    {"bearing_stiffness.bad_rollers",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]a bearing with this number of rollers[ ({rollers})] cannot "
                        "carry. Count them again[; at least {least}].",
                        "stiffness of a bearing")},
    {"bearing_stiffness.bad_angle",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the contact angle must be less than 90°. It lies between the "
                        "bearing's axis and its cup; tapers have 10° to 30°.",
                        "stiffness of a bearing")},
    {"rock_test.bad_angle",
     QT_TRANSLATE_NOOP3(
         "phrasing", "[{field}: ]the contact angle must be less than 90°. Tapers have 10° to 30°.",
         "rock of a wheel")},
    {"wheel_bearing.not_for_kind",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]this does not belong to a wheel bearing of the kind named[ "
                        "({kind})]. The wrong rule ruins a bearing: check which kind it is.",
                        "setting of a wheel bearing")},
    {"brakes.one_of_two",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the same thing is given in two ways, or in neither[: {first} "
                        "and {second}]. Give one of them.",
                        "input of a calculation")},
    {"disc_index.two_runs",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]two runs are needed[, {count} are given]. Read the disc in two positions.",
         "indexing a disc on its hub")},
    {"disc_decision.two_discs",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]the decision is for the pair. Give two discs, one left and one right.",
         "discs of an axle")},
});

}  // namespace

std::span<const SentenceRow> brakeSentences() {
  return kRows;
}

}  // namespace sw::phrasing
