// SPDX-License-Identifier: GPL-3.0-or-later
// The method (a disk that keeps its synced image, cut at I/O calls) and the counts follow the
// SQLite documentation, "How SQLite Is Tested", 3.3 "Crash Testing".
#include <nlohmann/json.hpp>
#include <random>

#include "cut_vfs.h"
#include "store/book_access.h"
#include "store/check_book.h"
#include "store/day_file.h"
#include "store_fixture.h"

namespace sw::store {

namespace {

class PowerCutTest : public StoreTest {
 protected:
  // The disk is a modelled one, so the files may stand in memory.
  PowerCutTest() : StoreTest("/dev/shm") { options.vfs = "cut"; }

  /// The book on a fresh disk, opened through it.
  std::unique_ptr<Book> onDisk(const std::string& image) {
    writeBytes(path, image);
    std::filesystem::remove(path + "-journal");
    std::filesystem::remove_all(dayFolderOf(path));
    disk.reset(path, image);
    auto book = Book::open(path, OpenMode::ReadWrite, clock, options);
    EXPECT_TRUE(book.has_value()) << (book ? "" : book.error().key);
    return book ? std::move(*book) : nullptr;
  }
  std::string smallShopImage() {
    makeSmallShop().reset();
    return bytesOf(path);
  }

