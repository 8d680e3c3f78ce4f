// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bolts/castle_nut.h"

namespace sw::mechanics {
namespace {

using A = CastleAction;

struct StepRow {
  int slots, holes;
  double degrees;
  double travel;  ///< mm, pitch 1.25
};

// Plane geometry.
TEST(CastleNut, StepFromSlotToSlot) {
  for (const StepRow& row :
       {StepRow{6, 1, 60, 0.2083}, StepRow{6, 2, 30, 0.1042}, StepRow{4, 1, 90, 0.3125},
        StepRow{4, 2, 90, 0.3125}, StepRow{8, 2, 45, 0.15625}, StepRow{10, 2, 18, 0.0625}}) {
    const auto got = castleStep(row.slots, row.holes, millimetres(1.25)).value();
    EXPECT_NEAR(inDegrees(got.turn), row.degrees, 1e-9) << row.slots << " " << row.holes;
    EXPECT_NEAR(inMillimetres(got.travel), row.travel, 1e-4) << row.slots << " " << row.holes;
  }
}

/// How many positions in a turn let a pin through, by turning the nut in steps of half a degree.
std::size_t positionsByTurning(int slots, int holes) {
  std::size_t count = 0;
  for (int half = 0; half < 720; ++half) {
    bool through = false;
    for (int hole = 0; hole < holes; ++hole) {
      bool bothSides = true;
      for (const int mouth : {hole * 360 / holes, hole * 360 / holes + 360}) {  // half degrees
        const int off = ((mouth - half) % 720 + 720) % 720;
        bothSides = bothSides && off * slots % 720 == 0;
      }
      through = through || bothSides;
    }
    if (through) ++count;
  }
  return count;
}

TEST(CastleNut, StepsAgreeWithTurningTheNut) {
  for (const int slots : {2, 4, 6, 8, 10, 12}) {
    for (const int holes : {1, 2}) {
      const auto step = castleStep(slots, holes, millimetres(1.5)).value();
      const double positions = 360 / inDegrees(step.turn);
      EXPECT_NEAR(positions, static_cast<double>(positionsByTurning(slots, holes)), 1e-9)
          << slots << " " << holes;
      EXPECT_NEAR(step.travel * positions / millimetres(1.5), 1, 1e-12);
    }
  }
}

CastleNut nutAt(double reached, SlotPosition slot) {
  CastleNut nut;
  nut.limits = {newtonMetres(95), newtonMetres(110)};
  nut.reached = newtonMetres(reached);
  nut.slot = slot;
  return nut;
}
A actionOf(const CastleNut& nut) {
  return decideCastleNut(nut)->action;
}

struct DecisionRow {
  double reached;
  SlotPosition slot;
  CastleAction action;
};

// FAA AC 43.13-1B 7-40; never back off: trade rule. Limits 95 to 110 N m.
TEST(CastleNut, TightenOnBetweenTheLimits) {
  constexpr auto kAligned = SlotPosition::Aligned;
  constexpr auto kNot = SlotPosition::NotAligned;
  for (const DecisionRow& row :
       {DecisionRow{80, kAligned, A::TightenOn}, DecisionRow{94.9, kAligned, A::TightenOn},
        DecisionRow{95, kAligned, A::FitPin}, DecisionRow{95, kNot, A::TightenOn},
        DecisionRow{104, kAligned, A::FitPin}, DecisionRow{104, kNot, A::TightenOn},
        DecisionRow{110, kAligned, A::FitPin}, DecisionRow{110, kNot, A::ChangeWasherOrNut},
        DecisionRow{112, kAligned, A::ChangeWasherOrNut},
        DecisionRow{112, kNot, A::ChangeWasherOrNut}}) {
    EXPECT_EQ(actionOf(nutAt(row.reached, row.slot)), row.action) << row.reached;
  }
}

TEST(CastleNut, BackingOffToASlotIsRefused) {
  for (const double reached : {80.0, 95.0, 104.0, 112.0}) {
    CastleNut nut = nutAt(reached, SlotPosition::Aligned);
    nut.by = SlotReachedBy::BackingOff;
    EXPECT_EQ(actionOf(nut), A::BackingOffRefused) << reached;
  }
}

TEST(CastleNut, DragGoesOnBothLimits) {
  CastleNut nut = nutAt(112, SlotPosition::Aligned);
  nut.drag = newtonMetres(5);
  EXPECT_EQ(actionOf(nut), A::FitPin);
  EXPECT_NEAR(decideCastleNut(nut)->limits.least.si(), 100, 1e-12);
  EXPECT_NEAR(decideCastleNut(nut)->limits.most->si(), 115, 1e-12);
  nut.reached = newtonMetres(98);
  EXPECT_EQ(actionOf(nut), A::TightenOn);
}

TEST(CastleNut, OneFigureIsTheLowerLimit) {
  CastleNut nut = nutAt(95, SlotPosition::Aligned);
  nut.limits.most.reset();
  EXPECT_EQ(actionOf(nut), A::FitPin) << "just at the figure";
  nut.reached = newtonMetres(97);
  EXPECT_EQ(actionOf(nut), A::AskUpperLimit);
  nut.slot = SlotPosition::NotAligned;
  nut.reached = newtonMetres(95);
  EXPECT_EQ(actionOf(nut), A::AskUpperLimit);
  nut.reached = newtonMetres(90);
  EXPECT_EQ(actionOf(nut), A::TightenOn);
}

TEST(CastleNut, NutsOfBearingsFollowTheirProcedure) {
  CastleNut nut = nutAt(20, SlotPosition::Aligned);
  nut.purpose = NutPurpose::SetsBearing;
  nut.by = SlotReachedBy::BackingOff;
  EXPECT_EQ(actionOf(nut), A::FollowProcedure);
}

TEST(CastleNut, RefusesWhatCannotBe) {
  const auto keyOf = [](int slots, int holes, double pitch) {
    const auto got = castleStep(slots, holes, millimetres(pitch));
    return got ? std::string("accepted") : got.error().key + " " + got.error().field;
  };
  EXPECT_EQ(keyOf(5, 1, 1), "bolts.bad_slots slots");
  EXPECT_EQ(keyOf(0, 1, 1), "bolts.bad_slots slots");
  EXPECT_EQ(keyOf(26, 1, 1), "bolts.bad_slots slots");
  EXPECT_EQ(keyOf(6, 0, 1), "bolts.bad_cross_holes cross_holes");
  EXPECT_EQ(keyOf(6, 3, 1), "bolts.bad_cross_holes cross_holes");
  EXPECT_EQ(keyOf(6, 1, 0), "measure.not_positive pitch");
  CastleNut nut = nutAt(100, SlotPosition::Aligned);
  nut.limits.most = newtonMetres(90);
  EXPECT_EQ(decideCastleNut(nut).error().key, "bolts.range_upside_down");
  nut = nutAt(-1, SlotPosition::Aligned);
  EXPECT_EQ(decideCastleNut(nut).error().field, "reached");
}

}  // namespace
}  // namespace sw::mechanics
