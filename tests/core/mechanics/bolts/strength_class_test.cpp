// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bolts/strength_class.h"

#include <cmath>

#include "mechanics/bolts/thread_designation.h"

namespace sw::mechanics {
namespace {

using C = StrengthClass;

Area areaOf(const char* designation) {
  return threadGeometry(parseThread(designation).value()).value().stressArea;
}
Strength strength(C strengthClass, double diameter) {
  return strengthOf(strengthClass, millimetres(diameter)).value();
}

struct IsoRow {
  C strengthClass;
  double diameter;
  double tensile, yield, proof;  ///< MPa
};

// ISO 898-1:2013, table of mechanical properties, minimum values.
TEST(StrengthClass, MinimaOfTheStandard) {
  for (const IsoRow& row :
       {IsoRow{C::Iso4x6, 10, 400, 240, 225}, IsoRow{C::Iso4x8, 10, 420, 340, 310},
        IsoRow{C::Iso5x6, 10, 500, 300, 280}, IsoRow{C::Iso5x8, 10, 520, 420, 380},
        IsoRow{C::Iso6x8, 10, 600, 480, 440}, IsoRow{C::Iso8x8, 10, 800, 640, 580},
        IsoRow{C::Iso8x8, 16, 800, 640, 580}, IsoRow{C::Iso8x8, 18, 830, 660, 600},
        IsoRow{C::Iso8x8, 16.1, 830, 660, 600}, IsoRow{C::Iso9x8, 16, 900, 720, 650},
        IsoRow{C::Iso10x9, 24, 1040, 940, 830}, IsoRow{C::Iso12x9, 39, 1220, 1100, 970}}) {
    const Strength got = strength(row.strengthClass, row.diameter);
    EXPECT_NEAR(inMegapascals(got.tensile), row.tensile, 1e-9) << wordOf(row.strengthClass);
    EXPECT_NEAR(inMegapascals(got.yield), row.yield, 1e-9) << wordOf(row.strengthClass);
    EXPECT_NEAR(inMegapascals(got.proof), row.proof, 1e-9) << wordOf(row.strengthClass);
  }
}

struct SaeRow {
  C grade;
  double inch;
  double proof, yield, tensile;  ///< MPa
};

// SAE J429 in ksi, 1 ksi = 6.894757 MPa; grade 5 above 1 in: 74 / 81 / 105 ksi.
TEST(StrengthClass, SaeGradesInMegapascals) {
  for (const SaeRow& row :
       {SaeRow{C::SaeGrade2, 0.25, 379.2, 393.0, 510.2},
        SaeRow{C::SaeGrade2, 0.75, 379.2, 393.0, 510.2},
        SaeRow{C::SaeGrade5, 1.0, 586.1, 634.3, 827.4},
        SaeRow{C::SaeGrade5, 1.125, 74 * 6.894757, 81 * 6.894757, 105 * 6.894757},
        SaeRow{C::SaeGrade8, 1.5, 827.4, 896.3, 1034.2}}) {
    const Strength got = strengthOf(row.grade, inches(row.inch)).value();
    EXPECT_NEAR(inMegapascals(got.proof), row.proof, 0.06) << row.inch;
    EXPECT_NEAR(inMegapascals(got.yield), row.yield, 0.06) << row.inch;
    EXPECT_NEAR(inMegapascals(got.tensile), row.tensile, 0.06) << row.inch;
  }
  EXPECT_NEAR(inMegapascals(strengthOf(C::SaeGrade8, inches(0.5)).value().yield), 896.32, 0.01);
}

struct LoadRow {
  const char* thread;
  C strengthClass;
  enum { Proof, Breaking } load;
  double newtons;
};

// ISO 898-1, tables of loads; they use areas rounded to three digits, hence 0.5 %.
TEST(StrengthClass, LoadsOfTheStandard) {
  for (const LoadRow& row : {LoadRow{"M8", C::Iso8x8, LoadRow::Proof, 21200},
                             LoadRow{"M10", C::Iso10x9, LoadRow::Proof, 48100},
                             LoadRow{"M18", C::Iso8x8, LoadRow::Proof, 115000},
                             LoadRow{"M12", C::Iso12x9, LoadRow::Breaking, 103000},
                             LoadRow{"M20", C::Iso8x8, LoadRow::Breaking, 203000}}) {
    const auto thread = parseThread(row.thread).value();
    const Strength got = strengthOf(row.strengthClass, thread.diameter).value();
    const Pressure stress = row.load == LoadRow::Proof ? got.proof : got.tensile;
    EXPECT_NEAR(loadAt(stress, areaOf(row.thread)).si(), row.newtons, 0.005 * row.newtons)
        << row.thread;
  }
}

// The name says 10 x 100 and 9 tenths of it; the minimum is more (ISO 898-1).
TEST(StrengthClass, TheNameIsNominal) {
  const auto nominal = nominalStrength(C::Iso10x9).value();
  EXPECT_NEAR(inMegapascals(nominal.tensile), 1000, 1e-9);
  EXPECT_NEAR(inMegapascals(nominal.yield), 900, 1e-9);
  EXPECT_NEAR(inMegapascals(nominalStrength(C::Iso4x6).value().yield), 240, 1e-9);
  EXPECT_NEAR(inMegapascals(nominalStrength(C::Iso12x9).value().tensile), 1200, 1e-9);
  EXPECT_FALSE(nominalStrength(C::SaeGrade8));
  // Nowhere is the guaranteed value below what the name says.
  for (const auto& [each, name] : Words<C>::table) {
    const auto said = nominalStrength(each);
    if (!said) continue;
    EXPECT_GE(strength(each, 12).tensile, said->tensile) << name;
    EXPECT_GE(strength(each, 12).yield, said->yield) << name;
  }
}

TEST(StrengthClass, ProofIsBelowYieldIsBelowTensile) {
  for (const auto& [each, name] : Words<C>::table) {
    const Strength got = strength(each, 12);
    EXPECT_LT(got.proof, got.yield) << name;
    EXPECT_LT(got.yield, got.tensile) << name;
  }
}

TEST(StrengthClass, SizesOutsideTheStandardAreRefused) {
  const auto keyOf = [](C strengthClass, Length d) {
    const auto got = strengthOf(strengthClass, d);
    return got ? std::string("accepted") : got.error().key;
  };
  EXPECT_EQ(keyOf(C::Iso9x8, millimetres(18)), "bolts.class_not_in_size");
  EXPECT_EQ(keyOf(C::Iso10x9, millimetres(42)), "bolts.class_not_in_size");
  EXPECT_EQ(keyOf(C::SaeGrade2, inches(0.875)), "bolts.class_not_in_size");
  EXPECT_EQ(keyOf(C::SaeGrade5, inches(0.19)), "bolts.class_not_in_size");
  EXPECT_EQ(keyOf(C::SaeGrade8, inches(1.75)), "bolts.class_not_in_size");
  EXPECT_EQ(keyOf(C::Iso8x8, millimetres(0)), "measure.not_positive");
  EXPECT_EQ(keyOf(C::Iso8x8, metres(std::nan(""))), "measure.not_finite");
}

TEST(StrengthClass, KnowsWhichThreadsItIsMadeFor) {
  EXPECT_EQ(threadsOf(C::Iso12x9), ThreadStandard::IsoMetric);
  EXPECT_EQ(threadsOf(C::SaeGrade2), ThreadStandard::UnifiedInch);
}

}  // namespace
}  // namespace sw::mechanics
