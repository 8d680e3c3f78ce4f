// SPDX-License-Identifier: GPL-3.0-or-later
#include <QStringList>
#include <algorithm>
#include <set>

#include "phrasing/names.h"
#include "report/fact_text.h"
#include "report/quantity_text.h"
#include "report/sheet_sections.h"
#include "report/wording.h"

namespace sw::report {

namespace {

using model::Entry;

constexpr std::string_view kJudgedAgain = "judged again";

Section withTable(const char* title, Table table) {
  Section section{QString::fromUtf8(title), {}};
  if (!table.rows.empty()) section.blocks.push_back(std::move(table));
  return section;
}

QString kindText(const SheetContext& context, const Entry& entry) {
  QString text = capitalised(phrasing::factName(model::kindOf(entry.payload)));
  if (!entry.step.empty()) text += QStringLiteral(", ") + context.stepTitle(entry);
  return text;
}

/// A verdict given again because a reading came in, or because its series was corrected: the
/// reading or series tells it.
bool followsFromAnother(const SheetContext& context, const Entry& entry) {
  if (entry.reasonText == kJudgedAgain) return true;
  const Entry* before = context.entry(*entry.replaces);
  return before == nullptr || model::as<model::VerdictGiven>(*before) != nullptr;
}

Row correctionRow(const SheetContext& context, const Entry& entry) {
  const Entry& before = *context.entry(*entry.replaces);
  const bool withdrawn = model::as<model::Withdrawal>(entry) != nullptr;
  Cell was{{styled(fieldsText(before, withdrawn ? nullptr : &entry), Emphasis::Struck)}};
  Cell now = withdrawn ? Cell{{styled(QStringLiteral("withdrawn"), Emphasis::Strong)}}
                       : cellOf(fieldsText(entry, &before));
  return {
      {cellOf(kindText(context, before)), std::move(was), std::move(now), cellOf(reasonText(entry)),
       Cell{{styled(context.initials(entry.by) + QStringLiteral(", ") + timeText(entry.enteredAt),
                    Emphasis::Quiet)}}},
      RowKind::Body};
}

QString dueText(const model::RecheckDue& due) {
  QStringList parts;
  if (due.on) parts += QStringLiteral("by ") + dateText(*due.on);
  if (due.atOdometer) parts += QStringLiteral("at ") + typed(*due.atOdometer);
  return parts.join(QStringLiteral(" or "));
}

/// What a recheck found, by whom and when; empty while it is due.
QString recheckText(const SheetContext& context, const Entry* entry) {
  if (entry == nullptr) return {};
  return fromUtf8(model::as<model::RecheckDone>(*entry)->result) + QStringLiteral(" (") +
         context.initials(entry->by) + QStringLiteral(", ") + timeText(entry->doneAt) +
         QStringLiteral(")");
}

}  // namespace

Section declinedSection(const SheetContext& context) {
  Table table;
  table.columns = {{QStringLiteral("Work declined"), 44, Align::Left},
                   {QStringLiteral("The owner's words"), 36, Align::Left},
                   {QStringLiteral("Recorded by, when"), 20, Align::Left}};
  context.each<model::WorkDeclined>([&](const Entry& entry, const model::WorkDeclined& declined) {
    table.rows.push_back({{cellOf(fromUtf8(declined.what)), cellOf(fromUtf8(declined.words)),
                           context.byCell(&entry)},
                          RowKind::Body});
  });
  return withTable("Declined work", std::move(table));
}

Section rechecksSection(const SheetContext& context) {
  Table table;
  table.columns = {{QStringLiteral("Recheck"), 40, Align::Left},
                   {QStringLiteral("Due"), 24, Align::Left},
                   {QStringLiteral("Done"), 36, Align::Left}};
  context.each<model::RecheckDue>([&](const Entry& entry, const model::RecheckDue& due) {
    table.rows.push_back({{cellOf(fromUtf8(due.what)), cellOf(dueText(due)),
                           cellOf(recheckText(context, context.job().recheckDone(entry.id)))},
                          RowKind::Body});
  });
  return withTable("Rechecks due", std::move(table));
}

Section notesSection(const SheetContext& context) {
  Table table;
  table.columns = {{QStringLiteral("Note"), 60, Align::Left},
                   {QStringLiteral("At step"), 22, Align::Left},
                   {QStringLiteral("By, when"), 18, Align::Left}};
  context.each<model::Note>([&](const Entry& entry, const model::Note& note) {
    table.rows.push_back({{cellOf(fromUtf8(note.text)),
                           cellOf(entry.step.empty() ? QString{} : context.stepTitle(entry)),
                           context.byCell(&entry)},
                          RowKind::Body});
  });
  return withTable("Notes", std::move(table));
}

Section photosSection(const SheetContext& context) {
  Section section{QStringLiteral("Photos"), {}};
  Pictures pictures;
  context.each<model::Photo>([&](const Entry& entry, const model::Photo& photo) {
    QStringList parts;
    if (!photo.caption.empty()) parts += fromUtf8(photo.caption);
    if (!entry.step.empty()) parts += context.stepTitle(entry);
    parts += context.byAndWhen(entry);
    parts += QStringLiteral("SHA-256 ") + fromUtf8(photo.hash.substr(0, 16));
    pictures.items.push_back({fromUtf8(photo.hash), parts.join(QChar(u'\n'))});
  });
  if (!pictures.items.empty()) section.blocks.push_back(std::move(pictures));
  return section;
}

Section correctionsSection(const SheetContext& context) {
  Table table;
  table.columns = {{QStringLiteral("What"), 24, Align::Left},
                   {QStringLiteral("Was"), 20, Align::Left},
                   {QStringLiteral("Is"), 20, Align::Left},
                   {QStringLiteral("Reason"), 20, Align::Left},
                   {QStringLiteral("By, when"), 16, Align::Left}};
  for (const auto& entry : context.job().entries) {
    if (!entry->replaces || followsFromAnother(context, *entry)) continue;
    table.rows.push_back(correctionRow(context, *entry));
  }
  return withTable("Corrections, in the order they were made", std::move(table));
}

Section peopleSection(const SheetContext& context) {
  std::set<model::EntryId> seen;
  std::set<std::string> versions;
  QStringList names;
  for (const auto& entry : context.job().entries) {
    versions.insert(entry->programVersion);
    if (!entry->by || !seen.insert(*entry->by).second) continue;
    const auto* person = context.shop().revision<model::Person>(*entry->by);
    if (person == nullptr) continue;
    names += fromUtf8(person->initials) + QStringLiteral(" = ") + fromUtf8(person->name);
  }
  names.removeDuplicates();
  QString text = names.join(QStringLiteral("; "));
  QStringList programs;
  for (const auto& version : versions) programs += fromUtf8(version);
  if (context.options().copy == SheetCopy::Workshop) {
    text += (text.isEmpty() ? QString{} : QStringLiteral(". ")) +
            QStringLiteral("Recorded with Swivelwright ") + programs.join(QStringLiteral(", ")) +
            QStringLiteral(".");
  }
  Section section;
  if (!text.isEmpty()) section.blocks.push_back(Paragraph{plain(text), TextLook::Small});
  return section;
}

}  // namespace sw::report
