// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/common/choice_row.h"

#include <QButtonGroup>
#include <QVBoxLayout>

#include "ui/common/flow_layout.h"
#include "ui/common/text_label.h"
#include "ui/common/word_button.h"

namespace sw::ui {

ChoiceRow::ChoiceRow(const QString& name, const QString& question,
                     const std::vector<Answer>& answers, QWidget* parent)
    : QWidget(parent), m_group(new QButtonGroup(this)) {
  setObjectName(name);
  auto* label = new TextLabel(question, TextRole::Body, this);
  auto* row = new FlowLayout;
  for (const auto& [word, text] : answers) {
    auto* button = new WordButton(text, this);
    button->setObjectName(name + QLatin1Char('_') + QString::fromStdString(word));
    button->setAccessibleName(question + QLatin1Char(' ') + text);
    button->setCheckable(true);
    button->setAutoDefault(false);
    m_group->addButton(button, static_cast<int>(m_words.size()));
    m_words.push_back(word);
    row->addWidget(button);
  }
  // Not "clicked": assistive tools switch a button without a click.
  connect(m_group, &QButtonGroup::idToggled, this, [this](int, bool on) {
    if (on && !m_quiet) emit answered();
  });
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(label);
  column->addLayout(row);
}

std::optional<std::string> ChoiceRow::chosen() const {
  const int id = m_group->checkedId();
  if (id < 0) return std::nullopt;
  return m_words.at(static_cast<std::size_t>(id));
}

void ChoiceRow::choose(const std::string& word) {
  m_quiet = true;
  for (std::size_t i = 0; i < m_words.size(); ++i) {
    if (m_words[i] == word) m_group->button(static_cast<int>(i))->setChecked(true);
  }
  m_quiet = false;
}

void ChoiceRow::clear() {
  m_group->setExclusive(false);
  for (auto* button : m_group->buttons()) button->setChecked(false);
  m_group->setExclusive(true);
}

void ChoiceRow::withhold(const std::string& word) {
  for (std::size_t i = 0; i < m_words.size(); ++i) {
    m_group->button(static_cast<int>(i))->setVisible(m_words[i] != word);
  }
}

void ChoiceRow::leaveToSpace() {
  for (auto* button : m_group->buttons()) button->setProperty(kSpaceOnly, true);
}

void ChoiceRow::offerAll() {
  for (auto* button : m_group->buttons()) button->show();
}

}  // namespace sw::ui
