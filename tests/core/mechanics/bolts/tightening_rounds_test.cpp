// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bolts/tightening_rounds.h"

#include <cmath>
#include <vector>

namespace sw::mechanics {
namespace {

// Half, full, one confirming round: common practice, no source.
TEST(TighteningRounds, HalfFullAndConfirm) {
  const auto rounds = tighteningRounds(newtonMetres(110)).value();
  ASSERT_EQ(rounds.size(), 3U);
  EXPECT_EQ(rounds[0].torque.si(), 55);
  EXPECT_EQ(rounds[1].torque.si(), 110);
  EXPECT_EQ(rounds[2].torque.si(), 110);
  EXPECT_EQ(rounds[0].purpose, RoundPurpose::Tighten);
  EXPECT_EQ(rounds[1].purpose, RoundPurpose::Tighten);
  EXPECT_EQ(rounds[2].purpose, RoundPurpose::Confirm);
}

TEST(TighteningRounds, OwnStages) {
  const auto rounds = tighteningRounds(newtonMetres(80), std::vector{0.25, 0.5, 1.0}).value();
  ASSERT_EQ(rounds.size(), 4U);
  EXPECT_EQ(rounds[0].torque.si(), 20);
  EXPECT_EQ(rounds[1].torque.si(), 40);
  for (std::size_t i = 1; i < rounds.size(); ++i) {
    EXPECT_GE(rounds[i].torque, rounds[i - 1].torque);
  }
  EXPECT_EQ(tighteningRounds(newtonMetres(80), std::vector{1.0})->size(), 2U);
}

TEST(TighteningRounds, StagesRiseToTheWholeTorque) {
  for (const std::vector<double>& stages : {std::vector<double>{},
                                            {0.5},
                                            {0.5, 0.5, 1.0},
                                            {0.8, 0.5, 1.0},
                                            {0.0, 1.0},
                                            {-0.5, 1.0},
                                            {0.5, 1.1},
                                            {std::nan(""), 1.0},
                                            {0.5, std::nan("")},
                                            std::vector<double>(11, 1.0)}) {
    const auto got = tighteningRounds(newtonMetres(80), stages);
    ASSERT_FALSE(got) << stages.size();
    EXPECT_EQ(got.error().key, "bolts.bad_stages");
  }
  EXPECT_EQ(tighteningRounds(newtonMetres(0)).error().field, "torque");
}

}  // namespace
}  // namespace sw::mechanics
