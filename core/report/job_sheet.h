// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "report/document.h"
#include "workshop/job_state.h"

namespace sw::report {

enum class SheetCopy { Workshop, Customer };

struct SheetOptions {
  SheetCopy copy = SheetCopy::Workshop;
  Paper paper = Paper::A4;
  QString shopName;  ///< empty = none printed
};

/// The job sheet: for the workshop everything that was done, measured and answered, for the
/// customer what was found, done, used and agreed. `shop` is the shop as of the job's closing. The
/// same facts give the same document: it looks at no clock, and of a verdict at nothing but what
/// was stored.
[[nodiscard]] Document jobSheet(const workshop::JobState& job, const workshop::ShopState& shop,
                                const SheetOptions& options);

}  // namespace sw::report
