// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "procedures/library.h"
#include "workshop/job_state.h"

// A job in memory, built from entries with the shipped procedures: an invented shop, vehicle and
// figures. No book, no clock.

namespace sw::testing {

using model::EntryId;
using model::Side;

struct FixturePlace {
  std::optional<model::RunId> run;
  std::string step;
  std::optional<Side> side;
};

[[nodiscard]] TypedQuantity quantity(const std::string& text, QuantityKind kind);

class JobFixture {
 public:
  JobFixture();

  // ids the tests need
  EntryId person, scale, gauge, steelRule, dial, wrench;

  EntryId shopFact(model::Payload payload);

  EntryId add(model::Payload payload, const FixturePlace& place = {});

  /// A new entry in the place of an old one, of the job or of the shop.
  EntryId correct(EntryId old, model::Payload payload, model::CorrectionReason reason,
                  const std::string& text);

  model::RunId start(const std::string& procedure, std::vector<Side> sides = both(),
                     std::int64_t round = 1, const std::string& why = "plan");

  void startPlan(const std::string& plan = "swivel-preload");

  [[nodiscard]] std::vector<const procedures::Procedure*> planProcedures(
      const std::string& plan = "swivel-preload") const;

  /// A judged series with these readings; the first `settling` are not used.
  EntryId takeSeries(const FixturePlace& place, const std::string& limitKey,
                     const std::vector<std::string>& readings, QuantityKind kind,
                     const procedures::MeasureSpec& spec);

  /// Gives the verdict of a series as it stands now.
  void judge(EntryId id);

  /// Does every step of the job as if all went well.
  void workThrough();

  [[nodiscard]] workshop::ShopState shopState() const { return workshop::ShopState(m_shop); }
  [[nodiscard]] workshop::JobState state() const;

  [[nodiscard]] const std::vector<model::Entry>& jobEntries() const { return m_job; }
  [[nodiscard]] std::vector<model::Entry>& jobEntries() { return m_job; }
  [[nodiscard]] const std::vector<model::Entry>& shopEntries() const { return m_shop; }

  static std::vector<Side> both() { return {Side::Left, Side::Right}; }

 private:
  model::Entry header();

  EntryId instrument(std::int64_t id, const std::string& name, model::InstrumentKind type,
                     QuantityKind kind, const std::string& graduation, const std::string& error,
                     const std::string& max);

  [[nodiscard]] EntryId instrumentFor(QuantityKind kind) const;

  void limit(const std::string& key, QuantityKind kind, const std::string& min,
             const std::string& max, const std::string& secondMin = {},
             const std::string& secondMax = {});

  void torque(const std::string& key, const std::string& value, const std::string& second,
              std::int64_t count, const std::string& upTo = {});

  void fillShop();

  static std::vector<std::string> readingsFor(const procedures::MeasureSpec& spec);

  void answer(const procedures::Hold& hold, const workshop::StatementView& view,
              const FixturePlace& place);

  void doStep(const workshop::JobState& job, std::size_t index);

  void markDone(const workshop::JobState& job, const workshop::StepView& view,
                const FixturePlace& place);

  void torqueGroup(const procedures::Step& step, const FixturePlace& place);

  procedures::Library m_library;
  std::vector<model::Entry> m_shop, m_job;
  std::int64_t m_last = 0;
  Timestamp m_now{1'930'000'000'000, 120};
};

}  // namespace sw::testing
