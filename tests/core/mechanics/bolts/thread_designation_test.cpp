// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bolts/thread_designation.h"

#include <gmock/gmock.h>
#include <algorithm>

#include "mechanics/bolts/thread_series.h"

namespace sw::mechanics {
namespace {

struct Row {
  const char* text;
  const char* name;
  double diameter, pitch;  ///< mm
  PitchFrom from;
};

// ISO 261 (coarse pitches), ISO 965-1 and ASME B1.1 (designations), from memory; looser spellings
// are common practice, no source. 1 in = 25.4 mm.
TEST(ThreadDesignation, ReadsWhatPeopleWrite) {
  constexpr auto kWritten = PitchFrom::Designation;
  const Row rows[]{
      {"M10", "M10x1.5", 10, 1.5, PitchFrom::CoarseSeries},
      {"m8", "M8x1.25", 8, 1.25, PitchFrom::CoarseSeries},
      {"M 12", "M12x1.75", 12, 1.75, PitchFrom::CoarseSeries},
      {"M2.5", "M2.5x0.45", 2.5, 0.45, PitchFrom::CoarseSeries},
      {"M39", "M39x4", 39, 4, PitchFrom::CoarseSeries},
      {"M10x1.25", "M10x1.25", 10, 1.25, kWritten},
      {"M10 x 1,25", "M10x1.25", 10, 1.25, kWritten},
      {"M10\u00d71.25", "M10x1.25", 10, 1.25, kWritten},
      {"M10*1.25", "M10x1.25", 10, 1.25, kWritten},
      {"M10-1.25", "M10x1.25", 10, 1.25, kWritten},
      {"M10x1.25-6g", "M10x1.25", 10, 1.25, kWritten},
      {"M10x1.25x40", "M10x1.25", 10, 1.25, kWritten},
      {"M10-6g", "M10x1.5", 10, 1.5, PitchFrom::CoarseSeries},
      {"7/16-20 UNF", "7/16-20 UNF", 11.1125, 1.27, kWritten},
      {"7/16\"-20", "7/16-20 UNF", 11.1125, 1.27, kWritten},
      {"7/16 UNF", "7/16-20 UNF", 11.1125, 1.27, PitchFrom::FineSeries},
      {"7/16 unc", "7/16-14 UNC", 11.1125, 25.4 / 14, PitchFrom::CoarseSeries},
      {"0.4375-20", "7/16-20 UNF", 11.1125, 1.27, kWritten},
      {"1/2-13", "1/2-13 UNC", 12.7, 25.4 / 13, kWritten},
      {"1/4-28UNF-2A", "1/4-28 UNF", 6.35, 25.4 / 28, kWritten},
      {"1/4-28-UNF", "1/4-28 UNF", 6.35, 25.4 / 28, kWritten},
      {"#10-32", "#10-32 UNF", 4.826, 25.4 / 32, kWritten},
      {"1-8", "1-8 UNC", 25.4, 25.4 / 8, kWritten},
      {"1-1/8-7", "1-1/8-7 UNC", 28.575, 25.4 / 7, kWritten},
      {"1 1/8-12 UNF", "1-1/8-12 UNF", 28.575, 25.4 / 12, kWritten},
      {"9/16-24", "9/16-24", 14.2875, 25.4 / 24, kWritten},
  };
  for (const Row& row : rows) {
    const auto got = parseThread(row.text);
    ASSERT_TRUE(got) << row.text << ": " << got.error().key;
    EXPECT_EQ(got->name, row.name) << row.text;
    EXPECT_NEAR(inMillimetres(got->diameter), row.diameter, 1e-9) << row.text;
    EXPECT_NEAR(inMillimetres(got->pitch), row.pitch, 1e-9) << row.text;
    EXPECT_EQ(got->pitchFrom, row.from) << row.text;
    const auto standard =
        row.name[0] == 'M' ? ThreadStandard::IsoMetric : ThreadStandard::UnifiedInch;
    EXPECT_EQ(got->standard, standard) << row.text;
  }
}

TEST(ThreadDesignation, RefusesWhatIsNoThreadOrNotOneOfOurs) {
  struct Refused {
    const char* text;
    const char* key;
  };
  for (const Refused& row : {
           Refused{"", "bolts.unknown_thread"},
           {"M", "bolts.unknown_thread"},
           {"bolt", "bolts.unknown_thread"},
           {"M10x", "bolts.unknown_thread"},
           {"M10x1.25 long", "bolts.unknown_thread"},
           {"M0x1", "bolts.unknown_thread"},
           {"M1000x2", "bolts.unknown_thread"},
           {"10x1.25", "bolts.unknown_thread"},
           {"1/0-20", "bolts.unknown_thread"},
           {"1/2-0", "bolts.unknown_thread"},
           {"1/2-20 XYZ", "bolts.unknown_thread"},
           {"M10x1.25x40x50x60x70x80x90x100x110x120x130", "bolts.unknown_thread"},
           {"M10x5", "bolts.bad_pitch"},
           {"1/4-3", "bolts.bad_pitch"},
           {"M20 5.6", "bolts.bad_pitch"},
           {"M8 8.8", "bolts.bad_pitch"},
           {"1/2-9999", "bolts.bad_pitch"},
           {"M13", "bolts.needs_pitch"},
           {"7/16", "bolts.needs_pitch"},
           {"#0 UNC", "bolts.needs_pitch"},
           {"7/16-14 UNF", "bolts.series_differs"},
           {"1/2-20 UNC", "bolts.series_differs"},
           {"1/2 BSF", "bolts.other_thread_form"},
           {"3/8-20 BSF", "bolts.other_thread_form"},
           {"BSW 1/2", "bolts.other_thread_form"},
           {"G1/4", "bolts.other_thread_form"},
           {"2 BA", "bolts.other_thread_form"},
           {"1/8-27 NPT", "bolts.other_thread_form"},
       }) {
    const auto got = parseThread(row.text);
    ASSERT_FALSE(got) << row.text << " read as " << got->name;
    EXPECT_EQ(got.error().key, row.key) << row.text;
    EXPECT_EQ(got.error().field, "thread") << row.text;
  }
  EXPECT_EQ(parseThread("7/16-14 UNF").error().detail("expected"), "7/16-20 UNF");
}

TEST(ThreadDesignation, EveryNameOfTheSeriesReadsBack) {
  for (const Thread& thread : standardThreads()) {
    const auto again = parseThread(thread.name);
    ASSERT_TRUE(again) << thread.name;
    EXPECT_EQ(again->name, thread.name);
    EXPECT_NEAR(again->diameter.si(), thread.diameter.si(), 1e-12) << thread.name;
    EXPECT_NEAR(again->pitch.si(), thread.pitch.si(), 1e-12) << thread.name;
  }
}

std::vector<std::string> namesLike(const char* designation) {
  std::vector<std::string> names;
  const auto all = lookAlikes(parseThread(designation).value()).value();
  for (const LookAlike& each : all) {
    names.push_back(each.thread.name);
  }
  return names;
}

// Pairs that workshops mistake for one another, by ISO 261 and ASME B1.1 sizes (common practice, no
// source).
TEST(LookAlikes, FindThePairsTheTradeKnows) {
  struct Pair {
    const char* metric;
    const char* inch;
  };
  for (const Pair& pair :
       {Pair{"M8x1", "5/16-24 UNF"}, Pair{"M12x1.25", "1/2-20 UNF"}, Pair{"M10x1.5", "3/8-16 UNC"},
        Pair{"M8x1.25", "5/16-18 UNC"}, Pair{"M5x0.8", "#10-32 UNF"},
        Pair{"M12x1.75", "1/2-13 UNC"}, Pair{"M14x1.5", "9/16-18 UNF"}}) {
    EXPECT_THAT(namesLike(pair.metric), testing::Contains(std::string(pair.inch)));
    EXPECT_THAT(namesLike(pair.inch), testing::Contains(std::string(pair.metric)));
  }
}

TEST(LookAlikes, OtherPitchesAndOtherSizesAreNone) {
  EXPECT_THAT(namesLike("M12x1.25"), testing::Not(testing::Contains("1/2-13 UNC")));
  EXPECT_THAT(namesLike("M7x1"), testing::IsEmpty());
  for (const Thread& thread : standardThreads()) {
    EXPECT_THAT(namesLike(thread.name.c_str()), testing::Not(testing::Contains(thread.name)));
  }
}

const LookAlike& like(const std::vector<LookAlike>& all, const char* name) {
  return *std::find_if(all.begin(), all.end(),
                       [name](const LookAlike& each) { return each.thread.name == name; });
}

// Plane geometry of the basic profile (ASME B1.1): the nut of 1/2-20 is bored to 0.4459 in, so a
// 12 mm bolt reaches (12 - 11.326) / (12.7 - 11.326) = 49 % of its thread depth.
TEST(LookAlikes, AnM12BoltInAHalfInchNutHoldsByHalf) {
  const auto all = lookAlikes(parseThread("M12x1.25").value()).value();
  const LookAlike& half = like(all, "1/2-20 UNF");
  EXPECT_NEAR(half.engagedDepth, 0.49, 0.005);
  EXPECT_NEAR(inMillimetres(half.diameterDifference), 0.70, 1e-9);
  EXPECT_NEAR(inMillimetres(half.pitchDifference), 0.02, 1e-9);
  const auto back = lookAlikes(parseThread("1/2-20").value()).value();
  EXPECT_NEAR(like(back, "M12x1.25").engagedDepth, half.engagedDepth, 1e-12);
}

}  // namespace
}  // namespace sw::mechanics
