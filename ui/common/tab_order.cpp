// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/common/tab_order.h"

#include <QLayout>
#include <QScrollArea>
#include <QWidget>
#include <vector>

namespace sw::ui {

namespace {

void collect(QWidget& widget, std::vector<QWidget*>& stops);

void collect(QLayout& layout, std::vector<QWidget*>& stops) {
  for (int i = 0; i < layout.count(); ++i) {
    QLayoutItem* item = layout.itemAt(i);
    if (item->widget() != nullptr) collect(*item->widget(), stops);
    if (item->layout() != nullptr) collect(*item->layout(), stops);
  }
}

void collect(QWidget& widget, std::vector<QWidget*>& stops) {
  if (widget.focusPolicy() != Qt::NoFocus) stops.push_back(&widget);
  const auto* scroll = qobject_cast<QScrollArea*>(&widget);
  if (scroll != nullptr && scroll->widget() != nullptr) {
    collect(*scroll->widget(), stops);
  } else if (widget.layout() != nullptr) {
    collect(*widget.layout(), stops);
  }
}

}  // namespace

void tabAsLaidOut(QWidget& root) {
  std::vector<QWidget*> stops;
  if (root.layout() != nullptr) collect(*root.layout(), stops);
  for (std::size_t i = 1; i < stops.size(); ++i) QWidget::setTabOrder(stops[i - 1], stops[i]);
}

}  // namespace sw::ui
