// SPDX-License-Identifier: GPL-3.0-or-later
#include "phrasing/template_text.h"

#include <map>

#include "text.h"

namespace sw::phrasing {
namespace {

std::string fill(const char* text, const std::map<std::string, std::string>& values) {
  return plain(filled(QString::fromUtf8(text), [&](const QString& name) {
    const auto found = values.find(name.toStdString());
    return found == values.end() ? QString() : QString::fromStdString(found->second);
  }));
}

TEST(TemplateText, PlaceholdersAreFilled) {
  EXPECT_EQ(fill("{a} and {b}", {{"a", "1"}, {"b", "2"}}), "1 and 2");
  EXPECT_EQ(fill("no placeholder", {}), "no placeholder");
  EXPECT_EQ(fill("", {}), "");
}

TEST(TemplateText, APartWithoutItsValueIsLeftOut) {
  EXPECT_EQ(fill("[{field}: ]wrong[, like {example}].", {{"field", "pull"}}), "pull: wrong.");
  EXPECT_EQ(fill("[{field}: ]wrong[, like {example}].", {{"example", "3 N"}}), "wrong, like 3 N.");
  EXPECT_EQ(fill("x[ ({a}, {b})]", {{"a", "1"}}), "x");
}

TEST(TemplateText, WhatIsFilledInIsNeverReadAgain) {
  EXPECT_EQ(fill("[{a}: ]end", {{"a", "{b} [x] {a}"}, {"b", "no"}}), "{b} [x] {a}: end");
}

TEST(TemplateText, LooseBracesAreText) {
  EXPECT_EQ(fill("a { b", {}), "a { b");
  EXPECT_EQ(fill("a [ b", {}), "a [ b");
}

TEST(Shown, OneLineWithoutTricks) {
  EXPECT_EQ(plain(shown("a\n b\t\tc\x07")), "a b c");
  EXPECT_EQ(plain(shown("ab\u202Ecd")), "ab cd");  // right-to-left override
  EXPECT_EQ(plain(shown("größe ± 5")), "größe ± 5");
}

TEST(Shown, LongTextsAreCutBetweenCharacters) {
  EXPECT_EQ(shown(std::string(160, 'x')).size(), 160);
  const QString cut = shown(std::string(1024 * 1024, 'x'));
  EXPECT_EQ(cut.size(), 161);
  EXPECT_TRUE(cut.endsWith(QChar(0x2026)));
  std::string spanners(159, 'x');
  for (int i = 0; i < 5; ++i) spanners += "\U0001F527";  // two UTF-16 units each
  EXPECT_EQ(shown(spanners).size(), 160);
}

}  // namespace
}  // namespace sw::phrasing
