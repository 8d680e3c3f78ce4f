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
  /// The numbers in use.
  std::shared_ptr<const diagnosis::CauseFile> file() {
    const auto learning = *session->learning();
    return {learning, &learning->inUse};
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

TEST_F(CausesPageTest, ChancesStandAsFiguresOnRequestOnly) {
  find<QPushButton>("causesWhy")->click();
  auto* because = find<QLabel>("causesBecause");
  EXPECT_FALSE(because->text().contains(QStringLiteral("of 100")));
  EXPECT_FALSE(
      window->findChild<FigureView*>()->accessibleDescription().contains(QStringLiteral("of 100")));
  find<QPushButton>("causesFigures")->click();
  settle();
  EXPECT_TRUE(
      window->findChild<FigureView*>()->accessibleDescription().contains(QStringLiteral("of 100")));
}

TEST_F(CausesPageTest, WhatWasPutRightOtherwiseFallsAway) {
  find<QPushButton>("putRight")->click();
  EXPECT_TRUE(find<QLabel>("rightProblem")->isVisible());  // neither what nor how
  auto* cause = find<QComboBox>("rightCause");
  const QString before = lead();
  const auto first = workshop::checksAhead(*state(), *file(), {})->ranking.causes.front();
  const auto leading = file()->table.causes[first.cause];
  cause->setCurrentIndex(cause->findData(QString::fromStdString(leading.key)));
  find<QPushButton>("putRight")->click();
  EXPECT_TRUE(find<QLabel>("rightProblem")->isVisible());  // not how
  find<QLineEdit>("rightHow")->setText(QStringLiteral("renewed at the tyre shop"));
  find<QPushButton>("putRight")->click();
  EXPECT_TRUE(comes([&] { return lead() != before; })) << lead().toStdString();
  EXPECT_FALSE(lead().contains(QString::fromStdString(leading.name)));
  const auto known = workshop::shakeKnown(*state(), *file());
  EXPECT_TRUE(known.isPutRight(first.cause));
}

TEST_F(CausesPageTest, TheNumbersAndWhatJobsTaughtAreOneClickAway) {
  find<QPushButton>("toNumbers")->click();
  settle();
  EXPECT_EQ(window->here().page, PageId::Numbers);
  EXPECT_EQ(window->here().job, number);
  window->go({PageId::Causes, number, {}, {}, {}});
  find<QPushButton>("toLearning")->click();
  settle();
  EXPECT_EQ(window->here().page, PageId::Learning);
}

}  // namespace
}  // namespace sw::ui
