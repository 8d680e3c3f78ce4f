// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/common/choice_row.h"

#include <QAccessible>
#include <QPushButton>

#include "window_fixture.h"

namespace sw::ui {
namespace {

TEST(ChoiceRow, NothingIsChosenBeforehandAndOneAnswerHolds) {
  needWidgets();
  ChoiceRow row(QStringLiteral("bump"), QStringLiteral("After a bump?"),
                {{"yes", QStringLiteral("yes")}, {"no", QStringLiteral("no")}});
  EXPECT_FALSE(row.chosen());
  auto* yes = row.findChild<QPushButton*>(QStringLiteral("bump_yes"));
  auto* no = row.findChild<QPushButton*>(QStringLiteral("bump_no"));
  ASSERT_TRUE(yes != nullptr && no != nullptr);
  EXPECT_EQ(yes->accessibleName(), QStringLiteral("After a bump? yes"));
  QTest::keyClick(yes, Qt::Key_Space);
  EXPECT_EQ(row.chosen(), "yes");
  QTest::mouseClick(no, Qt::LeftButton);
  EXPECT_EQ(row.chosen(), "no");
  EXPECT_FALSE(yes->isChecked());
  row.clear();
  EXPECT_FALSE(row.chosen());
}

TEST(ChoiceRow, AssistiveToolsAnswerWithoutAClickAndTheRecordIsShownQuietly) {
  needWidgets();
  ChoiceRow row(QStringLiteral("bump"), QStringLiteral("After a bump?"),
                {{"yes", QStringLiteral("yes")}, {"no", QStringLiteral("no")}});
  int answers = 0;
  QObject::connect(&row, &ChoiceRow::answered, [&answers] { ++answers; });
  row.choose("no");
  EXPECT_EQ(answers, 0);
  auto* yes = row.findChild<QPushButton*>(QStringLiteral("bump_yes"));
  auto* face = QAccessible::queryAccessibleInterface(yes);
  ASSERT_TRUE(face != nullptr && face->actionInterface() != nullptr);
  face->actionInterface()->doAction(QAccessibleActionInterface::toggleAction());
  EXPECT_EQ(row.chosen(), "yes");
  EXPECT_EQ(answers, 1);
}

}  // namespace
}  // namespace sw::ui
