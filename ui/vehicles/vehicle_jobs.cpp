// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/vehicles/vehicle_jobs.h"

#include <QTableWidget>
#include <QVBoxLayout>
#include <ranges>

#include "phrasing/error_sentence.h"
#include "report/lists.h"
#include "report/quantity_text.h"
#include "report/wording.h"
#include "ui/common/page_parts.h"
#include "ui/common/text_label.h"

namespace sw::ui {

VehicleJobs::VehicleJobs(ShopSession& session, QWidget* parent)
    : QWidget(parent),
      m_session(session),
      m_none(new TextLabel(TextRole::Body, this)),
      m_table(rowTable("vehicleJobs", tr("Jobs of this vehicle"),
                       {tr("Job"), tr("What was asked"), tr("Where it stands")}, this)) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(new TextLabel(tr("Press a job to see it on paper."), TextRole::Body, this));
  column->addWidget(m_none);
  column->addWidget(m_table, 1);
  connect(m_table, &QTableWidget::cellClicked, this, &VehicleJobs::choose);
  connect(m_table, &QTableWidget::cellActivated, this, &VehicleJobs::choose);
}

void VehicleJobs::show(model::VehicleId vehicle) {
  m_table->setRowCount(0);
  const auto jobs = m_session.workshop().book().jobsOfVehicle(vehicle);
  if (jobs) {
    for (const store::JobSummary& summary : *jobs | std::views::reverse) addRow(summary);
  }
  m_none->say(!jobs           ? phrasing::sentence(jobs.error())
              : jobs->empty() ? tr("This vehicle has no job yet.")
                              : QString());
}

void VehicleJobs::addRow(const store::JobSummary& summary) {
  const auto& workshop = m_session.workshop();
  const auto opened = workshop.book().entry(summary.openedEntry);
  const auto* fact = opened && *opened ? model::as<model::JobOpened>(**opened) : nullptr;
  QString standing = summary.outcome ? report::humanWord(*summary.outcome) : tr("open");
  if (summary.closedAt) {
    standing += QStringLiteral(", ") + report::dateText(*summary.closedAt);
  } else if (const auto state = workshop.job(summary.job)) {
    const QString step = report::fromUtf8(report::openJobRow(*state).step);
    standing += step.isEmpty() ? tr(", no plan yet") : tr(", goes on at %1").arg(step);
  }
  const int row = m_table->rowCount();
  m_table->insertRow(row);
  fillRow(m_table, row,
          {tr("Job %1, %2").arg(summary.job.value).arg(report::dateText(summary.openedAt)),
           fact == nullptr ? QString() : report::fromUtf8(fact->request), standing});
  m_table->item(row, 0)->setData(Qt::UserRole, qlonglong(summary.job.value));
}

void VehicleJobs::choose(int row) {
  emit jobChosen(model::JobId{m_table->item(row, 0)->data(Qt::UserRole).toLongLong()});
}

}  // namespace sw::ui
