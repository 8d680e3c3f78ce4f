// SPDX-License-Identifier: GPL-3.0-or-later
#include "store/check_book.h"

#include <algorithm>

#include "store_fixture.h"

namespace sw::store {

namespace {

class CheckBookTest : public StoreTest {
 protected:
  /// The keys of what is found after SQL that no trigger or check stopped.
  std::vector<std::string> keysAfter(const std::string& sql, const std::string& trigger = {}) {
    makeSmallShop().reset();
    {
      RawBook raw(path);
      std::string text = "PRAGMA foreign_keys = OFF; PRAGMA ignore_check_constraints = ON;";
      std::string made;
      if (!trigger.empty()) {
        made = raw.value("SELECT sql FROM sqlite_schema WHERE name = '" + trigger + "'");
        text += "DROP TRIGGER \"" + trigger + "\";";
      }
      text += sql + ";";
      if (!made.empty()) text += made + ";";
      EXPECT_EQ(raw.run(text), "");
    }
    const auto report = checkBook(path, clock);
    EXPECT_TRUE(report.has_value()) << (report ? "" : report.error().key);
    std::vector<std::string> keys;
    if (report) {
      for (const auto& finding : report->findings) keys.push_back(finding.key);
    }
    std::filesystem::remove(path);
    std::filesystem::remove_all(folder / "shop-days");
    return keys;
  }
  using Keys = std::vector<std::string>;
};

const char* const kBadEntry =
    "INSERT INTO entry SELECT 9, @job, @run, step, side, '@kind', done_at, done_offset, "
    "entered_at, "
    "entered_offset, @by, @replaces, @reason, '', '' FROM entry WHERE id = 8; "
    "INSERT INTO fact_@kind @fact";

struct Bad {
  std::string job = "1";
  std::string run = "6";
  std::string kind = "note";
  std::string by = "1";
  std::string replaces = "NULL";
  std::string reason = "NULL";
  std::string fact = "VALUES (9, 'x')";
};

std::string badEntry(const Bad& bad) {
  std::string sql = kBadEntry;
  for (const auto& [mark, value] : {std::pair<std::string, std::string>{"@job", bad.job},
                                    {"@run", bad.run},
                                    {"@kind", bad.kind},
                                    {"@by", bad.by},
                                    {"@replaces", bad.replaces},
                                    {"@reason", bad.reason},
                                    {"@fact", bad.fact}}) {
    for (std::size_t at = sql.find(mark); at != std::string::npos; at = sql.find(mark)) {
      sql.replace(at, mark.size(), value);
    }
  }
  return sql;
}

}  // namespace

TEST_F(CheckBookTest, ASoundBookIsSoundInOneLine) {
  makeSmallShop().reset();
  const auto report = checkBook(path, clock);
  ASSERT_TRUE(report) << report.error().key;
  EXPECT_TRUE(report->sound());
  EXPECT_EQ(report->summary().key, "check.sound");
  EXPECT_EQ(report->entries, 8);
  EXPECT_EQ(report->jobs, 1);
  EXPECT_TRUE(report->findings.empty());
}

TEST_F(CheckBookTest, WhatFactsPointAtIsLookedAt) {
  EXPECT_EQ(keysAfter(badEntry({})), Keys{});
  EXPECT_EQ(keysAfter(badEntry({.run = "7"})), Keys{"check.run_not_started"});
  EXPECT_EQ(keysAfter(badEntry({.by = "2"})), Keys{"check.by_not_a_person"});
  EXPECT_EQ(keysAfter(badEntry({.job = "2", .run = "NULL"})), Keys{"check.job_not_opened"});
  EXPECT_EQ(keysAfter(badEntry(
                {.kind = "reading", .fact = "VALUES (9, 6, 'force', '1', 'N', 1.0, 'used')"})),
            Keys{"check.wrong_reference"});
  EXPECT_EQ(keysAfter(badEntry({.kind = "photo", .fact = "VALUES (9, 'cafe', '', '', 1, 1, '')"})),
            Keys{"check.picture_missing"});
}

TEST_F(CheckBookTest, ReplacementsAreLookedAt) {
  EXPECT_EQ(keysAfter(badEntry({.replaces = "8", .reason = "'other'"}), "entry_replaces_kind"),
            Keys{"check.replaces_other_kind"});
  EXPECT_EQ(keysAfter(badEntry({.kind = "withdrawal", .replaces = "3", .reason = "'other'"}),
                      "entry_replaces_job"),
            Keys{"check.replaces_other_job"});
  EXPECT_EQ(
      keysAfter("UPDATE entry SET replaces = 8, reason = 'other' WHERE id = 7", "entry_no_update"),
      Keys{"check.integrity"});  // the CHECK of the column
}

TEST_F(CheckBookTest, EntriesAndFactsBelongTogether) {
  EXPECT_EQ(keysAfter("DELETE FROM fact_reading", "fact_reading_no_delete"),
            Keys{"check.fact_missing"});
  EXPECT_EQ(keysAfter("INSERT INTO fact_note VALUES (8, 'x')", "fact_note_right_kind"),
            Keys{"check.fact_extra"});
}

TEST_F(CheckBookTest, ABrokenForeignKeyIsAFault) {
  const auto keys = keysAfter("DELETE FROM entry WHERE id = 8", "entry_no_delete");
  EXPECT_EQ(keys, Keys{"check.foreign_key"});
}

TEST_F(CheckBookTest, AClockThatWentBackIsANote) {
  auto book = makeSmallShop();
  model::Entry early = makeReading(9, 7, 19.0);
  early.enteredAt.utcMilliseconds -= 86'400'000;
  ASSERT_TRUE(book->append(std::vector<model::Entry>{early}));
  const auto report = checkBook(path, clock);  // while it is open
  ASSERT_TRUE(report);
  EXPECT_TRUE(report->sound());
  ASSERT_EQ(report->notes(), 1U);
  EXPECT_EQ(report->findings.front().key, "check.clock_went_back");
  EXPECT_EQ(report->findings.front().details.front().second, "9");
}

TEST_F(CheckBookTest, AMissingTriggerIsAFault) {
  makeSmallShop().reset();
  EXPECT_EQ(RawBook(path).run("DROP TRIGGER \"fact_reading_no_update\""), "");
  const auto report = checkBook(path, clock);
  ASSERT_TRUE(report);
  EXPECT_EQ(report->summary().key, "check.faulty");
  EXPECT_EQ(report->findings.front().key, "check.schema");
}

TEST_F(CheckBookTest, SmashedPagesAreFoundOnePageAfterTheOther) {
  makeSmallShop().reset();
  const std::string good = bytesOf(path);
  for (std::size_t page = 1; page < good.size() / 4096; ++page) {
    std::string bad = good;
    bad.replace(page * 4096, 64, std::string(64, '\xA5'));
    writeBytes(path, bad);
    const auto report = checkBook(path, clock);
    ASSERT_TRUE(report) << page << report.error().key;
    EXPECT_FALSE(report->sound()) << "page " << page;
  }
  writeBytes(path, good);
  EXPECT_TRUE(checkBook(path, clock)->sound());
}

TEST_F(CheckBookTest, MissingAndForeignAreAnswersNotFindings) {
  EXPECT_EQ(checkBook(path, clock).error().key, "store.missing");
  writeBytes(path, "hello");
  EXPECT_EQ(checkBook(path, clock).error().key, "store.foreign");
}

TEST_F(CheckBookTest, FurtherChecksAreAsked) {
  makeSmallShop().reset();
  const std::vector<BookCheck> more{[](const Book& book) -> Result<std::vector<CheckFinding>> {
    return std::vector<CheckFinding>{
        {Severity::Fault, "check.verdict", {{"next", std::to_string(book.nextEntryId()->value)}}}};
  }};
  const auto report = checkBook(path, clock, more);
  ASSERT_TRUE(report);
  ASSERT_EQ(report->faults(), 1U);
  EXPECT_EQ(report->findings.front().details.front().second, "9");
  EXPECT_EQ(report->summary().details.back().second, "check.verdict");
}

}  // namespace sw::store
