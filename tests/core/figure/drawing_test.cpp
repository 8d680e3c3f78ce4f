// SPDX-License-Identifier: GPL-3.0-or-later
#include "figure/drawing.h"
#include "figure/number_line.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace sw::figure {
namespace {

const Path& pathAt(const Figure& figure, std::size_t at) {
  return std::get<Path>(figure.items.at(at));
}

TEST(DrawingTest, HatchStaysWithinItsRectangleAndSlantsByHalfARightAngle) {
  Figure figure;
  hatch(figure, {1, 2}, {9, 5}, Tone::Material, 0.5);
  // Plane geometry: the lines x + y = const lie 0.5 apart, over (8 + 3) / sqrt(2).
  const double lines = 11 / std::numbers::sqrt2 / 0.5;
  EXPECT_NEAR(static_cast<double>(figure.items.size()), lines, 1.0);
  for (std::size_t i = 0; i < figure.items.size(); ++i) {
    const auto& points = pathAt(figure, i).points;
    ASSERT_EQ(points.size(), 2U);
    EXPECT_NEAR(points[0].x + points[0].y, points[1].x + points[1].y, 1e-12);
    for (const Point& point : points) {
      EXPECT_GE(point.x, 1 - 1e-12);
      EXPECT_LE(point.x, 9 + 1e-12);
      EXPECT_GE(point.y, 2 - 1e-12);
      EXPECT_LE(point.y, 5 + 1e-12);
    }
  }
}

TEST(DrawingTest, AnArrowEndsAtItsTipAndAnArrowOfNothingIsNone) {
  Figure figure;
  add(figure, Arrow{{0, 0}, {3, 4}, Tone::Ink, 0.16});
  ASSERT_EQ(figure.items.size(), 2U);
  const Point tip = pathAt(figure, 1).points.front();
  EXPECT_NEAR(tip.x, 3, 1e-12);
  EXPECT_NEAR(tip.y, 4, 1e-12);
  add(figure, Arrow{{1, 1}, {1, 1}, Tone::Ink, 0.16});
  EXPECT_EQ(figure.items.size(), 2U);
}

TEST(DrawingTest, AShortArrowKeepsAShaft) {
  Figure figure;
  add(figure, Arrow{{0, 0}, {0.2, 0}, Tone::Ink, 0.16});
  const auto& shaft = pathAt(figure, 0).points;
  EXPECT_GT(shaft[1].x - shaft[0].x, 0.05);
}

TEST(DrawingTest, ATurnArrowEndsOnItsCircleEitherWay) {
  for (const double to : {70.0, -70.0}) {
    Figure figure;
    add(figure, Turn{{10, 10}, 5, 0, to, Tone::Ink, 0.16});
    const Point tip = pathAt(figure, 1).points.front();
    const Point there = onCircle({10, 10}, 5, to);
    EXPECT_NEAR(tip.x, there.x, 1e-12);
    EXPECT_NEAR(tip.y, there.y, 1e-12);
  }
}

TEST(DrawingTest, ARoundedBoxFillsItsSizeAndTurnsAboutItsMiddle) {
  const auto extent = [](const Path& path) {
    double width = 0;
    double height = 0;
    for (const Point& point : path.points) {
      width = std::max(width, std::abs(point.x - 4));
      height = std::max(height, std::abs(point.y - 7));
    }
    return Size{width, height};
  };
  const Size upright = extent(roundedBox({4, 7}, {2, 6}, 0.5, 0, Tone::Ink, 0));
  EXPECT_NEAR(upright.width, 1, 1e-12);
  EXPECT_NEAR(upright.height, 3, 1e-12);
  const Size turned = extent(roundedBox({4, 7}, {2, 6}, 0.5, 90, Tone::Ink, 0));
  EXPECT_NEAR(turned.width, 3, 1e-12);
  EXPECT_NEAR(turned.height, 1, 1e-12);
}

TEST(DrawingTest, PlacingMovesEveryKindOfItem) {
  Figure part;
  part.add(line({0, 0}, {1, 1}, Tone::Ink));
  part.add(Mark{{2, 3}});
  part.add(Text{{4, 5}, "here"});
  Figure figure;
  place(figure, part, {10, 20});
  EXPECT_EQ(pathAt(figure, 0).points[1].x, 11);
  EXPECT_EQ(std::get<Mark>(figure.items[1]).at.y, 23);
  EXPECT_EQ(std::get<Text>(figure.items[2]).at.x, 14);
  EXPECT_EQ(std::get<Text>(figure.items[2]).at.y, 25);
}

TEST(NumberLineTest, WhatLiesOutsideIsBroughtOntoItsEnds) {
  const NumberLine scale(2, 42, {10, 20});
  EXPECT_NEAR(scale.at(15), 22, 1e-12);
  EXPECT_NEAR(scale.at(9), 2, 1e-12);
  EXPECT_NEAR(scale.at(1000), 42, 1e-12);
}

TEST(NumberLineTest, LikeRatiosAreAsLong) {
  const NumberLine scale(0, 40, {1, 100}, Spacing::Ratio);
  EXPECT_NEAR(scale.at(10), 20, 1e-12);
  EXPECT_NEAR(scale.at(1), 0, 1e-12);
}

TEST(DrawingTest, RoomIsCountedInLettersNotBytes) {
  EXPECT_DOUBLE_EQ(roomFor("a ± b"), roomFor("a + b"));
}

}  // namespace
}  // namespace sw::figure
