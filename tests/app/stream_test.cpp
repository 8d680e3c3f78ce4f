// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/compute_stream.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <sstream>

#include "support/program_run.h"

namespace sw::test {
namespace {

using model::Json;

std::vector<Json> answers(const std::string& text) {
  std::istringstream lines(text);
  std::vector<Json> result;
  for (std::string line; std::getline(lines, line);) {
    const auto json = model::parseJson(line);
    EXPECT_TRUE(json) << line;
    result.push_back(json.value_or(Json()));
  }
  return result;
}

const char* const kGood =
    R"({"id": 1, "compute": "convert", "input": {"value": "2 in", "to": "mm"}})";

TEST(ComputeStream, AnswersInOrderAndABadLineNeverEndsIt) {
  const ProgramRun run = runProgram(
      {"compute", "--stream"},
      std::string(kGood) + "\n" + "{not json\n" + "\n  \r\n" +
          R"({"id": "b", "compute": "convert", "input": {"value": "2 in", "to": "N"}})" + "\n" +
          R"({"id": 3, "compute": "guess", "input": {}})" + "\n" + "[1, 2]\n" + "\xff\xfe\n" +
          R"({"id": 1, "compute": "convert", "input": {"value": "2 in", "to": "mm"}})");
  EXPECT_EQ(run.exitCode, 0);
  EXPECT_EQ(run.err, "");
  const auto lines = answers(run.out);
  ASSERT_EQ(lines.size(), 7U);
  EXPECT_EQ(lines[0].at("id"), 1);
  EXPECT_EQ(lines[0].at("result").at("value"), "50.8 mm");
  EXPECT_EQ(lines[1].at("error").at("code"), "invalid_json");
  EXPECT_FALSE(lines[1].contains("id"));
  EXPECT_EQ(lines[2].at("id"), "b");
  EXPECT_EQ(lines[2].at("error").at("field"), "/value");
  EXPECT_EQ(lines[3].at("error").at("code"), "unknown_name");
  EXPECT_EQ(lines[3].at("error").at("field"), "/compute");
  EXPECT_EQ(lines[4].at("error").at("code"), "wrong_kind");
  EXPECT_EQ(lines[5].at("error").at("code"), "invalid_json");
  EXPECT_EQ(lines[6], lines[0]);
}

TEST(ComputeStream, TheAnswerIsThatOfTheSingleCalculationAndTheId) {
  Json single = computed("convert", R"({"value": "2 in", "to": "mm"})");
  Json streamed = answers(compute::answerLine(kGood)).front();
  streamed.erase("id");
  EXPECT_EQ(streamed, single);
  Json error = refused("convert", R"({"value": "2 in", "two": "mm"})");
  EXPECT_EQ(
      answers(compute::answerLine(
                  R"({"id": 1, "compute": "convert", "input": {"value": "2 in", "two": "mm"}})"))
          .front()
          .at("error"),
      error);
}

TEST(ComputeStream, ALineNeedsItsThreeFieldsAndNoOthers) {
  const auto error = [](const char* line) { return answers(compute::answerLine(line)).front(); };
  EXPECT_EQ(error(R"({"compute": "convert", "input": {}})").at("error").at("field"), "/id");
  EXPECT_EQ(error(R"({"id": 1, "input": {}})").at("error").at("field"), "/compute");
  EXPECT_EQ(error(R"({"id": 1, "compute": "convert"})").at("error").at("field"), "/input");
  EXPECT_EQ(error(R"({"id": [], "compute": "convert", "input": {}})").at("error").at("field"),
            "/id");
  EXPECT_EQ(error(R"({"id": 1, "compute": "convert", "input": {}, "x": 1})").at("error").at("code"),
            "unknown_field");
  EXPECT_EQ(error(R"({"id": 1, "id": 2, "compute": "convert"})").at("error").at("code"),
            "duplicate_field");
}

/// A reader that goes away after the first answer.
class OneLineOnly final : public std::stringbuf {
 protected:
  int_type overflow(int_type c) override { return m_full ? traits_type::eof() : take(c); }
  std::streamsize xsputn(const char* text, std::streamsize count) override {
    return m_full ? 0 : std::stringbuf::xsputn(text, count);
  }
  int sync() override {
    m_full = true;
    ++flushes;
    return 0;
  }

 public:
  int flushes = 0;

 private:
  int_type take(int_type c) { return std::stringbuf::overflow(c); }
  bool m_full = false;
};

TEST(ComputeStream, StopsWhenAnswersAreNoLongerTaken) {
  OneLineOnly buffer;
  std::ostream out(&buffer);
  std::istringstream in(std::string(kGood) + "\n" + kGood + "\n" + kGood + "\n");
  compute::answerStream(in, out);
  EXPECT_FALSE(out);
  EXPECT_EQ(answers(buffer.str()).size(), 1U);
  std::string rest;
  EXPECT_TRUE(std::getline(in, rest)) << "the third line is left unread";
}

}  // namespace
}  // namespace sw::test
