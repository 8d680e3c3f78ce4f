// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <algorithm>
#include <functional>
#include <map>

#include "ui/work/work_page.h"
#include "units/format.h"
#include "window_fixture.h"
#include "workshop/rules.h"
#include "workshop/step_status.h"

namespace sw::ui {

/// A person at the window who works through steps by keys and buttons alone.
class Hands : public WindowTest {
 protected:
  /// What is read at a step; default: a value inside the limit of the sheet.
  using Figures = std::function<QString(const workshop::StepView&)>;

  [[nodiscard]] SharedJob state() {
    auto job = session->job(number);
    EXPECT_TRUE(job);
    return *job;
  }
  WorkPage& work() { return window->pageAs<WorkPage>(PageId::Work); }

  [[nodiscard]] std::size_t here() {
    const auto step = work().step();
    EXPECT_TRUE(step.has_value());
    return step.value_or(0);
  }
  [[nodiscard]] std::string hereName() { return state()->stepName(here()); }

  /// The visible widget of this name in the work page; null where there is none.
  template <class T>
  T* seen(const QString& name) {
    for (T* widget : work().findChildren<T*>(name)) {
      if (widget->isVisible()) return widget;
    }
    return nullptr;
  }
  bool pressSeen(const QString& name) {
    auto* button = seen<QPushButton>(name);
    if (button == nullptr || !button->isEnabled()) return false;
    // By key: every button answers to the space bar, the choices of a hold to their number.
    button->setFocus();
    QTest::keyClick(button, Qt::Key_Space);
    settle();
    return true;
  }
  void enter(const QString& field, const QString& text) {
    auto* edit = seen<QLineEdit>(field);
    ASSERT_NE(edit, nullptr) << field.toStdString() << " at " << hereName();
    ASSERT_TRUE(edit->isEnabled()) << field.toStdString() << " at " << hereName() << ": "
                                   << edit->placeholderText().toStdString();
    edit->setFocus();
    edit->clear();
    QTest::keyClicks(edit, text);
    QTest::keyClick(edit, Qt::Key_Return);
    settle();
  }

  void goTo(const std::string& step, std::optional<model::Side> side) {
    window->go({PageId::Work, number, {}, step, side});
    settle();
  }

  /// Answers the hold with what passes, typed.
  void answerHold() {
    for (int statement = 0; statement < 4; ++statement) {
      const auto* hold = state()->holdAt(here());
      if (hold == nullptr || hold->passed()) return;
      auto* ask = seen<QLabel>(QStringLiteral("holdAsk"));
      ASSERT_NE(ask, nullptr);
      for (const auto& view : hold->statements) {
        if (QString::fromStdString(view.statement->ask) != ask->text()) continue;
        enter(QStringLiteral("holdAnswer"), passing(*view.statement));
        break;
      }
    }
  }
  QString passing(const procedures::Statement& statement) {
    using procedures::AnswerType;
    for (const auto& choice : statement.choices) {
      if (!choice.passes) continue;
      auto* button =
          seen<QPushButton>(QStringLiteral("choice_") + QString::fromStdString(choice.word));
      EXPECT_NE(button, nullptr) << choice.word;
      return button == nullptr ? QString() : button->text().section(QLatin1Char(' '), 0, 0);
    }
    if (statement.answer == AnswerType::Count) {
      return QString::number(std::max<std::int64_t>(1, statement.atLeast.value_or(1)));
    }
    if (statement.check == "wheel_nut_torque") return specFigure("wheel_nuts");
    return QStringLiteral("1500 kg");
  }
  QString specFigure(const std::string& key) {
    const auto* spec = (*session->shop())->spec(state()->opened.vehicle, key);
    return spec != nullptr && spec->fact.value ? QString::fromStdString(spec->fact.value->text())
                                               : QString();
  }

