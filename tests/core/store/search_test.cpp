// SPDX-License-Identifier: GPL-3.0-or-later
#include <gmock/gmock.h>
#include <algorithm>
#include <random>
#include <sstream>

#include "store_fixture.h"

namespace sw::store {

namespace {

using Kind = SearchHit::Kind;

/// A book that is filled fact by fact.
class Search : public StoreTest {
 protected:
  Search() { book = makeBook(); }

  model::EntryId put(model::Payload payload, std::optional<std::int64_t> job = std::nullopt,
                     std::optional<std::int64_t> replaces = std::nullopt) {
    model::Entry entry = makeEntry(book->nextEntryId()->value, std::move(payload), job);
    if (replaces) {
      entry.replaces = model::EntryId{*replaces};
      entry.reason = model::CorrectionReason::TypingSlip;
    }
    const model::Entry one[] = {entry};
    const auto done = book->append(one);
    EXPECT_TRUE(done) << done.error().key << done.error().detail("text");
    return entry.id;
  }
  model::EntryId vehicle(std::int64_t id, const std::string& plate, const std::string& make = {},
                         const std::string& owner = {}, const std::string& vin = {}) {
    model::Vehicle fact;
    fact.vehicle = {id};
    fact.registration = plate;
    fact.makeModel = make;
    fact.owner = owner;
    fact.vin = vin;
    return put(fact);
  }
  model::EntryId open(std::int64_t job, std::int64_t vehicleId, const std::string& request = {}) {
    model::JobOpened fact;
    fact.vehicle = {vehicleId};
    fact.request = request;
    return put(fact, job);
  }
  model::EntryId note(std::int64_t job, const std::string& text) {
    return put(model::Note{text}, job);
  }
  model::EntryId part(std::int64_t job, const std::string& name, const std::string& number = {}) {
    model::PartUsed fact;
    fact.name = name;
    fact.number = number;
    fact.quantity = {QuantityKind::Number, "1", "", 1};
    return put(fact, job);
  }
  model::EntryId complaint(std::int64_t job, const std::string& words) {
    model::Complaint fact;
    fact.words = words;
    return put(fact, job);
  }
  std::vector<SearchHit> find(const std::string& text, std::size_t limit = 100) {
    auto hits = book->search(text, limit);
    EXPECT_TRUE(hits) << hits.error().key << hits.error().detail("text");
    return hits ? *hits : std::vector<SearchHit>{};
  }
  std::vector<std::string> texts(const std::string& text, std::size_t limit = 100) {
    std::vector<std::string> list;
    for (const SearchHit& hit : find(text, limit)) list.push_back(hit.text);
    return list;
  }

