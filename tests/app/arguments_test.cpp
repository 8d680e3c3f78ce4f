// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/arguments.h"

#include <gtest/gtest.h>

#include <array>

namespace sw::app {
namespace {

using Texts = std::vector<std::string>;

constexpr std::array kOptions{OptionSpec{"book", "PATH", "the book"},
                              OptionSpec{"json", "", "as JSON"}};

Result<Arguments> parse(const Texts& texts, std::size_t mostPositional = 2) {
  return parseArguments(texts, kOptions, mostPositional);
}

std::string keyOf(const Texts& texts, std::size_t mostPositional = 2) {
  const auto parsed = parse(texts, mostPositional);
  return parsed ? "" : parsed.error().key;
}

TEST(Arguments, TakesOptionsInAnyOrderAndBothSpellings) {
  for (const Texts& texts :
       {Texts{"jobs", "--book", "a b.book", "--json"}, Texts{"--json", "--book=a b.book", "jobs"},
        Texts{"--book", "a b.book", "jobs", "--json"}}) {
    const auto parsed = parse(texts);
    ASSERT_TRUE(parsed) << parsed.error().key;
    EXPECT_EQ(parsed->positional(), Texts{"jobs"});
    EXPECT_EQ(parsed->value("book"), "a b.book");
    EXPECT_TRUE(parsed->has("json"));
    EXPECT_FALSE(parsed->has("seed"));
    EXPECT_EQ(parsed->value("seed"), std::nullopt);
  }
}

TEST(Arguments, KnowsTheCommonOptionsEverywhere) {
  const auto parsed = parse({"--now", "2031-04-05T10:20Z", "--seed", "7", "--errors=json", "-h"});
  ASSERT_TRUE(parsed);
  EXPECT_EQ(parsed->value("now"), "2031-04-05T10:20Z");
  EXPECT_EQ(parsed->value("seed"), "7");
  EXPECT_EQ(parsed->value("errors"), "json");
  EXPECT_TRUE(parsed->has("help"));
}

TEST(Arguments, DashesEndTheOptionsAndOneDashIsStandardInput) {
  const auto parsed = parse({"-", "--", "--book"});
  ASSERT_TRUE(parsed);
  EXPECT_EQ(parsed->positional(), (Texts{"-", "--book"}));
}

TEST(Arguments, AValueMayBeEmptyOrHoldAnEqualsSign) {
  EXPECT_EQ(parse({"--book="})->value("book"), "");
  EXPECT_EQ(parse({"--book=a=b"})->value("book"), "a=b");
  EXPECT_EQ(parse({"--book=--json"})->value("book"), "--json");
}

TEST(Arguments, RefusesWhatItDoesNotKnow) {
  EXPECT_EQ(keyOf({"--bock", "x"}), "cli.unknown_option");
  EXPECT_EQ(keyOf({"-b", "x"}), "cli.unknown_option");
  EXPECT_EQ(keyOf({"--"}), "");
  EXPECT_EQ(keyOf({"--json=yes"}), "cli.unexpected_value");
  EXPECT_EQ(keyOf({"--book", "a", "--book", "a"}), "cli.option_twice");
  EXPECT_EQ(keyOf({"--json", "--json"}), "cli.option_twice");
  EXPECT_EQ(keyOf({"a", "b", "c"}), "cli.unexpected_argument");
  EXPECT_EQ(parse({"--bock"}).error().field, "--bock");
}

TEST(Arguments, AForgottenValueIsNotTakenFromTheNextOption) {
  EXPECT_EQ(keyOf({"--book"}), "cli.value_missing");
  EXPECT_EQ(keyOf({"--book", "--json"}), "cli.value_missing");
  EXPECT_EQ(keyOf({"--book", "--"}), "cli.value_missing");
  EXPECT_EQ(parse({"--book", "-"})->value("book"), "-");
}

TEST(Arguments, LengthsAreCapped) {
  EXPECT_EQ(keyOf({std::string(kLongestArgument, 'x')}), "");
  EXPECT_EQ(keyOf({std::string(kLongestArgument + 1, 'x')}), "cli.argument_too_long");
  EXPECT_EQ(keyOf({"--book", std::string(kLongestArgument + 1, 'x')}), "cli.argument_too_long");
  EXPECT_EQ(keyOf(Texts(kMostArguments + 1, "x"), 1000), "cli.too_many_arguments");
}

TEST(CommandWord, IsTheFirstThatIsNoOptionNorItsValue) {
  const CommandWord plain = splitCommandWord(Texts{"compute", "series"});
  EXPECT_EQ(plain.word, "compute");
  EXPECT_EQ(plain.rest, Texts{"series"});
  const CommandWord after = splitCommandWord(Texts{"--errors", "json", "--seed=1", "compute", "x"});
  EXPECT_EQ(after.word, "compute");
  EXPECT_EQ(after.rest, (Texts{"--errors", "json", "--seed=1", "x"}));
  EXPECT_EQ(splitCommandWord(Texts{"--help"}).word, "");
  EXPECT_EQ(splitCommandWord(Texts{"--", "compute"}).word, "");
  EXPECT_EQ(splitCommandWord(Texts{}).word, "");
}

}  // namespace
}  // namespace sw::app
