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

QSize FlowLayout::sizeWithin(const QLayoutItem& item, int width) const {
  QSize size = item.sizeHint().boundedTo({qMax(width, 1), QWIDGETSIZE_MAX});
  if (item.hasHeightForWidth()) size.setHeight(item.heightForWidth(size.width()));
  return size;
}

int FlowLayout::arrange(const QRect& outer, Act act) const {
  const QMargins margins = contentsMargins();
  const QRect rect = outer.marginsRemoved(margins);
  int y = rect.y();
  qsizetype first = 0;
  while (first < m_items.size()) {
    // The items of one line, then their places in the middle of it.
    QList<QSize> sizes;
    int width = 0;
    int height = 0;
    qsizetype next = first;
    for (; next < m_items.size(); ++next) {
      const bool hidden = m_items[next]->isEmpty();
      const QSize size = hidden ? QSize(0, 0) : sizeWithin(*m_items[next], rect.width());
      const int wanted = width + (width > 0 && !hidden ? gap() : 0) + size.width();
      if (width > 0 && wanted > rect.width()) break;
      width = hidden ? width : wanted;
      height = qMax(height, size.height());
      sizes.append(size);
    }
    int x = rect.x();
    for (qsizetype i = first; i < next && act == Act::Place; ++i) {
      const QSize size = sizes[i - first];
      if (m_items[i]->isEmpty()) continue;
      m_items[i]->setGeometry({QPoint(x, y + (height - size.height()) / 2), size});
      x += size.width() + gap();
    }
    if (height > 0) y += height + gap();
    first = next;
  }
  const int used = y > rect.y() ? y - gap() - rect.y() : 0;
  return used + margins.top() + margins.bottom();
}

}  // namespace sw::ui
