// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/swivel/first_pack.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

// What the first pack should be follows from the dimension chain: interference = (bearings + pin +
// inner shims) - (housing depth + flange shims). That gaps are measured with a feeler at every
// bolt, and that unequal gaps mean dirt or a tilted shim, is common practice, no source.

namespace sw::mechanics {
namespace {

std::vector<Length> mm(std::initializer_list<double> values) {
  std::vector<Length> lengths;
  for (const double value : values) lengths.push_back(millimetres(value));
  return lengths;
}

FirstPackInput nip(std::initializer_list<double> gaps) {
  FirstPackInput input;
  input.readings = mm(gaps);
  input.oneReading = millimetres(0.01);
  input.stock.sizes = {{millimetres(0.08), {}}, {millimetres(0.13), {}}, {millimetres(0.4), {}}};
  input.stock.maxCount = 6;
  input.stock.maxPack = millimetres(2);
  return input;
}

FirstPackInput floating(ShimEffect effect) {
  FirstPackInput input = nip({0.12, 0.14, 0.13});
  input.method = FirstPackMethod::EndFloat;
  input.effect = effect;
  input.found = millimetres(0.92);
  input.foundUncertainty = millimetres(0.004);
  input.allowance = millimetres(0.05);
  return input;
}

TEST(FirstPack, TheGapIsThePack) {
  const auto first = firstPack(nip({0.62, 0.60, 0.61, 0.61})).value();
  EXPECT_NEAR(inMillimetres(first.wanted), 0.61, 1e-12);
  EXPECT_EQ(first.gaps->pattern, GapPattern::Even);
  // 0.08 x 6 + ... the nearest sum of 0.08, 0.13 and 0.4: 0.4 + 0.08 + 0.13 = 0.61.
  EXPECT_NEAR(inMillimetres(first.packs.front().pack.total), 0.61, 1e-9);
  EXPECT_EQ(first.packs.size(), 3U);
}

TEST(FirstPack, FloatChangesThePackTheWayTheLayoutSays) {
  // Float 0.13 and 0.05 more: thinner under the flange, thicker between pin and cap.
  EXPECT_NEAR(inMillimetres(firstPack(floating(ShimEffect::ThinnerRaises)).value().wanted),
              0.92 - 0.18, 1e-12);
  EXPECT_NEAR(inMillimetres(firstPack(floating(ShimEffect::ThickerRaises)).value().wanted),
              0.92 + 0.18, 1e-12);
}

TEST(FirstPack, UncertaintyCountsOneReadingOnce) {
  // s = 0.01, n = 3: hypot(0.01 / sqrt(3), 0.01, 0.004), by hand.
  const auto first = firstPack(floating(ShimEffect::ThinnerRaises)).value();
  EXPECT_NEAR(inMillimetres(first.standardUncertainty), std::sqrt(1e-4 / 3 + 1e-4 + 1.6e-5), 1e-9);
}

TEST(FirstPack, ATiltNamesTheSideOfTheWidestGap) {
  for (int bolts : {4, 5, 6, 8}) {
    for (int at = 0; at < bolts; ++at) {
      FirstPackInput input = nip({});
      for (int i = 0; i < bolts; ++i) {
        const double turn = 2 * std::numbers::pi * (i - at) / bolts;
        input.readings.push_back(millimetres(0.7 + 0.06 * std::cos(turn)));
      }
      const auto first = firstPack(input).value();
      EXPECT_EQ(first.gaps->pattern, GapPattern::Tilted) << bolts;
      EXPECT_EQ(first.gaps->atBolt, at + 1) << bolts;
      EXPECT_NEAR(inMillimetres(first.gaps->tilt), 0.12, 1e-9);
      EXPECT_NEAR(inMillimetres(first.wanted), 0.7, 1e-9);
      // A tilt is no scatter.
      EXPECT_NEAR(inMillimetres(first.standardUncertainty), 0.01, 1e-9);
    }
  }
}

TEST(FirstPack, OneBoltOffIsNamed) {
  const auto first = firstPack(nip({0.60, 0.61, 0.60, 0.60, 0.75, 0.61, 0.60, 0.60})).value();
  EXPECT_EQ(first.gaps->pattern, GapPattern::OneBoltOff);
  EXPECT_EQ(first.gaps->atBolt, 5);
  EXPECT_NEAR(inMillimetres(first.gaps->range), 0.15, 1e-9);
}

TEST(FirstPack, SmallDifferencesAreEven) {
  EXPECT_EQ(firstPack(nip({0.60, 0.64, 0.62, 0.61})).value().gaps->pattern, GapPattern::Even);
  // A coarse feeler cannot tell 0.06.
  FirstPackInput coarse = nip({0.60, 0.66, 0.62, 0.61});
  coarse.oneReading = millimetres(0.03);
  EXPECT_EQ(firstPack(coarse).value().gaps->pattern, GapPattern::Even);
  coarse.oneReading = millimetres(0.005);
  EXPECT_NE(firstPack(coarse).value().gaps->pattern, GapPattern::Even);
}

TEST(FirstPack, TheStackFoundIsPutTogetherFromTheShims) {
  FirstPackInput input = floating(ShimEffect::ThinnerRaises);
  const auto first = firstPack(input).value();
  // 0.92 is 0.4 + 4 x 0.13.
  ASSERT_TRUE(first.foundStack);
  EXPECT_NEAR(inMillimetres(first.foundStack->total), 0.92, 1e-9);
  EXPECT_EQ(first.foundStack->count(), 5);
  input.found = millimetres(2.2);
  EXPECT_FALSE(firstPack(input).value().foundStack);
}

TEST(FirstPack, SplitKeepsItsDifferenceAndItsTotal) {
  FirstPackInput input = floating(ShimEffect::ThinnerRaises);
  input.split = PackSplit{millimetres(0.53), millimetres(0.39)};
  const auto first = firstPack(input).value();
  for (const SplitPack& offered : first.packs) {
    ASSERT_TRUE(offered.split);
    EXPECT_NEAR((offered.split->top + offered.split->bottom).si(), offered.pack.total.si(), 1e-12);
    // Every way of dealing these shims, by brute force.
    double nearest = 1e9;
    const auto& shims = offered.pack.shims;
    for (unsigned choice = 0; choice < (1U << shims.size()); ++choice) {
      double top = 0;
      for (std::size_t i = 0; i < shims.size(); ++i) top += (choice >> i & 1U) * shims[i].si();
      const double difference = top - (offered.pack.total.si() - top);
      nearest = std::min(nearest, std::abs(difference - 0.00014));
    }
    const double got = (offered.split->top - offered.split->bottom).si();
    EXPECT_NEAR(std::abs(got - 0.00014), nearest, 1e-9);
  }
}

TEST(FirstPack, RefusesWhatCannotBe) {
  EXPECT_EQ(firstPack(nip({})).error().key, "first_pack.no_readings");
  EXPECT_EQ(firstPack(nip({0.6})).error().key, "first_pack.bolts");
  EXPECT_EQ(firstPack(nip({0.6, -0.1})).error().key, "first_pack.negative");
  FirstPackInput inner = nip({0.6, 0.6});
  inner.effect = ShimEffect::ThickerRaises;
  EXPECT_EQ(firstPack(inner).error().key, "first_pack.nip_needs_flange");
  FirstPackInput loose = floating(ShimEffect::ThinnerRaises);
  loose.found.reset();
  EXPECT_EQ(firstPack(loose).error().key, "first_pack.no_found");
  loose.found = millimetres(0.1);
  EXPECT_EQ(firstPack(loose).error().key, "first_pack.nothing_left");
}

}  // namespace
}  // namespace sw::mechanics
