// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/causes/causes_questions.h"

#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>

#include "phrasing/cause_words.h"
#include "ui/common/choice_row.h"
#include "ui/common/plain_text.h"
#include "ui/common/text_label.h"
#include "ui/common/word_button.h"

namespace sw::ui {

namespace {

constexpr double kWorthAsking = 0.5;  // minutes
constexpr std::string_view kUnknown = "unknown";

}  // namespace

CausesQuestions::CausesQuestions(const diagnosis::CauseFile& file, QWidget* parent)
    : QWidget(parent),
      m_first(new TextLabel(TextRole::Strong, this)),
      m_more(new WordButton("moreQuestions", tr("All questions"), this)) {
  m_first->setObjectName(QStringLiteral("firstQuestion"));
  m_more->setCheckable(true);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(m_first);
  for (const auto& one : file.table.features) {
    Question question{one.key, {}, nullptr};
    std::vector<ChoiceRow::Answer> answers;
    for (const auto& answer : one.answers) {
      answers.emplace_back(answer.word, text(answer.text));
      question.words.push_back(answer.word);
    }
    answers.emplace_back(kUnknown, tr("Not known"));
    question.row =
        new ChoiceRow(QStringLiteral("tell_") + text(one.key), text(one.ask), answers, this);
    question.row->leaveToSpace();
    column->addWidget(question.row);
    connect(question.row, &ChoiceRow::answered, this,
            [this, key = text(one.key), row = question.row] {
              if (const auto word = row->chosen()) emit answered(key, text(*word));
            });
    m_questions.push_back(std::move(question));
  }
  column->addWidget(m_more, 0, Qt::AlignLeft);
  connect(m_more, &QPushButton::toggled, this, &CausesQuestions::refresh);
}

void CausesQuestions::show(const workshop::ShakeKnown& known, const std::optional<Values>& values) {
  m_known = known;
  m_values = values;
  refresh();
}

QString CausesQuestions::headline(bool asks) const {
  if (!m_values) return tr("Which question is worth asking first is being worked out.");
  if (asks) {
    return tr("Worth asking first: the answer saves about %1")
        .arg(phrasing::workTime(m_values->front().minutes));
  }
  return tr("No question is worth asking before the first check.");
}

void CausesQuestions::refresh() {
  std::optional<std::size_t> best;
  if (m_values && !m_values->empty() && m_values->front().minutes >= kWorthAsking) {
    best = m_values->front().feature;
  }
  m_first->say(headline(best.has_value()));
  for (std::size_t feature = 0; feature < m_questions.size(); ++feature) {
    const Question& question = m_questions[feature];
    question.row->setVisible(m_more->isChecked() || best == feature);
    const auto given =
        std::find_if(m_known.told.begin(), m_known.told.end(),
                     [&](const workshop::ToldAnswer& one) { return one.feature == feature; });
    if (given == m_known.told.end()) {
      question.row->clear();
    } else {
      question.row->choose(question.words[given->answer]);
    }
  }
}

}  // namespace sw::ui
