// SPDX-License-Identifier: GPL-3.0-or-later
// The complaint as structured answers, the causes looked at, and the start of the plan.
#include "ui/pages.h"

#include <QAbstractButton>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

#include "window_fixture.h"

namespace sw::ui {
namespace {

class ComplaintTest : public WindowTest {
 protected:
  void openJob() {
    openEmptyBook();
    ASSERT_TRUE(session->perform(workshop::SetPerson{"IB", "Ina Brook", {}, {}}));
    session->setPerson("IB");
    ASSERT_TRUE(session->perform(workshop::OpenJob{"HBX 204", {}, {}}));
    openPage();
  }
  void openPage(std::int64_t job = 1) {
    window->go({PageId::Complaint, model::JobId{job}, {}, {}, {}});
    settle();
  }
  std::shared_ptr<const workshop::JobState> job() {
    const auto state = session->job({1});
    EXPECT_TRUE(state);
    return state ? *state : nullptr;
  }
  std::int64_t nextEntry() { return session->workshop().book().nextEntryId()->value; }
  bool isChosen(const char* button) { return find<QAbstractButton>(button)->isChecked(); }
  QString text(const char* field) { return find<QLineEdit>(field)->text(); }
};

TEST_F(ComplaintTest, AllThatIsKnownIsOneEntry) {
  openJob();
  type("complaintWords", QStringLiteral("shakes hard after a pothole"));
  press("braking_starts_and_stays");
  press("speedBand_yes");
  press("afterBump_unknown");
  press("whereFelt_both");
  type("onsetRising", QStringLiteral("45 mph"));
  type("releaseFalling", QStringLiteral("38 mph"));
  press("speedSource_gps");
  type("recentWork", QStringLiteral("two new tyres"));
  type("conditions", QStringLiteral("empty, dry road"));
  const auto before = nextEntry();
  press("saveComplaint");
  EXPECT_EQ(nextEntry(), before + 1) << window->message().toStdString();
  const auto complaint = job()->complaint;
  ASSERT_TRUE(complaint);
  EXPECT_EQ(complaint->words, "shakes hard after a pothole");
  EXPECT_EQ(complaint->braking, model::BrakingAnswer::StartsAndStays);
  EXPECT_EQ(complaint->speedBand, model::YesNo::Yes);
  EXPECT_EQ(complaint->afterBump, model::YesNo::Unknown);
  EXPECT_EQ(complaint->whereFelt, "both");
  EXPECT_EQ(complaint->onsetRising->text(), "45 mph");
  EXPECT_FALSE(complaint->onsetFalling);
  EXPECT_EQ(complaint->releaseFalling->text(), "38 mph");
  EXPECT_EQ(complaint->speedSource, model::SpeedSource::Gps);
  EXPECT_EQ(complaint->recentWork, "two new tyres");
  EXPECT_EQ(complaint->conditions, "empty, dry road");
  press("saveComplaint");
  EXPECT_EQ(nextEntry(), before + 1);  // nothing new, nothing written
}

TEST_F(ComplaintTest, ASpeedNeedsItsSourceAndNothingIsLost) {
  openJob();
  type("complaintWords", QStringLiteral("shakes"));
  type("onsetRising", QStringLiteral("seventy"));
  press("saveComplaint");
  EXPECT_TRUE(find<QLineEdit>("onsetRising")->hasFocus());
  EXPECT_FALSE(window->message().isEmpty());
  EXPECT_EQ(text("complaintWords"), QStringLiteral("shakes"));
  EXPECT_FALSE(job()->complaint);
  // The wrong speed is selected: typing replaces it.
  type("onsetRising", QStringLiteral("70 km/h"));
  press("saveComplaint");
  EXPECT_TRUE(find<QLabel>("complaintProblem")->text().contains(QStringLiteral("how the speeds")));
  EXPECT_TRUE(find<QAbstractButton>("speedSource_dial")->hasFocus());
  QTest::keyClick(find<QAbstractButton>("speedSource_dial"), Qt::Key_Space);
  press("saveComplaint");
  ASSERT_TRUE(job()->complaint);
  EXPECT_EQ(job()->complaint->onsetRising->text(), "70 km/h");
}

TEST_F(ComplaintTest, WhatIsOnRecordIsShownAndOneAnswerChangesAlone) {
  makeDemoBook();
  openWindow();
  const auto jobs = session->workshop().book().jobs();
  ASSERT_TRUE(jobs);
  model::JobId open;
  for (const auto& one : *jobs) {
    const auto state = session->job(one.job);
    if (!one.closedAt && state && (*state)->complaint && (*state)->complaint->onsetRising) {
      open = one.job;
    }
  }
  ASSERT_TRUE(open.valid());
  const model::Complaint before = *(*session->job(open))->complaint;
  openPage(open.value);
  EXPECT_EQ(text("complaintWords").toStdString(), before.words);
  EXPECT_EQ(text("onsetRising").toStdString(), before.onsetRising->text());
  const std::string braking = "braking_" + std::string(wordOf(before.braking));
  EXPECT_TRUE(isChosen(braking.c_str()));
  session->setPerson("MT");
  press("braking_also");
  press("saveComplaint");
  const model::Complaint after = *(*session->job(open))->complaint;
  EXPECT_EQ(after.braking, model::BrakingAnswer::Also);
  EXPECT_EQ(after.words, before.words);
  EXPECT_EQ(after.onsetRising, before.onsetRising);
  EXPECT_EQ(after.afterBump, before.afterBump);
}

TEST_F(ComplaintTest, BeginsAtTheTopAndScrollsToWhatIsRefused) {
  applyTheme({Look::Light, Mode::Workshop});
  openJob();
  const auto isSeen = [this](const char* name) {
    const auto* field = find<QWidget>(name);
    return !field->visibleRegion().isEmpty();
  };
  EXPECT_TRUE(find<QWidget>("complaintWords")->hasFocus());
  EXPECT_TRUE(isSeen("complaintWords"));
  EXPECT_FALSE(isSeen("onsetFalling"));
  find<QLineEdit>("onsetFalling")->setText(QStringLiteral("fast"));
  press("saveComplaint");
  settle();
  EXPECT_TRUE(isSeen("onsetFalling"));
  applyTheme({});
}

TEST_F(ComplaintTest, WhereItIsFeltInOwnWords) {
  openJob();
  type("feltWords", QStringLiteral("gear lever"));
  EXPECT_FALSE(isChosen("whereFelt_both"));
  press("whereFelt_both");
  EXPECT_EQ(text("feltWords"), QStringLiteral("both"));
  press("whereFelt_unknown");
  EXPECT_TRUE(text("feltWords").isEmpty());
  type("feltWords", QStringLiteral("gear lever"));
  press("saveComplaint");
  EXPECT_EQ(job()->complaint->whereFelt, "gear lever");
}

TEST_F(ComplaintTest, TypedAndNotSavedIsThereAgain) {
  openJob();
  type("complaintWords", QStringLiteral("shakes at fifty"));
  press("braking_only");
  press("whereFelt_both");
  press("goStart");
  openWindow();  // the program was ended and started again
  openPage();
  EXPECT_EQ(text("complaintWords"), QStringLiteral("shakes at fifty"));
  EXPECT_TRUE(isChosen("braking_only"));
  EXPECT_TRUE(isChosen("whereFelt_both"));
  EXPECT_FALSE(job()->complaint);
  press("saveComplaint");
  openPage();
  EXPECT_TRUE(job()->complaint);
  EXPECT_FALSE(find<QLabel>("complaintProblem")->isVisible());
}

TEST_F(ComplaintTest, ACauseIsRuledOutOrFoundNeverByItself) {
  openJob();
  type("cause", QStringLiteral("wheel balance"));
  type("causeHow", QStringLiteral("wheels swapped, no change"));
  const auto before = nextEntry();
  press("addCause");
  EXPECT_EQ(nextEntry(), before);
  EXPECT_TRUE(find<QLabel>("causeProblem")->text().contains(QStringLiteral("ruled out or found")));
  press("causeResult_ruled_out");
  press("addCause");
  EXPECT_EQ(nextEntry(), before + 1) << window->message().toStdString();
  const QString line = find<QLabel>("causeLine")->text();
  EXPECT_EQ(line, QStringLiteral(
                      "Wheel balance: ruled out – wheels swapped, no change (IB, 2031-03-03)"));
  EXPECT_TRUE(text("cause").isEmpty());
  EXPECT_FALSE(isChosen("causeResult_ruled_out"));
  type("cause", QStringLiteral("track rod end"));
  press("causeResult_found");
  QTest::keyClick(find<QLineEdit>("cause"), Qt::Key_Return);
  EXPECT_EQ(window->findChildren<QLabel*>(QStringLiteral("causeLine")).size(), 2);
}

TEST_F(ComplaintTest, ThePlanIsStartedOnceWithWhatWasTyped) {
  openJob();
  EXPECT_EQ(find<QComboBox>("whichPlan")->currentData().toString(),
            QStringLiteral("swivel-preload"));
  EXPECT_FALSE(find<QWidget>("goOnWorking")->isVisible());
  type("complaintWords", QStringLiteral("shakes"));
  type("onsetRising", QStringLiteral("fast"));
  press("startPlan");
  EXPECT_TRUE(job()->runs.empty());
  EXPECT_TRUE(find<QLineEdit>("onsetRising")->hasFocus());
  find<QLineEdit>("onsetRising")->clear();
  press("startPlan");
  ASSERT_TRUE(job()->complaint) << window->message().toStdString();
  EXPECT_EQ(job()->complaint->words, "shakes");
  EXPECT_EQ(job()->runs.size(), session->library().plan("swivel-preload")->procedures.size());
  EXPECT_EQ(window->here().page, PageId::Kit);
  openPage();
  EXPECT_FALSE(find<QWidget>("startPlan")->isVisible());
  EXPECT_TRUE(find<QWidget>("goOnWorking")->isVisible());
}

}  // namespace
}  // namespace sw::ui
