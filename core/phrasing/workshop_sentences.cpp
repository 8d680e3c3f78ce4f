// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>

#include "phrasing/sentence_tables.h"

namespace sw::phrasing {

namespace {

constexpr auto kRows = std::to_array<SentenceRow>({
    {"workshop.no_job",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]there is no job[ {job}]. Check its number in the list of jobs.",
                        "{job} is the number")},
    {"workshop.which_job",
     QT_TRANSLATE_NOOP3("phrasing", "[{field}: ]say which job it is for. Add its number.",
                        "a command without job")},
    {"workshop.job_closed", QT_TRANSLATE_NOOP3("phrasing",
                                               "[{field}: ]the job[ {job}] is closed. Open a new "
                                               "job for more work; corrections are still possible.",
                                               "{job} is the number")},
    {"workshop.who",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]say who did it. Add the initials of a person on file.",
                        "initials")},
    {"workshop.no_person", QT_TRANSLATE_NOOP3("phrasing",
                                              "[{field}: ]nobody on file has the initials "
                                              "“{text}”. Add the person or check the initials.",
                                              "initials")},
    {"workshop.initials_taken",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the initials “{text}” belong to somebody else. Choose others.",
                        "initials")},
    {"workshop.no_vehicle",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]there is no vehicle “{text}” on file. Add it or check the registration.",
         "vehicle")},
    {"workshop.no_instrument",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]there is no instrument[ “{text}”] on file. Add it or check its name.",
         "instrument")},
    {"workshop.instrument_wrong_kind",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]“{text}” does not measure {expected}. Choose an instrument that does.",
         "{expected} is a kind of quantity")},
    {"workshop.no_wrench",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]there is no torque wrench “{text}” on file. Add it or check its name.",
         "torque wrench")},
    {"workshop.wrench_out_of_range",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]{set} is outside the range of {wrench}[, from {min}][, up to "
                        "{max}]. Use a wrench that covers it.",
                        "torque wrench")},
    {"workshop.torque_set_differs",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the wrench was set to {set}, the spec sheet says {expected} "
                        "({key}). Set it right and tighten again, or override with a reason.",
                        "torque wrench")},
    {"workshop.torque_not_on_file",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the spec sheet has no torque for {name} ({key}). Enter it from "
                        "the documentation of the vehicle.",
                        "{key} is a line of the spec sheet")},
    {"workshop.spec_needs_count",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the spec sheet does not say how many fasteners {name} are "
                        "({key}). Enter the number.",
                        "{key} is a line of the spec sheet")},
    {"workshop.no_such_stage",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]there is no stage {text}; the torque has {stages}. Enter one of them.",
         "stages of tightening")},
    {"workshop.more_than_count",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]{text} fasteners were marked, the group has {count}. Enter at most {count}.",
         "group of fasteners")},
    {"workshop.empty_spec_sheet",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the vehicle “{text}” has no spec sheet to take from. Choose "
                        "another vehicle or enter the lines.",
                        "spec sheet")},
    {"workshop.limits_reversed",
     QT_TRANSLATE_NOOP3(
         "phrasing", "[{field}: ]the lower limit {min} is above the upper limit {max}. Check both.",
         "spec sheet")},
    {"workshop.must_be_positive",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]“{text}” must be greater than zero. Check the figure and its unit.", "input")},
    {"workshop.field_needed",
     QT_TRANSLATE_NOOP3("phrasing", "[{field}: ]this is needed. Enter it.", "input")},
    {"workshop.not_left_out",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]this job was not left out of learning: there is nothing to "
                        "take back.",
                        "table of causes")},
    {"workshop.not_money",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]“{text}” is not an amount of money. Type it like {example}.",
                        "price")},
    {"workshop.not_a_count",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]“{text}” is not a number of things. Enter a whole number.",
                        "answer at a hold point")},
    {"workshop.axle_load_needed",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the front axle load is not on file. Enter it with the vehicle, "
                        "from its plate or its documentation.",
                        "load on axle stands")},
    {"workshop.done_in_future",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]“{text}” lies in the future. Check the date and the time.",
                        "time an entry was done at")},
    {"workshop.unknown_command",
     QT_TRANSLATE_NOOP3("phrasing", "[{field}: ]“{text}” is no command. Check its spelling.",
                        "line of a script")},
    {"workshop.no_plan",
     QT_TRANSLATE_NOOP3(
         "phrasing", "[{field}: ]there is no plan “{text}”. Check its name in the list of plans.",
         "plan: procedures in order")},
    {"workshop.no_procedure",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]there is no procedure “{text}”. Check its name in the list of procedures.",
         "procedure")},
    {"workshop.no_procedure_text",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the text of the procedure “{procedure}” is missing from the "
                        "book or cannot be read. Run check-book.",
                        "damaged book")},
    {"workshop.no_run",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]there is no run “{text}” in this job. Check its name in the plan of the job.",
         "procedure run")},
    {"workshop.no_step",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]there is no step “{text}”[ on the {side} side] in this job. "
                        "Name it as procedure/step, with its side.",
                        "{step} is the step as procedure/step")},
    {"workshop.step_needed",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]say which step it belongs to. Name it as procedure/step, with its side.",
         "{step} is the step as procedure/step")},
    {"workshop.not_yet",
     QT_TRANSLATE_NOOP3("phrasing", "[{field}: ]this step must wait: {refusals}.",
                        "{refusals} lists what comes first")},
    {"workshop.step_lacks",
     QT_TRANSLATE_NOOP3("phrasing", "[{field}: ]the step is not done yet: {refusals}.",
                        "{refusals} lists what is missing")},
    {"workshop.sign_off_refused",
     QT_TRANSLATE_NOOP3("phrasing", "[{field}: ]the job cannot be signed off yet: {refusals}.",
                        "{refusals} lists what is missing")},
    {"workshop.ledger_not_clear",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]not everything is back where it belongs: {refusals}.",
                        "{refusals} lists the items")},
    {"workshop.no_drive", QT_TRANSLATE_NOOP3("phrasing", "[{field}: ]no drive yet: {refusals}.",
                                             "{refusals} lists what is missing")},
    {"workshop.support_first",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]say first what will carry the vehicle: stands, two_post, four_post or pit.",
         "support")},
    {"workshop.no_hold_here",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the step {step} is no hold point. Name the step that holds.",
                        "{step} is the step as procedure/step")},
    {"workshop.no_statement",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]this hold has no statement[ “{text}”]. Check its key in the procedure.",
         "hold point")},
    {"workshop.hold_is_answered",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]the hold {step} cannot be ticked off. Answer its statements one by one.",
         "{step} is the step as procedure/step")},
    {"workshop.nothing_measured_here",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]nothing is measured at {step}. Name the step the readings belong to.",
         "{step} is the step as procedure/step")},
    {"workshop.planned_out_of_range",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]{text} is no possible number of readings. Fix a number from 1 up beforehand.",
         "planned number of readings")},
    {"workshop.reading_off_scale",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]{text} cannot be read on {instrument}[, which ends at {max}]. "
                        "Check the reading and the instrument.",
                        "reading")},
    {"workshop.not_observed_here",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]“{text}” is not asked at this step. Check the key in the procedure.",
         "observation")},
    {"workshop.no_torque_here",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]nothing is tightened to a torque at {step}. Name the step that is.",
         "{step} is the step as procedure/step")},
    {"workshop.no_pack_here",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]no shim pack is recorded at {step}. Name the step that asks for it.",
         "{step} is the step as procedure/step")},
    {"workshop.no_timer_here",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]there is no waiting time at {step}. Name the step that waits.",
                        "{step} is the step as procedure/step")},
    {"workshop.no_road_test_here",
     QT_TRANSLATE_NOOP3("phrasing", "[{field}: ]{step} is no road test. Name the step that is.",
                        "{step} is the step as procedure/step")},
    {"workshop.timer_not_started",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the waiting time of {step} was never started. Start it first.",
                        "{step} is the step as procedure/step")},
    {"workshop.timer_running",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]{step} waits for {minutes} more minutes. Wait, or override with a reason.",
         "{step} is the step as procedure/step")},
    {"workshop.ledger_kind", QT_TRANSLATE_NOOP3("phrasing",
                                                "[{field}: ]“{item}” cannot be {state}. Removed "
                                                "items go back, put-on items are taken off.",
                                                "item that came off or was put on")},
    {"workshop.no_such_override",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the rule “{text}” cannot be overridden. These can: {choices}.",
                        "override of a rule")},
    {"workshop.no_picture_reader",
     QT_TRANSLATE_NOOP3(
         "phrasing", "[{field}: ]this program cannot read pictures. Add the photo in the window.",
         "photo")},
    {"workshop.no_recheck",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]entry {text} is no recheck of this job. The list of what is "
                        "due shows their numbers.",
                        "recheck by number")},
    {"workshop.recheck_is_done",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the recheck of entry {text} was recorded as done already. "
                        "Correct that entry instead.",
                        "recheck by number")},
    {"workshop.no_entry",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]there is no entry {text} in this job. Check its number.",
                        "entry by number")},
    {"workshop.already_replaced",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]entry {text} was corrected or withdrawn already. Use the "
                        "newest one of its chain.",
                        "entry by number")},
    {"workshop.no_such_field",
     QT_TRANSLATE_NOOP3("phrasing", "[{field}: ]the entry has no field “{text}”. Check its name.",
                        "correction of one field")},
    {"workshop.field_cannot_change",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]this field cannot be corrected on its own. Withdraw the entry "
                        "and record it anew.",
                        "correction of one field")},
    {"workshop.not_corrected_so",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]an entry of this kind ({kind}) is not corrected this way. Record a new one.",
         "{kind} is the kind of entry")},
    {"workshop.not_withdrawn_so",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]an entry of this kind ({kind}) cannot be withdrawn. Record what is true now.",
         "{kind} is the kind of entry")},
    {"workshop.pack_is_a_sum",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the pack is the sum of its shims ({text}). Correct the shims; "
                        "total and count follow.",
                        "correction of a shim pack; {text} is the stack as typed")},
    {"workshop.nothing_before",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]nothing before {step} is left to be marked.[ A hold comes "
                        "first ({hold}): answer it.]",
                        "{step} is a step, {hold} the key of a hold point")},
    {"workshop.nothing_to_undo",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]there is nothing to undo. Opening and closing a job are not "
                        "taken back.",
                        "undo of the last action")},
    {"workshop.nothing_changes",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]“{text}” is what stands there already. Nothing was recorded.",
                        "correction of one field")},
    {"workshop.no_series",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]there is no series {text} in this job. Check its number.",
                        "series of readings")},
    {"workshop.series_without_side",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the series belongs to no side, so it cannot be moved to the "
                        "other. Correct its readings instead.",
                        "series of readings")},
    {"workshop.sign_off_is_apart",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]signing off is a command of its own, with its checks. Use it.",
                        "end of a job")},
    {"workshop.nothing_declined",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]no declined work is recorded. Record it first, in the words of the owner.",
         "end of a job")},
});

}  // namespace

std::span<const SentenceRow> workshopSentences() {
  return kRows;
}

}  // namespace sw::phrasing
