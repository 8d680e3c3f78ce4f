// SPDX-License-Identifier: GPL-3.0-or-later
// The rules, held against the tree itself.
#include "tree.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "include_rules.h"
#include "source_rules.h"

namespace sw::layers {
namespace {

using testing::Contains;
using testing::Field;
using testing::IsEmpty;
using testing::Not;

const std::vector<SourceFile>& tree() {
  static const auto kFiles = readTree();
  return kFiles;
}

template <class Check>
Breaches breachesIn(const std::vector<SourceFile>& files, Check check) {
  Breaches all;
  for (const auto& file : files) {
    for (auto& breach : check(file)) all.push_back(std::move(breach));
  }
  return all;
}

std::vector<SourceFile> sources() {
  return select(tree(), {"core/", "app/", "ui/", "tests/"}, {".h", ".cpp"});
}

TEST(Tree, IsRead) {
  const auto path = [](const char* name) { return Field(&SourceFile::path, name); };
  EXPECT_THAT(tree(), Contains(path("CMakeLists.txt")));
  EXPECT_THAT(tree(), Contains(path("core/base/result.h")));
  EXPECT_THAT(tree(), Contains(path("packaging/run.sh")));
  EXPECT_THAT(tree(), Contains(path("tests/layers/tree_test.cpp")));
  EXPECT_THAT(tree(), Not(Contains(path(".git/config"))));
  EXPECT_GT(sources().size(), 20U);
}

TEST(Tree, IncludesFollowTheArrows) {
  EXPECT_THAT(breachesIn(select(tree(), {"core/", "app/"}, {".h", ".cpp"}), checkIncludes),
              IsEmpty());
}

TEST(Tree, LinksFollowTheArrows) {
  EXPECT_THAT(breachesIn(select(tree(), {"core/"}, {"CMakeLists.txt"}), checkLinks), IsEmpty());
}

TEST(Tree, FilesStartWithTheLicenceLine) {
  auto files = sources();
  for (auto& file : select(tree(), {""}, {"CMakeLists.txt", ".cmake", ".sh", ".py", ".ci/run"})) {
    files.push_back(std::move(file));
  }
  EXPECT_THAT(breachesIn(files, checkLicenceLine), IsEmpty());
}

TEST(Tree, HeadersAreReadOnce) {
  EXPECT_THAT(breachesIn(sources(), checkPragmaOnce), IsEmpty());
}

TEST(Tree, FilesStayShort) {
  EXPECT_THAT(breachesIn(sources(), checkLength), IsEmpty());
}

TEST(Tree, ResultsAreNeverDropped) {
  EXPECT_THAT(breachesIn(select(tree(), {"core/"}, {".h"}), checkNodiscard), IsEmpty());
}

TEST(Tree, SqlIsBound) {
  EXPECT_THAT(breachesIn(select(tree(), {"core/store/"}, {".h", ".cpp"}), checkSqlIsBound),
              IsEmpty());
}

TEST(Tree, NamesNoMachinePaths) {
  EXPECT_THAT(breachesIn(tree(), checkNoMachinePaths), IsEmpty());
}

}  // namespace
}  // namespace sw::layers
