// SPDX-License-Identifier: GPL-3.0-or-later
#include "workshop/recent_facts.h"

namespace sw::workshop {

Result<JobFacts> RecentFacts::ofJob(const store::Book& book, model::JobId job) {
  auto next = book.nextEntryId();
  if (!next) return failAs(next);
  if (m_known && m_known->job == job && m_known->next == *next) return m_known->facts;
  auto entries = book.jobEntries(job);
  if (!entries) return failAs(entries);
  if (entries->empty()) {
    return fail(ErrorCode::NotFound, "workshop.no_job", "job",
                {{"job", std::to_string(job.value)}});
  }
  m_known = Known{job, shareFacts(std::move(*entries)), *next};
  return m_known->facts;
}

void RecentFacts::appended(const std::vector<model::Entry>& entries) {
  if (entries.empty()) return;
  m_starts.push_back(entries.front().id);
  if (!m_known) return;
  // Read before the append, so that a gap shows that others wrote in between.
  if (m_known->next != entries.front().id) {
    m_known.reset();
    return;
  }
  for (const model::Entry& entry : entries) {
    if (entry.job == m_known->job)
      m_known->facts.push_back(std::make_shared<const model::Entry>(entry));
  }
  m_known->next = {entries.back().id.value + 1};
}

}  // namespace sw::workshop
