// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/wheels/tyre_dimensions.h"

#include <gtest/gtest.h>

namespace sw::mechanics {
namespace {

TyreDimensions dimensions(const char* text, double aspect = kUsualAspect) {
  return nominalDimensions(parseTyreDesignation(text).value(), aspect).value();
}

TEST(TyreDimensions, NominalDiameterOfEachForm) {
  struct Row {
    const char* text;
    double assumedAspect;
    double millimetres, tolerance;
    const char* source;
  };
  // Rim codes count 25.4 mm here and whole millimetres in UN R30: 1 mm of tolerance.
  for (const Row& row : {Row{"195/80 R15 96S", 82, 693.0, 1, "ISO 4000-1"},
                         Row{"205 R16", 82, 742.6, 1, "trade lists, 82 %"},
                         Row{"205 R16", 80, 734.4, 1, "public explanations, 80 %"},
                         Row{"205/80 R16", 82, 734.4, 1, "ISO 4000-1"},
                         Row{"235/70 R16", 82, 735.4, 1, "ISO 4000-1"},
                         Row{"265/75 R16", 82, 803.9, 1, "ISO 4000-1"},
                         Row{"LT235/85R16 120/116Q", 82, 805.9, 1, "ISO 4000-1"},
                         Row{"31x10.50 R15", 82, 787.4, 0.1, "31 in, exact inch"}}) {
    EXPECT_NEAR(inMillimetres(dimensions(row.text, row.assumedAspect).diameter), row.millimetres,
                row.tolerance)
        << row.text << ", " << row.source;
  }
}

TEST(TyreDimensions, UnmarkedAspectIsASettingAndSaysSo) {
  const auto assumed = dimensions("205 R16");
  EXPECT_EQ(assumed.aspectSource, AspectSource::Assumed);
  EXPECT_EQ(assumed.aspect, 82);
  EXPECT_EQ(dimensions("205/80 R16", 60).aspectSource, AspectSource::Marked);
  EXPECT_EQ(dimensions("205/80 R16", 60).aspect, 80);
  // The two habits are 1.1 % apart.
  const double ratio = assumed.diameter / dimensions("205 R16", 80).diameter;
  EXPECT_NEAR(ratio - 1, 0.011, 5e-4);
}

TEST(TyreDimensions, FlotationHasAWidthInInches) {
  const auto tyre = parseTyreDesignation("31x10.50 R15").value();
  EXPECT_NEAR(inMillimetres(tyre.sectionWidth), 266.7, 1e-9);  // 10.5 in
  const auto got = nominalDimensions(tyre).value();
  EXPECT_EQ(got.aspectSource, AspectSource::FromDiameter);
  EXPECT_NEAR(got.aspect, 100 * (31 - 15) / 2.0 / 10.5, 1e-9);
}

TEST(TyreDimensions, InchWidthAloneIsNotComputable) {
  for (const char* text : {"7.50R16", "6.00-16", "205-16"}) {
    const auto got = nominalDimensions(parseTyreDesignation(text).value());
    ASSERT_FALSE(got) << text;
    EXPECT_EQ(got.error().code, ErrorCode::Degenerate);
    EXPECT_EQ(got.error().key, "tyre.not_computable");
  }
}

TEST(TyreDimensions, PartsMakeTheWhole) {
  for (const char* text : {"195/80 R15", "205 R16", "31x10.50 R15"}) {
    const auto got = dimensions(text);
    EXPECT_NEAR((got.rimDiameter + 2 * got.sectionHeight).si(), got.diameter.si(), 1e-12) << text;
  }
}

TEST(TyreDimensions, FreeDiameterBandOfAMetricRadial) {
  // UN R30 (from memory): d + 2 H times 0.97 to 1.04; 195/80 R15: 381 + 312 mm.
  const auto tyre = parseTyreDesignation("195/80 R15").value();
  const auto band = freeDiameterBand(tyre, nominalDimensions(tyre).value());
  ASSERT_TRUE(band);
  EXPECT_NEAR(inMillimetres(band->least), 381 + 0.97 * 312, 1e-9);
  EXPECT_NEAR(inMillimetres(band->most), 381 + 1.04 * 312, 1e-9);
  for (const char* text : {"31x10.50 R15", "215/75-15"}) {
    const auto other = parseTyreDesignation(text).value();
    EXPECT_FALSE(freeDiameterBand(other, nominalDimensions(other).value())) << text;
  }
}

TEST(TyreDimensions, WidthOnAnotherRim) {
  // S = S1 + 0.4 (A - A1): one inch more of rim, 10.16 mm more of tyre.
  const auto wider = sectionWidthOnRim(millimetres(205), {inches(5.5), inches(6.5)}).value();
  EXPECT_NEAR(inMillimetres(wider), 205 + 10.16, 1e-9);
  const auto same = sectionWidthOnRim(millimetres(205), {inches(6), inches(6)}).value();
  EXPECT_NEAR(inMillimetres(same), 205, 1e-12);
  EXPECT_EQ(sectionWidthOnRim(millimetres(205), {inches(6), inches(0)}).error().field, "rim_width");
  EXPECT_EQ(sectionWidthOnRim(millimetres(205), {inches(6), inches(12)}).error().key,
            "wheels.out_of_range");
}

TEST(TyreDimensions, RefusesAnImpossibleAspect) {
  const auto tyre = parseTyreDesignation("205 R16").value();
  EXPECT_EQ(nominalDimensions(tyre, 0.82).error().field, "assumed_aspect");
  EXPECT_FALSE(nominalDimensions(tyre, 101));
}

}  // namespace
}  // namespace sw::mechanics
