// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/common/workshop_style.h"

#include <QPainter>
#include <QStyleFactory>
#include <QStyleOption>

namespace sw::ui {

namespace {

constexpr int kRing = 2;        // px, focus ring
constexpr double kRound = 4.0;  // px, corners

bool isTarget(QStyle::ContentsType type) {
  return type == QStyle::CT_PushButton || type == QStyle::CT_LineEdit ||
         type == QStyle::CT_ComboBox || type == QStyle::CT_ToolButton ||
         type == QStyle::CT_CheckBox || type == QStyle::CT_RadioButton ||
         type == QStyle::CT_TabBarTab || type == QStyle::CT_MenuItem ||
         type == QStyle::CT_MenuBarItem;
}

void drawEdge(QPainter& painter, const QRect& rect, const QColor& colour, int width) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(colour, width));
  painter.setBrush(Qt::NoBrush);
  const double inset = width / 2.0;
  painter.drawRoundedRect(QRectF(rect).adjusted(inset, inset, -inset, -inset), kRound, kRound);
  painter.restore();
}

/// The edge of a target: the ring where it has the keyboard.
void drawEdge(QPainter& painter, const QStyleOption& option) {
  const bool focus = option.state.testFlag(QStyle::State_HasFocus);
  drawEdge(painter, option.rect, option.palette.color(focus ? QPalette::Highlight : QPalette::Mid),
           focus ? kRing : 1);
}

}  // namespace

WorkshopStyle::WorkshopStyle(const Sizes& sizes)
    : QProxyStyle(QStyleFactory::create(QStringLiteral("Fusion"))), m_sizes(sizes) {}

QSize WorkshopStyle::sizeFromContents(ContentsType type, const QStyleOption* option,
                                      const QSize& contents, const QWidget* widget) const {
  QSize size = QProxyStyle::sizeFromContents(type, option, contents, widget);
  if (type == CT_ItemViewItem) {
    // Rows are pressed whole; those of several lines keep some air, too.
    return QSize(size.width() + m_sizes.gap, size.height() + m_sizes.gap)
        .expandedTo({0, m_sizes.target});
  }
  if (!isTarget(type)) return size;
  if (type == CT_PushButton) size.rwidth() += m_sizes.textPixels;  // air beside the words
  return {qMax(size.width(), m_sizes.target), qMax(size.height(), m_sizes.target)};
}

int WorkshopStyle::pixelMetric(PixelMetric metric, const QStyleOption* option,
                               const QWidget* widget) const {
  switch (metric) {
    case PM_LayoutHorizontalSpacing:
    case PM_LayoutVerticalSpacing:
      return m_sizes.gap;
    case PM_LayoutLeftMargin:
    case PM_LayoutTopMargin:
    case PM_LayoutRightMargin:
    case PM_LayoutBottomMargin:
      return m_sizes.gap + kRing;
    case PM_ScrollBarExtent:
      return m_sizes.target / 2;
    case PM_IndicatorWidth:
    case PM_IndicatorHeight:
    case PM_ExclusiveIndicatorWidth:
    case PM_ExclusiveIndicatorHeight:
      return m_sizes.textPixels + kRing * 2;
    default:
      return QProxyStyle::pixelMetric(metric, option, widget);
  }
}

void WorkshopStyle::drawPrimitive(PrimitiveElement element, const QStyleOption* option,
                                  QPainter* painter, const QWidget* widget) const {
  QProxyStyle::drawPrimitive(element, option, painter, widget);
  if (element == PE_FrameLineEdit) drawEdge(*painter, *option);
}

void WorkshopStyle::drawComplexControl(ComplexControl control, const QStyleOptionComplex* option,
                                       QPainter* painter, const QWidget* widget) const {
  QProxyStyle::drawComplexControl(control, option, painter, widget);
  if (control == CC_ComboBox) drawEdge(*painter, *option);
}

void WorkshopStyle::drawControl(ControlElement element, const QStyleOption* option,
                                QPainter* painter, const QWidget* widget) const {
  const auto* button = qstyleoption_cast<const QStyleOptionButton*>(option);
  const bool part = element == CE_PushButtonBevel || element == CE_PushButtonLabel;
  if (button != nullptr && part && button->state.testFlag(State_On)) {
    // A chosen answer is seen from two metres, not guessed from a shade.
    QStyleOptionButton chosen(*button);
    chosen.palette.setColor(QPalette::Button, button->palette.color(QPalette::Highlight));
    chosen.palette.setColor(QPalette::ButtonText, button->palette.color(QPalette::HighlightedText));
    chosen.state &= ~(State_On | State_Sunken);
    chosen.state |= State_Raised;
    QProxyStyle::drawControl(element, &chosen, painter, widget);
    return;
  }
  QProxyStyle::drawControl(element, option, painter, widget);
  if (element == CE_PushButton) drawEdge(*painter, *option);
}

}  // namespace sw::ui
