// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QColor>
#include <QFont>
#include <QRectF>
#include <functional>
#include <vector>

#include "figure/figure.h"

class QPainter;

// Paints a figure for screen, PDF and printer, and finds a place for each of its texts: no two
// overlap and none leaves the picture. Texts that may be left out go first.

namespace sw::report_print {

struct FigureLook {
  QFont font;  ///< its pixel size is one em
  std::function<QColor(figure::Tone)> colour;
  QColor ground;  ///< behind texts that lie on lines; not drawn where invalid
};

/// Black on white, as on paper. `emPixels` is the size of one em.
[[nodiscard]] FigureLook printLook(double emPixels);

struct PlacedText {
  QRectF box;  ///< px
  const figure::Text* text = nullptr;
  QFont font;
};
struct TextPlaces {
  std::vector<PlacedText> placed;
  std::vector<const figure::Text*> leftOut;  ///< optional ones for which there was no room
  std::vector<const figure::Text*> crowded;  ///< others that had to overlap or be cut: a fault
};
[[nodiscard]] TextPlaces placeTexts(const figure::Figure& figure, const FigureLook& look);

/// Paints with the figure's corner at the painter's origin.
void paint(QPainter& painter, const figure::Figure& figure, const FigureLook& look);

/// The figure on white (or the look's ground).
[[nodiscard]] QImage picture(const figure::Figure& figure, const FigureLook& look);

}  // namespace sw::report_print
