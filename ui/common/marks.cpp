// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/common/marks.h"

#include <QPainter>
#include <QPainterPath>
#include <numbers>

#include "ui/common/theme.h"

namespace sw::ui {

namespace {

QPolygonF octagon(const QRectF& where) {
  QPolygonF shape;
  const double radius = where.width() / 2;
  for (int corner = 0; corner < 8; ++corner) {
    const double angle = std::numbers::pi / 8 * (2 * corner + 1);
    shape << where.center() + QPointF(radius * std::cos(angle), radius * std::sin(angle));
  }
  return shape;
}

QPolygonF diamond(const QRectF& where) {
  const QPointF middle = where.center();
  return {{QPointF(middle.x(), where.top()), QPointF(where.right(), middle.y()),
           QPointF(middle.x(), where.bottom()), QPointF(where.left(), middle.y())}};
}

QPolygonF tick(const QRectF& where) {
  const auto at = [&](double x, double y) {
    return QPointF(where.left() + x * where.width(), where.top() + y * where.height());
  };
  return {{at(0.22, 0.52), at(0.43, 0.73), at(0.78, 0.30)}};
}

void drawHalfDiamond(QPainter& painter, const QRectF& where, const QColor& colour) {
  painter.drawPolygon(diamond(where));
  QRectF lower = where;
  lower.setTop(where.center().y());
  painter.save();
  painter.setClipRect(lower);
  painter.setBrush(colour);
  painter.drawPolygon(diamond(where));
  painter.restore();
}

}  // namespace

Mark markOf(Verdict verdict) {
  switch (verdict) {
    case Verdict::Within:
      return Mark::Within;
    case Verdict::Outside:
      return Mark::Outside;
    case Verdict::Undecided:
    case Verdict::Provisional:
    case Verdict::InstrumentTooCoarse:
      return Mark::Undecided;
    case Verdict::NoLimit:
      break;
  }
  return Mark::None;
}

QColor markColour(Mark mark, const QColor& text) {
  const Look look = currentTheme().look;
  switch (mark) {
    case Mark::Within:
      return verdictColour(Verdict::Within, look);
    case Mark::Undecided:
      return verdictColour(Verdict::Undecided, look);
    case Mark::Outside:
      return verdictColour(Verdict::Outside, look);
    default:
      return text;
  }
}

void drawMark(QPainter& painter, const QRectF& where, Mark mark, const QColor& colour) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  const double line = qMax(1.5, where.width() / 9);
  const QRectF inside = where.adjusted(line / 2, line / 2, -line / 2, -line / 2);
  const QColor onFill = painter.background().color();
  QPen pen(colour, line);
  painter.setPen(pen);
  painter.setBrush(Qt::NoBrush);
  switch (mark) {
    case Mark::Within:
      painter.setBrush(colour);
      painter.drawEllipse(inside);
      painter.setPen(QPen(onFill, line, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
      painter.setBrush(Qt::NoBrush);
      painter.drawPolyline(tick(where));
      break;
    case Mark::Undecided:
      drawHalfDiamond(painter, inside, colour);
      break;
    case Mark::Outside:
      painter.setBrush(colour);
      painter.drawPolygon(octagon(inside));
      painter.setPen(QPen(onFill, line, Qt::SolidLine, Qt::RoundCap));
      painter.drawLine(QPointF(where.left() + where.width() * 0.27, where.center().y()),
                       QPointF(where.right() - where.width() * 0.27, where.center().y()));
      break;
    case Mark::None:
      pen.setStyle(Qt::DotLine);
      painter.setPen(pen);
      painter.drawEllipse(inside);
      break;
    case Mark::Ready:
      painter.drawEllipse(inside);
      break;
    case Mark::Done:
      painter.setPen(QPen(colour, line, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
      painter.drawPolyline(tick(where));
      break;
    case Mark::Left:
      painter.drawLine(QPointF(where.left() + where.width() * 0.25, where.center().y()),
                       QPointF(where.right() - where.width() * 0.25, where.center().y()));
      break;
    case Mark::Running:
      painter.drawEllipse(inside);
      painter.drawLine(where.center(), QPointF(where.center().x(), inside.top() + line));
      painter.drawLine(where.center(), QPointF(inside.right() - line * 1.5, where.center().y()));
      break;
  }
  painter.restore();
}

MarkView::MarkView(QWidget* parent) : QWidget(parent) {
  setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
}

void MarkView::setMark(Mark mark) {
  m_mark = mark;
  update();
}

QSize MarkView::sizeHint() const {
  const int side = sizesOf(currentTheme().mode).headingPixels * 3 / 2;
  return {side, side};
}

void MarkView::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setBackground(palette().color(QPalette::Window));
  const double side = qMin(width(), height());
  drawMark(painter, {0, 0, side, side}, m_mark,
           markColour(m_mark, palette().color(QPalette::WindowText)));
}

}  // namespace sw::ui
