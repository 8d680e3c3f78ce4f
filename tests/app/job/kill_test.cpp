// SPDX-License-Identifier: GPL-3.0-or-later
// The program is killed with SIGKILL at random moments while it takes entries: nothing that was
// acknowledged is lost and the book passes its check. (A kill proves nothing about power: see the
// power cuts of tests/core/store.)
#include <fcntl.h>
#include <gtest/gtest.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <random>

#include "model/json.h"
#include "shop_fixture.h"
#include "store/check_book.h"
#include "workshop/check_verdicts.h"

namespace sw::test {
namespace {

constexpr int kKills = 200;

/// One run of `swivelwright job --script -`, fed through pipes.
class Program {
 public:
  explicit Program(const std::string& book) {
    int toChild[2];
    int fromChild[2];
    if (pipe(toChild) != 0 || pipe(fromChild) != 0) throw std::runtime_error("pipe");
    m_pid = fork();
    if (m_pid == 0) {
      dup2(toChild[0], STDIN_FILENO);
      dup2(fromChild[1], STDOUT_FILENO);
      for (const int descriptor : {toChild[0], toChild[1], fromChild[0], fromChild[1]}) {
        close(descriptor);
      }
      execl(SW_PROGRAM, SW_PROGRAM, "job", "--book", book.c_str(), "--script", "-", nullptr);
      _exit(127);
    }
    close(toChild[0]);
    close(fromChild[1]);
    m_in = toChild[1];
    m_out = fdopen(fromChild[0], "r");
  }
  Program(const Program&) = delete;
  Program& operator=(const Program&) = delete;
  ~Program() {
    if (m_in >= 0) close(m_in);
    if (m_out != nullptr) fclose(m_out);
  }

  void send(const std::string& text) {
    const auto written = write(m_in, text.data(), text.size());
    (void)written;  // the program may be dead already: that is the point
  }

  void kill() {
    ::kill(m_pid, SIGKILL);
    close(m_in);
    m_in = -1;
  }

  /// Waits until it has acknowledged once: from here on a kill falls into its work, not its start.
  void awaitAnswer() { readLine(); }

  /// What was acknowledged before it died.
  std::vector<std::int64_t> acknowledged() {
    while (readLine()) {
    }
    int status = 0;
    waitpid(m_pid, &status, 0);
    return m_acknowledged;
  }

 private:
  bool readLine() {
    char* line = nullptr;
    std::size_t size = 0;
    const bool more = getline(&line, &size, m_out) > 0;
    if (more) {
      const auto json = model::parseJson(line);
      if (json && json->contains("entry")) {
        m_acknowledged.push_back((*json)["entry"].get<std::int64_t>());
      }
    }
    free(line);
    return more;
  }

  pid_t m_pid = 0;
  int m_in = -1;
  FILE* m_out = nullptr;
  std::vector<std::int64_t> m_acknowledged;
};

/// A shop with an open job in which notes and readings can be taken.
std::int64_t prepare(Shop& shop) {
  shop.setUp();
  shop.ok(R"({"do":"start_procedure","procedure":"as-found-pull"})");
  shop.ok(R"({"do":"override","rule":"order","step":"as-found-pull/pull_ahead","side":"left",)"
          R"("why":"only readings"})");
  return shop.job;
}

std::string commands(std::int64_t job, int count, int seed) {
  std::string text;
  for (int i = 0; i < count; ++i) {
    const std::string where = R"("by":"KL","job":)" + std::to_string(job);
    if (i % 3 == 0) {
      text += R"({"do":"take_readings",)" + where +
              R"(,"step":"as-found-pull/pull_ahead","side":"left","instrument":"scale",)" +
              R"("readings":"19.)" + std::to_string(i % 10) + "\"}\n";
    } else {
      text += R"({"do":"note",)" + where + R"(,"text":"note )" + std::to_string(seed) + "-" +
              std::to_string(i) + "\"}\n";
    }
  }
  return text;
}

TEST(Kill, NoAcknowledgedEntryIsLost) {
  Shop shop;
  const std::int64_t job = prepare(shop);
  shop.workshop.reset();
  shop.book.reset();
  std::mt19937 random(42);
  std::size_t acknowledged = 0;
  int interrupted = 0;
  constexpr int kLines = 30;
  for (int i = 0; i < kKills; ++i) {
    Program program(shop.path);
    program.send(commands(job, kLines, i));
    // Most kills fall into the work; every tenth falls anywhere, the start included.
    if (i % 10 != 0) program.awaitAnswer();
    usleep(static_cast<useconds_t>(random() % 60'000));
    program.kill();
    const auto entries = program.acknowledged();
    acknowledged += entries.size();
    if (entries.size() < kLines) ++interrupted;
    auto book = store::Book::open(shop.path, store::OpenMode::ReadWrite, shop.clock);
    ASSERT_TRUE(book) << "kill " << i << ": " << book.error().key;
    for (const std::int64_t id : entries) {
      const auto entry = (*book)->entry({id});
      ASSERT_TRUE(entry && entry->has_value()) << "kill " << i << " lost entry " << id;
    }
    if (i % 20 != 19) continue;
    book->reset();
    const std::array<store::BookCheck, 1> more{&workshop::checkVerdicts};
    const auto report = store::checkBook(shop.path, shop.clock, more);
    ASSERT_TRUE(report);
    EXPECT_TRUE(report->sound()) << (report->findings.empty() ? "" : report->findings.front().key);
  }
  std::cout << kKills << " kills, " << acknowledged << " entries acknowledged, " << interrupted
            << " runs interrupted\n";
  EXPECT_GT(acknowledged, 0U);
  EXPECT_GT(interrupted, 0);
}

}  // namespace
}  // namespace sw::test
