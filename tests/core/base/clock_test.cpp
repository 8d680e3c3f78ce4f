// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/clock.h"

#include <ctime>

namespace sw {
namespace {

std::int64_t millisecondsOf(std::string_view text) {
  const auto parsed = parseTimestamp(text);
  EXPECT_TRUE(parsed.has_value()) << text;
  return parsed ? parsed->utcMilliseconds : -1;
}

// POSIX.1-2017, 4.16 "Seconds Since the Epoch"; 946684800 (2000-01-01), 951782400 (2000-02-29),
// 1234567890 (2009-02-13T23:31:30Z) and 2147483647 (2038-01-19T03:14:07Z) are well known; each also
// answered by GNU date -u +%s.
TEST(ParseTimestamp, CountsFromTheEpoch) {
  EXPECT_EQ(millisecondsOf("1970-01-01T00:00:00Z"), 0);
  EXPECT_EQ(millisecondsOf("2000-01-01T00:00Z"), 946684800000);
  EXPECT_EQ(millisecondsOf("2000-02-29T00:00:00"), 951782400000);
  EXPECT_EQ(millisecondsOf("2009-02-13 23:31:30.125Z"), 1234567890125);
  EXPECT_EQ(millisecondsOf("2038-01-19T03:14:07Z"), 2147483647000);
  EXPECT_EQ(millisecondsOf("1969-12-31T23:59:59.999Z"), -1);
}

TEST(ParseTimestamp, AgreesWithTheSystemLibrary) {
  for (int day = 0; day < 40000; day += 37) {
    std::tm broken{};
    broken.tm_year = 50;
    broken.tm_mday = 1 + day;
    broken.tm_hour = 13;
    broken.tm_min = 45;
    const std::time_t seconds = timegm(&broken);  // normalises the fields too
    const Timestamp time{seconds * std::int64_t{1000}, 0};
    const Date date{broken.tm_year + 1900, broken.tm_mon + 1, broken.tm_mday};
    EXPECT_EQ(localDate(time), date) << seconds;
    EXPECT_EQ(toIsoUtc(time), toIso(date) + "T13:45:00.000Z");
  }
}

// ISO 8601 (from memory): local time equals UTC plus the offset.
TEST(ParseTimestamp, KeepsTheOffset) {
  const auto east = parseTimestamp("2031-04-05T10:20:30.000+02:00");
  ASSERT_TRUE(east.has_value());
  EXPECT_EQ(east->offsetMinutes, 120);
  EXPECT_EQ(toIsoUtc(*east), "2031-04-05T08:20:30.000Z");
  const auto west = parseTimestamp("2031-04-05T04:50:30-03:30");
  ASSERT_TRUE(west.has_value());
  EXPECT_EQ(*west, *east);
  EXPECT_EQ(west->offsetMinutes, -210);
  EXPECT_EQ(toIso(*west), "2031-04-05T04:50:30.000-03:30");
}

TEST(ParseTimestamp, RoundTripsWhatItWrites) {
  for (const char* text : {"2031-04-05T10:20:30.000+02:00", "1999-12-31T23:59:59.999-11:30",
                           "2024-02-29T00:00:00.001+14:00", "0001-01-01T00:00:00.000+00:00",
                           "1969-07-20T20:17:40.500-05:00", "9999-12-31T23:59:59.999+00:00"}) {
    const auto parsed = parseTimestamp(text);
    ASSERT_TRUE(parsed.has_value()) << text;
    EXPECT_EQ(toIso(*parsed), text);
    EXPECT_EQ(parseTimestamp(toIsoUtc(*parsed)).value(), *parsed);
  }
}

TEST(ParseTimestamp, RefusesWhatIsNotATime) {
  for (const char* text :
       {"", "2031-04-05", "2031-04-05T", "2031-04-05T10", "2031-04-05T24:00", "2031-04-05T10:60",
        "2031-04-05T10:20:60", "2031-04-05T10:20:30.1", "2031-04-05T10:20:30+2:00",
        "2031-04-05T10:20:30+02", "2031-04-05T10:20:30+15:00", "2031-04-05T10:20:30Zx",
        "2031-02-30T10:20", "31-04-05T10:20", " 2031-04-05T10:20", "2031-04-05T-1:20",
        "2031-04-05T+1:20", "2031-4-5T10:20"}) {
    const auto parsed = parseTimestamp(text);
    ASSERT_FALSE(parsed.has_value()) << text;
    EXPECT_EQ(parsed.error().key, "clock.not_a_time");
    EXPECT_EQ(parsed.error().code, ErrorCode::InvalidInput);
    EXPECT_EQ(parsed.error().detail("text"), text);
  }
}

TEST(Timestamp, OrdersByInstantNotByWallClock) {
  const auto early = parseTimestamp("2031-04-05T11:00+05:00").value();
  const auto late = parseTimestamp("2031-04-05T08:00+01:00").value();
  EXPECT_LT(early, late);
  EXPECT_LT(toIsoUtc(early), toIsoUtc(late));
}

// Gregorian rule: every fourth year, not the hundreds, but the four hundreds.
TEST(ParseDate, KnowsLeapYears) {
  EXPECT_TRUE(parseDate("2024-02-29").has_value());
  EXPECT_TRUE(parseDate("2000-02-29").has_value());
  EXPECT_FALSE(parseDate("1900-02-29").has_value());
  EXPECT_FALSE(parseDate("2023-02-29").has_value());
}

TEST(ParseDate, RefusesWhatIsNotADate) {
  for (const char* text :
       {"", "2031", "2031-13-01", "2031-00-10", "2031-01-32", "2031-01-00", "2031-1-1",
        "05.04.2031", "2031-04-05T10:00", "2031-04-05 ", "-031-04-05"}) {
    const auto parsed = parseDate(text);
    ASSERT_FALSE(parsed.has_value()) << text;
    EXPECT_EQ(parsed.error().key, "clock.not_a_date");
  }
}

TEST(LocalDate, IsTheDayOnTheWall) {
  EXPECT_EQ(localDate(parseTimestamp("2031-01-01T00:30+02:00").value()), (Date{2031, 1, 1}));
  EXPECT_EQ(localDate(parseTimestamp("2031-12-31T23:30-05:00").value()), (Date{2031, 12, 31}));
}

TEST(Dates, CountDaysAcrossMonthsAndLeapDays) {
  EXPECT_EQ(daysBetween({2024, 2, 28}, {2024, 3, 1}), 2);
  EXPECT_EQ(daysBetween({2023, 2, 28}, {2023, 3, 1}), 1);
  EXPECT_EQ(daysBetween({2031, 3, 1}, {2030, 3, 1}), -365);
  EXPECT_EQ(addDays({2023, 12, 31}, 1), (Date{2024, 1, 1}));
  EXPECT_EQ(addDays({2024, 3, 1}, -1), (Date{2024, 2, 29}));
  EXPECT_EQ(toIso(addDays({2031, 4, 5}, 14)), "2031-04-19");
  EXPECT_LT((Date{2030, 12, 31}), (Date{2031, 1, 1}));
}

TEST(ManualClock, MovesOnlyByHand) {
  ManualClock clock(Timestamp{1000, 60});
  EXPECT_EQ(clock.now().utcMilliseconds, 1000);
  clock.advanceMilliseconds(500);
  EXPECT_EQ(clock.now().utcMilliseconds, 1500);
  EXPECT_EQ(clock.now().offsetMinutes, 60);
  clock.set(Timestamp{7, 0});
  EXPECT_EQ(clock.now().utcMilliseconds, 7);
}

TEST(SystemClock, AgreesWithTheSystem) {
  const std::int64_t before = static_cast<std::int64_t>(std::time(nullptr)) * 1000;
  const std::int64_t now = SystemClock().now().utcMilliseconds;
  EXPECT_GE(now, before - 1000);
  EXPECT_LE(now, before + 60000);
}

}  // namespace
}  // namespace sw
