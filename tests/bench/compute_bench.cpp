// SPDX-License-Identifier: GPL-3.0-or-later
// From a keystroke on the bench to its answer: each calculation on its example, with the picture
// laid out for a page, and the table of shim packs from six sizes. Budget: one 60 Hz frame (16.7
// ms), the shim table 2 ms.
#include <benchmark/benchmark.h>

#include <nlohmann/json.hpp>

#include "compute/calculation.h"
#include "mechanics/swivel/pack_advice.h"
#include "model/json.h"

namespace sw {
namespace {

void answerExample(benchmark::State& state, const compute::Calculation* calculation) {
  const auto input = model::parseJson(calculation->describe().exampleInput).value();
  for (auto _ : state) {
    auto answer = compute::answerTo(*calculation, input);
    if (answer && answer->draw) benchmark::DoNotOptimize(answer->draw({46, 26}));
    benchmark::DoNotOptimize(answer);
  }
}

mechanics::PackPulls pulls(double pack, std::initializer_list<double> forces) {
  mechanics::PackPulls pulled{millimetres(pack), {}};
  for (const double force : forces) pulled.pulls.push_back(newtons(force));
  return pulled;
}

/// Six sizes, up to five shims, three packs pulled.
mechanics::PackQuestion sixSizes() {
  mechanics::PackQuestion question;
  for (const auto& [thickness, onHand] :
       {std::pair{0.05, 3}, {0.075, 2}, {0.1, 3}, {0.13, 2}, {0.25, 3}, {0.5, 2}}) {
    question.stock.sizes.push_back({millimetres(thickness), onHand});
  }
  question.stock.maxCount = 5;
  question.stock.maxPack = millimetres(1.5);
  question.limit = {15.0, 22.0};
  question.terms.instrumentUncertainty = newtons(0.3);
  question.terms.graduationUncertainty = newtons(0.14);
  question.measured = {pulls(1.1, {6, 6.5, 6, 6, 6.5}), pulls(1.05, {8, 8.5, 8, 8.5, 8}),
                       pulls(0.95, {12.5, 12.5, 13, 12, 12.5})};
  return question;
}

void shimTable(benchmark::State& state) {
  const auto question = sixSizes();
  std::size_t rows = 0;
  for (auto _ : state) rows = mechanics::advisePack(question).value().rows.size();
  state.counters["packs"] = static_cast<double>(rows);
}
BENCHMARK(shimTable)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace sw

int main(int argc, char** argv) {
  for (const auto& calculation : sw::compute::calculations()) {
    benchmark::RegisterBenchmark(std::string(calculation.name).c_str(), sw::answerExample,
                                 &calculation)
        ->Unit(benchmark::kMillisecond);
  }
  benchmark::Initialize(&argc, argv);
  benchmark::RunSpecifiedBenchmarks();
}
