// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/work/row_delegate.h"

#include <QPainter>

#include "ui/common/marks.h"
#include "ui/common/theme.h"

namespace sw::ui {

namespace {

constexpr int kWraps = Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap;
constexpr int kAny = 10'000;

/// Where the parts of a row lie, for its width.
struct Parts {
  QRect mark, title, subtitle;
  int height = 0;
};

QFont titleFont(const QStyleOptionViewItem& option, bool heading) {
  QFont font = option.font;
  font.setBold(heading);
  return font;
}

Parts partsOf(const QStyleOptionViewItem& option, const QModelIndex& index, int width) {
  const Sizes sizes = sizesOf(currentTheme().mode);
  const bool heading = index.data(RowDelegate::HeadingRole).toBool();
  const int pad = sizes.textPixels / 2;
  const int markSide = sizes.textPixels + 4;
  const int left = heading ? pad : pad + markSide + pad;
  const int textWidth = qMax(width - left - pad, markSide);
  const QString title = index.data(Qt::DisplayRole).toString();
  const QString subtitle = index.data(RowDelegate::SubtitleRole).toString();
  const QFontMetrics metrics(titleFont(option, heading));
  const int titleHeight = metrics.boundingRect(0, 0, textWidth, kAny, kWraps, title).height();
  const int subtitleHeight = subtitle.isEmpty()
                                 ? 0
                                 : QFontMetrics(option.font)
                                       .boundingRect(0, 0, textWidth, kAny, kWraps, subtitle)
                                       .height();
  Parts parts;
  const int air = heading ? pad : pad / 2 + 1;
  parts.height = qMax(sizes.target, titleHeight + subtitleHeight + 2 * air);
  const int top = heading ? parts.height - titleHeight - air / 2
                          : (parts.height - titleHeight - subtitleHeight) / 2;
  parts.title = QRect(left, top, textWidth, titleHeight);
  parts.subtitle = QRect(left, top + titleHeight, textWidth, subtitleHeight);
  parts.mark = QRect(pad, top + (metrics.height() - markSide) / 2, markSide, markSide);
  return parts;
}

int widthOf(const QStyleOptionViewItem& option) {
  const auto* view = qobject_cast<const QListView*>(option.widget);
  return view != nullptr ? view->viewport()->width() : option.rect.width();
}

}  // namespace

QSize RowDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const {
  const int width = widthOf(option);
  return {width, partsOf(option, index, width).height};
}

RowList::RowList(const char* name, const QString& accessible, QWidget* parent) : QListView(parent) {
  setObjectName(QString::fromLatin1(name));
  setAccessibleName(accessible);
  setItemDelegate(new RowDelegate(this));
  setUniformItemSizes(false);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  // Always there: a bar that comes and goes would change the width the rows wrap to.
  setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOn);
  setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
  setResizeMode(QListView::Adjust);
}

void RowList::resizeEvent(QResizeEvent* event) {
  QListView::resizeEvent(event);
  scheduleDelayedItemsLayout();
}

void RowDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option,
                        const QModelIndex& index) const {
  const Parts parts = partsOf(option, index, option.rect.width());
  const QPoint at = option.rect.topLeft();
  const bool chosen = option.state.testFlag(QStyle::State_Selected);
  const QPalette& colours = option.palette;
  const QColor ground = colours.color(chosen ? QPalette::Highlight : QPalette::Base);
  const QColor text = colours.color(chosen ? QPalette::HighlightedText : QPalette::Text);
  painter->save();
  painter->fillRect(option.rect, ground);
  const QVariant mark = index.data(MarkRole);
  if (mark.isValid()) {
    const auto shape = static_cast<Mark>(mark.toInt());
    painter->setBackground(ground);
    drawMark(*painter, parts.mark.translated(at), shape, chosen ? text : markColour(shape, text));
  }
  painter->setPen(text);
  painter->setFont(titleFont(option, index.data(HeadingRole).toBool()));
  painter->drawText(parts.title.translated(at), kWraps, index.data(Qt::DisplayRole).toString());
  painter->setFont(option.font);
  painter->setPen(chosen ? text : quietColour(currentTheme().look));
  painter->drawText(parts.subtitle.translated(at), kWraps, index.data(SubtitleRole).toString());
  painter->restore();
}

}  // namespace sw::ui
