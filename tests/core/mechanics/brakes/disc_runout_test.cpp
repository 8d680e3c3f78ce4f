// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/brakes/disc_runout.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "mechanics/brakes/runout_at_track.h"

namespace sw::mechanics {
namespace {

constexpr double kPi = std::numbers::pi;

DiscRunoutInput inputOf(std::vector<double> readings) {
  DiscRunoutInput input;
  for (const double reading : readings) input.readings.push_back(millimetres(reading));
  input.instrument.graduation = 0.001 / 1000;
  return input;
}

DiscRunoutInput twelve() {
  return inputOf({.112, .132, .141, .131, .106, .083, .073, .076, .082, .085, .086, .093});
}

TEST(DiscRunout, OrdersOfATrace) {
  // NumPy sums of the twelve readings; amounts and phases r = R cos(n t - p).
  const auto got = discRunout(twelve()).value();
  EXPECT_NEAR(inMillimetres(got.extent.mean), 0.1000, 2e-4);
  EXPECT_NEAR(inMillimetres(got.total.value), 0.068, 2e-4);
  EXPECT_NEAR(inMillimetres(got.tilt.amount), 0.02994, 2e-4);
  EXPECT_NEAR(inDegrees(got.tilt.angle), 49.9, 0.5);
  ASSERT_TRUE(got.orders[1].wave);
  EXPECT_NEAR(inMillimetres(got.orders[1].wave->amount), 0.01195, 2e-4);
  EXPECT_NEAR(inDegrees(got.orders[1].wave->angle), 130.4, 0.5);
  EXPECT_NEAR(inMillimetres(got.residual), 0.0238, 2e-4);
  EXPECT_FALSE(got.repeatability);
}

TEST(DiscRunout, PureTiltIsTwiceItsFirstOrder) {
  std::vector<double> readings;
  for (int at = 0; at < 12; ++at) readings.push_back(0.05 * std::cos(at * kPi / 6 - kPi / 3));
  const auto got = discRunout(inputOf(readings)).value();
  EXPECT_NEAR(inMillimetres(got.total.value), 0.1, 1e-12);
  EXPECT_NEAR(inMillimetres(got.tilt.amount), 0.05, 1e-12);
  EXPECT_NEAR(inMillimetres(got.residual), 0, 1e-12);
}

TEST(DiscRunout, APlungerOffSquareReadsHigh) {
  // 0.100 / cos 15 deg = 0.1035 (plane geometry).
  DiscRunoutInput input = inputOf({0, 0.1 / std::cos(15 * kPi / 180), 0.05, 0.02});
  EXPECT_NEAR(inMillimetres(input.readings[1]), 0.1035, 1e-4);
  EXPECT_NEAR(inMillimetres(discRunout(input)->total.value), 0.1035, 1e-4);
  input.plungerOffSquare = degrees(15);
  EXPECT_NEAR(inMillimetres(discRunout(input)->total.value), 0.100, 1e-12);
  input.plungerOffSquare = degrees(-15);
  EXPECT_NEAR(inMillimetres(discRunout(input)->total.value), 0.100, 1e-12);
}

TEST(DiscRunout, TurnsAreAveragedAndTellTheirScatter) {
  DiscRunoutInput input =
      inputOf({0.010, 0.050, 0.090, 0.050, 0.014, 0.054, 0.094, 0.054, 0.018, 0.058, 0.098, 0.058});
  input.turns = 3;
  const auto got = discRunout(input).value();
  ASSERT_EQ(got.averaged.size(), 4U);
  EXPECT_NEAR(inMillimetres(got.averaged[0]), 0.014, 1e-12);
  EXPECT_NEAR(inMillimetres(got.total.value), 0.080, 1e-12);
  // Each place -0.004, 0, +0.004 about its mean: s = sqrt(4 x 0.000032 / 8) = 0.004.
  EXPECT_NEAR(inMillimetres(*got.repeatability), 0.004, 1e-12);
  EXPECT_NEAR(inMillimetres(*got.drift), 0.008, 1e-12);
  EXPECT_NEAR(inMillimetres(got.total.standardUncertainty),
              std::sqrt(2 * 0.001 * 0.001 / 12 + 2 * 0.004 * 0.004 / 3), 1e-9);
}

TEST(DiscRunout, UncertaintyOfTheDifferenceAndOfTheWave) {
  // Dial indicator 0.01 mm as max - min with local error +/-0.005: 0.0040825 and 0.0028868 mm,
  // U (k = 2) 0.010 mm (JCGM 100, budget by hand).
  DiscRunoutInput input = twelve();
  input.instrument.graduation = 0.01 / 1000;
  input.instrument.localError = 0.005 / 1000;
  const auto got = discRunout(input).value();
  EXPECT_NEAR(2 * inMillimetres(got.total.standardUncertainty), 0.010, 5e-5);
  // u(R1) = u(reading) sqrt(2 / N), u(difference) = u(reading) sqrt(2).
  EXPECT_NEAR(got.tiltUncertainty.si(),
              got.total.standardUncertainty.si() / std::sqrt(2.0) * std::sqrt(2.0 / 12), 1e-15);
}

TEST(DiscRunout, VerdictOnTheTotal) {
  DiscRunoutInput input = twelve();  // total 0.068, u 0.000408
  const auto verdict = [&](double limit) {
    input.limit = millimetres(limit);
    return discRunout(input)->total.verdict;
  };
  EXPECT_EQ(discRunout(input)->total.verdict, Verdict::NoLimit);
  EXPECT_EQ(verdict(0.10), Verdict::Within);
  EXPECT_EQ(verdict(0.0684), Verdict::Undecided);
  EXPECT_EQ(verdict(0.060), Verdict::Outside);
}

TEST(DiscRunout, AddingAnOffsetChangesNothingButTheMean) {
  DiscRunoutInput moved = twelve();
  for (Length& reading : moved.readings) reading = reading + millimetres(3);
  const auto a = discRunout(twelve()).value();
  const auto b = discRunout(moved).value();
  EXPECT_NEAR(a.total.value.si(), b.total.value.si(), 1e-12);
  EXPECT_NEAR(a.tilt.amount.si(), b.tilt.amount.si(), 1e-12);
  EXPECT_NEAR(a.residual.si(), b.residual.si(), 1e-12);
}

TEST(DiscRunout, RefusesWhatCannotBe) {
  const auto keyOf = [](auto change) {
    DiscRunoutInput input = twelve();
    change(input);
    const auto got = discRunout(input);
    return got ? std::string("accepted") : got.error().key + " " + got.error().field;
  };
  EXPECT_EQ(keyOf([](auto& i) { i.readings.resize(3); }), "disc_runout.too_few_places readings");
  EXPECT_EQ(keyOf([](auto& i) { i.turns = 5; }), "disc_runout.uneven_turns readings");
  EXPECT_EQ(keyOf([](auto& i) { i.turns = 6; }), "disc_runout.too_few_places readings");
  EXPECT_EQ(keyOf([](auto& i) { i.turns = 0; }), "disc_runout.bad_turns turns");
  EXPECT_EQ(keyOf([](auto& i) { i.plungerOffSquare = degrees(60); }),
            "disc_runout.off_square plunger_off_square");
  EXPECT_EQ(keyOf([](auto& i) { i.readings[1] = metres(INFINITY); }),
            "measure.not_finite readings/1");
  EXPECT_EQ(keyOf([](auto& i) { i.limit = Length{}; }), "measure.not_positive runout_limit");
}

PlacedReading at(double place, double reading) {
  return {degrees(place), millimetres(reading)};
}

TEST(PlacedReadings, AnyOrderAndSeveralTurns) {
  const auto got = evenTurns({at(270, 4), at(0, 1), at(90.5, 2), at(180, 3), at(360, 5),
                              at(89.7, 6), at(-180, 7), at(270, 8)})
                       .value();
  EXPECT_EQ(got.turns, 2);
  const double expected[]{1, 2, 3, 4, 5, 6, 7, 8};
  ASSERT_EQ(got.readings.size(), 8U);
  for (std::size_t i = 0; i < 8; ++i) {
    EXPECT_NEAR(inMillimetres(got.readings[i]), expected[i], 1e-12) << i;
  }
}

TEST(PlacedReadings, ClockPositionsAreStepsOfThirtyDegrees) {
  std::vector<PlacedReading> clock;
  for (int hour = 1; hour <= 12; ++hour) clock.push_back(at(30.0 * hour, hour));
  const auto got = evenTurns(clock).value();
  EXPECT_EQ(got.turns, 1);
  EXPECT_NEAR(inMillimetres(got.readings[0]), 12, 1e-12) << "12 o'clock is 0";
  EXPECT_NEAR(inMillimetres(got.readings[3]), 3, 1e-12);
}

TEST(PlacedReadings, UnevenPlacesAreRefused) {
  EXPECT_EQ(evenTurns({at(0, 1), at(90, 1), at(200, 1), at(270, 1)}).error().key,
            "disc_runout.uneven_places");
  EXPECT_EQ(evenTurns({at(0, 1), at(90, 1), at(180, 1), at(270, 1), at(0, 1)}).error().key,
            "disc_runout.uneven_turns");
  EXPECT_EQ(evenTurns({at(45, 1), at(135, 1), at(225, 1), at(315, 1)}).error().key,
            "disc_runout.uneven_places");
  EXPECT_EQ(evenTurns({at(std::nan(""), 1)}).error().key, "measure.not_finite");
  EXPECT_TRUE(evenTurns({}).value().readings.empty());
}

TEST(RunoutAtTrack, RigidTilt) {
  // Plane geometry: 0.020 x 140 / 60 and 2 x 140 x 0.05 / 120.
  const HubRunout hub{millimetres(0.020), millimetres(60)};
  EXPECT_NEAR(inMillimetres(runoutAtTrack(hub, millimetres(140)).value()), 0.0467, 1e-4);
  const SeatSpeck speck{millimetres(0.05), millimetres(120)};
  EXPECT_NEAR(inMillimetres(runoutAtTrack(speck, millimetres(140)).value()), 0.1167, 1e-4);
}

TEST(RunoutAtTrack, ASpeckIsAHubRunoutAtTheEdgeOfTheSeat) {
  // A plate lifted by s at one edge of its seat runs out by s there.
  const Length track = millimetres(131);
  const auto bySpeck = runoutAtTrack(SeatSpeck{millimetres(0.08), millimetres(150)}, track);
  const auto byHub = runoutAtTrack(HubRunout{millimetres(0.08), millimetres(75)}, track);
  EXPECT_NEAR(bySpeck->si(), byHub->si(), 1e-15);
  EXPECT_EQ(runoutAtTrack(HubRunout{{}, millimetres(60)}, track)->si(), 0);
  EXPECT_EQ(runoutAtTrack(HubRunout{millimetres(1), {}}, track).error().field, "hub_radius");
  EXPECT_EQ(runoutAtTrack(SeatSpeck{millimetres(-1), metres(1)}, track).error().field, "speck");
  EXPECT_EQ(runoutAtTrack(SeatSpeck{millimetres(1), metres(1)}, {}).error().field, "track_radius");
}

}  // namespace
}  // namespace sw::mechanics
