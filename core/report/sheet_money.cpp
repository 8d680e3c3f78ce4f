// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>
#include <map>

#include "report/quantity_text.h"
#include "report/sheet_sections.h"
#include "report/wording.h"

namespace sw::report {

namespace {

using model::Entry;

struct Totals {
  std::int64_t parts = 0;
  std::int64_t labour = 0;
};
using TotalsByCurrency = std::map<std::string, Totals>;

/// Price times the figure as typed: a price is per piece, or per litre where litres were typed.
std::optional<std::int64_t> amountOf(const model::PartUsed& part) {
  if (!part.unitPriceMinor) return std::nullopt;
  const auto unit = findUnit(part.quantity.kind, part.quantity.unit);
  const double figure = part.quantity.si / (unit ? unit->toSi : 1.0);
  return std::llround(static_cast<double>(*part.unitPriceMinor) * figure);
}

std::optional<std::int64_t> amountOf(const model::Labour& labour) {
  if (!labour.hourlyRateMinor) return std::nullopt;
  return std::llround(static_cast<double>(*labour.hourlyRateMinor) * labour.minutes / 60.0);
}

QString money(const std::optional<std::int64_t>& minor, const std::string& currency) {
  return minor ? moneyText(*minor, currency) : QStringLiteral("–");
}

Table partsTable(const SheetContext& context, TotalsByCurrency& totals) {
  Table table;
  table.columns = {{QStringLiteral("Part or consumable"), 40, Align::Left},
                   {QStringLiteral("Own number"), 18, Align::Left},
                   {QStringLiteral("Quantity"), 12, Align::Right},
                   {QStringLiteral("Unit price"), 15, Align::Right},
                   {QStringLiteral("Amount"), 15, Align::Right}};
  context.each<model::PartUsed>([&](const Entry& entry, const model::PartUsed& part) {
    const auto amount = amountOf(part);
    if (amount) totals[part.currency].parts += *amount;
    Cell name = cellOf(fromUtf8(part.name) + sideSuffix(entry.side));
    if (part.consumable)
      name.lines.front().push_back(
          {QStringLiteral(" consumable"), Emphasis::Quiet, MarkShape::None});
    table.rows.push_back(
        {{std::move(name), cellOf(fromUtf8(part.number)), cellOf(typed(part.quantity)),
          cellOf(money(part.unitPriceMinor, part.currency)), cellOf(money(amount, part.currency))},
         RowKind::Body});
  });
  return table;
}

Table labourTable(const SheetContext& context, TotalsByCurrency& totals) {
  Table table;
  table.columns = {{QStringLiteral("Labour"), 40, Align::Left},
                   {QStringLiteral("By"), 18, Align::Left},
                   {QStringLiteral("Time"), 12, Align::Right},
                   {QStringLiteral("Rate per hour"), 15, Align::Right},
                   {QStringLiteral("Amount"), 15, Align::Right}};
  double minutes = 0;
  context.each<model::Labour>([&](const Entry& entry, const model::Labour& labour) {
    const auto amount = amountOf(labour);
    if (amount) totals[labour.currency].labour += *amount;
    minutes += labour.minutes;
    const QString text = labour.text.empty() ? QStringLiteral("Work") : fromUtf8(labour.text);
    table.rows.push_back(
        {{cellOf(text), cellOf(context.initials(entry.by)), cellOf(minutesText(labour.minutes)),
          cellOf(money(labour.hourlyRateMinor, labour.currency)),
          cellOf(money(amount, labour.currency))},
         RowKind::Body});
  });
  if (table.rows.size() > 1) {
    table.rows.push_back({{{{styled(QStringLiteral("Time in all"), Emphasis::Strong)}},
                           cellOf({}),
                           {{styled(minutesText(minutes), Emphasis::Strong)}},
                           cellOf({}),
                           cellOf({})},
                          RowKind::Body});
  }
  return table;
}

Table totalsTable(const TotalsByCurrency& totals) {
  Table table;
  table.columns = {{QStringLiteral("Total"), 40, Align::Left},
                   {QStringLiteral("Parts"), 20, Align::Right},
                   {QStringLiteral("Labour"), 20, Align::Right},
                   {QStringLiteral("In all"), 20, Align::Right}};
  for (const auto& [currency, sum] : totals) {
    table.rows.push_back(
        {{cellOf(QStringLiteral("In ") + fromUtf8(currency)),
          cellOf(moneyText(sum.parts, currency)),
          cellOf(moneyText(sum.labour, currency)),
          {{styled(moneyText(sum.parts + sum.labour, currency), Emphasis::Strong)}}},
         RowKind::Body});
  }
  return table;
}

}  // namespace

Section partsSection(const SheetContext& context) {
  Section section{QStringLiteral("Parts, consumables and labour"), {}};
  TotalsByCurrency totals;
  for (Table table : {partsTable(context, totals), labourTable(context, totals)}) {
    if (!table.rows.empty()) section.blocks.push_back(std::move(table));
  }
  if (!totals.empty()) section.blocks.push_back(totalsTable(totals));
  return section;
}

}  // namespace sw::report
