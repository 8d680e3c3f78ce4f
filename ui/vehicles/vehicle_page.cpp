// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/vehicles/vehicle_page.h"

#include <QButtonGroup>
#include <QPushButton>
#include <QStackedWidget>
#include <QVBoxLayout>

#include "phrasing/error_sentence.h"
#include "ui/common/flow_layout.h"
#include "ui/common/text_label.h"
#include "ui/vehicles/spec_sheet.h"
#include "ui/vehicles/vehicle_form.h"
#include "ui/vehicles/vehicle_jobs.h"

namespace sw::ui {

VehiclePage::VehiclePage(ShopSession& session, QWidget* parent)
    : Page(session, "vehiclePage", parent),
      m_title(new TextLabel(TextRole::Heading, this)),
      m_group(new QButtonGroup(this)) {
  m_title->setObjectName(QStringLiteral("vehicleTitle"));
  m_title->setWordWrap(true);
  // Made before the parts: the Tab key goes the way one reads.
  m_data = new QPushButton(tr("&Vehicle and axle"), this);
  m_spec = new QPushButton(tr("&Spec sheet"), this);
  m_history = new QPushButton(tr("&Jobs"), this);
  m_parts = new QStackedWidget(this);
  m_form = new VehicleForm(session, m_parts);
  m_sheet = new SpecSheet(session, m_parts);
  m_jobs = new VehicleJobs(session, m_parts);
  auto* buttons = new FlowLayout;
  const std::tuple<QPushButton*, const char*, QWidget*> parts[] = {
      {m_data, "partData", m_form}, {m_spec, "partSpec", m_sheet}, {m_history, "partJobs", m_jobs}};
  for (const auto& [button, name, part] : parts) {
    button->setObjectName(QString::fromLatin1(name));
    button->setCheckable(true);
    m_group->addButton(button, m_parts->addWidget(part));
    buttons->addWidget(button);
  }
  m_data->setChecked(true);
  auto* column = new QVBoxLayout(this);
  column->addWidget(m_title);
  column->addLayout(buttons);
  column->addWidget(m_parts, 1);

  connect(m_group, &QButtonGroup::idToggled, m_parts, [this](int part, bool on) {
    if (on) m_parts->setCurrentIndex(part);
  });
  connect(m_jobs, &VehicleJobs::jobChosen, this, [this](model::JobId job) {
    emit goWanted({PageId::Sheet, job, {}, {}, {}});
  });
  connect(&session, &ShopSession::changed, this, [this] {
    if (isVisible()) refresh();
  });
}

void VehiclePage::begin(const Goal& goal) {
  if (goal.job) {
    const auto job = session().job(*goal.job);
    if (!job) {
      emit failed(phrasing::sentence(job.error()));
      return;
    }
    m_vehicle = (*job)->vehicle.fact.vehicle;
  }
  if (goal.vehicle) m_vehicle = *goal.vehicle;
  m_form->show(m_vehicle);
  m_sheet->show(m_vehicle, goal.job);
  m_jobs->show(m_vehicle);
  showTitle();
  if (!goal.field.empty()) {
    m_data->click();
    m_form->focusOn(goal.field);
    return;
  }
  if (auto* chosen = m_group->checkedButton()) chosen->setFocus();
}

void VehiclePage::refresh() {
  m_form->refresh();
  m_sheet->refresh();
  m_jobs->show(m_vehicle);
  showTitle();
}

void VehiclePage::showTitle() {
  const auto shop = session().shop();
  const auto* vehicle = shop ? (*shop)->vehicle(m_vehicle) : nullptr;
  if (vehicle == nullptr) return;
  const QString plate = QString::fromStdString(vehicle->fact.registration);
  const QString what = QString::fromStdString(vehicle->fact.makeModel);
  m_title->setText(what.isEmpty() ? plate : tr("%1 – %2").arg(plate, what));
  const std::size_t missing = m_sheet->missing();
  m_spec->setText(missing == 0 ? tr("&Spec sheet") : tr("&Spec sheet: %1 missing").arg(missing));
}

}  // namespace sw::ui
