// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <array>
#include <nlohmann/json.hpp>
#include <ostream>

#include "cli/open_book.h"
#include "cli/open_job.h"
#include "commands/commands.h"
#include "report/kit_list.h"

namespace sw::app {

namespace {

using workshop::KitLine;
using workshop::KitTick;

constexpr std::array kOptions{
    OptionSpec{"book", "PATH", "the book"},
    OptionSpec{"job", "N", "the job's number"},
    OptionSpec{"tick", "KEY", "a line of the kit, by its key in the JSON form (tool/Torch)"},
    OptionSpec{"as", "have|missing|open", "what to tick the line as"},
    OptionSpec{"json", "", "as JSON instead of a table"},
};

/// Ticks the line named by --tick, if one is.
Result<void> tickLine(const CommandContext& context, model::JobId job,
                      const std::vector<KitLine>& lines) {
  const auto key = context.arguments.value("tick");
  if (!key) {
    if (!context.arguments.has("as")) return {};
    return fail(ErrorCode::Missing, "cli.option_missing", "--tick");
  }
  const bool known =
      std::any_of(lines.begin(), lines.end(), [&](const KitLine& l) { return l.key == *key; });
  if (!known) return fail(ErrorCode::NotFound, "cli.no_kit_line", "--tick", {{"text", *key}});
  const auto word = context.required("as");
  if (!word) return failAs(word);
  const auto tick = fromWord<KitTick>(*word);
  if (!tick) {
    return fail(ErrorCode::InvalidInput, "cli.not_one_of", "--as",
                {{"text", *word}, {"choices", "have, missing, open"}});
  }
  const auto book = openBook(context, store::OpenMode::ReadWrite);
  if (!book) return failAs(book);
  return workshop::setKitTick(**book, job, *key, *tick);
}

int run(CommandContext& context) {
  auto opened = openJob(context);
  if (!opened) return context.fail(opened.error());
  const auto lines = workshop::kitOf(opened->job);
  opened->book.reset();  // a tick opens it for writing
  if (const auto ticked = tickLine(context, opened->job.job, lines); !ticked) {
    return context.fail(ticked.error());
  }
  const auto book = openBook(context, store::OpenMode::ViewOnly);
  if (!book) return context.fail(book.error());
  const auto ticks = workshop::kitTicks(**book, opened->job.job);
  if (!ticks) return context.fail(ticks.error());
  if (context.arguments.has("json")) {
    context.streams.out << report::toJson(lines, *ticks, opened->job).dump(2) << '\n';
  } else {
    context.streams.out << report::toText(lines, *ticks);
  }
  return toInt(ExitCode::Done);
}

}  // namespace

Command kitCommand() {
  return {.name = "kit",
          .summary = "list the tools, parts and consumables of a job's plan, and tick them off",
          .usage = "kit --book B --job N [--tick KEY --as have|missing|open] [--json]",
          .details =
              "Tools stand once, parts are counted for each side, amounts of consumables are added "
              "up. A tick\nis a reminder and no fact of the job.\n",
          .options = kOptions,
          .mostPositional = 0,
          .needsGui = NeedsGui::No,
          .run = run};
}

}  // namespace sw::app
