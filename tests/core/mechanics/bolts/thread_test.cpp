// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bolts/thread.h"

#include <cmath>
#include <limits>
#include <numbers>

#include "mechanics/bolts/thread_designation.h"
#include "mechanics/bolts/thread_series.h"

namespace sw::mechanics {
namespace {

ThreadGeometry geometryOf(const char* designation) {
  return threadGeometry(parseThread(designation).value()).value();
}

struct MetricRow {
  const char* thread;
  double d2, nutMinor, root, area;
  double published;  ///< area as printed, mm2
  double tolerance;  ///< of the print
  const char* source;
};

// d2 and D1: ISO 724; d3 and the area: formulas of ISO 898-1, worked with Python. Printed areas:
// load tables of ISO 898-1, GB/T 16823.1 for the fine pitches.
constexpr MetricRow kMetric[]{
    {"M5x0.8", 4.4804, 4.1340, 4.0185, 14.183, 14.2, 0.05, "ISO 898-1"},
    {"M6x1", 5.3505, 4.9175, 4.7731, 20.123, 20.1, 0.05, "ISO 898-1"},
    {"M7x1", 6.3505, 5.9175, 5.7731, 28.860, 28.9, 0.05, "ISO 898-1"},
    {"M8x1.25", 7.1881, 6.6468, 6.4664, 36.609, 36.6, 0.05, "ISO 898-1"},
    {"M10x1.5", 9.0257, 8.3762, 8.1597, 57.990, 58.0, 0.05, "ISO 898-1"},
    {"M12x1.75", 10.8633, 10.1056, 9.8530, 84.267, 84.3, 0.05, "ISO 898-1"},
    {"M14x2", 12.7010, 11.8349, 11.5463, 115.439, 115, 0.5, "ISO 898-1"},
    {"M16x2", 14.7010, 13.8349, 13.5463, 156.668, 157, 0.5, "ISO 898-1"},
    {"M18x2.5", 16.3762, 15.2937, 14.9328, 192.473, 192, 0.5, "ISO 898-1"},
    {"M20x2.5", 18.3762, 17.2937, 16.9328, 244.794, 245, 0.5, "ISO 898-1"},
    {"M8x1", 7.3505, 6.9175, 6.7731, 39.167, 39.2, 0.05, "ISO 898-1"},
    {"M10x1.25", 9.1881, 8.6468, 8.4664, 61.199, 61.2, 0.05, "ISO 898-1"},
    {"M10x1", 9.3505, 8.9175, 8.7731, 64.494, 64.5, 0.05, "ISO 898-1"},
    {"M12x1.5", 11.0257, 10.3762, 10.1597, 88.126, 88.13, 0.005, "GB/T 16823.1"},
    {"M12x1.25", 11.1881, 10.6468, 10.4664, 92.072, 92.07, 0.005, "GB/T 16823.1"},
    {"M14x1.5", 13.0257, 12.3762, 12.1597, 124.546, 124.55, 0.005, "GB/T 16823.1"},
    {"M14x1.25", 13.1881, 12.6468, 12.4664, 129.228, 129.2, 0.05, "ISO 898-1 formula"},
    {"M16x1.5", 15.0257, 14.3762, 14.1597, 167.248, 167.25, 0.005, "GB/T 16823.1"},
    {"M16x1", 15.3505, 14.9175, 14.7731, 178.174, 178.17, 0.005, "GB/T 16823.1"},
    {"M18x2", 16.7010, 15.8349, 15.5463, 204.181, 204.18, 0.005, "GB/T 16823.1"},
};

TEST(ThreadGeometry, MetricDiametersAndAreas) {
  for (const MetricRow& row : kMetric) {
    SCOPED_TRACE(std::string(row.thread) + ", " + row.source);
    const ThreadGeometry got = geometryOf(row.thread);
    EXPECT_NEAR(inMillimetres(got.pitchDiameter), row.d2, 1e-4);
    EXPECT_NEAR(inMillimetres(got.nutMinor), row.nutMinor, 1e-4);
    EXPECT_NEAR(inMillimetres(got.root), row.root, 1e-4);
    EXPECT_NEAR(inSquareMillimetres(got.stressArea), row.area, 1e-3);
    EXPECT_NEAR(inSquareMillimetres(got.stressArea), row.published, row.tolerance * 1.001);
  }
}

// Printed in a table in circulation beside right diameters; ISO 898-1 gives other areas.
TEST(ThreadGeometry, MisprintedAreasAreNotReproduced) {
  struct Row {
    const char* thread;
    double misprint, right;
  };
  for (const Row& row : {Row{"M8x0.75", 44.2, 41.81}, Row{"M16x1", 182, 178.2},
                         Row{"M18x2", 216, 204.2}, Row{"M14x1.25", 131, 129.2}}) {
    const double area = inSquareMillimetres(geometryOf(row.thread).stressArea);
    EXPECT_NEAR(area, row.right, 0.06) << row.thread;
    EXPECT_GT(std::abs(area - row.misprint) / row.misprint, 0.01) << row.thread;
  }
}

struct InchRow {
  const char* thread;
  double d2;         ///< in
  double nutMinor;   ///< in
  double area;       ///< in2, calculated
  double published;  ///< in2, four places (three for 9/16)
  double squareMm;
};

// ASME B1.1 UNC and UNF tables; the longer figures were worked with Python from its formulas.
constexpr InchRow kInch[]{
    {"1/4-20 UNC", 0.21752, 0.1959, 0.03182, 0.0318, 20.530},
    {"1/4-28 UNF", 0.22680, 0.2113, 0.03637, 0.0364, 23.467},
    {"5/16-18 UNC", 0.27642, 0.2524, 0.05243, 0.0524, 33.826},
    {"5/16-24 UNF", 0.28544, 0.2674, 0.05807, 0.0580, 37.462},
    {"3/8-16 UNC", 0.33441, 0.3073, 0.07749, 0.0775, 49.993},
    {"3/8-24 UNF", 0.34794, 0.3299, 0.08783, 0.0878, 56.663},
    {"7/16-14 UNC", 0.39111, 0.3602, 0.10631, 0.1063, 68.586},
    {"7/16-20 UNF", 0.40502, 0.3834, 0.11872, 0.1187, 76.591},
    {"1/2-13 UNC", 0.45004, 0.4167, 0.14190, 0.1419, 91.547},
    {"1/2-20 UNF", 0.46752, 0.4459, 0.15995, 0.1599, 103.195},
    {"9/16-18 UNF", 0.52642, 0.5024, 0.20298, 0.203, 130.955},
};

TEST(ThreadGeometry, InchDiametersAndAreas) {
  for (const InchRow& row : kInch) {
    SCOPED_TRACE(row.thread);
    const ThreadGeometry got = geometryOf(row.thread);
    EXPECT_NEAR(inInches(got.pitchDiameter), row.d2, 1e-5);
    EXPECT_NEAR(inInches(got.nutMinor), row.nutMinor, 5e-5);
    EXPECT_NEAR(inSquareMillimetres(got.stressArea), row.squareMm, 0.0015)
        << "0.974279 is 9 sqrt(3) / 16 rounded, which shows in the last place";
    const double squareInches = inSquareMillimetres(got.stressArea) / (25.4 * 25.4);
    EXPECT_NEAR(squareInches, row.area, 5e-6);
    EXPECT_NEAR(squareInches, row.published, 8e-5) << "ASME B1.1 as printed";
  }
}

// ASME B1.1: the rounded root of a UNR bolt lies 1.190785 P below the nominal diameter.
TEST(ThreadGeometry, RootOfAnInchBoltIsTheUnrRoot) {
  EXPECT_NEAR(inInches(geometryOf("1/2-20").root), 0.5 - 1.190785 / 20, 1e-9);
  EXPECT_NEAR(inInches(geometryOf("3/8-16").root), 0.375 - 1.190785 / 16, 1e-9);
}

// The metric constant on an inch thread: 0.0886 in2 for 3/8-24 instead of 0.0878 (ASME B1.1).
TEST(ThreadGeometry, InchThreadsDoNotTakeTheMetricConstant) {
  Thread asMetric = parseThread("3/8-24").value();
  asMetric.standard = ThreadStandard::IsoMetric;
  const Area wrong = threadGeometry(asMetric).value().stressArea;
  EXPECT_NEAR(inSquareMillimetres(wrong) / (25.4 * 25.4), 0.0886, 5e-5);
  EXPECT_GT(wrong / geometryOf("3/8-24").stressArea - 1, 0.005);
}

// An independent path: from the sharp triangle height, with whole fractions of it (ISO 68-1).
TEST(ThreadGeometry, EveryThreadOfTheSeriesKeepsItsProportions) {
  for (const Thread& thread : standardThreads()) {
    SCOPED_TRACE(thread.name);
    const ThreadGeometry got = threadGeometry(thread).value();
    const double height = std::cos(std::numbers::pi / 6) * thread.pitch.si();
    EXPECT_NEAR((thread.diameter - got.pitchDiameter).si(), height * 3 / 4, 1e-12);
    EXPECT_NEAR((got.pitchDiameter - got.nutMinor).si(), height / 2, 1e-12);
    EXPECT_GT(got.stressDiameter, got.root);
    EXPECT_LT(got.stressDiameter, got.pitchDiameter);
    const double d0 = got.stressDiameter.si();
    EXPECT_NEAR(got.stressArea.si(), std::numbers::pi * d0 * d0 / 4, 1e-15);
  }
}

TEST(ThreadGeometry, ImpossibleThreadsAreRefused) {
  const auto keyOf = [](double diameter, double pitch) {
    Thread thread;
    thread.diameter = millimetres(diameter);
    thread.pitch = millimetres(pitch);
    const auto got = threadGeometry(thread);
    return got ? std::string("accepted") : got.error().key + " " + got.error().field;
  };
  EXPECT_EQ(keyOf(0, 1), "measure.not_positive diameter");
  EXPECT_EQ(keyOf(10, -1), "measure.not_positive pitch");
  EXPECT_EQ(keyOf(std::nan(""), 1), "measure.not_finite diameter");
  EXPECT_EQ(keyOf(10, std::numeric_limits<double>::infinity()), "measure.not_finite pitch");
  EXPECT_EQ(keyOf(10, 2.6), "bolts.bad_pitch pitch");
  EXPECT_EQ(keyOf(10, 0.04), "bolts.bad_pitch pitch");
  EXPECT_EQ(keyOf(10, 2.5), "accepted");
  EXPECT_EQ(keyOf(10, 0.05), "accepted");
}

}  // namespace
}  // namespace sw::mechanics
