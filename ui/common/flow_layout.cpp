// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/common/flow_layout.h"

#include <QStyle>
#include <QWidget>

#include "ui/common/theme.h"

namespace sw::ui {

FlowLayout::FlowLayout(QWidget* parent) : QLayout(parent) {
  setContentsMargins(0, 0, 0, 0);
}

FlowLayout::~FlowLayout() {
  qDeleteAll(m_items);
}

void FlowLayout::addItem(QLayoutItem* item) {
  m_items.append(item);
  invalidate();
}

int FlowLayout::count() const {
  return static_cast<int>(m_items.size());
}

QLayoutItem* FlowLayout::itemAt(int index) const {
  return m_items.value(index);
}

QLayoutItem* FlowLayout::takeAt(int index) {
  if (index < 0 || index >= m_items.size()) return nullptr;
  invalidate();
  return m_items.takeAt(index);
}

int FlowLayout::heightForWidth(int width) const {
  return arrange({0, 0, width, 0}, Act::Measure);
}

QSize FlowLayout::sizeHint() const {
  QSize size;
  for (const QLayoutItem* item : m_items) {
    if (item->isEmpty()) continue;
    const QSize hint = item->sizeHint();
    size = {size.width() + hint.width() + (size.width() > 0 ? gap() : 0),
            qMax(size.height(), hint.height())};
  }
  const QMargins margins = contentsMargins();
  return size + QSize(margins.left() + margins.right(), margins.top() + margins.bottom());
}

QSize FlowLayout::minimumSize() const {
  QSize size;
  for (const QLayoutItem* item : m_items) {
    if (!item->isEmpty()) size = size.expandedTo(item->minimumSize());
  }
  const QMargins margins = contentsMargins();
  return size + QSize(margins.left() + margins.right(), margins.top() + margins.bottom());
}

void FlowLayout::setGeometry(const QRect& rect) {
  QLayout::setGeometry(rect);
  arrange(rect, Act::Place);
}

int FlowLayout::gap() const {
  return spacing() >= 0 ? spacing() : sizesOf(currentTheme().mode).gap;
}

int FlowLayout::arrange(const QRect& outer, Act act) const {
  const QMargins margins = contentsMargins();
  const QRect rect = outer.marginsRemoved(margins);
  int x = rect.x();
  int y = rect.y();
  int line = 0;
  for (QLayoutItem* item : m_items) {
    if (item->isEmpty()) continue;
    const QSize hint = item->sizeHint().boundedTo({qMax(rect.width(), 1), QWIDGETSIZE_MAX});
    if (x > rect.x() && x + hint.width() > rect.right() + 1) {
      x = rect.x();
      y += line + gap();
      line = 0;
    }
    if (act == Act::Place) item->setGeometry({QPoint(x, y), hint});
    x += hint.width() + gap();
    line = qMax(line, hint.height());
  }
  return y + line - rect.y() + margins.top() + margins.bottom();
}

}  // namespace sw::ui
