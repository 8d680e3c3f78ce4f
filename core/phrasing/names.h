// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QtCore/QString>
#include <optional>
#include <string>
#include <string_view>

#include "measure/evaluation.h"
#include "model/pull_state.h"
#include "model/shop_facts.h"
#include "model/words.h"
#include "units/unit.h"

// Stored words and enumerations as people read them.

namespace sw::phrasing {

[[nodiscard]] QString nameOf(QuantityKind kind);
[[nodiscard]] QString nameOf(Verdict verdict);
[[nodiscard]] QString nameOf(model::InstrumentKind kind);
[[nodiscard]] QString nameOf(model::LedgerState state);
[[nodiscard]] QString nameOf(model::SupportKind support);
[[nodiscard]] QString nameOf(model::ShimLayout layout);
[[nodiscard]] QString nameOf(model::PackRole role);
[[nodiscard]] QString nameOf(model::ShimPlace place);
[[nodiscard]] QString nameOf(model::JobOutcome outcome);
[[nodiscard]] QString nameOf(model::CorrectionReason reason);
[[nodiscard]] QString nameOf(model::ShakeResult result);
[[nodiscard]] QString nameOf(model::SpeedSource source);
/// A fact by the stored word of its kind ("reading"); a word not known is shown as it is.
[[nodiscard]] QString factName(std::string_view kind);
/// A hold by its key ("go_no_go"); a key not known is shown as it is.
[[nodiscard]] QString holdName(std::string_view key);
/// A line of a spec sheet by its key ("swivel.starting_force"); a key not known is shown as it is.
[[nodiscard]] QString specKeyName(std::string_view key);
/// What a search found, by the stored word ("request"); a word not known is shown as it is.
[[nodiscard]] QString foundName(std::string_view kind);
/// Why a book was refused, by the stored word ("not_a_database"); anything else as it is.
[[nodiscard]] QString reasonName(const std::string& reason);

/// A ledger state by its stored word; anything else as it is.
[[nodiscard]] QString ledgerStateName(std::string_view state);
/// "left" or "right" by the stored word; anything else as it is.
[[nodiscard]] QString sideWordName(std::string_view side);

/// How a shop speaks of the two sides.
enum class SideStyle { LeftRight, DriverPassenger, NearsideOffside };
struct SideNaming {
  SideStyle style = SideStyle::LeftRight;
  std::optional<model::HandOfDrive> handOfDrive;  ///< where the driver sits
  std::optional<model::HandOfDrive> trafficSide;  ///< the side of the road traffic keeps to
};
[[nodiscard]] SideNaming sideNaming(SideStyle style, const model::Vehicle& vehicle);
/// Left and right as seen from the driver's seat; where the vehicle's data do not say which side is
/// the driver's or the kerb's, left and right.
[[nodiscard]] QString sideName(model::Side side, const SideNaming& naming);

/// The state a pull was taken in: "seal off, rods off, damper off, no sealant, old grease, first
/// movement, straight ahead".
[[nodiscard]] QString stateInWords(const model::PullState& state);

}  // namespace sw::phrasing
