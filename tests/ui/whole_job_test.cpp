// SPDX-License-Identifier: GPL-3.0-or-later
// The entire job in the window, from an empty book to the printed sheet.
#include <QAbstractItemView>
#include <QProcess>
#include <QTableWidget>

#include "hands.h"
#include "ui/sheet/sheet_page.h"

namespace sw::ui {
namespace {

const char* const kPlate = "HBX 204";

class WholeJob : public Hands {
 protected:
  void fillIn(const char* field, const QString& text) {
    find<QLineEdit>(field)->clear();
    type(field, text);
  }
  void pick(const char* box, const char* data) {
    auto* combo = find<QComboBox>(box);
    combo->setFocus();
    const int index = combo->findData(QString::fromLatin1(data));
    ASSERT_GE(index, 0) << data;
    for (int step = 0; combo->currentIndex() != index && step < combo->count(); ++step) {
      QTest::keyClick(combo, combo->currentIndex() < index ? Qt::Key_Down : Qt::Key_Up);
    }
    ASSERT_EQ(combo->currentIndex(), index) << data;
  }

  void openTheJob() {
    openEmptyBook();
    press("newJob");
    type("plate", QString::fromLatin1(kPlate));
    type("yourName", QStringLiteral("Ina Brook"));
    type("odometer", QStringLiteral("84210"));
    press("braking_no");
    press("speedBand_yes");
    press("afterBump_yes");
    press("whereFelt_both");
    press("openJob");
    ASSERT_EQ(session->workshop().book().jobs()->size(), 1U);
  }

  struct Tool {
    const char *kind, *name, *graduation, *error, *from, *to;
  };
  void putInstrumentsOnFile() {
    constexpr Tool kTools[] = {
        {"spring_scale", "Hub scale", "0.2 N", "0.3 N", "1 N", "50 N"},
        {"micrometer", "Micrometer", "0.01 mm", "0.004 mm", "", "25 mm"},
        {"dial_indicator", "Dial", "0.01 mm", "0.008 mm", "", "10 mm"},
        {"feeler", "Feelers", "0.05 mm", "0.005 mm", "", "1 mm"},
        {"steel_rule", "Rule", "0.5 mm", "0.3 mm", "", "500 mm"},
        {"pressure_gauge", "Tyre gauge", "0.05 bar", "0.1 bar", "", "6 bar"},
        // One wrench in the other unit: what it is set to is shown in its own.
        {"torque_wrench", "Foot-pound wrench", "0.5 lbf ft", "4 %", "5 lbf ft", "60 lbf ft"},
        {"torque_wrench", "Long wrench", "1 N m", "4 %", "25 N m", "220 N m"}};
    press("goInstruments");
    for (const Tool& tool : kTools) {
      if (find<QPushButton>("newInstrument")->isVisible()) press("newInstrument");
      pick("instrumentKind", tool.kind);
      fillIn("instrumentName", QString::fromLatin1(tool.name));
      fillIn("graduation", QString::fromLatin1(tool.graduation));
      fillIn("permissibleError", QString::fromLatin1(tool.error));
      fillIn("rangeMin", QString::fromLatin1(tool.from));
      fillIn("rangeMax", QString::fromLatin1(tool.to));
      fillIn("calibratedOn", QStringLiteral("2030-09-02"));
      fillIn("calibrationDue", QStringLiteral("2032-09-02"));
      press("saveInstrument");
      ASSERT_NE((*session->shop())->instrumentByName(tool.name), nullptr)
          << tool.name << ": " << window->message().toStdString();
    }
  }

