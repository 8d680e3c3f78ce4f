// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <optional>
#include <span>

#include "ui/common/goal.h"

namespace sw::ui {

/// What the window can do from anywhere: one table for buttons, menus, keys and the list of keys in
/// the help.
enum class ActionId {
  Start,
  NewJob,
  Find,
  Undo,
  Mode,
  Look,
  Instruments,
  Bench,
  Vehicle,
  Complaint,
  Causes,
  Kit,
  Work,
  Quick,
  Sheet,
  Finish,
  Help
};

struct ActionRow {
  ActionId id;
  const char* name;                           ///< object name
  const char* text;                           ///< on the button, translated in context "Actions"
  const char* tip;                            ///< what it does
  const char* shortcut;                       ///< portable text of the key
  std::optional<PageId> page = std::nullopt;  ///< where it leads
};
[[nodiscard]] std::span<const ActionRow> actionTable();
[[nodiscard]] const ActionRow& actionRow(ActionId id);

}  // namespace sw::ui
