// SPDX-License-Identifier: GPL-3.0-or-later
#include <array>
#include <fstream>
#include <istream>
#include <ostream>

#include "cli/compute_stream.h"
#include "commands/commands.h"
#include "compute/calculation.h"

namespace sw::app {

namespace {

constexpr std::array kOptions{
    OptionSpec{"list", "", "the calculations: name, tab, title"},
    OptionSpec{"describe", "", "what NAME takes and gives, with an example, as JSON"},
    OptionSpec{"stream", "", "answer lines {\"id\",\"compute\",\"input\"} until the input ends"},
    OptionSpec{"input", "FILE", "read FILE instead of standard input"},
};

constexpr std::string_view kDetails =
    "Reads one JSON object and writes one: {\"result\",\"notes\",\"method\"}. A quantity is text "
    "with its unit\n(\"18.5 N\"); a JSON number is taken in the unit that --describe names. What "
    "comes out can go in.\nWith --stream each line is answered in order by a line "
    "{\"id\",\"result\",\"notes\",\"method\"} or\n{\"id\",\"error\":{\"code\",\"field\","
    "\"message\"}}, the field being a path into the input; a bad line never\nends it, and empty "
    "lines are passed over.\n";

int write(CommandContext& context, const std::string& text) {
  context.streams.out << text;
  return toInt(ExitCode::Done);
}

int list(CommandContext& context) {
  std::string text;
  for (const auto& row : compute::calculations()) {
    text.append(row.name).append("\t").append(row.title).append("\n");
  }
  return write(context, text);
}

int describe(CommandContext& context, const compute::Calculation& calculation) {
  const auto json = compute::toJson(calculation.describe());
  return json ? write(context, json->dump(2) + "\n") : context.fail(json.error());
}

int evaluate(CommandContext& context, const compute::Calculation& calculation, std::istream& in) {
  const auto text = compute::readAll(in);
  if (!text) return context.fail(text.error());
  const auto input = model::parseJson(*text);
  if (!input) return context.fail(input.error());
  const auto answer = compute::evaluate(calculation, *input);
  return answer ? write(context, answer->dump() + "\n") : context.fail(answer.error());
}

/// Runs `work` on the file of --input, or on standard input.
template <class Work>
int withInput(CommandContext& context, Work work) {
  const auto name = context.arguments.value("input");
  if (!name || *name == "-") return work(context.streams.in);
  std::ifstream file(*name, std::ios::binary);
  if (file && file.peek() != std::ifstream::traits_type::eof()) return work(file);
  const bool empty = file.is_open() && file.eof() && !file.bad();
  if (empty) {
    file.clear();
    return work(file);
  }
  return context.fail({ErrorCode::NotFound, "cli.cannot_read", "--input", {{"text", *name}}});
}

int named(CommandContext& context) {
  const std::string& name = context.arguments.positional().front();
  const auto calculation = compute::findCalculation(name);
  if (!calculation) return context.fail(calculation.error());
  context.name += " " + name;
  if (context.arguments.has("describe")) return describe(context, *calculation);
  return withInput(context, [&](std::istream& in) { return evaluate(context, *calculation, in); });
}

/// --list, --stream and a NAME exclude one another; --describe belongs to a NAME.
bool sensible(const Arguments& arguments) {
  const bool hasName = !arguments.positional().empty();
  const int modes =
      (arguments.has("list") ? 1 : 0) + (arguments.has("stream") ? 1 : 0) + (hasName ? 1 : 0);
  if (modes != 1) return false;
  if (arguments.has("describe") && (!hasName || arguments.has("input"))) return false;
  return !(arguments.has("list") && arguments.has("input"));
}

int run(CommandContext& context) {
  if (!sensible(context.arguments)) {
    return context.fail({ErrorCode::InvalidInput,
                         "cli.one_of_these",
                         {},
                         {{"choices",
                           "NAME [--input FILE], NAME --describe, --list, "
                           "--stream [--input FILE]"}}});
  }
  if (context.arguments.has("list")) return list(context);
  if (!context.arguments.has("stream")) return named(context);
  return withInput(context, [&](std::istream& in) {
    compute::answerStream(in, context.streams.out);
    return toInt(ExitCode::Done);
  });
}

}  // namespace

Command computeCommand() {
  return {.name = "compute",
          .summary = "calculate: JSON in, JSON out",
          .usage = "compute NAME [--input FILE] | NAME --describe | --list | --stream",
          .details = kDetails,
          .options = kOptions,
          .mostPositional = 1,
          .needsGui = NeedsGui::No,
          .run = run};
}

}  // namespace sw::app
