// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "model/entry.h"

// A fact as people read it: its fields in words, with what was typed.

namespace sw::report {

/// The fields of `entry` that differ from `other`'s, or all that say something where there is none:
/// "18.5 N; use: used". References to other facts say nothing on paper and are left out.
[[nodiscard]] QString fieldsText(const model::Entry& entry, const model::Entry* other);

/// "wrong side: read on the right"; empty for what replaces nothing.
[[nodiscard]] QString reasonText(const model::Entry& entry);

}  // namespace sw::report
