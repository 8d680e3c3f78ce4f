// SPDX-License-Identifier: GPL-3.0-or-later
#include "include_rules.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>

namespace sw::layers {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

Breaches includesOf(const std::string& path, const std::string& text) {
  return checkIncludes({path, text});
}

struct Sample {
  std::string path;
  std::string include;
  std::string complaint;  ///< empty: allowed
};

class IncludeSamples : public testing::TestWithParam<Sample> {};

TEST_P(IncludeSamples, AreJudged) {
  const auto& sample = GetParam();
  const auto breaches = includesOf(sample.path, "#include " + sample.include + "\n");
  if (sample.complaint.empty()) {
    EXPECT_THAT(breaches, IsEmpty());
  } else {
    ASSERT_THAT(breaches, SizeIs(1));
    EXPECT_THAT(breaches.front().what, HasSubstr(sample.complaint));
    EXPECT_EQ(breaches.front().line, 1);
  }
}

INSTANTIATE_TEST_SUITE_P(
    Arrows, IncludeSamples,
    testing::Values(Sample{"core/measure/a.h", R"("units/quantity.h")", ""},
                    Sample{"core/measure/a.h", R"("base/result.h")", ""},
                    Sample{"core/measure/a.h", R"("measure/b.h")", ""},
                    Sample{"core/report_print/a.cpp", R"("workshop/session.h")", ""},
                    Sample{"app/main.cpp", R"("report_print/pdf.h")", ""},
                    Sample{"app/main.cpp", R"("commands/demo.h")", ""},
                    Sample{"core/units/a.h", R"("measure/budget.h")", "units -> measure"},
                    Sample{"core/base/a.h", R"("units/quantity.h")", "base -> units"},
                    Sample{"core/store/a.cpp", R"("procedures/run.h")", "store -> procedures"},
                    Sample{"core/store/a.cpp", R"("phrasing/text.h")", "store -> phrasing"},
                    Sample{"core/report/a.cpp", R"("report_print/pdf.h")",
                           "report -> report_print"},
                    Sample{"core/model/a.h", R"("mechanics/shims.h")", "model -> mechanics"},
                    Sample{"core/units/a.h", "<measure/budget.h>", "units -> measure"},
                    Sample{"core/units/a.h", R"("../measure/budget.h")", "by its path from core"},
                    Sample{"core/report/a.h", R"("app/commands.h")", "outside core"},
                    Sample{"core/report/a.h", R"("ui/common/edit.h")", "outside core"},
                    Sample{"core/report/a.h", R"("commands/demo.h")", "outside core"}));

INSTANTIATE_TEST_SUITE_P(
    Qt, IncludeSamples,
    testing::Values(Sample{"core/store/a.cpp", "<QString>", ""},
                    Sample{"core/model/a.cpp", "<QString>", ""},
                    Sample{"core/store/a.cpp", "<QSqlQuery>", ""},
                    Sample{"core/store/a.cpp", "<QtSql/QSqlDatabase>", ""},
                    Sample{"core/report_print/a.cpp", "<QPdfWriter>", ""},
                    Sample{"core/report_print/a.cpp", "<QtGui/QTextDocument>", ""},
                    Sample{"app/main.cpp", "<QGuiApplication>", ""},
                    Sample{"core/signal/a.cpp", "<QString>", "Qt below model"},
                    Sample{"core/mechanics/a.cpp", "<QtCore/QString>", "Qt below model"},
                    Sample{"core/base/a.cpp", "<QtGlobal>", "Qt below model"},
                    Sample{"core/units/a.cpp", "<qglobal.h>", "Qt below model"},
                    Sample{"core/report/a.cpp", "<QSqlQuery>", "Qt Sql outside store"},
                    Sample{"app/main.cpp", "<QSqlDatabase>", "Qt Sql outside store"},
                    Sample{"core/report/a.cpp", "<QImage>", "Qt Gui outside report_print"},
                    Sample{"core/store/a.cpp", "<QtGui/QFont>", "Qt Gui outside report_print"},
                    Sample{"core/report/a.cpp", "<QApplication>", "Widgets"},
                    Sample{"core/report_print/a.cpp", "<QWidget>", "Widgets"},
                    Sample{"core/report_print/a.cpp", "<QtWidgets/QMessageBox>", "Widgets"},
                    Sample{"core/report_print/a.cpp", "<QtWidgets>", "Widgets"},
                    Sample{"core/report_print/a.cpp", "<QtGui>", "Widgets"},
                    Sample{"core/model/a.cpp", "<QPrinter>", "Widgets"}));

INSTANTIATE_TEST_SUITE_P(
    Libraries, IncludeSamples,
    testing::Values(Sample{"core/base/result.h", "<tl/expected.hpp>", ""},
                    Sample{"core/model/a.h", "<nlohmann/json.hpp>", ""},
                    Sample{"core/store/a.cpp", "<sqlite3.h>", ""},
                    Sample{"core/base/a.h", "<nlohmann/json.hpp>", "a library in base"},
                    Sample{"core/workshop/a.cpp", "<sqlite3.h>", "SQLite outside store"}));

TEST(IncludeRules, SeeEveryWayToWriteAnInclude) {
  const auto breaches = includesOf("core/units/a.h",
                                   "#pragma once\n"
                                   "  #  include <QString>\n"
                                   "#include\t\"store/book.h\"\n"
                                   "#include<QtSql>\n");
  EXPECT_THAT(breaches, SizeIs(3));
}

TEST(IncludeRules, LeaveCommentsAndOtherFoldersAlone) {
  EXPECT_THAT(includesOf("core/units/a.h", "// #include <QString>\n"), IsEmpty());
  EXPECT_THAT(includesOf("tests/core/units/a_test.cpp", "#include <QWidget>\n"), IsEmpty());
}

TEST(IncludeRules, RefuseAFolderTheyDoNotKnow) {
  const auto breaches = includesOf("core/extras/a.h", "#include <string>\n");
  ASSERT_THAT(breaches, SizeIs(1));
  EXPECT_THAT(breaches.front().what, HasSubstr("extras"));
}

TEST(IncludeRules, AnArrowIncludesWhatItReaches) {
  EXPECT_THAT(reachableFrom("base"), ElementsAre("base"));
  EXPECT_THAT(reachableFrom("store"), ElementsAre("base", "measure", "model", "store", "units"));
  EXPECT_TRUE(reachableFrom("report_print").contains("signal"));
  EXPECT_FALSE(reachableFrom("phrasing").contains("procedures"));
}

TEST(IncludeRules, NoArrowGoesBack) {
  for (const auto from : coreFolders()) {
    for (const auto& to : reachableFrom(from)) {
      if (to != from) {
        EXPECT_FALSE(reachableFrom(to).contains(std::string(from))) << from << " <-> " << to;
      }
    }
  }
}

// Source: the header folders Qt itself installs.
TEST(QtClasses, StandInThePartThatQtPutsThem) {
  namespace fs = std::filesystem;
  const fs::path core(SW_QT_CORE_HEADERS);
  const fs::path gui(SW_QT_GUI_HEADERS);
  ASSERT_TRUE(fs::exists(core / "QString"));
  ASSERT_TRUE(fs::exists(gui / "QImage"));
  for (const auto name : qtCoreClasses()) EXPECT_TRUE(fs::exists(core / name)) << name;
  for (const auto name : qtGuiClasses()) EXPECT_TRUE(fs::exists(gui / name)) << name;
}

TEST(LinkRules, AcceptTheArrows) {
  const SourceFile file{"core/workshop/CMakeLists.txt",
                        "sw_core_library(workshop\n  SOURCES a.cpp b.cpp\n"
                        "  LINKS store procedures mechanics\n  EXTERNAL Qt6::Core)\n"};
  EXPECT_THAT(checkLinks(file), IsEmpty());
}

TEST(LinkRules, RefuseALinkAgainstTheArrows) {
  const SourceFile file{"core/store/CMakeLists.txt",
                        "sw_core_library(store SOURCES a.cpp LINKS model workshop)\n"};
  const auto breaches = checkLinks(file);
  ASSERT_THAT(breaches, SizeIs(1));
  EXPECT_THAT(breaches.front().what, HasSubstr("store -> workshop"));
}

}  // namespace
}  // namespace sw::layers
