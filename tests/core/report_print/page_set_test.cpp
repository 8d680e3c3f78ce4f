// SPDX-License-Identifier: GPL-3.0-or-later
#include "report_print/page_set.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QBuffer>
#include <QPageRanges>
#include <QPageSize>
#include <QPdfWriter>

#include "printed.h"

// One layout for every device: what a coarse printer gets is read back with poppler's tools and
// compared with what a fine one gets.

namespace sw::report_print {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;
using namespace sw::report;

Document threePages(Paper paper, Style style) {
  Document document;
  document.style = style;
  document.paper = paper;
  document.title = QStringLiteral("Job sheet 7");
  document.running = QStringLiteral("TRX 318 – job 7");
  Table table{{{QStringLiteral("Line"), 100, Align::Left}}, {}};
  for (int i = 1; i <= 130; ++i) {
    table.rows.push_back({{cellOf(QStringLiteral("row %1, fitted").arg(i))}, RowKind::Body});
  }
  document.sections = {{QStringLiteral("Rows"), {table}}};
  return document;
}

QByteArray printedAt(int dotsPerInch, const PageSet& pages, const QString& ranges = {}) {
  testing::ensureGui();
  QByteArray bytes;
  QBuffer buffer(&bytes);
  EXPECT_TRUE(buffer.open(QIODevice::WriteOnly));
  {
    QPdfWriter writer(&buffer);
    writer.setResolution(dotsPerInch);
    if (!ranges.isEmpty()) writer.setPageRanges(QPageRanges::fromString(ranges));
    EXPECT_TRUE(pages.print(writer));
  }
  return bytes;
}

TEST(PageSet, EveryDeviceGetsTheSamePages) {
  testing::ensureGui();
  for (const Style style : {Style::Sheet, Style::Card}) {
    const PageSet pages(threePages(Paper::A4, style));
    const QByteArray fine = printedAt(1200, pages);
    EXPECT_EQ(testing::pagesOf(fine), pages.count());
    const std::string text = testing::readBack(fine);
    EXPECT_THAT(text, HasSubstr("row 130, fitted"));
    for (const int coarse : {96, 300, 600}) {
      const QByteArray pdf = printedAt(coarse, pages);
      EXPECT_EQ(testing::pagesOf(pdf), pages.count()) << coarse;
      EXPECT_EQ(testing::readBack(pdf), text) << coarse;
    }
  }
}

TEST(PageSet, OnlyThePagesAskedForArePainted) {
  testing::ensureGui();
  const PageSet pages(threePages(Paper::Letter, Style::Sheet));
  ASSERT_GE(pages.count(), 3);
  const QByteArray pdf = printedAt(600, pages, QStringLiteral("2"));
  EXPECT_EQ(testing::pagesOf(pdf), 1);
  const std::string text = testing::readBack(pdf);
  EXPECT_THAT(text, HasSubstr("Page 2 of"));
  EXPECT_THAT(text, Not(HasSubstr("row 1, fitted")));
}

/// The share of dark dots of the part of the page below a height.
double ink(const QImage& page, double fromShare) {
  int dark = 0;
  int all = 0;
  for (int y = static_cast<int>(page.height() * fromShare); y < page.height(); ++y) {
    for (int x = 0; x < page.width(); ++x, ++all) dark += qGray(page.pixel(x, y)) < 128 ? 1 : 0;
  }
  return static_cast<double>(dark) / all;
}

// A4 is 210 mm x 297 mm (ISO 216): 827 x 1169 dots at 100 dpi.
TEST(PageSet, APictureIsTheSheetOfPaper) {
  testing::ensureGui();
  const PageSet pages(threePages(Paper::A4, Style::Sheet));
  const QImage picture = pages.picture(0, 100);
  EXPECT_NEAR(picture.width(), 827, 1);
  EXPECT_NEAR(picture.height(), 1169, 1);
  EXPECT_EQ(picture.pixelColor(3, 3), QColor(Qt::white));
  EXPECT_GT(ink(picture, 0), 0.005);
  // The same share of ink at twice the dots.
  EXPECT_NEAR(ink(pages.picture(0, 200), 0), ink(picture, 0), 0.01);
  // The margin at the foot is white.
  EXPECT_EQ(ink(picture, 1.0 - 12.0 / 297.0), 0.0);
}

TEST(PageSet, PaperOfADeviceIsKnownWhereItIsOneOfOurs) {
  testing::ensureGui();
  QBuffer buffer;
  ASSERT_TRUE(buffer.open(QIODevice::WriteOnly));
  QPdfWriter writer(&buffer);
  writer.setPageSize(QPageSize(QPageSize::Letter));
  EXPECT_EQ(paperOf(writer, Paper::A4), Paper::Letter);
  writer.setPageSize(QPageSize(QPageSize::A4));
  EXPECT_EQ(paperOf(writer, Paper::Letter), Paper::A4);
  writer.setPageSize(QPageSize(QPageSize::A6));
  EXPECT_EQ(paperOf(writer, Paper::Letter), Paper::Letter);
}

}  // namespace
}  // namespace sw::report_print
