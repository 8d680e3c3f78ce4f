// SPDX-License-Identifier: GPL-3.0-or-later
#include "report_print/sheet_text.h"

#include <QAbstractTextDocumentLayout>
#include <QImage>
#include <QTextBlock>
#include <QTextCursor>
#include <QUrl>
#include <cmath>

namespace sw::report_print {

namespace {

constexpr double kRoomBelowHeading = 5.0;  // times the heading's own height

bool stranded(const QTextDocument& text, const QTextBlock& block) {
  const QRectF rect = text.documentLayout()->blockBoundingRect(block);
  const double page = text.pageSize().height();
  const double top = std::fmod(rect.top(), page);
  return top > 0 && page - top < kRoomBelowHeading * rect.height();
}

}  // namespace

QVariant SheetText::loadResource(int type, const QUrl& name) {
  if (type != QTextDocument::ImageResource || name.scheme() != QStringLiteral("picture")) {
    return {};
  }
  const auto found = m_pictures.find(name.path());
  if (found == m_pictures.end()) return {};
  return QVariant::fromValue(QImage::fromData(found->second.bytes));
}

void keepHeadingsWithText(QTextDocument& text) {
  // From the top down: each move shifts what follows.
  for (QTextBlock block = text.begin(); block.isValid(); block = block.next()) {
    if (block.blockFormat().headingLevel() == 0 || !stranded(text, block)) continue;
    QTextBlockFormat format = block.blockFormat();
    format.setPageBreakPolicy(QTextFormat::PageBreak_AlwaysBefore);
    QTextCursor(block).setBlockFormat(format);
  }
}

}  // namespace sw::report_print
