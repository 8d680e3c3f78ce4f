// SPDX-License-Identifier: GPL-3.0-or-later
#include "report_print/pdf.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QBuffer>
#include <QFile>
#include <QFileInfo>
#include <QImage>
#include <QTemporaryDir>

#include "job_fixture.h"
#include "printed.h"
#include "report/job_sheet.h"

// Printed sheets are read back with poppler's tools, which know nothing of the program.

namespace sw::report_print {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;
using namespace sw::report;
using testing::pagesOf;
using testing::printed;
using testing::readBack;

Document longDocument(Paper paper, int rows) {
  Document document;
  document.paper = paper;
  document.title = QStringLiteral("Job sheet 7");
  document.running = QStringLiteral("TRX 318 – job 7");
  Table table{
      {{QStringLiteral("Line"), 30, Align::Left}, {QStringLiteral("Text"), 70, Align::Left}}, {}};
  for (int i = 1; i <= rows; ++i) {
    table.rows.push_back({{cellOf(QStringLiteral("row %1").arg(i)),
                           cellOf(QStringLiteral("final refit, fitted flange, office"))},
                          RowKind::Body});
  }
  document.sections = {{QStringLiteral("Rows"), {table}}};
  return document;
}

std::vector<std::string> pagesOfText(const std::string& text) {
  std::vector<std::string> pages;
  std::size_t from = 0;
  for (auto at = text.find('\f'); at != std::string::npos; at = text.find('\f', from)) {
    pages.push_back(text.substr(from, at - from));
    from = at + 1;
  }
  return pages;
}

TEST(Pdf, EveryPageCarriesVehicleJobAndItsNumber) {
  for (const Paper paper : {Paper::A4, Paper::Letter}) {
    const auto pdf = printed(longDocument(paper, 130));
    const auto pages = pagesOfText(readBack(pdf));
    ASSERT_GE(pages.size(), 3U);
    EXPECT_EQ(static_cast<int>(pages.size()), pagesOf(pdf));
    for (std::size_t i = 0; i < pages.size(); ++i) {
      EXPECT_THAT(pages[i], HasSubstr("TRX 318 – job 7"));
      EXPECT_THAT(pages[i], HasSubstr("Page " + std::to_string(i + 1) + " of " +
                                      std::to_string(pages.size())));
      EXPECT_THAT(pages[i], HasSubstr("Line"));  // the table's head stands on each page
    }
  }
}

// A4 is 595 x 842 pt (ISO 216), Letter 612 x 792 pt (ANSI Y14.1).
TEST(Pdf, PaperIsTheOneAskedFor) {
  const auto sizeOf = [](Paper paper) {
    return testing::askPoppler("pdfinfo", printed(longDocument(paper, 2)));
  };
  EXPECT_THAT(sizeOf(Paper::A4), HasSubstr("595 x 842 pts (A4)"));
  EXPECT_THAT(sizeOf(Paper::Letter), HasSubstr("612 x 792 pts (letter)"));
}

TEST(Pdf, EveryRowIsThereOnceAndInOrder) {
  const auto text = readBack(printed(longDocument(Paper::A4, 130)));
  std::size_t at = 0;
  for (int i = 1; i <= 130; ++i) {
    const auto found = text.find("row " + std::to_string(i) + " ", at);
    ASSERT_NE(found, std::string::npos) << i;
    at = found;
    EXPECT_EQ(text.find("row " + std::to_string(i) + " ", at + 1), std::string::npos) << i;
  }
}

// Latin ligatures (U+FB00..FB04) would hide these words from a search.
TEST(Pdf, WordsWithLigaturesAreFound) {
  const auto text = readBack(printed(longDocument(Paper::A4, 2)));
  EXPECT_THAT(text, HasSubstr("final refit, fitted flange, office"));
  EXPECT_THAT(text, Not(HasSubstr("\uFB01")));
}

TEST(Pdf, FontsAreEmbedded) {
  const auto fonts = testing::askPoppler("pdffonts", printed(longDocument(Paper::A4, 2)));
  EXPECT_THAT(fonts, HasSubstr("DejaVuSans"));
  std::istringstream lines(fonts);
  std::string line;
  std::getline(lines, line);
  const auto column = line.find("emb");
  ASSERT_NE(column, std::string::npos);
  std::getline(lines, line);
  int fontsSeen = 0;
  while (std::getline(lines, line)) {
    EXPECT_EQ(line.substr(column, 3), "yes") << line;
    ++fontsSeen;
  }
  EXPECT_GE(fontsSeen, 1);
}

TEST(Pdf, HostileTextStaysText) {
  QTemporaryDir folder;
  const QString secret = folder.filePath(QStringLiteral("secret.png"));
  QImage(50, 50, QImage::Format_RGB32).save(secret);
  Document document;
  document.title = QStringLiteral("Hostile");
  document.running = QStringLiteral("<i>X</i> – job 1");
  const QStringList texts{QStringLiteral("<b>bold</b>"),
                          QStringLiteral("<img src=\"file://%1\">").arg(secret),
                          QStringLiteral("<img src=%1>").arg(secret),
                          QStringLiteral("=1+cmd|' /C calc'!A0"),
                          QStringLiteral("plate \u202Ecba"),
                          QStringLiteral("a\uFDD0\uFDD1\uFFFCz")};
  Section section;
  for (const QString& text : texts) {
    section.blocks.push_back(Paragraph{plain(text), TextLook::Normal});
  }
  document.sections = {section};
  const auto pdf = printed(document);
  const auto text = readBack(pdf);
  EXPECT_THAT(text, HasSubstr("<b>bold</b>"));
  EXPECT_THAT(text, HasSubstr("<img src=\"file://"));
  EXPECT_THAT(text, HasSubstr("=1+cmd|' /C calc'!A0"));
  EXPECT_THAT(text, HasSubstr("plate [U+202E]cba"));
  EXPECT_THAT(text, HasSubstr("<i>X</i> – job 1"));
  EXPECT_FALSE(pdf.contains("/Subtype /Image"));
}

PictureMap onePicture(const QString& hash) {
  QImage image(60, 40, QImage::Format_RGB32);
  image.fill(Qt::darkGray);
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  image.save(&buffer, "PNG");
  return {{hash, {bytes, QStringLiteral("image/png")}}};
}

TEST(Pdf, OnlyThumbnailsThatWereGivenAreEmbedded) {
  const QString hash(64, QChar(u'a'));
  Document document;
  document.sections = {
      {QStringLiteral("Photos"), {Pictures{{{hash, QStringLiteral("Left cap")}}}}}};
  const auto without = printed(document);
  PdfOptions options;
  options.pictures = onePicture(hash);
  const auto with = printed(document, options);
  EXPECT_FALSE(without.contains("/Subtype /Image"));
  EXPECT_TRUE(with.contains("/Subtype /Image"));
  EXPECT_THAT(readBack(with), HasSubstr("Left cap"));
}

TEST(Pdf, SameFactsSameBytesOnceTheDateIsGiven) {
  PdfOptions options;
  options.created = *parseTimestamp("2031-04-05T10:20:30+02:00");
  const auto first = printed(longDocument(Paper::A4, 20), options);
  const auto second = printed(longDocument(Paper::A4, 20), options);
  EXPECT_EQ(first, second);
  EXPECT_THAT(testing::askPoppler("pdfinfo", first), HasSubstr("Apr  5 08:20:30 2031 UTC"));
}

TEST(Pdf, AWholeJobIsPrintedInBothCopiesAndPapers) {
  testing::JobFixture fixture;
  fixture.startPlan();
  fixture.workThrough();
  const auto shop = fixture.shopState();
  const auto job = fixture.state();
  for (const Paper paper : {Paper::A4, Paper::Letter}) {
    const auto full = printed(jobSheet(job, shop, {SheetCopy::Workshop, paper, {}}));
    const auto brief = printed(jobSheet(job, shop, {SheetCopy::Customer, paper, {}}));
    EXPECT_LT(pagesOf(brief), pagesOf(full));
    EXPECT_LE(pagesOf(brief), 4);
    const auto text = readBack(full);
    EXPECT_THAT(text, HasSubstr("seal off"));
    EXPECT_THAT(text, HasSubstr("fitted"));
    EXPECT_THAT(readBack(brief), HasSubstr("does not clear the vehicle"));
    for (const Section& section : jobSheet(job, shop, {SheetCopy::Workshop, paper, {}}).sections) {
      EXPECT_THAT(text, HasSubstr(section.title.toStdString()));
    }
  }
}

TEST(Pdf, WritingIsAllOrNothing) {
  QTemporaryDir folder;
  const std::string path = folder.filePath(QStringLiteral("a sheet é.pdf")).toStdString();
  ASSERT_TRUE(writeFile(path, "one"));
  EXPECT_EQ(QFileInfo(QString::fromStdString(path)).size(), 3);
  const auto refused = writeFile(path + "/under/a/file", "two");
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().code, ErrorCode::CannotWrite);
  EXPECT_EQ(refused.error().key, "print.cannot_write");
}

}  // namespace
}  // namespace sw::report_print
