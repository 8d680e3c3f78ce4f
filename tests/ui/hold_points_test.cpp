// SPDX-License-Identifier: GPL-3.0-or-later
// Hold points in the window: nothing that a hand does on its way through passes one.
#include <QPrinter>
#include <random>

#include "hands.h"
#include "ui/sheet/sheet_page.h"

namespace sw::ui {
namespace {

class HoldPoints : public Hands {
 protected:
  /// A job that is up on a lift, opened on a later day: the support is asked again.
  void openAnotherDay() {
    makeDemoBook();
    openWindow();
    session->setPerson("MT");
    number = {11};
    // Where a file would be asked for, nobody answers.
    work().choosePicture = [] { return QString(); };
    auto& paper = window->pageAs<SheetPage>(PageId::Sheet);
    paper.chooseFile = [](const QString&) { return QString(); };
    paper.choosePrinter = [](QPrinter&) { return false; };
    goTo("make-safe-and-lift/support", std::nullopt);
  }
  std::size_t passedHolds() {
    std::size_t passed = 0;
    for (const auto& hold : state()->holds) {
      if (hold.passed()) ++passed;
    }
    return passed;
  }
  std::string lockText() {
    auto* lock = seen<QLabel>(QStringLiteral("lockText"));
    auto* field = seen<QLineEdit>(QStringLiteral("holdAnswer"));
    return (lock == nullptr ? "no lock" : lock->text().toStdString()) + "; " +
           (field == nullptr ? "no field" : field->placeholderText().toStdString());
  }
  bool mayAnswer() {
    auto* field = seen<QLineEdit>(QStringLiteral("holdAnswer"));
    return field != nullptr && field->isEnabled();
  }
  std::size_t answers() {
    const auto& valid = state()->valid;
    return static_cast<std::size_t>(std::count_if(
        valid.begin(), valid.end(),
        [](const model::Entry* entry) { return model::as<model::HoldAnswer>(*entry) != nullptr; }));
  }
};

TEST_F(HoldPoints, TenThousandKeysOnTheWayThroughPassNone) {
  openAnotherDay();
  constexpr Qt::Key kKeys[] = {Qt::Key_Return,  Qt::Key_Enter,  Qt::Key_Space, Qt::Key_Tab,
                               Qt::Key_Backtab, Qt::Key_Escape, Qt::Key_Down,  Qt::Key_Up,
                               Qt::Key_Left,    Qt::Key_Right,  Qt::Key_Home,  Qt::Key_End};
  const std::size_t passedBefore = passedHolds();
  const std::size_t answersBefore = answers();
  std::mt19937 random(20310303);
  std::uniform_int_distribution<std::size_t> which(0, std::size(kKeys) - 1);
  constexpr int kMash = 10'000;
  constexpr int kBack = 40;  // then back to the hold: the mash would wander off
  for (int key = 0; key < kMash; ++key) {
    if (key % kBack == 0) {
      while (QWidget* popup = QApplication::activePopupWidget()) popup->close();
      window->activateWindow();
      goTo("make-safe-and-lift/support", std::nullopt);
      // Opening an earlier step again locks the hold: that is taken back, and the mash goes on.
      for (int undo = 0; undo < 50 && !mayAnswer(); ++undo) {
        session->undo(number);
        goTo("make-safe-and-lift/support", std::nullopt);
      }
      ASSERT_EQ(QApplication::focusWidget()->objectName(), QStringLiteral("holdAnswer"))
          << "after " << key << " keys: " << lockText();
    }
    QWidget* at = QApplication::focusWidget();
    QTest::keyClick(at != nullptr ? at : window.get(), kKeys[which(random)]);
  }
  settle();
  EXPECT_EQ(passedHolds(), passedBefore);
  EXPECT_EQ(answers(), answersBefore);
  EXPECT_FALSE(
      state()->holdAt(*workshop::stepNamed(*state(), "make-safe-and-lift/support"))->passed());
}

TEST_F(HoldPoints, NothingIsChosenBeforehandAndAnswersChangePlaces) {
  openAnotherDay();
  std::set<QStringList> orders;
  for (int look = 0; look < 6; ++look) {
    QStringList order;
    for (auto* button : work().findChildren<QPushButton*>()) {
      if (!button->objectName().startsWith(QStringLiteral("choice_"))) continue;
      if (!button->isVisible()) continue;
      EXPECT_FALSE(button->isChecked());
      EXPECT_FALSE(button->isDefault());
      order += button->objectName();
    }
    ASSERT_GE(order.size(), 2);
    orders.insert(order);
    // A new entry of the job shuffles anew.
    ASSERT_TRUE(session->perform(workshop::AddNote{"look " + std::to_string(look)},
                                 {number, {}, {}, {}, {}}));
    settle();
  }
  EXPECT_GT(orders.size(), 1U);
  EXPECT_TRUE(seen<QLineEdit>(QStringLiteral("holdAnswer"))->text().isEmpty());
}

TEST_F(HoldPoints, EnterOnNothingSaysWhatIsWanted) {
  openAnotherDay();
  const std::size_t before = answers();
  QTest::keyClick(seen<QLineEdit>(QStringLiteral("holdAnswer")), Qt::Key_Return);
  EXPECT_EQ(answers(), before);
  enter(QStringLiteral("holdAnswer"), QStringLiteral("9"));
  EXPECT_EQ(answers(), before);
}

TEST_F(HoldPoints, AnAnswerThatDoesNotPassIsKeptAndStopsTheJob) {
  openAnotherDay();
  const auto* hold = state()->holdAt(here());
  ASSERT_NE(hold, nullptr);
  const QString ask = seen<QLabel>(QStringLiteral("holdAsk"))->text();
  QString bad;
  for (const auto& view : hold->statements) {
    if (QString::fromStdString(view.statement->ask) != ask) continue;
    for (const auto& choice : view.statement->choices) {
      auto* button =
          seen<QPushButton>(QStringLiteral("choice_") + QString::fromStdString(choice.word));
      if (!choice.passes && button != nullptr) bad = button->text().section(QLatin1Char(' '), 0, 0);
    }
  }
  ASSERT_FALSE(bad.isEmpty());
  enter(QStringLiteral("holdAnswer"), bad);
  EXPECT_FALSE(state()->holdAt(here())->passed());
  EXPECT_EQ(seen<QLabel>(QStringLiteral("holdAsk"))->text(), ask);  // asked until it passes
  EXPECT_TRUE(seen<QLabel>(QStringLiteral("holdAnswered"))
                  ->text()
                  .contains(QStringLiteral("does not pass")));
}

TEST_F(HoldPoints, LaterFieldsAreLockedWithTheReasonOnThem) {
  openAnotherDay();
  goTo("fit-shims-and-pull/pull", model::Side::Left);
  auto* field = seen<QLineEdit>(QStringLiteral("readings"));
  ASSERT_NE(field, nullptr);
  EXPECT_FALSE(field->isEnabled());
  EXPECT_TRUE(field->placeholderText().contains(QStringLiteral("support")))
      << field->placeholderText().toStdString();
  // The way there is one press.
  ASSERT_TRUE(pressSeen(QStringLiteral("goFirst_0")));
  EXPECT_EQ(hereName(), "make-safe-and-lift/support");
  // Answered, and the field is free.
  answerHold();
  EXPECT_TRUE(state()->holdAt(here())->passed());
}

}  // namespace
}  // namespace sw::ui