  CutDisk& disk = CutDisk::instance();
  BookOptions options;
};

/// The sanitizers look for faults of memory; the count of cuts is the release build's proof.
#if defined(__SANITIZE_ADDRESS__)
constexpr int kCuts = 30;
#else
constexpr int kCuts = 300;
#endif

/// Entries appended until the power failed; the last one is not among them.
std::vector<std::string> appendUntilDark(Book& book, std::mt19937& random) {
  std::vector<std::string> acknowledged;
  for (std::int64_t id = 9; id < 400; ++id) {
    std::vector<model::Entry> action{makeReading(id, 7, 18.0 + static_cast<double>(id) / 100)};
    if (random() % 4 == 0) {
      action.push_back(makeEntry(++id, model::Note{std::string(random() % 9000, 'n')}, 1));
    }
    if (!book.append(action)) return acknowledged;
    for (const auto& entry : action) acknowledged.push_back(model::toJson(entry).dump());
  }
  ADD_FAILURE() << "the power never failed";
  return acknowledged;
}

}  // namespace

TEST_F(PowerCutTest, ThreeHundredCutsLoseNothingThatWasAcknowledged) {
  const std::string image = smallShopImage();
  std::mt19937 random(20310405);
  std::size_t acknowledgedInAll = 0;
  int hotJournals = 0;
  for (int cut = 0; cut < kCuts; ++cut) {
    auto book = onDisk(image);
    ASSERT_TRUE(book);
    disk.cutAfter(1 + static_cast<int>(random() % 250));
    const auto acknowledged = appendUntilDark(*book, random);
    ASSERT_TRUE(disk.off());
    book.reset();
    disk.restart(random);
    hotJournals += std::filesystem::exists(path + "-journal") ? 1 : 0;

    const auto report = checkBook(path, clock);
    ASSERT_TRUE(report) << report.error().key;
    EXPECT_TRUE(report->sound()) << cut << " " << report->summary().details.back().second;
    const auto again = Book::open(path, OpenMode::ReadWrite, clock);
    ASSERT_TRUE(again) << cut << " " << again.error().key;
    const auto found = (*again)->jobEntries(model::JobId{1});
    ASSERT_TRUE(found);
    auto texts = asText(*found);
    texts.erase(texts.begin(), texts.begin() + 4);
    ASSERT_GE(texts.size(), acknowledged.size()) << "cut " << cut;
    EXPECT_TRUE(std::equal(acknowledged.begin(), acknowledged.end(), texts.begin())) << cut;
    // At most the action under way came through beside what was acknowledged.
    EXPECT_LE(texts.size(), acknowledged.size() + 2);
    acknowledgedInAll += acknowledged.size();
  }
  // The cuts were real ones: they fell while work was going on, and left journals to roll back.
  EXPECT_GT(acknowledgedInAll, 1000U * kCuts / 300U);
  EXPECT_GT(hotJournals, kCuts / 10);
}

TEST_F(PowerCutTest, WithoutSyncTheSameCutsDoLoseEntries) {
  // The counter-proof: if this test saw no loss, the one above would prove nothing.
  const std::string image = smallShopImage();
  std::mt19937 random(7);
  int lossesOrDamage = 0;
  for (int cut = 0; cut < 40; ++cut) {
    auto book = onDisk(image);
    ASSERT_TRUE(book);
    ASSERT_TRUE(BookAccess::connection(*book).run("PRAGMA synchronous = OFF"));
    disk.cutAfter(20 + static_cast<int>(random() % 200));
    const auto acknowledged = appendUntilDark(*book, random);
    book.reset();
    disk.restart(random);
    const auto again = Book::open(path, OpenMode::ReadWrite, clock);
    const auto found = again ? (*again)->jobEntries(model::JobId{1})
                             : Result<std::vector<model::Entry>>(std::vector<model::Entry>{});
    if (!found || found->size() < acknowledged.size() + 4) ++lossesOrDamage;
  }
  EXPECT_GT(lossesOrDamage, 5);
}

TEST_F(PowerCutTest, EveryAcknowledgementHasItsSyncs) {
  auto book = onDisk(smallShopImage());
  ASSERT_TRUE(book);
  for (std::int64_t id = 9; id < 29; ++id) {
    disk.counts = {};
    ASSERT_TRUE(book->append(std::vector<model::Entry>{makeReading(id, 7, 18.5)}));
    // The journal before the book is touched, the book, and the folder once the journal is gone.
    EXPECT_GE(disk.counts.journalSyncs, 1);
    EXPECT_EQ(disk.counts.bookSyncs, 1);
    EXPECT_EQ(disk.counts.folderSyncs, 1);
  }
}

TEST_F(PowerCutTest, AnErrorOfTheDiskAsksForOpeningAgainAndLosesNothing) {
  const std::string image = smallShopImage();
  const std::vector<model::Entry> action{makeReading(9, 7, 18.5)};
  int failures = 0;
  for (int call = 1; call <= 40; ++call) {
    auto book = onDisk(image);
    ASSERT_TRUE(book);
    disk.failOnceAfter(call);
    const auto done = book->append(action);
    if (done) continue;
    ++failures;
    EXPECT_EQ(done.error().code, ErrorCode::CannotWrite);
    EXPECT_EQ(done.error().key, "store.io_error");
    EXPECT_EQ(book->append(action).error().key, "store.reopen_needed");
    book.reset();
    auto again = Book::open(path, OpenMode::ReadWrite, clock);
    ASSERT_TRUE(again) << again.error().key;
    const auto next = (*again)->nextEntryId();
    ASSERT_TRUE(next);
    EXPECT_TRUE(next->value == 9 || next->value == 10);
    if (next->value == 9) {
      EXPECT_TRUE((*again)->append(action));
    }
    again->reset();
    EXPECT_TRUE(checkBook(path, clock)->sound());
  }
  EXPECT_GE(failures, 4);
}

TEST_F(PowerCutTest, TheDayFileHoldsExactlyWhatWasAcknowledged) {
  const std::string image = smallShopImage();
  std::mt19937 random(3);
  for (int cut = 0; cut < 10; ++cut) {
    auto book = onDisk(image);
    disk.cutAfter(10 + static_cast<int>(random() % 100));
    const auto acknowledged = appendUntilDark(*book, random);
    book.reset();
    disk.restart(random);
    std::vector<std::string> lines;
    for (const auto& item : std::filesystem::directory_iterator(dayFolderOf(path))) {
      const auto record = readDayFile(item.path().string());
      ASSERT_TRUE(record);
      for (const auto& text : asText(record->entries)) lines.push_back(text);
    }
    // Before them stand the eight of the shop, caught up at the opening.
    ASSERT_EQ(lines.size(), acknowledged.size() + 8);
    EXPECT_TRUE(std::equal(acknowledged.begin(), acknowledged.end(), lines.begin() + 8));
  }
}

}  // namespace sw::store
