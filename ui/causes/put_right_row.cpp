// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/causes/put_right_row.h"

#include <QComboBox>
#include <QFormLayout>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include "ui/common/page_parts.h"
#include "ui/common/text_label.h"
#include "ui/common/word_button.h"

namespace sw::ui {

PutRightRow::PutRightRow(ShopSession& session, const diagnosis::CauseFile& file, QWidget* parent)
    : QWidget(parent),
      m_session(session),
      m_cause(comboBox("rightCause", tr("What was put right"), this)),
      m_problem(new TextLabel(TextRole::Strong, this)) {
  m_cause->addItem(tr("choose"), QString());
  for (std::size_t i = 0; i < file.table.causes.size(); ++i) {
    const auto& cause = file.table.causes[i];
    m_keys.push_back(cause.key);
    if (i == file.table.other) continue;
    m_cause->addItem(QString::fromStdString(cause.name), QString::fromStdString(cause.key));
  }
  m_problem->setObjectName(QStringLiteral("rightProblem"));
  m_problem->hide();
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(
      new TextLabel(tr("Put right otherwise, here or elsewhere"), TextRole::Heading, this));
  auto* form = fieldForm();
  addRow(form, tr("What was put &right"), m_cause);
  m_how = addLine(form, "rightHow", tr("What was &done"),
                  tr("like: both front wheels balanced at the tyre shop"), this);
  column->addLayout(form);
  column->addWidget(m_problem);
  auto* button = new WordButton("putRight", tr("It is put right"), this);
  column->addWidget(button, 0, Qt::AlignLeft);
  connect(button, &QPushButton::clicked, this, &PutRightRow::record);
  connect(m_how, &QLineEdit::returnPressed, this, &PutRightRow::record);
}

void PutRightRow::show(model::JobId job, const workshop::ShakeKnown& known) {
  const bool other = job != m_job;
  m_job = job;
  if (other) m_how->clear();
  if (!other && m_cause->currentIndex() > 0) return;
  m_cause->setCurrentIndex(0);
  for (const auto& made : known.made) {
    for (const std::size_t cause : made.found) {
      if (known.isPutRight(cause)) continue;
      m_cause->setCurrentIndex(m_cause->findData(QString::fromStdString(m_keys[cause])));
      return;
    }
  }
}

void PutRightRow::record() {
  m_problem->hide();
  workshop::PutCauseRight action;
  action.cause = m_cause->currentData().toString().toStdString();
  action.how = m_how->text().trimmed().toStdString();
  if (action.cause.empty()) {
    m_problem->say(tr("What was put right: choose it in the list."));
    m_cause->setFocus();
    return;
  }
  if (action.how.empty()) {
    m_problem->say(tr("What was done: type it in a few words; the sheet shows them."));
    m_how->setFocus();
    return;
  }
  if (!m_session.perform(action, {m_job, {}, {}, {}, {}})) return;
  m_how->clear();
  m_cause->setCurrentIndex(0);
}

}  // namespace sw::ui
