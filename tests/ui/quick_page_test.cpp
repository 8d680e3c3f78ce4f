// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/quick/quick_page.h"

#include <QAbstractItemView>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QRegularExpression>
#include <QWheelEvent>

#include "window_fixture.h"

namespace sw::ui {
namespace {

class QuickPageTest : public WindowTest {
 protected:
  void SetUp() override { makeDemoBook(); }
  void openCard(std::int64_t job) {
    openWindow();
    session->setPerson(session->shop().value()->people().front()->fact.initials);
    window->go({PageId::Quick, model::JobId{job}, {}, {}, {}});
    settle();
  }
  [[nodiscard]] std::shared_ptr<const workshop::JobState> state(std::int64_t job) const {
    return *session->job(model::JobId{job});
  }
  void choose(const char* combo, const QString& word) {
    auto* box = find<QComboBox>(combo);
    ASSERT_NE(box, nullptr);
    const int index = box->findData(word);
    ASSERT_GE(index, 0) << combo;
    box->setCurrentIndex(index);
    settle();
  }
  /// The first widget whose name fits.
  template <class T>
  T* like(const char* pattern) {
    const auto found = window->findChildren<T*>(QRegularExpression(QString::fromLatin1(pattern)));
    EXPECT_FALSE(found.isEmpty()) << pattern;
    return found.isEmpty() ? nullptr : found.front();
  }
  [[nodiscard]] QString problem(const char* row) {
    auto* label = find<QLabel>((std::string("problem:") + row).c_str());
    return label == nullptr || label->isHidden() ? QString() : label->text();
  }
};

TEST_F(QuickPageTest, RowsGoInInTheOrderOfTheCardAndSayWhenTheyWereDone) {
  openCard(12);
  QStringList combos;
  for (auto* box : window->findChildren<QComboBox*>()) {
    if (box->objectName().startsWith(QStringLiteral("free-checks#1/")) && box->isVisible()) {
      combos += box->objectName();
      EXPECT_EQ(box->currentIndex(), 0) << box->objectName().toStdString();
    }
  }
  ASSERT_GE(combos.size(), 3);
  // Filled in from below; sent from above.
  for (const int i : {2, 0, 1}) {
    find<QComboBox>(combos.at(i).toUtf8().constData())->setCurrentIndex(1);
  }
  EXPECT_TRUE(find<QLabel>("typedRows")->text().endsWith(QStringLiteral("3")));
  type("doneWhen", QStringLiteral("07:40"));
  const std::size_t before = state(12)->entries.size();
  press("copyIn");
  EXPECT_EQ(window->message(), QStringLiteral("Rows copied in: 3."));
  const auto after = state(12);
  std::vector<std::string> steps;
  for (std::size_t i = before; i < after->entries.size(); ++i) {
    const model::Entry& entry = *after->entries[i];
    EXPECT_EQ(toIso(entry.doneAt), "2031-03-03T07:40:00.000+01:00");
    EXPECT_EQ(toIso(entry.enteredAt), "2031-03-03T08:00:00.000+01:00");
    if (model::as<model::Observation>(entry) == nullptr) continue;
    steps.push_back("free-checks#1/" + entry.step + "/" +
                    (entry.side ? std::string(wordOf(*entry.side)) : "once"));
  }
  ASSERT_EQ(steps.size(), 3U);
  for (std::size_t i = 0; i < 3; ++i) {
    EXPECT_TRUE(combos.at(static_cast<int>(i)).startsWith(QString::fromStdString(steps[i] + "/")));
    EXPECT_EQ(window->findChild<QComboBox*>(combos.at(static_cast<int>(i))), nullptr);
  }
  // What went in reads as done.
  int inTheBook = 0;
  for (auto* label : window->findChildren<QLabel*>()) {
    inTheBook += label->text().contains(QStringLiteral("in the book.")) ? 1 : 0;
  }
  EXPECT_EQ(inTheBook, 3);
}

TEST_F(QuickPageTest, StopsAtTheFirstRefusalAndKeepsWhatComesAfter) {
  openCard(12);
  auto* first = like<QComboBox>("^free-checks#1/.*answer$");
  ASSERT_NE(first, nullptr);
  first->setCurrentIndex(1);
  // Lifting comes after all the checks: open its rows by hand and tick ahead.
  press("group:make-safe-and-lift#1");
  press("make-safe-and-lift#1/quiet/once/tick/tick");
  press("group:prepare-to-measure#1");
  auto* later = like<QPushButton>("^prepare-to-measure#1/.*/tick$");
  ASSERT_NE(later, nullptr);
  const QString laterName = later->objectName();
  later->click();
  press("copyIn");
  const std::string refused = "make-safe-and-lift#1/quiet/once/tick";
  EXPECT_TRUE(window->message().contains(QStringLiteral("Rows copied in: 1. Stopped at")))
      << window->message().toStdString();
  EXPECT_TRUE(window->message().contains(QStringLiteral("Engine off")));
  EXPECT_TRUE(problem(refused.c_str()).contains(QStringLiteral("Engine off")));
  EXPECT_TRUE(find<QPushButton>((refused + "/tick").c_str())->isChecked());
  EXPECT_TRUE(find<QPushButton>((refused + "/tick").c_str())->hasFocus());
  settle();
  EXPECT_FALSE(find<QPushButton>((refused + "/tick").c_str())->visibleRegion().isEmpty());
  EXPECT_TRUE(find<QPushButton>(laterName.toUtf8().constData())->isChecked());
  EXPECT_TRUE(find<QLabel>("typedRows")->text().endsWith(QStringLiteral("2")));
}

TEST_F(QuickPageTest, WhatWasTypedSurvivesTheEndOfTheProgram) {
  openCard(12);
  auto* words = like<QLineEdit>("^free-checks#1/.*text$");
  ASSERT_NE(words, nullptr);
  const QString name = words->objectName();
  QTest::keyClicks(words, QStringLiteral("cupped inside"));
  const QString place = QStringLiteral("job/12/card");
  EXPECT_TRUE(QTest::qWaitFor(
      [&] { return session->draft(place).contains(QStringLiteral("cupped inside")); }, 2000));
  // A second look at the same book, as after a kill: nothing was closed in good order.
  const QString copy = folder.filePath(QStringLiteral("killed.swbook"));
  ASSERT_TRUE(QFile::copy(QString::fromStdString(bookPath()), copy));
  auto again = ShopSession::open(copy.toStdString(), store::OpenMode::ReadWrite, kResources, clock);
  ASSERT_TRUE(again);
  MainWindow second(**again);
  second.show();
  second.go({PageId::Quick, model::JobId{12}, {}, {}, {}});
  auto* kept = second.findChild<QLineEdit*>(name);
  ASSERT_NE(kept, nullptr);
  EXPECT_EQ(kept->text(), QStringLiteral("cupped inside"));
  // And leaving the page does not lose it either.
  window->showStart();
  window->go({PageId::Quick, model::JobId{12}, {}, {}, {}});
  EXPECT_EQ(find<QLineEdit>(name.toUtf8().constData())->text(), QStringLiteral("cupped inside"));
}

TEST_F(QuickPageTest, ATimeTypedTodayMeansTodayAlsoTomorrow) {
  openCard(12);
  type("doneWhen", QStringLiteral("07:40"));
  window->showStart();
  clock.advanceMilliseconds(24LL * 3600 * 1000);
  openCard(12);
  EXPECT_EQ(find<QLineEdit>("doneWhen")->text(), QStringLiteral("2031-03-03 07:40"));
}

// The scale in hand is the scale of the next row.
TEST_F(QuickPageTest, TheInstrumentChosenStandsInTheRowsBelow) {
  openCard(12);
  press("group:as-found-pull#1");
  const auto boxes = [this] {
    return window->findChildren<QComboBox*>(
        QRegularExpression(QStringLiteral("^as-found-pull#1/.*readings/instrument$")));
  };
  ASSERT_GE(boxes().size(), 2);
  auto* first = boxes().front();
  const QString name = first->objectName();
  ASSERT_GE(first->count(), 3) << "a shop with two instruments for it";
  first->setFocus();
  first->setCurrentIndex(2);
  settle();
  int alike = 0;
  for (auto* box : boxes()) {
    if (box->count() != boxes().front()->count()) continue;
    alike += box->currentIndex() == 2 ? 1 : 0;
  }
  EXPECT_GE(alike, 2);
  EXPECT_EQ(QApplication::focusWidget()->objectName(), name);
  // Only the row that was touched counts as filled in.
  EXPECT_TRUE(find<QLabel>("typedRows")->text().endsWith(QStringLiteral(": 1")));
}

TEST_F(QuickPageTest, HalfARowStopsWithItsName) {
  openCard(12);
  auto* words = like<QLineEdit>("^free-checks#1/.*text$");
  QTest::keyClicks(words, QStringLiteral("cupped inside"));
  const std::size_t before = state(12)->entries.size();
  press("copyIn");
  EXPECT_TRUE(window->message().contains(QStringLiteral("Answer: this is needed")))
      << window->message().toStdString();
  EXPECT_EQ(state(12)->entries.size(), before);
}

TEST_F(QuickPageTest, AHoldIsNotPassedByEnterSpaceTabOrEscape) {
  openCard(11);
  auto* statement = like<QComboBox>("^make-safe-and-lift#1/support/once/statement:.*answer$");
  ASSERT_NE(statement, nullptr) << "the support is asked again on another day";
  EXPECT_EQ(statement->currentIndex(), 0);
  const std::size_t before = state(11)->entries.size();
  statement->setFocus();
  QTest::keyClick(statement, Qt::Key_Space);
  QTest::keyClick(statement->view(), Qt::Key_Return);
  EXPECT_EQ(statement->currentIndex(), 0);
  statement->hidePopup();
  statement->setFocus();
  for (int round = 0; round < 40; ++round) {
    QWidget* at = QApplication::focusWidget();
    ASSERT_NE(at, nullptr);
    if (!window->pageAs<QuickPage>(PageId::Quick).isAncestorOf(at)) break;
    for (const Qt::Key key : {Qt::Key_Return, Qt::Key_Escape, Qt::Key_Tab}) {
      QTest::keyClick(QApplication::focusWidget(), key);
    }
  }
  press("copyIn");
  EXPECT_EQ(state(11)->entries.size(), before);
}

TEST_F(QuickPageTest, TheWheelChangesNoAnswer) {
  openCard(12);
  auto* box = like<QComboBox>("^free-checks#1/.*answer$");
  box->setFocus();
  QWheelEvent wheel(QPointF(5, 5), box->mapToGlobal(QPointF(5, 5)), {}, {0, -120}, Qt::NoButton,
                    Qt::NoModifier, Qt::NoScrollPhase, false);
  QApplication::sendEvent(box, &wheel);
  EXPECT_EQ(box->currentIndex(), 0);
  EXPECT_FALSE(wheel.isAccepted());
}

TEST_F(QuickPageTest, ATimeThatIsNoneIsSaidAndNothingIsSent) {
  openCard(12);
  like<QComboBox>("^free-checks#1/.*answer$")->setCurrentIndex(1);
  type("doneWhen", QStringLiteral("noon"));
  const std::size_t before = state(12)->entries.size();
  press("copyIn");
  EXPECT_TRUE(window->message().contains(QStringLiteral("noon")));
  EXPECT_TRUE(find<QLineEdit>("doneWhen")->hasFocus());
  EXPECT_EQ(state(12)->entries.size(), before);
}

TEST_F(QuickPageTest, AJobWithoutAPlanSaysWhatToDo) {
  openWindow();
  session->setPerson(session->shop().value()->people().front()->fact.initials);
  workshop::OpenJob open;
  open.registration = "HB-0417";
  const auto job = session->perform(open);
  ASSERT_TRUE(job);
  window->go({PageId::Quick, job->job, {}, {}, {}});
  EXPECT_TRUE(find<QLabel>("quickEmpty")->isVisible());
  press("startCardPlan");
  EXPECT_FALSE(find<QLabel>("quickEmpty")->isVisible());
  EXPECT_FALSE(state(job->job->value)->runs.empty());
  EXPECT_NE(window->findChild<QPushButton*>(QStringLiteral("group:free-checks#1")), nullptr);
}

}  // namespace
}  // namespace sw::ui
