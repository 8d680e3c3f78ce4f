// SPDX-License-Identifier: GPL-3.0-or-later
// No number is misread by 10 or 1000, whatever the mark, the unit, the spacing or the script: the
// intended value is worked out here in long double from the definitions, never by the reader's
// table.
#include <array>
#include <cmath>
#include <random>

#include "units/format.h"
#include "units/parse.h"
#include "units_testing.h"

namespace sw {
namespace {

using units_testing::fieldOf;
using units_testing::relativelyEqual;
using Kind = QuantityKind;

constexpr int kGenerated = 200000;
constexpr int kRandomTexts = 100000;

struct Written {
  Kind kind;
  const char* unit;
  long double toSi;
};

// 1959 agreement: 0.0254 m, 0.45359237 kg; CGPM 1901: 9.80665 m/s2.
constexpr long double kPound = 0.45359237L;
constexpr long double kGravity = 9.80665L;
constexpr long double kInch = 0.0254L;
constexpr long double kPi = 3.14159265358979323846L;
constexpr std::array kWritten{
    Written{Kind::Force, "N", 1.0L},
    Written{Kind::Force, "kgf", kGravity},
    Written{Kind::Force, "kg", kGravity},
    Written{Kind::Force, "lbf", kPound* kGravity},
    Written{Kind::Force, "lb", kPound* kGravity},
    Written{Kind::Torque, "Nm", 1.0L},
    Written{Kind::Torque, "N.m", 1.0L},
    Written{Kind::Torque, "ft-lb", kPound* kGravity * 12.0L * kInch},
    Written{Kind::Torque, "lbf ft", kPound* kGravity * 12.0L * kInch},
    Written{Kind::Torque, "in lb", kPound* kGravity* kInch},
    Written{Kind::Torque, "kgf cm", kGravity / 100.0L},
    Written{Kind::Length, "mm", 0.001L},
    Written{Kind::Length, "thou", kInch / 1000.0L},
    Written{Kind::Length, "\"", kInch},
    Written{Kind::Length, "in", kInch},
    Written{Kind::Speed, "km/h", 1000.0L / 3600.0L},
    Written{Kind::Speed, "mph", 63360.0L * kInch / 3600.0L},
    Written{Kind::Pressure, "psi", kPound* kGravity / (kInch * kInch)},
    Written{Kind::Mass, "kg", 1.0L},
    Written{Kind::Angle, "\u00b0", kPi / 180.0L},
    Written{Kind::Volume, "l", 0.001L},
};

class Generator {
 public:
  int upTo(int bound) { return std::uniform_int_distribution<int>(0, bound)(m_engine); }
  char byte() { return static_cast<char>(upTo(255)); }
  template <class Container>
  auto& oneOf(const Container& choices) {
    return choices[static_cast<std::size_t>(upTo(static_cast<int>(std::size(choices)) - 1))];
  }
  std::string digits(int count) {
    std::string text;
    for (int i = 0; i < count; ++i) text.push_back(static_cast<char>('0' + upTo(9)));
    return text;
  }

