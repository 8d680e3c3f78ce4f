// SPDX-License-Identifier: GPL-3.0-or-later
#include <limits>

#include "random_facts.h"
#include "store/book_access.h"
#include "store_fixture.h"

namespace sw::store {

namespace {

class AppendTest : public StoreTest {};

/// Several facts of every kind with odd fields and headers, in one job and in the shop.
std::vector<model::Entry> everything(unsigned seed) {
  std::mt19937 random(seed);
  const RandomFiller fill{random};
  std::vector<model::Entry> entries{
      makeEntry(1, model::Person{model::PersonId{1}, "A", "A", true})};
  const auto add = [&](model::Payload payload) {
    const auto id = static_cast<std::int64_t>(entries.size()) + 1;
    model::Entry entry = makeEntry(id, std::move(payload));
    if (fill.upTo(3) > 0) entry.job = model::JobId{1 + fill.upTo<std::int64_t>(2)};
    fill("step", entry.step);
    fill("side", entry.side);
    fill("reason_text", entry.reasonText);
    fill("program_version", entry.programVersion);
    if (fill.upTo(1) == 1) entry.by = model::EntryId{1};
    entry.doneAt.offsetMinutes = fill.upTo(1680) - 840;
    entries.push_back(std::move(entry));
  };
  forEachKind([&]<class Fact>() {
    for (int i = 0; i < 8; ++i) {
      if (std::is_same_v<Fact, model::Withdrawal>) add(model::Note{"to be taken back"});
      add(randomFact<Fact>(fill));
      if (std::is_same_v<Fact, model::Withdrawal>) {
        entries.back().replaces = entries[entries.size() - 2].id;
        entries.back().job = entries[entries.size() - 2].job;
        entries.back().reason = model::CorrectionReason::Withdrawn;
      }
    }
  });
  return entries;
}

}  // namespace

TEST_F(AppendTest, EveryFieldOfEveryKindComesBackAsItWasGiven) {
  for (unsigned seed = 1; seed <= 3; ++seed) {
    path = folder / ("shop" + std::to_string(seed) + ".swbook");
    const auto given = everything(seed);
    {
      auto book = makeBook();
      const auto done = book->append(given);
      ASSERT_TRUE(done) << done.error().key << " " << done.error().detail("text");
    }
    const auto book = reopen();
    for (const auto& entry : given) {
      const auto found = book->entry(entry.id);
      ASSERT_TRUE(found && *found) << entry.id.value;
      EXPECT_EQ(model::toJson(**found).dump(), model::toJson(entry).dump());
    }
    std::size_t listed = 0;
    for (std::int64_t job = 0; job <= 3; ++job) {
      std::vector<model::Entry> expected;
      for (const auto& entry : given) {
        if (entry.job.value_or(model::JobId{0}).value == job) expected.push_back(entry);
      }
      const auto found = job == 0 ? book->shopEntries() : book->jobEntries(model::JobId{job});
      ASSERT_TRUE(found) << found.error().key;
      EXPECT_EQ(asText(*found), asText(expected));
      listed += found->size();
    }
    EXPECT_EQ(listed, given.size());
  }
}

TEST_F(AppendTest, NumbersOfTheNextOnesGoOn) {
  auto book = makeBook();
  EXPECT_EQ(book->nextEntryId()->value, 1);
  EXPECT_EQ(book->nextJobId()->value, 1);
  EXPECT_EQ(book->nextVehicleId()->value, 1);
  const auto entries = smallShop();
  ASSERT_TRUE(book->append(entries));
  EXPECT_EQ(book->nextEntryId()->value, 9);
  EXPECT_EQ(book->nextJobId()->value, 2);
  EXPECT_EQ(book->nextVehicleId()->value, 2);
  EXPECT_EQ(book->nextPersonId()->value, 2);
  EXPECT_EQ(book->nextInstrumentId()->value, 2);
}

TEST_F(AppendTest, OneActionIsStoredWholeOrNotAtAll) {
  auto book = makeSmallShop();
  const std::vector<model::Entry> action{makeEntry(9, model::Note{"first"}, 1),
                                         makeReading(10, 4711, 1.0)};  // no such series
  const auto done = book->append(action);
  ASSERT_FALSE(done);
  EXPECT_EQ(done.error().key, "store.unknown_reference");
  EXPECT_EQ(book->nextEntryId()->value, 9);
  const std::vector<model::Entry> good{makeEntry(9, model::Note{"first"}, 1)};
  EXPECT_TRUE(book->append(good));
}

TEST_F(AppendTest, IdsThatDoNotFollowAreRefused) {
  auto book = makeSmallShop();
  for (const std::int64_t id : {1, 8, 10}) {
    const std::vector<model::Entry> action{makeEntry(id, model::Note{"x"}, 1)};
    const auto done = book->append(action);
    ASSERT_FALSE(done);
    EXPECT_EQ(done.error().key, "store.ids_not_consecutive");
  }
}

TEST_F(AppendTest, ValuesThatCannotBeKeptAreRefused) {
  auto book = makeSmallShop();
  const auto keyOf = [&](const model::Entry& entry) {
    const auto done = book->append(std::vector<model::Entry>{entry});
    return done ? std::string("ok") : done.error().key;
  };
  // NaN bound to REAL is stored as NULL by SQLite, without a word.
  EXPECT_EQ(keyOf(makeReading(9, 7, std::numeric_limits<double>::quiet_NaN())), "store.not_finite");
  EXPECT_EQ(keyOf(makeReading(9, 7, std::numeric_limits<double>::infinity())), "store.not_finite");
  EXPECT_EQ(keyOf(makeReading(9, 7, 1e301)), "store.constraint");
  EXPECT_EQ(keyOf(makeEntry(9, model::Note{std::string("a\0b", 3)}, 1)), "store.bad_text");
  EXPECT_EQ(keyOf(makeEntry(9, model::Note{"\xC3"}, 1)), "store.bad_text");
  // Qt and SQLite both take a leading byte order mark away.
  EXPECT_EQ(keyOf(makeEntry(9, model::Note{"\xEF\xBB\xBFx"}, 1)), "store.bad_text");
  model::Entry late = makeEntry(9, model::Note{"late"}, 1);
  late.enteredAt.utcMilliseconds = 400'000'000'000'000;  // in the year 14645
  EXPECT_EQ(keyOf(late), "store.time_out_of_range");
  EXPECT_EQ(keyOf(makeEntry(9, model::Note{""}, 1)), "ok");
}

TEST_F(AppendTest, ACorrectionNamesItsReasonAndStaysWithKindAndJob) {
  auto book = makeSmallShop();
  const auto keyOf = [&](model::Payload payload, std::int64_t replaces, std::int64_t job,
                         std::optional<model::CorrectionReason> reason) {
    model::Entry entry = makeEntry(book->nextEntryId()->value, std::move(payload), job);
    entry.replaces = model::EntryId{replaces};
    entry.reason = reason;
    const auto done = book->append(std::vector<model::Entry>{entry});
    return done ? std::string("ok") : done.error().key;
  };
  model::Reading better;
  better.series = model::EntryId{7};
  better.value = newtons("19", 19.0);
  const auto slip = model::CorrectionReason::TypingSlip;
  EXPECT_EQ(keyOf(better, 8, 1, std::nullopt), "store.constraint");
  EXPECT_EQ(keyOf(model::Note{"x"}, 8, 1, slip), "store.replaces_other_kind");
  EXPECT_EQ(keyOf(better, 8, 2, slip), "store.replaces_other_job");
  EXPECT_EQ(keyOf(better, 8, 1, slip), "ok");
  EXPECT_EQ(keyOf(better, 8, 1, slip), "store.already_replaced");
  EXPECT_EQ(keyOf(model::Withdrawal{"undone"}, 9, 1, model::CorrectionReason::Withdrawn), "ok");
}

TEST_F(AppendTest, HistoryShowsTheWholeChainFromAnyLink) {
  auto book = makeSmallShop();
  for (std::int64_t id = 9; id <= 11; ++id) {
    model::Entry entry = makeReading(id, 7, static_cast<double>(id));
    entry.replaces = model::EntryId{id - 1};
    entry.reason = model::CorrectionReason::TypingSlip;
    ASSERT_TRUE(book->append(std::vector<model::Entry>{entry}));
  }
  for (const std::int64_t link : {8, 9, 10, 11}) {
    const auto chain = book->history(model::EntryId{link});
    ASSERT_TRUE(chain);
    std::vector<std::int64_t> ids;
    for (const auto& entry : *chain) ids.push_back(entry.id.value);
    EXPECT_EQ(ids, (std::vector<std::int64_t>{8, 9, 10, 11}));
  }
  EXPECT_EQ(book->history(model::EntryId{1})->size(), 1U);
  EXPECT_TRUE(book->history(model::EntryId{99})->empty());
}

TEST_F(AppendTest, ShopAsOfAnEarlierEntry) {
  auto book = makeSmallShop();
  EXPECT_EQ(book->shopEntries()->size(), 4U);
  EXPECT_EQ(book->shopEntriesUpTo(model::EntryId{2})->size(), 2U);
}

TEST_F(AppendTest, JobListFollowsCorrectionsAndClosings) {
  auto book = makeSmallShop();
  model::JobOpened second;
  second.vehicle = model::VehicleId{2};
  model::Entry corrected = makeEntry(10, second, 1);
  corrected.replaces = model::EntryId{5};
  corrected.reason = model::CorrectionReason::Other;
  model::Entry reopened = makeEntry(13, model::Withdrawal{""}, 1);
  reopened.replaces = model::EntryId{12};
  reopened.reason = model::CorrectionReason::Withdrawn;
  ASSERT_TRUE(book->append(std::vector<model::Entry>{
      makeEntry(9, second, 2), corrected,
      makeEntry(11, model::JobClosed{model::JobOutcome::Declined, ""}, 2),
      makeEntry(12, model::JobClosed{model::JobOutcome::SignedOff, ""}, 1), reopened}));
  const auto jobs = book->jobs();
  ASSERT_TRUE(jobs) << jobs.error().detail("text");
  ASSERT_EQ(jobs->size(), 2U);
  EXPECT_EQ(jobs->at(0).vehicle.value, 2);
  EXPECT_EQ(jobs->at(0).openedEntry.value, 10);
  EXPECT_FALSE(jobs->at(0).closedAt);
  EXPECT_EQ(jobs->at(1).outcome, model::JobOutcome::Declined);
  EXPECT_EQ(jobs->at(1).closedAt, makeEntry(11, model::Note{}).doneAt);
  EXPECT_EQ(jobs->at(1).closedAt->offsetMinutes, 120);
  EXPECT_EQ(book->jobsOfVehicle(model::VehicleId{2})->size(), 2U);
  EXPECT_TRUE(book->jobsOfVehicle(model::VehicleId{1})->empty());
}

TEST_F(AppendTest, APictureIsStoredOnceWithItsFact) {
  auto book = makeSmallShop();
  const Book::Picture picture{"cafe", "image/jpeg", std::string("\xFF\xD8\0\x01", 4), "small"};
  model::Photo photo;
  photo.hash = "cafe";
  for (const std::int64_t id : {9, 10}) {
    ASSERT_TRUE(book->append(std::vector<model::Entry>{makeEntry(id, photo, 1)},
                             std::vector<Book::Picture>{picture}));
  }
  const auto found = book->picture("cafe");
  ASSERT_TRUE(found);
  EXPECT_EQ(found->bytes, picture.bytes);
  EXPECT_EQ(found->thumbnail, "small");
  EXPECT_EQ(found->mime, "image/jpeg");
  EXPECT_EQ(book->picture("beef").error().key, "store.no_picture");
}

TEST_F(AppendTest, DraftsSettingsAndCursorsChange) {
  auto book = makeSmallShop();
  ASSERT_TRUE(book->setDraft({"job/1/pull", "18."}));
  ASSERT_TRUE(book->setDraft({"job/1/pull", "18.5"}));
  ASSERT_TRUE(book->setSetting("currency", "EUR"));
  ASSERT_TRUE(book->setSetting("currency", "GBP"));
  ASSERT_TRUE(book->setCursor(model::JobId{1}, "run/6/pull"));
  book.reset();
  book = reopen();
  ASSERT_EQ(book->drafts()->size(), 1U);
  EXPECT_EQ(book->drafts()->front().text, "18.5");
  EXPECT_EQ(book->setting("currency")->value(), "GBP");
  EXPECT_FALSE(book->setting("none")->has_value());
  EXPECT_EQ(book->cursor(model::JobId{1})->value(), "run/6/pull");
  ASSERT_TRUE(book->dropDraft("job/1/pull"));
  EXPECT_TRUE(book->drafts()->empty());
}

TEST_F(AppendTest, AFullDiskLosesNothingAndTakesTheEntryLater) {
  auto book = makeSmallShop();
  Connection& connection = BookAccess::connection(*book);
  const auto pages = connection.value("PRAGMA page_count");
  ASSERT_TRUE(pages);
  // The nearest thing to a full disk that needs no disk: SQLite answers with the same code 13.
  ASSERT_TRUE(connection.runSchema("PRAGMA max_page_count = " + *pages));
  const std::vector<model::Entry> action{makeEntry(9, model::Note{std::string(100'000, 'x')}, 1)};
  const auto full = book->append(action);
  ASSERT_FALSE(full);
  EXPECT_EQ(full.error().code, ErrorCode::CannotWrite);
  EXPECT_EQ(full.error().key, "store.disk_full");
  EXPECT_EQ(book->jobEntries(model::JobId{1})->size(), 4U);
  ASSERT_TRUE(connection.run("PRAGMA max_page_count = 1000000"));
  EXPECT_TRUE(book->append(action));
}

TEST_F(AppendTest, AViewOnlyBookTakesNothing) {
  makeSmallShop().reset();
  auto book = reopen(OpenMode::ViewOnly);
  EXPECT_TRUE(book->viewOnly());
  const auto done = book->append(std::vector<model::Entry>{makeEntry(9, model::Note{"x"}, 1)});
  ASSERT_FALSE(done);
  EXPECT_EQ(done.error().code, ErrorCode::BookReadOnly);
  EXPECT_FALSE(book->setSetting("a", "b"));
  // Behind the program's back, too: the connection itself refuses.
  EXPECT_FALSE(BookAccess::connection(*book).run("DELETE FROM \"draft\""));
}

TEST_F(AppendTest, AFileThatWasMovedAwayTakesNothing) {
  auto book = makeSmallShop();
  std::filesystem::rename(path, path + ".away");
  const auto done = book->append(std::vector<model::Entry>{makeEntry(9, model::Note{"x"}, 1)});
  ASSERT_FALSE(done);
  EXPECT_EQ(done.error().key, "store.file_replaced");
}

}  // namespace sw::store
