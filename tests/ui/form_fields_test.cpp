// SPDX-License-Identifier: GPL-3.0-or-later
// A form between record and command: a command gets what was changed and nothing else.
#include "ui/common/form_fields.h"

#include <QComboBox>
#include <QLineEdit>
#include <QPushButton>
#include <QSignalSpy>
#include <QWheelEvent>

#include "ui/common/choice_row.h"
#include "ui/common/page_parts.h"
#include "window_fixture.h"
#include "workshop/command.h"

namespace sw::ui {
namespace {

class FormFieldsTest : public ::testing::Test {
 protected:
  FormFieldsTest() {
    needWidgets();
    parent = std::make_unique<QWidget>();
    owner = lineEdit("owner", QStringLiteral("Owner"), {}, parent.get());
    load = lineEdit("load", QStringLiteral("Load"), {}, parent.get());
    side = new ChoiceRow(QStringLiteral("side"), QStringLiteral("Which side?"),
                         {{"left", QStringLiteral("left")}, {"right", QStringLiteral("right")}},
                         parent.get());
    unit = comboBox("unit", QStringLiteral("Unit"), parent.get());
    for (const char* word : {"km", "mi"}) {
      unit->addItem(QString::fromLatin1(word), QString::fromLatin1(word));
    }
    fields.add("owner", owner);
    fields.add("front_axle_load", load);
    fields.add("drag_link_side", side);
    fields.add("odometer_unit", unit);
    vehicle.owner = "Ina Brook";
    vehicle.frontAxleLoad = TypedQuantity{QuantityKind::Mass, "790", "kg", 790.0};
    vehicle.arrangement.dragLinkSide = model::Side::Left;
  }
  workshop::SetVehicle changes() {
    workshop::SetVehicle action;
    takeChanges(fields, action);
    return action;
  }

  std::unique_ptr<QWidget> parent;
  QLineEdit* owner = nullptr;
  QLineEdit* load = nullptr;
  ChoiceRow* side = nullptr;
  QComboBox* unit = nullptr;
  FormFields fields;
  model::Vehicle vehicle;
};

TEST_F(FormFieldsTest, ShowsAFactAsTypedAndSendsNothingUnchanged) {
  fields.show(textsOf(vehicle));
  EXPECT_EQ(owner->text(), QStringLiteral("Ina Brook"));
  EXPECT_EQ(load->text(), QStringLiteral("790 kg"));
  EXPECT_EQ(side->chosen(), "left");
  EXPECT_EQ(unit->currentText(), QStringLiteral("km"));
  EXPECT_FALSE(fields.hasChanges());
  EXPECT_FALSE(changes().owner);
  EXPECT_FALSE(changes().dragLinkSide);
}

TEST_F(FormFieldsTest, SendsWhatWasChangedAndAnEmptiedText) {
  fields.show(textsOf(vehicle));
  owner->clear();
  load->setText(QStringLiteral(" 800 kg "));
  side->choose("right");
  const workshop::SetVehicle action = changes();
  EXPECT_EQ(action.owner, "");
  EXPECT_EQ(action.frontAxleLoad, "800 kg");
  EXPECT_EQ(action.dragLinkSide, model::Side::Right);
  EXPECT_FALSE(action.odometerUnit);
}

TEST_F(FormFieldsTest, ANewRecordLeavesWhatWasTyped) {
  fields.show(textsOf(vehicle));
  owner->setText(QStringLiteral("Ferry & Daughters"));
  vehicle.owner = "somebody else";
  vehicle.odometerUnit = "mi";
  fields.follow(textsOf(vehicle));
  EXPECT_EQ(owner->text(), QStringLiteral("Ferry & Daughters"));
  EXPECT_EQ(unit->currentText(), QStringLiteral("mi"));
  EXPECT_EQ(changes().owner, "Ferry & Daughters");
  EXPECT_FALSE(changes().odometerUnit);
}

TEST_F(FormFieldsTest, ADraftHoldsChangesAloneAndComesBack) {
  fields.show(textsOf(vehicle));
  EXPECT_TRUE(fields.draft().isEmpty());
  owner->setText(QStringLiteral("a = b"));
  side->choose("right");
  const QString draft = fields.draft();
  fields.show(textsOf(vehicle));
  EXPECT_EQ(owner->text(), QStringLiteral("Ina Brook"));
  EXPECT_TRUE(fields.takeDraft(draft));
  EXPECT_EQ(owner->text(), QStringLiteral("a = b"));
  EXPECT_EQ(side->chosen(), "right");
  EXPECT_EQ(load->text(), QStringLiteral("790 kg"));
  EXPECT_FALSE(fields.takeDraft({}));
  EXPECT_FALSE(fields.takeDraft(QStringLiteral("no such field=1")));
}

TEST_F(FormFieldsTest, LeavingAFieldTellsOnlyWhereSomethingWasTyped) {
  fields.show(textsOf(vehicle));
  const QSignalSpy settled(&fields, &FormFields::settled);
  emit owner->editingFinished();
  EXPECT_EQ(settled.count(), 0);
  QTest::keyClicks(owner, QStringLiteral("x"));
  emit owner->editingFinished();
  EXPECT_EQ(settled.count(), 1);
  emit owner->editingFinished();
  EXPECT_EQ(settled.count(), 1);
}

TEST_F(FormFieldsTest, ScrollingOverAChoiceChangesNothing) {
  fields.show(textsOf(vehicle));
  parent->show();
  QWheelEvent down({5, 5}, unit->mapToGlobal(QPointF(5, 5)), {}, {0, -120}, Qt::NoButton,
                   Qt::NoModifier, Qt::NoScrollPhase, false);
  QApplication::sendEvent(unit, &down);
  EXPECT_EQ(unit->currentText(), QStringLiteral("km"));
}

TEST_F(FormFieldsTest, AFieldIsFoundByTheNameARefusalGivesIt) {
  parent->show();
  parent->activateWindow();
  EXPECT_TRUE(fields.focus("drag_link_side"));
  EXPECT_EQ(parent->focusWidget()->objectName(), QStringLiteral("side_left"));
  EXPECT_FALSE(fields.focus("nowhere"));
}

}  // namespace
}  // namespace sw::ui
