// SPDX-License-Identifier: GPL-3.0-or-later
#include "report_print/page_set.h"

#include <QAbstractTextDocumentLayout>
#include <QFont>
#include <QFontMetricsF>
#include <QMarginsF>
#include <QPageLayout>
#include <QPageRanges>
#include <QPageSize>
#include <QPagedPaintDevice>
#include <QPainter>
#include <QPalette>
#include <QPen>
#include <algorithm>
#include <utility>

#include "report_print/sheet_text.h"

namespace sw::report_print {

namespace {

using report::Document;
using report::Paper;
using report::Style;

// Fine enough that a letter's place is the same on every device to within a hair.
constexpr int kDotsPerInch = 1200;
constexpr double kMillimetresPerInch = 25.4;
constexpr double kPointsPerInch = 72.0;
constexpr double kRunningPoints = 8.0;
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

QPageSize pageSizeOf(Paper paper) {
  return QPageSize(paper == Paper::A4 ? QPageSize::A4 : QPageSize::Letter);
}

/// What texts are measured on, whatever they are painted on later.
QImage referenceDevice() {
  QImage image(1, 1, QImage::Format_ARGB32_Premultiplied);
  constexpr int kDotsPerMetre = 47244;  // 1200 dpi
  image.setDotsPerMeterX(kDotsPerMetre);
  image.setDotsPerMeterY(kDotsPerMetre);
  return image;
}

}  // namespace

class PageSet::Layout {
 public:
  Layout(const Document& document, report::PictureMap pictures)
      : m_document(document),
        m_geometry(geometryOf(document.style)),
        m_pictures(std::move(pictures)),
        m_device(referenceDevice()),
        m_text(m_pictures) {
    const QSizeF paper = pageSizeOf(document.paper).size(QPageSize::Millimeter);
    m_area = QSizeF(dots(paper.width() - 2 * m_geometry.margin),
                    dots(paper.height() - 2 * m_geometry.margin));
    const double gaps = dots(m_geometry.gap) * (m_geometry.columns - 1);
    m_columnWidth = (m_area.width() - gaps) / m_geometry.columns;
    const double body = m_area.height() - 2 * dots(m_geometry.runningRoom);
    m_text.documentLayout()->setPaintDevice(&m_device);
    m_text.setDefaultFont(fontOf(m_geometry, m_geometry.points));
    m_text.setDocumentMargin(0);
    m_text.setHtml(toHtml(document, report::HtmlTarget::Layout, m_pictures));
    m_text.setPageSize(QSizeF(m_columnWidth, body));
    keepTogether(m_text);
    m_columns = std::max(1, m_text.pageCount());
  }

  [[nodiscard]] const Document& document() const { return m_document; }
  [[nodiscard]] int pages() const {
    return (m_columns + m_geometry.columns - 1) / m_geometry.columns;
  }
  [[nodiscard]] double margin() const { return m_geometry.margin; }

  /// In dots of the layout, from the corner within the margins.
  void paint(QPainter& painter, int page) const {
    paintRunningLines(painter, page);
    for (int column = 0; column < m_geometry.columns; ++column) {
      const int index = page * m_geometry.columns + column;
      if (index < m_columns) paintColumn(painter, index, column);
    }
  }

 private:
  void paintColumn(QPainter& painter, int index, int column) const {
    const QSizeF page = m_text.pageSize();
    const double left = column * (m_columnWidth + dots(m_geometry.gap));
    painter.save();
    painter.translate(left, dots(m_geometry.runningRoom) - index * page.height());
    // A hair less than the page, or a coarse screen shows the tops of the next page's letters.
    const QRectF clip(0, index * page.height(), page.width(), page.height() - dots(0.3));
    QAbstractTextDocumentLayout::PaintContext context;
    context.clip = clip;
    context.palette.setColor(QPalette::Text, Qt::black);
    painter.setClipRect(clip, Qt::IntersectClip);
    m_text.documentLayout()->draw(&painter, context);
    painter.restore();
  }

  void paintRunningLines(QPainter& painter, int page) const {
    // In pixels of the layout: a size in points would follow the device that is painted on.
    QFont font = fontOf(m_geometry, kRunningPoints);
    font.setPixelSize(qRound(kRunningPoints / kPointsPerInch * kDotsPerInch));
    painter.save();
    painter.setFont(font);
    const double height = QFontMetricsF(font).height();
    const QRectF top(0, 0, m_area.width(), height);
    const QString number = QStringLiteral("Page %1 of %2").arg(page + 1).arg(pages());
    painter.setPen(Qt::black);
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

  Document m_document;
  Geometry m_geometry;
  report::PictureMap m_pictures;
  QImage m_device;
  SheetText m_text;
  QSizeF m_area;
  double m_columnWidth = 0;
  int m_columns = 1;
};

PageSet::PageSet(const Document& document, report::PictureMap pictures)
    : m_layout(std::make_unique<Layout>(document, std::move(pictures))) {}
PageSet::~PageSet() = default;
PageSet::PageSet(PageSet&&) noexcept = default;
PageSet& PageSet::operator=(PageSet&&) noexcept = default;

int PageSet::count() const {
  return m_layout->pages();
}

QSizeF PageSet::points() const {
  return pageSizeOf(m_layout->document().paper).size(QPageSize::Point);
}

void PageSet::paint(QPainter& painter, int page, double dotsPerInch) const {
  painter.save();
  painter.scale(dotsPerInch / kDotsPerInch, dotsPerInch / kDotsPerInch);
  painter.translate(dots(m_layout->margin()), dots(m_layout->margin()));
  m_layout->paint(painter, page);
  painter.restore();
}

QImage PageSet::picture(int page, double dotsPerInch) const {
  const QSizeF size = points() * dotsPerInch / kPointsPerInch;
  QImage image(size.toSize(), QImage::Format_RGB32);
  image.fill(Qt::white);
  QPainter painter(&image);
  painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing |
                         QPainter::SmoothPixmapTransform);
  paint(painter, page, dotsPerInch);
  return image;
}

bool PageSet::print(QPagedPaintDevice& device) const {
  setPaper(device, m_layout->document());
  QPainter painter;
  if (!painter.begin(&device)) return false;
  const double dotsPerInch = device.logicalDpiX();
  const QPageLayout layout = device.pageLayout();
  // A device may not reach as far out as our margins do: the sheet's corner is where it is.
  if (layout.mode() != QPageLayout::FullPageMode) {
    const QRectF reached = layout.paintRect(QPageLayout::Point);
    painter.translate(-reached.topLeft() * dotsPerInch / kPointsPerInch);
  }
  const QPageRanges wanted = device.pageRanges();
  bool first = true;
  for (int page = 0; page < count(); ++page) {
    if (!wanted.isEmpty() && !wanted.contains(page + 1)) continue;
    if (!first && !device.newPage()) return false;
    first = false;
    paint(painter, page, dotsPerInch);
  }
  return painter.end();
}

Paper paperOf(const QPagedPaintDevice& device, Paper otherwise) {
  const auto id = device.pageLayout().pageSize().id();
  if (id == QPageSize::A4) return Paper::A4;
  return id == QPageSize::Letter ? Paper::Letter : otherwise;
}

void setPaper(QPagedPaintDevice& device, const Document& document) {
  const double margin = geometryOf(document.style).margin;
  device.setPageSize(pageSizeOf(document.paper));
  device.setPageOrientation(QPageLayout::Portrait);
  device.setPageMargins(QMarginsF(margin, margin, margin, margin), QPageLayout::Millimeter);
}

}  // namespace sw::report_print
