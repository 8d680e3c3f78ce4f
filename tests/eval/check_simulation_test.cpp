// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <cmath>
#include <numeric>
#include <string>

#include "check_race.h"
#include "diagnosis/shipped_causes.h"
#include "simulated_vehicle.h"

// Shares and means are compared within their sampling error.

namespace sw::eval {
namespace {

using diagnosis::CauseFile;

const CauseFile& file() {
  return diagnosis::shippedCauses();
}

/// Whether so many of so many are what this chance gives, to 4.5 standard deviations.
void expectShare(double seen, double all, double chance, const std::string& what) {
  const double deviation = std::sqrt(chance * (1 - chance) / all);
  EXPECT_NEAR(seen / all, chance, 4.5 * deviation + 1e-12) << what;
}

TEST(SimulatedVehicles, AreDrawnAsTheTableSays) {
  constexpr int kDrawn = 40000;
  std::mt19937_64 random(7);
  const auto& table = file().table;
  const std::size_t disc = table.cause("disc").value(), braking = table.feature("braking").value();
  const std::size_t look = file().check("discs").value();
  std::vector<double> causes(table.causes.size(), 0.0);
  std::vector<double> told(table.features[braking].answers.size(), 0.0);
  double answered = 0, found = 0, alarmed = 0;
  for (int i = 0; i < kDrawn; ++i) {
    const auto vehicle = drawVehicle(file(), random);
    causes[vehicle.cause] += 1;
    EXPECT_FALSE(vehicle.answers[table.feature("one_hot").value()]);  // is not asked
    if (vehicle.cause == table.cause("propshaft").value()) {
      alarmed += vehicle.luck[look].alarms ? 1 : 0;
    }
    if (vehicle.cause != disc) continue;
    found += vehicle.luck[look].finds ? 1 : 0;
    EXPECT_FALSE(vehicle.luck[look].alarms);
    if (!vehicle.answers[braking]) continue;
    answered += 1;
    told[*vehicle.answers[braking]] += 1;
  }
  double all = 0;
  for (const auto& cause : table.causes) all += cause.weight;
  for (std::size_t cause = 0; cause < causes.size(); ++cause) {
    expectShare(causes[cause], kDrawn, table.causes[cause].weight / all, table.causes[cause].key);
  }
  expectShare(answered, causes[disc], 1 - kLeftOpen, "answered");
  for (std::size_t word = 0; word < told.size(); ++word) {
    expectShare(told[word], answered, table.causes[disc].answers[braking][word], "braking");
  }
  const auto& check = file().checks[look];
  ASSERT_EQ(check.finds.front().cause, disc);
  expectShare(found, causes[disc], check.finds.front().chance, "found");
  expectShare(alarmed, causes[table.cause("propshaft").value()], check.falseAlarm, "alarms");
}

TEST(SimulatedVehicles, AMovedTableIsATableAndMovesByAsMuchAsItSays) {
  std::mt19937_64 random(8);
  constexpr int kTables = 200;
  double sum = 0, squares = 0, count = 0;
  for (int i = 0; i < kTables; ++i) {
    const auto truth = perturbed(file(), .7, random);
    for (std::size_t cause = 0; cause < truth.table.causes.size(); ++cause) {
      const double moved =
          std::log(truth.table.causes[cause].weight / file().table.causes[cause].weight);
      sum += moved;
      squares += moved * moved;
      count += 1;
      for (const auto& row : truth.table.causes[cause].answers) {
        EXPECT_NEAR(std::accumulate(row.begin(), row.end(), 0.0), 1, 1e-12);
      }
    }
    for (const auto& check : truth.checks) {
      for (const auto& one : check.finds) EXPECT_TRUE(one.chance > 0 && one.chance < 1);
    }
  }
  EXPECT_NEAR(sum / count, 0, 4.5 * .7 / std::sqrt(count));
  EXPECT_NEAR(std::sqrt(squares / count), .7, 4.5 * .7 / std::sqrt(2 * count));
  const auto same = perturbed(file(), 0, random);
  EXPECT_NEAR(same.checks[0].finds[0].chance, file().checks[0].finds[0].chance, 1e-12);
}

RaceTerms termsOf(int vehicles, double perturbed, Stopping stopping) {
  RaceTerms terms;
  terms.preset = 1;
  terms.vehicles = vehicles;
  terms.perturbed = perturbed;
  terms.stopping = stopping;
  return terms;
}

/// Clear of the plan by more than chance gives.
bool dearer(const CheckRace& race, Way way) {
  const WayResult& one = race.ways.at(static_cast<std::size_t>(way));
  return one.dearer > one.dearerBy;
}

TEST(CheckPlanRace, PlansTakeTheMinutesTheyExpectAndLessThanSimpleOrders) {
  CheckRacer racer(file());
  const auto race = racer.race(termsOf(4000, 0, Stopping::WhereItPays));
  // 95 % are 1.96 standard deviations; three are allowed.
  EXPECT_NEAR(race.ways[0].mean, race.stated, race.statedBy * 3 / 1.96);
  EXPECT_TRUE(dearer(race, Way::PerMinute));
  EXPECT_TRUE(dearer(race, Way::MostProbable));
  EXPECT_TRUE(dearer(race, Way::FixedOrder));
  const WayResult& there = race.ways.at(static_cast<std::size_t>(Way::PerMinuteThere));
  EXPECT_GT(there.dearer, -there.dearerBy * 3 / 1.96);
  // The same again, from the courses kept.
  const auto again = racer.race(termsOf(4000, 0, Stopping::WhereItPays));
  EXPECT_EQ(again.ways[0].mean, race.ways[0].mean);
  EXPECT_EQ(again.ways[4].of90, race.ways[4].of90);
}

TEST(CheckPlanRace, ATableThatIsWrongLeavesThePlanAheadOfTheFixedOrder) {
  CheckRacer racer(file());
  const auto race = racer.race(termsOf(1500, .7, Stopping::WhereItPays));
  EXPECT_TRUE(dearer(race, Way::MostProbable));
  EXPECT_TRUE(dearer(race, Way::FixedOrder));
}

TEST(CheckPlanRace, WithoutGivingUpAllWaysFindTheSameFaults) {
  // Each check is made once by every way, and has the same luck in each.
  CheckRacer racer(file());
  const auto race = racer.race(termsOf(600, .3, Stopping::Never));
  for (const WayResult& one : race.ways) {
    EXPECT_EQ(one.found, race.ways[0].found);
    EXPECT_GE(one.of90, one.mean);
  }
  EXPECT_TRUE(dearer(race, Way::FixedOrder));
}

}  // namespace
}  // namespace sw::eval
