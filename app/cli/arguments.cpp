// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/arguments.h"

#include <algorithm>
#include <array>

namespace sw::app {

namespace {

constexpr std::array kCommon{
    OptionSpec{"help", "", "say what this command does and takes"},
    OptionSpec{"version", "", "say which version this is"},
    OptionSpec{"now", "TIME", "take this time (ISO 8601) instead of the clock's; it stands still"},
    OptionSpec{"seed", "N", "start random numbers from this whole number"},
    OptionSpec{"errors", "text|json", "how errors are written to standard error"},
};

/// Stands before a command word, too, and alone for the window.
constexpr OptionSpec kBook{"book", "PATH", "the book"};

bool isOption(std::string_view text) {
  return text.size() > 1 && text.front() == '-';
}

/// "--seed=5" as name "seed", value "5".
struct TypedOption {
  std::string shown;  ///< "--seed", for messages
  std::string name;
  std::optional<std::string> value;
};

TypedOption splitOption(std::string_view text) {
  if (!text.starts_with("--")) return {std::string(text), {}, {}};
  const auto equals = text.find('=');
  TypedOption option;
  option.shown = std::string(text.substr(0, equals));
  option.name = option.shown.substr(2);
  if (equals != std::string_view::npos) option.value = std::string(text.substr(equals + 1));
  return option;
}

const OptionSpec* find(std::span<const OptionSpec> options, std::string_view name) {
  const auto found = std::find_if(options.begin(), options.end(),
                                  [name](const OptionSpec& spec) { return spec.name == name; });
  return found == options.end() ? nullptr : &*found;
}

class Parser {
 public:
  Parser(std::span<const std::string> arguments, std::span<const OptionSpec> options,
         std::size_t mostPositional)
      : m_arguments(arguments), m_options(options), m_mostPositional(mostPositional) {}

  Result<Arguments> parse() {
    if (m_arguments.size() > kMostArguments) {
      return fail(ErrorCode::InvalidInput, "cli.too_many_arguments");
    }
    bool optionsEnded = false;
    while (m_at < m_arguments.size()) {
      const std::string& text = m_arguments[m_at++];
      if (text.size() > kLongestArgument) {
        return fail(ErrorCode::InvalidInput, "cli.argument_too_long", {},
                    {{"limit", std::to_string(kLongestArgument)}});
      }
      if (!optionsEnded && text == "--") {
        optionsEnded = true;
        continue;
      }
      const auto taken = !optionsEnded && isOption(text) ? takeOption(text) : takePositional(text);
      if (!taken) return failAs(taken);
    }
    return std::move(m_result);
  }

 private:
  Result<void> takePositional(const std::string& text) {
    if (m_result.positional().size() >= m_mostPositional) {
      return fail(ErrorCode::InvalidInput, "cli.unexpected_argument", {}, {{"text", text}});
    }
    m_result.addPositional(text);
    return {};
  }

  Result<void> takeOption(const std::string& text) {
    TypedOption typed = splitOption(text);
    if (typed.shown == "-h") typed.name = "help";
    const OptionSpec* spec = find(m_options, typed.name);
    if (spec == nullptr) spec = find(commonOptions(), typed.name);
    if (spec == nullptr) {
      return fail(ErrorCode::InvalidInput, "cli.unknown_option", typed.shown);
    }
    auto value = valueOf(*spec, typed);
    if (!value) return failAs(value);
    if (m_result.addOption(spec->name, std::move(*value))) return {};
    return fail(ErrorCode::InvalidInput, "cli.option_twice", typed.shown);
  }

  Result<std::string> valueOf(const OptionSpec& spec, TypedOption& typed) {
    if (!spec.takesValue()) {
      if (!typed.value) return std::string{};
      return fail(ErrorCode::InvalidInput, "cli.unexpected_value", typed.shown);
    }
    if (typed.value) return std::move(*typed.value);
    // A value that begins with dashes is more likely a forgotten value; "--name=--x" still says it.
    if (m_at < m_arguments.size() && !m_arguments[m_at].starts_with("--")) {
      if (m_arguments[m_at].size() > kLongestArgument) {
        return fail(ErrorCode::InvalidInput, "cli.argument_too_long", typed.shown,
                    {{"limit", std::to_string(kLongestArgument)}});
      }
      return m_arguments[m_at++];
    }
    return fail(ErrorCode::Missing, "cli.value_missing", typed.shown,
                {{"value", std::string(spec.valueName)}});
  }

  std::span<const std::string> m_arguments;
  std::span<const OptionSpec> m_options;
  std::size_t m_mostPositional;
  std::size_t m_at = 0;
  Arguments m_result;
};

}  // namespace

bool Arguments::addOption(std::string_view name, std::string value) {
  return m_options.emplace(std::string(name), std::move(value)).second;
}

bool Arguments::has(std::string_view option) const {
  return m_options.find(option) != m_options.end();
}

std::optional<std::string> Arguments::value(std::string_view option) const {
  const auto found = m_options.find(option);
  if (found == m_options.end()) return std::nullopt;
  return found->second;
}

std::span<const OptionSpec> commonOptions() {
  return kCommon;
}

CommandWord splitCommandWord(std::span<const std::string> arguments) {
  CommandWord split;
  for (std::size_t at = 0; at < arguments.size(); ++at) {
    const std::string& text = arguments[at];
    if (text == "--" || !isOption(text)) {
      if (text != "--") split.word = text;
      const std::size_t next = text == "--" ? at : at + 1;
      split.rest.insert(split.rest.end(), arguments.begin() + static_cast<std::ptrdiff_t>(next),
                        arguments.end());
      return split;
    }
    split.rest.push_back(text);
    const auto name = splitOption(text).name;
    const OptionSpec* spec = name == kBook.name ? &kBook : find(kCommon, name);
    const bool valueFollows = spec != nullptr && spec->takesValue() &&
                              text.find('=') == std::string::npos && at + 1 < arguments.size() &&
                              !arguments[at + 1].starts_with("--");
    if (valueFollows) split.rest.push_back(arguments[++at]);
  }
  return split;
}

Result<Arguments> parseArguments(std::span<const std::string> arguments,
                                 std::span<const OptionSpec> commandOptions,
                                 std::size_t mostPositional) {
  return Parser(arguments, commandOptions, mostPositional).parse();
}

}  // namespace sw::app
