// SPDX-License-Identifier: GPL-3.0-or-later
#include "report_print/sheet_text.h"

#include <QAbstractTextDocumentLayout>
#include <QImage>
#include <QPaintDevice>
#include <QTextBlock>
#include <QTextCursor>
#include <QTextFrame>
#include <QTextTable>
#include <QUrl>
#include <algorithm>
#include <cmath>
#include <vector>

namespace sw::report_print {

namespace {

constexpr double kRoomBelowHeading = 5.0;  // times the heading's own height
constexpr double kLeftOver = 7.0;          // pixels, less than any line is high
constexpr double kTallestKept = 0.6;       // of a page: a taller row is broken after all

/// Paddings are given in pixels of a size Qt does not tell; a cell shows it.
double dotsPerPixel(QPaintDevice* device) {
  constexpr int kPixels = 100;
  QTextDocument probe;
  probe.documentLayout()->setPaintDevice(device);
  probe.setHtml(QStringLiteral("<table cellspacing=\"0\"><tr>"
                               "<td style=\"padding-top:0px\">x</td></tr><tr>"
                               "<td style=\"padding-top:%1px\">x</td></tr><tr>"
                               "<td style=\"padding-top:0px\">x</td></tr></table>")
                    .arg(kPixels));
  std::vector<double> tops;
  for (QTextBlock block = probe.begin(); block.isValid(); block = block.next()) {
    if (block.text() != QStringLiteral("x")) continue;
    tops.push_back(probe.documentLayout()->blockBoundingRect(block).top());
  }
  if (tops.size() != 3) return 1.0;
  // The second row is as high as the third but for its padding.
  return std::max(1.0, ((tops[1] - tops[0]) - (tops[2] - tops[1])) / kPixels);
}

/// Works from the top down, since each move shifts what follows.
class PageKeeper {
 public:
  explicit PageKeeper(QTextDocument& text)
      : m_text(text),
        m_page(text.pageSize().height()),
        m_dotsPerPixel(dotsPerPixel(text.documentLayout()->paintDevice())) {}

  void keep(QTextFrame* frame) {
    for (auto it = frame->begin(); !it.atEnd(); ++it) {
      if (auto* table = qobject_cast<QTextTable*>(it.currentFrame())) {
        keepRows(*table);
      } else if (it.currentFrame() == nullptr) {
        keepHeading(it.currentBlock());
      }
    }
  }

 private:
  [[nodiscard]] QRectF rectOf(const QTextBlock& block) const {
    return m_text.documentLayout()->blockBoundingRect(block);
  }
  [[nodiscard]] double roomBelow(double top) const { return m_page - std::fmod(top, m_page); }

  void keepHeading(const QTextBlock& block) {
    if (block.blockFormat().headingLevel() == 0) return;
    const QRectF rect = rectOf(block);
    if (rect.top() <= 0 || roomBelow(rect.top()) > kRoomBelowHeading * rect.height()) return;
    QTextBlockFormat format = block.blockFormat();
    format.setPageBreakPolicy(QTextFormat::PageBreak_AlwaysBefore);
    QTextCursor(block).setBlockFormat(format);
    layOutAgain();
  }

  struct Extent {
    double top = 0;
    double bottom = 0;
  };
  [[nodiscard]] Extent extentOf(const QTextTable& table, int row) const {
    Extent extent{1e12, 0};
    for (int column = 0; column < table.columns(); ++column) {
      const QTextTableCell cell = table.cellAt(row, column);
      extent.top = std::min(extent.top, rectOf(cell.firstCursorPosition().block()).top());
      extent.bottom = std::max(extent.bottom, rectOf(cell.lastCursorPosition().block()).bottom());
    }
    return extent;
  }

  /// A group row stays with the row it heads.
  [[nodiscard]] static int lastOfUnit(const QTextTable& table, int row) {
    const bool group = table.columns() > 1 && table.cellAt(row, 0).columnSpan() == table.columns();
    return group && row + 1 < table.rows() ? row + 1 : row;
  }

  void keepRows(QTextTable& table) {
    for (int row = table.format().headerRowCount(); row < table.rows(); ++row) {
      const int last = lastOfUnit(table, row);
      const Extent extent{extentOf(table, row).top, extentOf(table, last).bottom};
      const double room = roomBelow(extent.top);
      const double height = extent.bottom - extent.top;
      if (height > room && height < kTallestKept * m_page) pushDown(table, row, room);
      row = last;
    }
  }

  /// Fills what is left of the page below the row before, but for less than a line: the layout
  /// then takes the row to the next page by itself. (Padding of the row's own would go with it.)
  void pushDown(QTextTable& table, int row, double room) const {
    if (row <= table.format().headerRowCount()) return breakBefore(table);
    const double padding = std::max(0.0, room / m_dotsPerPixel - kLeftOver);
    for (int column = 0; column < table.columns(); ++column) {
      QTextTableCell cell = table.cellAt(row - 1, column);
      if (cell.column() != column) continue;
      QTextTableCellFormat format = cell.format().toTableCellFormat();
      format.setBottomPadding(format.bottomPadding() + padding);
      cell.setFormat(format);
    }
    layOutAgain();
  }

  /// A table whose first row does not fit goes to the next page with its heading.
  void breakBefore(QTextTable& table) const {
    QTextCursor before(table.firstCursorPosition());
    before.setPosition(table.firstPosition() - 1);
    QTextBlockFormat heading = before.blockFormat();
    if (heading.headingLevel() > 0) {
      heading.setPageBreakPolicy(QTextFormat::PageBreak_AlwaysBefore);
      before.setBlockFormat(heading);
    } else {
      QTextTableFormat format = table.format();
      format.setPageBreakPolicy(QTextFormat::PageBreak_AlwaysBefore);
      table.setFormat(format);
    }
    layOutAgain();
  }

  /// A layout of the changed cells alone loses the blocks that follow the table (Qt 6.4).
  void layOutAgain() const { m_text.setPageSize(m_text.pageSize()); }

  QTextDocument& m_text;
  double m_page;
  double m_dotsPerPixel;
};

}  // namespace

QVariant SheetText::loadResource(int type, const QUrl& name) {
  if (type != QTextDocument::ImageResource || name.scheme() != QStringLiteral("picture")) {
    return {};
  }
  const auto found = m_pictures.find(name.path());
  if (found == m_pictures.end()) return {};
  return QVariant::fromValue(QImage::fromData(found->second.bytes));
}

void keepTogether(QTextDocument& text) {
  PageKeeper(text).keep(text.rootFrame());
}

}  // namespace sw::report_print
