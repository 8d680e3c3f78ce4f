// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/sheet/page_view.h"

#include <QKeyEvent>
#include <QPainter>
#include <QScrollBar>
#include <algorithm>
#include <utility>

#include "ui/common/theme.h"

namespace sw::ui {

namespace {

constexpr double kPointsPerInch = 72.0;
constexpr double kMostPixelsPerPoint = 2.2;  // larger than this nobody needs a sheet
constexpr double kLeastPixelsPerPoint = 0.3;
constexpr std::size_t kMostPixmaps = 12;  // of the pages near the one in view

int gap() {
  return sizesOf(currentTheme().mode).gap;
}

}  // namespace

PageView::PageView(QWidget* parent) : QAbstractScrollArea(parent) {
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setFocusPolicy(Qt::StrongFocus);
  viewport()->setBackgroundRole(QPalette::Window);
}

void PageView::show(std::optional<report_print::PageSet> pages) {
  m_pages = std::move(pages);
  m_pixmaps.clear();
  verticalScrollBar()->setValue(0);
  arrange();
}

void PageView::setZoom(Zoom zoom) {
  const int page = pageInView();
  m_zoom = zoom;
  arrange();
  if (page < count()) {
    verticalScrollBar()->setValue(m_places[static_cast<std::size_t>(page)].top() - gap());
  }
}

int PageView::count() const {
  return m_pages ? m_pages->count() : 0;
}

int PageView::pageInView() const {
  const int middle = verticalScrollBar()->value() + viewport()->height() / 3;
  int page = 0;
  for (std::size_t i = 0; i < m_places.size(); ++i) {
    if (m_places[i].top() <= middle) page = static_cast<int>(i);
    if (m_zoom == Zoom::Whole && m_places[i].bottom() > middle) return page;
  }
  return page;
}

double PageView::scaleToFit() const {
  const QSizeF paper = m_pages->points();
  const double wide = (viewport()->width() - 2 * gap()) / paper.width();
  const double high = (viewport()->height() - 2 * gap()) / paper.height();
  return std::clamp(m_zoom == Zoom::Width ? wide : std::min(wide, high), kLeastPixelsPerPoint,
                    kMostPixelsPerPoint);
}

void PageView::arrange() {
  m_places.clear();
  int bottom = 0;
  if (m_pages) {
    m_scale = scaleToFit();
    const QSize page = (m_pages->points() * m_scale).toSize();
    const int room = std::max(1, (viewport()->width() - gap()) / (page.width() + gap()));
    const int across = m_zoom == Zoom::Width ? 1 : std::min(room, count());
    const int used = across * page.width() + (across - 1) * gap();
    const int left = std::max(0, (viewport()->width() - used) / 2);
    for (int i = 0; i < count(); ++i) {
      const QPoint corner(left + (i % across) * (page.width() + gap()),
                          gap() + (i / across) * (page.height() + gap()));
      m_places.emplace_back(corner, page);
    }
    bottom = m_places.empty() ? 0 : m_places.back().bottom() + gap();
  }
  verticalScrollBar()->setRange(0, std::max(0, bottom - viewport()->height()));
  verticalScrollBar()->setPageStep(viewport()->height());
  verticalScrollBar()->setSingleStep(viewport()->height() / 8);
  tell();
  viewport()->update();
}

void PageView::tell() {
  const int page = pageInView();
  setAccessibleDescription(count() == 0 ? QString()
                                        : tr("Page %1 of %2").arg(page + 1).arg(count()));
  emit pageShown(page, count());
}

const QPixmap& PageView::pixmapOf(int page, double dotsPerPixel) {
  const double scale = m_scale * dotsPerPixel;
  if (scale != m_pixmapScale || m_pixmaps.size() >= kMostPixmaps) m_pixmaps.clear();
  m_pixmapScale = scale;
  const auto found = m_pixmaps.find(page);
  if (found != m_pixmaps.end()) return found->second;
  QPixmap pixmap = QPixmap::fromImage(m_pages->picture(page, scale * kPointsPerInch));
  return m_pixmaps.emplace(page, std::move(pixmap)).first->second;
}

void PageView::paintEvent(QPaintEvent*) {
  if (!m_pages) return;
  QPainter painter(viewport());
  painter.setRenderHint(QPainter::SmoothPixmapTransform);
  const double dotsPerPixel = painter.deviceTransform().m11();
  painter.translate(0, -verticalScrollBar()->value());
  const QRect seen(0, verticalScrollBar()->value(), viewport()->width(), viewport()->height());
  for (std::size_t i = 0; i < m_places.size(); ++i) {
    if (!m_places[i].intersects(seen)) continue;
    painter.drawPixmap(m_places[i], pixmapOf(static_cast<int>(i), dotsPerPixel));
    painter.setPen(palette().color(QPalette::Mid));
    painter.drawRect(m_places[i].adjusted(-1, -1, 0, 0));
  }
}

void PageView::resizeEvent(QResizeEvent* event) {
  QAbstractScrollArea::resizeEvent(event);
  arrange();
}

void PageView::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Home || event->key() == Qt::Key_End) {
    auto* bar = verticalScrollBar();
    bar->setValue(event->key() == Qt::Key_Home ? bar->minimum() : bar->maximum());
    return;
  }
  QAbstractScrollArea::keyPressEvent(event);
}

void PageView::scrollContentsBy(int, int) {
  tell();
  viewport()->update();
}

}  // namespace sw::ui
