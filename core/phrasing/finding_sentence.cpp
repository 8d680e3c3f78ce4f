// SPDX-License-Identifier: GPL-3.0-or-later
#include "phrasing/finding_sentence.h"

#include <QtCore/QCoreApplication>
#include <algorithm>
#include <array>

#include "phrasing/key_values.h"
#include "phrasing/names.h"
#include "phrasing/verdict_phrase.h"

namespace sw::phrasing {

namespace {

constexpr std::string_view kArea = "check.";

constexpr auto kRows = std::to_array<SentenceRow>({
    {"check.sound",
     QT_TRANSLATE_NOOP3("phrasing", "The book is sound[: {entries} in {jobs}][, {notes}].",
                        "{entries} is “563 entries”, {jobs} “12 jobs”, {notes} “1 note”")},
    {"check.faulty",
     QT_TRANSLATE_NOOP3(
         "phrasing",
         "The book is not sound[: {faults}][ in {entries}][, {notes}]. Nothing was changed. Copy "
         "the file as it is before anything else; then see whether the newest backup copy is "
         "sound.",
         "{faults} is “1 fault”, {entries} “563 entries”, {notes} “1 note”")},
    {"check.integrity", QT_TRANSLATE_NOOP3("phrasing", "The file is damaged[: {text}].",
                                           "{text} is what the database engine said")},
    {"check.foreign_key",
     QT_TRANSLATE_NOOP3("phrasing", "Something points at what is not in the book[ ({text})].",
                        "{text} is table, row and the table pointed at")},
    {"check.schema",
     QT_TRANSLATE_NOOP3("phrasing",
                        "The tables and triggers of the book are not those this program makes: "
                        "something else altered it.",
                        "result of checking a book")},
    {"check.gap",
     QT_TRANSLATE_NOOP3("phrasing",
                        "Entries are missing[: there are {count}, the newest is number {newest}].",
                        "{count} is a number of entries")},
    {"check.fact_missing",
     QT_TRANSLATE_NOOP3("phrasing", "[Entry {entry}: ]the content is missing[ ({kind})].",
                        "{kind} is the kind of entry")},
    {"check.fact_extra",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[Entry {entry}: ]there is content of another kind than the entry is of[ "
                        "({kind})].",
                        "{kind} is the kind of entry")},
    {"check.replaces_forward",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[Entry {entry}: ]it corrects an entry that is not older than itself[ "
                        "(number {text})].",
                        "{text} is the number of the other entry")},
    {"check.replaces_other_job",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[Entry {entry}: ]it corrects an entry of another job[ (number {text})].",
                        "{text} is the number of the other entry")},
    {"check.replaces_other_kind",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[Entry {entry}: ]it corrects an entry of another kind[ (number {text})].",
                        "{text} is the number of the other entry")},
    {"check.run_not_started",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[Entry {entry}: ]it belongs to a procedure that was not started in its "
                        "job[ (number {text})].",
                        "{text} is the number of the entry that should have started it")},
    {"check.by_not_a_person",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[Entry {entry}: ]who made it is not a person of the book[ (number "
                        "{text})].",
                        "{text} is the number of an entry")},
    {"check.job_not_opened",
     QT_TRANSLATE_NOOP3(
         "phrasing", "[Entry {entry}: ]it belongs to a job that was never opened[ (job {text})].",
         "{text} is the number of the job")},
    {"check.wrong_reference",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[Entry {entry}: ]it points at an entry of the wrong kind or job[ "
                        "({text})].",
                        "{text} is the column that points")},
    {"check.picture_missing",
     QT_TRANSLATE_NOOP3("phrasing", "[Entry {entry}: ]its picture is not in the book[ ({text})].",
                        "{text} is the fingerprint of the picture")},
    {"check.procedure_missing",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[Entry {entry}: ]the text of the procedure it started is not in the "
                        "book[ ({text})].",
                        "{text} is the fingerprint of the procedure")},
    {"check.verdict_differs",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[Entry {entry}: ]computed again from its readings the verdict comes out "
                        "differently[: in the book “{given}”, computed “{computed}”].",
                        "{given} and {computed} are verdicts")},
    {"check.verdict_without_basis",
     QT_TRANSLATE_NOOP3("phrasing",
                        "[Entry {entry}: ]the readings, instrument or limit of this verdict are "
                        "missing, so it cannot be computed again.",
                        "result of checking a book")},
    {"check.clock_went_back",
     QT_TRANSLATE_NOOP3("phrasing",
                        "Note: an entry[ (number {entry})] bears an earlier time than the one "
                        "before it[ ({text})]. The computer's clock was set back; nothing is wrong "
                        "with the entry.",
                        "{text} is date and time")},
    {"check.cannot_read",
     QT_TRANSLATE_NOOP3("phrasing",
                        "Not everything could be checked[ ({check})].[ The system says: {text}.]",
                        "{check} is the technical name of a check")},
});

