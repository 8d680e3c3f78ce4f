// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/search/search_box.h"

#include <QListWidget>
#include <QPushButton>

#include "ui/pages.h"
#include "window_fixture.h"

namespace sw::ui {
namespace {

class SearchBoxTest : public WindowTest {
 protected:
  void SetUp() override {
    makeDemoBook();
    openWindow();
    window->activateWindow();
    QTest::keyClick(window.get(), Qt::Key_F, Qt::ControlModifier);
    ASSERT_TRUE(box()->hasFocus());
  }
  SearchBox* box() { return find<SearchBox>("find"); }
  QListWidget* list() { return find<QListWidget>("found"); }
  void typeAndWait(const QString& text) {
    QTest::keyClicks(box(), text);
    EXPECT_TRUE(QTest::qWaitFor([this] { return list()->isVisible(); }, 2000));
  }
};

TEST_F(SearchBoxTest, FindsWhileTypingAndOpensByKeys) {
  typeAndWait(QStringLiteral("hb0417"));
  ASSERT_GE(list()->count(), 1);
  EXPECT_TRUE(list()->item(0)->text().startsWith(QStringLiteral("HB-0417 – ")));
  EXPECT_TRUE(box()->hasFocus());  // the list does not take the keyboard by itself
  box()->clear();
  typeAndWait(QStringLiteral("worse bump"));
  QTest::qWait(200);
  EXPECT_TRUE(list()->item(0)->text().startsWith(QStringLiteral("HB-0417, job 12 – ")))
      << list()->item(0)->text().toStdString();
  QTest::keyClick(box(), Qt::Key_Down);
  EXPECT_TRUE(list()->hasFocus());
  QTest::keyClick(list(), Qt::Key_Return);
  EXPECT_FALSE(list()->isVisible());
  EXPECT_EQ(window->here().page, PageId::Work);
  EXPECT_EQ(window->here().job, model::JobId{12});
}

TEST_F(SearchBoxTest, WhatReadsTheSameIsListedOnce) {
  typeAndWait(QStringLiteral("shake"));
  QStringList found;
  for (int row = 0; row < list()->count(); ++row) {
    const QString text = list()->item(row)->text();
    found += text.section(QStringLiteral(" – "), 0, 0) + text.section(QStringLiteral(": "), 1);
  }
  EXPECT_GE(found.size(), 5);
  EXPECT_EQ(found.removeDuplicates(), 0);
}

TEST_F(SearchBoxTest, AVehicleOpensItsPage) {
  typeAndWait(QStringLiteral("2450"));
  QTest::keyClick(box(), Qt::Key_Down);
  QTest::keyClick(list(), Qt::Key_Enter);
  EXPECT_EQ(window->here().page, PageId::Vehicle);
  ASSERT_TRUE(window->here().vehicle);
  const auto* vehicle = (*session->shop())->vehicle(*window->here().vehicle);
  ASSERT_NE(vehicle, nullptr);
  EXPECT_EQ(vehicle->fact.registration, "HB-2450");
}

TEST_F(SearchBoxTest, EscapeClosesAndUpGoesBack) {
  typeAndWait(QStringLiteral("shake"));
  QTest::keyClick(box(), Qt::Key_Down);
  QTest::keyClick(list(), Qt::Key_Down);
  EXPECT_EQ(list()->currentRow(), 1);
  QTest::keyClick(list(), Qt::Key_Up);
  QTest::keyClick(list(), Qt::Key_Up);
  EXPECT_TRUE(box()->hasFocus());
  EXPECT_TRUE(list()->isVisible());
  QTest::keyClick(box(), Qt::Key_Escape);
  EXPECT_FALSE(list()->isVisible());
  EXPECT_EQ(box()->text(), QStringLiteral("shake"));
  QTest::keyClick(box(), Qt::Key_Escape);
  EXPECT_TRUE(box()->text().isEmpty());
}

TEST_F(SearchBoxTest, TheMouseOpensToo) {
  typeAndWait(QStringLiteral("worse bump"));
  const QRect row = list()->visualItemRect(list()->item(0));
  QTest::mouseClick(list()->viewport(), Qt::LeftButton, {}, row.center());
  EXPECT_EQ(window->here().job, model::JobId{12});
}

TEST_F(SearchBoxTest, NothingFoundIsSaidAndOpensNothing) {
  typeAndWait(QStringLiteral("zeppelin"));
  ASSERT_EQ(list()->count(), 1);
  EXPECT_TRUE(list()->item(0)->text().startsWith(QStringLiteral("Nothing in the book")));
  QTest::keyClick(box(), Qt::Key_Down);
  QTest::keyClick(box(), Qt::Key_Return);
  EXPECT_TRUE(box()->hasFocus());
  EXPECT_EQ(window->here().page, PageId::Start);
}

TEST_F(SearchBoxTest, WorkElsewhereClosesTheList) {
  typeAndWait(QStringLiteral("shake"));
  find<QPushButton>("newJob")->setFocus();
  EXPECT_FALSE(list()->isVisible());
}

// It looks after a pause, not at each key.
TEST_F(SearchBoxTest, TypingIsNotHeldUp) {
  QTest::keyClicks(box(), QStringLiteral("shake"));
  EXPECT_FALSE(list()->isVisible());
  EXPECT_TRUE(QTest::qWaitFor([this] { return list()->isVisible(); }, 2000));
}

}  // namespace
}  // namespace sw::ui
