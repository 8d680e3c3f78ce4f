// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bolts/wheel_nut_recheck.h"

#include <cmath>

namespace sw::mechanics {
namespace {

double inKilometres(Length length) {
  return length.si() / 1000;
}

WheelNutsFitted fittedAt(double kilometresDriven) {
  WheelNutsFitted fitted;
  fitted.odometer = kilometres(kilometresDriven);
  return fitted;
}

// Tyre trade advice: 50 km (30 miles), and 50 to 100 miles, which ends at 160 km.
TEST(WheelNutRecheck, LightVehicle) {
  const auto got = wheelNutRechecks(fittedAt(81200)).value();
  ASSERT_EQ(got.size(), 2U);
  EXPECT_NEAR(inKilometres(got[0].afterReading), 81250, 1e-6);
  EXPECT_NEAR(inKilometres(got[0].byReading), 81300, 1e-6);
  EXPECT_NEAR(inKilometres(got[1].afterReading), 81300, 1e-6);
  EXPECT_NEAR(inKilometres(got[1].byReading), 81360, 1e-6);
  EXPECT_FALSE(got[0].orAfter || got[1].orAfter);
  EXPECT_FALSE(got[0].state) << "nobody said what the odometer reads now";
}

// BS AU 50-2.7a:1995 as reported: 30 minutes or 40 to 80 km; loosening was seen at 160 km.
TEST(WheelNutRecheck, HeavyVehicle) {
  WheelNutsFitted fitted = fittedAt(1000);
  fitted.vehicle = VehicleWeight::Heavy;
  const auto got = wheelNutRechecks(fitted).value();
  EXPECT_NEAR(inKilometres(got[0].afterReading), 1040, 1e-9);
  EXPECT_NEAR(inKilometres(got[0].byReading), 1080, 1e-9);
  EXPECT_NEAR(got[0].orAfter->si(), 1800, 1e-12);
  EXPECT_NEAR(inKilometres(got[1].byReading), 1160, 1e-9);
  EXPECT_FALSE(got[1].orAfter);
}

struct StateRow {
  double now;  ///< km
  RecheckState first, again;
};

TEST(WheelNutRecheck, StateByTheOdometer) {
  using S = RecheckState;
  for (const StateRow& row :
       {StateRow{500, S::NotYet, S::NotYet}, StateRow{549, S::NotYet, S::NotYet},
        StateRow{550, S::Due, S::NotYet}, StateRow{600, S::Due, S::Due},
        StateRow{601, S::Passed, S::Due}, StateRow{660, S::Passed, S::Due},
        StateRow{661, S::Passed, S::Passed}}) {
    WheelNutsFitted fitted = fittedAt(500);
    fitted.odometerNow = kilometres(row.now);
    const auto got = wheelNutRechecks(fitted).value();
    EXPECT_EQ(got[0].state, row.first) << row.now;
    EXPECT_EQ(got[1].state, row.again) << row.now;
  }
}

TEST(WheelNutRecheck, OwnFirstDistance) {
  WheelNutsFitted fitted = fittedAt(0);
  fitted.firstAfter = kilometres(80);
  EXPECT_NEAR(inKilometres(wheelNutRechecks(fitted)->front().after), 80, 1e-9);
  fitted.vehicle = VehicleWeight::Heavy;
  fitted.firstAfter = kilometres(95);
  const auto heavy = wheelNutRechecks(fitted).value();
  EXPECT_LE(heavy[0].after, heavy[0].by);
}

TEST(WheelNutRecheck, RefusesWhatCannotBe) {
  const auto keyOf = [](auto change) {
    WheelNutsFitted fitted = fittedAt(500);
    change(fitted);
    const auto got = wheelNutRechecks(fitted);
    return got ? std::string("accepted") : got.error().key + " " + got.error().field;
  };
  using F = WheelNutsFitted;
  EXPECT_EQ(keyOf([](F& f) { f.odometer = metres(-1); }), "measure.not_positive odometer");
  EXPECT_EQ(keyOf([](F& f) { f.odometer = metres(std::nan("")); }), "measure.not_finite odometer");
  EXPECT_EQ(keyOf([](F& f) { f.odometerNow = kilometres(499); }),
            "bolts.odometer_backwards odometer_now");
  EXPECT_EQ(keyOf([](F& f) { f.firstAfter = kilometres(101); }),
            "bolts.recheck_too_late first_after");
  EXPECT_EQ(keyOf([](F& f) { f.firstAfter = kilometres(0); }), "measure.not_positive first_after");
  EXPECT_EQ(keyOf([](F& f) { f.odometer = metres(0); }), "accepted");
}

}  // namespace
}  // namespace sw::mechanics
