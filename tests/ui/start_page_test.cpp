// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/start/start_page.h"

#include <QLabel>
#include <QPushButton>
#include <QTableWidget>

#include "ui/pages.h"
#include "ui/start/job_card.h"
#include "window_fixture.h"

namespace sw::ui {
namespace {

class StartPageTest : public WindowTest {
 protected:
  void SetUp() override {
    makeDemoBook();
    openWindow();
  }
};

TEST_F(StartPageTest, TheJobWorkedOnLastIsTheFirstThingAtTheNextStart) {
  EXPECT_FALSE(find<QPushButton>("goOn")->isVisible());  // nobody worked in this book yet
  EXPECT_TRUE(find<QPushButton>("newJob")->hasFocus());
  const auto state = *session->job(model::JobId{12});
  const std::size_t step = *workshop::resumePoint(*state).step;
  const Where where = whereOf(*state, step);
  window->go({PageId::Sheet, model::JobId{12}, {}, where.step, where.side});
  openWindow();
  auto* goOn = find<QPushButton>("goOn");
  ASSERT_TRUE(goOn->isVisible());
  EXPECT_TRUE(goOn->hasFocus());
  EXPECT_TRUE(goOn->text().contains(QStringLiteral("HB-0417, job 12")));
  const QString title = QString::fromStdString(state->steps[step].step->title);
  EXPECT_TRUE(find<QLabel>("goOnAt")->text().contains(title));
  EXPECT_TRUE(goOn->accessibleName().contains(title));
  QTest::keyClick(goOn, Qt::Key_Space);
  EXPECT_EQ(window->here().page, PageId::Work);
  EXPECT_EQ(window->here().job, model::JobId{12});
  EXPECT_EQ(window->here().step, where.step);
  EXPECT_EQ(window->here().side, where.side);
}

TEST_F(StartPageTest, AClosedJobIsNotGoneOnWith) {
  window->go({PageId::Sheet, model::JobId{1}, {}, {}, {}});
  window->showStart();
  EXPECT_FALSE(find<QPushButton>("goOn")->isVisible());
}

TEST_F(StartPageTest, ACardOpensTheWorkOfItsJob) {
  auto* card = find<JobCard>("job_11");
  QTest::mouseClick(card, Qt::LeftButton);
  EXPECT_EQ(window->here().page, PageId::Work);
  EXPECT_EQ(window->here().job, model::JobId{11});
}

TEST_F(StartPageTest, OfManyRechecksTheMostPressingHundredAreShown) {
  const int before = find<QTableWidget>("dueTable")->rowCount();
  ASSERT_LT(before, 100);
  EXPECT_FALSE(find<QLabel>("dueNote")->isVisible());
  std::vector<model::Entry> entries;
  auto& book = session->workshop().book();
  for (std::int64_t i = 0; i < 120; ++i) {
    model::Entry entry;
    entry.id = {book.nextEntryId()->value + i};
    entry.job = model::JobId{1};
    entry.doneAt = entry.enteredAt = clock.now();
    model::RecheckDue due;
    due.what = "look " + std::to_string(i);
    due.on = addDays(Date{2020, 1, 1}, static_cast<int>(120 - i));  // the last one first
    entry.payload = due;
    entries.push_back(std::move(entry));
  }
  ASSERT_TRUE(book.append(entries));
  window->showStart();
  auto* table = find<QTableWidget>("dueTable");
  EXPECT_EQ(table->rowCount(), 100);
  EXPECT_EQ(table->item(0, 1)->text(), QStringLiteral("look 119"));
  EXPECT_EQ(table->item(99, 1)->text(), QStringLiteral("look 20"));
  EXPECT_TRUE(find<QLabel>("dueNote")->isVisible());
  EXPECT_TRUE(find<QLabel>("dueNote")->text().contains(QStringLiteral("100")));
}

TEST_F(StartPageTest, VehiclesAreListedTheOneWorkedOnLastFirst) {
  EXPECT_FALSE(find<QTableWidget>("vehicleTable")->isVisible());
  press("vehicles");
  auto* table = find<QTableWidget>("vehicleTable");
  ASSERT_TRUE(table->isVisible());
  EXPECT_EQ(static_cast<std::size_t>(table->rowCount()), (*session->shop())->vehicles().size());
  EXPECT_EQ(table->item(0, 0)->text(), QStringLiteral("HB-0417"));
  table->setFocus();
  table->setCurrentCell(0, 0);
  QTest::keyClick(table, Qt::Key_Return);
  EXPECT_EQ(window->here().page, PageId::Vehicle);
  ASSERT_TRUE(window->here().vehicle);
  EXPECT_EQ((*session->shop())->vehicle(*window->here().vehicle)->fact.registration, "HB-0417");
}

TEST_F(StartPageTest, TheTabKeyVisitsTheCardsAfterNewJob) {
  find<QPushButton>("newJob")->setFocus();
  QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
  EXPECT_EQ(QApplication::focusWidget()->objectName(), QStringLiteral("job_10"));
}

}  // namespace
}  // namespace sw::ui
