// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>

#include "base/words.h"
#include "model/ids.h"
#include "model/words.h"

namespace sw::ui {

/// The pages of the window. Their words are the names of `screenshot --page`.
enum class PageId {
  Start,
  NewJob,
  Vehicle,
  Instruments,
  Complaint,
  Causes,
  Numbers,
  Learning,
  Kit,
  Work,
  Quick,
  Sheet,
  Finish,
  Bench,
  Help
};

/// Of the paper page, in place of a step: the work card is wanted.
inline constexpr const char* kWorkCard = "work-card";

/// Where to go: a page, and what it is about. Of a job, the step may be named as refusals name it:
/// "procedure/step", with the side.
struct Goal {
  PageId page = PageId::Start;
  std::optional<model::JobId> job;
  std::optional<model::VehicleId> vehicle;
  std::string step;
  std::optional<model::Side> side;
  /// On the page of the instruments: what a new one is to be.
  std::optional<model::InstrumentKind> instrumentKind = std::nullopt;
  /// On the page of the vehicle: the fact to be entered, by its field.
  std::string field = {};
  /// On the bench: the calculation by its name, filled in from the step.
  std::string calculation = {};
};

}  // namespace sw::ui

template <>
struct sw::Words<sw::ui::PageId> {
  using E = sw::ui::PageId;
  static constexpr std::pair<E, std::string_view> table[] = {{E::Start, "start"},
                                                             {E::NewJob, "new-job"},
                                                             {E::Vehicle, "vehicle"},
                                                             {E::Instruments, "instruments"},
                                                             {E::Complaint, "complaint"},
                                                             {E::Causes, "causes"},
                                                             {E::Numbers, "numbers"},
                                                             {E::Learning, "learning"},
                                                             {E::Kit, "kit"},
                                                             {E::Work, "work"},
                                                             {E::Quick, "quick"},
                                                             {E::Sheet, "sheet"},
                                                             {E::Finish, "finish"},
                                                             {E::Bench, "bench"},
                                                             {E::Help, "help"}};
};
