// SPDX-License-Identifier: GPL-3.0-or-later
#include "figure/vectors.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace sw::figure {
namespace {

// Plane geometry.
TEST(VectorsTest, BearingsGoClockwiseFromTheTop) {
  EXPECT_NEAR(bearing(Point{0, 0}, Point{0, -1}), 0, 1e-12);
  EXPECT_NEAR(bearing(Point{0, 0}, Point{1, 0}), 90, 1e-12);
  EXPECT_NEAR(bearing(Point{0, 0}, Point{0, 1}), 180, 1e-12);
  for (const double degrees : {0.0, 33.0, 171.0, 250.0}) {
    const Point there = onCircle({3, 4}, 2.0, degrees);
    EXPECT_NEAR(distance({3, 4}, there), 2.0, 1e-12);
    EXPECT_NEAR(std::remainder(bearing({3, 4}, there) - degrees, 360.0), 0, 1e-9);
    const Point onward = turned(onCircle({3, 4}, 2.0, 0), {3, 4}, degrees);
    EXPECT_NEAR(distance(onward, there), 0, 1e-12);
  }
}

TEST(VectorsTest, AScaleKeepsProportionsAndStaysInItsBox) {
  const Scale scale({1, 2, 21, 8}, {-100, 100}, {0, 100});
  const auto low = scale.at(-100, 0);
  const auto high = scale.at(100, 100);
  EXPECT_NEAR((high.x - low.x) / 200, (low.y - high.y) / 100, 1e-12);
  EXPECT_NEAR(high.x - low.x, scale.em(200), 1e-12);
  EXPECT_GE(low.x, 1 - 1e-9);
  EXPECT_LE(high.x, 21 + 1e-9);
  EXPECT_NEAR(high.y, 2, 1e-12);
  EXPECT_NEAR(low.y, 8, 1e-12);
}

TEST(VectorsTest, AnArrowEndsInItsTipAndNowhereBeyond) {
  Figure figure;
  add(figure, Arrow{{0, 0}, {5, 0}});
  double farthest = 0;
  for (const auto& item : figure.items) {
    for (const auto& point : std::get<Path>(item).points) {
      farthest = std::max(farthest, point.x);
    }
  }
  EXPECT_NEAR(farthest, 5, 1e-12);
}

}  // namespace
}  // namespace sw::figure
