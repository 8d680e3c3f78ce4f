// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/swivel/shim_packs.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <map>
#include <random>

namespace sw::mechanics {
namespace {

std::vector<double> totals(const std::vector<AllowedPack>& packs) {
  std::vector<double> list;
  for (const AllowedPack& pack : packs) list.push_back(inMillimetres(pack.total));
  return list;
}

std::vector<double> millimetresOf(const std::vector<Length>& lengths) {
  std::vector<double> list;
  for (const Length length : lengths) list.push_back(inMillimetres(length));
  return list;
}

ShimStock stockOf(const std::vector<double>& sizes, double maxPack, int maxCount) {
  ShimStock stock;
  for (const double size : sizes) stock.sizes.push_back({millimetres(size), std::nullopt});
  stock.maxPack = millimetres(maxPack);
  stock.maxCount = maxCount;
  return stock;
}

// Worked by hand: two sizes, at most three shims.
TEST(AllowedPacks, AllSumsOnceEach) {
  const auto packs = allowedPacks(stockOf({0.2, 0.5}, 10, 3));
  ASSERT_TRUE(packs.has_value());
  EXPECT_THAT(totals(*packs), testing::Pointwise(testing::DoubleNear(1e-9),
                                                 {0.2, 0.4, 0.5, 0.6, 0.7, 0.9, 1.0, 1.2, 1.5}));
}

TEST(AllowedPacks, OneTotalIsMadeUpWithTheFewestShims) {
  const auto packs = allowedPacks(stockOf({0.1, 0.2, 0.3}, 0.3, 3));
  ASSERT_TRUE(packs.has_value());
  ASSERT_EQ(packs->size(), 3U);
  EXPECT_EQ(packs->at(2).count(), 1);
  EXPECT_THAT(millimetresOf(packs->at(2).shims),
              testing::Pointwise(testing::DoubleNear(1e-9), {0.3}));
}

TEST(AllowedPacks, AsManyFewestTakesTheThickest) {
  // 0.4 = 0.3 + 0.1 = 0.2 + 0.2.
  const auto packs = allowedPacks(stockOf({0.1, 0.2, 0.3}, 0.4, 2));
  ASSERT_TRUE(packs.has_value());
  EXPECT_THAT(millimetresOf(packs->back().shims),
              testing::Pointwise(testing::DoubleNear(1e-9), {0.3, 0.1}));
}

TEST(AllowedPacks, TheLargestPackIsIncluded) {
  const auto packs = allowedPacks(stockOf({0.1}, 0.3, 50));
  ASSERT_TRUE(packs.has_value());
  EXPECT_EQ(packs->size(), 3U);  // 0.1 + 0.1 + 0.1 is 0.3, whatever binary fractions say
}

TEST(AllowedPacks, OnlyWhatIsOnHand) {
  ShimStock stock = stockOf({0.5, 0.2}, 10, 4);
  stock.sizes[0].onHand = 1;
  stock.sizes[1].onHand = 0;
  auto packs = allowedPacks(stock);
  ASSERT_TRUE(packs.has_value());
  EXPECT_EQ(packs->size(), 1U);
  stock.sizes.push_back({millimetres(0.5), 1});  // named twice: one and one more
  packs = allowedPacks(stock);
  ASSERT_TRUE(packs.has_value());
  EXPECT_THAT(totals(*packs), testing::Pointwise(testing::DoubleNear(1e-9), {0.5, 1.0}));
}

TEST(AllowedPacks, TotalsThatAgreeToAMicrometreAreOne) {
  // 1 thou = 25.4 um exactly (1959 agreement): 3 thou = 76.2 um rounds to 76 um, as 0.0761 mm does.
  ShimStock stock;
  stock.sizes = {{inches(0.003), std::nullopt}, {millimetres(0.0761), std::nullopt}};
  stock.maxCount = 1;
  const auto packs = allowedPacks(stock);
  ASSERT_TRUE(packs.has_value());
  EXPECT_EQ(packs->size(), 1U);
}

TEST(AllowedPacks, RoundingComesAfterAdding) {
  // Three times 76.2 um is 228.6 um, 229 um rounded; three times the rounded 76 um would be 228 um.
  ShimStock stock;
  stock.sizes = {{inches(0.003), std::nullopt}, {millimetres(0.229), std::nullopt}};
  stock.maxCount = 3;
  stock.maxPack = millimetres(0.229);
  const auto packs = allowedPacks(stock);
  ASSERT_TRUE(packs.has_value());
  ASSERT_EQ(packs->size(), 3U);
  EXPECT_EQ(packs->back().count(), 1);
}

/// Every selection, one shim at a time, without any short cut.
std::map<long, int> bruteForce(const ShimStock& stock) {
  std::map<long, int> fewest;
  const double maxPack = stock.maxPack->si() * 1e9 + 0.5;
  const std::function<void(std::size_t, double, int)> choose = [&](std::size_t index, double sum,
                                                                   int count) {
    if (index == stock.sizes.size()) {
      if (count == 0) return;
      const long key = std::lround(sum / 1000.0);
      const auto found = fewest.find(key);
      if (found == fewest.end() || count < found->second) fewest[key] = count;
      return;
    }
    const ShimSize& size = stock.sizes[index];
    for (int n = 0; n <= size.onHand.value_or(stock.maxCount); ++n) {
      const double next = sum + n * std::round(size.thickness.si() * 1e9);
      if (count + n > stock.maxCount || next > maxPack) break;
      choose(index + 1, next, count + n);
    }
  };
  choose(0, 0, 0);
  return fewest;
}

TEST(AllowedPacks, AgreesWithEverySelectionTried) {
  std::mt19937 random(20240607);
  for (int round = 0; round < 300; ++round) {
    ShimStock stock;
    const int sizes = 1 + static_cast<int>(random() % 6);
    const bool imperial = random() % 3 == 0;
    for (int i = 0; i < sizes; ++i) {
      const double step = 1.0 + static_cast<double>(random() % 40);
      ShimSize size{imperial ? inches(step / 1000.0) : millimetres(step / 40.0), std::nullopt};
      if (random() % 2 == 0) size.onHand = static_cast<int>(random() % 4);
      stock.sizes.push_back(size);
    }
    stock.maxCount = 1 + static_cast<int>(random() % 6);
    stock.maxPack = millimetres(0.3 + static_cast<double>(random() % 30) / 10.0);
    const auto packs = allowedPacks(stock);
    ASSERT_TRUE(packs.has_value());
    std::map<long, int> found;
    for (const AllowedPack& pack : *packs) {
      found[std::lround(pack.total.si() * 1e6)] = pack.count();
      double sum = 0;
      for (const Length shim : pack.shims) sum += shim.si();
      ASSERT_NEAR(sum, pack.total.si(), 1e-12);
      ASSERT_TRUE(std::is_sorted(pack.shims.rbegin(), pack.shims.rend()));
    }
    ASSERT_EQ(found, bruteForce(stock)) << "round " << round;
    ASSERT_EQ(found.size(), packs->size());
    ASSERT_TRUE(std::is_sorted(packs->begin(), packs->end(),
                               [](const auto& a, const auto& b) { return a.total < b.total; }));
  }
}

struct BadStock {
  std::string name;
  ShimStock stock;
  std::string key;
  std::string field;
};

class StockRefused : public testing::TestWithParam<BadStock> {};

TEST_P(StockRefused, NamesTheField) {
  const auto packs = allowedPacks(GetParam().stock);
  ASSERT_FALSE(packs.has_value());
  EXPECT_EQ(packs.error().key, GetParam().key);
  EXPECT_EQ(packs.error().field, GetParam().field);
}

ShimStock wideStock() {
  ShimStock stock;
  for (int i = 0; i < 40; ++i) {
    stock.sizes.push_back({Length::fromSi(1e-4 + 1.7e-6 * i + 1e-9 * i * i), std::nullopt});
  }
  stock.maxCount = 50;
  return stock;
}

INSTANTIATE_TEST_SUITE_P(
    Inputs, StockRefused,
    testing::Values(
        BadStock{"NoSizes", {{}, millimetres(1), 3}, "shims.no_sizes", "shim_sizes"},
        BadStock{"ZeroSize", stockOf({0.2, 0.0}, 1, 3), "shims.not_positive", "shim_sizes"},
        BadStock{"NegativeSize", stockOf({-0.2}, 1, 3), "shims.not_positive", "shim_sizes"},
        BadStock{"SizeNotANumber", stockOf({std::nan("")}, 1, 3), "shims.not_positive",
                 "shim_sizes"},
        BadStock{"ThinnerThanAMicrometre", stockOf({0.0002}, 1, 3), "shims.not_positive",
                 "shim_sizes"},
        BadStock{"NegativeOnHand",
                 {{{millimetres(0.2), -1}}, millimetres(1), 3},
                 "shims.not_positive",
                 "on_hand"},
        BadStock{"NoLargestPack", stockOf({0.2}, 0, 3), "shims.not_positive", "max_pack"},
        BadStock{"EndlessLargestPack", stockOf({0.2}, HUGE_VAL, 3), "shims.not_positive",
                 "max_pack"},
        BadStock{"NoShimInAPack", stockOf({0.2}, 1, 0), "shims.not_positive", "max_count"},
        BadStock{"AThousandInAPack", stockOf({0.2}, 1, 1000), "shims.too_many_in_pack",
                 "max_count"},
        BadStock{"TooManyPacks", wideStock(), "shims.too_many_packs", "shim_sizes"}),
    [](const auto& row) { return row.param.name; });

double next(double current, ShimEffect effect, ForceDirection direction, double sameWithin = 0) {
  const auto packs = allowedPacks(stockOf({0.8, 0.9, 1.0}, 1.0, 1));
  const auto pack =
      nextPack(*packs, {millimetres(current), effect, direction, millimetres(sameWithin)});
  return pack ? inMillimetres(pack->total) : 0.0;
}

// Direction of the worked rows for both layouts, from the dimension chain: interference = (bearings
// + pin + inner shims) - (housing depth + flange shims). A pull that is too low at a flange pack of
// 0.90 asks for 0.80, shims between pin and cap for the thicker one.
TEST(NextPack, ThinnerRaisesUnderTheFlange) {
  EXPECT_NEAR(next(0.9, ShimEffect::ThinnerRaises, ForceDirection::RaiseForce), 0.8, 1e-9);
  EXPECT_NEAR(next(0.9, ShimEffect::ThinnerRaises, ForceDirection::LowerForce), 1.0, 1e-9);
}

TEST(NextPack, ThickerRaisesInside) {
  EXPECT_NEAR(next(0.9, ShimEffect::ThickerRaises, ForceDirection::RaiseForce), 1.0, 1e-9);
  EXPECT_NEAR(next(0.9, ShimEffect::ThickerRaises, ForceDirection::LowerForce), 0.8, 1e-9);
}

TEST(NextPack, NothingBeyondTheLastPack) {
  EXPECT_EQ(next(0.8, ShimEffect::ThinnerRaises, ForceDirection::RaiseForce), 0.0);
  EXPECT_EQ(next(1.0, ShimEffect::ThickerRaises, ForceDirection::RaiseForce), 0.0);
}

TEST(NextPack, AFoundPackNeedNotBeOneOfThem) {
  EXPECT_NEAR(next(0.84, ShimEffect::ThinnerRaises, ForceDirection::RaiseForce), 0.8, 1e-9);
  EXPECT_NEAR(next(0.84, ShimEffect::ThickerRaises, ForceDirection::RaiseForce), 0.9, 1e-9);
  EXPECT_NEAR(next(2.5, ShimEffect::ThinnerRaises, ForceDirection::RaiseForce), 1.0, 1e-9);
}

TEST(NextPack, AMicrometersDoubtIsNoStep) {
  EXPECT_NEAR(next(0.905, ShimEffect::ThinnerRaises, ForceDirection::RaiseForce), 0.9, 1e-9);
  EXPECT_NEAR(next(0.905, ShimEffect::ThinnerRaises, ForceDirection::RaiseForce, 0.01), 0.8, 1e-9);
}

TEST(NextPack, ThereAndBackIsTheSamePack) {
  const auto packs = allowedPacks(stockOf({0.05, 0.13, 0.25}, 1.0, 5));
  ASSERT_TRUE(packs.has_value());
  for (std::size_t i = 0; i + 1 < packs->size(); ++i) {
    const auto up = nextPack(
        *packs, {packs->at(i).total, ShimEffect::ThickerRaises, ForceDirection::RaiseForce, {}});
    ASSERT_TRUE(up.has_value());
    EXPECT_EQ(up->total, packs->at(i + 1).total);
    const auto back =
        nextPack(*packs, {up->total, ShimEffect::ThickerRaises, ForceDirection::LowerForce, {}});
    ASSERT_TRUE(back.has_value());
    EXPECT_EQ(back->total, packs->at(i).total);
  }
}

struct TypedStack {
  std::string text;
  std::vector<double> shims;  // mm
};

class StackRead : public testing::TestWithParam<TypedStack> {};

TEST_P(StackRead, ShimsAndTotal) {
  const auto stack = parseStack(GetParam().text, "pack found");
  ASSERT_TRUE(stack.has_value()) << stack.error().key;
  EXPECT_THAT(millimetresOf(stack->shims),
              testing::Pointwise(testing::DoubleNear(1e-12), GetParam().shims));
  double sum = 0;
  for (const double shim : GetParam().shims) sum += shim;
  EXPECT_NEAR(inMillimetres(stack->total), sum, 1e-12);
  EXPECT_EQ(stack->typed.size(), stack->shims.size());
}

// 1 thou = 0.0254 mm exactly (1959 yard and pound agreement).
INSTANTIATE_TEST_SUITE_P(Typed, StackRead,
                         testing::Values(TypedStack{"0.50 + 0.25", {0.5, 0.25}},
                                         TypedStack{"0.50+0.25", {0.5, 0.25}},
                                         TypedStack{"0,5 0,25", {0.5, 0.25}},
                                         TypedStack{"0.5; 0.25 ; 0.1", {0.5, 0.25, 0.1}},
                                         TypedStack{"0.75", {0.75}},
                                         TypedStack{"0.5 mm + 0.25 mm", {0.5, 0.25}},
                                         TypedStack{"20 + 10 thou", {0.508, 0.254}},
                                         TypedStack{"  0,13+0,13 + 0,25 mm ", {0.13, 0.13, 0.25}}));

struct BadStack {
  std::string text;
  std::string key;
  std::string position;
};

class StackRefused : public testing::TestWithParam<BadStack> {};

TEST_P(StackRefused, NamesFieldAndPlace) {
  const auto stack = parseStack(GetParam().text, "pack found");
  ASSERT_FALSE(stack.has_value());
  EXPECT_EQ(stack.error().key, GetParam().key);
  EXPECT_EQ(stack.error().field, "pack found");
  EXPECT_EQ(stack.error().detail("position"), GetParam().position);
}

INSTANTIATE_TEST_SUITE_P(Typed, StackRefused,
                         testing::Values(BadStack{"", "units.empty", "1"},
                                         BadStack{"0.5 +", "shims.empty_place", "2"},
                                         BadStack{"+ 0.5", "shims.empty_place", "1"},
                                         BadStack{"0.5 + + 0.2", "shims.empty_place", "2"},
                                         BadStack{"0.5 + 0", "shims.not_positive", "2"},
                                         BadStack{"-0.5", "shims.not_positive", "1"},
                                         BadStack{"0.5 + two", "units.not_a_number", "2"},
                                         BadStack{"0.5,0.25", "units.two_marks", "1"},
                                         BadStack{"0.5 + 3 N", "units.wrong_kind", "2"}));

}  // namespace
}  // namespace sw::mechanics
