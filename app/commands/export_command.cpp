// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>
#include <nlohmann/json.hpp>
#include <ostream>

#include "cli/open_job.h"
#include "commands/commands.h"
#include "report/export_json.h"
#include "report_print/pdf.h"

namespace sw::app {

namespace {

constexpr std::array kOptions{
    OptionSpec{"book", "PATH", "the book"},
    OptionSpec{"job", "N", "the job's number"},
    OptionSpec{"out", "FILE", "write FILE instead of standard output"},
};

int run(CommandContext& context) {
  const auto opened = openJob(context);
  if (!opened) return context.fail(opened.error());
  const std::string text = report::exportJob(opened->job, opened->shop).dump(2) + "\n";
  const auto out = context.arguments.value("out");
  if (!out || *out == "-") {
    context.streams.out << text;
    return toInt(ExitCode::Done);
  }
  const auto written = report_print::writeFile(*out, QByteArray::fromStdString(text));
  if (!written) return context.fail(written.error().about("--out"));
  context.streams.out << *out << '\n';
  return toInt(ExitCode::Done);
}

}  // namespace

Command exportCommand() {
  return {.name = "export",
          .summary = "write a whole job as JSON",
          .usage = "export --book B --job N [--out F]",
          .details =
              "{\"schema\":1,\"job\",\"vehicle\",\"people\",\"instruments\","
              "\"instrument_checks\",\"spec\",\"procedures\",\n\"entries\",\"summary\"}: "
              "every fact in order, with the revisions it points at. A closed job's export "
              "stays\nas it is, whatever changes in the shop.\n",
          .options = kOptions,
          .mostPositional = 0,
          .needsGui = NeedsGui::No,
          .run = run};
}

}  // namespace sw::app
