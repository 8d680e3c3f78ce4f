// SPDX-License-Identifier: GPL-3.0-or-later
#include "procedures/library.h"
#include <gmock/gmock.h>

#include <unistd.h>

#include <filesystem>
#include <fstream>

#include "sample.h"

namespace sw::procedures {
namespace {

namespace fs = std::filesystem;

/// "broken-kind.json json.not_one_of /steps/0/kind", in order of the report.
std::vector<std::string> reportOf(const Library& library) {
  std::vector<std::string> lines;
  for (const Error& error : library.problems()) {
    lines.push_back(fs::path(error.detail("file")).filename().string() + " " + error.key +
                    (error.field.empty() ? "" : " " + error.field));
  }
  return lines;
}

// tests/data/procedures-broken holds two sound files among broken ones; each is broken in one way.
class BrokenFolder : public testing::Test {
 protected:
  Library library = Library::load(std::string(SW_SOURCE_DIR) + "/tests/data/procedures-broken");
};

TEST_F(BrokenFolder, TheOthersStillWork) {
  ASSERT_EQ(library.procedures().size(), 2U);
  ASSERT_NE(library.procedure("sound"), nullptr);
  EXPECT_EQ(library.procedure("sound")->steps.size(), 2U);
  ASSERT_NE(library.procedure("after-a-missing-one"), nullptr);
  EXPECT_EQ(library.procedure("truncated"), nullptr);
  ASSERT_EQ(library.plans().size(), 1U);
  ASSERT_NE(library.plan("sound-plan"), nullptr);
  EXPECT_EQ(library.plan("plan-of-a-missing-one"), nullptr);
}

TEST_F(BrokenFolder, EveryBrokenFileIsNamed) {
  EXPECT_THAT(reportOf(library),
              testing::ElementsAre(
                  "duplicate-key.json json.duplicate_key /title", "empty.json json.invalid",
                  "id-of-another.json procedure.id_not_file_name /id",
                  "needs-a-loop.json procedure.need_not_earlier /steps/0/needs",
                  "not-utf8.json json.invalid", "too-deep.json json.too_deep",
                  "truncated.json json.invalid", "unknown-kind.json json.not_one_of /steps/0/kind",
                  "unknown-schema.json procedure.schema /schema",
                  "wrong-type.json json.wrong_kind /steps/0/minutes",
                  "plan-of-nothing.json procedure.empty_list /procedures",
                  "after-a-missing-one.json procedure.unknown_procedure /after",
                  "plan-of-a-missing-one.json procedure.unknown_procedure /procedures"));
}

class ScratchFolder : public testing::Test {
 protected:
  void SetUp() override {
    root = fs::path(testing::TempDir()) / ("kept here \xc3\xa9 " + std::to_string(::getpid()));
    fs::create_directories(root / "procedures");
    fs::create_directories(root / "plans");
  }
  void TearDown() override { fs::remove_all(root); }
  void write(const std::string& name, const std::string& text) const {
    std::ofstream(root / name, std::ios::binary) << text;
  }
  fs::path root;
};

TEST_F(ScratchFolder, AMegabyteOfTextIsRefusedByName) {
  write("procedures/sample.json", fileWith(doStep("a")));
  write("procedures/large.json", std::string(std::size_t{5} * 1024 * 1024, ' '));
  write("procedures/procedure.schema.json", "{}");
  write("procedures/notes.txt", "no data file");
  const Library library = Library::load(root.string());
  EXPECT_NE(library.procedure("sample"), nullptr);
  EXPECT_THAT(reportOf(library), testing::ElementsAre("large.json procedure.too_large"));
}

TEST_F(ScratchFolder, WhatIsNoFileIsRefusedByName) {
  fs::create_directory(root / "procedures" / "folder.json");
  fs::create_symlink("/nowhere at all", root / "procedures" / "link.json");
  write("procedures/sample.json", fileWith(doStep("a")));
  const Library library = Library::load(root.string());
  EXPECT_NE(library.procedure("sample"), nullptr);
  EXPECT_THAT(reportOf(library), testing::ElementsAre("folder.json procedure.cannot_read",
                                                      "link.json procedure.cannot_read"));
}

TEST_F(ScratchFolder, AMissingFolderIsAProblemNotAnEmptyLibrary) {
  fs::remove_all(root / "procedures");
  const Library library = Library::load(root.string());
  EXPECT_TRUE(library.procedures().empty());
  EXPECT_THAT(reportOf(library), testing::ElementsAre("procedures procedure.folder_missing"));
}

TEST_F(ScratchFolder, TheTextIsKeptByteForByte) {
  const std::string text = "\r\n " + fileWith(doStep("a")) + "\r\n\t";
  write("procedures/sample.json", text);
  const Library library = Library::load(root.string());
  ASSERT_NE(library.procedure("sample"), nullptr);
  EXPECT_EQ(library.procedure("sample")->text, text);
}

TEST(Library, OfGivenProcedures) {
  auto procedure = read(doStep("a"));
  ASSERT_TRUE(procedure.has_value());
  const Library library = Library::of({*procedure}, {PlanTemplate{"p", "P", {"sample"}}});
  EXPECT_NE(library.procedure("sample"), nullptr);
  EXPECT_NE(library.plan("p"), nullptr);
  EXPECT_EQ(library.procedure("other"), nullptr);
  EXPECT_TRUE(library.problems().empty());
}

}  // namespace
}  // namespace sw::procedures
