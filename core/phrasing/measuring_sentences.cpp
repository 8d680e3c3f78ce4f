// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>

#include "phrasing/sentence_tables.h"

namespace sw::phrasing {

namespace {

constexpr auto kRows = std::to_array<SentenceRow>({
    {"units.empty",
     QT_TRANSLATE_NOOP3(
         "phrasing", "[{field}: ]nothing was entered.[ Type a value such as {example}.]",
         "{text} is what was typed, {expected} the kind of quantity, {example} a good entry")},
    {"units.not_a_number",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ][“{text}” is ]not a number[ (value number {position})].[ Type it like "
         "{example}.]",
         "{text} is what was typed, {expected} the kind of quantity, {example} a good entry")},
    {"units.two_marks",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ][“{text}” has ]more than one decimal mark or grouped digits[ (value number "
         "{position})]. Use one comma or point and no separator of thousands[, like {example}].",
         "{text} is what was typed, {expected} the kind of quantity, {example} a good entry")},
    {"units.not_finite",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ][“{text}” is ]too large or not a value[ (value number {position})].[ Type it "
         "like {example}.]",
         "{text} is what was typed, {expected} the kind of quantity, {example} a good entry")},
    {"units.too_long",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ][“{text}” has ]too many characters for a number[ (value number {position})]. "
         "Type fewer digits[, like {example}].",
         "{text} is what was typed, {expected} the kind of quantity, {example} a good entry")},
    {"units.wrong_kind",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ][“{text}” is ]of the wrong kind[ ({found})][; this field takes: {expected}][ "
         "(value number {position})].[ Type it like {example}.]",
         "{text} is what was typed, {expected} the kind of quantity, {example} a good entry")},
    {"units.unknown_unit",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]the unit[ “{unit}”] is not known[ for {expected}][ (value number "
         "{position})].[ Type it like {example}.]",
         "{text} is what was typed, {expected} the kind of quantity, {example} a good entry")},
    {"units.mixed_units",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]there are two units on the line and a number without any[ (value number "
         "{position})]. Write the unit behind every number[, like {example}].",
         "{text} is what was typed, {expected} the kind of quantity, {example} a good entry")},
    {"measure.no_readings",
     QT_TRANSLATE_NOOP3("phrasing", "[{field}: ]there is no reading to judge. Take at least one.",
                        "series of readings")},
    {"measure.not_finite",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the value is not a finite number. Enter an ordinary number.",
                        "input of a calculation")},
    {"measure.not_positive",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]the value must be greater than zero. Check the figure and its unit.",
         "input of a calculation")},
    {"measure.empty_limit",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]the lower limit is above the upper one. Check both figures and their units.",
         "limits of a specification")},
    {"measure.bad_confidence",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]the probability asked for must lie between 0.5 and 1, such as 0.95.",
         "input of a calculation")},
    {"measure.angle_too_large",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]the angle off the line of pull must be less than 90°. Pull nearer to square.",
         "angle of a pull")},
    {"measure.bad_correlation",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]a correlation must lie between -1 and 1, the same both ways "
                        "round. Check the figures.",
                        "input of a calculation")},
    {"measure.no_limit",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]no limit is given. Enter a lower or an upper limit.",
                        "limits of a specification")},
    {"measure.no_guard_band",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]no guard band brings the risk down that far. Measure more "
                        "finely or accept a larger risk.",
                        "input of a calculation")},
    {"measure.nothing_to_pool",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]there is no scatter to take together. Repeat the readings of "
                        "at least one series.",
                        "past series of readings")},
    {"measure.no_scatter",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the readings are all the same, so their scatter says nothing. "
                        "Use a finer instrument or go by its graduation.",
                        "series of readings")},
    {"measure.too_few",
     QT_TRANSLATE_NOOP3("phrasing", "[{field}: ]there are too few readings for this. Take more.",
                        "series of readings")},
    {"measure.one_reading_needs_scatter",
     QT_TRANSLATE_NOOP3(
         "phrasing", "[{field}: ]one reading says nothing about scatter. Take at least two more.",
         "series of readings")},
    {"compare.kind_differs",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the two figures measure different things[: {first} and "
                        "{second}]. Compare figures of one kind.",
                        "two figures of one limit, each in its own unit")},
    {"clock.not_a_time",
     QT_TRANSLATE_NOOP3(
         "phrasing", "[{field}: ][“{text}” is ]not a date and time. Type it like 2031-04-05T10:20.",
         "date and time")},
    {"clock.not_a_date",
     QT_TRANSLATE_NOOP3("phrasing", "[{field}: ][“{text}” is ]not a date. Type it like 2031-04-05.",
                        "date")},
    {"shims.no_sizes",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]no shim sizes are on file. Enter the sizes on hand.",
                        "shim packs")},
    {"shims.not_positive",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]a thickness or number here is zero, negative or beyond all "
                        "reason[ (number {position})]. Check the figure and its unit.",
                        "shim packs")},
    {"shims.too_many_in_pack",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]at most {most} shims can be counted in one pack. Enter a smaller number.",
         "shim packs")},
    {"shims.too_many_packs",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]these sizes make more than {most} different packs. Leave out "
                        "sizes or set a smaller largest pack.",
                        "shim packs")},
    {"shims.empty_place", QT_TRANSLATE_NOOP3("phrasing",
                                             "[{field}: ]a shim is missing beside a plus sign "
                                             "(place {position}). Type the stack like 0.50 + 0.25.",
                                             "stack of shims as typed")},
    {"stand_load.missing",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]this is needed to work out the load on the stands. Enter it.",
                        "load on axle stands")},
    {"stand_load.bad_share", QT_TRANSLATE_NOOP3("phrasing",
                                                "[{field}: ]the share of the axle load must be "
                                                "more than 0 and at most 1. Enter it like 0.5.",
                                                "load on axle stands")},
    {"stand_load.too_few_stands",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]there are too few stands to carry an axle. Use at least two, one each side.",
         "load on axle stands")},
    {"tightening.bad_count",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ][{text} fasteners: ]an order is known for 1 to {most} on one "
                        "circle. Go by the vehicle's own documentation.",
                        "order of tightening")},
    {"starting_force.not_square",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]a pull 90° or more off square turns nothing. Pull square to "
                        "the arm and enter the angle off it.",
                        "pull at the steering arm")},
});

}  // namespace

std::span<const SentenceRow> measuringSentences() {
  return kRows;
}

}  // namespace sw::phrasing
