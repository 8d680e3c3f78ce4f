// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QTextDocument>
#include <QVariant>

#include "report/html.h"

// Internal to core/report_print.

namespace sw::report_print {

/// A text document that loads nothing but the thumbnails it was given: no file, no address.
class SheetText final : public QTextDocument {
 public:
  explicit SheetText(const report::PictureMap& pictures) : m_pictures(pictures) {}

 protected:
  QVariant loadResource(int type, const QUrl& name) override;

 private:
  const report::PictureMap& m_pictures;
};

/// Keeps headings with what follows them, and every table row on one page. Call after the page size
/// is set.
void keepTogether(QTextDocument& text);

}  // namespace sw::report_print
