// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QColor>
#include <QRectF>
#include <QWidget>

#include "measure/evaluation.h"

class QPainter;

namespace sw::ui {

/// Shapes that tell states apart without colour.
enum class Mark {
  Within,     ///< filled circle with a tick
  Undecided,  ///< half-filled diamond
  Outside,    ///< filled octagon with a bar
  None,       ///< dashed ring: not measured, waits
  Ready,      ///< ring: can be done now
  Done,       ///< tick
  Left,       ///< short bar: does not apply
  Running     ///< ring with a hand
};
[[nodiscard]] Mark markOf(Verdict verdict);

/// Draws the mark into the square `where`.
void drawMark(QPainter& painter, const QRectF& where, Mark mark, const QColor& colour);
/// The colour a mark has in the current look; Ready, Done and others take the text's own.
[[nodiscard]] QColor markColour(Mark mark, const QColor& text);

/// A mark as a widget, as high as a line of its text.
class MarkView final : public QWidget {
  Q_OBJECT

 public:
  explicit MarkView(QWidget* parent = nullptr);
  void setMark(Mark mark);
  [[nodiscard]] QSize sizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  Mark m_mark = Mark::None;
};

}  // namespace sw::ui
