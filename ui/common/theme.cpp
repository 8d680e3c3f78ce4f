// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/common/theme.h"

#include <QApplication>
#include <QFont>
#include <algorithm>
#include <cmath>

#include "ui/common/workshop_style.h"

namespace sw::ui {

namespace {

struct Colours {
  QColor window, base, alternate, text, quiet, button, border, accent, onAccent;
};

const Colours& coloursOf(Look look) {
  static const Colours kLight{{0xF3, 0xF1, 0xEC}, {0xFF, 0xFF, 0xFF}, {0xF8, 0xF6, 0xF2},
                              {0x1D, 0x22, 0x26}, {0x54, 0x5B, 0x61}, {0xE7, 0xE3, 0xDA},
                              {0x8A, 0x86, 0x7C}, {0x0F, 0x5E, 0x63}, {0xFF, 0xFF, 0xFF}};
  static const Colours kDark{{0x1B, 0x1F, 0x23}, {0x12, 0x16, 0x19}, {0x1F, 0x24, 0x28},
                             {0xEC, 0xEA, 0xE4}, {0xB4, 0xB8, 0xBB}, {0x2E, 0x35, 0x3B},
                             {0x7C, 0x86, 0x8E}, {0x5C, 0xC4, 0xC0}, {0x0B, 0x1B, 0x1B}};
  static const Colours kHigh{{0x00, 0x00, 0x00}, {0x00, 0x00, 0x00}, {0x14, 0x14, 0x14},
                             {0xFF, 0xFF, 0xFF}, {0xE6, 0xE6, 0xE6}, {0x00, 0x00, 0x00},
                             {0xFF, 0xFF, 0xFF}, {0xFF, 0xD9, 0x3D}, {0x00, 0x00, 0x00}};
  switch (look) {
    case Look::Light:
      return kLight;
    case Look::Dark:
      return kDark;
    case Look::HighContrast:
      break;
  }
  return kHigh;
}

Theme& theTheme() {
  static Theme theme;
  return theme;
}

double luminance(const QColor& colour) {
  const auto linear = [](double channel) {
    return channel <= 0.04045 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
  };
  return 0.2126 * linear(colour.redF()) + 0.7152 * linear(colour.greenF()) +
         0.0722 * linear(colour.blueF());
}

}  // namespace

Sizes sizesOf(Mode mode) {
  if (mode == Mode::Workshop) return {72, 24, 22, 34, 56};
  return {34, 10, 14, 22, 30};
}

QPalette paletteOf(Look look) {
  const Colours& c = coloursOf(look);
  QPalette palette(c.text, c.button, c.border.lighter(130), c.border.darker(150), c.border, c.text,
                   c.onAccent, c.base, c.window);
  palette.setColor(QPalette::AlternateBase, c.alternate);
  palette.setColor(QPalette::ButtonText, c.text);
  palette.setColor(QPalette::Highlight, c.accent);
  palette.setColor(QPalette::HighlightedText, c.onAccent);
  palette.setColor(QPalette::Link, c.accent);
  palette.setColor(QPalette::PlaceholderText, c.quiet);
  palette.setColor(QPalette::ToolTipBase, c.base);
  palette.setColor(QPalette::ToolTipText, c.text);
  for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText}) {
    palette.setColor(QPalette::Disabled, role, c.quiet);
  }
  return palette;
}

QColor verdictColour(Verdict verdict, Look look) {
  const bool light = look == Look::Light;
  switch (verdict) {
    case Verdict::Within:
      return light ? QColor(0x00, 0x67, 0xB3) : QColor(0x5B, 0xB8, 0xFF);
    case Verdict::Outside:
      return light ? QColor(0x6E, 0x0A, 0x1E) : QColor(0xFF, 0x5C, 0x7A);
    case Verdict::Undecided:
    case Verdict::Provisional:
    case Verdict::InstrumentTooCoarse:
      return light ? QColor(0x9A, 0x5F, 0x00) : QColor(0xFF, 0xC2, 0x4D);
    case Verdict::NoLimit:
      break;
  }
  return light ? QColor(0x70, 0x75, 0x7B) : QColor(0xE3, 0xE7, 0xEB);
}

QColor quietColour(Look look) {
  return coloursOf(look).quiet;
}

double contrast(const QColor& a, const QColor& b) {
  const auto [low, high] = std::minmax({luminance(a), luminance(b)});
  return (high + 0.05) / (low + 0.05);
}

void applyTheme(const Theme& theme) {
  theTheme() = theme;
  const Sizes sizes = sizesOf(theme.mode);
  QFont font = QApplication::font();
  font.setPixelSize(sizes.textPixels);
  QApplication::setFont(font);
  QApplication::setStyle(new WorkshopStyle(sizes));
  QApplication::setPalette(paletteOf(theme.look));
}

Theme currentTheme() {
  return theTheme();
}

std::string wordsOf(const Theme& theme) {
  return std::string(wordOf(theme.look)) + " " + std::string(wordOf(theme.mode));
}

Theme themeOf(const std::string& words, Theme otherwise) {
  const auto blank = words.find(' ');
  if (blank == std::string::npos) return otherwise;
  otherwise.look = fromWord<Look>(words.substr(0, blank)).value_or(otherwise.look);
  otherwise.mode = fromWord<Mode>(words.substr(blank + 1)).value_or(otherwise.mode);
  return otherwise;
}

}  // namespace sw::ui
