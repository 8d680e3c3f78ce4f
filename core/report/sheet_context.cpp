// SPDX-License-Identifier: GPL-3.0-or-later
#include "report/sheet_context.h"

#include <algorithm>

#include "report/quantity_text.h"
#include "report/wording.h"

namespace sw::report {

SheetContext::SheetContext(const workshop::JobState& job, const workshop::ShopState& shop,
                           const SheetOptions& options)
    : m_job(job), m_shop(shop), m_options(options) {
  for (const auto& one : m_job.entries) m_byId.emplace(one->id.value, one.get());
}

QString SheetContext::initials(const std::optional<model::EntryId>& person) const {
  const auto* found = person ? m_shop.revision<model::Person>(*person) : nullptr;
  if (found == nullptr) return QStringLiteral("–");
  return fromUtf8(found->initials.empty() ? found->name : found->initials);
}

QString SheetContext::byAndWhen(const model::Entry& entry) const {
  QString text = initials(entry.by) + QStringLiteral(", ") + timeText(entry.doneAt);
  if (localDate(entry.doneAt) != localDate(entry.enteredAt)) {
    text += QStringLiteral(" (entered ") + timeText(entry.enteredAt) + QStringLiteral(")");
  }
  return text;
}

Cell SheetContext::byCell(const model::Entry* entry) const {
  if (entry == nullptr) return {};
  return {{styled(byAndWhen(*entry), Emphasis::Quiet)}};
}

QString SheetContext::instrumentName(const std::optional<model::EntryId>& instrument) const {
  const auto* found = instrument ? m_shop.revision<model::Instrument>(*instrument) : nullptr;
  return found == nullptr ? QStringLiteral("–") : fromUtf8(found->name);
}

const workshop::RunView* SheetContext::run(const std::optional<model::RunId>& run) const {
  if (!run) return nullptr;
  const auto found = std::find_if(m_job.runs.begin(), m_job.runs.end(),
                                  [&](const workshop::RunView& view) { return view.id == *run; });
  return found == m_job.runs.end() ? nullptr : &*found;
}

QString SheetContext::runTitle(const workshop::RunView& run) const {
  QString title = fromUtf8(run.procedure->title);
  if (run.fact.round > 1) title += QStringLiteral(", round %1").arg(run.fact.round);
  return title;
}

const procedures::Step* SheetContext::step(const std::optional<model::RunId>& id,
                                           const std::string& step) const {
  const auto* found = run(id);
  if (found == nullptr) return nullptr;
  for (const procedures::Step& one : found->procedure->steps) {
    if (one.id == step) return &one;
  }
  return nullptr;
}

QString SheetContext::stepTitle(const model::Entry& entry) const {
  const auto* found = step(entry.run, entry.step);
  const QString title = found == nullptr ? humanWord(entry.step) : fromUtf8(found->title);
  return title + sideSuffix(entry.side);
}

QString SheetContext::place(const model::Entry& entry) const {
  const auto* in = run(entry.run);
  const QString title = stepTitle(entry);
  return in == nullptr ? title : title + QStringLiteral(" – ") + runTitle(*in);
}

std::optional<std::size_t> SheetContext::stepIndex(const std::optional<model::RunId>& run,
                                                   const std::string& step,
                                                   std::optional<model::Side> side) const {
  if (!run) return std::nullopt;
  for (std::size_t i = 0; i < m_job.runs.size(); ++i) {
    if (m_job.runs[i].id == *run) return m_job.findStep(i, step, side);
  }
  return std::nullopt;
}

const model::Entry* SheetContext::entry(model::EntryId id) const {
  const auto found = m_byId.find(id.value);
  return found == m_byId.end() ? nullptr : found->second;
}

std::vector<const model::Entry*> SheetContext::earlier(const model::Entry& entry) const {
  std::vector<const model::Entry*> chain;
  std::optional<model::EntryId> at = entry.replaces;
  while (at) {
    const model::Entry* before = this->entry(*at);
    if (before == nullptr || chain.size() > m_byId.size()) break;
    chain.push_back(before);
    at = before->replaces;
  }
  std::reverse(chain.begin(), chain.end());
  return chain;
}

}  // namespace sw::report
