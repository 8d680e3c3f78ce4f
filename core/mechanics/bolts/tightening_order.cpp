// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bolts/tightening_order.h"

#include <string>

namespace sw::mechanics {

namespace {

std::vector<int> orderOf(int count) {
  std::vector<int> order;
  if (count % 2 == 0) {
    const int half = count / 2;
    for (const int first : orderOf(half)) {
      order.push_back(first);
      order.push_back(first + half);
    }
    return order;
  }
  const int move = (count - 1) / 2;  // shares no factor with count, so that every one is reached
  for (int i = 0; i < count; ++i) order.push_back(i * move % count + 1);
  return order;
}

}  // namespace

Result<std::vector<int>> tighteningOrder(int fasteners) {
  if (fasteners < 1 || fasteners > kMostFasteners) {
    return fail(ErrorCode::OutOfRange, "tightening.bad_count", "fasteners",
                {{"text", std::to_string(fasteners)}, {"most", std::to_string(kMostFasteners)}});
  }
  return orderOf(fasteners);
}

}  // namespace sw::mechanics
