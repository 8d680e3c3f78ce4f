// SPDX-License-Identifier: GPL-3.0-or-later
#include "report_print/pdf.h"

#include <QBuffer>
#include <QPdfWriter>
#include <QSaveFile>

#include "report_print/page_set.h"
#include "report_print/pdf_date.h"

namespace sw::report_print {

namespace {

constexpr int kDotsPerInch = 1200;

bool print(const report::Document& document, const PdfOptions& options, QBuffer& buffer) {
  QPdfWriter writer(&buffer);
  writer.setResolution(kDotsPerInch);
  writer.setTitle(document.title + QStringLiteral(" – ") + document.running);
  writer.setCreator(QStringLiteral("Swivelwright"));
  return PageSet(document, options.pictures).print(writer);
}

}  // namespace

Result<QByteArray> toPdf(const report::Document& document, const PdfOptions& options) {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  if (!buffer.open(QIODevice::WriteOnly) || !print(document, options, buffer)) {
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
