// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/work/readings_plot.h"

#include <QPainter>
#include <algorithm>
#include <cmath>

#include "phrasing/verdict_phrase.h"
#include "ui/common/marks.h"
#include "ui/common/theme.h"

namespace sw::ui {

namespace {

/// 1, 2 or 5 times a power of ten, for about five marks.
double tickStep(double span) {
  const double rough = span / 5;
  const double power = std::pow(10.0, std::floor(std::log10(rough)));
  const double lead = rough / power;
  return (lead < 1.5 ? 1 : lead < 3.5 ? 2 : lead < 7.5 ? 5 : 10) * power;
}

}  // namespace

/// The value axis in the unit shown, left to right.
struct ReadingsPlot::Axis {
  double low = 0, high = 1;
  QRectF area;

  [[nodiscard]] double x(double value) const {
    return area.left() + (value - low) / (high - low) * area.width();
  }
  [[nodiscard]] double inside(double value) const {
    return std::clamp(x(value), area.left(), area.right());
  }
};

ReadingsPlot::ReadingsPlot(QWidget* parent) : QWidget(parent) {
  setObjectName(QStringLiteral("readingsPlot"));
  setAccessibleName(tr("Readings against the limit"));
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void ReadingsPlot::present(Content content) {
  m_content = std::move(content);
  setVisible(!m_content.readings.empty());
  const QString value =
      phrasing::measuredText(m_content.mean, m_content.expandedUncertainty, m_content.unit);
  setAccessibleDescription(tr("%1 readings, mean %2, limit %3")
                               .arg(m_content.readings.size())
                               .arg(value, phrasing::limitText(m_content.limit, m_content.unit)));
  update();
}

void ReadingsPlot::clear() {
  m_content = {};
  hide();
}

QSize ReadingsPlot::sizeHint() const {
  const int line = sizesOf(currentTheme().mode).textPixels;
  return {20 * line, 7 * line};
}

QSize ReadingsPlot::minimumSizeHint() const {
  return {sizeHint().width() / 2, sizeHint().height()};
}

void ReadingsPlot::paintEvent(QPaintEvent*) {
  if (m_content.readings.empty()) return;
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const double toUnit = 1 / m_content.unit.toSi;
  std::vector<double> seen{(m_content.mean - m_content.expandedUncertainty) * toUnit,
                           (m_content.mean + m_content.expandedUncertainty) * toUnit};
  for (const double reading : m_content.readings) seen.push_back(reading * toUnit);
  for (const auto& edge : {m_content.limit.min, m_content.limit.max}) {
    if (!edge) continue;
    seen.push_back((*edge - m_content.undecidedWithin) * toUnit);
    seen.push_back((*edge + m_content.undecidedWithin) * toUnit);
  }
  const auto [low, high] = std::minmax_element(seen.begin(), seen.end());
  const double air = qMax((*high - *low) * 0.12, std::abs(*high) * 0.02 + 1e-9);
  const int line = fontMetrics().height();
  const Axis axis{*low - air, *high + air,
                  QRectF(line, 2, width() - 2.0 * line, height() - 4.0 - 1.6 * line)};
  drawZones(painter, axis);
  drawReadings(painter, axis);
  drawScale(painter, axis);
}

void ReadingsPlot::drawZones(QPainter& painter, const Axis& axis) const {
  painter.fillRect(axis.area, palette().color(QPalette::Base));
  const LimitBand& limit = m_content.limit;
  if (!limit.any()) return;
  const double toUnit = 1 / m_content.unit.toSi;
  const double left = limit.min ? axis.inside(*limit.min * toUnit) : axis.area.left();
  const double right = limit.max ? axis.inside(*limit.max * toUnit) : axis.area.right();
  QColor band = verdictColour(Verdict::Within, currentTheme().look);
  band.setAlphaF(0.16F);
  painter.fillRect(QRectF(left, axis.area.top(), right - left, axis.area.height()), band);
  const QColor undecided = verdictColour(Verdict::Undecided, currentTheme().look);
  for (const auto& edge : {limit.min, limit.max}) {
    if (!edge) continue;
    const double from = axis.inside((*edge - m_content.undecidedWithin) * toUnit);
    const double to = axis.inside((*edge + m_content.undecidedWithin) * toUnit);
    painter.fillRect(QRectF(from, axis.area.top(), to - from, axis.area.height()),
                     QBrush(undecided, Qt::BDiagPattern));
    painter.setPen(QPen(palette().color(QPalette::Text), 2));
    const double x = axis.x(*edge * toUnit);
    painter.drawLine(QPointF(x, axis.area.top()), QPointF(x, axis.area.bottom()));
  }
}

void ReadingsPlot::drawReadings(QPainter& painter, const Axis& axis) const {
  const double toUnit = 1 / m_content.unit.toSi;
  const QColor text = palette().color(QPalette::Text);
  const auto count = static_cast<double>(m_content.readings.size());
  const double radius = qMax(3.0, sizesOf(currentTheme().mode).textPixels / 4.0);
  const double rows = axis.area.height() * 0.62;
  for (std::size_t i = 0; i < m_content.readings.size(); ++i) {
    const double y =
        axis.area.top() + radius + (rows - 2 * radius) * (static_cast<double>(i) + 0.5) / count;
    painter.setPen(QPen(palette().color(QPalette::Base), 1));
    painter.setBrush(text);
    painter.drawEllipse(QPointF(axis.x(m_content.readings[i] * toUnit), y), radius, radius);
  }
  const double y = axis.area.top() + axis.area.height() * 0.80;
  const Mark mark = markOf(m_content.verdict);
  const QColor colour = markColour(mark, text);
  painter.setPen(QPen(colour, 3));
  painter.drawLine(QPointF(axis.x((m_content.mean - m_content.expandedUncertainty) * toUnit), y),
                   QPointF(axis.x((m_content.mean + m_content.expandedUncertainty) * toUnit), y));
  const double half = radius * 1.8;
  painter.setBackground(palette().color(QPalette::Base));
  drawMark(painter, QRectF(axis.x(m_content.mean * toUnit) - half, y - half, 2 * half, 2 * half),
           mark, colour);
}

void ReadingsPlot::drawScale(QPainter& painter, const Axis& axis) const {
  const double step = tickStep(axis.high - axis.low);
  painter.setPen(QPen(palette().color(QPalette::WindowText), 1));
  painter.drawLine(axis.area.bottomLeft(), axis.area.bottomRight());
  const int places = qMax(0, static_cast<int>(std::ceil(-std::log10(step) - 1e-9)));
  for (double tick = std::ceil(axis.low / step) * step; tick <= axis.high; tick += step) {
    const double x = axis.x(tick);
    painter.drawLine(QPointF(x, axis.area.bottom()), QPointF(x, axis.area.bottom() + 4));
    // A rounding rest must not print as "-0".
    const double shown = std::abs(tick) < step * 1e-6 ? 0.0 : tick;
    QString label = QString::number(shown, 'f', places);
    const bool last = tick + step > axis.high;
    if (last) label += QLatin1Char(' ') + QString::fromUtf8(m_content.unit.symbol.data());
    const double half = fontMetrics().horizontalAdvance(label) / 2.0 + 2;
    const double from = std::clamp(x - half, 0.0, width() - 2 * half);
    painter.drawText(QRectF(from, axis.area.bottom() + 4, 2 * half, fontMetrics().height() + 2),
                     Qt::AlignHCenter | Qt::AlignTop, label);
  }
}

}  // namespace sw::ui
