// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QListView>
#include <QStyledItemDelegate>

namespace sw::ui {

/// Rows of a list with a mark, a title that wraps and a quiet line below it; at least as high as a
/// target of the mode. Headings stand apart.
class RowDelegate final : public QStyledItemDelegate {
  Q_OBJECT

 public:
  enum Role { MarkRole = Qt::UserRole, SubtitleRole, HeadingRole };
  using QStyledItemDelegate::QStyledItemDelegate;

  void paint(QPainter* painter, const QStyleOptionViewItem& option,
             const QModelIndex& index) const override;
  [[nodiscard]] QSize sizeHint(const QStyleOptionViewItem& option,
                               const QModelIndex& index) const override;
};

/// A list of such rows; they wrap anew when the list gets another width.
class RowList : public QListView {
  Q_OBJECT

 public:
  RowList(const char* name, const QString& accessible, QWidget* parent);

 protected:
  void resizeEvent(QResizeEvent* event) override;
};

}  // namespace sw::ui
