// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/vehicles/vehicle_form.h"

#include <QFormLayout>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QVBoxLayout>

#include "ui/common/choice_row.h"
#include "ui/common/flow_layout.h"
#include "ui/common/page_parts.h"
#include "ui/common/text_label.h"

namespace sw::ui {

namespace {

const std::string kUnknown = "unknown";

}  // namespace

VehicleForm::VehicleForm(ShopSession& session, QWidget* parent)
    : QWidget(parent), m_session(session), m_fields(new FormFields(this)) {
  auto* inside = new QWidget(this);
  auto* column = new QVBoxLayout(inside);
  column->setContentsMargins(0, 0, column->contentsMargins().right(), 0);
  makeData(inside, column);
  makeArrangement(inside, column);
  m_problem = new TextLabel(TextRole::Strong, inside);
  m_problem->setObjectName(QStringLiteral("vehicleProblem"));
  m_problem->hide();
  m_save = new QPushButton(tr("S&ave the vehicle"), inside);
  m_save->setObjectName(QStringLiteral("saveVehicle"));
  auto* buttons = new FlowLayout;
  buttons->addWidget(m_save);
  column->addWidget(m_problem);
  column->addLayout(buttons);
  column->addStretch(1);
  auto* outer = new QVBoxLayout(this);
  outer->setContentsMargins(0, 0, 0, 0);
  outer->addWidget(scrolled(inside, "vehicleScroll", this));

  connect(m_save, &QPushButton::clicked, this, &VehicleForm::save);
  connect(m_fields, &FormFields::entered, this, &VehicleForm::save);
  connect(m_fields, &FormFields::edited, m_problem, &QWidget::hide);
  connect(m_fields, &FormFields::settled, this,
          [this] { m_session.keepDraft(place(), m_fields->draft()); });
}

void VehicleForm::makeData(QWidget* inside, QVBoxLayout* column) {
  auto* form = fieldForm();
  const auto add = [&](const char* field, const char* name, const QString& label,
                       const QString& example) {
    m_fields->add(field, addLine(form, name, label, example, inside));
  };
  add("registration", "vehiclePlate", tr("&Registration"), tr("as on the plate"));
  add("make_model", "makeModel", tr("&Make and model"), tr("in own words"));
  add("vin", "vin", tr("V&IN or chassis number"), tr("as on the plate of the body"));
  add("owner", "owner", tr("&Owner"), {});
  add("tyre_fitted", "tyreFitted", tr("&Tyres fitted"), tr("the size on the sidewall"));
  add("tyre_original", "tyreOriginal", tr("Tyres it was &built with"), tr("the dial goes with it"));
  add("front_axle_load", "frontAxleLoad", tr("&Front axle load"), tr("in kg or lb"));
  add("notes", "vehicleNotes", tr("&Notes"), {});
  column->addLayout(form);
  const std::pair<std::string, QString> left{"left", tr("left")};
  const std::pair<std::string, QString> right{"right", tr("right")};
  const std::pair<std::string, QString> unknown{kUnknown, tr("not known")};
  column->addWidget(ask("odometer_unit", "odometerUnit", tr("What does the odometer count?"),
                        {{"km", tr("kilometres")}, {"mi", tr("miles")}}, inside));
  column->addWidget(ask("hand_of_drive", "handOfDrive", tr("On which side does the driver sit?"),
                        {left, right, unknown}, inside));
  column->addWidget(ask("traffic_side", "trafficSide",
                        tr("On which side of the road is it driven?"), {left, right, unknown},
                        inside));
}

void VehicleForm::makeArrangement(QWidget* inside, QVBoxLayout* column) {
  column->addWidget(new TextLabel(tr("Front axle"), TextRole::Heading, inside));
  column->addWidget(new TextLabel(
      tr("Look at the vehicle and answer what is seen. What is not known stays open: the plan then "
         "shows both ways."),
      TextRole::Body, inside));
  const std::pair<std::string, QString> unknown{kUnknown, tr("not known")};
  const std::pair<std::string, QString> yes{"yes", tr("yes")};
  const std::pair<std::string, QString> no{"no", tr("no")};
  const auto add = [&](const char* field, const char* name, const QString& question,
                       std::vector<std::pair<std::string, QString>> answers) {
    answers.push_back(unknown);
    column->addWidget(ask(field, name, question, answers, inside));
  };
  add("drag_link_side", "dragLinkSide",
      tr("Which hub carries the drag link, from the driver's seat?"),
      {{"left", tr("left")}, {"right", tr("right")}});
  add("drag_link_fixes_to", "dragLinkFixesTo", tr("What does the drag link fix to?"),
      {{"steering_arm", tr("steering arm")}, {"track_rod", tr("track rod")}});
  add("damper_fixes_to", "damperFixesTo", tr("What does the steering damper push against?"),
      {{"track_rod", tr("track rod")},
       {"drag_link", tr("drag link")},
       {"steering_arm", tr("steering arm")},
       {"axle", tr("axle")},
       {"frame", tr("frame")}});
  add("steering_arm_on_cap", "steeringArmOnCap", tr("Is the steering arm part of the upper cap?"),
      {yes, no});
  add("lubricant", "lubricant", tr("What is in the swivel housing?"),
      {{"oil", tr("oil")}, {"grease", tr("grease")}});
  add("swivel_bearing", "swivelBearing", tr("What does the swivel turn in?"),
      {{"taper", tr("taper roller bearings")},
       {"bush", tr("a bush")},
       {"sprung_pin", tr("a sprung pin")}});
  add("shim_ends", "shimEnds", tr("At which end do shims sit?"),
      {{"top", tr("top")}, {"bottom", tr("bottom")}, {"both", tr("both")}});
  add("shim_layout", "shimLayout", tr("Where do the shims lie?"),
      {{"cap_flange", tr("under the cap flange")}, {"inner", tr("between pin and cap")}});
  add("disc_mount", "discMount", tr("Where does the brake disc sit?"),
      {{"outside", tr("outside the hub")}, {"behind_hub", tr("bolted behind the hub")}});
  add("wheel_bearing", "wheelBearing", tr("How is the wheel bearing set?"),
      {{"end_float", tr("by end float")},
       {"preload", tr("by preload")},
       {"unit", tr("not at all, it is a unit")}});
  add("abs_lead", "absLead", tr("Is there a wheel-speed lead at the hub?"), {yes, no});
  add("locking_hubs", "lockingHubs", tr("Are there free-wheeling hubs?"), {yes, no});
}

ChoiceRow* VehicleForm::ask(const char* field, const char* name, const QString& question,
                            const std::vector<std::pair<std::string, QString>>& answers,
                            QWidget* inside) {
  auto* row = new ChoiceRow(QString::fromLatin1(name), question, answers, inside);
  m_fields->add(field, row);
  const bool yesOrNo = answers.front().first == "yes";
  if (!yesOrNo && answers.back().first == kUnknown) m_lasting[field] = row;
  return row;
}

const model::Vehicle* VehicleForm::vehicle() const {
  const auto shop = m_session.shop();
  const auto* found = shop ? (*shop)->vehicle(m_vehicle) : nullptr;
  return found == nullptr ? nullptr : &found->fact;
}

FieldTexts VehicleForm::record() const {
  const auto* fact = vehicle();
  FieldTexts texts = fact == nullptr ? FieldTexts{} : textsOf(*fact);
  // What is not on record is not known.
  for (const auto& [field, row] : m_lasting) texts.try_emplace(field, kUnknown);
  for (const char* field : {"steering_arm_on_cap", "abs_lead", "locking_hubs"}) {
    texts.try_emplace(field, kUnknown);
  }
  return texts;
}

void VehicleForm::withholdWhatCannotBeTakenBack() {
  const FieldTexts texts = record();
  for (const auto& [field, row] : m_lasting) {
    if (texts.at(field) == kUnknown) {
      row->offerAll();
    } else {
      row->withhold(kUnknown);
    }
  }
}

QString VehicleForm::place() const {
  return QStringLiteral("vehicle/%1/data").arg(m_vehicle.value);
}

void VehicleForm::show(model::VehicleId vehicle) {
  m_vehicle = vehicle;
  m_fields->show(record());
  m_fields->takeDraft(m_session.draft(place()));
  withholdWhatCannotBeTakenBack();
  m_problem->hide();
}

void VehicleForm::refresh() {
  m_fields->follow(record());
  withholdWhatCannotBeTakenBack();
}

void VehicleForm::save() {
  const auto* known = vehicle();
  if (known == nullptr) return;
  if (!m_fields->hasChanges()) {
    m_problem->say(tr("Nothing is different from what is on file."));
    return;
  }
  workshop::SetVehicle action;
  takeChanges(*m_fields, action);
  action.registration = known->registration;
  action.newRegistration = m_fields->changed("registration");
  if (action.newRegistration) {
    const auto shop = m_session.shop();
    const bool taken = shop && (*shop)->vehicleByRegistration(*action.newRegistration) != nullptr;
    if (taken || action.newRegistration->empty()) {
      m_problem->say(taken ? tr("Registration: another vehicle has this plate.")
                           : tr("Registration: type what is on the plate."));
      m_fields->focus("registration");
      return;
    }
  }
  const auto outcome = m_session.perform(action);
  if (!outcome) {
    m_fields->focus(outcome.error().field);
    return;
  }
  m_session.keepDraft(place(), {});
  show(m_vehicle);
}

}  // namespace sw::ui
