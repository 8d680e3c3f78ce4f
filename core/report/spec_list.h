// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <string>
#include <vector>

#include "model/json.h"
#include "workshop/spec_needs.h"

// The spec sheet of a vehicle beside what its work needs, as rows, as a text table and as JSON.

namespace sw::report {

struct SpecRow {
  workshop::SpecNeed need;
  std::string name;     ///< "swivel starting force, hub bare"
  std::string onFile;   ///< "15 N to 26 N", "52 N m, 4 fasteners"; empty if there is no line
  std::string missing;  ///< in words; empty when nothing has to be entered
  std::string doubt;    ///< why the torque is hard to believe; empty when it is not
};

/// In the order of the needs.
[[nodiscard]] std::vector<SpecRow> specRows(const std::vector<workshop::SpecNeed>& needs,
                                            const workshop::ShopState& shop,
                                            model::VehicleId vehicle);

[[nodiscard]] model::Json toJson(std::span<const SpecRow> rows);
[[nodiscard]] std::string toText(std::span<const SpecRow> rows);

}  // namespace sw::report
