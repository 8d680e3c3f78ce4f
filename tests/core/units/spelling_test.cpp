// SPDX-License-Identifier: GPL-3.0-or-later
#include "units/spelling.h"

#include <algorithm>
#include <cctype>
#include <map>

#include "units/parse.h"
#include "units_testing.h"

namespace sw {
namespace {

using spelling::allSpellings;
using spelling::Capitals;
using spelling::Spelling;
using units_testing::fieldOf;

std::string folded(std::string_view text) {
  std::string plain;
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (c != ' ') plain.push_back(byte < 0x80 ? static_cast<char>(std::tolower(byte)) : c);
  }
  return plain;
}

TEST(Spellings, NameUnitsOfTheTable) {
  for (const Spelling& spelling : allSpellings()) {
    EXPECT_TRUE(findUnit(spelling.kind, spelling.symbol).has_value()) << spelling.text;
  }
}

// Without capitals and blanks, no spelling of one unit may equal one of another unit of the kind.
TEST(Spellings, NeverMeanTwoUnitsOfAKind) {
  std::map<std::pair<QuantityKind, std::string>, std::string_view> seen;
  const auto meansOne = [&](QuantityKind kind, std::string_view text, std::string_view symbol) {
    const auto [entry, isNew] = seen.try_emplace({kind, folded(text)}, symbol);
    EXPECT_TRUE(isNew || entry->second == symbol)
        << text << " means " << symbol << " and " << entry->second;
  };
  for (const Unit& unit : allUnits()) meansOne(unit.kind, unit.symbol, unit.symbol);
  for (const Spelling& spelling : allSpellings()) {
    meansOne(spelling.kind, spelling.text, spelling.symbol);
  }
}

TEST(Spellings, AreAllReadWithAndWithoutBlanks) {
  for (const Spelling& spelling : allSpellings()) {
    std::string joined(spelling.text);
    joined.erase(std::remove(joined.begin(), joined.end(), ' '), joined.end());
    for (const std::string& text : {std::string(spelling.text), joined}) {
      const auto parsed = parseQuantity("7 " + text, fieldOf(spelling.kind));
      ASSERT_TRUE(parsed.has_value()) << text << ": " << parsed.error().key;
      EXPECT_EQ(parsed->value.unit, spelling.symbol) << text;
    }
  }
}

}  // namespace
}  // namespace sw
