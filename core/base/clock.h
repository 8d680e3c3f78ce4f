// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <compare>
#include <cstdint>
#include <string>
#include <string_view>

#include "base/result.h"

namespace sw {

/// A calendar day (proleptic Gregorian), without zone.
struct Date {
  int year = 1970;
  int month = 1;
  int day = 1;

  friend constexpr auto operator<=>(const Date&, const Date&) = default;
};

/// An instant with the zone offset of the clock on the wall: milliseconds since 1970-01-01T00:00Z.
/// Ordering is by instant.
struct Timestamp {
  std::int64_t utcMilliseconds = 0;
  int offsetMinutes = 0;

  friend constexpr bool operator==(const Timestamp& a, const Timestamp& b) {
    return a.utcMilliseconds == b.utcMilliseconds;
  }
  friend constexpr std::strong_ordering operator<=>(const Timestamp& a, const Timestamp& b) {
    return a.utcMilliseconds <=> b.utcMilliseconds;
  }
};

/// "2031-04-05T10:20:30.000+02:00" (ISO 8601; "Z" never written). Round-trips through
/// parseTimestamp.
[[nodiscard]] std::string toIso(const Timestamp& time);
/// "2031-04-05T08:20:30.000Z": sorts as text.
[[nodiscard]] std::string toIsoUtc(const Timestamp& time);
[[nodiscard]] std::string toIso(const Date& date);

/// Reads "2031-04-05T10:20[:30[.123]][Z|+02:00]"; no zone means UTC.
/// Errors: InvalidInput "clock.not_a_time".
[[nodiscard]] Result<Timestamp> parseTimestamp(std::string_view text);
/// Reads "2031-04-05". Errors: InvalidInput "clock.not_a_date".
[[nodiscard]] Result<Date> parseDate(std::string_view text);

/// The day on the wall clock where the timestamp was taken.
[[nodiscard]] Date localDate(const Timestamp& time);
/// Days from a to b, negative when b is earlier.
[[nodiscard]] std::int64_t daysBetween(const Date& a, const Date& b);
[[nodiscard]] Date addDays(const Date& date, std::int64_t count);

/// Where the time comes from; injected everywhere so that tests and demonstrations are
/// reproducible.
class Clock {
 public:
  Clock() = default;
  Clock(const Clock&) = delete;
  Clock& operator=(const Clock&) = delete;
  virtual ~Clock() = default;
  [[nodiscard]] virtual Timestamp now() const = 0;
};

/// The computer's clock with its local zone offset.
class SystemClock final : public Clock {
 public:
  [[nodiscard]] Timestamp now() const override;
};

/// A clock that is set by hand.
class ManualClock final : public Clock {
 public:
  explicit ManualClock(Timestamp start) : m_now(start) {}
  [[nodiscard]] Timestamp now() const override { return m_now; }
  void set(Timestamp time) { m_now = time; }
  void advanceMilliseconds(std::int64_t milliseconds) { m_now.utcMilliseconds += milliseconds; }

 private:
  Timestamp m_now;
};

}  // namespace sw
