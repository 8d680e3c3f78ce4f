// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "workshop/job_state.h"

// A torque step as it is worked: stages with their set values, what is done, which wrench can do
// it.

namespace sw::workshop {

struct TorqueStage {
  std::int64_t number = 1;
  double fraction = 1.0;
  TypedQuantity set;  ///< in the sheet's unit
  std::int64_t done = 0;
  bool finished = false;
};

struct TorquePlan {
  const model::SpecItem* spec = nullptr;  ///< never null in a plan that was given
  std::int64_t count = 0;
  std::string pattern;
  std::vector<TorqueStage> stages;
  /// Index of the stage that is to be done next; stages.size() when all are finished.
  std::size_t next = 0;
};

/// Errors: Missing "workshop.torque_not_on_file", "workshop.spec_needs_count"; NotFound
/// "workshop.no_torque_here". `shop` must outlive the plan.
[[nodiscard]] Result<TorquePlan> torquePlan(const JobState& job, const ShopState& shop,
                                            std::size_t step);

enum class WrenchRange { Fits, TooSmall, TooLarge };

/// Whether it can set this torque; an end of the range that is not known bars nothing.
[[nodiscard]] WrenchRange rangeOf(const model::Instrument& wrench, const TypedQuantity& set);

/// A torque wrench of the shop, as it suits a set value.
struct WrenchChoice {
  std::string name;
  WrenchRange range = WrenchRange::Fits;
  std::string calibration;  ///< word of measure::CalibrationState, on the day
  TypedQuantity set;        ///< in the wrench's own unit, to its graduation
};

/// All active torque wrenches: those that fit first, those in calibration before others.
[[nodiscard]] std::vector<WrenchChoice> wrenchesFor(const ShopState& shop, const TypedQuantity& set,
                                                    const Timestamp& day);

}  // namespace sw::workshop
