// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/geometry/track_rod.h"

#include <gtest/gtest.h>

#include <cmath>

#include "mechanics/geometry/toe.h"

namespace sw::mechanics {
namespace {

const TrackRod kRod{millimetres(1.5), RodThread::OneEnd, millimetres(140), RodPlace::BehindAxle};

TEST(TrackRod, OneTurn) {
  // Pitch over arm: 0.614 degrees, 7.50 mm at 700 mm.
  const auto got = trackRodTurns(kRod, {degrees(0), degrees(0.1), {}}).value();
  EXPECT_NEAR(inDegrees(got.toePerTurn), 0.614, 0.005);
  EXPECT_NEAR(inMillimetres(toeLength(got.toePerTurn, millimetres(700)).value()), 7.50, 0.02);
  TrackRod sleeve = kRod;
  sleeve.thread = RodThread::BothEnds;
  const auto twice = trackRodTurns(sleeve, {degrees(0), degrees(0.1), {}}).value();
  EXPECT_NEAR(twice.toePerTurn / got.toePerTurn, 2, 1e-12);
  EXPECT_NEAR(got.turns / twice.turns, 2, 1e-12);
}

TEST(TrackRod, TheTurnsGiveTheWantedToe) {
  const auto got = trackRodTurns(kRod, {degrees(-0.4), degrees(0.25), degrees(0.03)}).value();
  EXPECT_NEAR(got.turns * inDegrees(got.toePerTurn), 0.65, 1e-9);
  EXPECT_NEAR(got.standardUncertainty * inDegrees(got.toePerTurn), 0.03, 1e-12);
}

TEST(TrackRod, WhichWayToTurn) {
  const auto change = [](RodPlace place, double present, double wanted) {
    TrackRod rod = kRod;
    rod.place = place;
    return trackRodTurns(rod, {degrees(present), degrees(wanted), {}}).value().change;
  };
  // A longer rod behind the axle pushes the rear of the wheels apart: toe-in.
  EXPECT_EQ(change(RodPlace::BehindAxle, 0, 0.2), RodChange::Lengthen);
  EXPECT_EQ(change(RodPlace::BehindAxle, 0.2, 0), RodChange::Shorten);
  EXPECT_EQ(change(RodPlace::AheadOfAxle, 0, 0.2), RodChange::Shorten);
  EXPECT_EQ(change(RodPlace::AheadOfAxle, 0.2, 0), RodChange::Lengthen);
  EXPECT_EQ(change(RodPlace::AheadOfAxle, 0.2, 0.2), RodChange::Leave);
}

TEST(TrackRod, AgainstTheJointsInThePlane) {
  // Arms of 140 mm straight back from swivels 1.3 m apart, each turned by half of a small toe: the
  // rod has grown by the distance of the joints. Behind the axle toe-in parts them.
  const double half = degrees(0.5).si();
  const double grown = 2 * 0.140 * std::sin(half);
  const auto got = trackRodTurns(kRod, {degrees(0), degrees(1), {}}).value();
  EXPECT_NEAR(got.turns * 0.0015 / grown, 1, 1e-4);
  EXPECT_EQ(got.change, RodChange::Lengthen);
}

TEST(TrackRod, RefusesWhatCannotBe) {
  const auto fieldOf = [](const TrackRod& rod, const ToeChange& change) {
    return trackRodTurns(rod, change).error().field;
  };
  TrackRod rod = kRod;
  rod.pitch = {};
  EXPECT_EQ(fieldOf(rod, {}), "pitch");
  rod.pitch = millimetres(40);
  EXPECT_EQ(fieldOf(rod, {}), "pitch");
  rod = kRod;
  rod.arm = {};
  EXPECT_EQ(fieldOf(rod, {}), "arm");
  EXPECT_EQ(fieldOf(kRod, {degrees(25), {}, {}}), "present");
  EXPECT_EQ(fieldOf(kRod, {{}, degrees(-25), {}}), "wanted");
  EXPECT_EQ(fieldOf(kRod, {{}, {}, degrees(-1)}), "present_uncertainty");
}

TEST(TrackRod, WordsGoBothWays) {
  EXPECT_EQ(fromWord<RodPlace>(word(RodPlace::AheadOfAxle)), RodPlace::AheadOfAxle);
  EXPECT_EQ(fromWord<RodThread>(word(RodThread::BothEnds)), RodThread::BothEnds);
  EXPECT_EQ(word(RodChange::Shorten), "shorten");
}

}  // namespace
}  // namespace sw::mechanics
