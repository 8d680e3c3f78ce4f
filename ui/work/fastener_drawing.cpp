// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/work/fastener_drawing.h"

#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <cmath>
#include <numbers>

#include "mechanics/bolts/tightening_order.h"

namespace sw::ui {

namespace {

constexpr int kSide = 152;  // px: beside it the figure still fits, with gloves, too

}  // namespace

FastenerDrawing::FastenerDrawing(QWidget* parent) : QWidget(parent) {
  setObjectName(QStringLiteral("fastenerDrawing"));
  setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
}

void FastenerDrawing::present(int count, int done) {
  m_done = done;
  m_turn.clear();
  const auto order = mechanics::tighteningOrder(count);
  setVisible(order.has_value());
  if (!order) return;
  m_turn.resize(order->size());
  QStringList spoken;
  for (std::size_t turn = 0; turn < order->size(); ++turn) {
    m_turn[static_cast<std::size_t>((*order)[turn] - 1)] = static_cast<int>(turn) + 1;
    spoken += QString::number((*order)[turn]);
  }
  setAccessibleName(tr("Order of tightening"));
  setAccessibleDescription(tr("Numbered clockwise from the top: %1. Done: %2 of %3.")
                               .arg(spoken.join(QStringLiteral(", ")))
                               .arg(done)
                               .arg(count));
  updateGeometry();
  update();
}

QSize FastenerDrawing::sizeHint() const {
  return {kSide, kSide};
}

QSize FastenerDrawing::minimumSizeHint() const {
  return sizeHint();
}

void FastenerDrawing::paintEvent(QPaintEvent*) {
  if (m_turn.empty()) return;
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const QColor text = palette().color(QPalette::WindowText);
  const QColor accent = palette().color(QPalette::Highlight);
  const QPointF middle(width() / 2.0, height() / 2.0);
  const double ring = width() * 0.36;
  const double bolt = width() * 0.115;
  painter.setPen(QPen(palette().color(QPalette::Mid), 2));
  painter.drawEllipse(middle, ring, ring);
  QFont font = painter.font();
  font.setPixelSize(static_cast<int>(bolt * 1.1));
  font.setBold(true);
  painter.setFont(font);
  const auto count = static_cast<double>(m_turn.size());
  for (std::size_t place = 0; place < m_turn.size(); ++place) {
    const double angle = 2 * std::numbers::pi * (static_cast<double>(place) / count - 0.25);
    const QPointF at = middle + QPointF(ring * std::cos(angle), ring * std::sin(angle));
    QPolygonF hexagon;
    for (int corner = 0; corner < 6; ++corner) {
      const double turn = std::numbers::pi / 3 * corner;
      hexagon << at + QPointF(bolt * std::cos(turn), bolt * std::sin(turn));
    }
    const bool done = m_turn[place] <= m_done;
    const bool next = m_turn[place] == m_done + 1;
    painter.setPen(QPen(next ? accent : text, next ? 4 : 2));
    painter.setBrush(done ? QBrush(text) : QBrush(palette().color(QPalette::Base)));
    painter.drawPolygon(hexagon);
    painter.setPen(done ? palette().color(QPalette::Base) : text);
    painter.drawText(QRectF(at.x() - bolt, at.y() - bolt, 2 * bolt, 2 * bolt), Qt::AlignCenter,
                     QString::number(m_turn[place]));
  }
}

}  // namespace sw::ui
