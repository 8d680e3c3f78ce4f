// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/diagnosis/causes_picture.h"

#include <algorithm>
#include <cmath>

#include "compute/picture_parts.h"
#include "figure/drawing.h"
#include "phrasing/cause_words.h"

namespace sw::compute {

namespace {

using figure::Figure;
using figure::Room;
using figure::Side;
using figure::Text;
using figure::Tone;

constexpr double kRow = 3.0;       // em: a name and its bar
constexpr double kName = 1.5;      // em of it, for the name
constexpr double kMostBars = 5;    // four and something else
constexpr double kBar = 0.95;      // em
constexpr double kWordsRoom = 11;  // em beside the longest bar
constexpr double kFigureRoom = 6;  // em more with a figure

/// The bars that fit, and one for all others.
std::vector<CauseBar> fitted(const std::vector<CauseBar>& bars, std::size_t rows) {
  if (bars.size() <= rows) return bars;
  std::vector<CauseBar> shown(bars.begin(), bars.begin() + static_cast<std::ptrdiff_t>(rows) - 1);
  CauseBar rest{"something else", 0};
  for (std::size_t i = shown.size(); i < bars.size(); ++i) rest.probability += bars[i].probability;
  shown.push_back(std::move(rest));
  return shown;
}

std::string wordsOf(double probability, ChanceAs as) {
  const QString words = phrasing::likelihoodWords(probability);
  if (as == ChanceAs::Words) return words.toStdString();
  return (words + ", " + phrasing::ofHundred(probability) + " of 100").toStdString();
}

/// Smaller where a name would not fit.
double nameSize(const std::string& name, double width) {
  constexpr double kUsual = 0.95, kLeast = 0.75;
  return std::clamp(kUsual * (width - 0.5) / figure::roomFor(name, kUsual), kLeast, kUsual);
}

void drawBar(Figure& figure, const CauseBar& bar, const std::string& words, double top,
             double scale, Tone tone) {
  const double right = std::max(0.15, bar.probability * scale);
  figure.add(Text{{0.2, top + kName - 0.15},
                  bar.name,
                  Side::AboveRight,
                  Room::Fixed,
                  Tone::Ink,
                  nameSize(bar.name, figure.size.width),
                  tone == Tone::Accent});
  figure.add(figure::box({0.2, top + kName}, {0.2 + right, top + kName + kBar}, tone, 0.45));
  figure.add(Text{{0.2 + right + 0.4, top + kName + kBar / 2},
                  words,
                  Side::Right,
                  Room::Fixed,
                  Tone::Quiet,
                  0.85});
}

}  // namespace

Figure causesPicture(const std::vector<CauseBar>& bars, figure::Size size, ChanceAs as) {
  const auto rows =
      static_cast<std::size_t>(std::clamp(std::floor(size.height / kRow), 2.0, kMostBars));
  const auto shown = fitted(bars, rows);
  double most = 0;
  std::string description;
  for (const CauseBar& bar : shown) {
    most = std::max(most, bar.probability);
    description +=
        (description.empty() ? "" : "; ") + bar.name + ": " + wordsOf(bar.probability, as);
  }
  Figure figure = newFigure(size, "What makes it shake", description);
  if (!(most > 0)) return figure;
  const double words = as == ChanceAs::Words ? kWordsRoom : kWordsRoom + kFigureRoom;
  const double scale = std::max(1.0, size.width - words) / most;
  for (std::size_t i = 0; i < shown.size(); ++i) {
    drawBar(figure, shown[i], wordsOf(shown[i].probability, as), kRow * static_cast<double>(i),
            scale, i == 0 ? Tone::Accent : Tone::Material);
  }
  return figure;
}

}  // namespace sw::compute
