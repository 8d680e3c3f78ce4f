// SPDX-License-Identifier: GPL-3.0-or-later
#include "base/clock.h"

#include <array>
#include <charconv>
#include <chrono>
#include <cstdio>
#include <ctime>
#include <optional>

namespace sw {

namespace {

using std::chrono::days;
using std::chrono::sys_days;
using std::chrono::year_month_day;

constexpr std::int64_t kMillisecondsPerMinute = 60'000;
constexpr std::int64_t kMillisecondsPerDay = 86'400'000;

std::int64_t floorDiv(std::int64_t a, std::int64_t b) {
  return a / b - ((a % b != 0 && (a % b < 0) != (b < 0)) ? 1 : 0);
}

sys_days toSysDays(const Date& date) {
  return sys_days{year_month_day{std::chrono::year{date.year},
                                 std::chrono::month{static_cast<unsigned>(date.month)},
                                 std::chrono::day{static_cast<unsigned>(date.day)}}};
}

Date fromDayNumber(std::int64_t dayNumber) {
  const year_month_day ymd{sys_days{days{dayNumber}}};
  return {static_cast<int>(ymd.year()), static_cast<int>(static_cast<unsigned>(ymd.month())),
          static_cast<int>(static_cast<unsigned>(ymd.day()))};
}

/// Reads exactly `width` digits at the front of `rest` and removes them.
std::optional<int> takeDigits(std::string_view& rest, std::size_t width) {
  if (rest.size() < width) return std::nullopt;
  int value = 0;
  const auto [end, error] = std::from_chars(rest.data(), rest.data() + width, value);
  if (error != std::errc{} || end != rest.data() + width || rest[0] == '-') return std::nullopt;
  rest.remove_prefix(width);
  return value;
}

bool takeChar(std::string_view& rest, char c) {
  if (rest.empty() || rest[0] != c) return false;
  rest.remove_prefix(1);
  return true;
}

std::optional<Date> takeDate(std::string_view& rest) {
  const auto year = takeDigits(rest, 4);
  if (!year || !takeChar(rest, '-')) return std::nullopt;
  const auto month = takeDigits(rest, 2);
  if (!month || !takeChar(rest, '-')) return std::nullopt;
  const auto day = takeDigits(rest, 2);
  if (!day) return std::nullopt;
  const year_month_day ymd{std::chrono::year{*year},
                           std::chrono::month{static_cast<unsigned>(*month)},
                           std::chrono::day{static_cast<unsigned>(*day)}};
  if (!ymd.ok()) return std::nullopt;
  return Date{*year, *month, *day};
}

/// The time of day in milliseconds: HH:MM[:SS[.mmm]].
std::optional<std::int64_t> takeTimeOfDay(std::string_view& rest) {
  const auto hour = takeDigits(rest, 2);
  if (!hour || *hour > 23 || !takeChar(rest, ':')) return std::nullopt;
  const auto minute = takeDigits(rest, 2);
  if (!minute || *minute > 59) return std::nullopt;
  std::int64_t total = (*hour * 60 + *minute) * kMillisecondsPerMinute;
  if (!takeChar(rest, ':')) return total;
  const auto second = takeDigits(rest, 2);
  if (!second || *second > 59) return std::nullopt;
  total += std::int64_t{*second} * 1000;
  if (!takeChar(rest, '.')) return total;
  const auto milli = takeDigits(rest, 3);
  if (!milli) return std::nullopt;
  return total + *milli;
}

/// The zone offset in minutes; nothing at all means UTC.
std::optional<int> takeOffset(std::string_view& rest) {
  if (rest.empty() || takeChar(rest, 'Z')) return 0;
  const bool negative = rest[0] == '-';
  if (!takeChar(rest, '+') && !takeChar(rest, '-')) return std::nullopt;
  const auto hour = takeDigits(rest, 2);
  if (!hour || *hour > 14 || !takeChar(rest, ':')) return std::nullopt;
  const auto minute = takeDigits(rest, 2);
  if (!minute || *minute > 59) return std::nullopt;
  const int offset = *hour * 60 + *minute;
  return negative ? -offset : offset;
}

std::string dateAndTime(std::int64_t milliseconds) {
  const std::int64_t dayNumber = floorDiv(milliseconds, kMillisecondsPerDay);
  const std::int64_t inDay = milliseconds - dayNumber * kMillisecondsPerDay;
  std::array<char, 40> buffer{};
  std::snprintf(buffer.data(), buffer.size(), "T%02d:%02d:%02d.%03d",
                static_cast<int>(inDay / 3'600'000), static_cast<int>(inDay / 60'000 % 60),
                static_cast<int>(inDay / 1000 % 60), static_cast<int>(inDay % 1000));
  return toIso(fromDayNumber(dayNumber)) + buffer.data();
}

}  // namespace

std::string toIso(const Date& date) {
  std::array<char, 40> buffer{};
  std::snprintf(buffer.data(), buffer.size(), "%04d-%02d-%02d", date.year, date.month, date.day);
  return buffer.data();
}

std::string toIso(const Timestamp& time) {
  const int magnitude = time.offsetMinutes < 0 ? -time.offsetMinutes : time.offsetMinutes;
  std::array<char, 16> buffer{};
  std::snprintf(buffer.data(), buffer.size(), "%c%02d:%02d", time.offsetMinutes < 0 ? '-' : '+',
                magnitude / 60 % 100, magnitude % 60);
  return dateAndTime(time.utcMilliseconds + time.offsetMinutes * kMillisecondsPerMinute) +
         buffer.data();
}

std::string toIsoUtc(const Timestamp& time) {
  return dateAndTime(time.utcMilliseconds) + "Z";
}

Result<Timestamp> parseTimestamp(std::string_view text) {
  std::string_view rest = text;
  const auto bad = [&] {
    return fail(ErrorCode::InvalidInput, "clock.not_a_time", {}, {{"text", std::string(text)}});
  };
  const auto date = takeDate(rest);
  if (!date || !(takeChar(rest, 'T') || takeChar(rest, ' '))) return bad();
  const auto inDay = takeTimeOfDay(rest);
  if (!inDay) return bad();
  const auto offset = takeOffset(rest);
  if (!offset || !rest.empty()) return bad();
  const std::int64_t dayNumber = toSysDays(*date).time_since_epoch().count();
  return Timestamp{dayNumber * kMillisecondsPerDay + *inDay - *offset * kMillisecondsPerMinute,
                   *offset};
}

Result<Date> parseDate(std::string_view text) {
  std::string_view rest = text;
  const auto date = takeDate(rest);
  if (!date || !rest.empty()) {
    return fail(ErrorCode::InvalidInput, "clock.not_a_date", {}, {{"text", std::string(text)}});
  }
  return *date;
}

Date localDate(const Timestamp& time) {
  return fromDayNumber(floorDiv(time.utcMilliseconds + time.offsetMinutes * kMillisecondsPerMinute,
                                kMillisecondsPerDay));
}

std::int64_t daysBetween(const Date& a, const Date& b) {
  return (toSysDays(b) - toSysDays(a)).count();
}

Date addDays(const Date& date, std::int64_t count) {
  return fromDayNumber(toSysDays(date).time_since_epoch().count() + count);
}

Timestamp SystemClock::now() const {
  const auto instant = std::chrono::system_clock::now();
  const std::time_t seconds = std::chrono::system_clock::to_time_t(instant);
  std::tm local{};
  localtime_r(&seconds, &local);
  const auto milliseconds =
      std::chrono::duration_cast<std::chrono::milliseconds>(instant.time_since_epoch()).count();
  return {milliseconds, static_cast<int>(local.tm_gmtoff / 60)};
}

}  // namespace sw
