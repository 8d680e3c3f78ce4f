// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include "base/words.h"
#include "model/ids.h"

namespace sw::store {

/// One thing found by typed words.
struct SearchHit {
  enum class Kind {
    Vehicle,
    Request,    ///< the owner's words when the job was opened
    Complaint,  ///< the owner's words in the complaint
    Part,
    Note
  };
  Kind kind = Kind::Vehicle;
  model::VehicleId vehicle;
  std::optional<model::JobId> job;  ///< absent for a vehicle
  model::EntryId entry;
  /// As recorded; of a vehicle its plate, make and model, VIN, owner and notes, with commas.
  std::string text;
};

}  // namespace sw::store

namespace sw {

template <>
struct Words<store::SearchHit::Kind> {
  using E = store::SearchHit::Kind;
  static constexpr auto table =
      std::to_array<std::pair<E, std::string_view>>({{E::Vehicle, "vehicle"},
                                                     {E::Request, "request"},
                                                     {E::Complaint, "complaint"},
                                                     {E::Part, "part"},
                                                     {E::Note, "note"}});
};

}  // namespace sw
