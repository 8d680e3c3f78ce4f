// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>
#include <nlohmann/json.hpp>
#include <ostream>

#include "cli/open_book.h"
#include "cli/resources.h"
#include "commands/commands.h"
#include "procedures/library.h"
#include "report/lists.h"
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

/// A book, its shop as it is now, and its jobs.
struct Opened {
  std::unique_ptr<store::Book> book;
  workshop::ShopState shop{{}};
  std::vector<store::JobSummary> jobs;
};

Result<Opened> open(const CommandContext& context) {
  auto book = openBook(context, store::OpenMode::ViewOnly);
  if (!book) return failAs(book);
  const auto entries = (*book)->shopEntries();
  if (!entries) return failAs(entries);
  auto jobs = (*book)->jobs();
  if (!jobs) return failAs(jobs);
  return Opened{std::move(*book), workshop::ShopState(*entries), std::move(*jobs)};
}

const model::Vehicle* vehicleOf(const Opened& opened, const store::JobSummary& job) {
  const auto* found = opened.shop.vehicle(job.vehicle);
  return found == nullptr ? nullptr : &found->fact;
}

int listJobs(CommandContext& context, Opened& opened) {
  const auto resources = resourceFolder();
  if (!resources) return context.fail(resources.error());
  const auto library = procedures::Library::load(resources->string());
  const workshop::Workshop workshop(*opened.book, library, context.clock, nullptr);
  std::vector<report::JobRow> rows;
  for (const store::JobSummary& job : opened.jobs) {
    if (job.closedAt) {
      rows.push_back(report::closedJobRow(job, vehicleOf(opened, job)));
      continue;
    }
    const auto state = workshop.job(job.job);
    if (!state) return context.fail(state.error());
    rows.push_back(report::openJobRow(*state));
  }
  return write(context, rows);
}

int listDue(CommandContext& context, const Opened& opened) {
  const Date today = localDate(context.clock.now());
  std::vector<report::DueRow> rows;
  for (const store::JobSummary& job : opened.jobs) {
    const auto entries = opened.book->jobEntries(job.job);
    if (!entries) return context.fail(entries.error());
    const auto* vehicle = vehicleOf(opened, job);
    const std::string registration = vehicle == nullptr ? std::string{} : vehicle->registration;
    for (auto& row : report::dueRows(*entries, job.job, registration, today)) {
      rows.push_back(std::move(row));
    }
  }
  report::sortByDate(rows);
  return write(context, rows);
}

int run(CommandContext& context) {
  const auto& words = context.arguments.positional();
  const std::string what = words.empty() ? std::string{} : words.front();
  if (what != "vehicles" && what != "jobs" && what != "due") {
    return context.fail(
        {ErrorCode::InvalidInput, "cli.one_of_these", {}, {{"choices", "vehicles, jobs, due"}}});
  }
  auto opened = open(context);
  if (!opened) return context.fail(opened.error());
  if (what == "jobs") return listJobs(context, *opened);
  if (what == "due") return listDue(context, *opened);
  return write(context, report::vehicleRows(opened->shop, opened->jobs));
}

}  // namespace

Command listCommand() {
  return {.name = "list",
          .summary = "list the vehicles, the jobs, or the rechecks due",
          .usage = "list vehicles|jobs|due --book B [--json]",
          .details =
              "An open job says where it goes on. A recheck is overdue from the day after "
              "its date.\n",
          .options = kOptions,
          .mostPositional = 1,
          .needsGui = NeedsGui::No,
          .run = run};
}

}  // namespace sw::app
