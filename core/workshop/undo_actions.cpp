// SPDX-License-Identifier: GPL-3.0-or-later
// Undo: the facts of the last action are withdrawn, and what they had corrected is entered again.
#include <algorithm>
#include <nlohmann/json.hpp>
#include <set>

#include "model/entry_json.h"
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

/// An earlier undo entered this again: it stands for what had been corrected.
bool restored(const Entry& entry) {
  return entry.reason == CorrectionReason::Withdrawn && !follows(entry);
}

/// A series that is entered again has new readings; else they say the same.
bool sameContent(const Entry& a, const Entry& b) {
  if (a.side != b.side) return false;
  const auto* one = model::as<model::Reading>(a);
  const auto* other = model::as<model::Reading>(b);
  if (one != nullptr && other != nullptr) {
    return one->value == other->value && one->use == other->use;
  }
  return model::payloadJson(a.payload) == model::payloadJson(b.payload);
}

/// The entry as its own action made it: itself, or what it stands for.
const Entry* made(const JobState& job, const Entry* entry) {
  if (!restored(*entry)) return entry;
  const Entry* taken = corrected(job, *entry);
  for (const Entry* old = taken; old != nullptr; old = corrected(job, *old)) {
    if (old != taken && sameContent(*old, *entry)) return made(job, old);
  }
  return entry;
}

class Taking {
 public:
  Taking(Context& context, std::string text, EntryId first)
      : m_context(context), m_text(std::move(text)), m_first(first) {}

  void take(const Entry& entry) {
    if (m_series.contains(entry.id.value)) return;
    const Entry* old = before(entry);
    if (model::as<model::Series>(entry) != nullptr) return takeSeries(entry, old);
    if (const auto* reading = model::as<model::Reading>(entry)) {
      if (m_series.contains(reading->series.value)) return;
      m_touched.insert(reading->series.value);
    }
    if (old != nullptr) {
      model::Payload payload = old->payload;
      if (auto* again = std::get_if<model::Reading>(&payload)) {  // its series may have moved since
        again->series = model::as<model::Reading>(entry)->series;
      }
      m_context.replace(entry, std::move(payload), CorrectionReason::Withdrawn, m_text, old->side);
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
  /// What stood in the entry's place before the action that is taken back; null where nothing did.
  const Entry* before(const Entry& entry) const {
    const JobState& job = m_context.job();
    const Entry* old = corrected(job, *made(job, &entry));
    while (old != nullptr && made(job, old)->id >= m_first) old = corrected(job, *made(job, old));
    return old;
  }

  void takeSeries(const Entry& entry, const Entry* old) {
    m_series.insert(entry.id.value);
    withdrawVerdict(m_context, entry.id, CorrectionReason::Withdrawn, m_text);
    if (old != nullptr) {
      m_touched.insert(reenterSeries(m_context, entry, old->payload, old->side,
                                     CorrectionReason::Withdrawn, m_text)
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
  EntryId m_first;                   ///< of the action that is taken back
  std::set<std::int64_t> m_series;   ///< taken back whole
  std::set<std::int64_t> m_touched;  ///< to be judged again
};

}  // namespace

std::vector<const Entry*> lastAction(const JobState& job, std::optional<ActionEntries> action,
                                     const std::vector<EntryId>& starts) {
  std::vector<std::pair<const Entry*, const Entry*>> facts;  // valid, and as its action made it
  const Entry* newest = nullptr;
  for (const Entry* entry : job.valid) {
    if (follows(*entry)) continue;
    facts.emplace_back(entry, made(job, entry));
    if (newest == nullptr || facts.back().second->id > newest->id) newest = facts.back().second;
  }
  EntryId begins;
  for (const EntryId start : starts) {
    if (newest != nullptr && start <= newest->id) begins = start;
  }
  std::vector<const Entry*> taken;
  for (const auto& [entry, first] : facts) {
    const bool meant = action ? first->id >= action->first && first->id <= action->last
                              : first->enteredAt == newest->enteredAt && first->id >= begins;
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
  std::optional<EntryId> first;
  if (meant) first = meant->first;
  for (const Entry* entry : lastAction(context.job(), meant, context.starts())) {
    taken.push_back(*entry);
    const EntryId id = made(context.job(), entry)->id;
    first = std::min(first.value_or(id), id);
  }
  if (taken.empty()) return fail(ErrorCode::Refused, "workshop.nothing_to_undo", "job");
  Taking taking(context, action.reasonText.value_or(""), *first);
  for (const Entry& entry : taken) taking.take(entry);
  if (auto judged = taking.judge(); !judged) return failAs(judged);
  context.tell("undone", {{"count", std::to_string(taken.size())},
                          {"kind", std::string(model::kindOf(taken.front().payload))}});
  return {};
}

}  // namespace sw::workshop
