// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "base/clock.h"
#include "model/shop_facts.h"

// An instrument in words.

namespace sw::ui {

/// "reads to 0.2 N, ± 0.3 N, 1 N to 50 N".
[[nodiscard]] QString readsText(const model::Instrument& instrument);
/// "in calibration, until 2027-09-02".
[[nodiscard]] QString calibrationText(const model::Instrument& instrument, const Date& today);
/// "showed 1.95 kg for 2.00 kg: two bags of flour"; `check` may be null.
[[nodiscard]] QString checkText(const model::InstrumentCheck* check);
/// What readings with it are worth, in plain sentences.
[[nodiscard]] QString worthText(const model::Instrument& instrument,
                                const model::InstrumentCheck* check);
/// A good entry for what such an instrument reads to: "0.5 N".
[[nodiscard]] QString graduationExample(model::InstrumentKind kind);
/// The known thing to check such an instrument against.
[[nodiscard]] QString checkExample(model::InstrumentKind kind);

}  // namespace sw::ui
