// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bolts/tightening_order.h"

#include <gmock/gmock.h>
#include <algorithm>
#include <numeric>

namespace sw::mechanics {
namespace {

using testing::ElementsAre;

std::vector<int> order(int fasteners) {
  return tighteningOrder(fasteners).value();
}

/// How far apart two fasteners are on the circle, by walking it both ways.
int apart(int a, int b, int fasteners) {
  int clockwise = 0, other = 0;
  for (int at = a; at != b; at = at % fasteners + 1) ++clockwise;
  for (int at = b; at != a; at = at % fasteners + 1) ++other;
  return std::min(clockwise, other);
}

int shortestMove(const std::vector<int>& order) {
  int shortest = static_cast<int>(order.size());
  for (std::size_t i = 1; i < order.size(); ++i) {
    shortest = std::min(shortest, apart(order[i - 1], order[i], static_cast<int>(order.size())));
  }
  return shortest;
}

/// The longest shortest move of all orders that begin with 1, by trying every one.
int bestShortestMove(int fasteners) {
  std::vector<int> any(static_cast<std::size_t>(fasteners));
  std::iota(any.begin(), any.end(), 1);
  int best = 0;
  do {
    best = std::max(best, shortestMove(any));
  } while (std::next_permutation(any.begin() + 1, any.end()));
  return best;
}

// Common practice, no source.
TEST(TighteningOrder, TheOrdersTheTradeUses) {
  EXPECT_THAT(order(4), ElementsAre(1, 3, 2, 4));
  EXPECT_THAT(order(5), ElementsAre(1, 3, 5, 2, 4));
  EXPECT_THAT(order(6), ElementsAre(1, 4, 2, 5, 3, 6));
}

// Practice at pipe flanges, from memory.
TEST(TighteningOrder, EightAndTwelveGoByQuarters) {
  EXPECT_THAT(order(8), ElementsAre(1, 5, 3, 7, 2, 6, 4, 8));
  EXPECT_THAT(order(12), ElementsAre(1, 7, 4, 10, 2, 8, 5, 11, 3, 9, 6, 12));
}

TEST(TighteningOrder, FewFastenersLeaveNoChoice) {
  EXPECT_THAT(order(1), ElementsAre(1));
  EXPECT_THAT(order(2), ElementsAre(1, 2));
  EXPECT_THAT(order(3), ElementsAre(1, 2, 3));
}

TEST(TighteningOrder, EachOnceBeginningWithTheFirst) {
  for (int n = 1; n <= kMostFasteners; ++n) {
    std::vector<int> all(static_cast<std::size_t>(n));
    std::iota(all.begin(), all.end(), 1);
    EXPECT_THAT(order(n), testing::UnorderedElementsAreArray(all)) << n;
    EXPECT_EQ(order(n).front(), 1) << n;
  }
}

TEST(TighteningOrder, NeverToANeighbourWhereThatIsPossible) {
  for (int n = 5; n <= kMostFasteners; ++n) EXPECT_GE(shortestMove(order(n)), 2) << n;
  // With four, every order goes to a neighbour at least once.
  EXPECT_EQ(bestShortestMove(4), 1);
}

TEST(TighteningOrder, OddNumbersMoveAsFarAsAnyOrderCan) {
  for (const int n : {3, 5, 7, 9}) EXPECT_EQ(shortestMove(order(n)), bestShortestMove(n)) << n;
  EXPECT_EQ(shortestMove(order(11)), 5);  // half of eleven: nothing is further away
}

TEST(TighteningOrder, EvenNumbersGoStraightAcrossEverySecondMove) {
  for (int n = 2; n <= kMostFasteners; n += 2) {
    const auto list = order(n);
    for (std::size_t i = 1; i < list.size(); i += 2) {
      EXPECT_EQ(apart(list[i - 1], list[i], n), n / 2) << n << " at " << i;
    }
  }
}

TEST(TighteningOrder, TheFirstFourStandInTheFourQuarters) {
  for (const int n : {4, 8, 12}) {
    auto list = order(n);
    list.resize(4);
    std::sort(list.begin(), list.end());
    EXPECT_THAT(list, ElementsAre(1, 1 + n / 4, 1 + n / 2, 1 + 3 * n / 4)) << n;
  }
}

TEST(TighteningOrder, OutsideOneToTwelveThereIsNone) {
  for (const int n : {-1, 0, 13, 1000}) {
    const auto refused = tighteningOrder(n);
    ASSERT_FALSE(refused) << n;
    EXPECT_EQ(refused.error().code, ErrorCode::OutOfRange);
    EXPECT_EQ(refused.error().key, "tightening.bad_count");
    EXPECT_EQ(refused.error().detail("text"), std::to_string(n));
  }
}

}  // namespace
}  // namespace sw::mechanics
