// SPDX-License-Identifier: GPL-3.0-or-later
// The work page: undo, interruption, drafts, photos, the ledger, one side alone.
#include <QAbstractItemView>
#include <QDropEvent>
#include <QImage>
#include <QMimeData>

#include "hands.h"
#include "ui/work/step_panel.h"

namespace sw::ui {
namespace {

class WorkPageTest : public Hands {
 protected:
  /// A job on the vehicle of the demonstration whose sheet is filled in, at its first step.
  void startJob() {
    makeDemoBook();
    openWindow();
    session->setPerson("MT");
    const auto opened = session->perform(workshop::OpenJob{"HB-0417", {}, {}});
    ASSERT_TRUE(opened);
    number = *opened->job;
    clock.advanceMilliseconds(1000);
    ASSERT_TRUE(
        session->perform(workshop::StartPlan{"swivel-preload", {}}, {number, {}, {}, {}, {}}));
    clock.advanceMilliseconds(1000);
    window->go({PageId::Work, number, {}, {}, {}});
    settle();
  }
  void startAgain() {
    openWindow();
    session->setPerson("MT");
    window->go({PageId::Work, number, {}, {}, {}});
    settle();
  }
};

TEST_F(WorkPageTest, UndoTakesTheLastEntryBackAndBothStayOnRecord) {
  startJob();
  goTo("free-checks/pressures", model::Side::Left);
  enter(QStringLiteral("readings"), QStringLiteral("2.0 bar"));
  ASSERT_TRUE(state()->steps[here()].done());
  auto* undo = find<QPushButton>("undo");
  ASSERT_TRUE(undo->isEnabled());
  EXPECT_TRUE(undo->toolTip().contains(QStringLiteral("2.0"))) << undo->toolTip().toStdString();
  const std::size_t before = state()->entries.size();
  QTest::keyClick(window.get(), Qt::Key_Z, Qt::ControlModifier);
  settle();
  EXPECT_GT(state()->entries.size(), before);
  const auto step = workshop::stepNamed(*state(), "free-checks/pressures (left)");
  ASSERT_TRUE(step);
  EXPECT_FALSE(state()->steps[*step].done());
  EXPECT_EQ(state()->newestSeries(*step), nullptr);
}

TEST_F(WorkPageTest, WhatIsTypedAndNotAcceptedIsThereAfterAPowerCut) {
  startJob();
  goTo("free-checks/pressures", model::Side::Left);
  auto* field = seen<QLineEdit>(QStringLiteral("readings"));
  QTest::keyClicks(field, QStringLiteral("2.05 ba"));
  QTest::qWait(600);  // the draft is kept shortly after the last key
  startAgain();
  EXPECT_EQ(hereName(), "free-checks/pressures (left)");
  EXPECT_EQ(seen<QLineEdit>(QStringLiteral("readings"))->text(), QStringLiteral("2.05 ba"));
  enter(QStringLiteral("readings"), QStringLiteral("2.05 bar"));
  startAgain();
  goTo("free-checks/pressures", model::Side::Left);
  EXPECT_TRUE(seen<QLineEdit>(QStringLiteral("readings"))->text().isEmpty());
}

TEST_F(WorkPageTest, TheVerdictFollowsTheKeys) {
  startJob();
  goTo("free-checks/pressures", model::Side::Left);
  const std::size_t before = state()->entries.size();
  auto* field = seen<QLineEdit>(QStringLiteral("readings"));
  field->setFocus();
  QTest::keyClicks(field, QStringLiteral("2"));
  auto* words = seen<QLabel>(QStringLiteral("verdictWords"));
  ASSERT_NE(words, nullptr);
  EXPECT_TRUE(seen<QLabel>(QStringLiteral("measureProblem"))
                  ->text()
                  .contains(QStringLiteral("bar")));  // how the bare number is read
  QTest::keyClicks(field, QStringLiteral("x"));
  const QString problem = seen<QLabel>(QStringLiteral("measureProblem"))->text();
  EXPECT_TRUE(problem.contains(QStringLiteral("x"))) << problem.toStdString();
  QTest::keyClick(field, Qt::Key_Backspace);
  EXPECT_EQ(state()->entries.size(), before);  // judged, not written
}

TEST_F(WorkPageTest, APictureIsDroppedOnAStep) {
  startJob();
  const QString file = folder.filePath(QStringLiteral("rim.png"));
  QImage picture(320, 200, QImage::Format_RGB32);
  picture.fill(Qt::darkGreen);
  ASSERT_TRUE(picture.save(file));
  auto* panel = work().findChild<StepPanel*>();
  QMimeData data;
  data.setUrls({QUrl::fromLocalFile(file)});
  QDragEnterEvent enterEvent(QPoint(20, 20), Qt::CopyAction, &data, Qt::LeftButton, {});
  QApplication::sendEvent(panel->viewport(), &enterEvent);
  EXPECT_TRUE(enterEvent.isAccepted());
  QDropEvent drop(QPointF(20, 20), Qt::CopyAction, &data, Qt::LeftButton, {});
  QApplication::sendEvent(panel->viewport(), &drop);
  settle();
  const auto& valid = state()->valid;
  const auto photo = std::find_if(valid.begin(), valid.end(), [](const model::Entry* entry) {
    return model::as<model::Photo>(*entry) != nullptr;
  });
  ASSERT_NE(photo, valid.end());
  EXPECT_TRUE(state()->belongsTo(**photo, here()));
}

TEST_F(WorkPageTest, WhatElseCameOffIsOneActionWithItsPhoto) {
  startJob();
  const QString file = folder.filePath(QStringLiteral("guard.png"));
  QImage picture(64, 64, QImage::Format_RGB32);
  picture.fill(Qt::gray);
  ASSERT_TRUE(picture.save(file));
  work().choosePicture = [file] { return file; };
  ASSERT_TRUE(pressSeen(QStringLiteral("alsoRemoved")));
  auto* words = seen<QLineEdit>(QStringLiteral("ledgerReasonWords"));
  QTest::keyClicks(words, QStringLiteral("splash guard"));
  ASSERT_TRUE(pressSeen(QStringLiteral("ledgerReasonOther")));
  ASSERT_EQ(state()->ledger.size(), 1U);
  EXPECT_EQ(state()->ledger.front().name, "splash guard");
  EXPECT_FALSE(state()->ledger.front().clear());
  const auto* photo = model::as<model::Photo>(*state()->valid.back());
  ASSERT_NE(photo, nullptr);
  EXPECT_EQ(photo->caption, "splash guard");
}

TEST_F(WorkPageTest, OneSideAloneLeavesTheOtherOut) {
  startJob();
  auto* list = find<QAbstractItemView>("stepList");
  const int both = list->model()->rowCount();
  auto* sides = find<QComboBox>("sides");
  sides->setFocus();
  QTest::keyClick(sides, Qt::Key_Down);
  settle();
  EXPECT_LT(list->model()->rowCount(), both);
  for (int row = 0; row < list->model()->rowCount(); ++row) {
    const QString text = list->model()->index(row, 0).data().toString();
    EXPECT_FALSE(text.endsWith(QStringLiteral("(right)"))) << text.toStdString();
  }
}

TEST_F(WorkPageTest, AStepIsDoneBeforeRecordingOrDoesNotApply) {
  startJob();
  goTo("free-checks/rims", model::Side::Left);
  ASSERT_TRUE(pressSeen(QStringLiteral("stepBefore")));
  const auto before = workshop::stepNamed(*state(), "free-checks/rims (left)");
  EXPECT_EQ(state()->steps[*before].action, model::StepAction::DoneBeforeRecording);
  goTo("free-checks/rims", model::Side::Right);
  ASSERT_TRUE(pressSeen(QStringLiteral("stepNotApplicable")));
  enter(QStringLiteral("stepReasonWords"), QStringLiteral("rim cleaned by the owner"));
  const auto none = workshop::stepNamed(*state(), "free-checks/rims (right)");
  EXPECT_EQ(state()->steps[*none].action, model::StepAction::NotApplicable);
}

// A hub that was apart before anybody opened the program: one press up to the hold, the hold
// answered, one press more, and the pulls can be typed.
TEST_F(WorkPageTest, AHubAlreadyApartIsMarkedAtOnceAndStopsAtTheHold) {
  startJob();
  goTo("fit-shims-and-pull/fit_pack", model::Side::Left);
  ASSERT_TRUE(state()->ledger.empty());
  ASSERT_TRUE(pressSeen(QStringLiteral("allBefore")));  // up to what carries the vehicle
  goTo("make-safe-and-lift/choose_support", std::nullopt);
  ASSERT_TRUE(pressSeen(QStringLiteral("allBefore")));  // of the other side, too
  ASSERT_TRUE(pressSeen(QStringLiteral("support_stands")));
  goTo("make-safe-and-lift/support", std::nullopt);
  ASSERT_TRUE(pressSeen(QStringLiteral("allBefore"))) << openSteps();
  answerHold();
  ASSERT_TRUE(state()->holdAt(here())->passed()) << openSteps();
  goTo("fit-shims-and-pull/fit_pack", model::Side::Left);
  ASSERT_TRUE(pressSeen(QStringLiteral("allBefore"))) << openSteps();
  goTo("fit-shims-and-pull/fit_pack", model::Side::Left);
  EXPECT_TRUE(seen<QLineEdit>(QStringLiteral("packShims"))->isEnabled()) << openSteps();
  EXPECT_FALSE(state()->ledger.empty());  // what is off stands there
  for (const auto& hold : state()->holds) {
    const auto& view = state()->steps[hold.step];
    EXPECT_TRUE(view.action != model::StepAction::DoneBeforeRecording);
  }
}

TEST_F(WorkPageTest, WithGlovesTheStepAndTheLimitAreReadFromTwoMetres) {
  applyTheme({Look::Light, Mode::Workshop});
  startJob();
  goTo("free-checks/pressures", model::Side::Left);
  // Digits at least 10 mm high at 96 dpi (common practice, no source: legible at two metres).
  const double millimetre = 96 / 25.4;
  auto* limit = seen<QLabel>(QStringLiteral("measureLimit"));
  ASSERT_NE(limit, nullptr);
  EXPECT_FALSE(limit->text().isEmpty());
  EXPECT_GE(limit->fontMetrics().tightBoundingRect(QStringLiteral("8")).height(), 10 * millimetre);
  // DIN 1450 asks for letters of 10 minutes of arc (from memory): 5.8 mm at two metres.
  auto* title = seen<QLabel>(QStringLiteral("stepTitle"));
  EXPECT_GE(title->fontMetrics().tightBoundingRect(QStringLiteral("E")).height(), 5.8 * millimetre);
  applyTheme({});
}

}  // namespace
}  // namespace sw::ui
