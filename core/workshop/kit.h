// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <cstddef>
#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/words.h"
#include "store/book.h"
#include "workshop/job_state.h"

// What to lay out before the work: the tools, parts and consumables of a job's plan, each once,
// and what is ticked off of them.

namespace sw::workshop {

struct KitLine {
  enum class Kind { Tool, Part, Consumable };
  Kind kind = Kind::Tool;
  std::string key;  ///< "tool/Torque wrench": stays the same while the plan grows
  std::string name;
  /// Alternatives, best first in the order the steps name them. One may do for some of the steps
  /// only; the step says so.
  std::vector<std::string> instead;
  /// "" for tools; "4" for parts, a side counted each; "3; a little" for consumables: counts are
  /// added up, measures multiplied ("2 x 0.5 l"), words stand once.
  std::string amount;
  bool singleUse = false;
  bool optional = false;           ///< asked for by nothing but optional steps
  bool stillNeeded = false;        ///< at least one of the steps is not done
  std::vector<std::size_t> steps;  ///< indices into JobState::steps
};

/// The kit of all steps of the job that are neither superseded nor marked as not applicable: tools,
/// then parts, then consumables, each by name and in the order of first use.
[[nodiscard]] std::vector<KitLine> kitOf(const JobState& job);

enum class KitTick { Open, Have, Missing };

/// What is ticked in the kit of a job, by KitLine::key; a line that is not there is open. A tick is
/// a draft of the book and no fact. Errors: those of the book.
[[nodiscard]] Result<std::map<std::string, KitTick>> kitTicks(const store::Book& book,
                                                              model::JobId job);
/// Errors: those of Book::setDraft.
[[nodiscard]] Result<void> setKitTick(store::Book& book, model::JobId job, const std::string& key,
                                      KitTick tick);

}  // namespace sw::workshop

namespace sw {

template <>
struct Words<workshop::KitLine::Kind> {
  using E = workshop::KitLine::Kind;
  static constexpr auto table = std::to_array<std::pair<E, std::string_view>>(
      {{E::Tool, "tool"}, {E::Part, "part"}, {E::Consumable, "consumable"}});
};

template <>
struct Words<workshop::KitTick> {
  using E = workshop::KitTick;
  static constexpr auto table = std::to_array<std::pair<E, std::string_view>>(
      {{E::Open, "open"}, {E::Have, "have"}, {E::Missing, "missing"}});
};

}  // namespace sw
