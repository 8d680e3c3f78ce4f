// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/bench/figure_view.h"

#include <QPainter>

#include "report_print/figure_paint.h"
#include "ui/common/theme.h"

namespace sw::ui {

namespace {

constexpr double kWidth = 44;  // em
constexpr double kHeight = 24;
constexpr double kLeastWidth = 24;

QColor mixed(const QColor& a, const QColor& b, double share) {
  const auto part = [share](int x, int y) { return static_cast<int>(x * (1 - share) + y * share); };
  return {part(a.red(), b.red()), part(a.green(), b.green()), part(a.blue(), b.blue())};
}

QColor toneColour(figure::Tone tone, const QPalette& palette, Look look) {
  using figure::Tone;
  switch (tone) {
    case Tone::Ink:
      return palette.color(QPalette::WindowText);
    case Tone::Quiet:
      return quietColour(look);
    case Tone::Grid:
      return mixed(palette.color(QPalette::Base), palette.color(QPalette::WindowText), 0.15);
    case Tone::Material:
      return mixed(palette.color(QPalette::Base), palette.color(QPalette::WindowText), 0.5);
    case Tone::Accent:
      return palette.color(QPalette::Link);
    case Tone::Second:
      return palette.color(QPalette::LinkVisited);
    case Tone::Good:
      return verdictColour(Verdict::Within, look);
    case Tone::Doubt:
    case Tone::Limit:
      return verdictColour(Verdict::Undecided, look);
    case Tone::Bad:
      return verdictColour(Verdict::Outside, look);
  }
  return palette.color(QPalette::WindowText);
}

}  // namespace

FigureView::FigureView(QWidget* parent) : QWidget(parent) {
  setObjectName(QStringLiteral("benchPicture"));
  setAccessibleName(tr("Picture"));
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  hide();
}

int FigureView::emPixels() const {
  return sizesOf(currentTheme().mode).textPixels;
}

void FigureView::show(const compute::Draw& draw) {
  m_draw = draw;
  setVisible(static_cast<bool>(m_draw));
  if (m_draw) {
    const auto figure = m_draw({kWidth, kHeight});
    setAccessibleName(QString::fromStdString(figure.title));
    setAccessibleDescription(QString::fromStdString(figure.description));
  }
  update();
}

void FigureView::clear() {
  show({});
}

QSize FigureView::sizeHint() const {
  const double em = emPixels();
  return {static_cast<int>(kWidth * em), static_cast<int>(kHeight * em)};
}

QSize FigureView::minimumSizeHint() const {
  const double em = emPixels();
  return {static_cast<int>(kLeastWidth * em), static_cast<int>(kHeight * em)};
}

void FigureView::paintEvent(QPaintEvent*) {
  if (!m_draw) return;
  const double em = emPixels();
  QPainter painter(this);
  painter.fillRect(rect(), palette().color(QPalette::Base));
  QFont font = this->font();
  font.setPixelSize(emPixels());
  const Look look = currentTheme().look;
  const report_print::FigureLook dress{
      font, [this, look](figure::Tone tone) { return toneColour(tone, palette(), look); },
      palette().color(QPalette::Base)};
  report_print::paint(painter, m_draw({width() / em, height() / em}), dress);
}

}  // namespace sw::ui
