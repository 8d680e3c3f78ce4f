// SPDX-License-Identifier: GPL-3.0-or-later
#include "printed.h"

#include <QGuiApplication>
#include <QProcess>
#include <QTemporaryFile>
#include <stdexcept>

namespace sw::testing {

namespace {

std::string run(const QString& program, const QStringList& arguments) {
  QProcess process;
  process.start(program, arguments);
  if (!process.waitForStarted()) {
    throw std::runtime_error(program.toStdString() + " is not installed (poppler-utils)");
  }
  if (!process.waitForFinished(60'000) || process.exitCode() != 0) {
    throw std::runtime_error(program.toStdString() + ": " +
                             process.readAllStandardError().toStdString());
  }
  return process.readAllStandardOutput().toStdString();
}

std::string runOn(const QString& program, const QStringList& before, const QByteArray& pdf,
                  const QStringList& after) {
  QTemporaryFile file;
  if (!file.open() || file.write(pdf) != pdf.size() || !file.flush()) {
    throw std::runtime_error("no temporary file");
  }
  return run(program, before + QStringList{file.fileName()} + after);
}

}  // namespace

void ensureGui() {
  static int count = 1;
  static char name[] = "report_print_test";
  static char* values[] = {name, nullptr};
  static QGuiApplication application(count, values);
}

QByteArray printed(const report::Document& document, const report_print::PdfOptions& options) {
  ensureGui();
  auto pdf = report_print::toPdf(document, options);
  if (!pdf) throw std::runtime_error(pdf.error().key);
  return *pdf;
}

std::string readBack(const QByteArray& pdf) {
  return runOn(QStringLiteral("pdftotext"), {QStringLiteral("-layout")}, pdf,
               {QStringLiteral("-")});
}

std::string askPoppler(const std::string& program, const QByteArray& pdf) {
  return runOn(QString::fromStdString(program), {}, pdf, {});
}

int pagesOf(const QByteArray& pdf) {
  const std::string info = askPoppler("pdfinfo", pdf);
  const auto at = info.find("Pages:");
  return at == std::string::npos ? 0 : std::stoi(info.substr(at + 6));
}

}  // namespace sw::testing
