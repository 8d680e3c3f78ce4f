// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <vector>

#include "procedures/procedure.h"
#include "report/document.h"
#include "workshop/job_state.h"

namespace sw::report {

struct CardOptions {
  Paper paper = Paper::A4;
  QString shopName;
  /// What a job without runs is carded from: the procedures of a plan, in order, for both sides.
  std::vector<const procedures::Procedure*> plan;
};

/// The work card: what is to be done, on paper to tick and write on. Black and white, small type,
/// two columns. Procedures that are finished stand in one line; steps done are ticked already.
[[nodiscard]] Document workCard(const workshop::JobState& job, const workshop::ShopState& shop,
                                const CardOptions& options);

}  // namespace sw::report
