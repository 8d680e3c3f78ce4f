// SPDX-License-Identifier: GPL-3.0-or-later
// A job in under a minute: an empty book, one plate, four answers.
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

#include "ui/start/job_card.h"
#include "window_fixture.h"

namespace sw::ui {
namespace {

class NewJob : public WindowTest {
 protected:
  void answerFour() {
    press("braking_no");
    press("speedBand_yes");
    press("afterBump_yes");
    press("whereFelt_both");
  }
  workshop::JobState job(std::int64_t number) {
    auto state = session->workshop().job({number});
    EXPECT_TRUE(state);
    return state ? *state : workshop::JobState{};
  }
};

TEST_F(NewJob, FromAnEmptyBook) {
  openEmptyBook();
  EXPECT_TRUE(find<QLabel>("messageText")->text().isEmpty());
  press("newJob");
  type("plate", QStringLiteral("HBX 204"));
  EXPECT_EQ(find<QLabel>("plateKnown")->text(), QStringLiteral("New vehicle."));
  type("yourName", QStringLiteral("Ina Brook"));
  type("ownersWords", QStringLiteral("shakes at fifty"));
  answerFour();
  press("openJob");
  const auto state = job(1);
  EXPECT_EQ(state.vehicle.fact.registration, "HBX 204");
  ASSERT_TRUE(state.complaint);
  EXPECT_EQ(state.complaint->words, "shakes at fifty");
  EXPECT_EQ(state.complaint->braking, model::BrakingAnswer::No);
  EXPECT_EQ(state.complaint->speedBand, model::YesNo::Yes);
  EXPECT_EQ(state.complaint->afterBump, model::YesNo::Yes);
  EXPECT_EQ(state.complaint->whereFelt, "both");
  EXPECT_EQ(session->person(), "IB");
  // Back on the start page, where the job stands to go on with.
  ASSERT_NE(window->findChild<JobCard*>(QStringLiteral("job_1")), nullptr);
  EXPECT_TRUE(find<QLabel>("savedAt")->text().contains(QStringLiteral("08:00:00")));
}

TEST_F(NewJob, WhatIsMissingIsNamedAndNothingIsLost) {
  openEmptyBook();
  press("newJob");
  type("ownersWords", QStringLiteral("shakes"));
  press("openJob");
  EXPECT_TRUE(find<QLabel>("problem")->text().startsWith(QStringLiteral("Registration")));
  EXPECT_TRUE(find<QLineEdit>("plate")->hasFocus());
  type("plate", QStringLiteral("HBX 204"));
  press("openJob");
  EXPECT_TRUE(find<QLabel>("problem")->text().startsWith(QStringLiteral("Your name")));
  EXPECT_EQ(find<QLineEdit>("ownersWords")->text(), QStringLiteral("shakes"));
  EXPECT_EQ(session->workshop().book().jobs()->size(), 0U);
}

TEST_F(NewJob, GoingBackKeepsWhatWasTypedUntilTheJobIsOpen) {
  openEmptyBook();
  press("newJob");
  type("plate", QStringLiteral("HBX 204"));
  type("yourName", QStringLiteral("Ina Brook"));
  press("braking_only");
  press("cancelJob");
  press("newJob");
  EXPECT_EQ(find<QLineEdit>("plate")->text(), QStringLiteral("HBX 204"));
  EXPECT_TRUE(find<QPushButton>("braking_only")->isChecked());
  press("openJob");
  press("newJob");
  EXPECT_TRUE(find<QLineEdit>("plate")->text().isEmpty());
  EXPECT_FALSE(find<QPushButton>("braking_only")->isChecked());
}

TEST_F(NewJob, ARefusalIsSaidAbovePageAndNothingIsWritten) {
  openEmptyBook();
  press("newJob");
  type("plate", QStringLiteral("HBX 204"));
  type("yourName", QStringLiteral("Ina Brook"));
  type("odometer", QStringLiteral("twelve"));
  press("openJob");
  EXPECT_TRUE(window->message().contains(QStringLiteral("odometer"), Qt::CaseInsensitive))
      << window->message().toStdString();
  EXPECT_EQ(session->workshop().book().jobs()->size(), 0U);
  EXPECT_EQ(find<QLineEdit>("odometer")->text(), QStringLiteral("twelve"));
  EXPECT_TRUE(find<QLineEdit>("odometer")->hasFocus());
}

TEST_F(NewJob, AnswersLeftOpenStayUnknown) {
  openEmptyBook();
  press("newJob");
  type("plate", QStringLiteral("HBX 204"));
  type("yourName", QStringLiteral("Ina Brook"));
  press("braking_unknown");
  press("openJob");
  const auto state = job(1);
  ASSERT_TRUE(state.complaint);
  EXPECT_EQ(state.complaint->braking, model::BrakingAnswer::Unknown);
  EXPECT_NE(state.complaint->afterBump, model::YesNo::No);
}

TEST_F(NewJob, KeyboardAloneOpensAJob) {
  openEmptyBook();
  window->activateWindow();
  find<QPushButton>("newJob")->setFocus();
  QTest::keyClick(QApplication::focusWidget(), Qt::Key_Space);
  const auto typeHere = [](const QString& text) {
    QTest::keyClicks(QApplication::focusWidget(), text);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
  };
  ASSERT_EQ(QApplication::focusWidget()->objectName(), QStringLiteral("plate"));
  typeHere(QStringLiteral("HBX 204"));
  ASSERT_EQ(QApplication::focusWidget()->objectName(), QStringLiteral("yourName"));
  typeHere(QStringLiteral("Ina Brook"));
  typeHere(QStringLiteral("84210"));
  typeHere(QStringLiteral("shakes"));
  ASSERT_EQ(QApplication::focusWidget()->objectName(), QStringLiteral("braking_no"));
  for (int tabs = 0; tabs < 60; ++tabs) {
    QWidget* at = QApplication::focusWidget();
    if (at->objectName() == QStringLiteral("openJob")) break;
    QTest::keyClick(at, Qt::Key_Tab);
  }
  ASSERT_EQ(QApplication::focusWidget()->objectName(), QStringLiteral("openJob"));
  QTest::keyClick(QApplication::focusWidget(), Qt::Key_Space);
  EXPECT_EQ(session->workshop().book().jobs()->size(), 1U);
}

}  // namespace
}  // namespace sw::ui
