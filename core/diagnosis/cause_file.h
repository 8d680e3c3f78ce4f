// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/result.h"
#include "base/words.h"
#include "diagnosis/cause_table.h"
#include "model/words.h"

// Causes, checks and set-ups are data: resources/causes/<id>.json, described by causes.schema.json.
// The structs below are that file, read. Every number in it is a starting value, common practice,
// no source, and says so; a shop may put its own in their place.

namespace sw::diagnosis {

/// A state of the vehicle in which checks can be made.
struct Setup {
  std::string key;
  std::string name;
  std::optional<std::size_t> parent;
  struct Minutes {
    double open = 0, close = 0;
  };
  /// One each for stands, two-post lift, four-post lift and pit, in the order of SupportKind.
  std::array<Minutes, 4> minutes;
};

/// The end of a limit that a reading lies beyond.
enum class Beyond { Below, Above };

/// What a check's procedure records when it finds this cause: an observation of one of its steps,
/// or a verdict. On either side of the vehicle is enough.
struct Finding {
  std::string observed;            ///< key of the observation; empty = a verdict
  std::vector<std::string> words;  ///< of the observation that mean the cause is there
  std::string limit;               ///< spec key whose verdict "outside" means so
  std::optional<Beyond> beyond;    ///< and only at this end of the limit; absent = at either
  std::size_t cause = 0;
};

/// A check was made and found nothing when all of its list hold, on every side it was made on, and
/// none of its findings does: one of the words was observed, or the verdict under the limit is
/// "within". What could not be told, and a limit without a figure, is neither.
struct Clear {
  std::string observed;            ///< key of the observation; empty = a verdict
  std::vector<std::string> words;  ///< of the observation that speak against all its causes
  std::string limit;
};

/// Another set-up and other minutes where the vehicle is built so.
struct CheckVariant {
  model::DiscMount discMount = model::DiscMount::BehindHub;
  std::vector<std::size_t> setups;
  double minutes = 0;
};

struct Check {
  std::string key;
  std::string name;
  std::string procedure;  ///< whose run makes the check
  bool first = false;     ///< before any drive
  std::vector<std::size_t> after;
  std::vector<std::string> equipment;  ///< what it needs beside hand tools
  std::vector<std::size_t> setups;
  double minutes = 0;
  std::vector<Detection> finds;
  double falseAlarm = 0;
  double falseAlarmMinutes = 0;
  std::vector<CheckVariant> variants;
  std::vector<Finding> findings;
  std::vector<Clear> clear;  ///< empty = nothing it records rules its causes out
};

/// What puts a cause right.
struct Repair {
  std::size_t cause = 0;
  std::string plan;                 ///< to begin it with
  std::vector<std::string> doneBy;  ///< procedures whose finished run means that it was done
};

/// A shop as it may be equipped.
struct Preset {
  std::string key;
  std::string name;
  model::SupportKind support = model::SupportKind::Stands;
  std::vector<std::string> equipment;
};

struct CauseFile {
  std::string id;
  std::int64_t version = 1;
  std::string source;          ///< of every number
  double fallbackMinutes = 0;  ///< what giving up costs, to begin with
  double comebackDays = 0;     ///< a shake within these days takes back what was confirmed
  double damping = 1;          ///< of answers; not in the file, chosen by its score on closed jobs
  CauseTable table;
  std::vector<Setup> setups;
  std::vector<Check> checks;
  std::vector<Repair> repairs;
  std::vector<Preset> presets;

  [[nodiscard]] std::optional<std::size_t> check(std::string_view key) const;
  [[nodiscard]] std::optional<std::size_t> setup(std::string_view key) const;
  /// The preset of this key, or the first.
  [[nodiscard]] const Preset& presetOrFirst(std::string_view key) const;
};

/// The check as the plan and the ranking take it, on a vehicle of the usual build.
[[nodiscard]] PlannedCheck plannedCheck(const Check& check);

/// Reads a file of causes. Errors name the field by its path: those of model::parseJson and
/// ObjectReader; "causes.unknown_key" (detail text) for a name that stands nowhere, and
/// "causes.bad_chance", "causes.bad_minutes", "causes.bad_weight", "causes.duplicate_key",
/// "causes.no_other", and "causes.no_evidence" for a finding, or what speaks against one, that
/// names not just one of an observation with its words and a limit.
[[nodiscard]] Result<CauseFile> parseCauses(std::string_view text);

/// What is at hand and how the vehicle stands.
struct Circumstances {
  model::SupportKind support = model::SupportKind::Stands;
  std::optional<model::DiscMount> discMount;
  std::vector<std::string> equipment;
  std::vector<std::size_t> leftOut;  ///< checks the user wants left out, or that were made
  std::size_t setup = 0;             ///< the state the vehicle is in
  double fallbackMinutes = 240;
};

/// The plan's problem without the causes; checks that are left out or lack equipment find nothing
/// in it. Indices are those of the file.
[[nodiscard]] PlanProblem problemFor(const CauseFile& file, const Circumstances& circumstances);

}  // namespace sw::diagnosis

namespace sw {

template <>
struct Words<diagnosis::Beyond> {
  using E = diagnosis::Beyond;
  static constexpr auto table =
      std::to_array<std::pair<E, std::string_view>>({{E::Below, "below"}, {E::Above, "above"}});
};

}  // namespace sw
