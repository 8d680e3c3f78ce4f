// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QImage>
#include <QSizeF>
#include <memory>

#include "report/document.h"
#include "report/html.h"

class QPagedPaintDevice;
class QPainter;

namespace sw::report_print {

/// A document laid out on its paper, once: the same lines and the same page breaks on the screen,
/// in a PDF and on a printer. "Page n of m" with vehicle and job stands on every page; text can be
/// searched. Needs a QGuiApplication.
class PageSet {
 public:
  /// `pictures` are thumbnails by hash; nothing else is ever loaded.
  explicit PageSet(const report::Document& document, report::PictureMap pictures = {});
  ~PageSet();
  PageSet(PageSet&&) noexcept;
  PageSet& operator=(PageSet&&) noexcept;

  [[nodiscard]] int count() const;
  /// The whole sheet of paper, margins and all, in points of 1/72 in.
  [[nodiscard]] QSizeF points() const;

  /// Paints a page from 0 on, the corner of the sheet at the painter's origin, in black on what is
  /// there already. The painter's unit is one of `dotsPerInch`.
  void paint(QPainter& painter, int page, double dotsPerInch) const;
  /// The page on white.
  [[nodiscard]] QImage picture(int page, double dotsPerInch) const;

  /// Sets the device to the paper, and its margins and paints the pages it asks for
  /// (QPagedPaintDevice::pageRanges; none = all). False when the device gave up.
  [[nodiscard]] bool print(QPagedPaintDevice& device) const;

 private:
  class Layout;
  std::unique_ptr<Layout> m_layout;
};

/// The paper of the device where it is one of ours.
[[nodiscard]] report::Paper paperOf(const QPagedPaintDevice& device, report::Paper otherwise);
void setPaper(QPagedPaintDevice& device, const report::Document& document);

}  // namespace sw::report_print
