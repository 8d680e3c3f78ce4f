// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bolts/thread_designation.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <optional>
#include <string>

#include "mechanics/bolts/thread_series.h"
#include "units/format.h"
#include "units/number_text.h"

namespace sw::mechanics {

namespace {

constexpr std::size_t kLongest = 40;
constexpr std::string_view kTimes = "\u00d7";
constexpr double kLargestNumberSize = 12;
constexpr double kLargestMillimetres = 100;
constexpr double kLargestInches = 4;

constexpr auto kOtherForms =
    std::to_array<std::string_view>({"bsw", "bsf", "whit", "bsp", "bspp", "bspt", "bsc", "ba",
                                     "npt", "nptf", "g", "r", "rc", "tr"});

bool isDigit(char c) {
  return c >= '0' && c <= '9';
}
bool isLetter(char c) {
  return c >= 'a' && c <= 'z';
}

/// Small letters, one 'x' for every sign of times, a hyphen where a blank parts two numbers, no
/// other blanks, no inch marks.
std::string plainText(std::string_view text) {
  std::string plain;
  bool blank = false;
  const std::string all = number_text::normalised(text).value_or(std::string{});
  for (std::string_view rest = all; !rest.empty();) {
    const bool times = rest.starts_with(kTimes);
    char c = times || rest[0] == '*' ? 'x' : rest[0];
    rest.remove_prefix(times ? kTimes.size() : 1);
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    if (c == ',') c = '.';
    if (number_text::isBlank(c)) {
      blank = true;
    } else if (c != '"') {
      if (blank && !plain.empty() && isDigit(plain.back()) && isDigit(c)) plain.push_back('-');
      blank = false;
      plain.push_back(c);
    }
  }
  return plain;
}

/// Takes one piece after another off the front of a text.
class Scanner {
 public:
  explicit Scanner(std::string_view text) : m_rest(text) {}

  bool take(char c) {
    if (m_rest.empty() || m_rest[0] != c) return false;
    m_rest.remove_prefix(1);
    return true;
  }
  std::optional<double> number() {
    if (m_rest.empty() || !(isDigit(m_rest[0]) || m_rest[0] == '.')) return std::nullopt;
    double value = 0;
    const char* const end = m_rest.data() + m_rest.size();
    const auto [after, error] =
        std::from_chars(m_rest.data(), end, value, std::chars_format::fixed);
    if (error != std::errc{}) return std::nullopt;
    m_rest.remove_prefix(static_cast<std::size_t>(after - m_rest.data()));
    return value;
  }
  std::string letters() {
    const auto end = std::find_if_not(m_rest.begin(), m_rest.end(), isLetter);
    std::string word(m_rest.begin(), end);
    m_rest.remove_prefix(word.size());
    return word;
  }
  [[nodiscard]] std::string_view rest() const { return m_rest; }

