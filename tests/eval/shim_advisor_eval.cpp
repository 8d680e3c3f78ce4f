// SPDX-License-Identifier: GPL-3.0-or-later
// Prints the tables of README.md, "What the shim advisor saves": the race over 10,000 simulated
// axles a layout, and how often its 95 % interval holds the truth.
#include <array>
#include <cstdio>

#include "shim_coverage.h"
#include "shim_race.h"

namespace {

constexpr int kShops = 250;  // of 40 axles
constexpr int kCoverageAxles = 10000;

void printRace(const char* layout, sw::mechanics::ShimEffect effect) {
  constexpr std::array kNames{"one step more", "advisor, own pulls", "advisor, shop's history",
                              "advisor, history and measured float"};
  const auto tallies = sw::eval::race(effect, kShops);
  for (std::size_t way = 0; way < sw::eval::kWays; ++way) {
    const auto& tally = tallies[way];
    std::printf("| %s | %s | %.2f | %.0f %% | %.1f %% | %.2f %% | %.2f %% |\n", layout, kNames[way],
                tally.stripDownsAnAxle(),
                100 * tally.stripDownsAnAxle() / tallies[0].stripDownsAnAxle(),
                100 * tally.proved / tally.packs, 100 * tally.over / tally.packs,
                100 * tally.loose / tally.packs);
  }
}

void printCoverage(const char* name, sw::eval::Flaw flaw) {
  const auto coverage = sw::eval::simulateCoverage(kCoverageAxles, flaw, 5);
  std::printf("| %s | %.1f %% | %.1f %% | %.1f %% |\n", name, 100 * coverage.share(),
              100 * coverage.thickShare(), 100 * coverage.filmShare());
}

}  // namespace

int main() {
  using sw::eval::Flaw;
  using sw::mechanics::ShimEffect;
  std::printf(
      "| shims | way | strip-downs an axle | of one step more | proved within | left over | "
      "left too loose |\n|---|---|--:|--:|--:|--:|--:|\n");
  printRace("under the cap flange", ShimEffect::ThinnerRaises);
  printRace("between pin and cap", ShimEffect::ThickerRaises);
  std::printf(
      "\n| axles | 95 %% interval holds | thick shims | film of sealant |\n|---|--:|--:|--:|\n");
  printCoverage("as the model has them", Flaw::None);
  printCoverage("stiffness grows with load (power 10/9)", Flaw::Power);
  printCoverage("one pull misread by 3 N", Flaw::Misread);
}
