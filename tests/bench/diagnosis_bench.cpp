// SPDX-License-Identifier: GPL-3.0-or-later
// The order of checks that costs least: random problems of six set-up states, the shipped causes in
// a full shop, and "next-check" from its text to its answer, with the question worth asking first.
#include <benchmark/benchmark.h>

#include <nlohmann/json.hpp>
#include <random>
#include <string_view>
#include <vector>

#include "compute/calculation.h"
#include "diagnosis/learning.h"
#include "diagnosis/ranking.h"
#include "diagnosis/shipped_causes.h"
#include "invented_table.h"
#include "model/json.h"

namespace sw {
namespace {

void randomPlan(benchmark::State& state) {
  const auto checks = static_cast<std::size_t>(state.range(0));
  // Giving up costs so much that no plan is empty.
  const auto problem = diagnosis::testing::randomProblem(checks, 7, 1000);
  for (auto _ : state) benchmark::DoNotOptimize(diagnosis::bestPlan(problem));
}
BENCHMARK(randomPlan)->Arg(15)->Arg(18)->Unit(benchmark::kMillisecond);

void shippedPlan(benchmark::State& state) {
  const auto& file = diagnosis::shippedCauses();
  const auto& shop = file.presets[static_cast<std::size_t>(state.range(0))];
  auto problem =
      problemFor(file, {shop.support, std::nullopt, shop.equipment, {}, 0, file.fallbackMinutes});
  problem.causes = probabilities(file.table, {});
  for (auto _ : state) benchmark::DoNotOptimize(bestPlan(problem));
  state.SetLabel(shop.key);
}
BENCHMARK(shippedPlan)->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);

void nextCheck(benchmark::State& state, std::string_view text) {
  const auto calculation = compute::findCalculation("next-check").value();
  const auto input = model::parseJson(text).value();
  for (auto _ : state) benchmark::DoNotOptimize(compute::answerTo(calculation, input));
}
BENCHMARK_CAPTURE(nextCheck, nothing_known, R"({})")->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(nextCheck, four_answers, R"({"answers": {"steady": "no", "after_bump": "yes",
    "follows_speed": "no", "wanders": "yes"}})")
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(nextCheck, play_was_looked_for, R"({"answers": {"after_bump": "yes"},
    "shop": "no_balancer", "checks": [{"check": "walk_round", "result": "nothing"},
    {"check": "joints", "result": "nothing"}, {"check": "panhard", "result": "nothing"},
    {"check": "arm_bushes", "result": "nothing"}]})")
    ->Unit(benchmark::kMillisecond);

/// A table chosen from this many ended jobs, answers and causes by lot.
void learning(benchmark::State& state) {
  const auto& table = diagnosis::shippedCauses().table;
  std::mt19937 random(1);
  std::vector<diagnosis::ClosedJob> jobs;
  for (int i = 0; i < state.range(0); ++i) {
    diagnosis::ClosedJob job{{random() % table.causes.size()}, {}};
    for (const auto& feature : table.features) {
      job.answers.emplace_back(random() % feature.answers.size());
    }
    jobs.push_back(std::move(job));
  }
  for (auto _ : state) benchmark::DoNotOptimize(chooseTable(table, jobs));
}
BENCHMARK(learning)->Arg(20)->Arg(2000)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace sw

BENCHMARK_MAIN();
