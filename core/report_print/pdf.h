// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QByteArray>
#include <optional>
#include <string>

#include "base/clock.h"
#include "base/result.h"
#include "report/document.h"
#include "report/html.h"

namespace sw::report_print {

struct PdfOptions {
  report::PictureMap pictures;  ///< thumbnails by hash; nothing else is ever loaded
  /// Written as the date of creation, so that the same facts give the same bytes. Absent = now.
  std::optional<Timestamp> created;
};

/// The document as PDF: paper and margins of its style, "Page n of m" with vehicle and job on every
/// page, fonts embedded, text that can be searched. Needs a QGuiApplication. Errors: Internal
/// "print.no_pdf".
[[nodiscard]] Result<QByteArray> toPdf(const report::Document& document,
                                       const PdfOptions& options = {});

/// Writes bytes so that either all of them or the old file stand there. Errors: CannotWrite
/// "print.cannot_write" (detail path).
[[nodiscard]] Result<void> writeFile(const std::string& path, const QByteArray& bytes);

}  // namespace sw::report_print
