// SPDX-License-Identifier: GPL-3.0-or-later
// Undo: the facts of the last action are withdrawn, and what they had corrected is entered again.
#include <algorithm>
#include <set>

#include "workshop/judging.h"
#include "workshop/last_action.h"
#include "workshop/replacing.h"

namespace sw::workshop {

namespace {

using model::CorrectionReason;
using model::Entry;
using model::EntryId;

/// Follows from other facts, or ends a chain: not an action of its own.
bool follows(const Entry& entry) {
  return model::as<model::VerdictGiven>(entry) != nullptr ||
         model::as<model::Withdrawal>(entry) != nullptr;
}

bool neverUndone(const Entry& entry) {
  return model::as<model::JobOpened>(entry) != nullptr ||
         model::as<model::JobClosed>(entry) != nullptr;
}

/// What the entry had corrected; null where it was new.
const Entry* corrected(const JobState& job, const Entry& entry) {
  const Entry* old = entry.replaces ? job.findEntry(*entry.replaces) : nullptr;
  return old != nullptr && !follows(*old) ? old : nullptr;
}

class Taking {
 public:
  Taking(Context& context, std::string text) : m_context(context), m_text(std::move(text)) {}

  void take(const Entry& entry) {
    if (m_series.contains(entry.id.value)) return;
    const Entry* old = corrected(m_context.job(), entry);
    if (model::as<model::Series>(entry) != nullptr) return takeSeries(entry, old);
    if (const auto* reading = model::as<model::Reading>(entry)) {
      if (m_series.contains(reading->series.value)) return;
      m_touched.insert(reading->series.value);
    }
    if (old != nullptr) {
      m_context.replace(entry, old->payload, CorrectionReason::Other, m_text, old->side);
    } else {
      m_context.replace(entry, model::Withdrawal{m_text}, CorrectionReason::Withdrawn, m_text,
                        entry.side);
    }
  }

  /// The verdicts of what is left.
  Result<void> judge() {
    if (auto again = m_context.refresh(); !again) return failAs(again);
    for (const std::int64_t id : m_touched) {
      const SeriesView* series = m_context.job().findSeries({id});
      if (series == nullptr) continue;
      if (series->usedCount() == 0) {
        withdrawVerdict(m_context, {id}, CorrectionReason::Withdrawn, m_text);
      } else if (auto judged = judgeAgain(m_context, {id}); !judged) {
        return failAs(judged);
      }
    }
    return m_context.refresh();
  }

 private:
  void takeSeries(const Entry& entry, const Entry* old) {
    m_series.insert(entry.id.value);
    withdrawVerdict(m_context, entry.id, CorrectionReason::Withdrawn, m_text);
    if (old != nullptr) {
      m_touched.insert(
          reenterSeries(m_context, entry, old->payload, old->side, CorrectionReason::Other, m_text)
              .value);
      return;
    }
    for (const Entry& reading : readingsOf(m_context.job(), entry.id)) {
      m_context.replace(reading, model::Withdrawal{m_text}, CorrectionReason::Withdrawn, m_text,
                        reading.side);
    }
    m_context.replace(entry, model::Withdrawal{m_text}, CorrectionReason::Withdrawn, m_text,
                      entry.side);
  }

  Context& m_context;
  std::string m_text;
  std::set<std::int64_t> m_series;   ///< taken back whole
  std::set<std::int64_t> m_touched;  ///< to be judged again
};

}  // namespace

std::vector<const Entry*> lastAction(const JobState& job, std::optional<ActionEntries> action) {
  std::vector<const Entry*> taken;
  const Entry* newest = nullptr;
  for (const Entry* entry : job.valid) {
    if (!follows(*entry) && (newest == nullptr || entry->id > newest->id)) newest = entry;
  }
  if (newest == nullptr) return taken;
  for (const Entry* entry : job.valid) {
    if (follows(*entry)) continue;
    const bool meant = action ? entry->id >= action->first && entry->id <= action->last
                              : entry->enteredAt == newest->enteredAt;
    if (!meant) continue;
    if (neverUndone(*entry)) return {};
    taken.push_back(entry);
  }
  std::sort(taken.begin(), taken.end(),
            [](const Entry* a, const Entry* b) { return a->id < b->id; });
  return taken;
}

Result<void> act(const Undo& action, Context& context) {
  std::optional<ActionEntries> meant;
  if (action.from) {
    const auto& all = context.job().entries;
    meant = ActionEntries{{*action.from}, all.empty() ? EntryId{} : all.back()->id};
    if (action.to) meant->last = {*action.to};
  }
  std::vector<Entry> taken;
  for (const Entry* entry : lastAction(context.job(), meant)) taken.push_back(*entry);
  if (taken.empty()) return fail(ErrorCode::Refused, "workshop.nothing_to_undo", "job");
  Taking taking(context, action.reasonText.value_or(""));
  for (const Entry& entry : taken) taking.take(entry);
  if (auto judged = taking.judge(); !judged) return failAs(judged);
  context.tell("undone", {{"count", std::to_string(taken.size())},
                          {"kind", std::string(model::kindOf(taken.front().payload))}});
  return {};
}

}  // namespace sw::workshop
