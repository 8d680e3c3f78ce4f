// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "workshop/bench_input.h"

// What the inputs of calculations are made from, a file a subject: one place in one job, and the
// shop round it. Used by bench_input*.cpp only.

namespace sw::workshop {

/// The knowledge of one job and one place in it.
class BenchKnown {
 public:
  BenchKnown(const JobState& job, const ShopState& shop, const BenchPlace& place);

  [[nodiscard]] const JobState& job() const { return m_job; }
  [[nodiscard]] const ShopState& shop() const { return m_shop; }
  [[nodiscard]] const model::Vehicle& vehicle() const { return m_job.vehicle.fact; }
  /// Null where the calculation was not come to from a step.
  [[nodiscard]] const StepView* step() const { return m_step; }
  [[nodiscard]] const procedures::MeasureSpec* measure() const;
  [[nodiscard]] std::optional<model::Side> side() const { return m_side; }
  /// A line of the vehicle's spec sheet; null where it is not on file.
  [[nodiscard]] const model::SpecItem* spec(std::string_view key) const;

  /// The newest series of this very step; null when nothing was measured.
  [[nodiscard]] const SeriesView* seriesHere() const;
  /// The readings of the newest series of this step that count, as typed.
  [[nodiscard]] model::Json readingsHere() const;
  [[nodiscard]] model::Json instrumentOf(const SeriesView& series) const;

 private:
  const JobState& m_job;
  const ShopState& m_shop;
  BenchPlace m_place;
  const StepView* m_step = nullptr;
  std::optional<model::Side> m_side;
};

void put(model::Json& object, const char* key, const std::optional<TypedQuantity>& value);
[[nodiscard]] model::Json bandOf(const model::SpecItem& item);
/// The readings that count, as typed.
[[nodiscard]] model::Json usedTexts(const SeriesView& series);
/// In the unit of its kind, all digits.
[[nodiscard]] std::string siText(double si, QuantityKind kind);

/// How the input of one calculation is made.
struct BenchSource {
  std::string_view calculation;
  model::Json (*input)(const BenchKnown& known) = nullptr;
};
[[nodiscard]] std::span<const BenchSource> swivelSources();
[[nodiscard]] std::span<const BenchSource> bearingSources();
[[nodiscard]] std::span<const BenchSource> boltSources();
[[nodiscard]] std::span<const BenchSource> vehicleSources();

}  // namespace sw::workshop
