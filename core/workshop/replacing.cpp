// SPDX-License-Identifier: GPL-3.0-or-later
#include "workshop/replacing.h"

namespace sw::workshop {

using model::CorrectionReason;
using model::Entry;
using model::EntryId;

std::vector<Entry> readingsOf(const JobState& job, EntryId series) {
  std::vector<Entry> copies;
  for (const Entry* entry : job.valid) {
    const auto* reading = model::as<model::Reading>(*entry);
    if (reading != nullptr && reading->series == series) copies.push_back(*entry);
  }
  return copies;
}

EntryId reenterSeries(Context& context, const Entry& series, model::Payload payload,
                      std::optional<model::Side> side, CorrectionReason reason,
                      const std::string& text) {
  const auto readings = readingsOf(context.job(), series.id);
  const EntryId moved = context.replace(series, std::move(payload), reason, text, side);
  for (const Entry& entry : readings) {
    model::Reading reading = *model::as<model::Reading>(entry);
    reading.series = moved;
    context.replace(entry, std::move(reading), reason, text, side);
  }
  return moved;
}

void withdrawVerdict(Context& context, EntryId series, CorrectionReason reason,
                     const std::string& text) {
  for (const Entry* entry : context.job().valid) {
    const auto* verdict = model::as<model::VerdictGiven>(*entry);
    if (verdict == nullptr || verdict->series != series) continue;
    const Entry copy = *entry;
    context.replace(copy, model::Withdrawal{"its series was corrected"}, reason, text, copy.side);
    return;
  }
}

}  // namespace sw::workshop
