// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "shop_fixture.h"
#include "workshop/rules.h"

// Checks generated from the procedure files: a finished job without one hold answer, one ledger
// end, one single-use part, one safety reading or one step is refused by name.

namespace sw::test {

/// A job in which nothing stands against sign-off, looked at with facts taken out of it.
class FinishedJob {
 public:
  /// Fails the test where something stands against sign-off.
  explicit FinishedJob(Shop& shop);

  [[nodiscard]] const workshop::JobState& state() const { return m_complete; }

  // Each takes one thing after the other out and gives the number of cases it looked at.
  std::size_t missEveryStatement();
  std::size_t missEveryLedgerItem();
  std::size_t missEverySingleUsePart();
  std::size_t missEverySafetyReading();
  std::size_t missEveryStep();

 private:
  [[nodiscard]] std::vector<workshop::Refusal> refusals(const std::vector<model::EntryId>& without);
  template <class T>
  [[nodiscard]] std::optional<model::EntryId> newest(std::size_t step) const;
  [[nodiscard]] std::vector<model::EntryId> answersOf(std::size_t step,
                                                      const std::string& statement) const;
  [[nodiscard]] std::vector<model::EntryId> endsOf(const workshop::LedgerView& item) const;

  Shop& m_shop;
  workshop::JobState m_complete;
};

/// Is this among the refusals, with `what` somewhere in its words?
[[nodiscard]] bool names(const std::vector<workshop::Refusal>& refusals, const std::string& key,
                         const std::string& step, const std::string& what = {});
[[nodiscard]] std::string listed(const std::vector<workshop::Refusal>& refusals);

}  // namespace sw::test
