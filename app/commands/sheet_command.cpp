// SPDX-License-Identifier: GPL-3.0-or-later
// sheet and card: the printed documents of a job.
#include <array>
#include <ostream>

#include "cli/write_document.h"
#include "commands/commands.h"

namespace sw::app {

namespace {

constexpr std::array kSheetOptions{
    OptionSpec{"book", "PATH", "the book"},
    OptionSpec{"job", "N", "the job's number"},
    OptionSpec{"out", "FILE", "where it is written: NAME.pdf or NAME.html"},
    OptionSpec{"copy", "workshop|customer", "everything, or the shorter copy for the customer"},
    OptionSpec{"paper", "A4|Letter", "the paper, A4 where it is not said"},
};
constexpr std::array kCardOptions{
    OptionSpec{"book", "PATH", "the book"},
    OptionSpec{"job", "N", "the job's number"},
    OptionSpec{"out", "FILE", "where it is written: NAME.pdf or NAME.html"},
    OptionSpec{"paper", "A4|Letter", "the paper, A4 where it is not said"},
};

Result<report::JobPaper> copyOption(const CommandContext& context) {
  const auto text = context.arguments.value("copy").value_or("workshop");
  if (text == "workshop") return report::JobPaper::WorkshopCopy;
  if (text == "customer") return report::JobPaper::CustomerCopy;
  return fail(ErrorCode::InvalidInput, "cli.not_one_of", "--copy",
              {{"text", text}, {"choices", "workshop, customer"}});
}

int finish(CommandContext& context, const Result<void>& written) {
  if (!written) {
    Error error = written.error();
    if (error.field == "out") error.field = "--out";
    return context.fail(error);
  }
  context.streams.out << *context.arguments.value("out") << '\n';
  return toInt(ExitCode::Done);
}

int print(CommandContext& context, report::JobPaper what) {
  const auto paper = paperOption(context);
  if (!paper) return context.fail(paper.error());
  const auto opened = openJob(context);
  if (!opened) return context.fail(opened.error());
  const auto made =
      report::makePaper({what, *paper}, opened->job, opened->shop, *opened->book, *opened->library);
  if (!made) return context.fail(made.error());
  return finish(context, writeDocument(context, *opened, *made));
}

int runSheet(CommandContext& context) {
  const auto copy = copyOption(context);
  return copy ? print(context, *copy) : context.fail(copy.error());
}

int runCard(CommandContext& context) {
  return print(context, report::JobPaper::WorkCard);
}

}  // namespace

Command sheetCommand() {
  return {.name = "sheet",
          .summary = "write a job sheet as PDF or HTML",
          .usage =
              "sheet --book B --job N --out F.pdf|F.html [--copy workshop|customer] "
              "[--paper A4|Letter]",
          .details =
              "The workshop copy holds every reading, check and answer; the customer's "
              "what was found, done and used.\nThe same facts give the same file. A book "
              "that another program has open can be printed from.\n",
          .options = kSheetOptions,
          .mostPositional = 0,
          .needsGui = NeedsGui::Yes,
          .run = runSheet};
}

Command cardCommand() {
  return {.name = "card",
          .summary = "write the work card of a job, to tick and write on",
          .usage = "card --book B --job N --out F.pdf|F.html [--paper A4|Letter]",
          .details =
              "What is done is ticked. A job without a plan gets the card of the whole "
              "swivel-bearing job.\n",
          .options = kCardOptions,
          .mostPositional = 0,
          .needsGui = NeedsGui::Yes,
          .run = runCard};
}

}  // namespace sw::app
