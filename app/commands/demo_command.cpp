// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>
#include <ostream>

#include "cli/open_book.h"
#include "cli/resources.h"
#include "commands/commands.h"
#include "demo/demo_shop.h"

namespace sw::app {

namespace {

constexpr std::array kOptions{OptionSpec{"book", "PATH", "where the demonstration book is made"}};

int run(CommandContext& context) {
  const auto path = context.required("book");
  if (!path) return context.fail(path.error());
  const auto resources = resourceFolder();
  if (!resources) return context.fail(resources.error());
  const auto library = procedures::Library::load(resources->string());
  if (!library.problems().empty()) return context.fail(library.problems().front());
  ManualClock clock(demo::demoStart());
  auto book = store::Book::create(*path, clock);
  if (!book) return context.fail(book.error());
  const auto built =
      demo::buildDemoShop(**book, library, clock, (*resources / "demo" / "shop.jsonl").string());
  if (!built) return context.fail(built.error());
  context.streams.out << *path << '\n';
  return toInt(ExitCode::Done);
}

}  // namespace

Command demoCommand() {
  return {"demo",
          "make the demonstration book: an invented shop",
          "demo --book PATH",
          "Seven vehicles, twelve jobs over two years, three of them open. The same content every "
          "time; "
          "a file\nthat exists is never touched.\n",
          kOptions,
          0,
          NeedsGui::No,
          &run};
}

}  // namespace sw::app
