// SPDX-License-Identifier: GPL-3.0-or-later
#include "workshop/torque_plan.h"

#include <gmock/gmock.h>
#include <cmath>

#include "shop_fixture.h"
#include "workshop/series_judge.h"

namespace sw::test {
namespace {

using workshop::TorquePlan;
using workshop::WrenchRange;

/// One foot-pound in newton metres: 1.355 817 948 331 400 4 by the definitions of the foot, the
/// pound and standard gravity (NIST SP 811, appendix B, prints 1.355 818 E+00).
constexpr double kFootPound = 1.3558179483314004;

class Torques : public testing::Test {
 protected:
  void SetUp() override { shop.setUp(); }

  void start(const std::string& procedure, const std::string& step) {
    m_procedure = procedure;
    m_step = step;
    shop.ok(R"({"do":"start_procedure","procedure":")" + procedure + "\"}");
    shop.ok(R"({"do":"override","rule":"order","step":")" + procedure + "/" + step +
            R"(","side":"left","why":"only this step matters here"})");
  }
  Result<TorquePlan> plan() {
    m_state = shop.state();
    const auto run = m_state.newestRun(m_procedure, model::Side::Left);
    const auto step = m_state.findStep(*run, m_step, model::Side::Left);
    return workshop::torquePlan(m_state, **shop.workshop->shop(), *step);
  }
  void torque(const std::string& rest) {
    shop.ok(R"({"do":"torque","step":")" + m_procedure + "/" + m_step +
            R"(","side":"left","wrench":"large",)" + rest + "}");
  }
  /// The sheet's line of the group afresh.
  void line(const std::string& key, const std::string& rest) {
    shop.ok(R"({"do":"set_spec","registration":"AB 12","withdrawn":true,"type":"torque","key":")" +
            key + "\"}");
    shop.spec(R"("type":"torque","key":")" + key + "\"," + rest);
  }
  void wrench(const std::string& name, const std::string& rest) {
    shop.ok(R"({"do":"set_instrument","type":"torque_wrench","name":")" + name + "\"," + rest +
            "}");
  }
  std::vector<workshop::WrenchChoice> wrenches(const std::string& number, const std::string& unit,
                                               double si) {
    return workshop::wrenchesFor(**shop.workshop->shop(), {QuantityKind::Torque, number, unit, si},
                                 shop.clock.now());
  }
  static const workshop::WrenchChoice* named(const std::vector<workshop::WrenchChoice>& list,
                                             const std::string& name) {
    for (const auto& one : list) {
      if (one.name == name) return &one;
    }
    ADD_FAILURE() << name;
    return nullptr;
  }

  Shop shop;

 private:
  std::string m_procedure, m_step;
  workshop::JobState m_state;
};

// The procedure tightens the cap in two stages, half and full (fit-shims-and-pull.json); the
// fixture's sheet says 52 N m, four bolts, crosswise.
TEST_F(Torques, StagesCarryTheSheetsFigure) {
  start("fit-shims-and-pull", "cap_torque_bolts_drag");
  const auto given = plan();
  ASSERT_TRUE(given);
  EXPECT_EQ(given->spec->key, "swivel_cap_bolts");
  EXPECT_EQ(given->count, 4);
  EXPECT_EQ(given->pattern, "cross");
  ASSERT_EQ(given->stages.size(), 2U);
  EXPECT_EQ(given->stages[0].set.text(), "26.0 N m");
  EXPECT_DOUBLE_EQ(given->stages[0].set.si, 26.0);
  EXPECT_EQ(given->stages[1].set.text(), "52 N m");
  EXPECT_EQ(given->stages[1].number, 2);
  EXPECT_EQ(given->next, 0U);
}

TEST_F(Torques, AnotherUnitOfTheSheetIsKept) {
  line("swivel_cap_bolts", R"("value":"38 lbf ft","count":4)");
  start("fit-shims-and-pull", "cap_torque_bolts_drag");
  const auto given = plan();
  ASSERT_TRUE(given);
  EXPECT_EQ(given->stages[0].set.text(), "19.0 lbf ft");
  EXPECT_NEAR(given->stages[0].set.si, 19 * kFootPound, 1e-9);
  EXPECT_EQ(given->stages[1].set.text(), "38 lbf ft");
  EXPECT_NEAR(given->stages[1].set.si, 38 * kFootPound, 1e-9);
}

