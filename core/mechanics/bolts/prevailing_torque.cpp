// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bolts/prevailing_torque.h"

#include <algorithm>

namespace sw::mechanics {

namespace {

constexpr double kSameTorque = 1e-9;  // relative: a figure typed in another unit is still it

struct BreakawayRow {
  std::string_view thread;
  double poundInches;
};
constexpr auto kBreakaway = std::to_array<BreakawayRow>({{"5/16-24 UNF", 6.5},
                                                         {"3/8-24 UNF", 9.5},
                                                         {"7/16-20 UNF", 14},
                                                         {"1/2-20 UNF", 18},
                                                         {"9/16-18 UNF", 24}});

bool atLeast(Torque torque, Torque limit) {
  return torque.si() >= limit.si() * (1 - kSameTorque);
}

bool isAdded(const TorqueRange& figure, Torque drag, DragRule rule) {
  switch (rule) {
    case DragRule::Included:
      return false;
    case DragRule::AddAlways:
      return true;
    case DragRule::AddIfThird:
      return atLeast(drag, dragThreshold(figure));
  }
  return true;
}

}  // namespace

Result<FinalTorque> finalTorque(const TorqueRange& figure, Torque drag, DragRule rule) {
  if (auto error = findBadRange(figure)) return tl::make_unexpected(std::move(*error));
  if (auto error = NumberChecks().notNegative("drag", drag).error()) {
    return tl::make_unexpected(std::move(*error));
  }
  FinalTorque final{figure, {}};
  if (!isAdded(figure, drag, rule)) return final;
  final.added = drag;
  final.torque.least = figure.least + drag;
  if (figure.most) final.torque.most = *figure.most + drag;
  return final;
}

std::optional<Torque> leastBreakaway(const Thread& thread) {
  const auto found = std::find_if(kBreakaway.begin(), kBreakaway.end(),
                                  [&](const auto& row) { return row.thread == thread.name; });
  if (found == kBreakaway.end()) return std::nullopt;
  return poundFeet(found->poundInches / 12);
}

Result<UsedNutVerdict> judgeUsedNut(const Thread& thread, Torque breakaway) {
  if (auto error = NumberChecks().notNegative("breakaway_torque", breakaway).error()) {
    return tl::make_unexpected(std::move(*error));
  }
  const auto least = leastBreakaway(thread);
  if (!least) return UsedNutVerdict::NoLimit;
  return atLeast(breakaway, *least) ? UsedNutVerdict::Reuse : UsedNutVerdict::Discard;
}

}  // namespace sw::mechanics
