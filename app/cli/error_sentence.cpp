// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/error_sentence.h"

#include <algorithm>
#include <array>
#include <string_view>

#include "phrasing/error_sentence.h"

namespace sw::app {

namespace {

/// Sentence patterns; "{name}" stands for the detail of that name.
struct Pattern {
  std::string_view key;
  std::string_view text;
};

constexpr std::array kPatterns{
    Pattern{"cli.no_command", "say what to do: a command word. swivelwright --help lists them"},
    Pattern{
        "cli.no_display",
        "there is no display to open the window on. swivelwright --help lists the commands that "
        "need none"},
    Pattern{"cli.not_a_size", "\"{text}\" is not a size from 200 to 8000; write e.g. 1280x800"},
    Pattern{"ui.no_page", "there is no page \"{text}\"; choose one of: {choices}"},
    Pattern{"ui.page_needs_job", "this page shows one job: say which"},
    Pattern{"cli.unknown_command",
            "\"{text}\" is not a command. swivelwright --help lists the commands"},
    Pattern{"cli.unknown_option", "there is no such option here; --help lists them"},
    Pattern{"cli.option_twice", "given twice"},
    Pattern{"cli.option_missing", "needed and not given"},
    Pattern{"cli.unexpected_value", "takes no value"},
    Pattern{"cli.value_missing", "needs a value: {value}"},
    Pattern{"cli.unexpected_argument", "\"{text}\" has no place here; --help says what has"},
    Pattern{"cli.argument_too_long", "an argument is longer than {limit} bytes"},
    Pattern{"cli.too_many_arguments", "too many arguments"},
    Pattern{"cli.not_a_whole_number", "\"{text}\" is not a whole number; write e.g. 7"},
    Pattern{"cli.not_one_of", "\"{text}\" is none of: {choices}"},
    Pattern{"cli.output_lost", "the output cannot be written"},
    Pattern{"cli.cannot_read", "{text} cannot be read"},
    Pattern{"cli.no_resources", "the program's data files were not found; looked in: {looked}"},
    Pattern{"cli.one_of_these", "choose one of: {choices}"},
    Pattern{"cli.no_kit_line",
            "\"{text}\" is no line of this kit; kit --json shows the keys of its lines"},
    Pattern{"units.not_a_number", "\"{text}\" is not {expected}; write e.g. \"{example}\""},
    Pattern{"units.wrong_kind", "\"{text}\" is not {expected}; write e.g. \"{example}\""},
    Pattern{"compute.unknown_name", "\"{text}\" is not a calculation; there are: {choices}"},
    Pattern{"compute.out_of_range", "{text} is out of range; it must be {range}"},
    Pattern{"compute.not_a_quantity",
            "\"{text}\" is not a number with a unit; write e.g. \"{example}\""},
    Pattern{"compute.not_a_unit", "\"{text}\" is not a unit; write e.g. \"{example}\""},
};

constexpr std::size_t kLongestEcho = 60;

/// "a force", "an angle".
std::string withArticle(std::string kind) {
  std::replace(kind.begin(), kind.end(), '_', ' ');
  const bool vowel = !kind.empty() && std::string_view("aeiou").find(kind[0]) != std::string::npos;
  return (vowel ? "an " : "a ") + kind;
}

/// What was typed, short enough for a line. Cut between characters, not inside one.
std::string clipped(std::string text) {
  if (text.size() <= kLongestEcho) return text;
  std::size_t end = kLongestEcho;
  while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) --end;
  text.resize(end);
  return text + "...";
}

std::string detailText(const Error& error, std::string_view name) {
  const std::string value = error.detail(name);
  if (name == "text") return clipped(value);
  return name == "expected" ? withArticle(value) : value;
}

std::string filled(std::string_view pattern, const Error& error) {
  std::string text;
  while (!pattern.empty()) {
    const auto open = pattern.find('{');
    text += pattern.substr(0, open);
    if (open == std::string_view::npos) break;
    const auto close = pattern.find('}', open);
    const auto name = pattern.substr(open + 1, close - open - 1);
    text += detailText(error, name);
    pattern.remove_prefix(close + 1);
  }
  return text;
}

}  // namespace

std::string errorSentence(const Error& error) {
  const auto found = std::find_if(kPatterns.begin(), kPatterns.end(),
                                  [&](const Pattern& row) { return row.key == error.key; });
  return found == kPatterns.end() ? phrasing::sentence(error.about({})).toStdString()
                                  : filled(found->text, error);
}

}  // namespace sw::app
