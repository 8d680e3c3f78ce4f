// SPDX-License-Identifier: GPL-3.0-or-later
// The numbers of causes and checks, and what ended jobs taught, as a shop sees them.
#include <QTableWidget>

#include "diagnosis/own_numbers.h"
#include "hands.h"
#include "ui/causes/learning_page.h"
#include "ui/causes/numbers_page.h"
#include "ui/pages.h"
#include "workshop/checks_ahead.h"

namespace sw::ui {
namespace {

class CauseNumbersTest : public Hands {
 protected:
  void SetUp() override {
    makeDemoBook();
    openWindow();
    session->setPerson("MT");
  }
  void go(PageId page) {
    window->go({page, {}, {}, {}, {}});
    settle();
  }
  QTableWidget* table(const char* name) {
    return window->findChild<QTableWidget*>(QLatin1String(name));
  }
  void choose(const QString& item) {
    auto* list = table("numbersTable");
    for (int row = 0; row < list->rowCount(); ++row) {
      if (list->item(row, 0)->text() == item) list->selectRow(row);
    }
    settle();
    ASSERT_EQ(find<QLabel>("numbersTitle")->text(), item);
  }
  /// The one that is shown: an older form may still wait for its end.
  QLineEdit* field(const char* name) {
    for (auto* edit : window->findChildren<QLineEdit*>(QLatin1String(name))) {
      if (edit->isVisible()) return edit;
    }
    ADD_FAILURE() << name;
    return nullptr;
  }
  void type(const char* name, const QString& text) {
    field(name)->setText(text);
    find<QPushButton>("saveNumbers")->click();
    settle();
  }
  diagnosis::CauseFile numbers() { return *workshop::causesOf(**session->shop()); }
  double minutesOf(const char* check) {
    const auto file = numbers();
    return file.checks[*file.check(check)].minutes;
  }
};

TEST_F(CauseNumbersTest, ANumberOfTheShopsOwnIsMarkedUsedAndGivenBack) {
  go(PageId::Numbers);
  const double shipped = minutesOf("balance");
  choose(QStringLiteral("Check: Balance both front wheels on a machine"));
  const char* minutes = "checks/balance/minutes";
  EXPECT_EQ(field(minutes)->placeholderText(), QString::number(shipped));
  type(minutes, QStringLiteral("27,5"));
  EXPECT_EQ(minutesOf("balance"), 27.5);
  EXPECT_EQ(field(minutes)->text(), QStringLiteral("27.5"));
  EXPECT_TRUE(find<QLabel>("ownCount")->text().contains(QLatin1Char('1')));
  find<QPushButton>("itemNumbersBack")->click();
  settle();
  EXPECT_EQ(minutesOf("balance"), shipped);
  EXPECT_EQ(field(minutes)->text(), QString());
  // An empty field does the same.
  type(minutes, QStringLiteral("31"));
  type(minutes, QString());
  EXPECT_EQ(minutesOf("balance"), shipped);
}

TEST_F(CauseNumbersTest, ReturnSavesToo) {
  go(PageId::Numbers);
  choose(QStringLiteral("Check: Balance both front wheels on a machine"));
  auto* edit = field("checks/balance/minutes");
  edit->setFocus();
  QTest::keyClicks(edit, QStringLiteral("33"));
  QTest::keyClick(edit, Qt::Key_Return);
  settle();
  EXPECT_EQ(minutesOf("balance"), 33);
  EXPECT_EQ(field("checks/balance/minutes")->text(), QStringLiteral("33"));
}

TEST_F(CauseNumbersTest, ChancesAreTypedAsTimesOfAHundred) {
  go(PageId::Numbers);
  choose(QStringLiteral("Check: Balance both front wheels on a machine"));
  type("checks/balance/finds/wheel_unbalance", QStringLiteral("80"));
  const auto file = numbers();
  EXPECT_NEAR(file.checks[*file.check("balance")].finds.front().chance, .8, 1e-12);
  find<QPushButton>("allNumbersBack")->click();
  settle();
  EXPECT_EQ((*session->shop())->causeNumbers(), "");
}

TEST_F(CauseNumbersTest, WhatCannotBeNamesItsFieldAndLosesNothing) {
  go(PageId::Numbers);
  choose(QStringLiteral("Check: Balance both front wheels on a machine"));
  type("checks/balance/minutes", QStringLiteral("soon"));
  auto* problem = find<QLabel>("numbersProblem");
  EXPECT_TRUE(problem->isVisible());
  EXPECT_TRUE(problem->text().contains(QStringLiteral("Minutes it takes")))
      << problem->text().toStdString();
  EXPECT_EQ(field("checks/balance/minutes")->text(), QStringLiteral("soon"));
  type("checks/balance/minutes", QStringLiteral("20"));
  type("checks/balance/false_alarm", QStringLiteral("140"));
  EXPECT_TRUE(problem->isVisible());
  EXPECT_EQ(minutesOf("balance"), 20);
  // What was typed is there again after a look elsewhere.
  go(PageId::Start);
  go(PageId::Numbers);
  EXPECT_EQ(field("checks/balance/false_alarm")->text(), QStringLiteral("140"));
}

TEST_F(CauseNumbersTest, EveryNumberHasAFieldOnThePage) {
  go(PageId::Numbers);
  std::size_t fields = 0;
  auto* list = table("numbersTable");
  for (int row = 0; row < list->rowCount(); ++row) {
    list->selectRow(row);
    settle();
    for (const auto* edit : window->findChildren<QLineEdit*>()) {
      if (edit->isVisible() && edit->objectName().contains(QLatin1Char('/'))) ++fields;
    }
  }
  // Those that stand alone have no slash in their name.
  EXPECT_EQ(fields + 2, diagnosis::numbersOf(numbers()).size());
}

TEST_F(CauseNumbersTest, LearningShowsItsJobsAndBothScores) {
  go(PageId::Learning);
  const auto learning = *session->learning();
  EXPECT_EQ(table("lessonTable")->rowCount(), static_cast<int>(learning->jobs.size()));
  EXPECT_EQ(find<QLabel>("score_learned_2")->text(),
            QString::number(learning->choice.report.learned.brier, 'f', 3));
  EXPECT_EQ(find<QLabel>("score_starting_3")->text(),
            QString::number(learning->choice.report.starting.log, 'f', 3));
  EXPECT_FALSE(find<QLabel>("learningLead")->text().isEmpty());
}

TEST_F(CauseNumbersTest, AJobIsLeftOutWithAReasonAndTakenInAgain) {
  const auto before = session->learning().value()->lessons().size();
  ASSERT_GT(before, 0U) << "the demonstration book should teach something";
  go(PageId::Learning);
  find<QPushButton>("leaveOutOfLearning")->click();
  settle();
  EXPECT_TRUE(find<QLabel>("learningProblem")->isVisible());  // no reason yet
  find<QLineEdit>("leftOutWhy")->setText(QStringLiteral("three parts changed"));
  find<QPushButton>("leaveOutOfLearning")->click();
  settle();
  EXPECT_EQ(session->learning().value()->lessons().size(), before - 1);
  find<QPushButton>("takeIntoLearning")->click();
  settle();
  EXPECT_EQ(session->learning().value()->lessons().size(), before);
}

TEST_F(CauseNumbersTest, AComebackIsSeenWithTheFirstAnswer) {
  workshop::SetSetting days;
  days.key = "cause_numbers";
  days.value = R"({"comeback_days": 3650})";
  ASSERT_TRUE(session->perform(days));
  const auto before = session->learning().value()->lessons().size();
  workshop::OpenJob open;
  open.registration = "HB-2450";
  const auto opened = session->perform(open);
  ASSERT_TRUE(opened && opened->job);
  EXPECT_EQ(session->learning().value()->lessons().size(), before);
  workshop::TellOfShake told;
  told.feature = "braking";
  told.answer = "also";
  ASSERT_TRUE(session->perform(told, {*opened->job, {}, {}, {}, {}}));
  EXPECT_EQ(session->learning().value()->lessons().size(), before - 1);
  window->go({PageId::Causes, *opened->job, {}, {}, {}});
  settle();
  EXPECT_TRUE(find<QLabel>("comeback")->isVisible());
  EXPECT_TRUE(find<QLabel>("comeback")->text().contains(QStringLiteral("preload")));
}

}  // namespace
}  // namespace sw::ui