  std::unique_ptr<Book> book;
};

using testing::ElementsAre;
using testing::IsEmpty;

TEST_F(Search, EveryKindIsFoundAndSaysWhereItStands) {
  const auto van = vehicle(4, "AB 12 CDE", "Tall van", "Rook Farm");
  const auto opened = open(9, 4, "the van shakes");
  const auto said = complaint(9, "shakes like a van on cobbles");
  const auto used = part(9, "van mirror", "M-7");
  const auto noted = note(9, "washed the van");
  const auto hits = find("van");
  ASSERT_EQ(hits.size(), 5U);
  EXPECT_EQ(hits[0].kind, Kind::Vehicle);
  EXPECT_EQ(hits[0].entry, van);
  EXPECT_FALSE(hits[0].job);
  EXPECT_EQ(hits[0].text, "AB 12 CDE, Tall van, Rook Farm");
  const std::vector<std::tuple<Kind, model::EntryId, std::string>> expected{
      {Kind::Note, noted, "washed the van"},
      {Kind::Part, used, "van mirror (M-7)"},
      {Kind::Complaint, said, "shakes like a van on cobbles"},
      {Kind::Request, opened, "the van shakes"}};
  for (std::size_t i = 0; i < expected.size(); ++i) {
    EXPECT_EQ(std::tuple(hits[i + 1].kind, hits[i + 1].entry, hits[i + 1].text), expected[i]);
    EXPECT_EQ(hits[i + 1].job, model::JobId{9});
    EXPECT_EQ(hits[i + 1].vehicle, model::VehicleId{4});
  }
  EXPECT_THAT(texts("m-7"), ElementsAre("van mirror (M-7)"));
}

TEST_F(Search, EveryWordMustBeThereInAnyOrderAndField) {
  vehicle(1, "AB 12", "Grey pickup", "I. Wren");
  vehicle(2, "AB 34", "Green pickup", "I. Wren");
  EXPECT_THAT(texts("wren grey"), ElementsAre("AB 12, Grey pickup, I. Wren"));
  EXPECT_THAT(texts("  pickup\t wren\n"), testing::SizeIs(2));
  EXPECT_THAT(texts("wren grey lorry"), IsEmpty());
  EXPECT_THAT(texts("grey wren ab 12 pick"), testing::SizeIs(1));
  EXPECT_THAT(texts("grey wren ab 12 pick lorry"), IsEmpty());  // the sixth counts too
  EXPECT_THAT(texts("greypickup"), IsEmpty());
}

TEST_F(Search, APlateIsFoundWithoutItsBlanksAndDashes) {
  vehicle(1, "K-LW 318", "", "", "WDX0000000000318");
  for (const char* typed : {"klw318", "K-LW", "lw 318", "k-lw 318", "wdx"}) {
    EXPECT_THAT(texts(typed), testing::SizeIs(1)) << typed;
  }
  EXPECT_THAT(texts("klw319"), IsEmpty());
}

TEST_F(Search, CaseDoesNotMatterBeyondAscii) {
  vehicle(1, "S-1", "", "Jürgen Öztürk");
  open(1, 1, "ЛЕВОЕ колесо");
  EXPECT_THAT(texts("ÖZTÜRK jürgen"), testing::SizeIs(1));
  EXPECT_THAT(texts("öztürk JÜRGEN"), testing::SizeIs(1));
  EXPECT_THAT(texts("Колесо левое"), testing::SizeIs(1));
  EXPECT_THAT(texts("oztürk"), IsEmpty());
  EXPECT_THAT(texts("Özturk"), IsEmpty());
  // The same letter as one code point or as two.
  EXPECT_THAT(texts("O\xCC\x88ztu\xCC\x88rk"), testing::SizeIs(1));
  note(1, "Mu\xCC\x88he");
  EXPECT_THAT(texts("MÜHE"), testing::SizeIs(1));
}

TEST_F(Search, PercentUnderscoreAndBackslashAreLetters) {
  vehicle(1, "AB 1");
  open(1, 1);
  note(1, "worn by 50 % or so");
  note(1, "ref_17");
  note(1, R"(C:\photos)");
  note(1, "nothing of the kind");
  EXPECT_THAT(texts("%"), ElementsAre("worn by 50 % or so"));
  EXPECT_THAT(texts("_"), ElementsAre("ref_17"));
  EXPECT_THAT(texts("\\"), ElementsAre(R"(C:\photos)"));
  EXPECT_THAT(texts("ref%17"), IsEmpty());
  EXPECT_THAT(texts("'; DROP TABLE entry; --"), IsEmpty());
}

TEST_F(Search, WhatWasReplacedOrWithdrawnIsNotFound) {
  vehicle(1, "AB 1");
  open(1, 1, "clunk");
  const auto first = note(1, "left caliper seized");
  const auto second = put(model::Note{"right caliper seized"}, 1, first.value);
  EXPECT_THAT(texts("caliper"), ElementsAre("right caliper seized"));
  put(model::Withdrawal{"not this vehicle"}, 1, second.value);
  EXPECT_THAT(texts("caliper"), IsEmpty());
}

TEST_F(Search, AVehicleIsFoundByItsNewestRevision) {
  vehicle(1, "AB 1", "", "old owner");
  const auto second = vehicle(1, "AB 1", "", "new owner");
  EXPECT_THAT(texts("old"), IsEmpty());
  EXPECT_THAT(texts("owner"), ElementsAre("AB 1, new owner"));
  put(model::Withdrawal{"was not sold"}, std::nullopt, second.value);
  EXPECT_THAT(texts("owner"), ElementsAre("AB 1, old owner"));
}

TEST_F(Search, OnlyTheNewestComplaintOfAJobCounts) {
  vehicle(1, "AB 1");
  open(1, 1);
  open(2, 1);
  complaint(1, "shakes at forty");
  const auto second = complaint(1, "shakes at fifty");
  complaint(2, "shakes at sixty");
  EXPECT_THAT(texts("shakes"), ElementsAre("shakes at sixty", "shakes at fifty"));
  put(model::Withdrawal{"misheard"}, 1, second.value);
  EXPECT_THAT(texts("shakes"), ElementsAre("shakes at sixty", "shakes at forty"));
}

TEST_F(Search, AJobThatWasTakenBackIsGoneWithAllThatStandsInIt) {
  vehicle(1, "AB 1");
  vehicle(2, "CD 2");
  const auto opened = open(1, 1, "knocks");
  note(1, "knocks at the left");
  model::JobOpened other;
  other.vehicle = {2};
  other.request = "knocks";
  const auto corrected = put(other, 1, opened.value);
  const auto hits = find("knocks");
  ASSERT_EQ(hits.size(), 2U);
  for (const SearchHit& hit : hits) EXPECT_EQ(hit.vehicle, model::VehicleId{2});
  put(model::Withdrawal{"opened twice"}, 1, corrected.value);
  EXPECT_THAT(texts("knocks"), IsEmpty());
}

TEST_F(Search, NoWordsFindNothingAndBadTextIsRefused) {
  vehicle(1, "AB 1");
  EXPECT_THAT(texts(""), IsEmpty());
  EXPECT_THAT(texts(" \t\n"), IsEmpty());
  EXPECT_THAT(texts("ab", 0), IsEmpty());
  EXPECT_THAT(texts(std::string(60000, 'x')), IsEmpty());  // longer than any pattern of SQLite
  EXPECT_EQ(book->search("\xFF", 10).error().key, "store.bad_text");
  EXPECT_EQ(book->search(std::string("a\0b", 3), 10).error().key, "store.bad_text");
}

/// The same question asked of a plain list.
struct Plain {
  std::int64_t job;  ///< 0 for a vehicle
  std::int64_t entry;
  std::string text;  ///< lower case
};

bool holdsAll(const std::string& text, const std::string& typed) {
  std::istringstream words(typed);
  for (std::string word; words >> word;) {
    if (text.find(word) == std::string::npos) return false;
  }
  return true;
}

/// Vehicles by plate, which grow with the entries here; then of the jobs what was recorded last, by
/// job.
std::vector<Plain> newestOf(const std::vector<Plain>& all, const std::string& typed,
                            std::size_t limit) {
  std::vector<Plain> list;
  for (const Plain& one : all) {
    if (one.job == 0 && holdsAll(one.text, typed) && list.size() < limit) list.push_back(one);
  }
  const auto vehicles = static_cast<std::ptrdiff_t>(list.size());
  for (std::size_t i = all.size(); i-- > 0;) {
    const Plain& one = all[i];
    if (one.job > 0 && holdsAll(one.text, typed) && list.size() < limit) list.push_back(one);
  }
  std::sort(list.begin() + vehicles, list.end(), [](const Plain& a, const Plain& b) {
    return std::tie(a.job, a.entry) > std::tie(b.job, b.entry);
  });
  return list;
}

TEST_F(Search, ThousandsOfRowsGiveWhatAPlainListGives) {
  const std::vector<std::string> syllables{"ka", "lo", "mi", "ru", "te", "so"};
  std::mt19937 random(20310303);
  const auto word = [&] { return syllables[random() % 6] + syllables[random() % 6]; };
  std::vector<Plain> plain;
  std::vector<model::Entry> entries;
  const auto put = [&](model::Payload payload, std::int64_t job, std::string text) {
    const auto id = static_cast<std::int64_t>(entries.size()) + 1;
    entries.push_back(
        makeEntry(id, std::move(payload), job > 0 ? std::optional(job) : std::nullopt));
    plain.push_back({job, id, std::move(text)});
  };
  for (std::int64_t i = 1; i <= 40; ++i) {
    model::Vehicle fact;
    fact.vehicle = {i};
    fact.registration = "Q" + std::to_string(1000 + i);
    fact.owner = word() + " " + word();
    put(fact, 0, "q" + std::to_string(1000 + i) + ", " + fact.owner);
  }
  for (std::int64_t job = 1; job <= 600; ++job) {
    model::JobOpened opened;
    opened.vehicle = {1 + job % 40};
    opened.request = word() + " " + word();
    put(opened, job, opened.request);
    for (int i = 0; i < 6; ++i) {
      const std::string text = word() + " " + word() + " " + word();
      put(model::Note{text}, job, text);
    }
  }
  for (std::int64_t job = 1; job <= 600; job += 7) {  // written into old jobs afterwards
    const std::string text = word() + " " + word();
    put(model::Note{text}, job, text);
  }
  ASSERT_GT(entries.size(), 4000U);
  ASSERT_TRUE(book->append(entries));
  for (const char* typed : {"kalo", "ka lo", "mite ru", "sososo", "q1007", "te te so ka", "zz"}) {
    for (const std::size_t limit : {std::size_t{1}, std::size_t{25}, std::size_t{100000}}) {
      std::vector<std::int64_t> expected, found;
      for (const Plain& one : newestOf(plain, typed, limit)) expected.push_back(one.entry);
      for (const SearchHit& hit : find(typed, limit)) found.push_back(hit.entry.value);
      EXPECT_EQ(found, expected) << typed << " at most " << limit;
    }
  }
}

}  // namespace

}  // namespace sw::store
