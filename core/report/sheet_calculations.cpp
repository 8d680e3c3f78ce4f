// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>

#include "compute/calculation.h"
#include "compute/readable.h"
#include "model/json.h"
#include "report/quantity_text.h"
#include "report/sheet_sections.h"

namespace sw::report {

namespace {

using model::Entry;

void addRows(const std::vector<compute::FieldDescription>& fields, const model::Json& values,
             Cell& cell) {
  const auto text = compute::readable(fields, values);
  for (const auto& row : text.rows) {
    cell.lines.push_back(
        {Span{fromUtf8(row.name) + QStringLiteral(": "), Emphasis::Quiet, MarkShape::None},
         Span{fromUtf8(row.value), Emphasis::Plain, MarkShape::None}});
  }
  for (const auto& table : text.tables) {
    cell.lines.push_back(styled(QStringLiteral("%1: %2 rows, in the export")
                                    .arg(fromUtf8(table.name))
                                    .arg(table.rows.size()),
                                Emphasis::Quiet));
  }
}

/// What was put in, row by row: a pull a line says more than a count.
void addInputs(const compute::Description& description, const model::Json& input, Cell& cell) {
  const auto text = compute::readable(description.inputs, input);
  for (const auto& row : text.rows) {
    cell.lines.push_back(
        {Span{fromUtf8(row.name) + QStringLiteral(": "), Emphasis::Quiet, MarkShape::None},
         Span{fromUtf8(row.value), Emphasis::Plain, MarkShape::None}});
  }
  for (const auto& table : text.tables) {
    for (const auto& row : table.rows) {
      QStringList cells;
      for (const auto& value : row) {
        if (!value.empty()) cells += fromUtf8(value);
      }
      cell.lines.push_back(
          {Span{fromUtf8(table.name) + QStringLiteral(": "), Emphasis::Quiet, MarkShape::None},
           Span{cells.join(QStringLiteral(" · ")), Emphasis::Plain, MarkShape::None}});
    }
  }
}

/// The line of one calculation; its text as stored where the program no longer knows it.
Row rowOf(const SheetContext& context, const Entry& entry, const model::Calculated& fact) {
  const auto input = model::parseJson(fact.input);
  const auto answer = model::parseJson(fact.answer);
  const auto calculation = compute::findCalculation(fact.calculation);
  Cell what;
  Cell from;
  Cell gave;
  if (input && answer && calculation) {
    const auto description = calculation->describe();
    what.lines.push_back(styled(fromUtf8(std::string(description.title)), Emphasis::Strong));
    addInputs(description, *input, from);
    for (const auto& note : answer->value("notes", model::Json::array())) {
      gave.lines.push_back(plain(fromUtf8(note.value("text", std::string{}))));
    }
    addRows(description.outputs, answer->value("result", model::Json::object()), gave);
    what.lines.push_back(styled(fromUtf8(std::string(description.source)), Emphasis::Quiet));
  } else {
    what.lines.push_back(plain(fromUtf8(fact.calculation)));
    from.lines.push_back(plain(fromUtf8(fact.input)));
    gave.lines.push_back(plain(fromUtf8(fact.answer)));
  }
  if (!entry.step.empty()) what.lines.push_back(plain(context.stepTitle(entry)));
  if (!fact.remark.empty()) what.lines.push_back(plain(fromUtf8(fact.remark)));
  return {{std::move(what), std::move(from), std::move(gave), context.byCell(&entry)},
          RowKind::Body};
}

}  // namespace

Section calculationsSection(const SheetContext& context) {
  Table table;
  table.columns = {{QStringLiteral("Calculation"), 24, Align::Left},
                   {QStringLiteral("From"), 27, Align::Left},
                   {QStringLiteral("Gave"), 35, Align::Left},
                   {QStringLiteral("By, when"), 14, Align::Left}};
  context.each<model::Calculated>([&](const Entry& entry, const model::Calculated& fact) {
    table.rows.push_back(rowOf(context, entry, fact));
  });
  Section section{QStringLiteral("Calculations"), {}};
  if (!table.rows.empty()) section.blocks.emplace_back(std::move(table));
  return section;
}

}  // namespace sw::report