  void describeTheVehicle() {
    window->go({PageId::Vehicle, number, {}, {}, {}});
    settle();
    fillIn("makeModel", QStringLiteral("Light four-wheel drive, soft top"));
    fillIn("frontAxleLoad", QStringLiteral("790 kg"));
    for (const char* answer :
         {"dragLinkSide_right", "steeringArmOnCap_yes", "lubricant_oil", "shimEnds_top",
          "shimLayout_cap_flange", "swivelBearing_taper", "dragLinkFixesTo_steering_arm",
          "damperFixesTo_track_rod", "discMount_outside", "wheelBearing_end_float", "absLead_no",
          "lockingHubs_no"}) {
      press(answer);
    }
    press("saveVehicle");
    const auto* vehicle = (*session->shop())->vehicleByRegistration(kPlate);
    ASSERT_EQ(vehicle->fact.arrangement.shimLayout, model::ShimLayout::CapFlange);
  }

  /// Types every line the page calls missing.
  void fillTheSheet() {
    press("partSpec");
    auto* table = find<QTableWidget>("specTable");
    for (int row = 0; row < table->rowCount(); ++row) {
      if (table->item(row, 1)->text() != QStringLiteral("missing")) continue;
      const QString name = table->item(row, 0)->text();
      table->scrollToItem(table->item(row, 0));
      QTest::mouseClick(table->viewport(), Qt::LeftButton, {},
                        table->visualItemRect(table->item(row, 0)).center());
      settle();
      typeLine(name);
    }
    fillIn("sheetSource", QStringLiteral("workshop book of the owner"));
    press("sourceAll");
    const auto id = state()->opened.vehicle;
    for (const char* key : {"swivel.starting_force", "wheel_nuts", "swivel_cap_bolts",
                            "steering_arm_nuts", "shims.sizes", "caliper_bolts"}) {
      ASSERT_NE((*session->shop())->spec(id, key), nullptr) << key;
    }
    ASSERT_EQ((*session->shop())->spec(id, "wheel_nuts")->fact.source,
              "workshop book of the owner");
  }
  void typeLine(const QString& name) {
    if (find<QLineEdit>("specText")->isVisible()) {
      fillIn("specText", QStringLiteral("0.10 0.15 0.25 0.50 mm"));
    } else if (find<QLineEdit>("fastenerCount")->isVisible()) {
      const bool nuts = name.startsWith(QStringLiteral("Wheel nuts"));
      fillIn("specValue", nuts ? QStringLiteral("115 N m") : QStringLiteral("58 N m"));
      fillIn("fastenerCount", nuts ? QStringLiteral("5") : QStringLiteral("4"));
      pick("fastenerPattern", "cross");
    } else if (find<QLineEdit>("specMin")->isVisible()) {
      typeLimit(name);
    } else if (find<QLineEdit>("specValue")->isVisible()) {
      const bool count = name.contains(QStringLiteral("many"), Qt::CaseInsensitive) ||
                         name.contains(QStringLiteral("count"), Qt::CaseInsensitive);
      fillIn("specValue", count ? QStringLiteral("4") : QStringLiteral("1.40 mm"));
    }
    press("saveSpec");
  }
  void typeLimit(const QString& name) {
    if (name.contains(QStringLiteral("pressure"))) {
      fillIn("specMin", QStringLiteral("1.8 bar"));
      fillIn("specMax", QStringLiteral("2.2 bar"));
    } else if (name == QStringLiteral("Swivel starting force, hub bare")) {
      fillIn("specMin", QStringLiteral("16 N"));
      fillIn("specMax", QStringLiteral("24 N"));
    } else if (name.contains(QStringLiteral("float"))) {
      fillIn("specMax", QStringLiteral("0.10 mm"));
    } else {
      fillIn("specMax", QStringLiteral("48 N"));
    }
  }

  void complain() {
    window->go({PageId::Complaint, number, {}, {}, {}});
    settle();
    fillIn("complaintWords", QStringLiteral("shakes after a pothole, holds until I brake"));
    fillIn("onsetRising", QStringLiteral("45 mph"));
    press("speedSource_dial");
    press("saveComplaint");
    ASSERT_EQ(state()->complaint->onsetRising->text(), "45 mph");
    window->go({PageId::Work, number, {}, {}, {}});
    settle();
    press("startPlan");
    ASSERT_FALSE(state()->steps.empty());
  }

