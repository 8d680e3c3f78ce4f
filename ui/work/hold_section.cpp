// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/work/hold_section.h"

#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>
#include <random>

#include "report/quantity_text.h"
#include "ui/common/text_label.h"
#include "ui/common/word_button.h"
#include "units/unit.h"

namespace sw::ui {

namespace {

using procedures::AnswerType;

/// The statement to be answered next; null when the hold is passed.
const procedures::Statement* nextStatement(const workshop::HoldView& hold, const Date& today) {
  if (hold.passed()) return nullptr;
  for (const workshop::StatementView& view : hold.statements) {
    const bool passes = view.answer && view.answer->passes;
    const bool stale = hold.askAgain && (!view.answeredAt || localDate(*view.answeredAt) != today);
    if (!passes || stale) return view.statement;
  }
  return nullptr;
}

QString answerText(const workshop::StatementView& view) {
  for (const procedures::Choice& choice : view.statement->choices) {
    if (choice.word == view.answer->answer) return QString::fromStdString(choice.text);
  }
  return QString::fromStdString(view.answer->answer);
}

}  // namespace

HoldSection::HoldSection(ShopSession& session, QWidget* parent)
    : StepSection(session, "holdSection", parent),
      m_answered(new TextLabel(TextRole::Quiet, this)),
      m_ask(new TextLabel(TextRole::Strong, this)),
      m_why(new TextLabel(TextRole::Body, this)),
      m_choices(new QVBoxLayout),
      m_prompt(new TextLabel(TextRole::Body, this)),
      m_answer(namedField("holdAnswer", tr("What was seen"), this)),
      m_record(new WordButton("recordAnswer", tr("This is what I saw"), this)) {
  m_answered->setObjectName(QStringLiteral("holdAnswered"));
  m_ask->setObjectName(QStringLiteral("holdAsk"));
  m_record->setAutoDefault(false);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(m_ask);
  column->addWidget(m_why);
  column->addLayout(m_choices);
  column->addWidget(m_prompt);
  column->addWidget(m_answer);
  column->addWidget(m_record, 0, Qt::AlignLeft);
  column->addWidget(m_answered);
  connect(m_answer, &QLineEdit::returnPressed, this, &HoldSection::answer);
  connect(m_record, &QPushButton::clicked, this, &HoldSection::answer);
  connect(m_answer, &QLineEdit::textChanged, this, [this](const QString& text) {
    for (std::size_t i = 0; i < m_buttons.size(); ++i) {
      m_buttons[i]->setChecked(text.trimmed() == QString::number(i + 1));
    }
    if (m_statement != nullptr && !text.isEmpty()) m_prompt->say(promptOf(*m_statement));
  });
}

bool HoldSection::suits(const StepContext& context) const {
  return context.definition().hold.has_value();
}

QWidget* HoldSection::firstField() {
  return m_answer;
}

void HoldSection::fill(Showing showing) {
  const workshop::HoldView* hold = context().job->holdAt(context().step);
  if (hold == nullptr) return;
  // Looked at again with nothing new: what is being typed stays.
  const std::size_t entries = context().job->entries.size();
  if (showing == Showing::SameStep && entries == m_entries && m_statement != nullptr) return;
  m_entries = entries;
  const bool noSupport =
      context().definition().hold->key == "support" && !context().job->support.has_value();
  const Date today = localDate(session().workshop().clock().now());
  m_statement = noSupport ? nullptr : nextStatement(*hold, today);
  m_answer->clear();
  clearChoices();
  const bool asks = m_statement != nullptr;
  for (QWidget* widget : {static_cast<QWidget*>(m_answer), static_cast<QWidget*>(m_record)}) {
    widget->setVisible(asks);
    widget->setEnabled(asks && !context().locked());
  }
  m_answer->setPlaceholderText(context().locked() ? context().lockedWhy : QString());
  m_ask->say(asks        ? QString::fromStdString(m_statement->ask)
             : noSupport ? tr("Choose first what carries the vehicle.")
                         : tr("All statements of this hold are answered."));
  m_why->say(asks ? QString::fromStdString(m_statement->why) : QString());
  m_prompt->say({});
  if (asks) showChoices(*m_statement);
  showAnswered(*hold);
}

void HoldSection::clearChoices() {
  for (QPushButton* button : m_buttons) {
    button->hide();
    button->deleteLater();
  }
  m_buttons.clear();
  m_words.clear();
}

QString HoldSection::promptOf(const procedures::Statement& statement) {
  switch (statement.answer) {
    case AnswerType::Choice:
      return tr("Press what you saw, or type its number:");
    case AnswerType::Count:
      return tr("Type how many:");
    case AnswerType::Quantity:
      return tr("Type what stands there, with its unit:");
    case AnswerType::Text:
      break;
  }
  return tr("Type what you saw:");
}

void HoldSection::showChoices(const procedures::Statement& statement) {
  m_prompt->say(promptOf(statement));
  for (const procedures::Choice& choice : statement.choices) m_words.push_back(choice.word);
  // Another order each time: the hand must not learn the place of an answer.
  std::mt19937 random(static_cast<unsigned>(context().job->entries.size()) * 2654435761U +
                      static_cast<unsigned>(context().job->job.value));
  std::shuffle(m_words.begin(), m_words.end(), random);
  for (std::size_t i = 0; i < m_words.size(); ++i) {
    const auto choice =
        std::find_if(statement.choices.begin(), statement.choices.end(),
                     [&](const procedures::Choice& one) { return one.word == m_words[i]; });
    const QString text = QString::fromStdString(choice->text);
    auto* button = new WordButton(tr("%1   %2").arg(i + 1).arg(text), this);
    button->setObjectName(QStringLiteral("choice_") + QString::fromStdString(m_words[i]));
    button->setAccessibleName(button->text());
    button->setCheckable(true);
    button->setAutoDefault(false);
    // By mouse, finger or its number, never by a blank typed on the way through.
    button->setFocusPolicy(Qt::NoFocus);
    button->setEnabled(!context().locked());
    connect(button, &QPushButton::toggled, this, [this, i](bool on) {
      if (!on) return;
      m_answer->setText(QString::number(i + 1));
      m_answer->setFocus();
    });
    m_choices->addWidget(button);
    m_buttons.push_back(button);
    button->show();
  }
}

void HoldSection::showAnswered(const workshop::HoldView& hold) {
  QStringList lines;
  for (const workshop::StatementView& view : hold.statements) {
    if (!view.answer || !view.answeredAt) continue;
    lines += tr("%1 %2 (%3%4)")
                 .arg(QString::fromStdString(view.statement->ask), answerText(view),
                      report::timeText(*view.answeredAt),
                      view.answer->passes ? QString() : tr("; does not pass"));
  }
  m_answered->say(lines.join(QLatin1Char('\n')));
}

std::optional<std::string> HoldSection::answerTyped() {
  const auto text = typedIn(*m_answer);
  if (!text) {
    m_prompt->say(m_words.empty() ? tr("Nothing was typed. Look, then type what you saw:")
                                  : tr("Nothing was chosen. Look, then type its number:"));
    return std::nullopt;
  }
  if (m_words.empty()) return text;
  const int number = QString::fromStdString(*text).toInt();
  if (number < 1 || number > static_cast<int>(m_words.size())) {
    m_prompt->say(tr("Type a number from 1 to %1:").arg(m_words.size()));
    return std::nullopt;
  }
  return m_words[static_cast<std::size_t>(number - 1)];
}

void HoldSection::answer() {
  if (m_statement == nullptr) return;
  const auto seen = answerTyped();
  const bool taken = seen && send(workshop::AnswerHold{m_statement->key, *seen});
  if (taken) return;
  m_answer->setFocus();
  m_answer->selectAll();  // the next try takes its place
}

}  // namespace sw::ui
