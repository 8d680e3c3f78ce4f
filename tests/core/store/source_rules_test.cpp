// SPDX-License-Identifier: GPL-3.0-or-later
#include <regex>

#include "store_fixture.h"

namespace sw::store {

namespace {

std::vector<std::filesystem::path> storeSources() {
  std::vector<std::filesystem::path> files;
  for (const auto& item : std::filesystem::recursive_directory_iterator(
           std::filesystem::path(SW_SOURCE_DIR) / "core/store")) {
    const auto ending = item.path().extension();
    if (ending == ".cpp" || ending == ".h") files.push_back(item.path());
  }
  return files;
}

std::vector<std::string> filesWith(const std::string& pattern, const std::string& except = {}) {
  const std::regex expression(pattern);
  std::vector<std::string> found;
  for (const auto& file : storeSources()) {
    if (!except.empty() && file.filename().string().starts_with(except)) continue;
    if (std::regex_search(bytesOf(file.string()), expression))
      found.push_back(file.filename().string());
  }
  return found;
}

using Names = std::vector<std::string>;

}  // namespace

TEST(StoreSources, AreFound) {
  EXPECT_GT(storeSources().size(), 20U);
}

TEST(StoreSources, NoValueIsPutIntoSqlText) {
  EXPECT_EQ(filesWith(R"(\.arg\()"), Names{});
  // Only the connection talks to Qt Sql; what it is given is Sql, made of literals and plain names,
  // or the text of a migration step.
  EXPECT_EQ(filesWith(R"(QSqlQuery|QSqlDatabase)", "connection."), Names{});
  EXPECT_EQ(filesWith(R"(runSchema\()", "connection."), (Names{"book_opening.cpp", "schema.cpp"}));
}

TEST(StoreSources, NothingReplacesARow) {
  EXPECT_EQ(filesWith(R"((OR\s+REPLACE|REPLACE\s+INTO))"), Names{});
}

TEST(StoreSources, ALiveBookIsNeverOpenedAsAFile) {
  EXPECT_EQ(filesWith(R"((QFile\s+\w|QFile\(|ifstream|fopen))"), Names{});
}

}  // namespace sw::store
