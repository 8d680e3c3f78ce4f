// SPDX-License-Identifier: GPL-3.0-or-later
#include "store/day_file.h"

#include <array>
#include <cstdio>

#include "store_fixture.h"

namespace sw::store {

namespace {

class DayFileTest : public StoreTest {
 protected:
  std::string dayPath(const std::string& day) { return folder / ("shop-days/" + day + ".jsonl"); }
  std::vector<std::string> linesOn(const std::string& day) {
    const auto record = readDayFile(dayPath(day));
    return record ? asText(record->entries) : std::vector<std::string>{"missing"};
  }
  static constexpr const char* kDay = "2031-03-22";
};

}  // namespace

TEST_F(DayFileTest, EveryEntryIsALineOfTheDayItWasEntered) {
  auto book = makeSmallShop();
  EXPECT_EQ(linesOn(kDay), asText(smallShop()));
  model::Entry late = makeReading(9, 7, 19.0);
  late.enteredAt.utcMilliseconds += 3 * 3'600'000;  // past midnight where the clock hangs
  ASSERT_TRUE(book->append(std::vector<model::Entry>{late}));
  EXPECT_EQ(linesOn("2031-03-23"), asText({late}));
  EXPECT_FALSE(book->dayFileTrouble());
}

TEST_F(DayFileTest, ALineTornOffAnywhereIsSkippedAndTheNextOneIsWhole) {
  makeSmallShop().reset();
  const std::string whole = bytesOf(dayPath(kDay));
  const std::size_t lastLine = whole.rfind('\n', whole.size() - 2) + 1;
  for (std::size_t size = lastLine; size < whole.size(); size += 7) {
    writeBytes(dayPath(kDay), whole.substr(0, size));
    const auto record = readDayFile(dayPath(kDay));
    ASSERT_TRUE(record);
    EXPECT_EQ(record->entries.size(), 7U);
    EXPECT_EQ(record->skipped, size == lastLine ? 0U : 1U);
    // Opening writes the missing line again, behind the torn one.
    reopen();
    const auto mended = readDayFile(dayPath(kDay));
    EXPECT_EQ(asText(mended->entries), asText(smallShop()));
    EXPECT_EQ(mended->skipped, size == lastLine ? 0U : 1U);
  }
}

TEST_F(DayFileTest, WithoutADayFileTheEntryIsKeptAndTheTroubleTold) {
  auto book = makeSmallShop();
  std::filesystem::remove_all(folder / "shop-days");
  writeBytes(folder / "shop-days", "in the way");
  ASSERT_TRUE(book->append(std::vector<model::Entry>{makeReading(9, 7, 19.0)}));
  ASSERT_TRUE(book->dayFileTrouble());
  EXPECT_EQ(book->dayFileTrouble()->code, ErrorCode::CannotWrite);
  EXPECT_EQ(book->dayFileTrouble()->key, "store.day_file");
  EXPECT_EQ(book->nextEntryId()->value, 10);
  std::filesystem::remove(folder / "shop-days");
  ASSERT_TRUE(book->append(std::vector<model::Entry>{makeReading(10, 7, 19.5)}));
  EXPECT_FALSE(book->dayFileTrouble());
  EXPECT_EQ(linesOn(kDay), asText({makeReading(9, 7, 19.0), makeReading(10, 7, 19.5)}));
}

TEST_F(DayFileTest, AFolderThatWasRemovedWhileOpenIsMadeAgain) {
  auto book = makeSmallShop();
  std::filesystem::remove_all(folder / "shop-days");
  ASSERT_TRUE(book->append(std::vector<model::Entry>{makeReading(9, 7, 19.0)}));
  EXPECT_EQ(linesOn(kDay), asText({makeReading(9, 7, 19.0)}));
}

TEST_F(DayFileTest, TheSystemIsAskedToSyncTheBookTheFolderAndTheDayFile) {
  makeSmallShop().reset();
  if (std::system("strace -o /dev/null true 2>/dev/null") != 0) GTEST_SKIP() << "no strace here";
  const std::string log = folder / "trace";
  // The leak check of a sanitized build does not work under ptrace.
  const std::string command =
      "ASAN_OPTIONS=detect_leaks=0 strace -f -y -e trace=fsync,fdatasync,write -o '" + log + "' '" +
      std::string(SW_BOOK_HELPER) + "' append '" + path + "' 3 > /dev/null";
  ASSERT_EQ(std::system(command.c_str()), 0);
  // Between two acknowledgements on standard output stand the syncs of the second.
  std::string trace = bytesOf(log);
  const auto acknowledged = [&](const std::string& id) { return trace.find("\"" + id + "\\n\""); };
  const std::size_t second = acknowledged("10");
  const std::size_t third = acknowledged("11");
  ASSERT_LT(second, third);
  ASSERT_NE(third, std::string::npos);
  const std::string between = trace.substr(second, third - second);
  const auto synced = [&](const std::string& name) {
    for (std::size_t at = between.find("sync("); at != std::string::npos;
         at = between.find("sync(", at + 1)) {
      const std::size_t end = between.find('\n', at);
      if (between.substr(at, end - at).find(name + ">") != std::string::npos) return true;
    }
    return false;
  };
  EXPECT_TRUE(synced("shop.swbook-journal")) << between;
  EXPECT_TRUE(synced("shop.swbook")) << between;
  EXPECT_TRUE(synced(".jsonl")) << between;
  EXPECT_TRUE(synced(std::filesystem::path(folder.path()).filename().string().substr(13)))
      << between;
}

}  // namespace sw::store
