// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>

#include "phrasing/sentence_tables.h"

namespace sw::phrasing {

namespace {

constexpr auto kRows = std::to_array<SentenceRow>({
    {"vehicle_created",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{registration} is new here: ]the vehicle was put on file with its "
                        "registration only.",
                        "{registration} is the number plate")},
    {"vin_hint",
     QT_TRANSLATE_NOOP3("phrasing", "Compare the VIN[ {vin}] with the plate; it was kept as typed.",
                        "{vin} is a vehicle identification number")},
    {"vin_hint/not_seventeen",
     QT_TRANSLATE_NOOP3("phrasing",
                        "The VIN[ {vin}] does not have 17 characters. An older chassis number may "
                        "have fewer; otherwise compare it with the plate. It was kept as typed.",
                        "{vin} is a vehicle identification number")},
    {"vin_hint/forbidden_character",
     QT_TRANSLATE_NOOP3("phrasing",
                        "The VIN[ {vin}] holds a character that no VIN of 17 has: I, O and Q are "
                        "not used, only digits and the other letters A to Z. Compare it with the "
                        "plate; it was kept as typed.",
                        "{vin} is a vehicle identification number")},
    {"vin_hint/check_digit_differs",
     QT_TRANSLATE_NOOP3("phrasing",
                        "The check digit of the VIN[ {vin}], its 9th character, does not fit the "
                        "others. Only North America demands that it fits; compare it with the "
                        "plate. It was kept as typed.",
                        "{vin} is a vehicle identification number")},
    {"figures_disagree",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{key}: ]the two figures do not agree.[ {first} is {first_converted}, but "
                        "{second} stands beside it, which is {second_converted}.][ Beside {first}, "
                        "{beside_first} would agree; beside {second}, {beside_second}.] Look in "
                        "the source; nothing was changed.",
                        "{key} is a line of the spec sheet; the rest are figures with units")},
    {"job_opened",
     QT_TRANSLATE_NOOP3("phrasing", "Job[ {job}] is open.", "{job} is the number of the job")},
    {"plan_started",
     QT_TRANSLATE_NOOP3("phrasing", "The steps of the plan[ “{plan}”] are in the job.",
                        "{plan} is the short name of a plan of work")},
    {"run_appended",
     QT_TRANSLATE_NOOP3("phrasing", "Added to the job: “{procedure}”, round {round}.",
                        "{procedure} is the short name of a procedure")},
    {"run_appended/short_of_target",
     QT_TRANSLATE_NOOP3("phrasing",
                        "Added to the job: “{procedure}”, round {round}, because the bearings need "
                        "more preload.",
                        "{procedure} is the short name of a procedure")},
    {"run_appended/over_the_limit",
     QT_TRANSLATE_NOOP3("phrasing",
                        "Added to the job: “{procedure}”, round {round}, because the bearings need "
                        "less preload.",
                        "{procedure} is the short name of a procedure")},
    {"run_appended/packs_exhausted",
     QT_TRANSLATE_NOOP3("phrasing",
                        "Added to the job: “{procedure}”, round {round}, because no other shim "
                        "pack is allowed.",
                        "{procedure} is the short name of a procedure")},
    {"run_appended/worn",
     QT_TRANSLATE_NOOP3("phrasing",
                        "Added to the job: “{procedure}”, round {round}, because a bearing was "
                        "found worn.",
                        "{procedure} is the short name of a procedure")},
    {"run_appended/still_shakes",
     QT_TRANSLATE_NOOP3("phrasing",
                        "Added to the job: “{procedure}”, round {round}, because the steering "
                        "still shakes.",
                        "{procedure} is the short name of a procedure")},
    {"marked_before",
     QT_TRANSLATE_NOOP3("phrasing",
                        "Marked as done before recording[: {count} steps].[ Next comes the hold "
                        "“{hold}”: answer it for what stands there now.]",
                        "{count} is a number, {hold} the name of a hold point")},
    {"calculated", QT_TRANSLATE_NOOP3("phrasing", "The calculation[ “{text}”] is in the job.",
                                      "{text} is the title of a calculation")},
    {"runs_appended",
     QT_TRANSLATE_NOOP3("phrasing",
                        "Added to the job for another round[: {count} procedures][, from “{first}”]"
                        "[ to “{last}”].",
                        "short names of procedures")},
    {"stand_load",
     QT_TRANSLATE_NOOP3("phrasing",
                        "Each stand has to bear more than {needed} and is rated for {rated}.",
                        "{needed} and {rated} are masses")},
    {"stand_load/enough",
     QT_TRANSLATE_NOOP3("phrasing",
                        "Each stand has to bear more than {needed} and is rated for {rated}: by "
                        "its rating that is enough. Ground, chocks and the stand itself are looked "
                        "at apart.",
                        "{needed} and {rated} are masses")},
    {"stand_load/not_enough",
     QT_TRANSLATE_NOOP3("phrasing",
                        "Each stand has to bear more than {needed} and is rated for {rated}: that "
                        "is not enough. Take stronger stands.",
                        "{needed} and {rated} are masses")},
    {"hold_passed", QT_TRANSLATE_NOOP3("phrasing", "The hold[ “{hold}”] is answered in full.",
                                       "{hold} is the name of a hold point")},
    {"hold_not_passed",
     QT_TRANSLATE_NOOP3("phrasing",
                        "The hold[ “{hold}”] stops the job: the answer[ to “{ask}”] is not the "
                        "one needed. Put it right and answer again.",
                        "{hold} is the name of a hold point, {ask} one of its questions")},
    {"read_as", QT_TRANSLATE_NOOP3("phrasing", "[{field}: ]read as {value}.",
                                   "{value} is a figure with its unit")},
    {"read_as/bare_number",
     QT_TRANSLATE_NOOP3("phrasing", "[{field}: ]no unit was typed; read as {value}.",
                        "{value} is a figure with its unit")},
    {"read_as/mass_as_force",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]read as {value}[: a spring scale marked in {marked} shows "
                        "{shows}].",
                        "{marked} is kg or lb, {shows} kilogram-force or pound-force")},
    {"read_as/mass_as_torque",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]read as {value}: in a torque a unit of mass stands for the "
                        "force.",
                        "{value} is a figure with its unit")},
    {"read_as/comma_as_decimal",
     QT_TRANSLATE_NOOP3("phrasing", "[{field}: ]read as {value}: the comma is the decimal mark.",
                        "{value} is a figure with its unit")},
    {"state_differs",
     QT_TRANSLATE_NOOP3("phrasing",
                        "The limit[ “{limit}”] was given for another state of the hub than it was "
                        "pulled in, so it does not judge these readings.",
                        "{limit} is a line of the spec sheet")},
    {"readings_taken",
     QT_TRANSLATE_NOOP3("phrasing", "Readings taken: {used} of {planned} planned.",
                        "{used} and {planned} are numbers of readings")},
    {"verdict", QT_TRANSLATE_NOOP3("phrasing", "{verdict}[: {value}].[ {advice}]",
                                   "{verdict} as in “undecided, probably inside”")},
    {"verdict/provisional",
     QT_TRANSLATE_NOOP3("phrasing", "provisional, so far {so_far}[: {value}].[ {advice}]",
                        "{so_far} as in “undecided, probably inside”")},
    {"undone",
     QT_TRANSLATE_NOOP3("phrasing",
                        "Taken back: {kind}[, {count} entries]. It stays in the record, marked as "
                        "withdrawn.",
                        "undo of the last action; {kind} is a kind of entry, {count} how many")},
    {"series_moved",
     QT_TRANSLATE_NOOP3("phrasing",
                        "The readings now stand under the {side} side[, as series {series}]. What "
                        "was entered first stays in the record, marked as corrected.",
                        "{side} is left or right")},
    {"within_but_loose",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{side} side: ]the pull is within its limit, but the hub was found loose. "
                        "Without preload the number proves nothing.",
                        "{side} is left or right")},
    {"renew_not_shim",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{side} side: ]a bearing was found worn. Renew it; shims do not cure a "
                        "worn bearing.",
                        "{side} is left or right")},
    {"next_pack",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{side} side: ]next pack {stack} mm[, {total} in all]. Fit it and pull at "
                        "once; no drive in between.",
                        "{side} is left or right, {stack} shims like 0.5 + 0.25")},
    {"next_pack_unknown",
     QT_TRANSLATE_NOOP3("phrasing", "[{side} side: ]which pack is next cannot be told.",
                        "{side} is left or right")},
    {"next_pack_unknown/layout",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{side} side: ]which pack is next cannot be told: where the shims sit is "
                        "not on file, so it is open whether a thinner pack raises the pull. Enter "
                        "the shim layout of the vehicle.",
                        "{side} is left or right")},
    {"next_pack_unknown/pack",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{side} side: ]which pack is next cannot be told: the pack fitted now is "
                        "not recorded. Measure and enter it.",
                        "{side} is left or right")},
    {"next_pack_unknown/sizes",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{side} side: ]which pack is next cannot be told: the sizes of shims and "
                        "the thickest pack allowed are not on the spec sheet. Enter them.",
                        "{side} is left or right")},
    {"packs_exhausted",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{side} side: ]no allowed shim pack is left that way. Look at what else "
                        "can make the steering shake.",
                        "{side} is left or right")},
    {"still_shakes",
     QT_TRANSLATE_NOOP3("phrasing",
                        "The steering still shakes, and no shim pack was fitted in this job. Look "
                        "at what else can make it shake.",
                        "after a road test")},
    {"wrench_calibration",
     QT_TRANSLATE_NOOP3("phrasing", "Look at the calibration of the torque wrench[ “{wrench}”].",
                        "{wrench} is its name in the shop")},
    {"wrench_calibration/never_calibrated",
     QT_TRANSLATE_NOOP3("phrasing",
                        "The torque wrench[ “{wrench}”] has no calibration on file. It was "
                        "recorded with the torque.",
                        "{wrench} is its name in the shop")},
    {"wrench_calibration/due",
     QT_TRANSLATE_NOOP3("phrasing", "The torque wrench[ “{wrench}”] is due for calibration soon.",
                        "{wrench} is its name in the shop")},
    {"wrench_calibration/overdue",
     QT_TRANSLATE_NOOP3("phrasing",
                        "The torque wrench[ “{wrench}”] is overdue for calibration. It was "
                        "recorded with the torque.",
                        "{wrench} is its name in the shop")},
    {"overridden",
     QT_TRANSLATE_NOOP3("phrasing", "A rule was set aside; the reason stands in the record.",
                        "the mechanic overrode a rule of the job")},
    {"overridden/order",
     QT_TRANSLATE_NOOP3("phrasing",
                        "The order of the steps was set aside here; the reason stands in the "
                        "record.",
                        "the mechanic overrode a rule of the job")},
    {"overridden/wait",
     QT_TRANSLATE_NOOP3("phrasing",
                        "The waiting time was set aside here; the reason stands in the record.",
                        "the mechanic overrode a rule of the job")},
    {"overridden/not_proved",
     QT_TRANSLATE_NOOP3("phrasing",
                        "The reading may stand although it is not proved within its limit; the "
                        "reason stands in the record.",
                        "the mechanic overrode a rule of the job")},
    {"overridden/torque_set",
     QT_TRANSLATE_NOOP3("phrasing",
                        "A torque that differs from the spec sheet was accepted here; the reason "
                        "stands in the record.",
                        "the mechanic overrode a rule of the job")},
    {"signed_off",
     QT_TRANSLATE_NOOP3("phrasing",
                        "The job is signed off. The record says what was done and measured.",
                        "end of a job")},
    {"closed", QT_TRANSLATE_NOOP3("phrasing", "The job is closed[: {outcome}].",
                                  "{outcome} is how it ended")},
});

}  // namespace

std::span<const SentenceRow> eventSentences() {
  return kRows;
}

}  // namespace sw::phrasing
