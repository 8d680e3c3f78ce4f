// SPDX-License-Identifier: GPL-3.0-or-later
// The chain of migrations, tried with two steps more than the program has.
#include "cut_vfs.h"
#include "store/book_access.h"
#include "store/schema.h"
#include "store_fixture.h"

namespace sw::store {

namespace {

const int kNow = allMigrations().back().to;

class MigrationTest : public StoreTest {
 protected:
  MigrationTest() {
    options.migrations.push_back(
        {kNow + 1,
         "a column and a table more",
         {"ALTER TABLE \"fact_note\" ADD COLUMN \"colour\" TEXT",
          "CREATE TABLE \"extra\" (\"id\" INTEGER PRIMARY KEY, \"text\" TEXT) STRICT",
          "INSERT INTO \"extra\" (\"text\") SELECT printf('%500d', \"id\") FROM \"entry\"",
          "CREATE INDEX \"extra_text\" ON \"extra\" (\"text\")"}});
    options.migrations.push_back(
        {kNow + 2, "an index", {"CREATE INDEX \"entry_step\" ON \"entry\" (\"step\")"}});
  }
  void makeOldBook() { makeSmallShop().reset(); }
  std::string copyName() {
    return folder / ("shop-v" + std::to_string(kNow) + "-before-v" + std::to_string(kNow + 2) +
                     "-2031-03-22.swbook");
  }

  BookOptions options;
};

}  // namespace

TEST_F(MigrationTest, AnOlderBookIsBroughtForwardAfterACheckedCopy) {
  makeOldBook();
  const auto before = smallShop();
  {
    const auto book = Book::open(path, OpenMode::ReadWrite, clock, options);
    ASSERT_TRUE(book) << book.error().key << book.error().detail("text");
    EXPECT_EQ((*book)->schemaVersion(), kNow + 2);
    const auto found = (*book)->jobEntries(model::JobId{1});
    ASSERT_TRUE(found);
    EXPECT_EQ(asText(*found), asText({before.begin() + 4, before.end()}));
    // The settings are as after any opening.
    EXPECT_EQ(BookAccess::connection(**book).value("PRAGMA foreign_keys").value_or(""), "1");
  }
  RawBook raw(path);
  EXPECT_EQ(raw.value("PRAGMA user_version"), std::to_string(kNow + 2));
  EXPECT_EQ(raw.value("SELECT count(*) FROM extra"), "8");
  ASSERT_TRUE(std::filesystem::exists(copyName()));
  EXPECT_EQ(RawBook(copyName()).value("PRAGMA user_version"), std::to_string(kNow));
  const auto copy = Book::open(copyName(), OpenMode::ReadWrite, clock);
  ASSERT_TRUE(copy);
  EXPECT_EQ((*copy)->nextEntryId()->value, 9);
}

TEST_F(MigrationTest, ABookMadeAtOnceAndOneBroughtForwardHaveTheSameSchema) {
  makeOldBook();
  ASSERT_TRUE(Book::open(path, OpenMode::ReadWrite, clock, options));
  const std::string fresh = folder / "fresh.swbook";
  ASSERT_TRUE(Book::create(fresh, clock, options));
  const std::string schema =
      "SELECT group_concat(sql, char(10)) FROM (SELECT sql FROM sqlite_schema ORDER BY type, name)";
  EXPECT_EQ(RawBook(path).value(schema), RawBook(fresh).value(schema));
}

TEST_F(MigrationTest, AStepThatFailsLeavesTheOldBook) {
  for (const std::size_t place : {0U, 1U, 4U}) {
    path = folder / ("shop" + std::to_string(place) + ".swbook");
    makeOldBook();
    auto broken = options;
    auto& statements = broken.migrations.at(broken.migrations.size() - 2).statements;
    statements.insert(statements.begin() + static_cast<std::ptrdiff_t>(place),
                      "CREATE TABEL x (y)");
    const std::string before = bytesOf(path);
    const auto book = Book::open(path, OpenMode::ReadWrite, clock, broken);
    ASSERT_FALSE(book);
    EXPECT_EQ(book.error().key, "store.migration_failed");
    EXPECT_EQ(book.error().detail("step"), "a column and a table more");
    EXPECT_EQ(bytesOf(path), before);
    EXPECT_EQ(openKey(OpenMode::ReadWrite), "ok");
  }
}

TEST_F(MigrationTest, AStepThatBreaksForeignKeysIsTakenBack) {
  makeOldBook();
  options.migrations.at(options.migrations.size() - 2).statements = {
      "DROP TRIGGER \"fact_reading_no_update\"", "UPDATE \"fact_reading\" SET \"series\" = 99"};
  const std::string before = bytesOf(path);
  const auto book = Book::open(path, OpenMode::ReadWrite, clock, options);
  ASSERT_FALSE(book);
  EXPECT_EQ(book.error().key, "store.migration_failed");
  EXPECT_NE(book.error().detail("text").find("fact_reading"), std::string::npos);
  EXPECT_EQ(bytesOf(path), before);
}

TEST_F(MigrationTest, WithoutRoomNothingIsTouched) {
  makeOldBook();
  options.freeBytes = [](const std::string&) { return std::uint64_t{10'000}; };
  const std::string before = bytesOf(path);
  const auto book = Book::open(path, OpenMode::ReadWrite, clock, options);
  ASSERT_FALSE(book);
  EXPECT_EQ(book.error().key, "store.no_room_to_migrate");
  EXPECT_EQ(book.error().detail("free"), "10000");
  EXPECT_EQ(bytesOf(path), before);
  EXPECT_FALSE(std::filesystem::exists(copyName()));
}

TEST_F(MigrationTest, ViewingAnOlderBookDoesNotMigrate) {
  makeOldBook();
  const std::string before = bytesOf(path);
  EXPECT_EQ(openKey(OpenMode::ViewOnly, options), "store.needs_migration");
  EXPECT_EQ(bytesOf(path), before);
}

TEST_F(MigrationTest, ADamagedOlderBookIsNotMigrated) {
  makeOldBook();
  EXPECT_EQ(RawBook(path).run("DROP TRIGGER \"entry_no_delete\""), "");
  EXPECT_EQ(openKey(OpenMode::ReadWrite, options), "store.damaged");
  EXPECT_FALSE(std::filesystem::exists(copyName()));
}

TEST_F(MigrationTest, ACutAtAnyCallLeavesTheOldOrTheNewBook) {
  makeOldBook();
  const std::string image = bytesOf(path);
  options.vfs = "cut";
  auto plain = options;
  plain.vfs.clear();
  CutDisk& disk = CutDisk::instance();
  std::mt19937 random(5);
  int cuts = 0;
  int olds = 0;
  for (int call = 1;; ++call) {
    writeBytes(path, image);
    std::filesystem::remove(path + "-journal");
    disk.reset(path, image);
    disk.cutAfter(call);
    const bool opened = Book::open(path, OpenMode::ReadWrite, clock, options).has_value();
    const bool cut = disk.off();
    disk.restart(random);
    std::filesystem::remove(copyName());
    if (!cut) {
      EXPECT_TRUE(opened);
      break;
    }
    ++cuts;
    const std::string asOld = openKey(OpenMode::ReadWrite);  // by the program of today
    EXPECT_TRUE(asOld == "ok" || asOld == "store.newer") << call << " " << asOld;
    olds += asOld == "ok" ? 1 : 0;
    EXPECT_EQ(openKey(OpenMode::ReadWrite, plain), "ok") << call;
    std::filesystem::remove(copyName());
  }
  EXPECT_GT(cuts, 10);
  EXPECT_GT(olds, 5);
}

}  // namespace sw::store
