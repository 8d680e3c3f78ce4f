// SPDX-License-Identifier: GPL-3.0-or-later
#include <QtCore/QStringList>

#include "phrasing/names.h"
#include "phrasing/template_text.h"

namespace sw::phrasing {

using model::HandOfDrive;
using model::PullState;
using model::Side;

namespace {

constexpr Source kLeft = QT_TRANSLATE_NOOP3("phrasing", "left", "side of the vehicle");
constexpr Source kRight = QT_TRANSLATE_NOOP3("phrasing", "right", "side of the vehicle");
constexpr Source kDriver = QT_TRANSLATE_NOOP3("phrasing", "driver's side", "side of the vehicle");
constexpr Source kPassenger =
    QT_TRANSLATE_NOOP3("phrasing", "passenger's side", "side of the vehicle");
constexpr Source kNearside =
    QT_TRANSLATE_NOOP3("phrasing", "nearside", "side of the vehicle next to the kerb");
constexpr Source kOffside =
    QT_TRANSLATE_NOOP3("phrasing", "offside", "side of the vehicle next to oncoming traffic");

QString leftOrRight(Side side) {
  return translated(side == Side::Left ? kLeft : kRight);
}

bool isOn(Side side, HandOfDrive hand) {
  return (side == Side::Left) == (hand == HandOfDrive::Left);
}

QString word(const Source& on, const Source& off, model::OnOff state) {
  return translated(state == model::OnOff::On ? on : off);
}

QString sealantWord(model::Sealant sealant) {
  static constexpr Source kNone =
      QT_TRANSLATE_NOOP3("phrasing", "no sealant", "state of a pull: under the cap");
  static constexpr Source kWet =
      QT_TRANSLATE_NOOP3("phrasing", "sealant wet", "state of a pull: under the cap");
  static constexpr Source kCured =
      QT_TRANSLATE_NOOP3("phrasing", "sealant cured", "state of a pull: under the cap");
  switch (sealant) {
    case model::Sealant::None:
      return translated(kNone);
    case model::Sealant::Wet:
      return translated(kWet);
    case model::Sealant::Cured:
      return translated(kCured);
  }
  return {};
}

QString greaseWord(model::Grease grease) {
  static constexpr Source kDry =
      QT_TRANSLATE_NOOP3("phrasing", "bearings dry", "state of a pull: grease");
  static constexpr Source kFresh =
      QT_TRANSLATE_NOOP3("phrasing", "fresh grease", "state of a pull: grease");
  static constexpr Source kOld =
      QT_TRANSLATE_NOOP3("phrasing", "old grease", "state of a pull: grease");
  switch (grease) {
    case model::Grease::Dry:
      return translated(kDry);
    case model::Grease::Fresh:
      return translated(kFresh);
    case model::Grease::Old:
      return translated(kOld);
  }
  return {};
}

QString positionWord(model::RestPosition position) {
  static constexpr Source kAhead =
      QT_TRANSLATE_NOOP3("phrasing", "straight ahead", "state of a pull: where the wheel pointed");
  static constexpr Source kLeft15 =
      QT_TRANSLATE_NOOP3("phrasing", "15° to the left", "state of a pull: where the wheel pointed");
  static constexpr Source kRight15 = QT_TRANSLATE_NOOP3("phrasing", "15° to the right",
                                                        "state of a pull: where the wheel pointed");
  switch (position) {
    case model::RestPosition::Ahead:
      return translated(kAhead);
    case model::RestPosition::LeftFifteen:
      return translated(kLeft15);
    case model::RestPosition::RightFifteen:
      return translated(kRight15);
  }
  return {};
}

QString movementWord(model::Movement movement) {
  static constexpr Source kFirst =
      QT_TRANSLATE_NOOP3("phrasing", "first movement", "state of a pull: when it was read");
  static constexpr Source kSteady =
      QT_TRANSLATE_NOOP3("phrasing", "steady movement", "state of a pull: when it was read");
  return translated(movement == model::Movement::First ? kFirst : kSteady);
}

}  // namespace

SideNaming sideNaming(SideStyle style, const model::Vehicle& vehicle) {
  return {style, vehicle.handOfDrive, vehicle.trafficSide};
}

QString sideName(Side side, const SideNaming& naming) {
  if (naming.style == SideStyle::DriverPassenger && naming.handOfDrive) {
    return translated(isOn(side, *naming.handOfDrive) ? kDriver : kPassenger);
  }
  // Traffic that keeps left has the kerb on its left.
  if (naming.style == SideStyle::NearsideOffside && naming.trafficSide) {
    return translated(isOn(side, *naming.trafficSide) ? kNearside : kOffside);
  }
  return leftOrRight(side);
}

QString sideWordName(std::string_view side) {
  const auto known = fromWord<Side>(side);
  return known ? leftOrRight(*known) : shown(std::string(side));
}

QString stateInWords(const PullState& state) {
  static constexpr Source kSealOn = QT_TRANSLATE_NOOP3("phrasing", "seal on", "state of a pull");
  static constexpr Source kSealOff = QT_TRANSLATE_NOOP3("phrasing", "seal off", "state of a pull");
  static constexpr Source kRodsOn =
      QT_TRANSLATE_NOOP3("phrasing", "rods on", "state of a pull: track rod and drag link");
  static constexpr Source kRodsOff =
      QT_TRANSLATE_NOOP3("phrasing", "rods off", "state of a pull: track rod and drag link");
  static constexpr Source kDamperOn =
      QT_TRANSLATE_NOOP3("phrasing", "damper on", "state of a pull: steering damper");
  static constexpr Source kDamperOff =
      QT_TRANSLATE_NOOP3("phrasing", "damper off", "state of a pull: steering damper");
  const QStringList words{word(kSealOn, kSealOff, state.seal),
                          word(kRodsOn, kRodsOff, state.rods),
                          word(kDamperOn, kDamperOff, state.damper),
                          sealantWord(state.sealant),
                          greaseWord(state.grease),
                          movementWord(state.movement),
                          positionWord(state.position)};
  return words.join(QStringLiteral(", "));
}

}  // namespace sw::phrasing