  QString force(const workshop::StepView& view) override {
    if (view.step->measure->limit == "swivel.dressed_pull") return QStringLiteral("30 N");
    return state()->runs[view.run].fact.round > 1 ? QStringLiteral("20 N") : QStringLiteral("19 N");
  }
  void drive(model::RoadTestWhen when) override {
    if (when == model::RoadTestWhen::Before || ++drives > 1) return Hands::drive(when);
    pressSeen(QStringLiteral("shake_less"));
    seen<QLineEdit>(QStringLiteral("roadOnset"))->setText(QStringLiteral("72 km/h"));
    pressSeen(QStringLiteral("speedSource_dial"));
    pressSeen(QStringLiteral("selfReturn_returns"));
    pressSeen(QStringLiteral("recordRoadTest"));
  }
  void torque(const workshop::StepView& view) override {
    // Typed in lbf ft where the sheet has N m.
    if (view.step->torque->fasteners == "steering_arm_nuts" && !typedInFeet) {
      typedInFeet = true;
      enter(QStringLiteral("torqueSet"), QStringLiteral("21.5 lbf ft"));
    }
    Hands::torque(view);
  }

  [[nodiscard]] bool atPull(const workshop::StepView& view, std::int64_t round) {
    return view.step->measure && view.step->measure->drivesRounds &&
           state()->runs[view.run].fact.round == round;
  }
  const workshop::SeriesView& pulled() {
    const auto* series = state()->newestSeries(here());
    EXPECT_NE(series, nullptr);
    return *series;
  }
  void restart() {
    const std::string before = hereName();
    openWindow();
    window->go({PageId::Work, number, {}, {}, {}});
    settle();
    EXPECT_EQ(hereName(), before);
  }

  void signOffAndPrint() {
    // Something more came off: refused once more, by name; then it is back, and accepted.
    goTo("wheels-off/wheel_off", model::Side::Left);
    ASSERT_TRUE(pressSeen(QStringLiteral("alsoRemoved")));
    enter(QStringLiteral("ledgerReasonWords"), QStringLiteral("mudguard bolt"));
    window->go({PageId::Finish, number, {}, {}, {}});
    press("signOff");
    EXPECT_FALSE(state()->closed);
    EXPECT_TRUE(window->message().contains(QStringLiteral("mudguard bolt")))
        << window->message().toStdString();
    window->go({PageId::Work, number, {}, {}, {}});
    auto* ledger = find<QAbstractItemView>("ledgerList");
    ledger->setCurrentIndex(ledger->model()->index(0, 0));
    settle();
    ASSERT_TRUE(pressSeen(QStringLiteral("ledger_back")));
    window->go({PageId::Finish, number, {}, {}, {}});
    press("signOff");
    ASSERT_TRUE(state()->closed) << window->message().toStdString();

    window->go({PageId::Sheet, number, {}, {}, {}});
    settle();
    const QString file = folder.filePath(QStringLiteral("sheet.pdf"));
    window->pageAs<SheetPage>(PageId::Sheet).chooseFile = [&](const QString&) { return file; };
    press("savePdf");
    QProcess read;
    read.start(QStringLiteral("pdftotext"), {QStringLiteral("-layout"), file, QStringLiteral("-")});
    ASSERT_TRUE(read.waitForFinished());
    const QString text = QString::fromUtf8(read.readAllStandardOutput());
    for (const char* words : {"HBX 204", "Ina Brook", "shakes after a pothole", "wrong side",
                              "21.5 lbf ft", "workshop book of the owner", "mudguard bolt"}) {
      EXPECT_TRUE(text.contains(QString::fromLatin1(words), Qt::CaseInsensitive)) << words;
    }
  }