TEST_F(Torques, OfARangeTheLowerFigureIsSet) {
  line("caliper_bolts", R"("min":"75 N m","max":"83 N m","count":2)");
  start("caliper-refit", "caliper_torque");
  const auto given = plan();
  ASSERT_TRUE(given);
  ASSERT_EQ(given->stages.size(), 1U);
  EXPECT_EQ(given->stages[0].set.text(), "75 N m");
}

TEST_F(Torques, WhatIsDoneStandsInThePlan) {
  start("fit-shims-and-pull", "cap_torque_bolts_drag");
  torque(R"("stage":1,"done":2)");
  auto given = plan();
  EXPECT_EQ(given->stages[0].done, 2);
  EXPECT_FALSE(given->stages[0].finished);
  EXPECT_EQ(given->next, 0U);
  torque(R"("stage":1)");
  given = plan();
  EXPECT_TRUE(given->stages[0].finished);
  EXPECT_EQ(given->next, 1U);
  torque(R"("stage":2,"done":3)");
  given = plan();
  EXPECT_EQ(given->stages[1].done, 3);
  EXPECT_EQ(given->next, 1U);
  torque(R"("stage":2)");
  given = plan();
  EXPECT_TRUE(given->stages[1].finished);
  EXPECT_EQ(given->next, 2U);
}

TEST_F(Torques, ALaterStageImpliesTheOnesBefore) {
  start("fit-shims-and-pull", "cap_torque_bolts_drag");
  torque(R"("stage":2,"done":1)");
  const auto given = plan();
  EXPECT_TRUE(given->stages[0].finished);
  EXPECT_EQ(given->next, 1U);
}

/// A cap that was loosened again is tightened from the first stage on; the step is not done before
/// the last stage is.
TEST_F(Torques, TheFirstStageOnceMoreOpensTheLastOne) {
  start("fit-shims-and-pull", "cap_torque_bolts_drag");
  torque(R"("stage":1)");
  torque(R"("stage":2)");
  torque(R"("stage":1)");
  const auto given = plan();
  EXPECT_TRUE(given->stages[0].finished);
  EXPECT_FALSE(given->stages[1].finished);
  EXPECT_EQ(given->next, 1U);
}

TEST_F(Torques, WithoutFigureOrCountThereIsNoPlan) {
  start("caliper-refit", "caliper_torque");
  line("caliper_bolts", R"("value":"79 N m")");
  ASSERT_FALSE(plan());
  EXPECT_EQ(plan().error().key, "workshop.spec_needs_count");
  shop.ok(R"({"do":"set_spec","registration":"AB 12","withdrawn":true,"type":"torque",)"
          R"("key":"caliper_bolts"})");
  EXPECT_EQ(plan().error().key, "workshop.torque_not_on_file");
  EXPECT_EQ(plan().error().field, "caliper_bolts");
  const auto state = shop.state();
  const auto other = workshop::torquePlan(state, **shop.workshop->shop(), 0);
  ASSERT_FALSE(other);
  EXPECT_EQ(other.error().key, "workshop.no_torque_here");
}

TEST_F(Torques, AWrenchInTheOtherUnitShowsItsNearestMark) {
  wrench("old", R"("graduation":"1 lbf ft","range_min":"10 lbf ft","range_max":"100 lbf ft")");
  wrench("fine", R"("graduation":"0.5 lbf ft","range_min":"5 lbf ft","range_max":"80 lbf ft")");
  const auto list = wrenches("79", "N m", 79.0);
  // 79 / 1.3558179483314004 = 58.267 lbf ft.
  const auto* old = named(list, "old");
  EXPECT_EQ(old->set.text(), "58 lbf ft");
  EXPECT_NEAR(old->set.si, 58 * kFootPound, 1e-9);
  const auto* fine = named(list, "fine");
  EXPECT_EQ(fine->set.text(), "58.5 lbf ft");
  EXPECT_NEAR(fine->set.si, 58.5 * kFootPound, 1e-9);
  EXPECT_LE(std::abs(fine->set.si - 79.0), 0.25 * kFootPound);
  EXPECT_EQ(named(list, "large")->set.text(), "79 N m");
}

