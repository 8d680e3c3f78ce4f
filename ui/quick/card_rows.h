// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "ui/common/shop_session.h"
#include "workshop/job_state.h"

// A printed work card as rows to fill in: what each open step takes, in the card's order.

namespace sw::ui {

enum class FieldLook { Text, Choice, Tick };

/// One thing to type, choose or tick in a row.
struct CardField {
  std::string name;
  FieldLook look = FieldLook::Text;
  QString label;  ///< what it asks
  QString hint;   ///< in the empty field
  std::vector<std::pair<std::string, QString>> choices;
  std::string preset;  ///< stands there beforehand; of itself it fills no row
};

enum class CardKind {
  Tick,
  Part,
  Support,
  Answer,
  Statement,
  Readings,
  Pack,
  Torque,
  Wait,
  RoadTest
};

struct CardRow {
  std::string key;       ///< stays the same while the job grows
  std::size_t step = 0;  ///< index into JobState::steps
  CardKind kind = CardKind::Tick;
  QString title;   ///< of the step, with its side
  QString detail;  ///< the question, the limit, the stage
  std::vector<CardField> fields;
  std::string about;        ///< the statement, the question or the part
  std::int64_t number = 1;  ///< the stage, or how many parts
};

struct CardGroup {
  std::string key;  ///< of the run
  QString title;
  bool due = false;  ///< holds a step that is not optional
  std::vector<CardRow> rows;
};

/// The open steps of the job, a group a run; finished runs have no rows.
[[nodiscard]] std::vector<CardGroup> cardGroups(const workshop::JobState& job,
                                                const workshop::ShopState& shop,
                                                const Timestamp& day);

/// What was filled in, by the names of the fields.
using RowValues = std::map<std::string, std::string>;
[[nodiscard]] bool isFilled(const RowValues& values);

/// One command of a row, and where it goes.
struct CardCommand {
  workshop::Action action;
  Where where;
};
/// The commands of a row as it was filled in. `doneAt` is when the work was done, `now` what times
/// of day are read against. Errors: Missing "workshop.field_needed" (field: its name) where
/// half of a row is filled in; those of doneAtOf.
[[nodiscard]] Result<std::vector<CardCommand>> commandsOf(const CardRow& row,
                                                          const RowValues& values,
                                                          const workshop::JobState& job,
                                                          const std::optional<std::string>& doneAt,
                                                          const Timestamp& now);

}  // namespace sw::ui
