// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/wheels/tyre_designation.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cctype>
#include <random>
#include <vector>

namespace sw::mechanics {
namespace {

struct Row {
  const char* text;
  SizeForm form;
  TyreConstruction construction;
  double widthMm;
  std::optional<double> aspect;
  double rim;
  std::optional<int> loadIndex, loadIndexDual;
  std::optional<char> speed;
  std::optional<int> plies;
  std::vector<std::string> marks;
};

constexpr auto kWith = SizeForm::MetricWithAspect;
constexpr auto kWithout = SizeForm::MetricWithoutAspect;
constexpr auto kFlotation = SizeForm::Flotation;
constexpr auto kInch = SizeForm::InchWidth;
constexpr auto kRadial = TyreConstruction::Radial;
constexpr auto kDiagonal = TyreConstruction::Diagonal;
constexpr auto kBelted = TyreConstruction::BiasBelted;

// Forms of ISO 4000-1, UN R30 and UN R54 (from memory); spellings: common practice, no source.
const std::vector<Row>& rows() {
  static const std::vector<Row> kRows{
      {"195/80 R15 96S", kWith, kRadial, 195, 80, 15, 96, {}, 'S', {}, {}},
      {"LT235/85R16 120/116Q", kWith, kRadial, 235, 85, 16, 120, 116, 'Q', {}, {"LT"}},
      {"p 205/75r15", kWith, kRadial, 205, 75, 15, {}, {}, {}, {}, {"P"}},
      {"245/70ZR16 107 H XL", kWith, kRadial, 245, 70, 16, 107, {}, 'H', {}, {"XL"}},
      {"225/75 RF 16 M+S", kWith, kRadial, 225, 75, 16, {}, {}, {}, {}, {"M+S"}},
      {"215/75-15 6PR TT", kWith, kDiagonal, 215, 75, 15, {}, {}, {}, 6, {"TT"}},
      {"215/75 D 15", kWith, kDiagonal, 215, 75, 15, {}, {}, {}, {}, {}},
      {"205/70B14 TL", kWith, kBelted, 205, 70, 14, {}, {}, {}, {}, {"TL"}},
      {"205 R16", kWithout, kRadial, 205, {}, 16, {}, {}, {}, {}, {}},
      {"205R16C 110/108 R 8 PR", kWithout, kRadial, 205, {}, 16, 110, 108, 'R', 8, {"C"}},
      {"165 SR 15", kWithout, kRadial, 165, {}, 15, {}, {}, 'S', {}, {}},
      {"185 HR15 91H", kWithout, kRadial, 185, {}, 15, 91, {}, 'H', {}, {}},
      {"31x10.50 R15 LT", kFlotation, kRadial, 266.7, {}, 15, {}, {}, {}, {}, {"LT"}},
      {"31X10,50R15LT 109Q", kFlotation, kRadial, 266.7, {}, 15, 109, {}, 'Q', {}, {"LT"}},
      {"33 \u00d7 12.50 - 15", kFlotation, kDiagonal, 317.5, {}, 15, {}, {}, {}, {}, {}},
      {"7.50R16", kInch, kRadial, 190.5, {}, 16, {}, {}, {}, {}, {}},
      {"6.00-16 6PR", kInch, kDiagonal, 152.4, {}, 16, {}, {}, {}, 6, {}},
      {"7.50 R16 C 112/110N tubetype",
       kInch,
       kRadial,
       190.5,
       {},
       16,
       112,
       110,
       'N',
       {},
       {"C", "TT"}},
      {"8R17.5", kInch, kRadial, 203.2, {}, 17.5, {}, {}, {}, {}, {}},
      {"195/80\u00a0R15 96", kWith, kRadial, 195, 80, 15, 96, {}, {}, {}, {}}};
  return kRows;
}

TEST(TyreDesignation, EveryFormIsRead) {
  for (const Row& row : rows()) {
    const auto tyre = parseTyreDesignation(row.text);
    ASSERT_TRUE(tyre) << row.text << ", not: " << tyre.error().detail("part");
    EXPECT_EQ(tyre->form, row.form) << row.text;
    EXPECT_EQ(tyre->construction, row.construction) << row.text;
    EXPECT_NEAR(inMillimetres(tyre->sectionWidth), row.widthMm, 1e-9) << row.text;
    EXPECT_EQ(tyre->aspect, row.aspect) << row.text;
    EXPECT_EQ(tyre->rimCode, row.rim) << row.text;
    EXPECT_EQ(tyre->loadIndex, row.loadIndex) << row.text;
    EXPECT_EQ(tyre->loadIndexDual, row.loadIndexDual) << row.text;
    EXPECT_EQ(tyre->speedSymbol, row.speed) << row.text;
    EXPECT_EQ(tyre->plyRating, row.plies) << row.text;
    EXPECT_EQ(tyre->marks, row.marks) << row.text;
  }
}

TEST(TyreDesignation, FlotationCarriesItsDiameter) {
  const auto tyre = parseTyreDesignation("31x10.50 R15").value();
  ASSERT_TRUE(tyre.overallDiameter);
  EXPECT_NEAR(inMillimetres(*tyre.overallDiameter), 31 * 25.4, 1e-9);
  EXPECT_FALSE(parseTyreDesignation("195/80R15").value().overallDiameter);
}

TEST(TyreDesignation, WhatIsNotUnderstoodIsRefused) {
  for (const char* text : {"",
                           " ",
                           "R16",
                           "205",
                           "205 16",
                           "205 R",
                           "205/ R16",
                           "205/80 R1",
                           "205/80 R31",
                           "206/80R15",
                           "205/80 R15.3",
                           "205/8 R15",
                           "205/120 R15",
                           "95/80R15",
                           "2050/80 R15",
                           "205.5/80R15",
                           "205/80 R15 96SXL",
                           "205/80 R15 96S 97S",
                           "205/80 R15 960S",
                           "205/80 R15 2055",
                           "205/80 R1596S",
                           "31x10.50",
                           "31x R15",
                           "15x10.5 R15",
                           "31x30 R15",
                           "22x8 R22",
                           "20.5 R16",
                           "1.5R16",
                           "205/80 R15 12.5",
                           "205/80 R15 banana",
                           "205/80 R15 6PR 8PR",
                           "205/80 R15 98PR",
                           "205/80 R15 96/",
                           "185 HR15 91S",
                           "190/65 R390",
                           "X205/80R15",
                           "205//80R15",
                           "205/80RR15",
                           "-205/80R15",
                           "205/80 R15 \xff",
                           "205/80 R15 96S;",
                           "0205/80R15 \n"}) {
    const auto tyre = parseTyreDesignation(text);
    ASSERT_FALSE(tyre) << text;
    EXPECT_EQ(tyre.error().code, ErrorCode::InvalidInput) << text;
    EXPECT_EQ(tyre.error().key, "tyre.not_understood") << text;
  }
  const std::string longText = "205/80 R15" + std::string(60, ' ');
  EXPECT_FALSE(parseTyreDesignation(longText));
  EXPECT_EQ(parseTyreDesignation("205/80 R15 banana").error().detail("part"), "BANANA");
}

TEST(TyreDesignation, ASpeedSymbolIsNotTakenForAMark) {
  const auto tyre = parseTyreDesignation("205 R16 104 T TL").value();
  EXPECT_EQ(tyre.speedSymbol, 'T');
  EXPECT_EQ(tyre.marks, std::vector<std::string>{"TL"});
  EXPECT_EQ(parseTyreDesignation("205 R16 104 TL").value().speedSymbol, std::nullopt);
  // C is a mark, not one of the symbols from F to Y.
  EXPECT_EQ(parseTyreDesignation("205 R16 104 C").value().marks, std::vector<std::string>{"C"});
}

/// The numbers in a text, found by a reader of its own.
std::vector<double> numbersIn(const std::string& text) {
  std::vector<double> found;
  for (std::size_t at = 0; at < text.size();) {
    if (!std::isdigit(static_cast<unsigned char>(text[at]))) {
      ++at;
      continue;
    }
    std::string digits;
    while (at < text.size() && (std::isdigit(static_cast<unsigned char>(text[at])) ||
                                text[at] == '.' || text[at] == ',')) {
      digits += text[at] == ',' ? '.' : text[at];
      ++at;
    }
    found.push_back(std::stod(digits));
  }
  return found;
}

std::vector<double> numbersOf(const TyreDesignation& tyre) {
  const bool inchesMarked = tyre.form == SizeForm::Flotation || tyre.form == SizeForm::InchWidth;
  std::vector<double> numbers;
  if (tyre.overallDiameter) numbers.push_back(inInches(*tyre.overallDiameter));
  numbers.push_back(inchesMarked ? inInches(tyre.sectionWidth) : inMillimetres(tyre.sectionWidth));
  if (tyre.aspect) numbers.push_back(*tyre.aspect);
  numbers.push_back(tyre.rimCode);
  if (tyre.loadIndex) numbers.push_back(*tyre.loadIndex);
  if (tyre.loadIndexDual) numbers.push_back(*tyre.loadIndexDual);
  if (tyre.plyRating) numbers.push_back(*tyre.plyRating);
  return numbers;
}

/// Every number of an accepted text is in what was read, and nothing else is.
void expectEveryNumberUsed(const std::string& text, const TyreDesignation& tyre) {
  auto marked = numbersIn(text);
  auto read = numbersOf(tyre);
  std::sort(marked.begin(), marked.end());
  std::sort(read.begin(), read.end());
  ASSERT_EQ(marked.size(), read.size()) << text;
  for (std::size_t i = 0; i < read.size(); ++i) EXPECT_NEAR(marked[i], read[i], 1e-9) << text;
}

TEST(TyreDesignation, NoNumberIsLostInWhatIsAccepted) {
  for (const Row& row : rows()) {
    expectEveryNumberUsed(row.text, parseTyreDesignation(row.text).value());
  }
  // Markings with one to four characters changed, put in or taken out.
  const std::string alphabet = "0123456789/-+.,xXRSHCTLPZQ \xc3\x97";
  std::mt19937 random(20311);
  int accepted = 0;
  for (int round = 0; round < 60000; ++round) {
    std::string text = rows()[random() % rows().size()].text;
    for (auto changes = 1 + random() % 4; changes > 0; --changes) {
      const std::size_t at = random() % (text.size() + 1);
      const char c = alphabet[random() % alphabet.size()];
      const auto kind = random() % 3;
      if (kind == 0) text.insert(at, 1, c);
      if (kind == 1 && at < text.size()) text[at] = c;
      if (kind == 2 && at < text.size()) text.erase(at, 1);
    }
    if (const auto tyre = parseTyreDesignation(text)) {
      expectEveryNumberUsed(text, *tyre);
      ++accepted;
    }
  }
  EXPECT_GT(accepted, 1000);
}

TEST(TyreDesignation, RandomBytesAreRefusedQuietly) {
  std::mt19937 random(7);
  for (int round = 0; round < 50000; ++round) {
    std::string text(random() % 70, '\0');
    for (char& c : text) c = static_cast<char>(random() % 256);
    const auto tyre = parseTyreDesignation(text);
    if (tyre) {
      expectEveryNumberUsed(text, *tyre);
    } else {
      EXPECT_EQ(tyre.error().key, "tyre.not_understood");
    }
  }
}

TEST(TyreDesignation, WordsOfFormsAndConstructions) {
  EXPECT_EQ(word(SizeForm::InchWidth), "inch_width");
  EXPECT_EQ(word(TyreConstruction::BiasBelted), "bias_belted");
}

}  // namespace
}  // namespace sw::mechanics
