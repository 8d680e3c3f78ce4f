// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>

#include "phrasing/sentence_tables.h"

namespace sw::phrasing {

namespace {

constexpr auto kRows = std::to_array<SentenceRow>({
    {"store.exists",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "There is a file already[: {path}]. Choose another name; nothing was overwritten.",
         "{path} is the book file, {text} what the system said")},
    {"store.cannot_create",
     QT_TRANSLATE_NOOP3("phrasing",
                        "The file could not be made[: {path}]. Check that the folder exists and "
                        "may be written to.[ The system says: {text}.]",
                        "{path} is the book file, {text} what the system said")},
    {"store.missing",
     QT_TRANSLATE_NOOP3("phrasing",
                        "There is no file[ {path}]. Check the place, or make a new book.",
                        "{path} is the book file, {text} what the system said")},
    {"store.foreign", QT_TRANSLATE_NOOP3("phrasing",
                                         "This file is none of our books[: {path}][ ({reason})]. "
                                         "It was not touched. Choose another file.",
                                         "{path} is the book file, {text} what the system said")},
    {"store.damaged",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "The book is damaged[: {path}][ ({reason})]. Nothing was changed; copy the file as it is "
         "and restore the newest backup copy.[ The system says: {text}.]",
         "{path} is the book file, {text} what the system said")},
    {"store.newer",
     QT_TRANSLATE_NOOP3("phrasing",
                        "The book was written by a newer program[: {path}][ (its version "
                        "{version}, ours {ours})]. Use that program; nothing was changed.",
                        "{path} is the book file, {text} what the system said")},
    {"store.needs_migration",
     QT_TRANSLATE_NOOP3("phrasing",
                        "The book is of an older version[: {path}][ (version {version})] and can "
                        "only be viewed after it was opened for writing once.",
                        "{path} is the book file, {text} what the system said")},
    {"store.read_only",
     QT_TRANSLATE_NOOP3("phrasing",
                        "The book cannot be written to[: {path}][ ({reason})]. Open it for viewing "
                        "only, or change the permissions.[ The system says: {text}.]",
                        "{path} is the book file, {text} what the system said")},
    {"store.view_only",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "The book is open for viewing only[: {path}]. Open it for writing to record this.",
         "{path} is the book file, {text} what the system said")},
    {"store.cannot_read",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "You may not read this file[: {path}]. Change the permissions or choose another file.",
         "{path} is the book file, {text} what the system said")},
    {"store.locked",
     QT_TRANSLATE_NOOP3("phrasing",
                        "Another program has the book open[: {path}][ – {who}][, since {since}]. "
                        "Close it there, or view the book without writing.",
                        "{who} has the book open since {since}")},
    {"store.busy",
     QT_TRANSLATE_NOOP3("phrasing",
                        "Another program is writing to the book just now. Nothing was recorded; "
                        "try again in a moment.[ The system says: {text}.]",
                        "{path} is the book file, {text} what the system said")},
    {"store.on_network",
     QT_TRANSLATE_NOOP3("phrasing",
                        "The book lies on a network file system[ ({file_system})][: {path}], where "
                        "a power cut can spoil it. Keep it on a disk of this computer.",
                        "{file_system} is the type of the file system")},
    {"store.disk_full", QT_TRANSLATE_NOOP3("phrasing",
                                           "The disk is full[: {path}]. Nothing was recorded; make "
                                           "room and do it again.[ The system says: {text}.]",
                                           "{path} is the book file, {text} what the system said")},
    {"store.io_error",
     QT_TRANSLATE_NOOP3("phrasing",
                        "The disk did not take or give the data[: {path}]. Nothing was recorded; "
                        "check the disk and do it again.[ The system says: {text}.]",
                        "{path} is the book file, {text} what the system said")},
    {"store.day_file",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "It is recorded in the book, but the second record beside it could not be written[: "
         "{path}]. Make room or check the disk.[ The system says: {text}.]",
         "{path} is the book file, {text} what the system said")},
    {"store.no_folder",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "There is no such folder[: {path}]. Plug in the stick or choose another folder.",
         "{path} is the book file, {text} what the system said")},
    {"store.copy_differs",
     QT_TRANSLATE_NOOP3("phrasing",
                        "The copy differs from the book[ ({reason})] and was not kept. Check the "
                        "disk and copy again.[ The system says: {text}.]",
                        "{path} is the book file, {text} what the system said")},
    {"store.backup_failed",
     QT_TRANSLATE_NOOP3("phrasing",
                        "No sound backup copy could be made first, so the book was left as it is. "
                        "Make room or check the disk.[ The system says: {text}.]",
                        "{path} is the book file, {text} what the system said")},
    {"store.no_room_to_migrate",
     QT_TRANSLATE_NOOP3("phrasing",
                        "There is not enough room to bring the book up to date[: {needed} bytes "
                        "are needed, {free} free]. Make room; the book was left as it is.",
                        "{needed} and {free} are numbers of bytes")},
    {"store.migration_failed",
     QT_TRANSLATE_NOOP3("phrasing",
                        "The book could not be brought up to date[ (at {step})]. It was left as it "
                        "was; keep the backup copy.[ The system says: {text}.]",
                        "{step} names the migration")},
    {"store.file_replaced",
     QT_TRANSLATE_NOOP3("phrasing",
                        "The book file was replaced or moved while it was open[: {path}]. Nothing "
                        "more is recorded; close it and open the right file.",
                        "{path} is the book file, {text} what the system said")},
    {"store.reopen_needed",
     QT_TRANSLATE_NOOP3("phrasing",
                        "An earlier fault left the book in doubt[: {path}]. Nothing more is "
                        "recorded until it is closed and opened again.[ The system says: {text}.]",
                        "{path} is the book file, {text} what the system said")},
    {"store.setting_refused",
     QT_TRANSLATE_NOOP3("phrasing",
                        "The database did not take the setting {name}[ ({found} instead of "
                        "{expected})]. The book was not opened; repair the installation.",
                        "a setting of the database that guards against power cuts")},
    {"store.no_driver",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "The database part of the program is not installed. Install the SQLite driver of Qt 6.",
         "installation fault")},
    {"store.sql", QT_TRANSLATE_NOOP3("phrasing",
                                     "The database refused a command. Nothing was recorded; please "
                                     "report this.[ The system says: {text}.]",
                                     "program fault")},
    {"store.constraint", QT_TRANSLATE_NOOP3("phrasing",
                                            "The entry contradicts what the book holds. Nothing "
                                            "was recorded.[ The system says: {text}.]",
                                            "program fault or wrong import")},
    {"store.unknown_reference",
     QT_TRANSLATE_NOOP3("phrasing",
                        "The entry refers to something that is not in the book. Nothing was "
                        "recorded; choose an existing one.[ The system says: {text}.]",
                        "an entry points at another that is not there")},
    {"store.already_replaced",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "This entry was corrected already. Correct the newest one of its chain instead.",
         "corrections form a chain")},
    {"store.replaces_other_job",
     QT_TRANSLATE_NOOP3("phrasing",
                        "A correction must belong to the same job as the entry it replaces. Choose "
                        "the entry again.",
                        "corrections form a chain")},
    {"store.replaces_other_kind",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "A correction must be of the same kind as the entry it replaces. Choose the entry again.",
         "corrections form a chain")},
    {"store.insert_only",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "What is recorded is never changed or deleted. Record a correction with a reason instead.",
         "facts are only ever added")},
    {"store.wrong_kind", QT_TRANSLATE_NOOP3("phrasing",
                                            "The entry and its details are of different kinds. "
                                            "Nothing was recorded; please report this.",
                                            "program fault")},
    {"store.unknown_kind",
     QT_TRANSLATE_NOOP3("phrasing",
                        "“{kind}” is no kind of entry this program knows. Use a newer program.",
                        "entry in the book")},
    {"store.bad_value",
     QT_TRANSLATE_NOOP3("phrasing",
                        "The book holds a value that cannot be read[ (entry {entry}, {column})]. "
                        "Run check-book, and restore a backup copy if it finds damage.",
                        "{column} is the name in the file")},
    {"store.fact_missing",
     QT_TRANSLATE_NOOP3("phrasing",
                        "An entry of the book has lost its content[ (entry {entry})]. Run "
                        "check-book, and restore a backup copy if it finds damage.",
                        "damaged book")},
    {"store.no_picture",
     QT_TRANSLATE_NOOP3("phrasing",
                        "The picture is not in the book[ ({hash})]. Add the photo again.",
                        "{hash} names the picture")},
    {"store.bad_text",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "The text is not readable (not UTF-8, or it holds a null character). Type it again.",
         "text from a file or script")},
    {"store.not_finite",
     QT_TRANSLATE_NOOP3("phrasing",
                        "A number to be recorded is not finite. Enter an ordinary number.",
                        "program fault or wrong import")},
    {"store.time_out_of_range",
     QT_TRANSLATE_NOOP3("phrasing",
                        "The date of the entry lies outside the years that can be kept[ (entry "
                        "{entry})]. Check the clock and the date.",
                        "date of an entry")},
    {"store.ids_not_consecutive",
     QT_TRANSLATE_NOOP3("phrasing",
                        "The entries are not numbered one after the other[ ({found} instead of "
                        "{expected})]. Nothing was recorded; open the book again.",
                        "program fault")},
});

}  // namespace

std::span<const SentenceRow> storeSentences() {
  return kRows;
}

}  // namespace sw::phrasing
