// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>
#include <ostream>

#include "cli/open_book.h"
#include "cli/resources.h"
#include "commands/commands.h"
#include "procedures/library.h"
#include "report/book_lists.h"
#include "report/lesson_list.h"
#include "report/spec_list.h"
#include "workshop/workshop.h"

namespace sw::app {

namespace {

constexpr std::array kOptions{
    OptionSpec{"book", "PATH", "the book"},
    OptionSpec{"registration", "R", "specs: the vehicle"},
    OptionSpec{"plan", "ID", "specs: only what this plan needs"},
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

Result<std::vector<report::SpecRow>> specsOf(const CommandContext& context,
                                             const workshop::Workshop& workshop,
                                             const procedures::Library& library) {
  const auto registration = context.required("registration");
  if (!registration) return failAs(registration);
  const auto shop = workshop.shop();
  if (!shop) return failAs(shop);
  const auto* vehicle = (*shop)->vehicleByRegistration(*registration);
  if (vehicle == nullptr) {
    return fail(ErrorCode::NotFound, "workshop.no_vehicle", "--registration",
                {{"text", *registration}});
  }
  const auto id = vehicle->fact.vehicle;
  const auto plan = context.arguments.value("plan");
  const auto needs = plan ? workshop::specNeedsOf(library, *plan, **shop, id)
                          : workshop::specNeedsOf(library, **shop, id);
  if (!needs) return tl::make_unexpected(needs.error().about("--plan"));
  return report::specRows(*needs, **shop, id);
}

int writeLessons(CommandContext& context, const workshop::Workshop& workshop) {
  const auto learning = workshop::shopLearning(workshop);
  if (!learning) return context.fail(learning.error());
  const auto shop = workshop.shop();
  if (!shop) return context.fail(shop.error());
  if (context.arguments.has("json")) {
    context.streams.out << report::lessonsJson(*learning, **shop).dump(2) << '\n';
  } else {
    context.streams.out << report::lessonsText(*learning, **shop);
  }
  return toInt(ExitCode::Done);
}

int run(CommandContext& context) {
  const auto& words = context.arguments.positional();
  const std::string what = words.empty() ? std::string{} : words.front();
  constexpr std::array kLists{"vehicles", "jobs", "due", "specs", "lessons"};
  if (std::find(kLists.begin(), kLists.end(), what) == kLists.end()) {
    return context.fail({ErrorCode::InvalidInput,
                         "cli.one_of_these",
                         {},
                         {{"choices", "vehicles, jobs, due, specs, lessons"}}});
  }
  const auto book = openBook(context, store::OpenMode::ViewOnly);
  if (!book) return context.fail(book.error());
  const auto resources = resourceFolder();
  if (!resources) return context.fail(resources.error());
  const auto library = procedures::Library::load(resources->string());
  const workshop::Workshop workshop(**book, library, context.clock, nullptr);
  if (what == "jobs") return write(context, report::jobRowsOf(workshop, report::WhichJobs::All));
  if (what == "specs") return write(context, specsOf(context, workshop, library));
  if (what == "due") return write(context, report::dueRowsOf(workshop));
  if (what == "lessons") return writeLessons(context, workshop);
  return write(context, report::vehicleRowsOf(workshop));
}

}  // namespace

Command listCommand() {
  return {
      .name = "list",
      .summary = "list the vehicles, the jobs, the rechecks due, a spec sheet, or lessons",
      .usage =
          "list vehicles|jobs|due|specs|lessons --book B [--registration R [--plan ID]] [--json]",
      .details =
          "An open job says where it goes on, what was hand-tight, and which hold is asked "
          "again. A "
          "recheck is overdue from the day after "
          "its date. specs shows what the procedures need to know of a vehicle, and what of it is "
          "on file. lessons shows what ended jobs taught of causes, and how well the table that "
          "is learned from them forecasts, each job by a table learned without it.\n",
      .options = kOptions,
      .mostPositional = 1,
      .needsGui = NeedsGui::No,
      .run = run};
}

}  // namespace sw::app
