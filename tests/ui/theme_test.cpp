// SPDX-License-Identifier: GPL-3.0-or-later
// Contrast after WCAG 2.2: 1.4.3 (text 4.5:1) and 1.4.11 (graphics and focus 3:1); sizes after the
// two modes of the window.
#include "ui/common/theme.h"

#include "window_fixture.h"

namespace sw::ui {
namespace {

constexpr Look kLooks[] = {Look::Light, Look::Dark, Look::HighContrast};

// WCAG 2.2, definition of contrast ratio: black on white is 21; the grey #767676 on white is the
// well-known least grey that passes 4.5 (4.54).
TEST(Contrast, KnownPairs) {
  EXPECT_NEAR(contrast(Qt::black, Qt::white), 21.0, 1e-9);
  EXPECT_NEAR(contrast(Qt::white, Qt::white), 1.0, 1e-12);
  EXPECT_NEAR(contrast(QColor(0x76, 0x76, 0x76), Qt::white), 4.54, 0.005);
  EXPECT_DOUBLE_EQ(contrast(Qt::red, Qt::blue), contrast(Qt::blue, Qt::red));
}

TEST(Contrast, TextOfEveryLookCanBeRead) {
  for (const Look look : kLooks) {
    const QPalette p = paletteOf(look);
    for (const auto background : {QPalette::Window, QPalette::Base, QPalette::AlternateBase}) {
      EXPECT_GE(contrast(p.color(QPalette::Text), p.color(background)), 7.0) << wordOf(look);
      EXPECT_GE(contrast(quietColour(look), p.color(background)), 4.5) << wordOf(look);
    }
    EXPECT_GE(contrast(p.color(QPalette::ButtonText), p.color(QPalette::Button)), 7.0);
    EXPECT_GE(contrast(p.color(QPalette::HighlightedText), p.color(QPalette::Highlight)), 4.5);
    EXPECT_GE(contrast(p.color(QPalette::Highlight), p.color(QPalette::Window)), 3.0);
    EXPECT_GE(contrast(p.color(QPalette::Disabled, QPalette::Text), p.color(QPalette::Base)), 4.5);
  }
}

TEST(Contrast, VerdictsCanBeReadInEveryLook) {
  for (const Look look : kLooks) {
    const QPalette p = paletteOf(look);
    for (const Verdict verdict :
         {Verdict::Within, Verdict::Outside, Verdict::Undecided, Verdict::NoLimit}) {
      EXPECT_GE(contrast(verdictColour(verdict, look), p.color(QPalette::Base)), 4.5)
          << wordOf(look) << " " << static_cast<int>(verdict);
    }
  }
}

TEST(Theme, SizesOfTheTwoModes) {
  EXPECT_GE(sizesOf(Mode::Desk).target, 32);
  EXPECT_GE(sizesOf(Mode::Workshop).target, 72);
  EXPECT_GE(sizesOf(Mode::Workshop).gap, 24);
}

TEST(Theme, LooksAreFoundByTheirWords) {
  for (const Look look : kLooks) EXPECT_EQ(fromWord<Look>(wordOf(look)), look);
  EXPECT_FALSE(fromWord<Look>("sepia"));
}

TEST(Theme, IsKeptInWords) {
  const Theme theme{Look::HighContrast, Mode::Workshop};
  EXPECT_EQ(themeOf(wordsOf(theme), {}), theme);
  EXPECT_EQ(themeOf("", theme), theme);
  EXPECT_EQ(themeOf("sepia desk", theme), (Theme{Look::HighContrast, Mode::Desk}));
}

}  // namespace
}  // namespace sw::ui
