// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/sheet/sheet_page.h"

#include <QComboBox>
#include <QFile>
#include <QProcess>
#include <QTextBrowser>

#include "ui/start/job_card.h"
#include "window_fixture.h"

namespace sw::ui {
namespace {

class SheetPageTest : public WindowTest {
 protected:
  void SetUp() override {
    makeDemoBook();
    openWindow();
  }
};

TEST_F(SheetPageTest, AJobIsPreviewedAndSavedAsPdf) {
  auto* card = window->findChild<JobCard*>();
  ASSERT_NE(card, nullptr);
  QTest::mouseClick(card, Qt::LeftButton);
  auto& page = window->pageAs<SheetPage>(PageId::Sheet);
  EXPECT_TRUE(page.isVisible());
  const QString shown = find<QTextBrowser>("paperView")->toPlainText();
  EXPECT_TRUE(shown.contains(QStringLiteral("Hollowbridge Axle Works")));
  const QString file = folder.filePath(QStringLiteral("a sheet.pdf"));
  page.chooseFile = [&](const QString& suggested) {
    EXPECT_EQ(suggested, QStringLiteral("job-%1.pdf").arg(page.job().value));
    return file;
  };
  press("savePdf");
  EXPECT_TRUE(window->message().contains(file));
  QProcess text;
  text.start(QStringLiteral("pdftotext"), {file, QStringLiteral("-")});
  ASSERT_TRUE(text.waitForFinished());
  EXPECT_TRUE(text.readAllStandardOutput().contains("Hollowbridge Axle Works"));
}

TEST_F(SheetPageTest, EveryDocumentCanBeLookedAt) {
  QTest::mouseClick(window->findChild<JobCard*>(), Qt::LeftButton);
  auto* which = find<QComboBox>("whichDocument");
  auto* view = find<QTextBrowser>("paperView");
  QStringList texts;
  for (int i = 0; i < which->count(); ++i) {
    which->setCurrentIndex(i);
    texts += view->toPlainText();
  }
  ASSERT_EQ(texts.size(), 3);
  EXPECT_EQ(texts.removeDuplicates(), 0);
  EXPECT_TRUE(texts.at(1).contains(QStringLiteral("customer copy"), Qt::CaseInsensitive));
}

TEST_F(SheetPageTest, AFolderThatIsNotThereIsSaid) {
  QTest::mouseClick(window->findChild<JobCard*>(), Qt::LeftButton);
  window->pageAs<SheetPage>(PageId::Sheet).chooseFile = [&](const QString&) {
    return folder.filePath(QStringLiteral("no/such/folder/x.pdf"));
  };
  press("savePdf");
  EXPECT_FALSE(window->message().isEmpty());
}

}  // namespace
}  // namespace sw::ui
