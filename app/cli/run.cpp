// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/run.h"

#include <algorithm>
#include <charconv>
#include <istream>
#include <nlohmann/json.hpp>
#include <ostream>

#include "cli/help.h"

namespace sw::app {

namespace {

const Command* findCommand(std::span<const Command> commands, std::string_view word) {
  const auto found = std::find_if(commands.begin(), commands.end(),
                                  [word](const Command& row) { return row.name == word; });
  return found == commands.end() ? nullptr : &*found;
}

/// Looked for before anything else, so that a wrong argument is reported in the form asked for.
ErrorFormat wantedFormat(std::span<const std::string> arguments) {
  for (std::size_t at = 0; at < arguments.size() && arguments[at] != "--"; ++at) {
    if (arguments[at] == "--errors=json") return ErrorFormat::Json;
    const bool pair = arguments[at] == "--errors" && at + 1 < arguments.size();
    if (pair && arguments[at + 1] == "json") return ErrorFormat::Json;
  }
  return ErrorFormat::Text;
}

bool asksForText(std::span<const std::string> arguments) {
  return std::any_of(arguments.begin(), arguments.end(), [](const std::string& text) {
    return text == "--help" || text == "--version";
  });
}

/// The command of the word; the window where there is no word and nothing is to be written.
const Command* meantCommand(std::span<const Command> commands, const CommandWord& split) {
  if (!split.word.empty()) return findCommand(commands, split.word);
  return asksForText(split.rest) ? nullptr : findCommand(commands, kWindowCommand);
}

Result<std::optional<std::uint64_t>> readSeed(const Arguments& arguments) {
  const auto text = arguments.value("seed");
  if (!text) return std::optional<std::uint64_t>{};
  std::uint64_t seed = 0;
  const char* const end = text->data() + text->size();
  const auto [stop, error] = std::from_chars(text->data(), end, seed);
  if (error == std::errc{} && stop == end) return seed;
  return fail(ErrorCode::InvalidInput, "cli.not_a_whole_number", "--seed", {{"text", *text}});
}

Result<std::optional<Timestamp>> readNow(const Arguments& arguments) {
  const auto text = arguments.value("now");
  if (!text) return std::optional<Timestamp>{};
  const auto time = parseTimestamp(*text);
  if (!time) return tl::make_unexpected(time.error().about("--now"));
  return *time;
}

Result<ErrorFormat> readErrorFormat(const Arguments& arguments) {
  const auto text = arguments.value("errors");
  if (!text) return ErrorFormat::Text;
  if (const auto format = errorFormatFromWord(*text)) return *format;
  return fail(ErrorCode::InvalidInput, "cli.not_one_of", "--errors",
              {{"text", *text}, {"choices", "text, json"}});
}

class Program {
 public:
  Program(std::span<const Command> commands, Streams streams, const Clock& clock,
          ErrorFormat format)
      : m_commands(commands), m_streams(streams), m_clock(clock), m_format(format) {}

  int run(std::span<const std::string> arguments) {
    const CommandWord split = splitCommandWord(arguments);
    const Command* command = meantCommand(m_commands, split);
    if (command != nullptr) return runCommand(*command, split.rest);
    if (split.word.empty()) return runWithoutWord(split.rest);
    return report({ErrorCode::NotFound, "cli.unknown_command", {}, {{"text", split.word}}}, {});
  }

 private:
  int runWithoutWord(std::span<const std::string> rest) {
    const auto parsed = parseArguments(rest, {}, 0);
    if (!parsed) return report(parsed.error(), {});
    if (parsed->has("version")) return write(versionText());
    if (parsed->has("help")) return write(programHelp(m_commands));
    return report({ErrorCode::Missing, "cli.no_command", {}, {}}, {});
  }

  int runCommand(const Command& command, std::span<const std::string> rest) {
    const auto parsed = parseArguments(rest, command.options, command.mostPositional);
    if (!parsed) return report(parsed.error(), command.name);
    if (parsed->has("version")) return write(versionText());
    if (parsed->has("help")) return write(commandHelp(command));
    const auto format = readErrorFormat(*parsed);
    if (!format) return report(format.error(), command.name);
    const auto seed = readSeed(*parsed);
    if (!seed) return report(seed.error(), command.name);
    const auto now = readNow(*parsed);
    if (!now) return report(now.error(), command.name);
    const ManualClock standing(now->value_or(Timestamp{}));
    const Clock& clock = *now ? static_cast<const Clock&>(standing) : m_clock;
    CommandContext context{*parsed, m_streams, clock, *seed, *format, std::string(command.name)};
    const int code = command.run(context);
    return taken() ? code : outputLost(context.name);
  }

  int write(const std::string& text) {
    m_streams.out << text;
    return taken() ? toInt(ExitCode::Done) : outputLost({});
  }

  bool taken() { return static_cast<bool>(m_streams.out.flush()); }

  int outputLost(std::string_view command) {
    return report({ErrorCode::CannotWrite, "cli.output_lost", {}, {}}, command);
  }

  int report(const Error& error, std::string_view command) {
    m_streams.err << errorLine(error, command, m_format) << std::flush;
    return toInt(exitCodeFor(error.code));
  }

  std::span<const Command> m_commands;
  Streams m_streams;
  const Clock& m_clock;
  ErrorFormat m_format;
};

}  // namespace

int runProgram(std::span<const std::string> arguments, std::span<const Command> commands,
               Streams streams, const Clock& clock) {
  return Program(commands, streams, clock, wantedFormat(arguments)).run(arguments);
}

const Command* requestedCommand(std::span<const std::string> arguments,
                                std::span<const Command> commands) {
  return meantCommand(commands, splitCommandWord(arguments));
}

}  // namespace sw::app
