// SPDX-License-Identifier: GPL-3.0-or-later
// Walks all pages: names for assistive tools, sizes of targets, words that fit.
#include "ui/pages.h"

#include <QAbstractButton>
#include <QAccessible>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QStackedWidget>

#include "window_fixture.h"

namespace sw::ui {
namespace {

Goal aboutJob(std::int64_t number) {
  Goal goal;
  goal.job = model::JobId{number};
  return goal;
}

class Pages : public WindowTest {
 protected:
  void SetUp() override { makeDemoBook(); }
  void TearDown() override { applyTheme({}); }

  template <class Visit>
  void onEveryPage(const Theme& theme, Visit visit) {
    applyTheme(theme);
    openWindow();
    // A closed job, and one that is up on a lift with a hold to be asked again.
    for (const std::int64_t job : {1, 11}) {
      onEveryPageOf(job, visit);
    }
  }
  template <class Visit>
  void onEveryPageOf(std::int64_t job, Visit visit) {
    for (const PageRow& page : pages()) {
      SCOPED_TRACE(std::string(wordOf(page.id)) + ", job " + std::to_string(job));
      ASSERT_TRUE(showPage(*window, wordOf(page.id), aboutJob(job)));
      for (int round = 0; round < 3; ++round) QCoreApplication::processEvents();
      for (QWidget* widget : window->findChildren<QWidget*>()) {
        if (widget->isVisible()) visit(*widget);
      }
    }
  }
};

bool isFocusable(const QWidget& widget) {
  return widget.focusPolicy() != Qt::NoFocus && widget.isEnabled();
}

/// Parts of a composite widget answer for it.
bool isInternal(const QWidget& widget) {
  return widget.objectName().startsWith("qt_");
}

TEST_F(Pages, EveryFocusableWidgetHasItsNames) {
  onEveryPage({}, [](const QWidget& widget) {
    if (!isFocusable(widget) || isInternal(widget)) return;
    EXPECT_FALSE(widget.objectName().isEmpty()) << widget.metaObject()->className();
    const auto* face = QAccessible::queryAccessibleInterface(const_cast<QWidget*>(&widget));
    ASSERT_NE(face, nullptr);
    EXPECT_FALSE(face->text(QAccessible::Name).isEmpty()) << widget.objectName().toStdString();
  });
}

TEST_F(Pages, TargetsHaveTheSizeOfTheMode) {
  for (const Mode mode : {Mode::Desk, Mode::Workshop}) {
    const int least = mode == Mode::Desk ? 32 : 72;
    onEveryPage({Look::Light, mode}, [&](const QWidget& widget) {
      const bool target = qobject_cast<const QAbstractButton*>(&widget) != nullptr ||
                          qobject_cast<const QLineEdit*>(&widget) != nullptr ||
                          qobject_cast<const QComboBox*>(&widget) != nullptr;
      if (!target || isInternal(widget)) return;
      EXPECT_GE(widget.height(), least) << widget.objectName().toStdString();
      EXPECT_GE(widget.width(), least) << widget.objectName().toStdString();
    });
  }
}

TEST_F(Pages, NoWordIsCut) {
  for (const Mode mode : {Mode::Desk, Mode::Workshop}) {
    onEveryPage({Look::Light, mode}, [](const QWidget& widget) {
      if (const auto* label = qobject_cast<const QLabel*>(&widget)) {
        const int needed =
            label->wordWrap() ? label->heightForWidth(label->width()) : label->sizeHint().height();
        EXPECT_GE(label->height(), needed) << label->text().toStdString();
        if (!label->wordWrap()) {
          EXPECT_GE(label->width(), label->sizeHint().width()) << label->text().toStdString();
        }
      }
      if (const auto* button = qobject_cast<const QAbstractButton*>(&widget)) {
        const int words = button->fontMetrics().horizontalAdvance(button->text());
        EXPECT_GE(button->width(), words) << button->text().toStdString();
      }
    });
  }
}

TEST_F(Pages, TheTabKeyGoesTheWayOneReads) {
  openWindow();
  for (const PageRow& page : pages()) {
    SCOPED_TRACE(wordOf(page.id));
    ASSERT_TRUE(showPage(*window, wordOf(page.id), aboutJob(11)));
    for (int round = 0; round < 3; ++round) QCoreApplication::processEvents();
    QRect before;
    QString nameBefore;
    auto* pageWidget = window->findChild<QStackedWidget*>()->currentWidget();
    for (QWidget* at = pageWidget->nextInFocusChain(); at != pageWidget;
         at = at->nextInFocusChain()) {
      const bool stop =
          at->isVisible() && isFocusable(*at) && (at->focusPolicy() & Qt::TabFocus) != 0;
      if (!stop || !pageWidget->isAncestorOf(at)) continue;
      const QRect here(at->mapTo(window.get(), QPoint(0, 0)), at->size());
      const bool above = here.bottom() <= before.top();
      const bool toTheRight = here.left() >= before.right();
      EXPECT_TRUE(!above || toTheRight)
          << nameBefore.toStdString() << " -> " << at->objectName().toStdString();
      before = here;
      nameBefore = at->objectName();
    }
    EXPECT_FALSE(nameBefore.isEmpty());
  }
}

TEST_F(Pages, APageThatIsNotThereIsNamed) {
  openWindow();
  const auto shown = showPage(*window, "nowhere", {});
  ASSERT_FALSE(shown);
  EXPECT_EQ(shown.error().key, "ui.no_page");
  EXPECT_FALSE(showPage(*window, "sheet", {}));
}

TEST_F(Pages, APictureIsScaled) {
  openWindow();
  ASSERT_TRUE(showPage(*window, "start", {}));
  EXPECT_EQ(pictureOf(*window, {800, 600}, 2.0).size(), QSize(1600, 1200));
}

}  // namespace
}  // namespace sw::ui
