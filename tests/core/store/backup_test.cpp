// SPDX-License-Identifier: GPL-3.0-or-later
#include <set>

#include "store/backup.h"
#include "store/check_book.h"
#include "store_fixture.h"

namespace sw::store {

namespace {

class BackupTest : public StoreTest {
 protected:
  BackupTest() { std::filesystem::create_directory(stick); }

  std::set<std::string> copies() {
    std::set<std::string> names;
    for (const auto& item : std::filesystem::directory_iterator(stick)) {
      names.insert(item.path().filename().string());
    }
    return names;
  }
  static std::vector<std::string> allOf(const Book& book) {
    auto texts = asText(*book.shopEntries());
    for (const auto& text : asText(*book.jobEntries(model::JobId{1}))) texts.push_back(text);
    return texts;
  }
  void nextDay() { clock.advanceMilliseconds(86'400'000); }

  std::string stick = folder / "stick";
};

}  // namespace

TEST_F(BackupTest, ACopyHoldsAllThatTheBookHolds) {
  auto book = makeSmallShop();
  const auto copy = backup(*book, stick, clock);
  ASSERT_TRUE(copy) << copy.error().key << copy.error().detail("text");
  EXPECT_EQ(copy->path, stick + "/shop-2031-03-22.swbook");
  EXPECT_EQ(copy->entries, 8);
  EXPECT_EQ(copy->jobs, 1);
  EXPECT_EQ(copies(), (std::set<std::string>{"shop-2031-03-22.swbook"}));  // nothing half made
  const auto opened = Book::open(copy->path, OpenMode::ViewOnly, clock);
  ASSERT_TRUE(opened);
  EXPECT_EQ(allOf(**opened), allOf(*book));
  EXPECT_TRUE(checkBook(copy->path, clock)->sound());
}

TEST_F(BackupTest, ASecondCopyOfADayReplacesNothing) {
  auto book = makeSmallShop();
  ASSERT_TRUE(backup(*book, stick, clock));
  const std::string first = bytesOf(stick + "/shop-2031-03-22.swbook");
  ASSERT_TRUE(book->append(std::vector<model::Entry>{makeReading(9, 7, 19.0)}));
  book.reset();
  const auto second = backup(path, stick, clock);
  ASSERT_TRUE(second);
  EXPECT_EQ(second->path, stick + "/shop-2031-03-22-2.swbook");
  EXPECT_EQ(second->entries, 9);
  EXPECT_EQ(bytesOf(stick + "/shop-2031-03-22.swbook"), first);
}

TEST_F(BackupTest, TheDailyCopyIsMadeOnceADayAndFourteenDaysAreKept) {
  auto book = makeSmallShop();
  writeBytes(stick + "/shop-2001-01-01.swbook.txt", "not a copy");
  writeBytes(stick + "/workshop-2001-01-01.swbook", "of another book");
  writeBytes(stick + "/shop-extra-2001-01-01.swbook", "of another book");
  for (int day = 0; day < 17; ++day) {
    ASSERT_TRUE(dailyBackup(*book, stick, clock)->has_value());
    EXPECT_FALSE(dailyBackup(*book, stick, clock)->has_value());
    nextDay();
  }
  auto names = copies();
  EXPECT_EQ(names.erase("shop-2001-01-01.swbook.txt"), 1U);
  EXPECT_EQ(names.erase("workshop-2001-01-01.swbook"), 1U);
  EXPECT_EQ(names.erase("shop-extra-2001-01-01.swbook"), 1U);
  EXPECT_EQ(names.size(), 14U);
  EXPECT_EQ(*names.begin(), "shop-2031-03-25.swbook");
  EXPECT_EQ(*names.rbegin(), "shop-2031-04-07.swbook");
}

TEST_F(BackupTest, AFolderThatIsNotThereIsNamed) {
  auto book = makeSmallShop();
  const auto copy = dailyBackup(*book, folder / "unplugged", clock);
  ASSERT_FALSE(copy);
  EXPECT_EQ(copy.error().code, ErrorCode::CannotWrite);
  EXPECT_EQ(copy.error().key, "store.no_folder");
}

TEST_F(BackupTest, ADamagedBookGivesNoCopyAndNoCopyIsPruned) {
  auto book = makeSmallShop();
  for (int day = 0; day < 14; ++day) {
    ASSERT_TRUE(dailyBackup(*book, stick, clock));
    nextDay();
  }
  book.reset();
  // An index that no longer agrees with its table: only the full check of the copy sees that.
  RawBook raw(path);
  ASSERT_EQ(raw.run("PRAGMA writable_schema = ON;"
                    "UPDATE sqlite_schema SET rootpage = (SELECT rootpage FROM sqlite_schema WHERE "
                    "name = 'person_person') WHERE name = 'vehicle_vehicle'"),
            "");
  const auto before = copies();
  const auto opened = Book::open(path, OpenMode::ReadWrite, clock);
  if (opened) {
    const auto copy = dailyBackup(**opened, stick, clock);
    ASSERT_FALSE(copy);
    EXPECT_EQ(copy.error().key, "store.copy_differs");
  } else {
    EXPECT_EQ(opened.error().key, "store.damaged");
  }
  EXPECT_EQ(copies(), before);
}

TEST_F(BackupTest, ACopyRestoresTheBook) {
  auto book = makeSmallShop();
  const auto expected = allOf(*book);
  const auto copy = backup(*book, stick, clock);
  book.reset();
  std::filesystem::remove(path);
  const auto restored = restore(copy->path, path, Existing::Refuse, clock);
  ASSERT_TRUE(restored) << restored.error().key << restored.error().detail("text");
  EXPECT_EQ(restored->entries, 8);
  EXPECT_FALSE(restored->movedAside);
  const auto again = reopen();
  EXPECT_EQ(allOf(*again), expected);
  EXPECT_TRUE(again->append(std::vector<model::Entry>{makeReading(9, 7, 19.0)}));
  EXPECT_TRUE(std::filesystem::exists(copy->path));
}

TEST_F(BackupTest, ABookThatStandsThereIsRefusedOrMovedAside) {
  auto book = makeSmallShop();
  const auto copy = backup(*book, stick, clock);
  ASSERT_TRUE(book->append(std::vector<model::Entry>{makeReading(9, 7, 19.0)}));
  EXPECT_EQ(restore(copy->path, path, Existing::Refuse, clock).error().key, "store.exists");
  // A program that has the book keeps it.
  EXPECT_EQ(restore(copy->path, path, Existing::MoveAside, clock).error().key, "store.locked");
  book.reset();
  const std::string old = bytesOf(path);
  const auto restored = restore(copy->path, path, Existing::MoveAside, clock);
  ASSERT_TRUE(restored) << restored.error().key << restored.error().detail("text");
  ASSERT_TRUE(restored->movedAside);
  EXPECT_EQ(*restored->movedAside,
            path + ".before-restore-" + toIso(kStart).substr(0, 10) + "T" + "22-40-00");
  EXPECT_EQ(bytesOf(*restored->movedAside), old);
  EXPECT_EQ(reopen()->nextEntryId()->value, 9);
}

TEST_F(BackupTest, OnlyASoundBookIsRestored) {
  makeSmallShop().reset();
  const std::string old = bytesOf(path);
  writeBytes(folder / "junk.swbook", std::string(9000, 'x'));
  EXPECT_EQ(restore(folder / "junk.swbook", path, Existing::MoveAside, clock).error().key,
            "store.foreign");
  EXPECT_EQ(restore(folder / "none.swbook", path, Existing::MoveAside, clock).error().key,
            "store.missing");
  writeBytes(folder / "short.swbook", old.substr(0, old.size() / 2));
  EXPECT_EQ(restore(folder / "short.swbook", path, Existing::MoveAside, clock).error().key,
            "store.damaged");
  EXPECT_EQ(bytesOf(path), old);
}

}  // namespace sw::store
