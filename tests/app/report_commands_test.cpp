// SPDX-License-Identifier: GPL-3.0-or-later
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <unistd.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>

#include "support/child.h"

// export, sheet, card and list as a user runs them, on the demonstration book, without a display.

namespace sw::test {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;
namespace fs = std::filesystem;

ChildRun run(std::vector<std::string> arguments) {
  return runChild(SW_PROGRAM, {std::move(arguments), {}, {}, {}});
}

std::string contentOf(const fs::path& file) {
  std::ostringstream text;
  text << std::ifstream(file, std::ios::binary).rdbuf();
  return text.str();
}

class ReportCommands : public ::testing::Test {
 protected:
  static void SetUpTestSuite() {
    s_folder = fs::temp_directory_path() / ("report commands " + std::to_string(getpid()));
    fs::create_directories(s_folder);
    fs::copy_file(SW_DEMO_BOOK, book());
  }
  static void TearDownTestSuite() { fs::remove_all(s_folder); }
  static std::string book() { return (s_folder / "shop é.swbook").string(); }
  static std::string file(const std::string& name) { return (s_folder / name).string(); }
  static inline fs::path s_folder;
};

TEST_F(ReportCommands, SheetsAreWrittenTwiceTheSame) {
  for (const char* name : {"sheet.pdf", "sheet.html"}) {
    const std::vector<std::string> arguments{"sheet", "--book", book(), "--job", "1", "--out"};
    auto first = arguments, second = arguments;
    first.push_back(file(name));
    second.push_back(file(std::string("again ") + name));
    ASSERT_EQ(run(first).exitCode, 0) << run(first).err;
    ASSERT_EQ(run(second).exitCode, 0);
    EXPECT_GT(contentOf(first.back()).size(), 5000U);
    EXPECT_EQ(contentOf(first.back()), contentOf(second.back()));
  }
  EXPECT_TRUE(contentOf(file("sheet.pdf")).starts_with("%PDF-"));
}

TEST_F(ReportCommands, TheCustomersCopyAndTheCard) {
  const auto brief = file("brief.html");
  ASSERT_EQ(run({"sheet", "--book", book(), "--job", "1", "--copy", "customer", "--paper", "Letter",
                 "--out", brief})
                .exitCode,
            0);
  EXPECT_THAT(contentOf(brief), HasSubstr("customer copy"));
  EXPECT_THAT(contentOf(brief), HasSubstr("size: letter"));
  const auto card = run({"card", "--book", book(), "--job", "1", "--out", file("card.pdf")});
  EXPECT_EQ(card.exitCode, 0) << card.err;
  EXPECT_EQ(card.out, file("card.pdf") + "\n");
}

TEST_F(ReportCommands, ExportAndListsAreJson) {
  const auto exported = run({"export", "--book", book(), "--job", "1"});
  EXPECT_EQ(exported.exitCode, 0);
  EXPECT_THAT(exported.out, ::testing::StartsWith("{\n  \"schema\": 1,"));
  for (const char* what : {"vehicles", "jobs", "due"}) {
    const auto text = run({"list", what, "--book", book()});
    EXPECT_EQ(text.exitCode, 0) << text.err;
    EXPECT_THAT(text.out, HasSubstr("Registration"));
    const auto json = run({"list", what, "--book", book(), "--json"});
    EXPECT_THAT(json.out, ::testing::StartsWith("["));
  }
}

TEST_F(ReportCommands, LessonsAreListedWithTheScoresOfBothTables) {
  const auto text = run({"list", "lessons", "--book", book()});
  ASSERT_EQ(text.exitCode, 0) << text.err;
  EXPECT_THAT(text.out, HasSubstr("swivel_preload"));
  EXPECT_THAT(text.out, HasSubstr("In use: "));
  const auto json = run({"list", "lessons", "--book", book(), "--json"});
  for (const char* part : {"\"starting\"", "\"learned\"", "\"guess\"", "\"first_right\"",
                           "\"state\": \"counts\"", "\"damping\": 1"}) {
    EXPECT_THAT(json.out, HasSubstr(part));
  }
}

TEST_F(ReportCommands, ASpecSheetIsListedBesideWhatIsNeeded) {
  const auto vehicles = run({"list", "vehicles", "--book", book()});
  const std::string row = vehicles.out.substr(vehicles.out.find('\n') + 1);
  const std::string plate = row.substr(0, row.find("  "));
  const auto sheet = run({"list", "specs", "--book", book(), "--registration", plate});
  ASSERT_EQ(sheet.exitCode, 0) << sheet.err;
  EXPECT_THAT(sheet.out, HasSubstr("swivel.starting_force"));
  const auto swap = run({"list", "specs", "--book", book(), "--registration", plate, "--plan",
                         "wheel-swap-check", "--json"});
  ASSERT_EQ(swap.exitCode, 0) << swap.err;
  EXPECT_THAT(swap.out, HasSubstr("\"key\": \"wheel_nuts\""));
  EXPECT_THAT(swap.out, Not(HasSubstr("swivel.starting_force")));
}

TEST_F(ReportCommands, FindShowsVehiclesFirst) {
  const auto vehicles = run({"list", "vehicles", "--book", book()});
  ASSERT_EQ(vehicles.exitCode, 0);
  // The first plate of the list finds its own vehicle.
  const std::string row = vehicles.out.substr(vehicles.out.find('\n') + 1);
  const std::string plate = row.substr(0, row.find("  "));
  const auto found = run({"find", "--book", book(), plate, "--json"});
  ASSERT_EQ(found.exitCode, 0) << found.err;
  EXPECT_THAT(found.out, HasSubstr("\"registration\": \"" + plate + "\""));
  EXPECT_THAT(found.out, HasSubstr("\"kind\": \"vehicle\""));
  EXPECT_THAT(run({"find", "--book", book(), plate}).out, HasSubstr(plate));
  EXPECT_EQ(run({"find", "--book", book(), "no such word anywhere", "--json"}).out, "[]\n");
  const auto few = run({"find", "--book", book(), "s", "--most", "1"});
  EXPECT_EQ(std::count(few.out.begin(), few.out.end(), '\n'), 2);
}

TEST_F(ReportCommands, TheKitIsListedAndTicked) {
  const auto table = run({"kit", "--book", book(), "--job", "1"});
  ASSERT_EQ(table.exitCode, 0) << table.err;
  EXPECT_THAT(table.out, HasSubstr("Torque wrench"));
  const auto ticked = run({"kit", "--book", book(), "--job", "1", "--tick", "tool/Torque wrench",
                           "--as", "missing", "--json"});
  ASSERT_EQ(ticked.exitCode, 0) << ticked.err;
  EXPECT_THAT(ticked.out, HasSubstr("\"tick\": \"missing\""));
  EXPECT_EQ(run({"kit", "--book", book(), "--job", "1", "--json"}).out, ticked.out);
  const auto open = run({"kit", "--book", book(), "--job", "1", "--tick", "tool/Torque wrench",
                         "--as", "open", "--json"});
  EXPECT_THAT(open.out, Not(HasSubstr("missing")));
}

TEST_F(ReportCommands, WhatIsWrongIsNamedAndNothingIsWritten) {
  const auto refusal = [&](std::vector<std::string> arguments, int code, const std::string& says) {
    const auto answer = run(std::move(arguments));
    EXPECT_EQ(answer.exitCode, code) << answer.err;
    EXPECT_EQ(answer.out, "");
    EXPECT_THAT(answer.err, HasSubstr(says));
  };
  refusal({"sheet", "--book", book(), "--job", "1", "--out", file("x.doc")}, 2, "--out");
  refusal({"sheet", "--book", book(), "--job", "x", "--out", file("x.pdf")}, 2, "--job");
  refusal({"sheet", "--book", book(), "--job", "999", "--out", file("x.pdf")}, 2, "--job");
  refusal({"sheet", "--book", book(), "--job", "1", "--copy", "both", "--out", file("x.pdf")}, 2,
          "--copy");
  refusal({"sheet", "--book", book(), "--job", "1"}, 2, "--out");
  refusal({"sheet", "--book", file("none.swbook"), "--job", "1", "--out", file("x.pdf")}, 3, "");
  refusal({"sheet", "--book", book(), "--job", "1", "--out", file("no/such/folder/x.pdf")}, 4,
          "--out");
  refusal({"list", "specs", "--book", book()}, 2, "--registration");
  refusal({"list", "specs", "--book", book(), "--registration", "none"}, 2, "none");
  refusal({"find", "--book", book()}, 2, "TEXT");
  refusal({"find", "--book", book(), " "}, 2, "TEXT");
  refusal({"find", "--book", book(), "x", "--most", "0"}, 2, "--most");
  refusal({"kit", "--book", book(), "--job", "1", "--tick", "tool/Moon", "--as", "have"}, 2,
          "tool/Moon");
  refusal({"kit", "--book", book(), "--job", "1", "--tick", "tool/Torque wrench", "--as", "x"}, 2,
          "have, missing, open");
  refusal({"kit", "--book", book(), "--job", "1", "--as", "have"}, 2, "--tick");
  refusal({"history", "--book", book(), "--entry", "x"}, 2, "--entry");
  refusal({"history", "--book", book(), "--entry", "99999999"}, 2, "99999999");
  refusal({"list", "everything", "--book", book()}, 2, "vehicles, jobs, due");
  EXPECT_FALSE(fs::exists(file("x.pdf")));
}

TEST_F(ReportCommands, LookingChangesNothing) {
  const std::string before = contentOf(book());
  for (const char* what : {"vehicles", "jobs", "due", "lessons"})
    (void)run({"list", what, "--book", book()});
  (void)run({"card", "--book", book(), "--job", "2", "--out", file("again.pdf")});
  EXPECT_EQ(contentOf(book()), before);
}

}  // namespace
}  // namespace sw::test
