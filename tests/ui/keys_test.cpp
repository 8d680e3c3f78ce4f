// SPDX-License-Identifier: GPL-3.0-or-later
// The keys of somebody with one clean finger: Enter, the space bar, and where the keyboard stands
// after them.
#include <QAbstractItemView>
#include <QScrollArea>
#include <QWheelEvent>

#include <nlohmann/json.hpp>
#include "hands.h"
#include "model/json.h"
#include "phrasing/names.h"
#include "workshop/command_json.h"

namespace sw::ui {
namespace {

class Keys : public Hands {
 protected:
  void key(Qt::Key key) {
    QWidget* to = window->focusWidget();
    ASSERT_NE(to, nullptr);
    QTest::keyClick(to, key);
    settle();
  }
  void text(const QString& text) {
    ASSERT_NE(window->focusWidget(), nullptr);
    QTest::keyClicks(window->focusWidget(), text);
  }
  [[nodiscard]] QString focus() const {
    const QWidget* widget = window->focusWidget();
    return widget == nullptr ? QString() : widget->objectName();
  }
  /// A job with the whole plan, by keys alone, in a book that knows nothing.
  void startByKeys() {
    openEmptyBook();
    window->activateWindow();
    key(Qt::Key_Return);  // New job
    text(QStringLiteral("HBX 204"));
    key(Qt::Key_Return);
    EXPECT_EQ(focus(), QStringLiteral("yourName"));
    text(QStringLiteral("Ina Brook"));
    key(Qt::Key_Return);
    EXPECT_EQ(focus(), QStringLiteral("ownersWords"));
    text(QStringLiteral("shakes at fifty"));
    key(Qt::Key_Return);
    EXPECT_EQ(focus(), QStringLiteral("braking_no"));
    find<QPushButton>("openJob")->setFocus();
    key(Qt::Key_Return);
    key(Qt::Key_Return);  // Go on
    key(Qt::Key_Tab);
    EXPECT_EQ(focus(), QStringLiteral("startPlan"));
    key(Qt::Key_Return);
    ASSERT_FALSE(state()->steps.empty());
  }
  void putOnFile(const char* kind, const char* name, const char* graduation) {
    workshop::SetInstrument instrument;
    instrument.type = fromWord<model::InstrumentKind>(kind);
    instrument.name = name;
    instrument.graduation = graduation;
    ASSERT_TRUE(session->perform(instrument)) << window->message().toStdString();
  }
};

TEST_F(Keys, EnterStartsAJobFromAnEmptyBook) {
  startByKeys();
  EXPECT_EQ(hereName(), "free-checks/recent_work");
}

TEST_F(Keys, EnterAnswersNoQuestionAndTheSpaceBarDoes) {
  startByKeys();
  const std::size_t before = state()->entries.size();
  EXPECT_EQ(focus(), QStringLiteral("observe_recent_work_nothing"));
  key(Qt::Key_Return);
  EXPECT_EQ(state()->entries.size(), before);
  key(Qt::Key_Space);
  EXPECT_GT(state()->entries.size(), before);
  EXPECT_EQ(hereName(), "free-checks/pressures (left)");
}

TEST_F(Keys, AMissingInstrumentIsPutOnFileFromTheStep) {
  startByKeys();
  goTo("free-checks/pressures", model::Side::Left);
  EXPECT_EQ(focus(), QStringLiteral("readings"));
  EXPECT_TRUE(seen<QLineEdit>("readings")->placeholderText().contains(QStringLiteral("bar")));
  text(QStringLiteral("2.1 bar"));
  EXPECT_TRUE(seen<QLabel>("measureProblem")->text().contains(QStringLiteral("pressure gauge")));
  key(Qt::Key_Return);
  EXPECT_EQ(focus(), QStringLiteral("addInstrument"));
  key(Qt::Key_Return);
  EXPECT_EQ(window->here().page, PageId::Instruments);
  EXPECT_EQ(find<QComboBox>("instrumentKind")->currentData().toString(),
            QStringLiteral("pressure_gauge"));
  EXPECT_EQ(focus(), QStringLiteral("instrumentName"));
  putOnFile("pressure_gauge", "Tyre gauge", "0.1 bar");
  window->go({PageId::Work, number, {}, {}, {}});
  EXPECT_EQ(seen<QLineEdit>("readings")->text(), QStringLiteral("2.1 bar"));
}

TEST_F(Keys, TheLastReadingLeadsToTheWayOnAndItsEnterDoesNotTakeIt) {
  startByKeys();
  putOnFile("pressure_gauge", "Tyre gauge", "0.1 bar");
  goTo("free-checks/pressures", model::Side::Left);
  text(QStringLiteral("2.1 bar"));
  key(Qt::Key_Return);
  EXPECT_EQ(hereName(), "free-checks/pressures (left)");
  EXPECT_EQ(focus(), QStringLiteral("goOn"));
  // In sight at any height: it does not scroll with the panel.
  auto* goOn = seen<QPushButton>("goOn");
  EXPECT_FALSE(work().findChild<QScrollArea*>("stepPanel")->isAncestorOf(goOn));
  EXPECT_FALSE(
      seen<QLabel>("verdictAdvice") != nullptr &&
      seen<QLabel>("verdictAdvice")->text().contains(QStringLiteral("would probably decide")));
  key(Qt::Key_Return);
  EXPECT_EQ(hereName(), "free-checks/pressures (right)");
}

TEST_F(Keys, ARefusalIsGoneOnceSomethingIsRecorded) {
  startByKeys();
  putOnFile("pressure_gauge", "Tyre gauge", "0.1 bar");
  goTo("free-checks/pressures", model::Side::Left);
  enter("readings", QStringLiteral("2.1 elephants"));
  EXPECT_FALSE(window->message().isEmpty());
  EXPECT_EQ(seen<QLineEdit>("readings")->text(), QStringLiteral("2.1 elephants"));
  enter("readings", QStringLiteral("2.1 bar"));
  EXPECT_TRUE(window->message().isEmpty()) << window->message().toStdString();
}

TEST_F(Keys, WhatWasSaidOfAnEntryGoesWithTheNext) {
  startByKeys();
  EXPECT_TRUE(window->message().contains(QStringLiteral("swivel preload")));
  key(Qt::Key_Space);
  EXPECT_TRUE(window->message().isEmpty()) << window->message().toStdString();
}

TEST_F(Keys, AHoldThatLacksTheAxleLoadLeadsToItsField) {
  startByKeys();
  workOn([&](const workshop::StepView& view) { return view.step->measure.has_value(); });
  putOnFile("pressure_gauge", "Tyre gauge", "0.1 bar");
  workOn([&](const workshop::StepView& view) { return view.step->hold.has_value(); });
  goTo("make-safe-and-lift/support", {});
  ASSERT_NE(seen<QLineEdit>("holdAnswer"), nullptr);
  const auto* offer = find<QPushButton>("messageOffer");
  EXPECT_FALSE(offer->isVisible());
  enter("holdAnswer", QStringLiteral("1500 kg"));
  ASSERT_TRUE(offer->isVisible()) << window->message().toStdString();
  press("messageOffer");
  EXPECT_EQ(window->here().page, PageId::Vehicle);
  EXPECT_EQ(focus(), QStringLiteral("frontAxleLoad"));
  text(QStringLiteral("1900 kg"));
  key(Qt::Key_Return);
  EXPECT_FALSE(offer->isVisible());
  window->go({PageId::Work, number, {}, {}, {}});
  EXPECT_EQ(seen<QLineEdit>("holdAnswer")->text(), QStringLiteral("1500 kg"));
}

TEST_F(Keys, WhatMayBeLeftOutSaysSo) {
  startByKeys();
  workOn([&](const workshop::StepView& view) { return view.step->measure.has_value(); });
  putOnFile("pressure_gauge", "Tyre gauge", "0.1 bar");
  workOn([&](const workshop::StepView& view) { return view.step->hold.has_value(); });
  goTo("road-test-before/walk_round", {});
  EXPECT_TRUE(seen<QLabel>("stepPlace")->text().contains(QStringLiteral("if you like")));
}

/// The demonstration shop has three people and three open jobs.
class KeysInAShop : public Keys {
 protected:
  void SetUp() override {
    makeDemoBook();
    openWindow();
    number = model::JobId{12};
    window->go({PageId::Work, number, {}, {}, {}});
    settle();
  }
};

TEST_F(KeysInAShop, WhoIsAtWorkIsAskedWhereTheEntryWaits) {
  ASSERT_TRUE(session->person().empty());
  const auto asked = focus();
  ASSERT_TRUE(asked.startsWith(QStringLiteral("observe_"))) << asked.toStdString();
  const std::size_t before = state()->entries.size();
  key(Qt::Key_Space);
  EXPECT_EQ(state()->entries.size(), before);
  // What was not taken does not look chosen.
  EXPECT_FALSE(seen<QPushButton>(asked)->isChecked());
  EXPECT_EQ(focus(), QStringLiteral("people"));
  EXPECT_TRUE(window->message().contains(QStringLiteral("who is at work")));
  key(Qt::Key_Down);
  EXPECT_FALSE(session->person().empty());
  EXPECT_TRUE(window->message().isEmpty());
  EXPECT_EQ(focus(), asked);
  key(Qt::Key_Space);
  EXPECT_GT(state()->entries.size(), before);
}

TEST_F(KeysInAShop, OnAnotherDayTheKeyboardStandsAtTheHoldAskedAgain) {
  number = model::JobId{11};
  window->go({PageId::Work, number, {}, {}, {}});
  settle();
  EXPECT_EQ(hereName(), "make-safe-and-lift/support");
  EXPECT_EQ(focus(), QStringLiteral("holdAnswer"));
  for (const Qt::Key one : {Qt::Key_Return, Qt::Key_Space, Qt::Key_Return, Qt::Key_Escape}) {
    key(one);
  }
  EXPECT_FALSE(state()->holdAt(here())->passed());
}

TEST_F(KeysInAShop, AReasonIsAskedInSightAndLeavesTheKeyboardAtTheStep) {
  session->setPerson((*session->shop())->people().front()->fact.initials);
  number = model::JobId{12};
  goTo("make-safe-and-lift/support", {});
  window->resize(1024, 600);
  ASSERT_TRUE(pressSeen("againstOrder"));
  QTest::qWait(20);
  auto* words = seen<QLineEdit>("stepReasonWords");
  ASSERT_NE(words, nullptr);
  EXPECT_TRUE(words->hasFocus());
  EXPECT_EQ(words->visibleRegion().boundingRect(), words->rect());
  enter("stepReasonWords", QStringLiteral("came in apart"));
  EXPECT_EQ(focus(), QStringLiteral("support_stands")) << focus().toStdString();
}

/// The demonstration job up to its first pulls.
class KeysAtThePull : public Keys {
 protected:
  void SetUp() override {
    makeDemoBook();
    openWindow();
    QFile script(QString::fromStdString(kResources + "/demo/job.jsonl"));
    ASSERT_TRUE(script.open(QIODevice::ReadOnly));
    clock.set(*parseTimestamp("2026-11-21T12:36+01:00"));
    session->setPerson("MT");
    number = model::JobId{13};
    for (int line = 0; line < 75; ++line) {
      const auto json = model::parseJson(script.readLine().toStdString());
      ASSERT_TRUE(json);
      const auto command = workshop::commandFromJson(*json);
      ASSERT_TRUE(command);
      std::optional<model::JobId> job;
      if (line > 0) job = number;
      const Where where{job, command->step.value_or(""), command->side, command->round,
                        command->doneAt};
      ASSERT_TRUE(session->perform(command->action, where))
          << line << window->message().toStdString();
    }
    window->go({PageId::Work, number, {}, {}, {}});
    settle();
    ASSERT_EQ(hereName(), "as-found-pull/pull_ahead (left)");
  }
  void TearDown() override { applyTheme({}); }
};

TEST_F(KeysAtThePull, GlovesCutNoWordAndKeepTheHalfTypedLineInSight) {
  auto* readings = seen<QLineEdit>("readings");
  readings->setFocus();
  text(QStringLiteral("20.8 20,4 20.4 20"));
  QTest::keyClick(window->focusWidget(), Qt::Key_F8);
  QTest::qWait(30);
  ASSERT_EQ(currentTheme().mode, Mode::Workshop);
  EXPECT_EQ(readings->text(), QStringLiteral("20.8 20,4 20.4 20"));
  EXPECT_TRUE(readings->hasFocus());
  const auto* panel = work().findChild<QScrollArea*>("stepPanel");
  EXPECT_LE(panel->widget()->minimumSizeHint().width(), panel->viewport()->width());
  for (const auto* widget : panel->widget()->findChildren<QWidget*>()) {
    if (widget->isVisible() && widget->minimumSizeHint().width() > 500) {
      ADD_FAILURE() << widget->metaObject()->className() << " "
                    << widget->objectName().toStdString() << " "
                    << widget->minimumSizeHint().width();
    }
  }
  EXPECT_EQ(readings->visibleRegion().boundingRect(), readings->rect());
}

TEST_F(KeysAtThePull, AHalfTypedLineKeepsItsInstrument) {
  auto* box = seen<QComboBox>("measureInstrument");
  box->setFocus();
  text(QStringLiteral("fish"));
  ASSERT_EQ(box->currentData().toString(), QStringLiteral("Fish scale"));
  // What it proves is said before the pull.
  EXPECT_FALSE(seen<QLabel>("instrumentWorth")->text().isEmpty());
  seen<QLineEdit>("readings")->setFocus();
  text(QStringLiteral("1.9 1.9"));
  QTest::qWait(600);
  openWindow();
  window->go({PageId::Work, number, {}, {}, {}});
  settle();
  EXPECT_EQ(seen<QLineEdit>("readings")->text(), QStringLiteral("1.9 1.9"));
  EXPECT_EQ(seen<QComboBox>("measureInstrument")->currentData().toString(),
            QStringLiteral("Fish scale"));
}

TEST_F(KeysAtThePull, TheWheelChangesNoChoice) {
  for (auto* box : window->findChildren<QComboBox*>()) {
    if (!box->isVisible() || box->count() < 2) continue;
    const int before = box->currentIndex();
    QWheelEvent down(box->rect().center(), box->mapToGlobal(box->rect().center()), {}, {0, -120},
                     Qt::NoButton, Qt::NoModifier, Qt::NoScrollPhase, false);
    QApplication::sendEvent(box, &down);
    EXPECT_EQ(box->currentIndex(), before) << box->objectName().toStdString();
  }
}

TEST_F(KeysAtThePull, TheRowPressedIsTheStepShown) {
  auto* list = work().findChild<QAbstractItemView*>("stepList");
  // Rows near the edge would scroll to the middle under the finger.
  const QModelIndex row = list->indexAt({40, list->viewport()->height() - 30});
  ASSERT_TRUE(row.isValid());
  QTest::mouseClick(list->viewport(), Qt::LeftButton, {}, list->visualRect(row).center());
  settle();
  ASSERT_EQ(list->selectionModel()->selectedIndexes().size(), 1);
  EXPECT_EQ(list->selectionModel()->selectedIndexes().front(), row);
  EXPECT_EQ(list->currentIndex(), row);
  const workshop::StepView& shown = state()->steps[here()];
  const QString side = shown.side ? phrasing::sideName(*shown.side, {}) : QString();
  EXPECT_TRUE(row.data().toString().startsWith(QString::fromStdString(shown.step->title)));
  EXPECT_TRUE(row.data().toString().contains(side));
  EXPECT_TRUE(seen<QLabel>("stepTitle")->text().startsWith(side, Qt::CaseInsensitive));
}

TEST_F(KeysAtThePull, UndoByKeyTakesBackTheSeriesNotTheTyping) {
  enter("readings", QStringLiteral("20.8 20.4 20.4 20.6"));
  const auto taken = state()->newestSeries(here());
  ASSERT_NE(taken, nullptr);
  auto* readings = seen<QLineEdit>("readings");
  readings->setFocus();
  QTest::keyClick(readings, Qt::Key_Z, Qt::ControlModifier);
  settle();
  EXPECT_TRUE(readings->text().isEmpty());
  const auto* series = state()->newestSeries(here());
  EXPECT_TRUE(series == nullptr || series->usedCount() == 0);
}

TEST_F(KeysInAShop, EveryReasonAgainstSignOffLeadsSomewhereAndSaysItOnce) {
  session->setPerson((*session->shop())->people().front()->fact.initials);
  window->go({PageId::Finish, number, {}, {}, {}});
  settle();
  int ways = 0;
  for (auto* way : window->page(PageId::Finish).findChildren<QPushButton*>()) {
    if (!way->objectName().startsWith(QStringLiteral("reason_")) || !way->isVisible()) continue;
    ++ways;
    EXPECT_TRUE(way->isEnabled()) << way->text().toStdString();
    const QString name = way->text().section(QStringLiteral("Left: "), -1);
    EXPECT_FALSE(way->text().contains(QStringLiteral("“%1”").arg(name)))
        << way->text().toStdString();
  }
  EXPECT_GT(ways, 3);
  press("reason_0");
  EXPECT_EQ(window->here().page, PageId::Work);
}

TEST_F(KeysInAShop, ANoteHalfWrittenIsThereAgain) {
  ASSERT_TRUE(pressSeen("stepNote"));
  const auto step = hereName();
  text(QStringLiteral("split boot, ask owner"));
  goTo("free-checks/look_along", {});
  openWindow();
  window->go({PageId::Work, number, {}, {}, {}});
  settle();
  goTo(step.substr(0, step.find(' ')), model::Side::Left);
  ASSERT_EQ(hereName(), step);
  ASSERT_TRUE(pressSeen("stepNote"));
  EXPECT_EQ(seen<QLineEdit>("stepReasonWords")->text(), QStringLiteral("split boot, ask owner"));
  // Escape leaves it for good, and the keyboard is back at what the step asks.
  key(Qt::Key_Escape);
  EXPECT_EQ(seen<QLineEdit>("stepReasonWords"), nullptr);
  EXPECT_TRUE(focus().startsWith(QStringLiteral("observe_"))) << focus().toStdString();
  ASSERT_TRUE(pressSeen("stepNote"));
  EXPECT_TRUE(seen<QLineEdit>("stepReasonWords")->text().isEmpty());
}

}  // namespace
}  // namespace sw::ui
