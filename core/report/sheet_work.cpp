// SPDX-License-Identifier: GPL-3.0-or-later
#include <QStringList>
#include <algorithm>

#include "report/quantity_text.h"
#include "report/sheet_sections.h"
#include "report/wording.h"
#include "workshop/rules.h"

namespace sw::report {

namespace {

using model::Entry;

Section withTable(const char* title, Table table) {
  Section section{QString::fromUtf8(title), {}};
  if (!table.rows.empty()) section.blocks.push_back(std::move(table));
  return section;
}

const Entry* entryOf(const SheetContext& context, model::EntryId id) {
  return context.entry(id);
}

QString measuredText(const SheetContext& context, const model::ShimPack& pack) {
  if (!pack.measured) return {};
  QString text = typedAndSi(*pack.measured);
  if (pack.instrument) {
    text += QStringLiteral(" with ") + context.instrumentName(pack.instrument);
  }
  return text;
}

QString stackText(const model::ShimPack& pack) {
  if (pack.shims.empty()) return QStringLiteral("total only");
  QString stack = fromUtf8(pack.shims).replace(QStringLiteral(" + "), QStringLiteral(" + "));
  return stack + QStringLiteral(" (%1 ").arg(pack.count) +
         (pack.count == 1 ? QStringLiteral("shim)") : QStringLiteral("shims)"));
}

QString stageText(const model::TorqueCheck& check) {
  QString text = QStringLiteral("%1 of %2").arg(check.done).arg(check.count);
  if (check.stages > 1)
    text += QStringLiteral(", stage %1 of %2").arg(check.stage).arg(check.stages);
  if (!check.pattern.empty()) text += QStringLiteral(", ") + humanWord(check.pattern);
  return text;
}

QString groupName(const SheetContext& context, const Entry& entry,
                  const model::TorqueCheck& check) {
  const auto* step = context.step(entry.run, entry.step);
  const QString name =
      step != nullptr && step->torque ? fromUtf8(step->torque->name) : humanWord(check.group);
  return capitalised(name) + sideSuffix(entry.side);
}

QString speedsText(const model::RoadTest& test) {
  QStringList parts;
  if (test.onset) parts += QStringLiteral("starts at ") + typedAndSi(*test.onset);
  if (test.release) parts += QStringLiteral("gone at ") + typedAndSi(*test.release);
  if (!parts.isEmpty() && test.speedSource) parts += humanWord(*test.speedSource);
  return parts.join(QStringLiteral(", "));
}

QString shakeText(const model::RoadTest& test) {
  if (test.when == model::RoadTestWhen::Before) {
    return test.shake == model::ShakeResult::None ? QStringLiteral("no shake")
                                                  : QStringLiteral("shakes");
  }
  return test.shake == model::ShakeResult::None
             ? QStringLiteral("no shake")
             : QStringLiteral("shakes: ") + humanWord(test.shake);
}

/// The words of the question and the answer as the procedure asked them.
struct SeenText {
  QString asked;
  QString seen;
  QString means;
};
SeenText seenText(const SheetContext& context, const Entry& entry, const model::Observation& seen) {
  SeenText text{humanWord(seen.key), humanWord(seen.value), {}};
  if (seen.key == workshop::kComputedPeak) {
    const bool peak = seen.value == "peak";
    text.asked = QStringLiteral("Computed: the pull straight ahead beside those at 15°");
    text.seen = peak ? QStringLiteral("A peak straight ahead") : QStringLiteral("No peak");
  }
  const auto* step = context.step(entry.run, entry.step);
  if (step == nullptr) return text;
  for (const auto& observe : step->observe) {
    if (observe.key != seen.key) continue;
    text.asked = fromUtf8(observe.ask);
    for (const auto& choice : observe.choices) {
      if (choice.word == seen.value) text.seen = fromUtf8(choice.text);
    }
  }
  text.means = humanWord(workshop::meaningOf(context.job(), entry, seen));
  return text;
}

QString ledgerState(const workshop::LedgerView& item) {
  QString text = humanWord(item.state);
  const bool partly = item.done && item.count && *item.done < *item.count;
  if (partly) text += QStringLiteral(", %1 of %2").arg(*item.done).arg(*item.count);
  if (!item.reason.empty()) text += QStringLiteral(": ") + fromUtf8(item.reason);
  return text;
}

Table ledgerTable(const SheetContext& context, model::LedgerKind kind, const char* head) {
  Table table;
  table.columns = {{QString::fromUtf8(head), 40, Align::Left},
                   {QStringLiteral("How it ended"), 36, Align::Left},
                   {QStringLiteral("By, when"), 24, Align::Left}};
  for (const auto& item : context.job().ledger) {
    if (item.type != kind) continue;
    const Entry* entry = entryOf(context, item.entry);
    const Emphasis emphasis = item.clear() ? Emphasis::Plain : Emphasis::Strong;
    const QString state =
        item.clear() ? ledgerState(item) : ledgerState(item) + QStringLiteral(" – NOT CLEAR");
    table.rows.push_back({{cellOf(capitalised(fromUtf8(item.name)) + sideSuffix(item.side)),
                           {{styled(state, emphasis)}},
                           context.byCell(entry)},
                          RowKind::Body});
  }
  return table;
}

}  // namespace

Section packsSection(const SheetContext& context) {
  Table table;
  table.columns = {{QStringLiteral("Side, place"), 16, Align::Left},
                   {QStringLiteral("Found or fitted"), 14, Align::Left},
                   {QStringLiteral("Shims, mm"), 26, Align::Left},
                   {QStringLiteral("Total"), 11, Align::Left},
                   {QStringLiteral("Measured"), 14, Align::Left},
                   {QStringLiteral("By, when"), 19, Align::Left}};
  for (const auto& pack : context.job().packs) {
    const Entry* entry = entryOf(context, pack.entry);
    const auto* run = context.run(pack.run);
    const bool later = run != nullptr && run->fact.round > 1;
    QString role = humanWord(pack.fact.role);
    if (later) role += QStringLiteral(", round %1").arg(run->fact.round);
    table.rows.push_back(
        {{cellOf(capitalised(sideText(pack.side)) + QStringLiteral(", ") +
                 humanWord(pack.fact.place)),
          {{styled(role, pack.fact.role == model::PackRole::Fitted ? Emphasis::Strong
                                                                   : Emphasis::Plain)}},
          cellOf(stackText(pack.fact)),
          cellOf(typedAndSi(pack.fact.total)),
          cellOf(measuredText(context, pack.fact)),
          context.byCell(entry)},
         RowKind::Body});
  }
  return withTable("Shim packs", std::move(table));
}

Section torqueSection(const SheetContext& context) {
  Table table;
  table.columns = {{QStringLiteral("Fasteners"), 19, Align::Left},
                   {QStringLiteral("Set value"), 10, Align::Left},
                   {QStringLiteral("Sheet"), 15, Align::Left},
                   {QStringLiteral("Done"), 13, Align::Left},
                   {QStringLiteral("State"), 29, Align::Left},
                   {QStringLiteral("By, when"), 14, Align::Left}};
  context.each<model::TorqueCheck>([&](const Entry& entry, const model::TorqueCheck& check) {
    const auto* spec = check.spec ? context.shop().revision<model::SpecItem>(*check.spec) : nullptr;
    Cell state = cellOf(torqueStateText(check));
    state.lines.push_back(styled(context.instrumentName(check.wrench), Emphasis::Quiet));
    table.rows.push_back({{cellOf(groupName(context, entry, check)), cellOf(typedAndSi(check.set)),
                           cellOf(spec == nullptr ? QString{} : torqueText(*spec)),
                           cellOf(stageText(check)), std::move(state), context.byCell(&entry)},
                          RowKind::Body});
  });
  return withTable("Torque checks", std::move(table));
}

Section ledgerSection(const SheetContext& context) {
  Section section{QStringLiteral("What came off, and what was put on for the work"), {}};
  Table removed = ledgerTable(context, model::LedgerKind::Removed, "Came off");
  Table putOn = ledgerTable(context, model::LedgerKind::PutOn, "Put on for the work");
  if (!removed.rows.empty()) section.blocks.push_back(std::move(removed));
  if (!putOn.rows.empty()) section.blocks.push_back(std::move(putOn));
  return section;
}

Section roadTestSection(const SheetContext& context) {
  Table table;
  table.columns = {{QStringLiteral("Road test"), 14, Align::Left},
                   {QStringLiteral("Shake"), 16, Align::Left},
                   {QStringLiteral("Speeds"), 26, Align::Left},
                   {QStringLiteral("Self-return"), 12, Align::Left},
                   {QStringLiteral("Remarks"), 16, Align::Left},
                   {QStringLiteral("By, when"), 16, Align::Left}};
  context.each<model::RoadTest>([&](const Entry& entry, const model::RoadTest& test) {
    table.rows.push_back(
        {{cellOf(test.when == model::RoadTestWhen::Before ? QStringLiteral("before the work")
                                                          : QStringLiteral("after the work")),
          {{styled(shakeText(test), Emphasis::Strong)}},
          cellOf(speedsText(test)),
          cellOf(humanWord(test.selfReturn)),
          cellOf(fromUtf8(test.text)),
          context.byCell(&entry)},
         RowKind::Body});
  });
  return withTable("Road tests", std::move(table));
}

Section observationsSection(const SheetContext& context) {
  Table table;
  table.columns = {{QStringLiteral("Step"), 28, Align::Left},
                   {QStringLiteral("Asked"), 28, Align::Left},
                   {QStringLiteral("Seen or felt"), 28, Align::Left},
                   {QStringLiteral("By, when"), 16, Align::Left}};
  context.each<model::Observation>([&](const Entry& entry, const model::Observation& seen) {
    const SeenText text = seenText(context, entry, seen);
    Cell answer{{plain(text.seen)}};
    if (!text.means.isEmpty()) {
      answer.lines.front().push_back(
          {QStringLiteral(" – ") + text.means, Emphasis::Strong, MarkShape::None});
    }
    if (!seen.text.empty()) answer.lines.push_back(styled(fromUtf8(seen.text), Emphasis::Quiet));
    table.rows.push_back({{cellOf(context.stepTitle(entry)), cellOf(text.asked), std::move(answer),
                           context.byCell(&entry)},
                          RowKind::Body});
  });
  return withTable("Seen and felt", std::move(table));
}

}  // namespace sw::report
