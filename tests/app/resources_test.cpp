// SPDX-License-Identifier: GPL-3.0-or-later
#include "cli/resources.h"

#include <gtest/gtest.h>

#include <cstdlib>

namespace sw::app {
namespace {

namespace fs = std::filesystem;

class Resources : public testing::Test {
 protected:
  void SetUp() override {
    std::string pattern = (fs::temp_directory_path() / "r\xc3\xa4um e XXXXXX").string();
    m_root = mkdtemp(pattern.data());
    fs::create_directories(m_root / "bin");
  }
  void TearDown() override { fs::remove_all(m_root); }

  fs::path made(const fs::path& name) const {
    fs::create_directories(m_root / name / "procedures");
    return m_root / name;
  }
  [[nodiscard]] const fs::path& root() const { return m_root; }

 private:
  fs::path m_root;
};

TEST_F(Resources, TheEnvironmentGoesFirst) {
  const auto own = made("own");
  const auto installed = made("share/swivelwright");
  EXPECT_EQ(resourceFolder({own, root() / "bin", {}}), own);
  EXPECT_EQ(resourceFolder({{}, root() / "bin", own}), installed);
}

TEST_F(Resources, AWrongEnvironmentIsAnErrorNotAReasonToLookElsewhere) {
  const auto tree = made("tree");
  const auto folder = resourceFolder({root() / "nowhere", root() / "bin", tree});
  ASSERT_FALSE(folder);
  EXPECT_EQ(folder.error().key, "cli.no_resources");
  EXPECT_EQ(folder.error().detail("looked"), (root() / "nowhere").string());
}

TEST_F(Resources, TheSourceTreeIsTheLastResort) {
  const auto tree = made("tree");
  EXPECT_EQ(resourceFolder({{}, root() / "bin", tree}), tree);
  EXPECT_FALSE(resourceFolder({{}, root() / "bin", {}}));
}

}  // namespace
}  // namespace sw::app
