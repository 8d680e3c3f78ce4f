// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <span>

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
  Vehicle,
  Complaint,
  Kit,
  Work,
  Quick,
  Sheet,
  Finish
};

struct ActionRow {
  ActionId id;
  const char* name;      ///< object name
  const char* text;      ///< on the button, translated in context "Actions"
  const char* tip;       ///< what it does
  const char* shortcut;  ///< portable text of the key
};
[[nodiscard]] std::span<const ActionRow> actionTable();
[[nodiscard]] const ActionRow& actionRow(ActionId id);

}  // namespace sw::ui
