// SPDX-License-Identifier: GPL-3.0-or-later
// Prints the tables of README.md, "What the order of checks saves": five ways of looking for what
// shakes on 5,000 simulated vehicles, and what shops of 20, 200 and 2,000 closed jobs learn.
#include <array>
#include <cstdio>

#include "check_race.h"
#include "diagnosis/shipped_causes.h"
#include "learning_shops.h"

namespace {

using sw::eval::CheckRacer;
using sw::eval::RaceTerms;
using sw::eval::Stopping;

sw::eval::CheckRace printRace(const char* truth, const char* stopping, CheckRacer& racer,
                              const RaceTerms& terms) {
  constexpr std::array<const char*, sw::eval::kWays> kNames{
      "the plan", "chance / (minutes + set-up)", "chance / minutes", "most probable first",
      "fixed order"};
  const auto race = racer.race(terms);
  for (std::size_t way = 0; way < sw::eval::kWays; ++way) {
    const auto& one = race.ways[way];
    std::printf("| %s | %s | %s | %.1f | %.0f | %.1f %% | %+.1f ± %.1f |\n", truth, stopping,
                kNames[way], one.mean, one.of90, 100 * one.found, one.dearer, one.dearerBy);
  }
  return race;
}

void printShops(const char* name, sw::eval::Truth truth) {
  for (const auto& [jobs, shops] : {std::pair{20, 400}, {200, 200}, {2000, 50}}) {
    sw::eval::ShopTerms terms;
    terms.truth = truth;
    terms.jobs = jobs;
    terms.shops = shops;
    const auto means = learnInShops(sw::diagnosis::shippedCauses(), terms);
    std::printf("| %s | %d | %.1f %% | %.3f | %.3f | %.3f | %.3f | %.0f %% |\n", name, jobs,
                100 * means.held, means.learnedBrier, means.startingBrier, means.learnedLog,
                means.startingLog, 100 * means.used);
  }
}

}  // namespace

int main() {
  CheckRacer racer(sw::diagnosis::shippedCauses());
  std::printf(
      "| truth | stops | way | mean, min | nine of ten, min | found | more than the plan, min |\n"
      "|---|---|---|--:|--:|--:|--:|\n");
  sw::eval::CheckRace first;
  for (const auto stopping : {Stopping::WhereItPays, Stopping::Never}) {
    for (const auto& [truth, deviation] :
         {std::pair{"the table", 0.0}, {"moved by 0.3", 0.3}, {"moved by 0.7", 0.7}}) {
      RaceTerms terms;
      terms.perturbed = deviation;
      terms.stopping = stopping;
      const bool never = stopping == Stopping::Never;
      const auto race = printRace(truth, never ? "never" : "where it pays", racer, terms);
      if (!never && deviation == 0) first = race;
    }
  }
  std::printf("\nOn the table itself the plans expected %.1f min and took %.1f (± %.1f).\n",
              first.stated, first.ways[0].mean, first.statedBy);
  std::printf(
      "\n| shop | closed jobs | weights held | Brier learned | starting | log learned | starting | "
      "learned is used |\n|---|--:|--:|--:|--:|--:|--:|--:|\n");
  printShops("as the table starts", sw::eval::Truth::AsStarted);
  printShops("drawn from the belief", sw::eval::Truth::FromBelief);
  printShops("moved by 0.7", sw::eval::Truth::Moved);
}
