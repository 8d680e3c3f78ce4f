// SPDX-License-Identifier: GPL-3.0-or-later
#include <QStringList>
#include <algorithm>
#include <map>
#include <set>

#include "report/quantity_text.h"
#include "report/sheet_sections.h"
#include "report/wording.h"
#include "workshop/rules.h"

namespace sw::report {

namespace {

using model::Entry;

const procedures::Statement* statementOf(const procedures::Step* step, const std::string& key) {
  if (step == nullptr || !step->hold) return nullptr;
  const auto& all = step->hold->statements;
  const auto found =
      std::find_if(all.begin(), all.end(), [&](const auto& one) { return one.key == key; });
  return found == all.end() ? nullptr : &*found;
}

/// The state or value that was answered, in the words of the choice.
QString answerText(const procedures::Statement* statement, const model::HoldAnswer& answer) {
  if (statement != nullptr && statement->answer == procedures::AnswerType::Choice) {
    for (const auto& choice : statement->choices) {
      if (choice.word == answer.answer) return fromUtf8(choice.text);
    }
  }
  return fromUtf8(answer.answer);
}

QString holdTitle(const SheetContext& context, const std::optional<model::RunId>& run,
                  const procedures::Step* step) {
  QString title = step != nullptr && step->hold ? fromUtf8(step->hold->title) : QString{};
  const auto* in = context.run(run);
  if (in != nullptr) title += QStringLiteral(" – ") + context.runTitle(*in);
  return title;
}

void addAnswers(const SheetContext& context, Table& table) {
  std::optional<std::pair<std::int64_t, std::string>> group;
  context.each<model::HoldAnswer>([&](const Entry& entry, const model::HoldAnswer& answer) {
    const auto* step = context.step(entry.run, entry.step);
    const std::pair here{entry.run ? entry.run->value : 0, entry.step};
    if (group != here) {
      table.rows.push_back({{cellOf(holdTitle(context, entry.run, step))}, RowKind::Group});
      group = here;
    }
    const auto* statement = statementOf(step, answer.statement);
    const QString asked =
        statement == nullptr ? humanWord(answer.statement) : fromUtf8(statement->ask);
    Cell given = cellOf(answerText(statement, answer));
    if (!answer.passes) {
      given.lines.push_back(
          {{QStringLiteral("did not pass"), Emphasis::Strong, MarkShape::Outside}});
    }
    table.rows.push_back(
        {{cellOf(asked), std::move(given), context.byCell(&entry)}, RowKind::Body});
  });
}

void addUnanswered(const SheetContext& context, Table& table) {
  const auto& job = context.job();
  for (const auto& hold : job.holds) {
    const auto& step = job.steps[hold.step];
    if (hold.answered() || step.superseded || job.closed) continue;
    QStringList open;
    for (const auto& statement : hold.statements) {
      if (!statement.answer || !statement.answer->passes)
        open += fromUtf8(statement.statement->ask);
    }
    table.rows.push_back(
        {{cellOf(holdTitle(context, job.runs[step.run].id, step.step))}, RowKind::Group});
    Cell waiting;
    waiting.lines = {
        {{QStringLiteral("not answered yet"), Emphasis::Strong, MarkShape::NotMeasured}}};
    table.rows.push_back(
        {{cellOf(open.join(QChar(u' '))), std::move(waiting), Cell{}}, RowKind::Body});
  }
}

/// The step a refusal names, in the titles of the procedures.
QString stepText(const SheetContext& context, const std::string& name) {
  const auto& job = context.job();
  for (std::size_t i = 0; i < job.steps.size(); ++i) {
    if (name.empty() || job.stepName(i) != name) continue;
    const auto& view = job.steps[i];
    return context.runTitle(job.runs[view.run]) + QStringLiteral(": ") +
           fromUtf8(view.step->title) + sideSuffix(view.side);
  }
  return fromUtf8(name);
}

void addRefusals(const SheetContext& context, Section& section) {
  const auto refusals = workshop::againstSignOff(context.job());
  if (refusals.empty()) {
    section.blocks.push_back(
        Paragraph{plain(QStringLiteral("Nothing stands against sign-off; it has not been given.")),
                  TextLook::Normal});
    return;
  }
  section.blocks.push_back(
      Paragraph{plain(QStringLiteral("What stands against sign-off:")), TextLook::Normal});
  Table table;
  table.columns = {{QStringLiteral("Reason"), 45, Align::Left},
                   {QStringLiteral("Step"), 55, Align::Left}};
  for (const auto& refusal : refusals) {
    table.rows.push_back(
        {{cellOf(refusalText(refusal)), cellOf(stepText(context, refusal.step))}, RowKind::Body});
  }
  section.blocks.push_back(std::move(table));
}

Line outcomeLine(const SheetContext& context) {
  const auto& job = context.job();
  const Entry* entry = context.entry(*job.closedEntry);
  QString text = capitalised(humanWord(job.closed->outcome));
  if (entry != nullptr) text += QStringLiteral(" – ") + context.byAndWhen(*entry);
  Line line = styled(text, Emphasis::Strong);
  if (!job.closed->reason.empty()) {
    line.push_back({QStringLiteral(". Reason: ") + fromUtf8(job.closed->reason), Emphasis::Plain,
                    MarkShape::None});
  }
  return line;
}

}  // namespace

Section holdsSection(const SheetContext& context) {
  Section section{QStringLiteral("Hold points"), {}};
  Table table;
  table.columns = {{QStringLiteral("Asked"), 48, Align::Left},
                   {QStringLiteral("Answered"), 32, Align::Left},
                   {QStringLiteral("By, when"), 20, Align::Left}};
  addAnswers(context, table);
  addUnanswered(context, table);
  if (!table.rows.empty()) section.blocks.push_back(std::move(table));
  return section;
}

Section overridesSection(const SheetContext& context) {
  Section section{QStringLiteral("Overrides"), {}};
  Table table;
  table.columns = {{QStringLiteral("Rule set aside"), 24, Align::Left},
                   {QStringLiteral("At step"), 28, Align::Left},
                   {QStringLiteral("Reason"), 30, Align::Left},
                   {QStringLiteral("By, when"), 18, Align::Left}};
  context.each<model::Override>([&](const Entry& entry, const model::Override& granted) {
    const QString what = entry.step.empty() ? fromUtf8(granted.what) : context.place(entry);
    table.rows.push_back({{cellOf(overrideText(granted.rule)), cellOf(what),
                           cellOf(fromUtf8(granted.why)), context.byCell(&entry)},
                          RowKind::Body});
  });
  if (!table.rows.empty()) section.blocks.push_back(std::move(table));
  return section;
}

Section cautionsSection(const SheetContext& context) {
  Section section{QStringLiteral("Cautions of the steps done"), {}};
  Bullets bullets;
  bullets.look = TextLook::Small;
  std::set<std::string> seen;
  for (const auto& step : context.job().steps) {
    const std::string& caution = step.step->caution;
    const bool worked = step.done() && step.action != model::StepAction::NotApplicable;
    if (!worked || caution.empty() || !seen.insert(caution).second) continue;
    bullets.items.push_back(
        {{fromUtf8(step.step->title) + QStringLiteral(": "), Emphasis::Strong, MarkShape::None},
         {fromUtf8(caution)}});
  }
  if (!bullets.items.empty()) section.blocks.push_back(std::move(bullets));
  return section;
}

Section endSection(const SheetContext& context) {
  Section section{QStringLiteral("How the job ended"), {}};
  if (context.job().closed) {
    section.blocks.push_back(Paragraph{outcomeLine(context), TextLook::Lead});
    return section;
  }
  section.blocks.push_back(Paragraph{
      styled(QStringLiteral("Still open: not signed off."), Emphasis::Strong), TextLook::Lead});
  if (context.options().copy == SheetCopy::Workshop) addRefusals(context, section);
  return section;
}

}  // namespace sw::report
