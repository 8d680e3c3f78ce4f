// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "diagnosis/check_plan.h"
#include "diagnosis/two_faults.h"
#include "workshop/shake_known.h"
#include "workshop/shop_state.h"

// Ranked causes and the order of checks for one job, from what it knows and how the shop is
// equipped.

namespace sw::store {
class Book;
}

namespace sw::workshop {

/// The shipped causes with the shop's own numbers. Errors: as withOwnNumbers.
[[nodiscard]] Result<diagnosis::CauseFile> causesOf(const ShopState& shop);

/// What a shop and a user wish; kept as settings of the book.
struct CheckWishes {
  std::string preset;                ///< key; empty or unknown = the first
  std::optional<double> givingUp;    ///< minutes; absent = the file's
  std::vector<std::string> leftOut;  ///< keys of checks, of this job
  std::string setup;                 ///< key: already there; empty = as the job stands
};
[[nodiscard]] Result<CheckWishes> checkWishes(const store::Book& book, model::JobId job);
/// Settings they are kept under, for SetSetting.
inline constexpr std::string_view kPresetSetting = "causes.shop";
inline constexpr std::string_view kGivingUpSetting = "causes.giving_up";
[[nodiscard]] std::string leftOutSetting(model::JobId job);
[[nodiscard]] std::string setupSetting(model::JobId job);

/// The procedure behind whose run a check is to stand so that it can be made now: the last before a
/// hold that is not passed. Nothing where it can stand at the end, or nowhere before a hold.
[[nodiscard]] std::optional<std::string> placeForCheck(const JobState& job);

struct ChecksAhead {
  ShakeKnown known;
  diagnosis::Ranking ranking;
  diagnosis::PlanProblem problem;
  diagnosis::CheckPlan plan;
  /// Two faults that explain the answers better than any one.
  std::optional<diagnosis::FaultSet> pair;
  std::vector<std::size_t> cured;        ///< causes put right, as the last drive says
  std::optional<std::size_t> lookAgain;  ///< a check that was clear, where no other is left
};
/// Errors: as bestPlan.
[[nodiscard]] Result<ChecksAhead> checksAhead(const JobState& job, const diagnosis::CauseFile& file,
                                              const CheckWishes& wishes);

}  // namespace sw::workshop
