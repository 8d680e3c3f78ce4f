// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <cstdlib>
#include <filesystem>
#include <fstream>

#include "compute/calculation.h"
#include "support/program_run.h"

namespace sw::test {
namespace {

using model::Json;
namespace fs = std::filesystem;

TEST(ComputeCommand, ListsNameTabTitle) {
  const ProgramRun run = runProgram({"compute", "--list"});
  EXPECT_EQ(run.exitCode, 0);
  std::string wanted;
  for (const auto& row : compute::calculations()) {
    wanted += std::string(row.name) + "\t" + std::string(row.title) + "\n";
  }
  EXPECT_EQ(run.out, wanted);
  EXPECT_NE(wanted.find("series\t"), std::string::npos);
}

TEST(ComputeCommand, ErrorsAreOneLineOnStandardErrorAndNothingElse) {
  const ProgramRun run = runProgram({"compute", "convert"}, R"({"value": "3 N", "to": "parsec"})");
  EXPECT_EQ(run.exitCode, 2);
  EXPECT_EQ(run.out, "");
  EXPECT_EQ(run.err,
            "swivelwright compute convert: /to: \"parsec\" is not a unit; write e.g. \"lbf ft\"\n");
}

TEST(ComputeCommand, AWordInPlaceOfAQuantityIsShownWithAGoodOne) {
  const ProgramRun run = runProgram({"compute", "series"}, R"({"readings": ["1 N", 2, "abc"]})");
  EXPECT_EQ(run.err,
            "swivelwright compute series: /readings/2: \"abc\" is not a force; write e.g. "
            "\"18.5 N\"\n");
}

TEST(ComputeCommand, AnUnknownNameIsNamed) {
  const ProgramRun run = runProgram({"compute", "serie", "--errors", "json"}, "{}");
  EXPECT_EQ(run.exitCode, 2);
  EXPECT_EQ(model::parseJson(run.err).value_or(Json()).at("error").at("code"), "unknown_name");
}

TEST(ComputeCommand, InputThatIsNoObjectIsRefused) {
  for (const char* input : {"", "{", "{} {}", "nul", "\xff", "{\"value\": \"\xff\"}",
                            "{\"value\": 01}", "{'value': 1}"}) {
    EXPECT_EQ(refused("convert", input).at("code"), "invalid_json") << input;
  }
  for (const char* input : {"[]", "1", "\"3 N\"", "null"}) {
    EXPECT_EQ(refused("convert", input).at("code"), "wrong_kind") << input;
  }
  const std::string deep = std::string(100, '[') + std::string(100, ']');
  EXPECT_EQ(refused("series", R"({"readings": )" + deep + "}").at("code"), "invalid_json");
}

TEST(ComputeCommand, ModesExcludeOneAnother) {
  for (const std::vector<std::string>& arguments : {
           std::vector<std::string>{"compute"},
           std::vector<std::string>{"compute", "--list", "series"},
           std::vector<std::string>{"compute", "--list", "--stream"},
           std::vector<std::string>{"compute", "--describe"},
           std::vector<std::string>{"compute", "series", "--stream"},
           std::vector<std::string>{"compute", "series", "--describe", "--input", "x"},
           std::vector<std::string>{"compute", "series", "convert"},
       }) {
    const ProgramRun run = runProgram(arguments, "{}");
    EXPECT_EQ(run.exitCode, 2);
    EXPECT_EQ(run.out, "");
    EXPECT_NE(run.err, "");
  }
}

class ComputeInputFile : public testing::Test {
 protected:
  void SetUp() override {
    std::string pattern = (fs::temp_directory_path() / "r\xc3\xa4um e XXXXXX").string();
    m_folder = mkdtemp(pattern.data());
  }
  void TearDown() override { fs::remove_all(m_folder); }
  [[nodiscard]] std::string file(const std::string& text) const {
    const fs::path path = m_folder / "in put.json";
    std::ofstream(path, std::ios::binary) << text;
    return path.string();
  }
  [[nodiscard]] std::string folder() const { return m_folder.string(); }

 private:
  fs::path m_folder;
};

TEST_F(ComputeInputFile, IsReadInPlaceOfStandardInput) {
  const std::string name = file(R"({"value": "2 in", "to": "mm"})");
  const ProgramRun run = runProgram({"compute", "convert", "--input", name}, "not this");
  EXPECT_EQ(run.exitCode, 0) << run.err;
  EXPECT_NE(run.out.find("50.8 mm"), std::string::npos);
}

TEST_F(ComputeInputFile, MayHoldAStream) {
  const std::string name =
      file(R"({"id": 4, "compute": "convert", "input": {"value": "2 in", "to": "mm"}})");
  const ProgramRun run = runProgram({"compute", "--stream", "--input", name});
  EXPECT_TRUE(run.out.starts_with(R"({"id":4,"result":{"value":"50.8 mm")")) << run.out;
}

TEST_F(ComputeInputFile, ThatCannotBeReadIsNamed) {
  for (const std::string& name : {folder() + "/nothing", folder()}) {
    const ProgramRun run = runProgram({"compute", "convert", "--input", name});
    EXPECT_EQ(run.exitCode, 2) << name;
    EXPECT_TRUE(run.err.starts_with("swivelwright compute convert: --input: ")) << run.err;
  }
  EXPECT_EQ(runProgram({"compute", "convert", "--input", file("")}).exitCode, 2);
}

}  // namespace
}  // namespace sw::test
