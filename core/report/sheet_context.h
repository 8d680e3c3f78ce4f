// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <map>
#include <optional>
#include <vector>

#include "report/job_sheet.h"

// Internal to core/report: what the sections of a sheet look facts up in.

namespace sw::report {

class SheetContext {
 public:
  SheetContext(const workshop::JobState& job, const workshop::ShopState& shop,
               const SheetOptions& options);

  [[nodiscard]] const workshop::JobState& job() const { return m_job; }
  [[nodiscard]] const workshop::ShopState& shop() const { return m_shop; }
  [[nodiscard]] const SheetOptions& options() const { return m_options; }

  [[nodiscard]] QString initials(const std::optional<model::EntryId>& person) const;
  /// "AB, 2031-04-05 10:20": who did it and when; the time of entry too where it was entered on
  /// another day.
  [[nodiscard]] QString byAndWhen(const model::Entry& entry) const;
  /// The same as a cell of small type; empty without an entry.
  [[nodiscard]] Cell byCell(const model::Entry* entry) const;
  [[nodiscard]] QString instrumentName(const std::optional<model::EntryId>& instrument) const;

  [[nodiscard]] const workshop::RunView* run(const std::optional<model::RunId>& run) const;
  /// "Fit a shim pack and pull, round 2".
  [[nodiscard]] QString runTitle(const workshop::RunView& run) const;
  /// The step's definition in the run's frozen text.
  [[nodiscard]] const procedures::Step* step(const std::optional<model::RunId>& id,
                                             const std::string& step) const;
  /// "Pull, straight ahead (left)".
  [[nodiscard]] QString stepTitle(const model::Entry& entry) const;
  /// "Pull, straight ahead (left) – Fit a shim pack and pull, round 2".
  [[nodiscard]] QString place(const model::Entry& entry) const;
  [[nodiscard]] std::optional<std::size_t> stepIndex(const std::optional<model::RunId>& run,
                                                     const std::string& step,
                                                     std::optional<model::Side> side) const;

  [[nodiscard]] const model::Entry* entry(model::EntryId id) const;
  /// What an entry replaced, oldest first.
  [[nodiscard]] std::vector<const model::Entry*> earlier(const model::Entry& entry) const;

  /// Calls visit(entry, payload) for every valid fact of the kind, in order.
  template <class T, class F>
  void each(F&& visit) const {
    for (const model::Entry* one : m_job.valid) {
      if (const T* payload = model::as<T>(*one)) visit(*one, *payload);
    }
  }

 private:
  const workshop::JobState& m_job;
  const workshop::ShopState& m_shop;
  const SheetOptions& m_options;
  std::map<std::int64_t, const model::Entry*> m_byId;
};

}  // namespace sw::report
