// SPDX-License-Identifier: GPL-3.0-or-later
#include "phrasing/event_sentence.h"
#include <gmock/gmock.h>

#include <set>

#include "text.h"

namespace sw::phrasing {
namespace {

using Values = std::vector<std::pair<std::string, std::string>>;

std::string said(const std::string& key, const Values& values = {}) {
  return plain(eventSentence(key, values));
}

TEST(EventSentence, ShowsHowATextWasRead) {
  EXPECT_EQ(
      said("read_as", {{"field", "readings"}, {"how", "mass_as_force"}, {"value", "1.95 kgf"}}),
      "Readings: read as 1.95 kgf: a spring scale marked in kg shows kilogram-force.");
  EXPECT_EQ(said("read_as", {{"field", "min"}, {"how", "mass_as_force"}, {"value", "4 lbf"}}),
            "Min: read as 4 lbf: a spring scale marked in lb shows pound-force.");
  EXPECT_EQ(said("read_as", {{"field", "angle_within"}, {"how", "bare_number"}, {"value", "10 °"}}),
            "Angle within: no unit was typed; read as 10 °.");
  EXPECT_EQ(said("read_as", {{"field", "max"}, {"how", "comma_as_decimal"}, {"value", "1.2 mm"}}),
            "Max: read as 1.2 mm: the comma is the decimal mark.");
}

// 100 N m is 73.8 lbf ft, 72 lbf ft is 97.6 N m: 1 lbf ft = 1.3558 N m (from memory).
TEST(EventSentence, FiguresThatDisagreeAreShownBothWays) {
  EXPECT_EQ(
      said("figures_disagree", {{"key", "wheel_nuts"},
                                {"first", "100 N m"},
                                {"second", "72 lbf ft"},
                                {"first_converted", "73.8 lbf ft"},
                                {"second_converted", "97.6 N m"},
                                {"beside_first", "74 lbf ft"},
                                {"beside_second", "98 N m"}}),
      "Wheel nuts: the two figures do not agree. 100 N m is 73.8 lbf ft, but 72 lbf ft stands "
      "beside it, which is 97.6 N m. Beside 100 N m, 74 lbf ft would agree; beside 72 lbf ft, "
      "98 N m. Look in the source; nothing was changed.");
}

TEST(EventSentence, TheNextPackIsPulledAtOnce) {
  EXPECT_EQ(said("next_pack", {{"side", "left"}, {"stack", "0.5 + 0.25"}, {"total", "0.75 mm"}}),
            "Left side: next pack 0.5 + 0.25 mm, 0.75 mm in all. Fit it and pull at once; no drive "
            "in between.");
  EXPECT_THAT(said("next_pack_unknown", {{"side", "right"}, {"why", "pack"}}),
              testing::AllOf(testing::StartsWith("Right side: "),
                             testing::HasSubstr("the pack fitted now is not recorded")));
  EXPECT_THAT(said("next_pack_unknown", {{"side", "right"}, {"why", "sizes"}}),
              testing::HasSubstr("spec sheet"));
}

TEST(EventSentence, PacksRunOutOnOneSideOrAltogether) {
  EXPECT_THAT(said("packs_exhausted", {{"side", "right"}}),
              testing::StartsWith("Right side: no allowed shim pack is left"));
  EXPECT_THAT(said("packs_exhausted"), testing::StartsWith("No allowed shim pack is left"));
}

TEST(EventSentence, AVerdictInTheUsualWordsWithItsAdvice) {
  EXPECT_EQ(said("verdict", {{"verdict", "within"},
                             {"so_far", "within"},
                             {"value", "18.80 +- 0.76 N"},
                             {"side", "none"},
                             {"advice", "settled"}}),
            "Within: 18.80 ± 0.76 N. No more pulls are needed.");
  EXPECT_EQ(said("verdict", {{"verdict", "undecided"},
                             {"so_far", "undecided"},
                             {"value", "19.6 +- 1.3 N"},
                             {"side", "inside_likely"},
                             {"advice", "more_cannot_help"},
                             {"advice", "finer_instrument"},
                             {"graduation", "0.2 N"}}),
            "Undecided, probably inside: 19.6 ± 1.3 N. More pulls cannot help: a scale graduated "
            "0.2 N or finer would.");
  EXPECT_EQ(said("verdict", {{"verdict", "provisional"},
                             {"so_far", "outside"},
                             {"value", "0.130 +- 0.012 mm"},
                             {"side", "above"},
                             {"advice", "more_readings"},
                             {"readings", "2"}}),
            "Provisional, so far outside, above the limit: 0.130 ± 0.012 mm. 2 more readings would "
            "probably decide.");
}

TEST(EventSentence, StandsByTheirRatingNoMore) {
  const std::string enough =
      said("stand_load", {{"needed", "440 kg"}, {"rated", "2000 kg"}, {"verdict", "enough"}});
  EXPECT_THAT(enough,
              testing::StartsWith("Each stand has to bear more than 440 kg and is rated for "
                                  "2000 kg: by its rating that is enough."));
  EXPECT_THAT(
      said("stand_load", {{"needed", "440 kg"}, {"rated", "400 kg"}, {"verdict", "not_enough"}}),
      testing::HasSubstr("not enough"));
}

TEST(EventSentence, HoldsRunsAndClosingByName) {
  EXPECT_EQ(said("hold_passed", {{"hold", "go_no_go"}}),
            "The hold “go or no-go for the road” is answered in full.");
  EXPECT_THAT(
      said("hold_not_passed",
           {{"hold", "wheel_nuts"}, {"statement", "torque_read"}, {"ask", "What was read?"}}),
      testing::StartsWith("The hold “wheel nuts” stops the job: the answer to “What was "
                          "read?” is not the one needed."));
  EXPECT_EQ(said("run_appended",
                 {{"procedure", "fit-shims-and-pull"}, {"round", "2"}, {"why", "short_of_target"}}),
            "Added to the job: “fit shims and pull”, round 2, because the bearings need more "
            "preload.");
  EXPECT_EQ(said("run_appended", {{"procedure", "follow-up"}, {"round", "1"}, {"why", "chosen"}}),
            "Added to the job: “follow up”, round 1.");
  EXPECT_EQ(said("closed", {{"outcome", "closed_without_sign_off"}}),
            "The job is closed: closed without sign-off.");
  EXPECT_EQ(said("readings_taken", {{"series", "40"}, {"used", "2"}, {"planned", "3"}}),
            "Readings taken: 2 of 3 planned.");
}

TEST(EventSentence, AVinIsToldAsAHint) {
  EXPECT_THAT(said("vin_hint", {{"hint", "not_seventeen"}, {"vin", "QI 1234"}}),
              testing::AllOf(testing::StartsWith("The VIN QI 1234 does not have 17 characters."),
                             testing::EndsWith("It was kept as typed.")));
  EXPECT_THAT(said("vin_hint", {{"hint", "check_digit_differs"}}),
              testing::StartsWith("The check digit of the VIN, its 9th character, does not fit"));
}

TEST(EventSentence, EveryOneIsASentenceAndNoneClearsAVehicle) {
  Values all;
  for (const char* name : {"registration",
                           "vin",
                           "key",
                           "first",
                           "second",
                           "first_converted",
                           "second_converted",
                           "beside_first",
                           "beside_second",
                           "job",
                           "plan",
                           "procedure",
                           "round",
                           "needed",
                           "rated",
                           "hold",
                           "statement",
                           "field",
                           "value",
                           "limit",
                           "used",
                           "planned",
                           "so_far",
                           "series",
                           "side",
                           "stack",
                           "total",
                           "wrench",
                           "outcome"}) {
    all.emplace_back(name, "<" + std::string(name) + ">");
  }
  std::set<std::string_view> seen;
  for (const std::string_view row : eventKeys()) {
    EXPECT_TRUE(seen.insert(row).second) << row;
    const std::string key(row.substr(0, row.find('/')));
    Values values = all;
    for (const char* telling : {"how", "why", "verdict", "state", "rule", "hint"}) {
      values.emplace_back(telling, row.size() > key.size() ? row.substr(key.size() + 1) : "other");
    }
    const std::string text = said(key, values);
    EXPECT_TRUE(text.ends_with(".")) << text;
    EXPECT_EQ(text.find_first_of("{}[]"), std::string::npos) << text;
    EXPECT_EQ(text.find("  "), std::string::npos) << text;
    EXPECT_EQ(text.find("“”"), std::string::npos) << text;
    EXPECT_EQ(text.find("safe"), std::string::npos) << text;
    EXPECT_EQ(text.find("clear"), std::string::npos) << text;
  }
}

// Each row under "event/word" must really be chosen by that word.
TEST(EventSentence, EveryVariantSaysSomethingOfItsOwn) {
  for (const std::string_view row : eventKeys()) {
    const std::size_t mark = row.find('/');
    if (mark == std::string_view::npos) continue;
    const std::string key(row.substr(0, mark));
    Values values{{"value", "2 kgf"}};
    for (const char* telling : {"how", "why", "verdict", "state", "rule", "hint"}) {
      values.emplace_back(telling, row.substr(mark + 1));
    }
    Values other{{"value", "2 kgf"}, {"verdict", std::string(row.substr(mark + 1))}};
    if (key == "verdict" || key == "stand_load") other.back().second = "another";
    EXPECT_NE(said(key, values), said(key, other)) << row;
  }
}

TEST(EventSentence, AnUnknownKeyStillSaysWhatIsKnown) {
  EXPECT_EQ(said("moon_rose", {{"age", "11"}, {"side", "left"}}),
            "Moon rose (age = 11, side = left).");
}

}  // namespace
}  // namespace sw::phrasing