  int drives = 0;
  bool typedInFeet = false;
};

TEST_F(WholeJob, FromAnEmptyBookToThePrintedSheet) {
  ASSERT_NO_FATAL_FAILURE(openTheJob());
  ASSERT_NO_FATAL_FAILURE(putInstrumentsOnFile());
  ASSERT_NO_FATAL_FAILURE(describeTheVehicle());
  ASSERT_NO_FATAL_FAILURE(fillTheSheet());
  ASSERT_NO_FATAL_FAILURE(complain());

  // Sign-off is refused while anything is open, and says where.
  window->go({PageId::Finish, number, {}, {}, {}});
  press("signOff");
  EXPECT_FALSE(state()->closed);
  press("reason_0");
  EXPECT_EQ(window->here().page, PageId::Work);

  // Up to the pulls of the first pack, both sides.
  ASSERT_NO_FATAL_FAILURE(workOn([&](const auto& view) { return atPull(view, 1); }));
  const auto firstPull =
      workshop::nextReadyStep(*state(), workshop::stepLines(*state(), clock.now()), {}, {});
  ASSERT_TRUE(firstPull);
  ASSERT_EQ(state()->steps[*firstPull].side, model::Side::Left);
  const std::string pullStep = whereOf(*state(), *firstPull).step;
  goTo(pullStep, model::Side::Left);

  // The right hub's pulls are typed under the left, and moved as a whole.
  enter(QStringLiteral("readings"), QStringLiteral("19.6 N; 19.2 N; 19.4 N; 19.2 N"));
  ASSERT_TRUE(state()->steps[here()].done());
  ASSERT_TRUE(pressSeen(QStringLiteral("moveSeries")));
  EXPECT_EQ(state()->newestSeries(here()), nullptr);
  EXPECT_FALSE(state()->steps[here()].done());
  goTo(pullStep, model::Side::Right);
  EXPECT_EQ(pulled().verdict->verdict, "within");

  // The left hub: undecided first, more pulls decide that the pack is short.
  goTo(pullStep, model::Side::Left);
  enter(QStringLiteral("readings"), QStringLiteral("16.0 N; 15.4 N; 16.4 N; 15.6 N"));
  EXPECT_EQ(pulled().verdict->verdict, "undecided") << pulled().verdict->probability.value_or(-1);
  EXPECT_TRUE(
      seen<QLabel>(QStringLiteral("verdictWords"))->text().contains(QStringLiteral("undecided")));
  const std::size_t runs = state()->runs.size();
  for (int more = 0; more < 7 && pulled().verdict->verdict == "undecided"; ++more) {
    enter(QStringLiteral("readings"), QStringLiteral("15.0 N"));
  }
  EXPECT_EQ(pulled().verdict->verdict, "outside");
  ASSERT_EQ(state()->runs.size(), runs + 1);  // the next pack, at once

  // Interrupted: the program ends, and starts again on the same step.
  ASSERT_NO_FATAL_FAILURE(workOn([&](const auto& view) { return view.step->torque.has_value(); }));
  const auto torqueStep =
      workshop::nextReadyStep(*state(), workshop::stepLines(*state(), clock.now()), {}, {});
  ASSERT_TRUE(torqueStep);
  goTo(whereOf(*state(), *torqueStep).step, state()->steps[*torqueStep].side);
  ASSERT_TRUE(pressSeen(QStringLiteral("recordTorque")));
  ASSERT_NO_FATAL_FAILURE(restart());
  EXPECT_TRUE(window->message().contains(QStringLiteral("hand-tight")))
      << window->message().toStdString();

  // The second pack, the drive that still shakes, the second round, and the end.
  ASSERT_NO_FATAL_FAILURE(workOn());
  ASSERT_EQ(openSteps(), "");
  EXPECT_EQ(drives, 2);  // one that still shakes, and one after the second round
  EXPECT_TRUE(typedInFeet);
  for (const workshop::Refusal& refusal : workshop::againstSignOff(*state())) {
    ADD_FAILURE() << refusal.key << "|" << refusal.step << "|" << refusal.what;
  }
  signOffAndPrint();
}

}  // namespace
}  // namespace sw::ui
