// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QProxyStyle>

#include "ui/common/theme.h"

namespace sw::ui {

/// Gives every target the least size of the mode, an edge that is seen in every look, and keyboard
/// focus a ring.
class WorkshopStyle : public QProxyStyle {
  Q_OBJECT

 public:
  explicit WorkshopStyle(const Sizes& sizes);

  [[nodiscard]] QSize sizeFromContents(ContentsType type, const QStyleOption* option,
                                       const QSize& contents, const QWidget* widget) const override;
  [[nodiscard]] int pixelMetric(PixelMetric metric, const QStyleOption* option,
                                const QWidget* widget) const override;
  void drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                     const QWidget* widget) const override;
  void drawComplexControl(ComplexControl control, const QStyleOptionComplex* option,
                          QPainter* painter, const QWidget* widget) const override;
  void drawControl(ControlElement element, const QStyleOption* option, QPainter* painter,
                   const QWidget* widget) const override;

 private:
  Sizes m_sizes;
};

}  // namespace sw::ui
