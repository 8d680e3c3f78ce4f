// SPDX-License-Identifier: GPL-3.0-or-later
// The instruments of the shop: one put on file, changed and checked, by hand and by key.
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTableWidget>

#include "window_fixture.h"

namespace sw::ui {
namespace {

class Instruments : public WindowTest {
 protected:
  void openPage(const Goal& goal = {PageId::Instruments, {}, {}, {}, {}}) {
    window->go(goal);
    settle();
  }
  void chooseKind(const char* word) {
    auto* box = find<QComboBox>("instrumentKind");
    box->setFocus();
    const int index = box->findData(QString::fromLatin1(word));
    ASSERT_GE(index, 0);
    for (int step = 0; box->currentIndex() != index && step < box->count(); ++step) {
      QTest::keyClick(box, Qt::Key_Down);
    }
    ASSERT_EQ(box->currentIndex(), index);
  }
  void choose(const QString& name) {
    auto* table = find<QTableWidget>("instrumentTable");
    for (int row = 0; row < table->rowCount(); ++row) {
      if (!table->item(row, 0)->text().startsWith(name)) continue;
      const QPoint at = table->visualItemRect(table->item(row, 0)).center();
      QTest::mouseClick(table->viewport(), Qt::LeftButton, {}, at);
      settle();
      return;
    }
    FAIL() << name.toStdString();
  }
  QString text(const char* field) { return find<QLineEdit>(field)->text(); }
  QString worth() {
    auto* label = find<QLabel>("instrumentWorth");
    return label->isVisible() ? label->text() : QString();
  }
  const workshop::Revision<model::Instrument>* onFile(const char* name) {
    const auto shop = session->shop();
    return shop ? (*shop)->instrumentByName(name) : nullptr;
  }
};

TEST_F(Instruments, AFishScaleOnAnEmptyBook) {
  openEmptyBook();
  press("goInstruments");
  EXPECT_FALSE(find<QWidget>("instrumentTable")->isVisible());
  EXPECT_TRUE(find<QComboBox>("instrumentKind")->hasFocus());
  chooseKind("spring_scale");
  type("instrumentName", QStringLiteral("Fish scale"));
  type("graduation", QStringLiteral("50 g"));
  press("saveInstrument");
  const auto* scale = onFile("Fish scale");
  ASSERT_NE(scale, nullptr) << window->message().toStdString();
  EXPECT_EQ(scale->fact.type, model::InstrumentKind::SpringScale);
  EXPECT_FALSE(scale->fact.permissibleError);
  EXPECT_EQ(find<QTableWidget>("instrumentTable")->rowCount(), 1);
  // Said plainly: nothing safety rests on is proved with it, and what mends that.
  EXPECT_TRUE(worth().contains(QStringLiteral("proves nothing"))) << worth().toStdString();
  EXPECT_TRUE(worth().contains(QStringLiteral("flour")));
  type("checkAgainst", QStringLiteral("two bags of flour"));
  type("checkApplied", QStringLiteral("2.00 kg"));
  type("checkShown", QStringLiteral("1.95 kg"));
  press("recordCheck");
  const auto* check = (*session->shop())->check(scale->fact.instrument);
  ASSERT_NE(check, nullptr) << window->message().toStdString();
  EXPECT_EQ(check->fact.shown.number, "1.95");
  EXPECT_FALSE(worth().contains(QStringLiteral("proves nothing")));
  EXPECT_TRUE(worth().contains(QStringLiteral("is added"))) << worth().toStdString();
  EXPECT_TRUE(text("checkShown").isEmpty());
}

TEST_F(Instruments, WhatIsRefusedStaysAndGetsTheCursor) {
  openEmptyBook();
  openPage();
  chooseKind("torque_wrench");
  type("graduation", QStringLiteral("1 mm"));
  press("saveInstrument");
  EXPECT_TRUE(find<QLabel>("instrumentProblem")->text().startsWith(QStringLiteral("Name")));
  EXPECT_TRUE(find<QLineEdit>("instrumentName")->hasFocus());
  type("instrumentName", QStringLiteral("Long wrench"));
  press("saveInstrument");
  EXPECT_FALSE(window->message().isEmpty());
  EXPECT_TRUE(find<QLineEdit>("graduation")->hasFocus());
  EXPECT_EQ(text("graduation"), QStringLiteral("1 mm"));
  EXPECT_EQ(text("instrumentName"), QStringLiteral("Long wrench"));
  EXPECT_EQ(onFile("Long wrench"), nullptr);
  // The wrong figure is selected: typing replaces it, Return saves.
  type("graduation", QStringLiteral("1 N m"));
  QTest::keyClick(find<QLineEdit>("graduation"), Qt::Key_Return);
  ASSERT_NE(onFile("Long wrench"), nullptr) << window->message().toStdString();
  EXPECT_EQ(onFile("Long wrench")->fact.graduation.text(), "1 N m");
}

TEST_F(Instruments, AChangeLeavesTheRestAsItWas) {
  makeDemoBook();
  openWindow();
  openPage();
  const model::Instrument before = onFile("Wrench large")->fact;
  choose(QStringLiteral("Wrench large"));
  EXPECT_EQ(text("permissibleError"), QStringLiteral("4 %"));
  EXPECT_FALSE(find<QLineEdit>("instrumentName")->isVisible());
  find<QLineEdit>("calibrationDue")->clear();
  type("calibrationDue", QStringLiteral("2032-02-16"));
  press("saveInstrument");
  model::Instrument after = onFile("Wrench large")->fact;
  EXPECT_EQ(toIso(*after.calibrationDue), "2032-02-16");
  EXPECT_EQ(after.permissibleError, before.permissibleError);
  EXPECT_EQ(after.rangeMax, before.rangeMax);
  EXPECT_EQ(after.instrument, before.instrument);
  // Pressed again, there is nothing to save and nothing is written.
  const auto next = session->workshop().book().nextEntryId();
  press("saveInstrument");
  EXPECT_EQ(session->workshop().book().nextEntryId()->value, next->value);
}

TEST_F(Instruments, AnEmptiedFigureIsRefusedNotForgotten) {
  makeDemoBook();
  openWindow();
  openPage();
  choose(QStringLiteral("Spring scale 50 N"));
  find<QLineEdit>("permissibleError")->clear();
  press("saveInstrument");
  EXPECT_FALSE(window->message().isEmpty());
  EXPECT_TRUE(onFile("Spring scale 50 N")->fact.permissibleError);
}

TEST_F(Instruments, CalibrationIsSaidInWords) {
  makeDemoBook();
  clock.set(*parseTimestamp("2027-02-01T08:00+01:00"));
  openWindow();
  openPage();
  auto* table = find<QTableWidget>("instrumentTable");
  QMap<QString, QString> states;
  for (int row = 0; row < table->rowCount(); ++row) {
    states[table->item(row, 0)->text().section(QLatin1Char('\n'), 0, 0)] =
        table->item(row, 1)->text();
  }
  EXPECT_TRUE(states[QStringLiteral("Wrench large")].contains(QStringLiteral("due soon")));
  EXPECT_TRUE(states[QStringLiteral("Micrometer 0-25")].contains(QStringLiteral("in calibration")));
  EXPECT_TRUE(states[QStringLiteral("Feeler set")].contains(QStringLiteral("never calibrated")));
  EXPECT_TRUE(states[QStringLiteral("Fish scale")].contains(QStringLiteral("own check")));
}

TEST_F(Instruments, TypedAndNotSavedIsThereAgain) {
  makeDemoBook();
  openWindow();
  openPage();
  choose(QStringLiteral("Fish scale"));
  type("checkShown", QStringLiteral("1.9 kg"));
  choose(QStringLiteral("Steel rule"));
  EXPECT_TRUE(text("checkShown").isEmpty());
  press("newInstrument");
  type("instrumentName", QStringLiteral("New caliper"));
  find<QLineEdit>("graduation")->setFocus();
  openWindow();  // the program was ended and started again
  openPage();
  EXPECT_EQ(text("instrumentName"), QStringLiteral("New caliper"));
  choose(QStringLiteral("Fish scale"));
  EXPECT_EQ(text("checkShown"), QStringLiteral("1.9 kg"));
}

TEST_F(Instruments, ANewOneOfTheKindTheWorkNeedsAndBackToIt) {
  makeDemoBook();
  openWindow();
  openPage({PageId::Instruments, model::JobId{1}, {}, {}, {}, model::InstrumentKind::Caliper});
  EXPECT_EQ(find<QComboBox>("instrumentKind")->currentData().toString(), QStringLiteral("caliper"));
  EXPECT_TRUE(find<QLineEdit>("instrumentName")->hasFocus());
  type("instrumentName", QStringLiteral("Fish scale"));
  type("graduation", QStringLiteral("0.05 mm"));
  press("saveInstrument");
  // One of that name is on file: it is not changed unseen.
  EXPECT_EQ(onFile("Fish scale")->fact.type, model::InstrumentKind::SpringScale);
  EXPECT_TRUE(find<QLineEdit>("instrumentName")->hasFocus());
  type("instrumentName", QStringLiteral("Caliper 150"));
  press("saveInstrument");
  ASSERT_NE(onFile("Caliper 150"), nullptr) << window->message().toStdString();
  press("backToWork");
  EXPECT_EQ(window->here().page, PageId::Work);
  EXPECT_EQ(window->here().job, model::JobId{1});
}

}  // namespace
}  // namespace sw::ui
