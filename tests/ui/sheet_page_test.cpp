// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/sheet/sheet_page.h"

#include <QComboBox>
#include <QFile>
#include <QPrinter>
#include <QProcess>
#include <QPushButton>
#include <QScrollBar>
#include <QTextBrowser>

#include "ui/sheet/page_view.h"
#include "window_fixture.h"

namespace sw::ui {
namespace {

class SheetPageTest : public WindowTest {
 protected:
  void SetUp() override {
    makeDemoBook();
    openWindow();
    show(5);  // declined before any work: its sheet is laid out at once
  }
  void show(std::int64_t job) {
    window->go({PageId::Sheet, model::JobId{job}, {}, {}, {}});
    settle();
  }
  SheetPage& page() { return window->pageAs<SheetPage>(PageId::Sheet); }

  /// What one of poppler's programs says about a file.
  static QByteArray ask(const char* program, const QStringList& arguments) {
    QProcess process;
    process.start(QString::fromLatin1(program), arguments);
    EXPECT_TRUE(process.waitForFinished()) << program;
    return process.readAllStandardOutput();
  }
  /// Prints through the printer's way into a file; the printer has this paper.
  QString printTo(const QString& name, QPageSize::PageSizeId paper) {
    const QString file = folder.filePath(name);
    page().choosePrinter = [=](QPrinter& printer) {
      printer.setOutputFormat(QPrinter::PdfFormat);
      printer.setOutputFileName(file);
      printer.setPageSize(QPageSize(paper));
      return true;
    };
    press("print");
    return file;
  }
};

TEST_F(SheetPageTest, AJobIsSavedAsPdf) {
  const QString file = folder.filePath(QStringLiteral("a sheet.pdf"));
  page().chooseFile = [&](const QString& suggested) {
    EXPECT_EQ(suggested, QStringLiteral("job-5.pdf"));
    return file;
  };
  press("savePdf");
  EXPECT_TRUE(window->message().contains(file));
  const QByteArray text = ask("pdftotext", {file, QStringLiteral("-")});
  EXPECT_TRUE(text.contains("Hollowbridge Axle Works"));
}

TEST_F(SheetPageTest, EveryDocumentCanBeReadAsText) {
  press("readAsText");
  auto* which = find<QComboBox>("whichDocument");
  auto* view = find<QTextBrowser>("paperView");
  EXPECT_TRUE(view->isVisible() && view->hasFocus());
  QStringList texts;
  for (int i = 0; i < which->count(); ++i) {
    which->setCurrentIndex(i);
    texts += view->toPlainText();
  }
  ASSERT_EQ(texts.size(), 3);
  EXPECT_EQ(texts.removeDuplicates(), 0);
  EXPECT_TRUE(texts.at(0).contains(QStringLiteral("Hollowbridge Axle Works")));
  EXPECT_TRUE(texts.at(1).contains(QStringLiteral("customer copy"), Qt::CaseInsensitive));
}

// The preview shows as many pages as come out, and says which one is seen.
TEST_F(SheetPageTest, ThePreviewHasThePagesThatArePrinted) {
  show(1);  // a whole job, several pages long
  const QString file = printTo(QStringLiteral("all.pdf"), QPageSize::A4);
  auto* view = find<PageView>("pageView");
  ASSERT_GE(view->count(), 2);
  const QByteArray info = ask("pdfinfo", {file});
  EXPECT_TRUE(info.contains("Pages:           " + QByteArray::number(view->count())))
      << info.data();
  EXPECT_EQ(view->accessibleDescription(), QStringLiteral("Page 1 of %1").arg(view->count()));
  view->setFocus();
  QTest::keyClick(view, Qt::Key_End);
  EXPECT_EQ(view->accessibleDescription(), QStringLiteral("Page %1 of %1").arg(view->count()));
  EXPECT_EQ(view->horizontalScrollBar()->maximum(), 0);
  // Words are black on white somewhere on the first page.
  QTest::keyClick(view, Qt::Key_Home);
  const QImage seen = view->grab().toImage();
  int dark = 0;
  for (int y = 0; y < seen.height(); y += 2) {
    for (int x = 0; x < seen.width(); x += 2) dark += qGray(seen.pixel(x, y)) < 80 ? 1 : 0;
  }
  EXPECT_GT(dark, 500);
}

TEST_F(SheetPageTest, WholePagesStandSideBySide) {
  show(1);  // a whole job, several pages long
  auto* view = find<PageView>("pageView");
  const int length = view->verticalScrollBar()->maximum();
  press("wholePages");
  EXPECT_LT(view->verticalScrollBar()->maximum(), length / 2);
  EXPECT_EQ(view->pageInView(), 0);
}

// A4 is 595 x 842 pt (ISO 216), Letter 612 x 792 pt (ANSI Y14.1).
TEST_F(SheetPageTest, SheetAndCardArePrintedOnThePaperOfThePrinter) {
  struct Case {
    QPageSize::PageSizeId paper;
    const char* size;
  };
  show(12);
  const Case cases[] = {{QPageSize::A4, "595 x 842 pts"}, {QPageSize::Letter, "612 x 792 pts"}};
  const std::pair<int, const char*> documents[] = {{0, "Job sheet 12"}, {2, "Work card, job 12"}};
  for (const auto& [which, title] : documents) {
    find<QComboBox>("whichDocument")->setCurrentIndex(which);
    for (const Case& one : cases) {
      SCOPED_TRACE(std::string(title) + ", " + one.size);
      const QString file =
          printTo(QStringLiteral("%1 %2.pdf").arg(which).arg(one.paper), one.paper);
      EXPECT_TRUE(window->message().contains(QString::fromUtf8(title)));
      const QByteArray info = ask("pdfinfo", {file});
      EXPECT_TRUE(info.contains(one.size)) << info.data();
      const QByteArray text =
          ask("pdftotext", {QStringLiteral("-layout"), file, QStringLiteral("-")});
      EXPECT_TRUE(text.contains(title));
      EXPECT_TRUE(text.contains("HB-0417"));
      EXPECT_TRUE(text.contains("Page 1 of "));
      // A word with fi is found: no ligatures.
      EXPECT_TRUE(text.contains(which == 0 ? "fixes" : "figure")) << text.data();
    }
  }
}

TEST_F(SheetPageTest, ThePrinterMayAskForSomePages) {
  show(1);  // a whole job, several pages long
  const QString file = folder.filePath(QStringLiteral("two.pdf"));
  page().choosePrinter = [&](QPrinter& printer) {
    printer.setOutputFormat(QPrinter::PdfFormat);
    printer.setOutputFileName(file);
    printer.setFromTo(2, 3);
    return true;
  };
  QTest::keyClick(find<QComboBox>("paper"), Qt::Key_P, Qt::ControlModifier);
  EXPECT_TRUE(ask("pdfinfo", {file}).contains("Pages:           2"));
  const QByteArray text = ask("pdftotext", {file, QStringLiteral("-")});
  EXPECT_TRUE(text.contains("Page 2 of "));
  EXPECT_FALSE(text.contains("Page 1 of "));
}

TEST_F(SheetPageTest, NothingIsPrintedWithoutAPrinter) {
  page().choosePrinter = [](QPrinter&) { return false; };
  press("print");
  EXPECT_TRUE(window->message().isEmpty());
  page().choosePrinter = [&](QPrinter& printer) {
    printer.setOutputFormat(QPrinter::PdfFormat);
    printer.setOutputFileName(folder.filePath(QStringLiteral("no/such/folder/x.pdf")));
    return true;
  };
  press("print");
  EXPECT_TRUE(window->message().contains(QStringLiteral("Nothing was printed")));
}

TEST_F(SheetPageTest, AFolderThatIsNotThereIsSaid) {
  page().chooseFile = [&](const QString&) {
    return folder.filePath(QStringLiteral("no/such/folder/x.pdf"));
  };
  press("savePdf");
  EXPECT_FALSE(window->message().isEmpty());
}

}  // namespace
}  // namespace sw::ui
