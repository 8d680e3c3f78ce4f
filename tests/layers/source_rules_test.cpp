// SPDX-License-Identifier: GPL-3.0-or-later
#include "source_rules.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace sw::layers {
namespace {

using testing::IsEmpty;
using testing::SizeIs;

constexpr auto kLicence = "SPDX-License-Identifier: GPL-3.0-or-later";

TEST(LicenceLine, StandsFirst) {
  const std::string line(kLicence);
  EXPECT_THAT(checkLicenceLine({"a.h", "// " + line + "\n#pragma once\n"}), IsEmpty());
  EXPECT_THAT(checkLicenceLine({"a.sh", "#!/usr/bin/env bash\n# " + line + "\n"}), IsEmpty());
  EXPECT_THAT(checkLicenceLine({"a.h", "#pragma once\n// " + line + "\n"}), SizeIs(1));
  EXPECT_THAT(checkLicenceLine({"a.h", "// Licence: another\n"}), SizeIs(1));
  EXPECT_THAT(checkLicenceLine({"a.h", ""}), SizeIs(1));
}

TEST(PragmaOnce, IsAskedOfHeadersOnly) {
  EXPECT_THAT(checkPragmaOnce({"a.h", "// x\n#pragma once\n"}), IsEmpty());
  EXPECT_THAT(checkPragmaOnce({"a.h", "// #pragma once\n"}), SizeIs(1));
  EXPECT_THAT(checkPragmaOnce({"a.cpp", "int a;\n"}), IsEmpty());
}

TEST(Length, StopsAtSevenHundredLines) {
  std::string text;
  for (int i = 0; i < 700; ++i) text += "\n";
  EXPECT_THAT(checkLength({"a.cpp", text}), IsEmpty());
  EXPECT_THAT(checkLength({"a.cpp", text + "\n"}), SizeIs(1));
}

class Nodiscarded : public testing::TestWithParam<const char*> {};
TEST_P(Nodiscarded, Passes) {
  EXPECT_THAT(checkNodiscard({"a.h", GetParam()}), IsEmpty());
}

INSTANTIATE_TEST_SUITE_P(
    Nodiscard, Nodiscarded,
    testing::Values("[[nodiscard]] Result<int> f();\n",                               //
                    "[[nodiscard]] static sw::Result<std::vector<int>> f(int a);\n",  //
                    "template <class T>\n[[nodiscard]] Result<T> f(T a);\n",          //
                    "class A {\n public:\n  [[nodiscard]] virtual Result<void> f() = 0;\n};\n",
                    "[[nodiscard]] auto f() -> Result<int>;\n",                   //
                    "void f(const Result<int>& result);\n",                       //
                    "std::function<Result<int>(int)> handler;\n",                 //
                    "using Answer = Result<int>;\n",                              //
                    "// Result<int> f();\n",                                      //
                    "/* Result<int> f(); */\n",                                   //
                    "inline Result<int> A::f() { return 1; }\n",                  //
                    "inline auto g = [](int a) -> Result<int> { return a; };\n",  //
                    "QueryResult<int> f();\n"));

class Discarded : public testing::TestWithParam<const char*> {};
TEST_P(Discarded, IsFound) {
  EXPECT_THAT(checkNodiscard({"a.h", GetParam()}), SizeIs(1));
}

INSTANTIATE_TEST_SUITE_P(
    Nodiscard, Discarded,
    testing::Values("Result<int> f();\n",                                       //
                    "sw::Result<void> f(int a, int b);\n",                      //
                    "[[nodiscard]] int g();\nResult<std::vector<int>> f();\n",  //
                    "[[nodiscard]] int g() { return 1; }\n  virtual Result<int> f() = 0;\n",
                    "class A {\n public:\n  Result<void> f();\n};\n",  //
                    "template <class T>\nResult<T> f(T a);\n",         //
                    "auto f() -> Result<int>;\n",                      //
                    "auto f() -> sw::Result<int>;\n",                  //
                    "inline Result<int> f() { return 1; }\n",          //
                    "friend Result<A> operator+(A, A);\n"));

TEST(Nodiscard, NamesTheLineAndLeavesSourcesAlone) {
  const auto breaches = checkNodiscard({"a.h", "// one\n\nResult<int> f();\n"});
  ASSERT_THAT(breaches, SizeIs(1));
  EXPECT_EQ(breaches.front().line, 3);
  EXPECT_THAT(checkNodiscard({"a.cpp", "Result<int> f();\n"}), IsEmpty());
}

TEST(SqlText, IsNeverPutTogetherWithArguments) {
  const std::string bad = "q.exec(QString(\"SELECT a FROM b WHERE c = %1\").arg(c));\n";
  const std::string split =
      "q.exec(QString(\n    R\"(DELETE FROM b;\n WHERE c = %1)\")\n    .arg(c));\n";
  const std::string message = "q.exec(\"SELECT 1\");\nlog(QString(\"took %1\").arg(c));\n";
  EXPECT_THAT(checkSqlIsBound({"core/store/a.cpp", bad}), SizeIs(1));
  EXPECT_THAT(checkSqlIsBound({"core/store/a.cpp", split}), SizeIs(1));
  EXPECT_THAT(checkSqlIsBound({"core/store/a.cpp", message}), IsEmpty());
  EXPECT_THAT(checkSqlIsBound({"core/report/a.cpp", bad}), IsEmpty());
}

TEST(MachinePaths, AreFound) {
  for (const std::string top : {"home", "root", "work", "tmp", "Users"}) {
    EXPECT_THAT(checkNoMachinePaths({"a.md", "see /" + top + "/anna/notes\n"}), SizeIs(1)) << top;
    EXPECT_THAT(checkNoMachinePaths({"a.md", "\"/" + top + "/x\"\n"}), SizeIs(1)) << top;
  }
}

TEST(MachinePaths, AreNotSeenInOtherPaths) {
  EXPECT_THAT(checkNoMachinePaths({"a.md", "ui/work/page.h, https://example.org/work/x\n"}),
              IsEmpty());
  EXPECT_THAT(checkNoMachinePaths({"a.md", "/usr/bin/python3, ${folder}/tmp/x, home/x\n"}),
              IsEmpty());
}

}  // namespace
}  // namespace sw::layers
