// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/complaint/plan_part.h"

#include <QComboBox>
#include <QPushButton>
#include <QVBoxLayout>

#include "report/lists.h"
#include "report/quantity_text.h"
#include "ui/common/flow_layout.h"
#include "ui/common/page_parts.h"
#include "ui/common/text_label.h"

namespace sw::ui {

namespace {

const QString kUsualPlan = QStringLiteral("swivel-preload");

}  // namespace

PlanPart::PlanPart(ShopSession& session, QWidget* parent)
    : QWidget(parent),
      m_session(session),
      m_standing(new TextLabel(TextRole::Body, this)),
      m_plans(comboBox("whichPlan", tr("Plan"), this)),
      m_start(new QPushButton(tr("Start the &plan"), this)),
      m_work(new QPushButton(tr("Go on wor&king"), this)) {
  m_standing->setObjectName(QStringLiteral("planStanding"));
  for (const procedures::PlanTemplate& plan : session.library().plans()) {
    m_plans->addItem(QString::fromStdString(plan.title), QString::fromStdString(plan.id));
  }
  m_plans->setCurrentIndex(std::max(0, m_plans->findData(kUsualPlan)));
  m_start->setObjectName(QStringLiteral("startPlan"));
  m_work->setObjectName(QStringLiteral("goOnWorking"));
  auto* buttons = new FlowLayout;
  buttons->addWidget(m_plans);
  buttons->addWidget(m_start);
  buttons->addWidget(m_work);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(new TextLabel(tr("Plan"), TextRole::Heading, this));
  column->addWidget(m_standing);
  column->addLayout(buttons);
  connect(m_start, &QPushButton::clicked, this, &PlanPart::startWanted);
  connect(m_work, &QPushButton::clicked, this, &PlanPart::workWanted);
}

void PlanPart::show(model::JobId job) {
  const auto state = m_session.job(job);
  if (!state) return;
  const bool closed = (*state)->closed.has_value();
  const bool started = !(*state)->runs.empty();
  m_plans->setVisible(!started && !closed);
  m_start->setVisible(!started && !closed);
  m_work->setVisible(started && !closed);
  const QString step = report::fromUtf8(report::openJobRow(**state).step);
  m_standing->setText(closed     ? tr("This job is closed.")
                      : !started ? tr("No plan yet. The plan puts all steps into the job, from "
                                      "the checks that cost nothing to the record.")
                      : step.isEmpty() ? tr("All steps of the plan are done.")
                                       : tr("The work goes on at %1.").arg(step));
}

std::string PlanPart::plan() const {
  return m_plans->currentData().toString().toStdString();
}

}  // namespace sw::ui
