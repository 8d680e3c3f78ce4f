// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/work/reason_row.h"

#include <QKeyEvent>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include "ui/common/flow_layout.h"
#include "ui/common/text_label.h"
#include "ui/work/step_section.h"

namespace sw::ui {

ReasonRow::ReasonRow(const QString& name, QWidget* parent)
    : QWidget(parent),
      m_question(new TextLabel(TextRole::Strong, this)),
      m_words(namedField("words", tr("In words"), this)) {
  setObjectName(name);
  m_words->setObjectName(name + QStringLiteral("Words"));
  auto* record = new QPushButton(tr("Record"), this);
  record->setObjectName(name + QStringLiteral("Record"));
  m_other = new QPushButton(this);
  m_other->setObjectName(name + QStringLiteral("Other"));
  auto* back = new QPushButton(tr("Leave it"), this);
  back->setObjectName(name + QStringLiteral("Leave"));
  auto* row = new FlowLayout;
  row->addWidget(record);
  row->addWidget(m_other);
  row->addWidget(back);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(m_question);
  column->addWidget(m_words);
  column->addLayout(row);
  connect(record, &QPushButton::clicked, this, &ReasonRow::accept);
  connect(m_other, &QPushButton::clicked, this, [this] {
    m_otherWay = true;
    accept();
  });
  connect(m_words, &QLineEdit::returnPressed, this, &ReasonRow::accept);
  connect(back, &QPushButton::clicked, this, &ReasonRow::leave);
  connect(m_words, &QLineEdit::textEdited, this, [this](const QString& text) {
    if (m_keeper) m_keeper(text);
  });
  hide();
}

void ReasonRow::ask(const QString& question, const QString& placeholder,
                    std::function<bool(const std::string&)> then) {
  m_question->say(question);
  m_words->setPlaceholderText(placeholder);
  m_words->setAccessibleName(question);
  m_words->clear();
  m_then = std::move(then);
  m_keeper = {};
  m_otherWay = false;
  m_other->hide();
  show();
  m_words->setFocus();
  emit asked();
}

void ReasonRow::keep(const QString& text, std::function<void(const QString&)> keeper) {
  m_words->setText(text);
  m_keeper = std::move(keeper);
}

void ReasonRow::leave() {
  if (m_keeper) m_keeper({});
  close();
  emit finished();
}

void ReasonRow::keyPressEvent(QKeyEvent* event) {
  if (event->key() != Qt::Key_Escape) return QWidget::keyPressEvent(event);
  leave();
}

void ReasonRow::offer(const QString& otherWay) {
  m_other->setText(otherWay);
  m_other->setAccessibleName(otherWay);
  m_other->show();
}

void ReasonRow::close() {
  m_then = {};
  hide();
}

void ReasonRow::accept() {
  const auto words = typedIn(*m_words);
  if (!words) {
    m_words->setFocus();
    return;
  }
  // Hidden before the page is shown anew.
  const auto then = std::move(m_then);
  hide();
  if (then && !then(*words)) {
    m_then = then;
    show();
    m_words->setFocus();
    return;
  }
  if (m_keeper) m_keeper({});
  emit finished();
}

}  // namespace sw::ui
