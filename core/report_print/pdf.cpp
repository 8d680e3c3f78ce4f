// SPDX-License-Identifier: GPL-3.0-or-later
#include "report_print/pdf.h"

#include <QAbstractTextDocumentLayout>
#include <QBuffer>
#include <QFont>
#include <QFontMetricsF>
#include <QMarginsF>
#include <QPageLayout>
#include <QPageSize>
#include <QPainter>
#include <QPalette>
#include <QPdfWriter>
#include <QPen>
#include <QSaveFile>
#include <algorithm>

#include "report_print/pdf_date.h"
#include "report_print/sheet_text.h"

namespace sw::report_print {

namespace {

using report::Document;
using report::Paper;
using report::Style;

constexpr int kDotsPerInch = 1200;
constexpr double kMillimetresPerInch = 25.4;
// Latin ligatures would make "refit" unfindable; letter spacing other than 100 % switches them off.
constexpr double kNoLigatures = 100.5;

double dots(double millimetres) {
  return millimetres / kMillimetresPerInch * kDotsPerInch;
}

struct Geometry {
  double margin;       // mm, all round
  double runningRoom;  // mm above the body for the running line
  int columns;
  double gap;  // mm between columns
  const char* family;
  double points;
};

Geometry geometryOf(Style style) {
  if (style == Style::Card) return {9.0, 5.0, 2, 5.0, "DejaVu Sans Condensed", 7.5};
  return {14.0, 8.0, 1, 0.0, "DejaVu Sans", 8.5};
}

QFont fontOf(const Geometry& geometry, double points) {
  QFont font(QString::fromLatin1(geometry.family));
  font.setStyleHint(QFont::SansSerif);
  font.setPointSizeF(points);
  font.setLetterSpacing(QFont::PercentageSpacing, kNoLigatures);
  font.setHintingPreference(QFont::PreferNoHinting);
  return font;
}

class Printer {
 public:
  Printer(const Document& document, const PdfOptions& options)
      : m_document(document),
        m_geometry(geometryOf(document.style)),
        m_options(options),
        m_text(options.pictures) {}

  bool print(QBuffer& buffer) {
    QPdfWriter writer(&buffer);
    prepare(writer);
    layOut(writer);
    QPainter painter;
    if (!painter.begin(&writer)) return false;
    const int columnsInAll = std::max(1, m_text.pageCount());
    const int pages = (columnsInAll + m_geometry.columns - 1) / m_geometry.columns;
    for (int page = 0; page < pages; ++page) {
      if (page > 0 && !writer.newPage()) return false;
      paintRunningLines(painter, page + 1, pages);
      for (int column = 0; column < m_geometry.columns; ++column) {
        const int index = page * m_geometry.columns + column;
        if (index < columnsInAll) paintColumn(painter, index, column);
      }
    }
    return painter.end();
  }

 private:
  void prepare(QPdfWriter& writer) const {
    const auto size = m_document.paper == Paper::A4 ? QPageSize::A4 : QPageSize::Letter;
    writer.setResolution(kDotsPerInch);
    writer.setPageLayout(QPageLayout(
        QPageSize(size), QPageLayout::Portrait,
        QMarginsF(m_geometry.margin, m_geometry.margin, m_geometry.margin, m_geometry.margin),
        QPageLayout::Millimeter));
    writer.setTitle(m_document.title + QStringLiteral(" – ") + m_document.running);
    writer.setCreator(QStringLiteral("Swivelwright"));
  }

  void layOut(QPdfWriter& writer) {
    m_area = QSizeF(writer.width(), writer.height());
    const double gaps = dots(m_geometry.gap) * (m_geometry.columns - 1);
    m_columnWidth = (m_area.width() - gaps) / m_geometry.columns;
    const double body = m_area.height() - 2 * dots(m_geometry.runningRoom);
    m_text.documentLayout()->setPaintDevice(&writer);
    m_text.setDefaultFont(fontOf(m_geometry, m_geometry.points));
    m_text.setDocumentMargin(0);
    m_text.setHtml(toHtml(m_document, report::HtmlTarget::Layout, m_options.pictures));
    m_text.setPageSize(QSizeF(m_columnWidth, body));
    keepTogether(m_text);
  }

  void paintColumn(QPainter& painter, int index, int column) {
    const QSizeF page = m_text.pageSize();
    const double left = column * (m_columnWidth + dots(m_geometry.gap));
    painter.save();
    painter.translate(left, dots(m_geometry.runningRoom) - index * page.height());
    // A hair less than the page, or a coarse screen shows the tops of the next page's letters.
    const QRectF clip(0, index * page.height(), page.width(), page.height() - dots(0.3));
    QAbstractTextDocumentLayout::PaintContext context;
    context.clip = clip;
    context.palette.setColor(QPalette::Text, Qt::black);
    painter.setClipRect(clip);
    m_text.documentLayout()->draw(&painter, context);
    painter.restore();
  }

  void paintRunningLines(QPainter& painter, int page, int pages) const {
    const QFont font = fontOf(m_geometry, 8.0);
    painter.save();
    painter.setFont(font);
    const double height = QFontMetricsF(font, painter.device()).height();
    const QRectF top(0, 0, m_area.width(), height);
    const QString number = QStringLiteral("Page %1 of %2").arg(page).arg(pages);
    painter.drawText(top, Qt::AlignLeft | Qt::AlignVCenter, m_document.running);
    painter.drawText(top, Qt::AlignRight | Qt::AlignVCenter, number);
    const double rule = height + dots(0.8);
    painter.setPen(QPen(Qt::black, dots(0.15)));
    painter.drawLine(QPointF(0, rule), QPointF(m_area.width(), rule));
    const QRectF bottom(0, m_area.height() - height, m_area.width(), height);
    painter.drawText(bottom, Qt::AlignLeft | Qt::AlignVCenter, m_document.title);
    painter.drawText(bottom, Qt::AlignRight | Qt::AlignVCenter, m_document.issuer);
    painter.restore();
  }

  const Document& m_document;
  Geometry m_geometry;
  const PdfOptions& m_options;
  SheetText m_text;
  QSizeF m_area;
  double m_columnWidth = 0;
};

}  // namespace

Result<QByteArray> toPdf(const Document& document, const PdfOptions& options) {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  if (!buffer.open(QIODevice::WriteOnly) || !Printer(document, options).print(buffer)) {
    return fail(ErrorCode::Internal, "print.no_pdf");
  }
  buffer.close();
  if (options.created) setCreationDate(bytes, *options.created);
  return bytes;
}

Result<void> writeFile(const std::string& path, const QByteArray& bytes) {
  QSaveFile file(QString::fromStdString(path));
  const bool written =
      file.open(QIODevice::WriteOnly) && file.write(bytes) == bytes.size() && file.commit();
  if (written) return {};
  return fail(ErrorCode::CannotWrite, "print.cannot_write", "out",
              {{"path", path}, {"why", file.errorString().toStdString()}});
}

}  // namespace sw::report_print
