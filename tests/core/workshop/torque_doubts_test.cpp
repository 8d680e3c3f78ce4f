// SPDX-License-Identifier: GPL-3.0-or-later
#include "workshop/torque_doubts.h"

#include <gmock/gmock.h>

#include "units/parse.h"

namespace sw::workshop {
namespace {

model::SpecItem line(const std::string& torque, const std::string& size,
                     const std::string& strength) {
  model::SpecItem item;
  item.type = model::SpecKind::Torque;
  item.value = parseQuantity(torque, {"value", QuantityKind::Torque, "N m"})->value;
  item.fastenerSize = size;
  item.fastenerClass = strength;
  return item;
}

// M8x1.25 8.8 at 250 N m uses 5.9 to 12 times its yield (VDI 2230-1 form): no bolt takes it.
TEST(TorqueDoubts, ADecimalSlipIsNamedWithWhatItCouldBe) {
  const auto doubt = torqueDoubt(line("250 N m", "M8x1.25", "8.8"));
  ASSERT_TRUE(doubt);
  EXPECT_EQ(doubt->verdict, "impossible");
  EXPECT_THAT(doubt->sentence, testing::HasSubstr("25 N m"));
  EXPECT_THAT(doubt->sentence, testing::HasSubstr("250 lbf in"));
}

TEST(TorqueDoubts, ABelievableTorqueRaisesNone) {
  EXPECT_FALSE(torqueDoubt(line("22 N m", "M8x1.25", "8.8")));
}

TEST(TorqueDoubts, ATenthOfItIsSuspiciouslyLow) {
  const auto doubt = torqueDoubt(line("2.2 N m", "M8x1.25", "8.8"));
  ASSERT_TRUE(doubt);
  EXPECT_EQ(doubt->verdict, "suspiciously_low");
}

TEST(TorqueDoubts, WithoutThreadOrClassNothingIsSaid) {
  EXPECT_FALSE(torqueDoubt(line("250 N m", "", "8.8")));
  EXPECT_FALSE(torqueDoubt(line("250 N m", "M8x1.25", "")));
  EXPECT_FALSE(torqueDoubt(line("250 N m", "a big one", "8.8")));
  model::SpecItem limit = line("250 N m", "M8x1.25", "8.8");
  limit.type = model::SpecKind::Limit;
  EXPECT_FALSE(torqueDoubt(limit));
}

}  // namespace
}  // namespace sw::workshop
