// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>
#include <nlohmann/json.hpp>
#include <ostream>

#include "cli/open_book.h"
#include "commands/commands.h"
#include "report/history.h"

namespace sw::app {

namespace {

constexpr std::array kOptions{
    OptionSpec{"book", "PATH", "the book"},
    OptionSpec{"entry", "N", "the number of any entry of the value"},
    OptionSpec{"json", "", "as JSON instead of a table"},
};

int run(CommandContext& context) {
  const auto entry = context.requiredNumber("entry");
  if (!entry) return context.fail(entry.error());
  const auto book = openBook(context, store::OpenMode::ViewOnly);
  if (!book) return context.fail(book.error());
  const auto rows = report::historyOf(**book, {*entry});
  if (!rows) return context.fail(rows.error().about("--entry"));
  const std::span<const report::HistoryRow> all(*rows);
  if (context.arguments.has("json")) {
    context.streams.out << report::toJson(all).dump(2) << '\n';
  } else {
    context.streams.out << report::toText(all);
  }
  return toInt(ExitCode::Done);
}

}  // namespace

Command historyCommand() {
  return {.name = "history",
          .summary = "show what was recorded for one value, and what took its place",
          .usage = "history --book B --entry N [--json]",
          .details =
              "Oldest first. A fact of a job shows its corrections, a line of a spec sheet, an "
              "instrument, a\nperson or a vehicle every revision.\n",
          .options = kOptions,
          .mostPositional = 0,
          .needsGui = NeedsGui::No,
          .run = run};
}

}  // namespace sw::app
