// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <gtest/gtest.h>

#include <QApplication>
#include <QFile>
#include <QTemporaryDir>
#include <QTest>
#include <memory>

#include "ui/common/page.h"
#include "ui/common/theme.h"
#include "ui/main_window.h"

namespace sw::ui {

/// One application for all tests of the binary, on the offscreen platform.
inline void needWidgets() {
  if (QCoreApplication::instance() != nullptr) return;
  qputenv("QT_QPA_PLATFORM", "offscreen");
  static int count = 1;
  static char name[] = "ui_test";
  static char* values[] = {name, nullptr};
  // Never deleted: what Qt keeps to the end of the process outlives static objects.
  static auto* application = new QApplication(count, values);
  (void)application;
  applyTheme({});
}

inline const std::string kResources = std::string(SW_SOURCE_DIR) + "/resources";

/// A window on a book in a folder of its own.
class WindowTest : public ::testing::Test {
 protected:
  WindowTest() : clock(*parseTimestamp("2031-03-03T08:00+01:00")) { needWidgets(); }

  [[nodiscard]] std::string bookPath() const {
    return folder.filePath(QStringLiteral("shop é.swbook")).toStdString();
  }
  void openEmptyBook() {
    ASSERT_TRUE(store::Book::create(bookPath(), clock));
    openWindow();
  }
  void makeDemoBook() {
    // Made once by the program, before these tests (ctest fixture "demo_book").
    ASSERT_TRUE(QFile::copy(QStringLiteral(SW_DEMO_BOOK), QString::fromStdString(bookPath())))
        << SW_DEMO_BOOK;
    clock.set(*parseTimestamp("2031-03-03T08:00+01:00"));
  }
  void openSession() {
    window.reset();
    session.reset();
    auto opened = ShopSession::open(bookPath(), store::OpenMode::ReadWrite, kResources, clock);
    ASSERT_TRUE(opened) << opened.error().key;
    session = std::move(*opened);
  }
  void openWindow() {
    openSession();
    if (!session) return;
    window = std::make_unique<MainWindow>(*session);
    window->resize(1280, 800);
    window->show();
    QCoreApplication::processEvents();
  }
  /// The widget of this name; the test fails where there is none.
  template <class T>
  T* find(const char* name) {
    T* found = window->findChild<T*>(QString::fromLatin1(name));
    EXPECT_NE(found, nullptr) << name;
    return found;
  }
  void type(const char* field, const QString& text) {
    auto* edit = find<QWidget>(field);
    edit->setFocus();
    QTest::keyClicks(edit, text);
  }
  void press(const char* button) {
    QTest::mouseClick(find<QWidget>(button), Qt::LeftButton);
    QCoreApplication::processEvents();
  }

  void settle() {
    for (int round = 0; round < 3; ++round) QCoreApplication::processEvents();
  }

  QTemporaryDir folder;
  ManualClock clock;
  std::unique_ptr<ShopSession> session;
  std::unique_ptr<MainWindow> window;
};

}  // namespace sw::ui