  /// Does what the panel asks for, whatever it is.
  void doStep() {
    const procedures::Step& step = *state()->steps[here()].step;
    const workshop::StepView view = state()->steps[here()];
    const std::string name = hereName();
    clock.advanceMilliseconds(60'000);
    if (step.hold) {
      if (!state()->support) pressSeen(QStringLiteral("support_stands"));
      return answerHold();
    }
    if (step.id == "choose_support") {
      pressSeen(QStringLiteral("support_stands"));
      return;
    }
    for (const auto& part : step.parts) {
      if (part.singleUse) pressSeen(QStringLiteral("part_") + QString::fromStdString(part.key));
    }
    if (step.waitMinutes) {
      pressSeen(QStringLiteral("startTimer"));
      clock.advanceMilliseconds(static_cast<std::int64_t>((*step.waitMinutes + 1) * 60'000));
      window->go({PageId::Work, number, {}, {}, {}});
    }
    if (step.shimPack) enter(QStringLiteral("packShims"), pack(view));
    if (step.measure) enter(QStringLiteral("readings"), figures(view));
    if (step.torque) torque(view);
    for (const auto& question : step.observe) {
      pressSeen(QStringLiteral("observe_") + QString::fromStdString(question.key) +
                QLatin1Char('_') + QString::fromStdString(question.choices.front().word));
    }
    if (step.roadTest) drive(step.roadTest->when);
    if (work().step().has_value() && hereName() == name && !state()->steps[here()].done()) {
      pressSeen(QStringLiteral("stepDone"));
    }
  }
  virtual QString figures(const workshop::StepView& view) {
    const auto& measure = *view.step->measure;
    const auto count = measure.planned + measure.settling;
    const QString one = measure.quantity == QuantityKind::Force      ? force(view)
                        : measure.quantity == QuantityKind::Pressure ? QStringLiteral("2.0 bar")
                                                                     : length(measure);
    QStringList all;
    for (std::int64_t i = 0; i < count; ++i) all += one;
    return all.join(QStringLiteral("; "));
  }
  virtual QString force(const workshop::StepView&) { return QStringLiteral("20 N"); }
  static QString length(const procedures::MeasureSpec& measure) {
    if (measure.limit == "wheel_bearing.end_float") return QStringLiteral("0.05 mm");
    if (!measure.limit.empty()) return QStringLiteral("0.01 mm");
    const bool rule = !measure.instruments.empty() &&
                      measure.instruments.front() == model::InstrumentKind::SteelRule;
    return rule ? QStringLiteral("155 mm") : QStringLiteral("0.35 mm");
  }
  virtual QString pack(const workshop::StepView&) {
    auto* field = seen<QLineEdit>(QStringLiteral("packShims"));
    const QString offered = field == nullptr ? QString() : field->text();
    return offered.isEmpty() ? QStringLiteral("0.50 + 0.25") : offered;
  }
  virtual void torque(const workshop::StepView& view) {
    for (std::size_t stage = 0; stage < 4 && !state()->steps[here()].done(); ++stage) {
      if (!pressSeen(QStringLiteral("recordTorque"))) return;
      if (state()->stepName(here()) != stepNameOf(view)) return;
    }
  }
  std::string stepNameOf(const workshop::StepView& view) {
    for (std::size_t i = 0; i < state()->steps.size(); ++i) {
      const auto& one = state()->steps[i];
      if (one.step == view.step && one.side == view.side && one.run == view.run) {
        return state()->stepName(i);
      }
    }
    return {};
  }
  virtual void drive(model::RoadTestWhen when) {
    const bool shakes = when == model::RoadTestWhen::Before;
    if (shakes) {
      pressSeen(QStringLiteral("shake_same"));
      pressSeen(QStringLiteral("speedSource_dial"));
      seen<QLineEdit>(QStringLiteral("roadOnset"))->setText(QStringLiteral("72 km/h"));
    } else {
      pressSeen(QStringLiteral("shake_none"));
    }
    pressSeen(QStringLiteral("selfReturn_returns"));
    pressSeen(QStringLiteral("recordRoadTest"));
  }

  /// Works on, step after step, until `stop` says so or nothing is ready any more.
  void workOn(const std::function<bool(const workshop::StepView&)>& stop = {}) {
    for (int count = 0; count < 1000; ++count) {
      const auto lines = workshop::stepLines(*state(), clock.now());
      const auto next = workshop::nextReadyStep(*state(), lines, std::nullopt, std::nullopt);
      if (!next) return;
      const workshop::StepView view = state()->steps[*next];
      if (stop && stop(view)) return;
      const std::string name = state()->stepName(*next);
      if (hereName() != name) goTo(whereOf(*state(), *next).step, view.side);
      ASSERT_EQ(hereName(), name);
      const std::size_t before = state()->entries.size();
      const Date day = localDate(clock.now());
      doStep();
      if (localDate(clock.now()) != day) {  // a new day asks for the support first
        window->go({PageId::Work, number, {}, {}, {}});
        continue;
      }
      ASSERT_GT(state()->entries.size(), before)
          << name << ": nothing was recorded; " << window->message().toStdString();
    }
    FAIL() << "the job never ends";
  }

  /// What is still open and why, for the message of a test that stalls.
  std::string openSteps() {
    std::string text;
    const auto lines = workshop::stepLines(*state(), clock.now());
    for (std::size_t i = 0; i < lines.size(); ++i) {
      if (!workshop::stillOpen(*state(), i)) continue;
      text += state()->stepName(i) + " " + std::string(wordOf(lines[i].status));
      for (const auto& refusal : lines[i].against)
        text += " <- " + refusal.key + " " + refusal.step;
      text += "\n";
    }
    return text;
  }

  model::JobId number{1};
};

}  // namespace sw::ui
