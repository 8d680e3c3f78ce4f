// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>
#include <nlohmann/json.hpp>
#include <ostream>

#include "cli/open_book.h"
#include "cli/resources.h"
#include "commands/commands.h"
#include "procedures/library.h"
#include "report/book_lists.h"
#include "workshop/workshop.h"

namespace sw::app {

namespace {

constexpr std::array kOptions{
    OptionSpec{"book", "PATH", "the book"},
    OptionSpec{"json", "", "as JSON instead of a table"},
};

template <class Row>
int write(CommandContext& context, const std::vector<Row>& rows) {
  const std::span<const Row> all(rows);
  if (context.arguments.has("json")) {
    context.streams.out << report::toJson(all).dump(2) << '\n';
  } else {
    context.streams.out << report::toText(all);
  }
  return toInt(ExitCode::Done);
}

template <class Row>
int write(CommandContext& context, const Result<std::vector<Row>>& rows) {
  if (!rows) return context.fail(rows.error());
  return write(context, *rows);
}

int run(CommandContext& context) {
  const auto& words = context.arguments.positional();
  const std::string what = words.empty() ? std::string{} : words.front();
  if (what != "vehicles" && what != "jobs" && what != "due") {
    return context.fail(
        {ErrorCode::InvalidInput, "cli.one_of_these", {}, {{"choices", "vehicles, jobs, due"}}});
  }
  const auto book = openBook(context, store::OpenMode::ViewOnly);
  if (!book) return context.fail(book.error());
  const auto resources = resourceFolder();
  if (!resources) return context.fail(resources.error());
  const auto library = procedures::Library::load(resources->string());
  const workshop::Workshop workshop(**book, library, context.clock, nullptr);
  if (what == "jobs") return write(context, report::jobRowsOf(workshop, report::WhichJobs::All));
  if (what == "due") return write(context, report::dueRowsOf(workshop));
  return write(context, report::vehicleRowsOf(workshop));
}

}  // namespace

Command listCommand() {
  return {.name = "list",
          .summary = "list the vehicles, the jobs, or the rechecks due",
          .usage = "list vehicles|jobs|due --book B [--json]",
          .details =
              "An open job says where it goes on, what was hand-tight, and which hold is asked "
              "again. A "
              "recheck is overdue from the day after "
              "its date.\n",
          .options = kOptions,
          .mostPositional = 1,
          .needsGui = NeedsGui::No,
          .run = run};
}

}  // namespace sw::app