// The fixture's wrenches: small 2 to 30 N m, large 24 to 200 N m; both ends can be set.
TEST_F(Torques, TheRangeSaysWhichWrenchFits) {
  const auto at = [&](double si) {
    const auto list = wrenches(std::to_string(si), "N m", si);
    return std::pair{named(list, "small")->range, named(list, "large")->range};
  };
  EXPECT_EQ(at(1.9), std::pair(WrenchRange::TooLarge, WrenchRange::TooLarge));
  EXPECT_EQ(at(2.0), std::pair(WrenchRange::Fits, WrenchRange::TooLarge));
  EXPECT_EQ(at(24.0), std::pair(WrenchRange::Fits, WrenchRange::Fits));
  EXPECT_EQ(at(30.0), std::pair(WrenchRange::Fits, WrenchRange::Fits));
  EXPECT_EQ(at(30.1), std::pair(WrenchRange::TooSmall, WrenchRange::Fits));
  EXPECT_EQ(at(201.0), std::pair(WrenchRange::TooSmall, WrenchRange::TooSmall));
}

TEST_F(Torques, FittingFirstThenByCalibration) {
  const std::string range = R"("graduation":"1 N m","range_min":"20 N m","range_max":"150 N m")";
  wrench("overdue", range + R"(,"calibrated_on":"2029-01-10","calibration_due":"2030-01-10")");
  wrench("never", range);
  wrench("put away", range + R"(,"active":false)");
  const auto list = wrenches("79", "N m", 79.0);
  std::vector<std::string> names;
  for (const auto& one : list) names.push_back(one.name);
  // Not a wrench, or out of use: not in the list.
  EXPECT_THAT(names, testing::UnorderedElementsAre("large", "overdue", "never", "small"));
  EXPECT_EQ(names.front(), "large");
  EXPECT_EQ(names.back(), "small");
  EXPECT_EQ(named(list, "large")->calibration, "ok");
  EXPECT_EQ(named(list, "overdue")->calibration, "overdue");
  EXPECT_EQ(named(list, "never")->calibration, "never_calibrated");
}

SeriesOutcome outcomeWith(double u, std::optional<double> nu, double bar) {
  SeriesOutcome outcome;
  outcome.standardUncertainty = u;
  outcome.degreesOfFreedom = nu;
  outcome.bar = bar;
  return outcome;
}

// JCGM 100:2008 table G.2 gives two-sided factors: its column 90 % is the one-sided 95 % point,
// its column 95 % the one-sided 97.5 % point.
TEST(UndecidedWithin, IsUTimesTheOneSidedQuantileOfTheBar) {
  struct Row {
    std::optional<double> nu;
    double bar, factor;
  };
  const Row rows[]{{1, 0.95, 6.31},  {2, 0.95, 2.92},
                   {3, 0.95, 2.35},  {4, 0.95, 2.13},
                   {10, 0.95, 1.81}, {std::nullopt, 0.95, 1.645},
                   {2, 0.975, 4.30}, {4, 0.975, 2.78},
                   {9, 0.975, 2.26}, {std::nullopt, 0.975, 1.960}};
  for (const Row& row : rows) {
    const double places = row.nu ? 0.005 : 0.0005;  // as the table prints them
    EXPECT_NEAR(workshop::undecidedWithin(outcomeWith(1.0, row.nu, row.bar)), row.factor, places)
        << row.nu.value_or(-1) << " " << row.bar;
    EXPECT_NEAR(workshop::undecidedWithin(outcomeWith(0.25, row.nu, row.bar)), row.factor / 4,
                places / 4);
  }
}

/// A value that far from its limit is just at the bar: the two say the same from both ends. The
/// t distribution of one degree of freedom is Cauchy's: F(x) = 1/2 + atan(x)/pi.
TEST(UndecidedWithin, IsWhereTheProbabilityMeetsTheBar) {
  const double pi = std::acos(-1.0);
  for (const double bar : {0.95, 0.975, 0.987}) {
    const double x = workshop::undecidedWithin(outcomeWith(1.0, 1.0, bar));
    EXPECT_NEAR(0.5 + std::atan(x) / pi, bar, 1e-9) << bar;
  }
}

}  // namespace
}  // namespace sw::test
