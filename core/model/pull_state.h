// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/words.h"

namespace sw::model {

/// The state of the hub and the way of pulling that a starting force belongs to.
struct PullState {
  OnOff seal = OnOff::Off;
  OnOff rods = OnOff::Off;
  OnOff damper = OnOff::Off;
  Sealant sealant = Sealant::None;
  Grease grease = Grease::Old;
  Movement movement = Movement::First;
  RestPosition position = RestPosition::Ahead;

  friend bool operator==(const PullState&, const PullState&) = default;

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("seal", self.seal);
    visit("rods", self.rods);
    visit("damper", self.damper);
    visit("sealant", self.sealant);
    visit("grease", self.grease);
    visit("movement", self.movement);
    visit("position", self.position);
  }
};

}  // namespace sw::model
