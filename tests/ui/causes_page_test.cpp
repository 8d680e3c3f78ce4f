// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/causes/causes_page.h"

#include <QComboBox>

#include "hands.h"
#include "ui/bench/figure_view.h"
#include "ui/pages.h"

namespace sw::ui {
namespace {

class CausesPageTest : public Hands {
 protected:
  void SetUp() override {
    makeDemoBook();
    openWindow();
    session->setPerson("MT");
    workshop::OpenJob open;
    open.registration = "HB-2002";
    const auto opened = session->perform(open);
    ASSERT_TRUE(opened && opened->job);
    number = *opened->job;
    window->go({PageId::Causes, number, {}, {}, {}});
    wait();
  }
  /// Until what is worked out beside the window is shown.
  void wait() {
    auto* lead = find<QLabel>("causesLead");
    ASSERT_TRUE(QTest::qWaitFor([&] { return !lead->text().isEmpty(); }, 20000));
    settle();
  }
  template <class Happens>
  bool comes(const Happens& happens) {
    return QTest::qWaitFor(happens, 20000);
  }
  QString lead() { return find<QLabel>("causesLead")->text(); }
  QPushButton* button(const QString& name) { return window->findChild<QPushButton*>(name); }
};

TEST_F(CausesPageTest, LeadersQuestionAndPlanStandInWords) {
  EXPECT_TRUE(lead().startsWith(QStringLiteral("Look first for"))) << lead().toStdString();
  EXPECT_FALSE(window->findChild<FigureView*>()->accessibleDescription().isEmpty());
  EXPECT_TRUE(find<QLabel>("planWords")->text().contains(QStringLiteral("on average")));
  // No bare figures of probability anywhere.
  EXPECT_FALSE(lead().contains(QLatin1Char('%')));
  if (const char* kept = std::getenv("SW_PICTURES"); kept != nullptr) {
    pictureOf(*window, {1280, 1400}, 1.0).save(QString::fromUtf8(kept) + "/causes.png");
  }
}

TEST_F(CausesPageTest, AnAnswerMovesTheCausesAndIsOnRecord) {
  find<QPushButton>("moreQuestions")->click();
  settle();
  auto* row = window->findChild<QWidget*>(QStringLiteral("tell_braking"));
  ASSERT_NE(row, nullptr);
  QPushButton* only = nullptr;
  for (auto* one : row->findChildren<QPushButton*>()) {
    if (one->text().contains(QStringLiteral("Only then"))) only = one;
  }
  ASSERT_NE(only, nullptr);
  only->click();
  EXPECT_TRUE(comes([&] { return lead().contains(QStringLiteral("disc")); }))
      << lead().toStdString();
  const auto told = workshop::shakeKnown(*state(), *workshop::causesOf(**session->shop())).told;
  EXPECT_TRUE(
      std::any_of(told.begin(), told.end(), [](const auto& one) { return one.answer == 0; }));
}

TEST_F(CausesPageTest, ACheckLeftOutIsNotPlannedAndComesBack) {
  ASSERT_TRUE(comes([&] { return button(QStringLiteral("out_panhard")) != nullptr; }));
  button(QStringLiteral("out_panhard"))->click();
  EXPECT_TRUE(comes([&] { return button(QStringLiteral("out_panhard")) == nullptr; }));
  find<QPushButton>("takeAllBack")->click();
  EXPECT_TRUE(comes([&] { return button(QStringLiteral("out_panhard")) != nullptr; }));
}

TEST_F(CausesPageTest, ChoosingACheckPutsItsStepsIntoTheJob) {
  ASSERT_TRUE(comes([&] { return button(QStringLiteral("make_panhard")) != nullptr; }));
  button(QStringLiteral("make_panhard"))->click();
  settle();
  EXPECT_EQ(window->here().page, PageId::Work);
  EXPECT_TRUE(
      QString::fromStdString(window->here().step).startsWith(QStringLiteral("panhard-check")));
}

}  // namespace
}  // namespace sw::ui
