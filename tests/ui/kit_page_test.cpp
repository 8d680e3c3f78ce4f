// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/kit/kit_page.h"

#include <QLabel>
#include <QPushButton>

#include "ui/kit/kit_row.h"
#include "ui/pages.h"
#include "window_fixture.h"

namespace sw::ui {
namespace {

class KitPageTest : public WindowTest {
 protected:
  void SetUp() override {
    makeDemoBook();
    openWindow();
    showKit();
  }
  void showKit() {
    window->go({PageId::Kit, kJob, {}, {}, {}});
    settle();
  }
  [[nodiscard]] std::vector<workshop::KitLine> lines() const {
    return workshop::kitOf(**session->job(kJob));
  }
  /// Those that a step still asks for.
  [[nodiscard]] std::vector<workshop::KitLine> needed() const {
    auto all = lines();
    std::erase_if(all, [](const auto& line) { return !line.stillNeeded; });
    return all;
  }
  QPushButton* button(const char* what, const std::string& key) {
    return find<QPushButton>((std::string(what) + ":" + key).c_str());
  }

  static constexpr model::JobId kJob{12};
};

TEST_F(KitPageTest, EveryLineIsThereOnceAndTheFirstOpenOneHasTheCursor) {
  const auto rows = window->findChildren<KitRow*>();
  ASSERT_EQ(static_cast<std::size_t>(rows.size()), lines().size());
  ASSERT_GT(rows.size(), 20);
  EXPECT_TRUE(button("have", needed().front().key)->hasFocus());
  for (const auto& line : lines()) {
    EXPECT_FALSE(button("have", line.key)->isChecked()) << line.key;
  }
}

TEST_F(KitPageTest, TicksAreKeptAndTakenBack) {
  const std::string first = needed().at(0).key;
  const std::string second = needed().at(1).key;
  const int open = static_cast<int>(needed().size());
  EXPECT_TRUE(find<QLabel>("kitOpen")->text().contains(QString::number(open)));
  QTest::keyClick(button("have", first), Qt::Key_Space);
  button("missing", second)->click();
  EXPECT_TRUE(find<QLabel>("kitOpen")->text().contains(QString::number(open - 2)));
  EXPECT_TRUE(find<QLabel>("kitOpen")->text().contains(QStringLiteral("Missing: 1")));
  // Another start of the program.
  openWindow();
  showKit();
  EXPECT_TRUE(button("have", first)->isChecked());
  EXPECT_TRUE(button("missing", second)->isChecked());
  button("have", first)->click();
  EXPECT_FALSE(button("have", first)->isChecked());
  EXPECT_FALSE(workshop::kitTicks(session->workshop().book(), kJob)->contains(first));
}

TEST_F(KitPageTest, WhatIsMissingShowsWhatDoesInstead) {
  for (const auto& line : lines()) {
    if (line.instead.empty()) continue;
    const std::string name = "instead:" + line.key;
    auto* instead = find<QLabel>(name.c_str());
    EXPECT_FALSE(instead->isVisible());
    button("missing", line.key)->click();
    settle();
    EXPECT_TRUE(instead->isVisibleTo(window.get()));
    EXPECT_TRUE(instead->text().contains(QString::fromStdString(line.instead.front())));
    button("have", line.key)->click();
    EXPECT_FALSE(instead->isVisibleTo(window.get()));
    EXPECT_FALSE(button("missing", line.key)->isChecked());
    return;
  }
  FAIL() << "no tool of the plan has an alternative";
}

TEST_F(KitPageTest, GoesOnWhereTheTickingStopped) {
  const auto all = needed();
  const std::size_t far = all.size() / 2;
  for (std::size_t i = 0; i < far; ++i) button("have", all[i].key)->click();
  window->showStart();
  showKit();
  auto* next = button("have", all[far].key);
  EXPECT_TRUE(next->hasFocus());
  EXPECT_FALSE(next->visibleRegion().isEmpty());
}

TEST_F(KitPageTest, GoesToWork) {
  press("kitWork");
  EXPECT_EQ(window->here().page, PageId::Work);
  EXPECT_EQ(window->here().job, kJob);
}

TEST_F(KitPageTest, AJobWithoutAPlanSaysWhatToDo) {
  session->setPerson(session->shop().value()->people().front()->fact.initials);
  workshop::OpenJob open;
  open.registration = "HB-0417";
  const auto job = session->perform(open);
  ASSERT_TRUE(job);
  window->go({PageId::Kit, job->job, {}, {}, {}});
  EXPECT_TRUE(find<QLabel>("kitEmpty")->isVisible());
  EXPECT_FALSE(find<QPushButton>("kitWork")->isVisible());
  EXPECT_TRUE(find<QPushButton>("kitPlan")->hasFocus());
  press("kitPlan");
  EXPECT_EQ(window->here().page, PageId::Complaint);
}

}  // namespace
}  // namespace sw::ui
