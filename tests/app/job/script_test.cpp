// SPDX-License-Identifier: GPL-3.0-or-later
// The program as a process: job scripts, answers, exit codes, demonstration book.
#include <gtest/gtest.h>
#include <sys/wait.h>

#include <array>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <set>

#include "model/entry_json.h"
#include "shop_fixture.h"

namespace sw::test {
namespace {

struct Run {
  int exit = -1;
  std::string out;
};

/// Runs the program through the shell; what it writes to standard output.
Run program(const std::string& arguments) {
  const std::string command = std::string("'") + SW_PROGRAM + "' " + arguments + " 2>/dev/null";
  Run run;
  FILE* pipe = popen(command.c_str(), "r");
  EXPECT_NE(pipe, nullptr);
  std::array<char, 4096> buffer{};
  for (std::size_t size = 0; (size = fread(buffer.data(), 1, buffer.size(), pipe)) > 0;) {
    run.out.append(buffer.data(), size);
  }
  const int status = pclose(pipe);
  run.exit = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
  return run;
}

class JobProgram : public testing::Test {
 protected:
  std::string in(const std::string& name) {
    return folder.filePath(QString::fromStdString(name)).toStdString();
  }
  std::string script(const std::string& text) {
    const std::string path = in("script.jsonl");
    std::ofstream(path) << text;
    return path;
  }
  QTemporaryDir folder;
};

std::string bytesOf(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

TEST_F(JobProgram, TheHistoryOfAValue) {
  const auto path = script(
      R"({"do":"set_person","initials":"KL","name":"Kaya Lindner"})"
      "\n"
      R"({"do":"set_vehicle","by":"KL","registration":"AB 12"})"
      "\n"
      R"({"do":"set_spec","registration":"AB 12","key":"swivel.end_float","type":"limit","max":"0.1 mm"})"
      "\n"
      R"({"do":"set_spec","registration":"AB 12","key":"swivel.end_float","type":"limit","max":"0.2 mm"})"
      "\n"
      R"({"do":"open_job","registration":"AB 12"})"
      "\n"
      R"({"do":"note","text":"left hub wet"})"
      "\n"
      R"({"do":"correct","entry":6,"field":"text","value":"right hub wet","reason":"wrong_side"})"
      "\n");
  const std::string book = " --book '" + in("b.swbook") + "'";
  ASSERT_EQ(program("job --create --script '" + path + "'" + book).exit, 0);
  for (const char* entry : {"6", "7"}) {  // either end of the chain
    const auto note =
        model::parseJson(program("history --json --entry " + std::string(entry) + book).out);
    ASSERT_TRUE(note);
    ASSERT_EQ(note->size(), 2U);
    EXPECT_EQ((*note)[0]["value"], "left hub wet");
    EXPECT_EQ((*note)[1]["value"], "right hub wet");
    EXPECT_EQ((*note)[1]["reason"], "wrong side");
    EXPECT_EQ((*note)[1]["by"], "KL");
  }
  const std::string limit = program("history --entry 3" + book).out;
  EXPECT_NE(limit.find("max: 0.1"), std::string::npos) << limit;
  EXPECT_NE(limit.find("max: 0.2"), std::string::npos) << limit;
}

TEST_F(JobProgram, APhotoIsCopiedIntoTheBook) {
  const std::string picture = std::string(SW_SOURCE_DIR) + "/tests/data/pictures/three_by_two.png";
  std::ofstream(in("letter.png")) << "no picture at all";
  const auto path = script(R"({"do":"set_person","initials":"KL","name":"Kaya Lindner"})"
                           "\n"
                           R"({"do":"set_vehicle","by":"KL","registration":"AB 12"})"
                           "\n"
                           R"({"do":"open_job","registration":"AB 12"})"
                           "\n"
                           R"({"do":"photo","file":")" +
                           picture + R"(","caption":"left hub"})" + "\n" +
                           R"({"do":"photo","file":")" + in("letter.png") + "\"}\n");
  const auto run = program("job --create --book '" + in("b.swbook") + "' --script '" + path + "'");
  EXPECT_EQ(run.exit, 2) << run.out;  // the last line is refused by name, the others stand
  EXPECT_NE(run.out.find("letter.png"), std::string::npos) << run.out;
  const auto exported = program("export --job 1 --book '" + in("b.swbook") + "'");
  const auto json = model::parseJson(exported.out);
  ASSERT_TRUE(json);
  const auto& photo = (*json)["entries"].back();
  EXPECT_EQ(photo["kind"], "photo");
  EXPECT_EQ(photo["fact"]["file_name"], "three_by_two.png");
  EXPECT_EQ(photo["fact"]["width"], 3);
  EXPECT_EQ(photo["fact"]["height"], 2);
  ManualClock clock(*parseTimestamp("2031-03-03T08:00+01:00"));
  const auto book = store::Book::open(in("b.swbook"), store::OpenMode::ViewOnly, clock);
  ASSERT_TRUE(book);
  const auto kept = (*book)->picture(photo["fact"]["hash"].get<std::string>());
  ASSERT_TRUE(kept);
  EXPECT_FALSE(kept->bytes.empty());
  EXPECT_FALSE(kept->thumbnail.empty());
}

