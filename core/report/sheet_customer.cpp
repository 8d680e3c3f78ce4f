// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <map>

#include "report/quantity_text.h"
#include "report/sheet_sections.h"
#include "report/wording.h"

// What only the customer's copy has: the work in a few lines, and each judged measurement as it was
// found and as it was left. Pulls taken in different states stand on lines of their own.

namespace sw::report {

namespace {

using workshop::SeriesView;

struct FirstAndLast {
  const SeriesView* first = nullptr;
  const SeriesView* last = nullptr;
};
using Key = std::pair<std::string, std::optional<model::Side>>;

std::vector<std::pair<Key, FirstAndLast>> judgedSeries(const SheetContext& context) {
  std::vector<std::pair<Key, FirstAndLast>> out;
  for (const SeriesView& series : context.job().series) {
    if (series.fact.limitKey.empty() || !series.verdict) continue;
    const Key key{series.fact.limitKey, series.side};
    auto found =
        std::find_if(out.begin(), out.end(), [&](const auto& one) { return one.first == key; });
    if (found == out.end()) {
      out.push_back({key, {&series, &series}});
    } else {
      found->second.last = &series;
    }
  }
  return out;
}

void addRow(const SheetContext& context, const char* when, const SeriesView& series, Table& table) {
  Cell what{{styled(seriesTitle(context, series), Emphasis::Plain)}};
  if (series.fact.state)
    what.lines.push_back(styled(phrasing::stateInWords(*series.fact.state), Emphasis::Quiet));
  table.rows.push_back({{cellOf(QString::fromUtf8(when)),
                         std::move(what),
                         {{styled(resultText(series), Emphasis::Strong)}},
                         cellOf(limitOf(context, series)),
                         verdictCell(context, series)},
                        RowKind::Body});
}

bool anythingDone(const workshop::JobState& job, std::size_t run) {
  return std::any_of(job.steps.begin(), job.steps.end(), [&](const auto& step) {
    return step.run == run && step.done() && step.action != model::StepAction::NotApplicable;
  });
}

}  // namespace

Section workDoneSection(const SheetContext& context) {
  const auto& job = context.job();
  Section section{QStringLiteral("What was found and done"), {}};
  Bullets bullets;
  context.each<model::CauseChecked>([&](const model::Entry& entry, const model::CauseChecked& c) {
    if (c.excluded) return;
    bullets.items.push_back({{QStringLiteral("Found: "), Emphasis::Strong, MarkShape::None},
                             {humanWord(c.cause) + sideSuffix(entry.side)}});
  });
  for (std::size_t i = 0; i < job.runs.size(); ++i) {
    const auto& run = job.runs[i];
    if (!anythingDone(job, i)) continue;
    QString text = context.runTitle(run);
    const QString sides = sidesText(run.sides);
    if (run.sides.size() == 1) text += QStringLiteral(", ") + sides;
    if (run.fact.why != "plan") text += QStringLiteral(" – ") + whyText(run.fact.why);
    bullets.items.push_back(plain(text));
  }
  if (!bullets.items.empty()) section.blocks.push_back(std::move(bullets));
  return section;
}

Section beforeAfterSection(const SheetContext& context) {
  Section section{QStringLiteral("Measured before and after"), {}};
  Table table;
  table.columns = {{QStringLiteral("When"), 10, Align::Left},
                   {QStringLiteral("What"), 32, Align::Left},
                   {QStringLiteral("Value ± U"), 21, Align::Left},
                   {QStringLiteral("Limit"), 19, Align::Left},
                   {QStringLiteral("Verdict"), 18, Align::Left}};
  for (const auto& [key, pair] : judgedSeries(context)) {
    if (pair.first == pair.last) {
      addRow(context, "measured", *pair.first, table);
      continue;
    }
    addRow(context, "first", *pair.first, table);
    addRow(context, "last", *pair.last, table);
  }
  if (!table.rows.empty()) section.blocks.push_back(std::move(table));
  return section;
}

}  // namespace sw::report
