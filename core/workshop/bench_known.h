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

enum class Among { ThisRun, WholeJob };

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
  [[nodiscard]] model::Json instrumentOf(const SeriesView& series) const;
  /// The newest readings of this sort at or before this step, in its run or in all of the job; at
  /// any step where the calculation was not come to from one. Null where there are none.
  [[nodiscard]] const SeriesView* latest(procedures::Reads what, std::optional<model::Side> side,
                                         Among runs = Among::ThisRun) const;
  /// What was observed under this key beside these readings: the newest answer given after they
  /// were begun and before others of the sort. Null where none was.
  [[nodiscard]] const model::Observation* observedBeside(const SeriesView& series,
                                                         std::string_view key) const;

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
/// The readings of a round in their order. Empty where it is not complete or one of them does not
/// count: the places would no longer be even.
[[nodiscard]] model::Json roundTexts(const SeriesView* series);
/// The mean of the readings that count, SI; nothing before all that were planned are there.
[[nodiscard]] std::optional<double> fullMean(const SeriesView* series);
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
[[nodiscard]] std::span<const BenchSource> brakeSources();
[[nodiscard]] std::span<const BenchSource> geometrySources();
[[nodiscard]] std::span<const BenchSource> vehicleSources();

}  // namespace sw::workshop
