// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bolts/prevailing_torque.h"

#include <cmath>

#include "mechanics/bolts/thread_designation.h"

namespace sw::mechanics {
namespace {

Torque poundInches(double value) {
  return poundFeet(value / 12);
}
double inPoundInches(Torque torque) {
  return 12 * inPoundFeet(torque);
}

TorqueRange rangeOf(double least, double most) {
  return {poundInches(least), poundInches(most)};
}

struct Row {
  double drag;
  DragRule rule;
  double least, most;  ///< lbf in
  const char* source;
};

// 50 to 70 lbf in.
TEST(PrevailingTorque, RuleOfTheSheet) {
  for (const Row& row : {Row{30, DragRule::AddIfThird, 80, 100, "TM 5-2330-325-13&P"},
                         Row{15, DragRule::AddIfThird, 50, 70, "TM 5-2330-325-13&P"},
                         Row{15, DragRule::AddAlways, 65, 85, "FAA AC 43.13-1B 7-40"},
                         Row{30, DragRule::AddAlways, 80, 100, "FAA AC 43.13-1B 7-40"},
                         Row{30, DragRule::Included, 50, 70, "the figure holds as it is"},
                         Row{0, DragRule::AddAlways, 50, 70, "no drag"}}) {
    const auto got = finalTorque(rangeOf(50, 70), poundInches(row.drag), row.rule).value();
    EXPECT_NEAR(inPoundInches(got.torque.least), row.least, 1e-9) << row.source;
    EXPECT_NEAR(inPoundInches(*got.torque.most), row.most, 1e-9) << row.source;
    EXPECT_NEAR(inPoundInches(got.added), row.least - 50, 1e-9) << row.source;
  }
}

// The lower limit decides: a third of 60 is 20, of 90 it would be 30.
TEST(PrevailingTorque, AThirdOfTheLowerLimit) {
  const auto added = [](double drag) {
    return inPoundInches(
        finalTorque(rangeOf(60, 90), poundInches(drag), DragRule::AddIfThird)->added);
  };
  EXPECT_EQ(added(19.9), 0);
  EXPECT_NEAR(added(20), 20, 1e-9);
  EXPECT_NEAR(added(25), 25, 1e-9);
}

TEST(PrevailingTorque, OneFigureStaysOne) {
  const auto got = finalTorque({newtonMetres(60), {}}, newtonMetres(8), DragRule::AddAlways);
  EXPECT_NEAR(got->torque.least.si(), 68, 1e-12);
  EXPECT_FALSE(got->torque.most);
}

TEST(PrevailingTorque, RefusesWhatCannotBe) {
  const auto fieldOf = [](const TorqueRange& range, double drag) {
    const auto got = finalTorque(range, newtonMetres(drag), DragRule::AddAlways);
    return got ? std::string("accepted") : got.error().key + " " + got.error().field;
  };
  EXPECT_EQ(fieldOf({newtonMetres(0), {}}, 1), "measure.not_positive min");
  EXPECT_EQ(fieldOf({newtonMetres(5), newtonMetres(4)}, 1), "bolts.range_upside_down max");
  EXPECT_EQ(fieldOf({newtonMetres(5), newtonMetres(std::nan(""))}, 1), "measure.not_finite max");
  EXPECT_EQ(fieldOf({newtonMetres(5), {}}, -1), "measure.not_positive drag");
  EXPECT_EQ(fieldOf({newtonMetres(5), newtonMetres(5)}, 0), "accepted");
}

struct NutRow {
  const char* thread;
  double least;  ///< lbf in
};

// US Army TM 1-1500-204-23-6 table 2-8.
TEST(UsedNut, LeastTorqueToStartIt) {
  for (const NutRow& row : {NutRow{"5/16-24", 6.5}, NutRow{"3/8-24", 9.5}, NutRow{"7/16-20", 14},
                            NutRow{"1/2-20", 18}, NutRow{"9/16-18", 24}}) {
    const Thread thread = parseThread(row.thread).value();
    EXPECT_NEAR(inPoundInches(leastBreakaway(thread).value()), row.least, 1e-12) << row.thread;
    const auto verdict = [&](double torque) {
      return judgeUsedNut(thread, poundInches(torque)).value();
    };
    EXPECT_EQ(verdict(row.least - 0.1), UsedNutVerdict::Discard) << row.thread;
    EXPECT_EQ(verdict(row.least), UsedNutVerdict::Reuse) << row.thread;
    EXPECT_EQ(verdict(0), UsedNutVerdict::Discard) << row.thread;
  }
}

// 9.5 lbf in is 1.073 N m; a manual that prints 0.46 or 0.56 N m for 5.0 lbf in has one slip.
TEST(UsedNut, ThreeEighths) {
  const Thread thread = parseThread("3/8-24 UNF").value();
  EXPECT_EQ(judgeUsedNut(thread, poundInches(8.0)), UsedNutVerdict::Discard);
  EXPECT_EQ(judgeUsedNut(thread, poundInches(10.0)), UsedNutVerdict::Reuse);
  EXPECT_NEAR(leastBreakaway(thread)->si(), 1.073, 0.001);
  EXPECT_NEAR(poundInches(5.0).si(), 0.565, 0.001);
}

TEST(UsedNut, WithoutAFigureThereIsNoVerdict) {
  for (const char* name : {"M10", "M8x1", "3/8-16", "1/4-28", "5/8-18"}) {
    const Thread thread = parseThread(name).value();
    EXPECT_FALSE(leastBreakaway(thread)) << name;
    EXPECT_EQ(judgeUsedNut(thread, newtonMetres(5)), UsedNutVerdict::NoLimit) << name;
  }
  EXPECT_EQ(judgeUsedNut(parseThread("1/2-20").value(), newtonMetres(-1)).error().field,
            "breakaway_torque");
}

}  // namespace
}  // namespace sw::mechanics