TEST_F(JobProgram, AnswersEachLineAndRemembersWhoAndWhichJob) {
  const auto path = script(R"({"id":"a","do":"set_person","initials":"KL","name":"Kaya Lindner"})"
                           "\n"
                           R"({"id":"b","do":"open_job","by":"KL","registration":"AB 12"})"
                           "\n"
                           R"({"id":"c","do":"note","text":"hello"})"
                           "\n");
  const auto run =
      program("job --book '" + in("new book.swbook") + "' --create --script '" + path + "'");
  EXPECT_EQ(run.exit, 0) << run.out;
  EXPECT_NE(run.out.find(R"({"id":"a","entry":1)"), std::string::npos) << run.out;
  EXPECT_NE(run.out.find(R"("id":"c","entry":4)"), std::string::npos) << run.out;
}

TEST_F(JobProgram, ABadLineIsAnsweredAndTheNextOneStillTaken) {
  const auto path = script(
      "this is not JSON\n"
      R"({"id":"x","do":"open_job","registration":"AB 12","odo":"1"})"
      "\n"
      R"({"id":"y","do":"open_job","registration":"AB 12"})"
      "\n");
  const auto run =
      program("job --book '" + in("book.swbook") + "' --create --script '" + path + "'");
  EXPECT_EQ(run.exit, 2) << run.out;
  EXPECT_NE(run.out.find("unknown_field"), std::string::npos) << run.out;
  EXPECT_NE(run.out.find(R"("id":"y","entry":1)"), std::string::npos) << run.out;
}

TEST_F(JobProgram, AMissingBookIsNamedAndNotMade) {
  const auto path = script("\n");
  const auto run = program("job --book '" + in("none.swbook") + "' --script '" + path + "'");
  EXPECT_EQ(run.exit, 3) << run.out;
  EXPECT_FALSE(std::filesystem::exists(in("none.swbook")));
}

TEST_F(JobProgram, ADryRunWritesNothing) {
  const auto path = script(R"({"do":"open_job","registration":"AB 12"})"
                           "\n");
  const std::string book = in("book.swbook");
  ASSERT_EQ(program("job --book '" + book + "' --create --script '" + path + "'").exit, 0);
  const std::string before = bytesOf(book);
  const auto run = program("job --book '" + book + "' --dry-run --script '" + path + "'");
  EXPECT_EQ(run.exit, 0) << run.out;
  EXPECT_NE(run.out.find(R"("job":2)"), std::string::npos) << run.out;
  EXPECT_EQ(bytesOf(book), before);
}

TEST_F(JobProgram, TheFirstOpeningOfADayLeavesACopyThatRestores) {
  const auto path = script(R"({"do":"open_job","registration":"AB 12"})"
                           "\n");
  const std::string book = in("book.swbook");
  ASSERT_EQ(program("job --book '" + book + "' --create --script '" + path + "'").exit, 0);
  std::size_t copies = 0;
  for (const auto& file : std::filesystem::directory_iterator(in("book-copies"))) {
    copies += file.path().extension() == ".swbook" ? 1U : 0U;
  }
  EXPECT_EQ(copies, 1U);
  const auto saved = program("backup --book '" + book + "' --to '" + in("") + "'");
  ASSERT_EQ(saved.exit, 0) << saved.out;
  const std::string copy = saved.out.substr(0, saved.out.find('\n'));
  EXPECT_EQ(program("restore '" + copy + "' --book '" + book + "'").exit, 2);
  const auto restored = program("restore '" + copy + "' --book '" + in("again.swbook") + "'");
  EXPECT_EQ(restored.exit, 0) << restored.out;
  EXPECT_EQ(program("check-book '" + in("again.swbook") + "'").exit, 0);
}

