// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>
#include <nlohmann/json.hpp>
#include <ostream>

#include "cli/open_book.h"
#include "commands/commands.h"
#include "procedures/library.h"
#include "report/search.h"

namespace sw::app {

namespace {

constexpr std::size_t kMostRows = 100;

constexpr std::array kOptions{
    OptionSpec{"book", "PATH", "the book"},
    OptionSpec{"most", "N", "how many at most, 100 where it is not said"},
    OptionSpec{"json", "", "as JSON instead of a table"},
};

Result<std::size_t> limitOf(const CommandContext& context) {
  if (!context.arguments.has("most")) return kMostRows;
  const auto number = context.requiredNumber("most");
  if (!number) return failAs(number);
  return static_cast<std::size_t>(*number);
}

int run(CommandContext& context) {
  std::string text;
  for (const std::string& word : context.arguments.positional()) text += word + ' ';
  if (text.find_first_not_of(' ') == std::string::npos) {
    return context.fail({ErrorCode::Missing, "cli.value_missing", "find", {{"value", "TEXT"}}});
  }
  const auto limit = limitOf(context);
  if (!limit) return context.fail(limit.error());
  const auto book = openBook(context, store::OpenMode::ViewOnly);
  if (!book) return context.fail(book.error());
  const auto library = procedures::Library::of({}, {});  // nothing of a procedure is asked
  const workshop::Workshop workshop(**book, library, context.clock, nullptr);
  const auto rows = report::searchRowsOf(workshop, text, *limit);
  if (!rows) return context.fail(rows.error());
  const std::span<const report::SearchRow> all(*rows);
  if (context.arguments.has("json")) {
    context.streams.out << report::toJson(all).dump(2) << '\n';
  } else {
    context.streams.out << report::toText(all);
  }
  return toInt(ExitCode::Done);
}

}  // namespace

Command findCommand() {
  return {.name = "find",
          .summary = "find vehicles and jobs by a few words",
          .usage = "find --book B TEXT [--most N] [--json]",
          .details =
              "Looks in plates, makes and models, VINs, owners, owners' words, complaints, part "
              "names and notes.\nEvery word must be there, whatever its case and place. Vehicles "
              "come first, then the newest job.\n",
          .options = kOptions,
          .mostPositional = 64,
          .needsGui = NeedsGui::No,
          .run = run};
}

}  // namespace sw::app
