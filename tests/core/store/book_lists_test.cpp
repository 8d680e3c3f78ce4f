// SPDX-License-Identifier: GPL-3.0-or-later
// The lists of a book against a plain walk over the facts of its jobs.
#include <gmock/gmock.h>
#include <algorithm>
#include <map>
#include <random>
#include <set>
#include <tuple>

#include "store_fixture.h"

namespace sw::store {

namespace {

class BookLists : public StoreTest {
 protected:
  BookLists() {
    book = makeBook();
    for (std::int64_t id = 1; id <= 3; ++id) {
      model::Vehicle vehicle;
      vehicle.vehicle = {id};
      vehicle.registration = "Q " + std::to_string(id);
      put(vehicle);
    }
  }

  model::EntryId put(model::Payload payload, std::optional<std::int64_t> job = std::nullopt,
                     std::optional<model::EntryId> replaces = std::nullopt) {
    model::Entry entry = makeEntry(book->nextEntryId()->value, std::move(payload), job);
    if (replaces) {
      entry.replaces = replaces;
      entry.reason = model::CorrectionReason::Withdrawn;
    }
    const model::Entry one[] = {entry};
    const auto done = book->append(one);
    EXPECT_TRUE(done) << done.error().key << done.error().detail("text");
    return entry.id;
  }
  model::EntryId open(std::int64_t job) {
    model::JobOpened fact;
    fact.vehicle = {1 + job % 3};
    return put(fact, job);
  }
  model::EntryId close(std::int64_t job) {
    return put(model::JobClosed{model::JobOutcome::Declined, "no time"}, job);
  }
  model::EntryId due(std::int64_t job, const std::string& what, std::optional<Date> on) {
    model::RecheckDue fact;
    fact.what = what;
    fact.on = on;
    return put(fact, job);
  }
  void takeBack(std::int64_t job, model::EntryId entry) {
    put(model::Withdrawal{"slip"}, job, entry);
  }

  std::vector<std::int64_t> openJobs() {
    std::vector<std::int64_t> numbers;
    const auto jobs = book->openJobs();
    EXPECT_TRUE(jobs) << jobs.error().key << jobs.error().detail("text");
    for (const auto& job : *jobs) {
      EXPECT_FALSE(job.closedAt);
      numbers.push_back(job.job.value);
    }
    return numbers;
  }
  std::vector<std::string> rechecks(std::size_t limit = 1000) {
    std::vector<std::string> texts;
    const auto due = book->rechecksDue(limit);
    EXPECT_TRUE(due) << due.error().key << due.error().detail("text");
    for (const auto& entry : *due) texts.push_back(model::as<model::RecheckDue>(entry)->what);
    return texts;
  }

  std::unique_ptr<Book> book;
};

using testing::ElementsAre;

TEST_F(BookLists, AJobIsOpenWhileNoClosingOfItStands) {
  open(1);
  open(2);
  const auto mistake = open(3);
  EXPECT_THAT(openJobs(), ElementsAre(1, 2, 3));
  const auto closing = close(2);
  takeBack(3, mistake);
  EXPECT_THAT(openJobs(), ElementsAre(1));
  takeBack(2, closing);
  EXPECT_THAT(openJobs(), ElementsAre(1, 2));
  EXPECT_EQ(*book->vehicleOfJob({2}), model::VehicleId{3});
  EXPECT_FALSE(book->vehicleOfJob({3})->has_value());
  EXPECT_FALSE(book->vehicleOfJob({77})->has_value());
}

TEST_F(BookLists, RechecksComeByDateAndThoseWithoutOneLast) {
  open(1);
  open(2);
  due(1, "by odometer", std::nullopt);
  due(2, "in May", Date{2031, 5, 1});
  due(1, "in June", Date{2031, 6, 1});
  const auto done = due(2, "done", Date{2031, 1, 1});
  const auto gone = due(1, "typed twice", Date{2031, 1, 2});
  due(1, "in April", Date{2031, 4, 1});
  takeBack(1, gone);
  const auto mark = put(model::RecheckDone{done, "dry"}, 2);
  EXPECT_THAT(rechecks(), ElementsAre("in April", "in May", "in June", "by odometer"));
  EXPECT_THAT(rechecks(2), ElementsAre("in April", "in May"));
  takeBack(2, mark);
  EXPECT_THAT(rechecks(2), ElementsAre("done", "in April"));
}

TEST_F(BookLists, AgreeWithAWalkOverTheFacts) {
  std::mt19937 random(2031);
  for (std::int64_t job = 1; job <= 40; ++job) {
    std::vector<model::EntryId> facts{open(job)};
    for (int i = 0; i < 6; ++i) {
      const auto which = random() % 5;
      const Date day{2031, 1 + static_cast<int>(random() % 12),
                     1 + static_cast<int>(random() % 28)};
      if (which == 0) facts.push_back(close(job));
      if (which == 1) facts.push_back(due(job, "look", day));
      if (which == 2) facts.push_back(due(job, "look", std::nullopt));
      if (which == 3 && facts.size() > 1) facts.push_back(put(model::Note{"x"}, job));
      if (which == 4 && facts.size() > 1) {
        takeBack(job, facts.back());
        facts.pop_back();
      }
    }
  }
  std::vector<std::int64_t> open;
  std::vector<std::tuple<bool, std::string, std::int64_t, std::int64_t>> pressing;
  for (std::int64_t job = 1; job <= 40; ++job) {
    const auto entries = book->jobEntries({job});
    ASSERT_TRUE(entries);
    std::set<std::int64_t> replaced;
    for (const auto& entry : *entries) {
      if (entry.replaces) replaced.insert(entry.replaces->value);
    }
    bool closed = false;
    for (const auto& entry : *entries) {
      if (replaced.contains(entry.id.value)) continue;
      closed = closed || model::as<model::JobClosed>(entry) != nullptr;
      if (const auto* fact = model::as<model::RecheckDue>(entry)) {
        pressing.emplace_back(!fact->on, fact->on ? toIso(*fact->on) : "", job, entry.id.value);
      }
    }
    if (!closed) open.push_back(job);
  }
  EXPECT_EQ(openJobs(), open);
  std::sort(pressing.begin(), pressing.end());
  const auto listed = book->rechecksDue(1000);
  ASSERT_TRUE(listed);
  ASSERT_EQ(listed->size(), pressing.size());
  EXPECT_GT(pressing.size(), 20U);
  for (std::size_t i = 0; i < pressing.size(); ++i) {
    EXPECT_EQ((*listed)[i].id.value, std::get<3>(pressing[i])) << i;
  }
  const auto all = book->jobs();
  ASSERT_TRUE(all);
  std::vector<std::int64_t> openOfAll;
  for (const auto& job : *all) {
    if (!job.closedAt) openOfAll.push_back(job.job.value);
  }
  EXPECT_EQ(openOfAll, open);
}

}  // namespace

}  // namespace sw::store
