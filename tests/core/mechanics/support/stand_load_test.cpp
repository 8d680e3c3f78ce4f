// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/support/stand_load.h"

#include <cmath>

namespace sw {
namespace {

// Source of the rule, common practice, no source: each stand under an axle must be rated for more
// than half of what stands on that axle. The figures are plain arithmetic.

StandInput weighed(double axleKilograms, double ratingKilograms) {
  StandInput input;
  input.axleLoad = kilograms(axleKilograms);
  input.rating = kilograms(ratingKilograms);
  return input;
}

StandVerdict verdictOf(const StandInput& input) {
  return standLoad(input).value().verdict;
}

TEST(StandLoad, EachStandMustCarryMoreThanHalfTheAxle) {
  EXPECT_EQ(verdictOf(weighed(840, 421)), StandVerdict::Enough);
  EXPECT_EQ(verdictOf(weighed(840, 420)), StandVerdict::NotEnough) << "exactly half is not more";
  EXPECT_EQ(verdictOf(weighed(840, 400)), StandVerdict::NotEnough);
  const auto got = standLoad(weighed(840, 2000)).value();
  EXPECT_NEAR(inKilograms(got.axleLoad), 840, 1e-9);
  EXPECT_NEAR(inKilograms(got.neededEach), 420, 1e-9);
  EXPECT_NEAR(got.margin, 2000.0 / 420 - 1, 1e-12);
}

TEST(StandLoad, RatingPerPairIsHalved) {
  StandInput input = weighed(840, 800);
  EXPECT_EQ(verdictOf(input), StandVerdict::Enough);
  input.ratingMeans = StandRating::PerPair;
  const auto got = standLoad(input).value();
  EXPECT_EQ(got.verdict, StandVerdict::NotEnough);
  EXPECT_NEAR(inKilograms(got.ratedEach), 400, 1e-9);
  EXPECT_NEAR(got.margin, 400.0 / 420 - 1, 1e-12);
}

TEST(StandLoad, LoadFromMassAndShare) {
  StandInput input;
  input.knowledge = AxleLoadKnowledge::MassAndShare;
  input.vehicleMass = kilograms(1650);
  input.axleShare = 0.55;
  input.rating = kilograms(500);
  const auto got = standLoad(input).value();
  EXPECT_NEAR(inKilograms(got.axleLoad), 907.5, 1e-9);
  EXPECT_NEAR(inKilograms(got.neededEach), 453.75, 1e-9);
  EXPECT_EQ(got.verdict, StandVerdict::Enough);
  EXPECT_EQ(got.knowledge, AxleLoadKnowledge::MassAndShare);
}

TEST(StandLoad, UnknownSplitTakesTheWholeMass) {
  StandInput input;
  input.knowledge = AxleLoadKnowledge::MassOnly;
  input.vehicleMass = kilograms(1650);
  input.rating = kilograms(500);
  EXPECT_NEAR(inKilograms(standLoad(input).value().neededEach), 825, 1e-9);
  EXPECT_EQ(verdictOf(input), StandVerdict::NotEnough);
}

TEST(StandLoad, MoreStandsDoNotLowerTheDemand) {
  StandInput input = weighed(840, 400);
  input.stands = 4;
  EXPECT_EQ(verdictOf(input), StandVerdict::NotEnough);
}

TEST(StandLoad, FewerThanTwoStandsAreRefused) {
  for (int stands : {1, 0, -2}) {
    StandInput input = weighed(840, 3000);
    input.stands = stands;
    const auto got = standLoad(input);
    ASSERT_FALSE(got);
    EXPECT_EQ(got.error().code, ErrorCode::Refused);
    EXPECT_EQ(got.error().key, "stand_load.too_few_stands");
    EXPECT_EQ(got.error().detail("stands"), std::to_string(stands));
  }
}

std::string problemOf(const StandInput& input) {
  const auto got = standLoad(input);
  return got ? "accepted" : got.error().key + " " + got.error().field;
}

TEST(StandLoad, NamesWhatIsMissingOrImpossible) {
  StandInput input = weighed(840, 2000);
  input.axleLoad.reset();
  EXPECT_EQ(problemOf(input), "stand_load.missing axle_load");
  EXPECT_EQ(problemOf(weighed(0, 2000)), "measure.not_positive axle_load");
  EXPECT_EQ(problemOf(weighed(840, 0)), "measure.not_positive rating");
  EXPECT_EQ(problemOf(weighed(std::nan(""), 2000)), "measure.not_finite axle_load");
  input.knowledge = AxleLoadKnowledge::MassAndShare;
  EXPECT_EQ(problemOf(input), "stand_load.missing vehicle_mass");
  input.vehicleMass = kilograms(1650);
  EXPECT_EQ(problemOf(input), "stand_load.missing axle_share");
  for (double share : {0.0, -0.1, 1.01, std::nan("")}) {
    input.axleShare = share;
    EXPECT_EQ(problemOf(input), "stand_load.bad_share axle_share");
  }
}

TEST(StandLoad, WordsRoundTrip) {
  for (StandRating rating : {StandRating::Each, StandRating::PerPair}) {
    EXPECT_EQ(fromWord<StandRating>(word(rating)), rating);
  }
  for (AxleLoadKnowledge knowledge :
       {AxleLoadKnowledge::Weighed, AxleLoadKnowledge::FromVehicleDocuments,
        AxleLoadKnowledge::MassAndShare, AxleLoadKnowledge::MassOnly}) {
    EXPECT_EQ(fromWord<AxleLoadKnowledge>(word(knowledge)), knowledge);
  }
  EXPECT_EQ(word(StandVerdict::NotEnough), "not_enough");
  EXPECT_EQ(fromWord<StandRating>("both"), std::nullopt);
}

}  // namespace
}  // namespace sw
