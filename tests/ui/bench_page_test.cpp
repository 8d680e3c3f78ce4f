// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/bench/bench_page.h"

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <nlohmann/json.hpp>

#include "compute/calculation.h"
#include "report/job_sheet.h"
#include "ui/bench/bench_panel.h"
#include "ui/bench/figure_view.h"
#include "ui/pages.h"
#include "window_fixture.h"

namespace sw::ui {
namespace {

class BenchPageTest : public WindowTest {
 protected:
  void SetUp() override {
    makeDemoBook();
    openWindow();
  }
  void openBench(const std::string& name = {}) {
    Goal goal{PageId::Bench, {}, {}, {}, {}};
    goal.calculation = name;
    window->go(goal);
    settle();
  }
  BenchPanel* panel() { return window->findChild<BenchPanel*>(); }
  QString state() {
    auto* label = find<QLabel>("benchState");
    return label->isHidden() ? QString() : label->text();
  }
  [[nodiscard]] QStringList offered() {
    QStringList names;
    auto* list = find<QListWidget>("benchList");
    for (int row = 0; row < list->count(); ++row) {
      const auto* item = list->item(row);
      const QString name = item->data(Qt::UserRole).toString();
      if (!item->isHidden() && !name.isEmpty()) names += name;
    }
    return names;
  }
  void type(const char* field, const char* text) {
    auto* edit = find<QLineEdit>(field);
    edit->clear();
    QTest::keyClicks(edit, QString::fromUtf8(text));
    settle();
  }
  static constexpr model::JobId kJob{12};
};

TEST_F(BenchPageTest, AKeyOpensItAndAFewLettersFind) {
  QTest::keyClick(window.get(), Qt::Key_B, Qt::ControlModifier);
  settle();
  EXPECT_EQ(window->here().page, PageId::Bench);
  auto* search = find<QLineEdit>("benchFind");
  EXPECT_TRUE(search->hasFocus());
  QTest::keyClicks(search, QStringLiteral("shim pack"));
  EXPECT_EQ(offered(), (QStringList{QStringLiteral("shim-pack"), QStringLiteral("first-pack")}));
  QTest::keyClick(search, Qt::Key_Return);
  settle();
  EXPECT_TRUE(state().startsWith(QStringLiteral("Still needed: Layout")));
  QTest::keyClicks(search, QStringLiteral("zz"));
  EXPECT_TRUE(offered().isEmpty());
}

TEST_F(BenchPageTest, EveryCalculationTakesItsExampleAndAnswersInWords) {
  for (const auto& calculation : compute::calculations()) {
    SCOPED_TRACE(std::string(calculation.name));
    openBench(std::string(calculation.name));
    ASSERT_NE(panel(), nullptr);
    find<QPushButton>("benchExample")->click();
    settle();
    EXPECT_EQ(state().toStdString(), "");
    EXPECT_FALSE(window->findChild<QWidget*>(QStringLiteral("benchAnswer"))->isHidden());
    // What stands in the form gives the answer of the example.
    const auto example = model::parseJson(calculation.describe().exampleInput).value();
    const auto fromForm = compute::evaluate(calculation, panel()->input());
    ASSERT_TRUE(fromForm) << fromForm.error().key;
    EXPECT_EQ(fromForm->at("result"), compute::evaluate(calculation, example)->at("result"));
    find<QPushButton>("benchEmpty")->click();
    settle();
    EXPECT_TRUE(panel()->input().empty()) << panel()->input().dump();
  }
}

TEST_F(BenchPageTest, TheAnswerFollowsWhatIsTyped) {
  openBench("starting-force");
  EXPECT_EQ(state(), QStringLiteral("Still needed: Arm"));
  find<QPushButton>("benchMore")->click();
  type("bench:/arm", "200 mm");
  type("bench:/force", "10 N");
  EXPECT_EQ(state(), QString());
  const auto hasText = [&](const char* text) {
    const auto labels = panel()->findChildren<QLabel*>();
    return std::any_of(labels.begin(), labels.end(), [&](const QLabel* label) {
      return label->text() == QString::fromLatin1(text);
    });
  };
  EXPECT_TRUE(hasText("2 N m"));
  type("bench:/force", "1 kg");
  EXPECT_TRUE(hasText("1.961 N m"));  // 9.80665 N x 0.2 m
  type("bench:/force", "twelve");
  EXPECT_TRUE(state().contains(QStringLiteral("twelve"))) << state().toStdString();
}

TEST_F(BenchPageTest, TheMethodCardStandsBesideTheFormBeforeAnythingIsTyped) {
  openBench("starting-force");
  auto* card = find<QWidget>("benchMethod");
  const auto shows = [&](const char* name, const char* text) {
    const auto labels = card->findChildren<QLabel*>(QString::fromLatin1(name));
    return std::any_of(labels.begin(), labels.end(), [&](const QLabel* label) {
      QString shown = label->text();
      shown.replace(QChar::Nbsp, QLatin1Char(' '));
      return label->isVisible() && shown.contains(QString::fromUtf8(text));
    });
  };
  EXPECT_TRUE(shows("benchFormula", "torque = square force × arm"));
  EXPECT_TRUE(shows("benchAssumption", "Not for working out a bearing preload"));
}

TEST_F(BenchPageTest, NoWordOfACalculationIsCutInANarrowWindow) {
  window->resize(480, 800);
  for (const auto& calculation : compute::calculations()) {
    SCOPED_TRACE(std::string(calculation.name));
    openBench(std::string(calculation.name));
    for (const QLabel* label : panel()->findChildren<QLabel*>()) {
      if (!label->isVisible()) continue;
      const bool wraps = label->wordWrap();
      const QSize hint = label->sizeHint();
      EXPECT_GE(label->height(), wraps ? label->heightForWidth(label->width()) : hint.height())
          << label->text().toStdString();
      EXPECT_TRUE(wraps || label->width() >= hint.width()) << label->text().toStdString();
      const QRect here(label->mapTo(panel(), QPoint(0, 0)), label->size());
      EXPECT_LE(here.right(), panel()->width()) << label->text().toStdString();
    }
  }
}

TEST_F(BenchPageTest, WhatWasTypedIsThereAfterARestart) {
  openBench("toe");
  openBench("starting-force");
  type("bench:/arm", "185 mm");
  openWindow();
  openBench("starting-force");
  EXPECT_EQ(find<QLineEdit>("bench:/arm")->text(), QStringLiteral("185 mm"));
}

TEST_F(BenchPageTest, ThePictureOfTheShimsAppearsWithThePulls) {
  openBench("shim-pack");
  find<QPushButton>("benchExample")->click();
  settle();
  auto* picture = window->findChild<FigureView*>();
  EXPECT_FALSE(picture->isHidden());
  EXPECT_FALSE(picture->accessibleDescription().isEmpty());
  if (const char* kept = std::getenv("SW_PICTURES"); kept != nullptr) {
    pictureOf(*window, {1500, 950}, 1.0).save(QString::fromUtf8(kept) + "/bench-shims.png");
  }
  find<QPushButton>("benchEmpty")->click();
  settle();
  EXPECT_TRUE(window->findChild<QWidget*>(QStringLiteral("benchAnswer"))->isHidden());
}

TEST_F(BenchPageTest, PutIntoTheJobItStandsOnTheSheet) {
  Goal goal{PageId::Bench, kJob, {}, {}, {}};
  goal.calculation = "starting-force";
  window->go(goal);
  settle();
  session->setPerson("MT");
  find<QPushButton>("benchMore")->click();
  type("bench:/arm", "200 mm");
  type("bench:/force", "10 N");
  type("benchRemark", "left, dressed");
  find<QPushButton>("benchPut")->click();
  settle();
  const auto job = session->job(kJob);
  ASSERT_TRUE(job);
  int found = 0;
  for (const auto* entry : (*job)->valid) {
    const auto* fact = model::as<model::Calculated>(*entry);
    if (fact == nullptr) continue;
    ++found;
    EXPECT_EQ(fact->calculation, "starting-force");
    EXPECT_EQ(fact->remark, "left, dressed");
    EXPECT_NE(fact->answer.find("\"2 N m\""), std::string::npos) << fact->answer;
  }
  EXPECT_EQ(found, 1);
}

TEST_F(BenchPageTest, LinesAreAddedAndTakenAway) {
  openBench("first-pack");
  find<QPushButton>("benchMore:/shims")->click();
  settle();
  type("bench:/shims/0/thickness", "0.1 mm");
  type("bench:/shims/1/thickness", "0.2 mm");
  EXPECT_EQ(panel()->input().at("shims").size(), 2U);
  find<QPushButton>("benchLess:/shims/0")->click();
  settle();
  ASSERT_EQ(panel()->input().at("shims").size(), 1U);
  EXPECT_EQ(panel()->input().at("shims").at(0).at("thickness"), "0.2 mm");
}

TEST_F(BenchPageTest, AStepWorksOutItsPackAndOpensTheBenchFilledIn) {
  Goal goal{PageId::Work, model::JobId{11}, {}, "fit-shims-and-pull/fit_pack", model::Side::Left};
  window->go(goal);
  settle();
  const QString words = find<QLabel>("benchWords")->text();
  EXPECT_TRUE(words.startsWith(QStringLiteral("Fit 0.800 mm"))) << words.toStdString();
  auto* fold = find<QPushButton>("benchFold");
  fold->click();
  settle();
  EXPECT_FALSE(window->findChild<FigureView*>()->isHidden());
  find<QPushButton>("toBench:shim-pack")->click();
  settle();
  EXPECT_EQ(window->here().page, PageId::Bench);
  EXPECT_EQ(panel()->input().at("layout"), "inner");
  EXPECT_EQ(panel()->input().at("measured").size(), 1U);
  find<QPushButton>("benchBack")->click();
  settle();
  EXPECT_EQ(window->here().page, PageId::Work);
  EXPECT_EQ(window->here().step, "fit-shims-and-pull/fit_pack");
}

}  // namespace
}  // namespace sw::ui
