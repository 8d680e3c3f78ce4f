// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bolts/wrench_adapter.h"

#include <cmath>
#include <numbers>

namespace sw::mechanics {
namespace {

struct Row {
  double torque, lever, adapter, angle;
  double setting;
  double tolerance;
  const char* source;
};

// The formula is one ratio, so any unit of torque and length will do.
TEST(WrenchAdapter, SettingForATorque) {
  for (const Row& row : {Row{300, 10, 4, 0, 214.29, 0.01, "TM 9-2350-277-40&P prints 214"},
                         {40, 12, 4, 0, 30.0, 1e-9, "TM 1-1500-204-23-9"},
                         {80, 400, 50, 0, 71.11, 0.01, "plane statics"},
                         {80, 400, 50, 90, 80.00, 0.01, "plane statics"},
                         {80, 400, 50, 45, 73.50, 0.01, "plane statics"},
                         {80, 400, 50, -45, 73.50, 0.01, "symmetry"},
                         {80, 400, 50, 180, 91.43, 0.01, "plane statics"},
                         {80, 400, 0, 30, 80.00, 1e-9, "a coaxial extension"}}) {
    const WrenchAdapter adapter{millimetres(row.lever), millimetres(row.adapter),
                                degrees(row.angle)};
    EXPECT_NEAR(wrenchSetting(newtonMetres(row.torque), adapter)->si(), row.setting, row.tolerance)
        << row.source << " at " << row.angle;
  }
}

// A machine-element handbook: lever 500, whole length 650, set 100: 130 at the fastener.
TEST(WrenchAdapter, TorqueAtTheFastener) {
  const WrenchAdapter adapter{millimetres(500), millimetres(150), {}};
  EXPECT_NEAR(torqueAtFastener(newtonMetres(100), adapter)->si(), 130, 1e-9);
}

// Set for a square adapter (no correction) of a quarter of the lever, but held off square.
TEST(WrenchAdapter, HeldOffSquareTheTorqueIsOff) {
  const auto error = [](double angle) {
    const WrenchAdapter adapter{millimetres(400), millimetres(100), degrees(angle)};
    return torqueAtFastener(newtonMetres(100), adapter)->si() - 100;
  };
  EXPECT_NEAR(error(80), 4.3, 0.05);
  EXPECT_NEAR(error(95), -2.2, 0.05);
}

// By moments: the hand's force times its distance from the fastener along the handle.
TEST(WrenchAdapter, IsTheMomentOfTheHand) {
  for (const double angle : {0.0, 25.0, 60.0, 90.0, 120.0, 150.0}) {
    const double force = 200, lever = 0.45, length = 0.06, a = angle * std::numbers::pi / 180;
    // Drive at the origin, hand at (-L, 0) pulling square, fastener at E (cos a, sin a).
    const double atFastener = force * (lever + length * std::cos(a));
    const WrenchAdapter adapter{metres(lever), metres(length), degrees(angle)};
    EXPECT_NEAR(torqueAtFastener(newtonMetres(force * lever), adapter)->si(), atFastener, 1e-9);
    EXPECT_NEAR(wrenchSetting(newtonMetres(atFastener), adapter)->si(), force * lever, 1e-9);
  }
}

TEST(WrenchAdapter, WithoutALeverThereIsNoAnswer) {
  const auto keyOf = [](double lever, double adapter, double angle) {
    const auto got =
        wrenchSetting(newtonMetres(50), {millimetres(lever), millimetres(adapter), degrees(angle)});
    return got ? std::string("accepted") : got.error().key + " " + got.error().field;
  };
  EXPECT_EQ(keyOf(100, 100, 180), "bolts.adapter_has_no_lever adapter_length");
  EXPECT_EQ(keyOf(100, 120, 180), "bolts.adapter_has_no_lever adapter_length");
  EXPECT_EQ(keyOf(100, 99, 180), "accepted");
  EXPECT_EQ(keyOf(0, 50, 0), "measure.not_positive lever_length");
  EXPECT_EQ(keyOf(100, -1, 0), "measure.not_positive adapter_length");
  EXPECT_EQ(keyOf(100, std::nan(""), 0), "measure.not_finite adapter_length");
  EXPECT_EQ(keyOf(100, 50, 181), "bolts.bad_adapter_angle adapter_angle");
  EXPECT_EQ(keyOf(100, 50, std::nan("")), "measure.not_finite adapter_angle");
  EXPECT_EQ(wrenchSetting(newtonMetres(0), {metres(1), {}, {}}).error().field, "torque");
  EXPECT_EQ(torqueAtFastener(newtonMetres(-1), {metres(1), {}, {}}).error().field, "torque");
}

}  // namespace
}  // namespace sw::mechanics