TEST_F(JobProgram, TheDemonstrationIsTheSameEveryTime) {
  const auto first = program("demo --book '" + in("a.swbook") + "'");
  ASSERT_EQ(first.exit, 0) << first.out;
  ASSERT_EQ(program("demo --book '" + in("b.swbook") + "'").exit, 0);
  EXPECT_EQ(program("check-book '" + in("a.swbook") + "'").exit, 0);
  auto one = store::Book::open(in("a.swbook"), store::OpenMode::ViewOnly, SystemClock{});
  auto two = store::Book::open(in("b.swbook"), store::OpenMode::ViewOnly, SystemClock{});
  ASSERT_TRUE(one && two);
  const auto jobs = (*one)->jobs();
  ASSERT_TRUE(jobs);
  EXPECT_EQ(jobs->size(), 12U);
  std::size_t open = 0;
  for (const auto& job : *jobs) {
    open += job.closedAt ? 0U : 1U;
    const auto a = (*one)->jobEntries(job.job);
    const auto b = (*two)->jobEntries(job.job);
    ASSERT_TRUE(a && b);
    ASSERT_EQ(a->size(), b->size());
    for (std::size_t i = 0; i < a->size(); ++i) {
      ASSERT_EQ(model::toJson((*a)[i]).dump(), model::toJson((*b)[i]).dump());
    }
  }
  EXPECT_EQ(open, 3U);
  EXPECT_EQ(program("demo --book '" + in("a.swbook") + "'").exit, 2) << "never touches a file";
}

TEST_F(JobProgram, AnUndoIsALineLikeAnyOther) {
  const auto path = script(
      R"({"do":"set_person","initials":"KL","name":"Kaya Lindner"})"
      "\n"
      R"({"do":"open_job","by":"KL","registration":"AB 12"})"
      "\n"
      R"({"do":"note","text":"left hub wet"})"
      "\n"
      R"({"do":"correct","entry":4,"field":"text","value":"right hub wet","reason":"wrong_side"})"
      "\n"
      R"({"id":"u","do":"undo","reason_text":"it was the left one"})"
      "\n"
      R"({"id":"v","do":"undo"})"
      "\n"
      R"({"id":"w","do":"undo"})"
      "\n");
  const std::string book = " --book '" + in("b.swbook") + "'";
  const auto run = program("job --create --script '" + path + "'" + book);
  EXPECT_EQ(run.exit, 2) << run.out;  // the last one finds nothing
  EXPECT_NE(run.out.find(R"("id":"u")"), std::string::npos) << run.out;
  EXPECT_NE(run.out.find(R"("event":"undone")"), std::string::npos) << run.out;
  const auto last = model::parseJson(run.out.substr(run.out.rfind('\n', run.out.size() - 2) + 1));
  ASSERT_TRUE(last);
  EXPECT_EQ((*last)["id"], "w");
  EXPECT_EQ((*last)["error"]["code"], "refused");
  EXPECT_NE((*last)["error"]["message"].get<std::string>().find("nothing to undo"),
            std::string::npos);
  // All of it stays on record: the slip, its correction, the old text again, the withdrawal.
  const auto chain = model::parseJson(program("history --json --entry 4" + book).out);
  ASSERT_TRUE(chain);
  ASSERT_EQ(chain->size(), 4U) << chain->dump();
  EXPECT_EQ((*chain)[1]["value"], "right hub wet");
  EXPECT_EQ((*chain)[2]["value"], "left hub wet");
  EXPECT_EQ((*chain)[2]["reason"], "withdrawn: it was the left one");
  EXPECT_EQ((*chain)[3]["value"], "withdrawn");
  EXPECT_EQ(program("check-book '" + in("b.swbook") + "'").exit, 0);
}

TEST_F(JobProgram, EveryCommandIsDescribed) {
  const auto run = program("job --describe");
  EXPECT_EQ(run.exit, 0);
  const auto json = model::parseJson(run.out);
  ASSERT_TRUE(json);
  EXPECT_EQ((*json)["commands"].size(), std::variant_size_v<workshop::Action>);
  std::set<std::string> named;
  for (const auto& command : (*json)["commands"]) {
    named.insert(command["do"].get<std::string>());
    EXPECT_FALSE(command["example"].get<std::string>().empty()) << command["do"];
  }
  EXPECT_TRUE(named.contains("undo"));
}

}  // namespace
}  // namespace sw::test
