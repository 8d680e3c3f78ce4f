// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "mechanics/swivel/shim_packs.h"
#include "workshop/context.h"

// Internal to core/workshop: putting procedure runs into a job, and the rounds that results append.

namespace sw::workshop {

struct RunRequest {
  std::string procedure;
  std::vector<model::Side> sides;
  std::int64_t round = 1;
  std::string why = "plan";
  std::optional<model::EntryId> placedAfter;
};

/// Freezes the procedure's text in the book and starts the run. Errors: NotFound
/// "workshop.no_procedure".
[[nodiscard]] Result<model::RunId> startRun(Context& context, const RunRequest& request);
/// "both", "left" or "right"; absent = both.
[[nodiscard]] Result<std::vector<model::Side>> readSides(const std::optional<std::string>& text);
/// One more than the highest round of the procedure on any of the sides.
[[nodiscard]] std::int64_t nextRound(const JobState& job, const std::string& procedure,
                                     const std::vector<model::Side>& sides);

/// What follows a decided pull of the round-driving step: the next allowed pack at once when it
/// fell short or ran over, or the end of the packs.
[[nodiscard]] Result<void> followPull(Context& context, const SeriesView& series, std::size_t step);
/// What follows a drive that still shakes: the next round, or what else to suspect.
[[nodiscard]] Result<void> followRoadTest(Context& context);
/// What follows an observation that means worn: renewal of that side's bearings.
[[nodiscard]] Result<void> followWear(Context& context, model::Side side);

/// Worn bearings seen on the side and not yet renewed.
[[nodiscard]] bool wornUnrenewed(const JobState& job, model::Side side);
/// The hub does not stay where it is put, or has end float, by the newest observations of that
/// side.
[[nodiscard]] bool loose(const JobState& job, model::Side side);

/// The shims of the vehicle's spec sheet, as many of each as wanted; without sizes where the sheet
/// names none, or no bound for a pack. Errors: those of mechanics::parseStack.
[[nodiscard]] Result<mechanics::ShimStock> shimStock(const JobState& job, const ShopState& shop);

/// The next allowed pack from the one fitted, in the direction that raises (or lowers) the starting
/// force.
struct PackAdvice {
  Length total;
  std::string stack;  ///< "0.50 + 0.25"
  std::int64_t count = 0;
};
enum class ForceDirection { Raise, Lower };
/// Empty = no allowed pack further that way, or the vehicle's layout, sizes or current pack are not
/// known (then `why` says which: "layout", "sizes", "pack", "end").
struct PackAnswer {
  std::optional<PackAdvice> pack;
  std::string why;
};
[[nodiscard]] Result<PackAnswer> nextAllowedPack(const JobState& job, const ShopState& shop,
                                                 model::Side side, ForceDirection direction);

}  // namespace sw::workshop
