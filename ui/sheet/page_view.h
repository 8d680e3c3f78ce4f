// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractScrollArea>
#include <QPixmap>
#include <map>
#include <optional>
#include <vector>

#include "report_print/page_set.h"

namespace sw::ui {

/// The pages of a document as they come out of the printer: one below the other as wide as there is
/// room, or whole and side by side. Arrows, Page up and down, Home and End move through them.
class PageView : public QAbstractScrollArea {
  Q_OBJECT

 public:
  enum class Zoom { Width, Whole };

  explicit PageView(QWidget* parent = nullptr);
  void show(std::optional<report_print::PageSet> pages);
  void setZoom(Zoom zoom);
  [[nodiscard]] int count() const;
  /// The page at the top, from 0 on.
  [[nodiscard]] int pageInView() const;

 signals:
  void pageShown(int page, int of);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void scrollContentsBy(int dx, int dy) override;

 private:
  void arrange();
  void tell();
  [[nodiscard]] double scaleToFit() const;
  const QPixmap& pixmapOf(int page, double dotsPerPixel);

  std::optional<report_print::PageSet> m_pages;
  Zoom m_zoom = Zoom::Width;
  double m_scale = 1;           ///< pixels a point
  std::vector<QRect> m_places;  ///< of the pages, on the whole length
  std::map<int, QPixmap> m_pixmaps;
  double m_pixmapScale = 0;
};

}  // namespace sw::ui
