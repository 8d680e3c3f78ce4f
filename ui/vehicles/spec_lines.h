// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <optional>
#include <string>
#include <vector>

#include "workshop/spec_needs.h"

// The lines of a spec sheet as the window lists them: what the work asks for, on file or missing,
// and what else stands on the sheet.

namespace sw::ui {

using workshop::SpecNeed;

struct SpecLine {
  SpecNeed need;
  const model::SpecItem* item = nullptr;  ///< null where it is missing

  [[nodiscard]] bool missing() const { return item == nullptr; }
};
/// In the order of the work, then the rest of the sheet. The work is the job's runs; without runs
/// the plan of the whole job on this vehicle's axle. `job` may be null.
[[nodiscard]] std::vector<SpecLine> specLines(const procedures::Library& library,
                                              const workshop::ShopState& shop,
                                              model::VehicleId vehicle,
                                              const workshop::JobState* job);

/// What a line is called: "Wheel nuts".
[[nodiscard]] QString specName(const std::string& key);
/// "16 N to 24 N", "58 N m (43 lbf ft), 4 a side, M10x1.5".
[[nodiscard]] QString specFigure(const model::SpecItem& item);
/// Where the figure stands, and since when; empty where nobody said.
[[nodiscard]] QString specSource(const model::SpecItem& item);
/// The units such a figure is typed in: "in N, kgf or lbf".
[[nodiscard]] QString unitsHint(std::optional<QuantityKind> quantity);

}  // namespace sw::ui
