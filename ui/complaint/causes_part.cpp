// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/complaint/causes_part.h"

#include <QFormLayout>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include "report/quantity_text.h"
#include "report/wording.h"
#include "ui/common/choice_row.h"
#include "ui/common/flow_layout.h"
#include "ui/common/page_parts.h"
#include "ui/common/text_label.h"
#include "ui/common/word_button.h"

namespace sw::ui {

CausesPart::CausesPart(ShopSession& session, QWidget* parent)
    : QWidget(parent), m_session(session), m_fields(new FormFields(this)), m_list(new QVBoxLayout) {
  makeFields();
  layOut();
  connect(m_add, &QPushButton::clicked, this, &CausesPart::add);
  connect(m_rank, &QPushButton::clicked, this, &CausesPart::rankWanted);
  connect(m_fields, &FormFields::entered, this, &CausesPart::add);
  connect(m_fields, &FormFields::settled, this,
          [this] { m_session.keepDraft(place(), m_fields->draft()); });
}

void CausesPart::makeFields() {
  m_none =
      new TextLabel(tr("None yet. What somebody looked at before need not be looked at again."),
                    TextRole::Body, this);
  m_cause = lineEdit("cause", tr("Cause"), tr("like: wheel balance"), this);
  m_result = new ChoiceRow(QStringLiteral("causeResult"), tr("What came of it?"),
                           {{"ruled_out", tr("ruled out")}, {"found", tr("found")}}, this);
  m_how =
      lineEdit("causeHow", tr("How it was checked"), tr("like: wheels swapped, no change"), this);
  m_fields->add("cause", m_cause);
  m_fields->add("excluded", m_result);
  m_fields->add("how", m_how);
  m_problem = new TextLabel(TextRole::Strong, this);
  m_problem->setObjectName(QStringLiteral("causeProblem"));
  m_problem->hide();
  m_add = new QPushButton(tr("&Add the cause"), this);
  m_add->setObjectName(QStringLiteral("addCause"));
  m_rank = new WordButton("rankCauses", tr("What makes it shake, and which check next"), this);
}

void CausesPart::layOut() {
  const auto formOf = [](const QString& label, QLineEdit* edit) {
    auto* form = fieldForm();
    addRow(form, label, edit);
    return form;
  };
  auto* buttons = new FlowLayout;
  buttons->addWidget(m_add);
  buttons->addWidget(m_rank);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(new TextLabel(tr("Causes looked at"), TextRole::Heading, this));
  column->addWidget(m_none);
  column->addLayout(m_list);
  column->addLayout(formOf(tr("&Cause"), m_cause));
  column->addWidget(m_result);
  column->addLayout(formOf(tr("How it was chec&ked"), m_how));
  column->addWidget(m_problem);
  column->addLayout(buttons);
}

QString CausesPart::place() const {
  return QStringLiteral("job/%1/cause").arg(m_job.value);
}

void CausesPart::show(model::JobId job) {
  m_job = job;
  m_fields->show({});
  m_fields->takeDraft(m_session.draft(place()));
  m_problem->hide();
  refresh();
}

QString CausesPart::causeText(const model::Entry& entry, const model::CauseChecked& cause) const {
  const QString result = cause.excluded ? tr("ruled out") : tr("found");
  QString text = report::capitalised(report::humanWord(cause.cause)) +
                 report::sideSuffix(entry.side) + QStringLiteral(": ") + result;
  if (!cause.how.empty()) text += QStringLiteral(" – ") + report::fromUtf8(cause.how);
  QStringList by;
  const auto shop = m_session.shop();
  const auto* person = shop && entry.by ? (*shop)->revision<model::Person>(*entry.by) : nullptr;
  if (person != nullptr) by += report::fromUtf8(person->initials);
  by += report::dateText(entry.doneAt);
  return text + QStringLiteral(" (") + by.join(QStringLiteral(", ")) + QStringLiteral(")");
}

void CausesPart::refresh() {
  while (QLayoutItem* item = m_list->takeAt(0)) {
    delete item->widget();
    delete item;
  }
  const auto job = m_session.job(m_job);
  if (!job) return;
  for (const model::Entry* entry : (*job)->valid) {
    const auto* cause = model::as<model::CauseChecked>(*entry);
    if (cause == nullptr) continue;
    auto* label = new TextLabel(causeText(*entry, *cause),
                                cause->excluded ? TextRole::Body : TextRole::Strong, this);
    label->setObjectName(QStringLiteral("causeLine"));
    m_list->addWidget(label);
  }
  m_none->setVisible(m_list->isEmpty());
}

void CausesPart::add() {
  m_problem->hide();
  workshop::CheckCause action;
  action.cause = m_fields->text("cause");
  action.how = m_fields->text("how");
  const auto result = m_result->chosen();
  if (action.cause.empty() || !result) {
    m_problem->say(action.cause.empty() ? tr("Cause: say what was looked at.")
                                        : tr("Say whether it was ruled out or found."));
    m_fields->focus(action.cause.empty() ? "cause" : "excluded");
    return;
  }
  action.excluded = *result == "ruled_out";
  const auto outcome = m_session.perform(action, {m_job, {}, {}, {}, {}});
  if (!outcome) {
    m_fields->focus(outcome.error().field);
    return;
  }
  m_session.keepDraft(place(), {});
  m_fields->show({});
  m_fields->focus("cause");
}

}  // namespace sw::ui