struct Counted {
  std::string_view name;
  Source one;
  Source many;
};

// The plural goes through Qt's numerus forms; the source texts read right without a translation.
constexpr std::array kCounted = {
    Counted{"entries", QT_TRANSLATE_NOOP3("phrasing", "1 entry", "counted in a book"),
            QT_TRANSLATE_N_NOOP3("phrasing", "%n entries", "counted in a book")},
    Counted{"jobs", QT_TRANSLATE_NOOP3("phrasing", "1 job", "counted in a book"),
            QT_TRANSLATE_N_NOOP3("phrasing", "%n jobs", "counted in a book")},
    Counted{"faults", QT_TRANSLATE_NOOP3("phrasing", "1 fault", "counted in a book"),
            QT_TRANSLATE_N_NOOP3("phrasing", "%n faults", "counted in a book")},
    Counted{"notes", QT_TRANSLATE_NOOP3("phrasing", "1 note", "counted in a book"),
            QT_TRANSLATE_N_NOOP3("phrasing", "%n notes", "counted in a book")},
};

QString countedText(const Counted& counted, int n) {
  if (n == 1) return translated(counted.one);
  return QCoreApplication::translate("phrasing", counted.many.text, counted.many.remark, n);
}

/// Of a book so damaged that nothing was counted no number of entries is told; "no notes" never is.
bool worthTelling(const std::string& key, std::string_view name, int n) {
  if (n > 0) return true;
  return name == "jobs" || (name == "entries" && key == "check.sound");
}

QString checkName(const std::string& check) {
  return spaced(check.starts_with(kArea) ? check.substr(kArea.size()) : check);
}

/// What a placeholder of the sentence stands for.
QString detailText(const std::string& key, const KeyValues& details, const QString& placeholder) {
  const std::string name = placeholder.toStdString();
  if (name == "count") return shown(valueOf(details, "entries"));
  if (name == "kind") return factName(valueOf(details, "text"));
  const std::string value = valueOf(details, name);
  if (name == "given" || name == "computed") return verdictName(value, {});
  if (name == "check") return checkName(value);
  const auto counted = std::find_if(kCounted.begin(), kCounted.end(),
                                    [&](const Counted& row) { return row.name == name; });
  if (counted == kCounted.end()) return shown(value);
  bool isNumber = false;
  const int n = QString::fromStdString(value).toInt(&isNumber);
  return isNumber && worthTelling(key, name, n) ? countedText(*counted, n) : QString();
}

}  // namespace

QString findingSentence(const std::string& key, const KeyValues& details) {
  const Source* source = sourceIn(kRows, key);
  if (source == nullptr) return keyAndValues(key, details);
  return withCapital(filled(translated(*source),
                            [&](const QString& name) { return detailText(key, details, name); }));
}

std::vector<std::string_view> findingKeys() {
  std::vector<std::string_view> keys;
  for (const SentenceRow& row : kRows) keys.push_back(row.key);
  return keys;
}

}  // namespace sw::phrasing
