// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/common/choice_row.h"

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

}  // namespace
}  // namespace sw::ui
