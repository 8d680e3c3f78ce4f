// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QColor>
#include <QPalette>

#include "base/words.h"
#include "measure/evaluation.h"

// The look of the window: our own colours for light, dark and high contrast, and the sizes of the
// two modes, at the desk and at the vehicle.

namespace sw::ui {

enum class Look { Light, Dark, HighContrast };
enum class Mode {
  Desk,     ///< targets from 32 px
  Workshop  ///< gloves and two metres: targets from 72 px, gaps from 24 px
};

struct Theme {
  Look look = Look::Light;
  Mode mode = Mode::Desk;
  bool operator==(const Theme&) const = default;
};

struct Sizes {
  int target = 0;  ///< least height of what is pressed or typed into, px
  int gap = 0;     ///< between two targets, px
  int textPixels = 0;
  int headingPixels = 0;
  int valuePixels = 0;  ///< digits of a measured value
};
[[nodiscard]] Sizes sizesOf(Mode mode);

[[nodiscard]] QPalette paletteOf(Look look);

/// Colour-blind-safe, at least 4.5:1 on the base of the look (WCAG 2.2, 1.4.3). Never the only
/// mark: a verdict always has its shape and its word too.
[[nodiscard]] QColor verdictColour(Verdict verdict, Look look);

/// Secondary text, still readable: at least 4.5:1 on window and base.
[[nodiscard]] QColor quietColour(Look look);

/// WCAG contrast ratio of two opaque colours, 1 to 21.
[[nodiscard]] double contrast(const QColor& a, const QColor& b);

/// Style, palette and font of the whole program. Needs a QApplication.
void applyTheme(const Theme& theme);
[[nodiscard]] Theme currentTheme();

/// "dark workshop", to be kept and found again; words that are not known leave `otherwise`.
[[nodiscard]] std::string wordsOf(const Theme& theme);
[[nodiscard]] Theme themeOf(const std::string& words, Theme otherwise);

}  // namespace sw::ui

template <>
struct sw::Words<sw::ui::Look> {
  static constexpr std::pair<sw::ui::Look, std::string_view> table[] = {
      {sw::ui::Look::Light, "light"},
      {sw::ui::Look::Dark, "dark"},
      {sw::ui::Look::HighContrast, "high-contrast"}};
};

template <>
struct sw::Words<sw::ui::Mode> {
  static constexpr std::pair<sw::ui::Mode, std::string_view> table[] = {
      {sw::ui::Mode::Desk, "desk"}, {sw::ui::Mode::Workshop, "workshop"}};
};
