// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/error_text.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "cli/exit_code.h"
#include "model/json.h"

namespace sw::app {
namespace {

Error typed(std::string text) {
  return {ErrorCode::InvalidInput,
          "compute.not_a_unit",
          "/to",
          {{"text", std::move(text)}, {"example", "N"}}};
}

TEST(ErrorLine, IsOneLineThatNamesCommandAndField) {
  EXPECT_EQ(errorLine(typed("abc"), "compute convert", ErrorFormat::Text),
            "swivelwright compute convert: /to: \"abc\" is not a unit; write e.g. \"N\"\n");
}

TEST(ErrorLine, StaysOneLineWhateverWasTyped) {
  for (const auto format : {ErrorFormat::Text, ErrorFormat::Json}) {
    const std::string line =
        errorLine(typed("a\nb\x1b[31m\t\xff" + std::string(500, 'x')), "compute", format);
    EXPECT_EQ(line.find('\n'), line.size() - 1);
    EXPECT_EQ(line.find('\x1b'), std::string::npos);
    EXPECT_LT(line.size(), 300U);
  }
}

TEST(ErrorLine, AsJsonHasCodeFieldAndMessage) {
  const auto json = model::parseJson(errorLine(typed("abc"), "compute", ErrorFormat::Json));
  ASSERT_TRUE(json);
  const auto& error = json->at("error");
  EXPECT_EQ(error.at("code"), "wrong_kind");
  EXPECT_EQ(error.at("field"), "/to");
  EXPECT_EQ(error.at("message"), "\"abc\" is not a unit; write e.g. \"N\"");
}

TEST(ErrorLine, AnAbsentFieldIsLeftOut) {
  const Error error{ErrorCode::InvalidInput, "json.invalid", {}, {}};
  const auto json = model::parseJson(errorLine(error, "compute", ErrorFormat::Json));
  ASSERT_TRUE(json);
  EXPECT_FALSE(json->at("error").contains("field"));
}

TEST(CodeWord, IsOneOfTheEightForInputs) {
  const auto wordFor = [](ErrorCode code, const char* key) {
    return std::string(codeWord(Error{code, key, {}, {}}));
  };
  EXPECT_EQ(wordFor(ErrorCode::InvalidInput, "json.invalid"), "invalid_json");
  EXPECT_EQ(wordFor(ErrorCode::InvalidInput, "json.too_deep"), "invalid_json");
  EXPECT_EQ(wordFor(ErrorCode::NotFound, "compute.unknown_name"), "unknown_name");
  EXPECT_EQ(wordFor(ErrorCode::InvalidInput, "json.unknown_field"), "unknown_field");
  EXPECT_EQ(wordFor(ErrorCode::InvalidInput, "json.duplicate_key"), "duplicate_field");
  EXPECT_EQ(wordFor(ErrorCode::Missing, "json.missing"), "missing_field");
  EXPECT_EQ(wordFor(ErrorCode::InvalidInput, "units.wrong_kind"), "wrong_kind");
  EXPECT_EQ(wordFor(ErrorCode::OutOfRange, "measure.not_positive"), "out_of_range");
  EXPECT_EQ(wordFor(ErrorCode::Degenerate, "any"), "degenerate");
}

TEST(ExitCodes, FollowWhatTheCallerCanDo) {
  EXPECT_EQ(toInt(exitCodeFor(ErrorCode::InvalidInput)), 2);
  EXPECT_EQ(toInt(exitCodeFor(ErrorCode::Degenerate)), 2);
  EXPECT_EQ(toInt(exitCodeFor(ErrorCode::Refused)), 2);
  for (const auto code : {ErrorCode::BookMissing, ErrorCode::BookForeign, ErrorCode::BookDamaged,
                          ErrorCode::BookNewer, ErrorCode::BookReadOnly, ErrorCode::BookLocked,
                          ErrorCode::BookOnNetwork}) {
    EXPECT_EQ(toInt(exitCodeFor(code)), 3);
  }
  EXPECT_EQ(toInt(exitCodeFor(ErrorCode::CannotWrite)), 4);
  EXPECT_EQ(toInt(exitCodeFor(ErrorCode::Cancelled)), 5);
  EXPECT_EQ(toInt(exitCodeFor(ErrorCode::Internal)), 70);
}

}  // namespace
}  // namespace sw::app
