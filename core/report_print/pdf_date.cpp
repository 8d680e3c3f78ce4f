// SPDX-License-Identifier: GPL-3.0-or-later
#include "report_print/pdf_date.h"

#include <string>

namespace sw::report_print {

namespace {

constexpr char kKey[] = "/CreationDate (D:";

/// "20310405082030" and the mark of UTC, as long as it fits.
QByteArray dateText(const Timestamp& time, qsizetype length) {
  QByteArray digits;
  for (const char c : toIsoUtc(time).substr(0, 19)) {
    if (c >= '0' && c <= '9') digits += c;
  }
  const QByteArray zone = length - digits.size() >= 7 ? QByteArray("+00'00'") : QByteArray("Z");
  return (digits + zone).left(length).leftJustified(length, ' ');
}

}  // namespace

void setCreationDate(QByteArray& pdf, const Timestamp& created) {
  const qsizetype key = pdf.indexOf(kKey);
  if (key < 0) return;
  const qsizetype start = key + qsizetype(sizeof(kKey)) - 1;
  const qsizetype end = pdf.indexOf(')', start);
  if (end < 0) return;
  pdf.replace(start, end - start, dateText(created, end - start));
}

}  // namespace sw::report_print