 private:
  std::string_view m_rest;
};

tl::unexpected<Error> refuse(std::string_view key, std::string_view text, std::string example) {
  return fail(ErrorCode::InvalidInput, std::string(key), "thread",
              {{"text", number_text::echo(text)}, {"example", std::move(example)}});
}

tl::unexpected<Error> unknown(std::string_view text) {
  return refuse("bolts.unknown_thread", text, "M10x1.25");
}

/// "-6g", "-6g6g", "-lh", "x40" at the end of a metric designation.
bool isMetricTail(std::string_view tail) {
  if (tail.empty()) return true;
  if (tail[0] != '-' && tail[0] != 'x') return false;
  return tail.size() > 1 && std::all_of(tail.begin() + 1, tail.end(), [](char c) {
           return isDigit(c) || isLetter(c) || c == '-' || c == '.';
         });
}

/// "-2a", "-2b-lh" at the end of an inch designation.
bool isInchTail(std::string_view tail) {
  return tail.empty() || (tail[0] == '-' && tail.size() > 1 &&
                          std::all_of(tail.begin() + 1, tail.end(), [](char c) {
                            return isDigit(c) || isLetter(c) || c == '-';
                          }));
}

/// A size in inches: "#10", "7/16", "1-1/8", "0.4375".
std::optional<double> inchSize(Scanner& scanner) {
  if (scanner.take('#')) {
    const auto number = scanner.number();
    if (!number || *number > kLargestNumberSize) return std::nullopt;
    return 0.060 + 0.013 * *number;  // ASME B1.1
  }
  const auto first = scanner.number();
  if (!first) return std::nullopt;
  const auto quotient = [](double a, const std::optional<double>& b) {
    return b && *b > 0 ? std::optional<double>(a / *b) : std::nullopt;
  };
  if (scanner.take('/')) return quotient(*first, scanner.number());
  Scanner ahead = scanner;
  if (!ahead.take('-')) return first;
  const auto above = ahead.number();
  if (!above || !ahead.take('/')) return first;
  const auto part = quotient(*above, ahead.number());
  if (!part) return std::nullopt;
  scanner = ahead;
  return *first + *part;
}

/// The pitch behind "M10": "x1.25", or "-1.25" unless it is a tolerance class, "-6g".
std::optional<double> metricPitch(Scanner& scanner) {
  if (scanner.take('x')) return scanner.number();
  Scanner ahead = scanner;
  if (!ahead.take('-')) return std::nullopt;
  const auto pitch = ahead.number();
  if (!pitch || (!ahead.rest().empty() && isLetter(ahead.rest()[0]))) return std::nullopt;
  scanner = ahead;
  return pitch;
}

Result<Thread> checked(Thread thread, std::string_view text) {
  const auto geometry = threadGeometry(thread);
  if (geometry) return thread;
  if (geometry.error().key != "bolts.bad_pitch") return unknown(text);
  return tl::make_unexpected(geometry.error().about("thread"));
}

Result<Thread> metricThread(Scanner scanner, std::string_view text) {
  const auto diameter = scanner.number();
  if (!diameter || *diameter > kLargestMillimetres) return unknown(text);
  const bool written = !scanner.rest().empty() && scanner.rest()[0] == 'x';
  const auto pitch = metricPitch(scanner);
  if ((written && !pitch) || !isMetricTail(scanner.rest())) return unknown(text);
  const Length d = millimetres(*diameter);
  if (pitch) {
    return checked({ThreadStandard::IsoMetric, d, millimetres(*pitch), PitchFrom::Designation,
                    "M" + fullPrecision(*diameter) + "x" + fullPrecision(*pitch)},
                   text);
  }
  auto coarse = findBySize(ThreadStandard::IsoMetric, d, PitchFrom::CoarseSeries);
  if (!coarse) return refuse("bolts.needs_pitch", text, "M10x1.25");
  return std::move(*coarse);
}

std::optional<PitchFrom> seriesOf(std::string_view word) {
  if (word == "unc" || word == "nc") return PitchFrom::CoarseSeries;
  if (word == "unf" || word == "nf") return PitchFrom::FineSeries;
  return std::nullopt;
}

bool isSeriesWord(std::string_view word) {
  return word.empty() || seriesOf(word) || word == "un" || word == "unef" || word == "uns";
}

/// What an inch designation says.
struct InchText {
  double diameter = 0;
  std::optional<double> perInch;
  std::string series;
};

Result<Thread> inchThread(const InchText& read, std::string_view text) {
  const Length d = inches(read.diameter);
  const auto series = seriesOf(read.series);
  const auto listed =
      series ? findBySize(ThreadStandard::UnifiedInch, d, *series) : std::optional<Thread>{};
  if (!read.perInch) {
    if (listed) return *listed;
    return refuse("bolts.needs_pitch", text, "7/16-20");
  }
  const Length pitch = inches(1 / *read.perInch);
  auto known = findInSeries(ThreadStandard::UnifiedInch, d, pitch);
  if (listed && (!known || known->name != listed->name)) {
    return fail(ErrorCode::InvalidInput, "bolts.series_differs", "thread",
                {{"text", number_text::echo(text)}, {"expected", listed->name}});
  }
  Thread thread{ThreadStandard::UnifiedInch, d, pitch, PitchFrom::Designation,
                known ? known->name : inchSizeName(d) + "-" + fullPrecision(*read.perInch)};
  return checked(std::move(thread), text);
}

Result<Thread> inchFrom(Scanner scanner, std::string_view text) {
  InchText read;
  const auto diameter = inchSize(scanner);
  if (!diameter || *diameter > kLargestInches) return unknown(text);
  read.diameter = *diameter;
  if (Scanner ahead = scanner; ahead.take('-')) {
    read.perInch = ahead.number();
    if (read.perInch) scanner = ahead;
  }
  if (Scanner ahead = scanner;
      ahead.take('-') && !ahead.rest().empty() && isLetter(ahead.rest()[0])) {
    scanner = ahead;
  }
  read.series = scanner.letters();
  const auto other = std::find(kOtherForms.begin(), kOtherForms.end(), read.series);
  if (other != kOtherForms.end()) return refuse("bolts.other_thread_form", text, "1/2-20 UNF");
  const bool usable = !read.perInch || *read.perInch > 0;
  if (!usable || !isSeriesWord(read.series) || !isInchTail(scanner.rest())) return unknown(text);
  return inchThread(read, text);
}

bool namesOtherForm(Scanner scanner) {
  const std::string word = scanner.letters();
  return std::find(kOtherForms.begin(), kOtherForms.end(), word) != kOtherForms.end();
}

}  // namespace

Result<Thread> parseThread(std::string_view text) {
  if (text.size() > kLongest) return unknown(text);
  const std::string plain = plainText(text);
  if (Scanner scanner(plain); scanner.take('m')) return metricThread(scanner, text);
  if (namesOtherForm(Scanner(plain))) {
    return refuse("bolts.other_thread_form", text, "1/2-20 UNF");
  }
  return inchFrom(Scanner(plain), text);
}

}  // namespace sw::mechanics
