// SPDX-License-Identifier: GPL-3.0-or-later
// A vehicle: its data and front axle, its spec sheet filled in line by line, its jobs.
#include <QAbstractButton>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTableWidget>

#include "window_fixture.h"

namespace sw::ui {
namespace {

class VehicleTest : public WindowTest {
 protected:
  void openJobOnEmptyBook() {
    openEmptyBook();
    workshop::SetPerson person{"IB", "Ina Brook", {}, {}};
    ASSERT_TRUE(session->perform(person));
    session->setPerson("IB");
    ASSERT_TRUE(session->perform(workshop::OpenJob{"HBX 204", {}, {}}));
    window->go({PageId::Vehicle, model::JobId{1}, {}, {}, {}});
    settle();
  }
  void openDemo(const char* plate) {
    makeDemoBook();
    openWindow();
    const auto* vehicle = (*session->shop())->vehicleByRegistration(plate);
    ASSERT_NE(vehicle, nullptr);
    window->go({PageId::Vehicle, {}, vehicle->fact.vehicle, {}, {}});
    settle();
  }
  const model::Vehicle& onFile(const char* plate) {
    return (*session->shop())->vehicleByRegistration(plate)->fact;
  }
  const model::SpecItem* line(const char* plate, const char* key) {
    const auto* found = (*session->shop())->spec(onFile(plate).vehicle, key);
    return found == nullptr ? nullptr : &found->fact;
  }
  void chooseLine(const QString& name) {
    auto* table = find<QTableWidget>("specTable");
    for (int row = 0; row < table->rowCount(); ++row) {
      if (table->item(row, 0)->text() != name) continue;
      table->scrollToItem(table->item(row, 0));
      QTest::mouseClick(table->viewport(), Qt::LeftButton, {},
                        table->visualItemRect(table->item(row, 0)).center());
      settle();
      return;
    }
    FAIL() << name.toStdString();
  }
  QStringList lines(const QString& figure) {
    QStringList names;
    auto* table = find<QTableWidget>("specTable");
    for (int row = 0; row < table->rowCount(); ++row) {
      if (table->item(row, 1)->text() == figure) names += table->item(row, 0)->text();
    }
    return names;
  }
  void retype(const char* field, const QString& text) {
    find<QLineEdit>(field)->clear();
    type(field, text);
  }
  bool isChosen(const char* button) { return find<QAbstractButton>(button)->isChecked(); }
  std::int64_t nextEntry() { return session->workshop().book().nextEntryId()->value; }
};

TEST_F(VehicleTest, WhatIsSeenOnANewVehicleIsKept) {
  openJobOnEmptyBook();
  EXPECT_TRUE(isChosen("dragLinkSide_unknown"));
  EXPECT_TRUE(isChosen("absLead_unknown"));
  retype("makeModel", QStringLiteral("Light four-wheel drive"));
  type("frontAxleLoad", QStringLiteral("790 kg"));
  press("odometerUnit_mi");
  press("dragLinkSide_right");
  press("shimLayout_inner");
  press("absLead_no");
  const auto before = nextEntry();
  press("saveVehicle");
  EXPECT_EQ(nextEntry(), before + 1);
  const model::Vehicle& vehicle = onFile("HBX 204");
  EXPECT_EQ(vehicle.makeModel, "Light four-wheel drive");
  EXPECT_EQ(vehicle.odometerUnit, "mi");
  EXPECT_EQ(vehicle.frontAxleLoad->text(), "790 kg");
  EXPECT_EQ(vehicle.arrangement.dragLinkSide, model::Side::Right);
  EXPECT_EQ(vehicle.arrangement.shimLayout, model::ShimLayout::Inner);
  EXPECT_EQ(vehicle.arrangement.absLead, model::YesNo::No);
  EXPECT_FALSE(vehicle.arrangement.lubricant);
  // What is on record cannot become "not known" again; yes or no can.
  EXPECT_FALSE(find<QWidget>("dragLinkSide_unknown")->isVisible());
  EXPECT_TRUE(find<QWidget>("lubricant_unknown")->isVisible());
  press("absLead_unknown");
  press("saveVehicle");
  EXPECT_EQ(onFile("HBX 204").arrangement.absLead, model::YesNo::Unknown);
}

TEST_F(VehicleTest, ARefusedFigureStaysAndGetsTheCursor) {
  openDemo("HB-0417");
  retype("frontAxleLoad", QStringLiteral("790 N"));
  retype("owner", QStringLiteral("Petra L."));
  press("saveVehicle");
  EXPECT_FALSE(window->message().isEmpty());
  EXPECT_TRUE(find<QLineEdit>("frontAxleLoad")->hasFocus());
  EXPECT_EQ(find<QLineEdit>("owner")->text(), QStringLiteral("Petra L."));
  EXPECT_EQ(onFile("HB-0417").owner, "Petra Lindqvale");
}

TEST_F(VehicleTest, APlateIsChangedButNotToThatOfAnother) {
  openDemo("HB-0417");
  retype("vehiclePlate", QStringLiteral("HB-0923"));
  const auto before = nextEntry();
  press("saveVehicle");
  EXPECT_EQ(nextEntry(), before);
  EXPECT_TRUE(find<QLabel>("vehicleProblem")->text().contains(QStringLiteral("another vehicle")));
  retype("vehiclePlate", QStringLiteral("HB-0418"));
  press("saveVehicle");
  EXPECT_EQ(onFile("HB-0418").owner, "Petra Lindqvale");
  EXPECT_TRUE(find<QLabel>("vehicleTitle")->text().startsWith(QStringLiteral("HB-0418")));
}

TEST_F(VehicleTest, TheSheetIsFilledLineByLineWithTheKeyboard) {
  openJobOnEmptyBook();
  press("partSpec");
  const auto missing = lines(QStringLiteral("missing"));
  EXPECT_TRUE(missing.contains(QStringLiteral("Wheel nuts")));
  EXPECT_TRUE(missing.contains(QStringLiteral("Swivel starting force, hub bare")));
  EXPECT_TRUE(missing.contains(QStringLiteral("Swivel shim sizes")));
  chooseLine(QStringLiteral("Swivel starting force, hub bare"));
  // A bare number is a force here, not a number.
  type("specMin", QStringLiteral("16"));
  type("specMax", QStringLiteral("24 N"));
  type("specSource", QStringLiteral("workshop book, page 12"));
  QTest::keyClick(find<QLineEdit>("specSource"), Qt::Key_Return);
  const auto* force = line("HBX 204", "swivel.starting_force");
  ASSERT_NE(force, nullptr) << window->message().toStdString();
  EXPECT_EQ(force->min->text(), "16 N");
  EXPECT_EQ(force->type, model::SpecKind::Limit);
  EXPECT_EQ(force->source, "workshop book, page 12");
  EXPECT_EQ(lines(QStringLiteral("missing")).size(), missing.size() - 1);
  // The next missing line is there to be typed.
  const QString next = find<QLabel>("specTitle")->text();
  EXPECT_TRUE(missing.contains(next)) << next.toStdString();
  EXPECT_NE(next, QStringLiteral("Swivel starting force, hub bare"));
  EXPECT_TRUE(QApplication::focusWidget()->objectName().startsWith(QStringLiteral("spec")));
}

TEST_F(VehicleTest, ATorqueKeepsBothFiguresAndItsFasteners) {
  openJobOnEmptyBook();
  press("partSpec");
  chooseLine(QStringLiteral("Wheel nuts"));
  EXPECT_FALSE(find<QWidget>("specMin")->isVisible());
  type("specValue", QStringLiteral("115 N m"));
  type("specSecondValue", QStringLiteral("85 lbf ft"));
  type("fastenerSize", QStringLiteral("M14x1.5"));
  type("fastenerCount", QStringLiteral("5"));
  press("singleUse_no");
  auto* pattern = find<QComboBox>("fastenerPattern");
  pattern->setFocus();
  QTest::keyClick(pattern, Qt::Key_Down);
  press("saveSpec");
  const auto* nuts = line("HBX 204", "wheel_nuts");
  ASSERT_NE(nuts, nullptr) << window->message().toStdString();
  EXPECT_EQ(nuts->value->text(), "115 N m");
  EXPECT_EQ(nuts->secondValue->text(), "85 lbf ft");
  EXPECT_EQ(nuts->count, 5);
  EXPECT_EQ(nuts->pattern, "cross");
  EXPECT_FALSE(nuts->singleUse);
  EXPECT_TRUE(
      lines(QStringLiteral("115\u00A0N\u00A0m (85\u00A0lbf\u00A0ft), 5 a side, M14x1.5, cross"))
          .contains(QStringLiteral("Wheel nuts")));
}

TEST_F(VehicleTest, FiguresThatDisagreeAreSaidAndTheWrongKindIsRefused) {
  openDemo("HB-0417");
  press("partSpec");
  chooseLine(QStringLiteral("Swivel starting force, hub bare"));
  retype("specMax", QStringLiteral("24 mm"));
  press("saveSpec");
  EXPECT_TRUE(find<QLineEdit>("specMax")->hasFocus());
  EXPECT_FALSE(find<QLabel>("specProblem")->text().isEmpty());
  EXPECT_EQ(line("HB-0417", "swivel.starting_force")->max->text(), "24 N");
  retype("specMax", QStringLiteral("34 N"));
  press("saveSpec");
  EXPECT_EQ(line("HB-0417", "swivel.starting_force")->max->text(), "34 N");
  EXPECT_TRUE(window->message().contains(QStringLiteral("do not agree")))
      << window->message().toStdString();
}

TEST_F(VehicleTest, ALineIsTakenOffAndOneOfTheUsersOwnAdded) {
  openDemo("HB-0417");
  press("partSpec");
  chooseLine(QStringLiteral("Wheel nuts"));
  press("takeOffSpec");
  EXPECT_EQ(line("HB-0417", "wheel_nuts"), nullptr);
  EXPECT_EQ(lines(QStringLiteral("missing")), QStringList(QStringLiteral("Wheel nuts")));
  EXPECT_TRUE(find<QPushButton>("partSpec")->text().contains(QStringLiteral("1 missing")));
  press("anotherSpec");
  EXPECT_TRUE(find<QLineEdit>("specKey")->hasFocus());
  type("specKey", QStringLiteral("axle oil"));
  auto* kind = find<QComboBox>("specType");
  kind->setFocus();
  for (int step = 0; step < 3; ++step) QTest::keyClick(kind, Qt::Key_Down);
  EXPECT_FALSE(find<QWidget>("specMin")->isVisible());
  type("specText", QStringLiteral("1.7 l, as the vehicle's papers say"));
  press("saveSpec");
  ASSERT_NE(line("HB-0417", "axle oil"), nullptr) << window->message().toStdString();
  EXPECT_EQ(line("HB-0417", "axle oil")->type, model::SpecKind::Text);
}

TEST_F(VehicleTest, ASheetIsCopiedAndGetsOneSource) {
  openDemo("HB-2217");
  press("partSpec");
  EXPECT_GT(lines(QStringLiteral("missing")).size(), 10);
  auto* from = find<QComboBox>("copyFrom");
  from->setCurrentIndex(from->findData(QStringLiteral("HB-0417")));
  press("copySheet");
  EXPECT_TRUE(lines(QStringLiteral("missing")).isEmpty());
  EXPECT_EQ(line("HB-2217", "wheel_nuts")->value->text(), "115 N m");
  type("sheetSource", QStringLiteral("workshop book"));
  type("sheetSourceDate", QStringLiteral("2030-13-01"));
  press("sourceAll");
  EXPECT_TRUE(find<QLineEdit>("sheetSourceDate")->hasFocus());
  EXPECT_NE(line("HB-2217", "wheel_nuts")->source, "workshop book");
  retype("sheetSourceDate", QStringLiteral("2030-12-01"));
  press("sourceAll");
  EXPECT_EQ(line("HB-2217", "wheel_nuts")->source, "workshop book");
  EXPECT_EQ(line("HB-2217", "shims.sizes")->source, "workshop book");
}

TEST_F(VehicleTest, AJobOfTheVehicleLeadsToItsPaper) {
  openDemo("HB-0417");
  press("partJobs");
  auto* table = find<QTableWidget>("vehicleJobs");
  ASSERT_GT(table->rowCount(), 1);
  table->setFocus();
  table->setCurrentCell(table->rowCount() - 1, 0);
  QTest::keyClick(table, Qt::Key_Return);
  EXPECT_EQ(window->here().page, PageId::Sheet);
  EXPECT_EQ(window->here().job, model::JobId{1});
}

TEST_F(VehicleTest, TypedAndNotSavedIsThereAgain) {
  openDemo("HB-0417");
  retype("vehicleNotes", QStringLiteral("left hub weeps"));
  press("partSpec");
  chooseLine(QStringLiteral("Wheel nuts"));
  retype("specValue", QStringLiteral("120 N m"));
  chooseLine(QStringLiteral("Caliper bolts"));
  chooseLine(QStringLiteral("Wheel nuts"));
  EXPECT_EQ(find<QLineEdit>("specValue")->text(), QStringLiteral("120 N m"));
  EXPECT_EQ(line("HB-0417", "wheel_nuts")->value->text(), "115 N m");
  openWindow();
  window->go({PageId::Vehicle, {}, onFile("HB-0417").vehicle, {}, {}});
  EXPECT_EQ(find<QLineEdit>("vehicleNotes")->text(), QStringLiteral("left hub weeps"));
}

TEST_F(VehicleTest, EveryPartHasNamesSizesAndWholeWords) {
  for (const Mode mode : {Mode::Desk, Mode::Workshop}) {
    applyTheme({Look::Light, mode});
    openDemo(mode == Mode::Desk ? "HB-0417" : "HB-0923");
    for (const char* part : {"partData", "partSpec", "partJobs"}) {
      press(part);
      settle();
      for (const auto* label : window->findChildren<QLabel*>()) {
        if (!label->isVisible() || !label->wordWrap()) continue;
        EXPECT_GE(label->height(), label->heightForWidth(label->width()))
            << part << " " << label->text().toStdString();
      }
      for (const auto* edit : window->findChildren<QLineEdit*>()) {
        if (!edit->isVisible() || edit->objectName().startsWith("qt_")) continue;
        EXPECT_FALSE(edit->accessibleName().isEmpty()) << edit->objectName().toStdString();
        EXPECT_GE(edit->height(), sizesOf(mode).target) << edit->objectName().toStdString();
        EXPECT_GE(edit->width(), 3 * sizesOf(mode).target) << edit->objectName().toStdString();
      }
      for (const auto* button : window->findChildren<QAbstractButton*>()) {
        if (!button->isVisible() || button->objectName().isEmpty()) continue;
        EXPECT_GE(button->width(), button->fontMetrics().horizontalAdvance(button->text()))
            << button->text().toStdString();
      }
    }
    window.reset();
    session.reset();
    QFile::remove(QString::fromStdString(bookPath()));
  }
  applyTheme({});
}

}  // namespace
}  // namespace sw::ui
