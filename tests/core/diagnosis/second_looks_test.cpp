// SPDX-License-Identifier: GPL-3.0-or-later
#include "diagnosis/second_looks.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

// Orders and expected cost worked outside of this program.

namespace sw::diagnosis {
namespace {

struct Looked {
  std::vector<std::size_t> order;  ///< numbered from 1
  double minutes = 0;              ///< expected, until it is found
};

Looked look(std::vector<Look> looks, int times) {
  Looked looked;
  double left = 1;
  for (int i = 0; i < times; ++i) {
    const auto next = nextLook(looks);
    if (!next) break;
    looked.order.push_back(*next + 1);
    looked.minutes += left * looks[*next].minutes;
    Look& one = looks[*next];
    left -=
        one.chance * std::pow(1 - one.detection, static_cast<double>(one.taken)) * one.detection;
    ++one.taken;
  }
  return looked;
}

TEST(SecondLooks, TwoPlacesOfUnequalDetection) {
  const auto looked = look({{.6, .5, 1}, {.4, .8, 1}}, 400);
  EXPECT_EQ(std::vector<std::size_t>(looked.order.begin(), looked.order.begin() + 10),
            (std::vector<std::size_t>{2, 1, 1, 1, 2, 1, 1, 2, 1, 1}));
  EXPECT_NEAR(looked.minutes, 2.679858, 1e-6);
}

TEST(SecondLooks, TheDearerPlaceWaits) {
  const auto looked = look({{.6, .5, 1}, {.4, .8, 2}}, 400);
  EXPECT_EQ(std::vector<std::size_t>(looked.order.begin(), looked.order.begin() + 10),
            (std::vector<std::size_t>{1, 2, 1, 1, 1, 2, 1, 1, 2, 1}));
  EXPECT_NEAR(looked.minutes, 3.579858, 1e-6);
}

TEST(SecondLooks, WhatCannotBeFoundIsNotLookedFor) {
  EXPECT_EQ(nextLook(std::vector<Look>{{.5, 0, 1}, {0, 1, 1}}), std::nullopt);
  EXPECT_EQ(nextLook(std::vector<Look>{{.5, 1, 1}, {.1, .5, 0}}), 1U);  // costs nothing
}

}  // namespace
}  // namespace sw::diagnosis
