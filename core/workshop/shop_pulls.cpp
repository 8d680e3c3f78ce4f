// SPDX-License-Identifier: GPL-3.0-or-later
#include "workshop/shop_pulls.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "workshop/bench_input.h"

namespace sw::workshop {

namespace {

using model::Json;

constexpr std::size_t kMostSides = 24;
constexpr int kMostJobsRead = 40;

bool alike(const model::AxleArrangement& a, const model::AxleArrangement& b) {
  return a.shimLayout.has_value() && a.shimLayout == b.shimLayout &&
         a.swivelBearing == b.swivelBearing;
}

/// Dry packs without the words of their state.
Json dryOnly(const Json& packs) {
  Json dry = Json::array();
  for (Json pack : packs) {
    const std::string state = pack.value("state", std::string{});
    if (!state.empty() && !state.ends_with("dry")) continue;
    pack.erase("state");
    dry.push_back(std::move(pack));
  }
  return dry;
}

}  // namespace

Result<Json> closedPulls(const Workshop& workshop, const JobState& job) {
  const auto shop = workshop.shop();
  if (!shop) return failAs(shop);
  auto jobs = workshop.book().jobs();
  if (!jobs) return failAs(jobs);
  const auto arm = pullingArm(job, model::Side::Left);
  Json sides = Json::array();
  int read = 0;
  for (auto row = jobs->rbegin(); row != jobs->rend(); ++row) {
    if (!row->closedAt || row->job == job.job) continue;
    const auto* vehicle = (*shop)->vehicle(row->vehicle);
    if (vehicle == nullptr || !alike(vehicle->fact.arrangement, job.vehicle.fact.arrangement)) {
      continue;
    }
    if (sides.size() >= kMostSides || ++read > kMostJobsRead) break;
    const auto closed = workshop.job(row->job);
    if (!closed) return failAs(closed);
    for (const model::Side side : {model::Side::Left, model::Side::Right}) {
      Json packs = dryOnly(pulledPacks(*closed, side, arm));
      if (!packs.empty()) sides.push_back({{"packs", std::move(packs)}});
    }
  }
  return sides;
}

}  // namespace sw::workshop
