// SPDX-License-Identifier: GPL-3.0-or-later
// What a step works out follows what is typed at it.
#include "hands.h"
#include "ui/bench/figure_view.h"

namespace sw::ui {
namespace {

class StepAdvice : public Hands {
 protected:
  void SetUp() override {
    makeDemoBook();
    openWindow();
    session->setPerson("MT");
    number = {11};  // a job that waits for its next pack
    goTo("make-safe-and-lift/support", std::nullopt);
    answerHold();
  }
  QString words() { return find<QLabel>("benchWords")->text(); }
  bool mayKeep() { return seen<QPushButton>(QStringLiteral("benchKeep")) != nullptr; }
};

TEST_F(StepAdvice, PullsAreWorkedOutBeforeTheyAreRecorded) {
  goTo("fit-shims-and-pull/fit_pack", model::Side::Left);
  enter(QStringLiteral("packShims"), QStringLiteral("0.50 + 0.15 + 0.15"));
  goTo("fit-shims-and-pull/pull", model::Side::Left);
  ASSERT_TRUE(pressSeen(QStringLiteral("allBefore")));
  ASSERT_TRUE(pressSeen(QStringLiteral("benchFold")));
  auto* picture = work().findChild<FigureView*>();
  const QString recorded = words();
  const QString pictured = picture->accessibleDescription();
  EXPECT_TRUE(mayKeep());

  auto* field = seen<QLineEdit>(QStringLiteral("readings"));
  QTest::keyClicks(field, QStringLiteral("22 23 23 23 23 23"));
  settle();
  EXPECT_NE(words(), recorded) << recorded.toStdString();
  EXPECT_NE(picture->accessibleDescription(), pictured) << pictured.toStdString();
  EXPECT_EQ(find<QLabel>("benchHead")->text(), QStringLiteral("With what is typed"));
  EXPECT_FALSE(mayKeep());  // what is put into the job rests on what is on record

  field->clear();
  settle();
  EXPECT_EQ(words(), recorded);
  EXPECT_TRUE(mayKeep());
}

TEST_F(StepAdvice, TypedAtOneStepItIsNotWorkedOutAtAnother) {
  goTo("fit-shims-and-pull/fit_pack", model::Side::Left);
  enter(QStringLiteral("packShims"), QStringLiteral("0.50 + 0.15 + 0.15"));
  goTo("fit-shims-and-pull/pull", model::Side::Left);
  ASSERT_TRUE(pressSeen(QStringLiteral("allBefore")));
  QTest::keyClicks(seen<QLineEdit>(QStringLiteral("readings")), QStringLiteral("22 23 23 23"));
  settle();
  goTo("fit-shims-and-pull/fit_pack", model::Side::Right);
  EXPECT_EQ(find<QLabel>("benchHead")->text(), QStringLiteral("Work it out"));
}

}  // namespace
}  // namespace sw::ui
