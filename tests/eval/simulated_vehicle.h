// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <random>
#include <span>
#include <string_view>
#include <vector>

#include "diagnosis/cause_file.h"

// Vehicles that shake: drawn from a table of causes, as it stands or moved by factors that the one
// who looks for the cause does not know.

namespace sw::eval {

/// The questions that are asked, each left open with kLeftOpen.
inline constexpr std::array<std::string_view, 4> kAsked{"braking", "after_bump", "follows_speed",
                                                        "wanders"};
inline constexpr double kLeftOpen = 0.3;

/// The table with every weight and all odds (answers, detections, alarms) times log-normal factors.
[[nodiscard]] diagnosis::CauseFile perturbed(const diagnosis::CauseFile& file, double deviation,
                                             std::mt19937_64& random);

struct CheckLuck {
  bool finds = false;   ///< where its cause is there
  bool alarms = false;  ///< where none of its causes is there
};

struct SimulatedVehicle {
  std::size_t cause = 0;
  std::vector<std::optional<std::size_t>> answers;  ///< one a feature of the table
  std::vector<CheckLuck> luck;                      ///< one a check
};

[[nodiscard]] SimulatedVehicle drawVehicle(const diagnosis::CauseFile& truth,
                                           std::mt19937_64& random);

/// Answers where this is the cause, to these questions, each left open with kLeftOpen.
[[nodiscard]] std::vector<std::optional<std::size_t>> drawAnswers(
    const diagnosis::CauseTable& truth, std::size_t cause, std::span<const std::size_t> features,
    std::mt19937_64& random);
[[nodiscard]] std::size_t drawCause(const diagnosis::CauseTable& truth, std::mt19937_64& random);

/// One of the places, with these weights.
[[nodiscard]] std::size_t drawPlace(const std::vector<double>& weights, std::mt19937_64& random);

}  // namespace sw::eval
