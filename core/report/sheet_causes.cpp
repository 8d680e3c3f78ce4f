// SPDX-License-Identifier: GPL-3.0-or-later
// What was told of the shake, which checks were made, and what they say.
#include <algorithm>

#include "diagnosis/ranking.h"
#include "phrasing/cause_words.h"
#include "report/quantity_text.h"
#include "report/sheet_sections.h"
#include "report/wording.h"
#include "workshop/checks_ahead.h"
#include "workshop/lesson.h"

namespace sw::report {

namespace {

using diagnosis::CauseFile;

constexpr std::size_t kLeading = 4;

Table emptyTable() {
  Table table;
  table.columns = {{QStringLiteral("Looked at"), 30, Align::Left},
                   {QStringLiteral("Result"), 30, Align::Left},
                   {QStringLiteral("How"), 24, Align::Left},
                   {QStringLiteral("By, when"), 16, Align::Left}};
  return table;
}

/// Causes somebody looked at without a procedure.
void addLookedAt(const SheetContext& context, Table& table) {
  context.each<model::CauseChecked>([&](const model::Entry& entry, const model::CauseChecked& c) {
    const Line result = styled(c.excluded ? QStringLiteral("excluded") : QStringLiteral("found"),
                               c.excluded ? Emphasis::Plain : Emphasis::Strong);
    table.rows.push_back({{cellOf(humanWord(c.cause) + sideSuffix(entry.side)),
                           {{result}},
                           cellOf(fromUtf8(c.how)),
                           context.byCell(&entry)},
                          RowKind::Body});
  });
}

QString namesOf(const std::vector<std::size_t>& causes, const CauseFile& file) {
  QStringList names;
  for (const std::size_t cause : causes) names += fromUtf8(file.table.causes[cause].name);
  return names.join(QStringLiteral(", "));
}

Cell resultCell(const workshop::MadeCheck& made, const CauseFile& file) {
  if (made.clear) return cellOf(QStringLiteral("nothing found"));
  if (made.found.empty()) return cellOf(QStringLiteral("could not be told"));
  Cell cell{{styled(QStringLiteral("found: ") + namesOf(made.found, file), Emphasis::Strong)}};
  if (!made.waitsFor.empty()) {
    QStringList first;
    for (const std::size_t check : made.waitsFor) first += fromUtf8(file.checks[check].name);
    cell.lines.push_back(styled(QStringLiteral("proves nothing before this was looked at: ") +
                                    first.join(QStringLiteral(", ")),
                                Emphasis::Quiet));
  }
  return cell;
}

void addChecks(const SheetContext& context, const CauseFile& file,
               const workshop::ShakeKnown& known, Table& table) {
  for (const workshop::MadeCheck& made : known.made) {
    table.rows.push_back({{cellOf(fromUtf8(file.checks[made.check].name)), resultCell(made, file),
                           cellOf(context.runTitle(context.job().runs[made.run])), Cell{}},
                          RowKind::Body});
  }
}

/// Causes that were put right without a procedure of their own.
void addPutRight(const SheetContext& context, const CauseFile& file, Table& table) {
  context.each<model::CausePutRight>([&](const model::Entry& entry,
                                         const model::CausePutRight& right) {
    const auto cause = file.table.cause(right.cause);
    const QString name = cause ? fromUtf8(file.table.causes[*cause].name) : humanWord(right.cause);
    table.rows.push_back({{cellOf(name), cellOf(QStringLiteral("put right")),
                           cellOf(fromUtf8(right.how)), context.byCell(&entry)},
                          RowKind::Body});
  });
}

/// "On record: ...", what the end of the job says of the cause.
std::optional<Paragraph> lessonBlock(const SheetContext& context, const CauseFile& file) {
  std::optional<model::Lesson> lesson;
  context.each<model::Lesson>(
      [&](const model::Entry&, const model::Lesson& taught) { lesson = taught; });
  if (!lesson) return std::nullopt;
  const auto closed = workshop::closedJobOf(*lesson, file.table);
  if (!closed) return std::nullopt;
  const QString words =
      closed->causes.empty()
          ? QStringLiteral("What was looked at showed no fault, and the last drive still shook.")
          : namesOf(closed->causes, file) +
                QStringLiteral(" put right, and the last drive was without the shake.");
  return Paragraph{plain(QStringLiteral("On record: ") + words), TextLook::Normal};
}

KeyValues toldBlock(const CauseFile& file, const workshop::ShakeKnown& known) {
  KeyValues told;
  for (const workshop::ToldAnswer& one : known.told) {
    const auto& feature = file.table.features[one.feature];
    told.items.emplace_back(fromUtf8(feature.ask),
                            cellOf(fromUtf8(feature.answers[one.answer].text)));
  }
  return told;
}

/// "Most likely now: ...", in words.
Paragraph leadingBlock(const CauseFile& file, const diagnosis::Ranking& ranking) {
  QStringList parts;
  for (std::size_t i = 0; i < std::min(kLeading, ranking.causes.size()); ++i) {
    const auto& one = ranking.causes[i];
    parts += fromUtf8(file.table.causes[one.cause].name) + QStringLiteral(" (") +
             phrasing::likelihoodWords(one.probability) + QLatin1Char(')');
  }
  return {plain(QStringLiteral("As it stands: ") + parts.join(QStringLiteral(", ")) +
                QStringLiteral(". Starting values, common practice, no source; likely is not "
                               "found.")),
          TextLook::Small};
}

}  // namespace

Section causesSection(const SheetContext& context) {
  Section section{QStringLiteral("Causes looked at"), {}};
  Table table = emptyTable();
  addLookedAt(context, table);
  const auto file = workshop::causesOf(context.shop());
  const auto known = file ? workshop::shakeKnown(context.job(), *file) : workshop::ShakeKnown{};
  if (file) addChecks(context, *file, known, table);
  if (file) addPutRight(context, *file, table);
  // What the complaint itself says stands there already.
  const bool asked = std::any_of(
      context.job().valid.begin(), context.job().valid.end(),
      [](const model::Entry* entry) { return model::as<model::ShakeTold>(*entry) != nullptr; });
  if (file && asked) section.blocks.emplace_back(toldBlock(*file, known));
  if (!table.rows.empty()) section.blocks.emplace_back(std::move(table));
  if (auto lesson = file ? lessonBlock(context, *file) : std::nullopt) {
    section.blocks.emplace_back(std::move(*lesson));
  } else if (file && (asked || !known.made.empty())) {
    section.blocks.emplace_back(leadingBlock(*file, diagnosis::rank(file->table, known.evidence)));
  }
  return section;
}

}  // namespace sw::report
