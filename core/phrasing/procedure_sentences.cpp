// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>

#include "phrasing/sentence_tables.h"

namespace sw::phrasing {

namespace {

constexpr auto kRows = std::to_array<SentenceRow>({
    {"json.invalid",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]this is not sound JSON[, from byte {position} on][, at "
                        "“{text}”]. Correct the text there[ (file {file})][ (step {step})].",
                        "{field} is the place in the file, {file} the file, {step} the step")},
    {"json.duplicate_key",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]“{key}” stands twice in one object. Leave one of them out[ "
                        "(file {file})][ (step {step})].",
                        "{field} is the place in the file, {file} the file, {step} the step")},
    {"json.too_deep",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]lists and objects are nested more than 64 deep. Write it "
                        "flatter[ (file {file})][ (step {step})].",
                        "{field} is the place in the file, {file} the file, {step} the step")},
    {"json.too_large",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]the text is larger than 64 MB. Split it[ (file {file})][ (step {step})].",
         "{field} is the place in the file, {file} the file, {step} the step")},
    {"json.wrong_kind",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]this should be: {expected}. Correct it[ (file {file})][ (step {step})].",
         "{field} is the place in the file, {file} the file, {step} the step")},
    {"json.missing",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]this is missing. Add it[ (file {file})][ (step {step})].",
                        "{field} is the place in the file, {file} the file, {step} the step")},
    {"json.not_one_of",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ][“{text}” is ]none of the words allowed here. Check its "
                        "spelling[; allowed are: {choices}][ (file {file})][ (step {step})].",
                        "{field} is the place in the file, {file} the file, {step} the step")},
    {"json.unknown_field",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]“{key}” is no field known here. Check its spelling or leave it "
                        "out[ (file {file})][ (step {step})].",
                        "{field} is the place in the file, {file} the file, {step} the step")},
    {"model.unknown_kind",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]“{kind}” is no kind of entry this program knows. Check its "
                        "spelling, or use a newer program.",
                        "entry read from a file")},
    {"procedure.schema",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]this file follows version {text} of the format, which this program does not "
         "know. Use a newer program or a file of version 1[ (file {file})][ (step {step})].",
         "{field} is the place in the file, {file} the file, {step} the step")},
    {"procedure.bad_id",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]“{text}” cannot be a name here. Use small letters, digits, _ "
                        "and -, at most 64[ (file {file})][ (step {step})].",
                        "{field} is the place in the file, {file} the file, {step} the step")},
    {"procedure.empty_text",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the text is empty. Say something or leave the field out[ (file "
                        "{file})][ (step {step})].",
                        "{field} is the place in the file, {file} the file, {step} the step")},
    {"procedure.control_character",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the text holds a character that cannot be printed. Remove it[ "
                        "(file {file})][ (step {step})].",
                        "{field} is the place in the file, {file} the file, {step} the step")},
    {"procedure.empty_list",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]the list is empty. Name at least one[ (file {file})][ (step {step})].",
         "{field} is the place in the file, {file} the file, {step} the step")},
    {"procedure.out_of_range",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the number is outside what is possible here. Check it[ (file "
                        "{file})][ (step {step})].",
                        "{field} is the place in the file, {file} the file, {step} the step")},
    {"procedure.no_steps",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]there is no step. A procedure needs at least one[ (file "
                        "{file})][ (step {step})].",
                        "{field} is the place in the file, {file} the file, {step} the step")},
    {"procedure.too_many_steps",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]there are more than 400 steps. Split the procedure[ (file "
                        "{file})][ (step {step})].",
                        "{field} is the place in the file, {file} the file, {step} the step")},
    {"procedure.duplicate_step",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]an earlier step has the same name. Give each step its own[ "
                        "(file {file})][ (step {step})].",
                        "{field} is the place in the file, {file} the file, {step} the step")},
    {"procedure.duplicate_word",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]“{text}” stands twice here. Give each answer and statement its "
                        "own word[ (file {file})][ (step {step})].",
                        "{field} is the place in the file, {file} the file, {step} the step")},
    {"procedure.need_not_earlier",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the step waits for “{text}”, which is no earlier step of this "
                        "file. Name steps that stand above it[ (file {file})][ (step {step})].",
                        "{field} is the place in the file, {file} the file, {step} the step")},
    {"procedure.block_missing",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ][a step of kind “{kind}” needs this; ]it is missing. Add it[ "
                        "(file {file})][ (step {step})].",
                        "{field} is the place in the file, {file} the file, {step} the step")},
    {"procedure.block_not_of_kind",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]a step of kind “{kind}” never shows this. Change the kind or "
                        "make it a step of its own[ (file {file})][ (step {step})].",
                        "{field} is the place in the file, {file} the file, {step} the step")},
    {"procedure.unknown_fact",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]“{fact}” is nothing a condition can ask about. Check its "
                        "spelling[ (file {file})][ (step {step})].",
                        "{field} is the place in the file, {file} the file, {step} the step")},
    {"procedure.unknown_fact_word",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]“{text}” is never the answer to this. Use one of: {choices}[ "
                        "(file {file})][ (step {step})].",
                        "{field} is the place in the file, {file} the file, {step} the step")},
    {"procedure.unknown_quantity",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]“{text}” is no kind of quantity. Use a kind such as force, "
                        "length or torque[ (file {file})][ (step {step})].",
                        "{field} is the place in the file, {file} the file, {step} the step")},
    {"procedure.unknown_instrument",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]“{text}” is no kind of instrument. Use a kind such as "
                        "spring_scale or micrometer[ (file {file})][ (step {step})].",
                        "{field} is the place in the file, {file} the file, {step} the step")},
    {"procedure.bad_calculation",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]“{text}” is no name of a calculation. Write it in small letters "
         "with hyphens, as compute --list does[ (file {file})][ (step {step})].",
         "{field} is the place in the file, {file} the file, {step} the step")},
    {"procedure.bad_angle",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]“{text}” is not an angle from 0 to less than 90 degrees. Write "
                        "it like 10 deg[ (file {file})][ (step {step})].",
                        "{field} is the place in the file, {file} the file, {step} the step")},
    {"procedure.bad_stages",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the stages must be fractions of the torque that rise and end "
                        "with 1, such as 0.5 and 1. Correct them[ (file {file})][ (step {step})].",
                        "{field} is the place in the file, {file} the file, {step} the step")},
    {"procedure.needs_limit",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]a reading that decides something needs a limit. Name its line "
                        "of the spec sheet[ (file {file})][ (step {step})].",
                        "{field} is the place in the file, {file} the file, {step} the step")},
    {"procedure.needs_state",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]a pull that decides about the next pack needs the state it is "
                        "taken in. Add it[ (file {file})][ (step {step})].",
                        "{field} is the place in the file, {file} the file, {step} the step")},
    {"procedure.ledger_state",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]“{text}” is no state of an item of type “{type}”. Removed "
                        "items are off, hand_tight, torqued or back; put_on items are on or "
                        "taken_off[ (file {file})][ (step {step})].",
                        "{field} is the place in the file, {file} the file, {step} the step")},
    {"procedure.ledger_missing",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]a step of kind “{kind}” must say what it does to which item. "
                        "Add the item that comes off or goes back[ (file {file})][ (step {step})].",
                        "{field} is the place in the file, {file} the file, {step} the step")},
    {"procedure.raises_and_lowers",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]one step cannot both raise and lower the vehicle. Make two "
                        "steps[ (file {file})][ (step {step})].",
                        "{field} is the place in the file, {file} the file, {step} the step")},
    {"procedure.too_few_choices",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]a question needs at least two answers. Add one[ (file "
                        "{file})][ (step {step})].",
                        "{field} is the place in the file, {file} the file, {step} the step")},
    {"procedure.choice_cannot_fail",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]every answer passes, so the hold would stop nobody. Add an "
                        "answer with passes: false[ (file {file})][ (step {step})].",
                        "{field} is the place in the file, {file} the file, {step} the step")},
    {"procedure.choice_cannot_pass",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]no answer passes, so nobody could go on. Let one pass[ (file "
                        "{file})][ (step {step})].",
                        "{field} is the place in the file, {file} the file, {step} the step")},
    {"procedure.no_statement",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]there is a case in which the hold asks nothing. Add a statement for it or a "
         "condition on the step[ (file {file})][ (step {step})].",
         "{field} is the place in the file, {file} the file, {step} the step")},
    {"procedure.too_many_statements",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]there is a case in which the hold asks more than three "
                        "statements. Keep the three that matter[ (file {file})][ (step {step})].",
                        "{field} is the place in the file, {file} the file, {step} the step")},
    {"procedure.too_many_conditions",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the conditions of this hold have too many combinations to "
                        "check. Use fewer facts[ (file {file})][ (step {step})].",
                        "{field} is the place in the file, {file} the file, {step} the step")},
    {"procedure.too_large",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "[{field}: ]the file is larger than 1 MB. Shorten it[ (file {file})][ (step {step})].",
         "{field} is the place in the file, {file} the file, {step} the step")},
    {"procedure.cannot_read",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the file cannot be read. Check that it is a file and that you "
                        "may read it[ (file {file})][ (step {step})].",
                        "{field} is the place in the file, {file} the file, {step} the step")},
    {"procedure.folder_missing",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the folder {file} cannot be read. Check the installation.",
                        "{field} is the place in the file, {file} the file, {step} the step")},
    {"procedure.id_not_file_name",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the file calls itself “{id}”. A file must be named after its "
                        "id[ (file {file})][ (step {step})].",
                        "{field} is the place in the file, {file} the file, {step} the step")},
    {"procedure.unknown_procedure",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[{field}: ]the procedure “{procedure}” is not there or could not be read. "
                        "Check its name and its own message[ (file {file})][ (step {step})].",
                        "{field} is the place in the file, {file} the file, {step} the step")},
});

}  // namespace

std::span<const SentenceRow> procedureSentences() {
  return kRows;
}

}  // namespace sw::phrasing
