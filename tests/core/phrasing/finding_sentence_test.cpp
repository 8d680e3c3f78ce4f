// SPDX-License-Identifier: GPL-3.0-or-later
#include "phrasing/finding_sentence.h"
#include <gmock/gmock.h>

#include <set>

#include "text.h"

namespace sw::phrasing {
namespace {

using Details = std::vector<std::pair<std::string, std::string>>;

std::string said(const std::string& key, const Details& details = {}) {
  return plain(findingSentence(key, details));
}

TEST(FindingSentence, ASoundBookInOneLine) {
  EXPECT_EQ(
      said("check.sound", {{"entries", "563"}, {"jobs", "12"}, {"faults", "0"}, {"notes", "0"}}),
      "The book is sound: 563 entries in 12 jobs.");
  EXPECT_EQ(said("check.sound", {{"entries", "1"}, {"jobs", "1"}, {"faults", "0"}, {"notes", "1"}}),
            "The book is sound: 1 entry in 1 job, 1 note.");
  EXPECT_EQ(said("check.sound", {{"entries", "0"}, {"jobs", "0"}, {"faults", "0"}, {"notes", "0"}}),
            "The book is sound: 0 entries in 0 jobs.");
}

TEST(FindingSentence, AFaultyBookSaysHowManyAndWhatToDo) {
  EXPECT_THAT(
      said("check.faulty", {{"entries", "563"},
                            {"jobs", "12"},
                            {"faults", "2"},
                            {"notes", "3"},
                            {"first", "check.gap"}}),
      testing::StartsWith("The book is not sound: 2 faults in 563 entries, 3 notes. Nothing "
                          "was changed. Copy the file"));
  // Too damaged to count: no number of entries is made up.
  EXPECT_THAT(said("check.faulty", {{"entries", "0"}, {"jobs", "0"}, {"faults", "1"}}),
              testing::StartsWith("The book is not sound: 1 fault. Nothing"));
}

TEST(FindingSentence, NamesTheEntryAndWhatIsWrong) {
  EXPECT_EQ(said("check.fact_missing", {{"entry", "7"}, {"text", "torque_check"}}),
            "Entry 7: the content is missing (torque check).");
  EXPECT_EQ(said("check.replaces_other_job", {{"entry", "9"}, {"text", "4"}}),
            "Entry 9: it corrects an entry of another job (number 4).");
  EXPECT_EQ(said("check.gap", {{"entries", "12"}, {"newest", "13"}}),
            "Entries are missing: there are 12, the newest is number 13.");
  EXPECT_EQ(said("check.verdict_differs",
                 {{"entry", "31"}, {"given", "within"}, {"computed", "instrument_too_coarse"}}),
            "Entry 31: computed again from its readings the verdict comes out differently: in the "
            "book “within”, computed “instrument too coarse”.");
  EXPECT_EQ(said("check.cannot_read", {{"check", "check.fact_extra"}, {"text", "disk I/O error"}}),
            "Not everything could be checked (fact extra). The system says: disk I/O error.");
}

TEST(FindingSentence, AClockSetBackIsANoteAndNoFault) {
  const std::string text =
      said("check.clock_went_back", {{"entry", "8"}, {"text", "2031-03-03T07:00:00.000Z"}});
  EXPECT_THAT(text, testing::StartsWith("Note: an entry (number 8) bears an earlier time"));
  EXPECT_THAT(text, testing::HasSubstr("nothing is wrong"));
}

TEST(FindingSentence, EveryOneReadsWithAndWithoutDetails) {
  Details all;
  for (const char* name : {"entry", "text", "entries", "newest", "given", "computed", "check"}) {
    all.emplace_back(name, "<" + std::string(name) + ">");
  }
  std::set<std::string_view> seen;
  for (const std::string_view key : findingKeys()) {
    EXPECT_TRUE(seen.insert(key).second) << key;
    for (const Details& details : {Details{}, all}) {
      const std::string text = said(std::string(key), details);
      EXPECT_GT(text.size(), 15U) << key;
      EXPECT_TRUE(text.ends_with(".")) << text;
      EXPECT_EQ(text.find_first_of("{}[]"), std::string::npos) << text;
      EXPECT_EQ(text.find("  "), std::string::npos) << text;
      EXPECT_EQ(text.find("()"), std::string::npos) << text;
      EXPECT_EQ(text.find("safe"), std::string::npos) << text;
    }
  }
}

TEST(FindingSentence, AnUnknownKeyStillSaysWhatIsKnown) {
  EXPECT_EQ(said("check.moon_too_full", {{"age", "11"}}), "Check moon too full (age = 11).");
}

}  // namespace
}  // namespace sw::phrasing