 private:
  std::mt19937 m_engine{20310405U};
};

/// The digits in another script: two- or three-byte code points beginning at the zero given.
std::string inScript(const std::string& text, std::string_view zero) {
  std::string out;
  for (const char c : text) {
    if (c < '0' || c > '9') {
      out.push_back(c);
      continue;
    }
    std::string digit(zero);
    if (zero.size() == 1) digit = std::string(1, c);
    if (zero.size() > 1) digit.back() = static_cast<char>(digit.back() + (c - '0'));
    out += digit;
  }
  return out;
}

struct Generated {
  std::string text;
  Kind kind = Kind::Number;
  long double si = 0.0L;
};

Generated generate(Generator& random) {
  static constexpr std::array kSpaces{"", " ", "  ", "\u00a0", "\u202f", "\t"};
  static constexpr std::array kZeros{"0", "0", "0", "\u0660", "\u06f0", "\u0966", "\uff10"};
  static constexpr std::array kSigns{"", "", "", "-", "+", "\u2212"};
  const Written& unit = random.oneOf(kWritten);
  const std::string whole = random.digits(1 + random.upTo(6));
  const std::string fraction = random.digits(random.upTo(6));
  const std::string sign = random.oneOf(kSigns);
  // The intended value from whole-number arithmetic: all digits, divided by a power of ten.
  long double value = static_cast<long double>(std::stoll(whole + fraction));
  value /= std::pow(10.0L, static_cast<long double>(fraction.size()));
  if (sign == "-" || sign == "\u2212") value = -value;
  std::string number = whole;
  if (!fraction.empty()) number += (random.upTo(1) == 0 ? "." : ",") + fraction;
  const std::string text = std::string(random.oneOf(kSpaces)) + sign +
                           inScript(number, random.oneOf(kZeros)) + random.oneOf(kSpaces) +
                           unit.unit + random.oneOf(kSpaces);
  return {text, unit.kind, value * unit.toSi};
}

TEST(ParseProperty, NeverMisreadsAGeneratedQuantity) {
  Generator random;
  for (int i = 0; i < kGenerated; ++i) {
    const Generated made = generate(random);
    const auto parsed = parseQuantity(made.text, fieldOf(made.kind));
    ASSERT_TRUE(parsed.has_value()) << "'" << made.text << "' " << parsed.error().key;
    ASSERT_TRUE(relativelyEqual(parsed->value.si, static_cast<double>(made.si))) << made.text;
    const auto unit = findUnit(made.kind, parsed->value.unit);
    ASSERT_TRUE(unit.has_value());
    const std::string exact = exactText(parsed->value.si, *unit);
    const auto back = parseQuantity(exact, fieldOf(made.kind));
    ASSERT_TRUE(back.has_value()) << exact;
    ASSERT_TRUE(relativelyEqual(back->value.si, parsed->value.si)) << made.text << " " << exact;
    ASSERT_EQ(parseQuantity(parsed->value.text(), fieldOf(made.kind))->value, parsed->value);
  }
}

// Digits grouped in threes, in any of the ways people group: always an error, never a value.
TEST(ParseProperty, RefusesEveryGroupedNumber) {
  static constexpr std::array kGroupings{",",      ".",      " ",      "'",     "\u00a0",
                                         "\u202f", "\u2009", "\u2019", "\u066c"};
  Generator random;
  for (int i = 0; i < kGenerated / 4; ++i) {
    const std::string grouping = random.oneOf(kGroupings);
    const bool isMark = grouping == "," || grouping == ".";
    std::string text = random.digits(1 + random.upTo(2)) + grouping + random.digits(3);
    // One comma or point alone is the decimal mark; a second group or mark makes it grouping.
    if (isMark || random.upTo(1) == 0) text += grouping + random.digits(3);
    if (random.upTo(1) == 0) text += (grouping == "," ? "." : ",") + random.digits(2);
    const auto parsed = parseQuantity(text + " N", fieldOf(Kind::Force));
    ASSERT_FALSE(parsed.has_value()) << text << " read as " << parsed->value.text();
    ASSERT_EQ(parsed.error().key, "units.two_marks") << text;
  }
}

TEST(ParseProperty, ReadsASeriesLikeItsParts) {
  Generator random;
  for (int i = 0; i < kGenerated / 20; ++i) {
    std::vector<Generated> parts;
    std::string line;
    while (parts.size() < 4) {
      Generated part = generate(random);
      if (part.kind != Kind::Torque) continue;
      line += part.text + (random.upTo(1) == 0 ? ";" : " ");
      parts.push_back(std::move(part));
    }
    const auto series = parseSeries(line, fieldOf(Kind::Torque));
    ASSERT_TRUE(series.has_value()) << "'" << line << "' " << series.error().key;
    ASSERT_EQ(series->size(), parts.size()) << line;
    for (std::size_t k = 0; k < parts.size(); ++k) {
      ASSERT_TRUE(relativelyEqual((*series)[k].value.si, static_cast<double>(parts[k].si))) << line;
    }
  }
}

void expectFiniteOrError(const std::string& text, Kind kind) {
  const auto parsed = parseQuantity(text, fieldOf(kind));
  if (parsed) {
    ASSERT_TRUE(std::isfinite(parsed->value.si)) << text;
    ASSERT_TRUE(parseQuantity(parsed->value.text(), fieldOf(kind)).has_value()) << text;
  } else {
    ASSERT_FALSE(parsed.error().key.empty());
    ASSERT_FALSE(parsed.error().field.empty());
  }
  const auto series = parseSeries(text, fieldOf(kind));
  if (!series) return;
  ASSERT_FALSE(series->empty());
  for (const ParsedQuantity& reading : *series) ASSERT_TRUE(std::isfinite(reading.value.si));
}

TEST(ParseProperty, SurvivesRandomBytes) {
  Generator random;
  for (int i = 0; i < kRandomTexts; ++i) {
    std::string text;
    for (int length = random.upTo(24); length > 0; --length) text.push_back(random.byte());
    expectFiniteOrError(text, static_cast<Kind>(random.upTo(11)));
  }
}

// Random pieces of what the reader knows: reaches much deeper than random bytes.
TEST(ParseProperty, SurvivesRandomPieces) {
  static constexpr std::array kPieces{
      "1",        "0",      "9",   "25",     ".",       ",",      " ",      ";",
      "\n",       "-",      "+",   "e",      "E5",      "999",    "N",      "Nm",
      "kg",       "lb",     "ft",  "in",     "\"",      "mm",     "/",      "km/h",
      "\u00b0",   "nan",    "inf", "\u221e", "\u00a0",  "\u0665", "'",      "\xc2",
      "\xe2\x80", "\u00b7", "*",   "1/min",  "kgf/cm2", "\u2212", "\u066c", "\uff11"};
  Generator random;
  for (int i = 0; i < kRandomTexts; ++i) {
    std::string text;
    for (int count = random.upTo(10); count > 0; --count) text += random.oneOf(kPieces);
    expectFiniteOrError(text, static_cast<Kind>(random.upTo(11)));
  }
}

}  // namespace
}  // namespace sw
