// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <string>
#include <vector>

#include "diagnosis/own_numbers.h"

// The numbers of the table of causes by names that people know.

namespace sw::ui {

/// What numbers belong to: a cause, a check, a set-up, or nothing of these.
struct NumberItem {
  std::vector<std::string> path;  ///< of all its numbers; empty = those that stand alone
  QString name;
};
[[nodiscard]] std::vector<NumberItem> numberItems(const diagnosis::CauseFile& file);
[[nodiscard]] bool belongsTo(const diagnosis::NumberPlace& place, const NumberItem& item);

/// The heading a number stands under, the same for those that follow each other: a question, a
/// support; empty for the first ones.
[[nodiscard]] QString numberGroup(const diagnosis::CauseFile& file,
                                  const diagnosis::NumberPlace& place);
/// What it is, in its group.
[[nodiscard]] QString numberLabel(const diagnosis::CauseFile& file,
                                  const diagnosis::NumberPlace& place);

/// As it is shown and typed: chances of 100, all others as they are.
[[nodiscard]] QString numberText(diagnosis::NumberKind kind, double value);
/// The same to three figures, for one that nobody typed.
[[nodiscard]] QString roughNumberText(diagnosis::NumberKind kind, double value);
/// Errors: those of parseQuantity for a plain number.
[[nodiscard]] Result<double> numberFrom(diagnosis::NumberKind kind, const std::string& text,
                                        const std::string& field);

/// The path as one name: "checks/balance/minutes".
[[nodiscard]] std::string numberName(const std::vector<std::string>& path);

}  // namespace sw::ui
