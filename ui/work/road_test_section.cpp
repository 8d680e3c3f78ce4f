// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/work/road_test_section.h"

#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include "phrasing/names.h"
#include "report/quantity_text.h"
#include "ui/common/choice_row.h"
#include "ui/common/form.h"
#include "ui/common/text_label.h"
#include "ui/common/word_button.h"

namespace sw::ui {

namespace {

template <HasWords E>
std::vector<ChoiceRow::Answer> answersOf() {
  std::vector<ChoiceRow::Answer> answers;
  for (const auto& [value, word] : Words<E>::table) {
    answers.emplace_back(word, phrasing::nameOf(value));
  }
  return answers;
}

}  // namespace

RoadTestSection::RoadTestSection(ShopSession& session, QWidget* parent)
    : StepSection(session, "roadTestSection", parent),
      m_shake(new ChoiceRow(QStringLiteral("shake"), tr("Does it shake?"),
                            answersOf<model::ShakeResult>(), this)),
      m_onset(namedField("roadOnset", tr("Speed at which it starts"), this)),
      m_release(namedField("roadRelease", tr("Speed at which it stops"), this)),
      m_source(new ChoiceRow(QStringLiteral("speedSource"), tr("Where was the speed read?"),
                             answersOf<model::SpeedSource>(), this)),
      m_return(new ChoiceRow(
          QStringLiteral("selfReturn"), tr("Does the steering come back by itself after a bend?"),
          {{"returns", tr("comes back")}, {"sluggish", tr("sluggish")}, {"sticks", tr("sticks")}},
          this)),
      m_words(namedField("roadWords", tr("In your own words"), this)),
      m_problem(new TextLabel(TextRole::Strong, this)),
      m_record(new WordButton(tr("Record the drive"), this)) {
  m_problem->setObjectName(QStringLiteral("roadProblem"));
  m_record->setObjectName(QStringLiteral("recordRoadTest"));
  guard(m_onset, tr("e.g. 72 km/h, if it shakes"));
  guard(m_release, tr("e.g. 60 km/h, if it shakes"));
  guard(m_words, tr("may be left out"));
  auto* form = newForm();
  form->addRow(tr("Starts at"), m_onset);
  form->addRow(tr("Stops at"), m_release);
  auto* words = newForm();
  words->addRow(tr("Words"), m_words);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(m_shake);
  column->addLayout(form);
  column->addWidget(m_source);
  column->addWidget(m_return);
  column->addLayout(words);
  column->addWidget(m_problem);
  column->addWidget(m_record, 0, Qt::AlignLeft);
  connect(m_record, &QPushButton::clicked, this, &RoadTestSection::record);
}

bool RoadTestSection::suits(const StepContext& context) const {
  return context.definition().roadTest.has_value();
}

QWidget* RoadTestSection::firstField() {
  return m_shake->findChild<QPushButton*>();
}

void RoadTestSection::fill(Showing showing) {
  if (showing == Showing::OtherStep) {
    for (ChoiceRow* row : {m_shake, m_source, m_return}) row->clear();
    m_problem->say({});
  }
  for (QWidget* widget : {static_cast<QWidget*>(m_shake), static_cast<QWidget*>(m_source),
                          static_cast<QWidget*>(m_return), static_cast<QWidget*>(m_record)}) {
    widget->setEnabled(!context().locked());
  }
}

void RoadTestSection::record() {
  workshop::RecordRoadTest action;
  const auto shake = fromWord<model::ShakeResult>(m_shake->chosen().value_or(""));
  m_problem->say(shake ? QString() : tr("Say first whether it shakes."));
  if (!shake) {
    m_shake->findChild<QPushButton*>()->setFocus();
    return;
  }
  action.shake = *shake;
  action.onset = typedIn(*m_onset);
  action.release = typedIn(*m_release);
  if (const auto source = m_source->chosen()) {
    action.speedSource = fromWord<model::SpeedSource>(*source);
  }
  action.selfReturn = m_return->chosen();
  action.text = typedIn(*m_words);
  if (!send(action)) return;
  for (QLineEdit* field : {m_onset, m_release, m_words}) field->clear();
}

WaitSection::WaitSection(ShopSession& session, QWidget* parent)
    : StepSection(session, "waitSection", parent),
      m_left(new TextLabel(TextRole::Strong, this)),
      m_time(namedField("waitTime", tr("How long it takes"), this)),
      m_start(new WordButton(tr("Start the clock"), this)) {
  m_start->setObjectName(QStringLiteral("startTimer"));
  guard(m_time, tr("the step's own time"));
  auto* form = newForm();
  form->addRow(tr("Time"), m_time);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(m_left);
  column->addLayout(form);
  column->addWidget(m_start, 0, Qt::AlignLeft);
  connect(m_start, &QPushButton::clicked, this, [this] {
    if (send(workshop::StartTimer{typedIn(*m_time)})) m_time->clear();
  });
}

bool WaitSection::suits(const StepContext& context) const {
  return context.definition().waitMinutes.has_value();
}

QWidget* WaitSection::firstField() {
  return m_start;
}

void WaitSection::fill(Showing) {
  m_start->setEnabled(!context().locked());
  m_left->say(tr("It takes %1.").arg(report::minutesText(*context().definition().waitMinutes)));
  for (const workshop::TimerView& timer : context().job->timers) {
    if (timer.step != context().step) continue;
    const auto now = session().workshop().clock().now();
    const double gone =
        static_cast<double>(now.utcMilliseconds - timer.startedAt.utcMilliseconds) / 60'000.0;
    m_left->say(gone >= timer.minutes
                    ? tr("The time is up: press Done.")
                    : tr("Started %1; %2 to go. The clock runs on while the window is closed.")
                          .arg(report::timeText(timer.startedAt),
                               report::minutesText(timer.minutes - gone)));
  }
}

}  // namespace sw::ui
