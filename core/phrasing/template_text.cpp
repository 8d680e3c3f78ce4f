// SPDX-License-Identifier: GPL-3.0-or-later
#include "phrasing/template_text.h"

#include <QtCore/QCoreApplication>

namespace sw::phrasing {

namespace {

constexpr qsizetype kMaxShown = 160;

/// The text with its placeholders filled; `complete` turns false where one had nothing to say.
QString withValues(const QString& text, const ValueOf& valueOf, bool& complete) {
  QString out;
  qsizetype at = 0;
  while (at < text.size()) {
    const qsizetype open = text.indexOf('{', at);
    const qsizetype close = open < 0 ? -1 : text.indexOf('}', open);
    if (close < 0) break;
    out += text.mid(at, open - at);
    const QString value = valueOf(text.mid(open + 1, close - open - 1));
    complete = complete && !value.isEmpty();
    out += value;
    at = close + 1;
  }
  return out + text.mid(at);
}

bool unfitToShow(QChar c) {
  const auto category = c.category();
  return category == QChar::Other_Control || category == QChar::Other_Format ||
         category == QChar::Separator_Line || category == QChar::Separator_Paragraph;
}

}  // namespace

QString translated(const Source& source) {
  return QCoreApplication::translate("phrasing", source.text, source.remark);
}

QString filled(const QString& text, const ValueOf& valueOf) {
  QString out;
  qsizetype at = 0;
  while (at < text.size()) {
    const qsizetype open = text.indexOf('[', at);
    const qsizetype close = open < 0 ? -1 : text.indexOf(']', open);
    if (close < 0) break;
    bool all = true;
    out += withValues(text.mid(at, open - at), valueOf, all);
    bool complete = true;
    const QString part = withValues(text.mid(open + 1, close - open - 1), valueOf, complete);
    if (complete) out += part;
    at = close + 1;
  }
  bool rest = true;
  return out + withValues(text.mid(at), valueOf, rest);
}

QString shown(const std::string& utf8) {
  QString text = QString::fromStdString(utf8);
  for (QChar& c : text) {
    if (unfitToShow(c)) c = ' ';
  }
  text = text.simplified();
  if (text.size() <= kMaxShown) return text;
  qsizetype cut = kMaxShown;
  if (text.at(cut - 1).isHighSurrogate()) --cut;
  return text.left(cut) + QChar(0x2026);
}

}  // namespace sw::phrasing
