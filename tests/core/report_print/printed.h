// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QByteArray>
#include <string>

#include "report/document.h"
#include "report_print/pdf.h"

namespace sw::testing {

/// The PDF of a document, laid out by a QGuiApplication that the first call makes.
[[nodiscard]] QByteArray printed(const report::Document& document,
                                 const report_print::PdfOptions& options = {});
/// What pdftotext (poppler-utils) reads out of it, with its layout; page breaks are form feeds.
/// Throws where the program is missing.
[[nodiscard]] std::string readBack(const QByteArray& pdf);
/// What pdfinfo or pdffonts says about it.
[[nodiscard]] std::string askPoppler(const std::string& program, const QByteArray& pdf);
/// The number of pages by pdfinfo.
[[nodiscard]] int pagesOf(const QByteArray& pdf);
void ensureGui();

}  // namespace sw::testing
