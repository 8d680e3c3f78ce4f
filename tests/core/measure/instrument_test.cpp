// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/instrument.h"

#include <cmath>

#include "capability.h"

namespace sw::measure {
namespace {

TEST(Instrument, CalibrationStatesByDate) {
  const CalibrationDates dates{Date{2031, 3, 1}, Date{2032, 3, 1}};
  EXPECT_EQ(calibrationState(dates, {2031, 6, 1}), CalibrationState::Ok);
  EXPECT_EQ(calibrationState(dates, {2032, 1, 30}), CalibrationState::Ok) << "31 days before";
  EXPECT_EQ(calibrationState(dates, {2032, 1, 31}), CalibrationState::Due) << "30 days before";
  EXPECT_EQ(calibrationState(dates, {2032, 3, 1}), CalibrationState::Due) << "the day itself";
  EXPECT_EQ(calibrationState(dates, {2032, 3, 2}), CalibrationState::Overdue);
  EXPECT_EQ(calibrationState(dates, {2032, 2, 1}, 10), CalibrationState::Ok);
  EXPECT_EQ(calibrationState({Date{2031, 3, 1}, {}}, {2040, 1, 1}), CalibrationState::Ok);
  EXPECT_EQ(calibrationState({{}, Date{2032, 3, 1}}, {2031, 6, 1}),
            CalibrationState::NeverCalibrated);
  EXPECT_EQ(word(CalibrationState::NeverCalibrated), "never_calibrated");
}

TEST(Instrument, CorrectionFromAnOwnCheck) {
  const auto got = correctionFrom({20.0, 19.5, 0.1}, 0.5);
  EXPECT_NEAR(got.correction, 0.5, 1e-15);
  EXPECT_NEAR(got.standardUncertainty, std::sqrt(0.01 + 0.25 / 12), 1e-15);
}

TEST(Instrument, CheckCoversReadingsOfItsSize) {
  const OwnCheck check{20.0, 19.5, 0.1};
  EXPECT_TRUE(covers(check, 10.0));
  EXPECT_TRUE(covers(check, 40.0));
  EXPECT_FALSE(covers(check, 9.9));
  EXPECT_FALSE(covers(check, 40.1));
  EXPECT_FALSE(covers(check, -20.0));
  EXPECT_FALSE(covers({0.0, 0.3, 0.0}, 0.0)) << "a zero check shows the zero alone";
}

TEST(Instrument, CheckAgainstThePermissibleError) {
  InstrumentCapability scale = test::capability(0.5, 0.5);
  EXPECT_EQ(compareWithPermissible(scale), CheckAgreement::NothingToCompare);
  scale.check = OwnCheck{20.0, 19.5, 0.0};
  EXPECT_EQ(compareWithPermissible(scale), CheckAgreement::Agrees);
  // 0.5 + 2 x 0.1443 = 0.789
  scale.check->shown = 19.2;
  EXPECT_EQ(compareWithPermissible(scale), CheckAgreement::ExceedsPermissible);
}

TEST(Instrument, RangeIncludesItsEnds) {
  InstrumentCapability scale = test::capability(0.5);
  scale.rangeMin = 2.0;
  scale.rangeMax = 50.0;
  EXPECT_TRUE(withinRange(scale, 2.0));
  EXPECT_TRUE(withinRange(scale, 50.0));
  EXPECT_FALSE(withinRange(scale, 1.9));
  EXPECT_FALSE(withinRange(scale, 50.1));
  scale.differenceOfTwo = true;
  EXPECT_TRUE(withinRange(scale, 0.0)) << "a difference need only fit the span";
  EXPECT_FALSE(withinRange(scale, 48.1));
  EXPECT_TRUE(withinRange(test::capability(0.5), 1e6));
}

}  // namespace
}  // namespace sw::measure
