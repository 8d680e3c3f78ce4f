// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bolts/tightening_rounds.h"

#include <algorithm>
#include <functional>
#include <string>

#include "mechanics/number_checks.h"

namespace sw::mechanics {

namespace {

bool areStages(std::span<const double> stages) {
  if (stages.empty() || stages.size() > kMostStages) return false;
  const bool rising =
      std::adjacent_find(stages.begin(), stages.end(), std::not_fn(std::less<>())) == stages.end();
  return rising && stages.front() > 0 && stages.back() == 1;
}

}  // namespace

Result<std::vector<TighteningRound>> tighteningRounds(Torque torque,
                                                      std::span<const double> stages) {
  if (auto error = NumberChecks().positive("torque", torque).error()) {
    return tl::make_unexpected(std::move(*error));
  }
  if (!areStages(stages)) {
    return fail(ErrorCode::OutOfRange, "bolts.bad_stages", "stages",
                {{"most", std::to_string(kMostStages)}});
  }
  std::vector<TighteningRound> rounds;
  for (const double share : stages) {
    rounds.push_back({RoundPurpose::Tighten, share, share * torque});
  }
  rounds.push_back({RoundPurpose::Confirm, 1, torque});
  return rounds;
}

}  // namespace sw::mechanics
