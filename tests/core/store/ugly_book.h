// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <random>
#include <string_view>
#include <type_traits>
#include <vector>

#include "random_facts.h"
#include "small_shop.h"

namespace sw::store {

/// Where fields of this name may point in uglyEntries.
inline std::int64_t uglyReference(std::string_view name) {
  if (name == "series") return 7;
  if (name == "limit" || name == "spec") return 9;
  return name == "instrument_check" ? 10 : 2;
}

inline constexpr bool isOfShop(std::string_view kind) {
  return kind == "person" || kind == "instrument" || kind == "instrument_check" ||
         kind == "vehicle" || kind == "spec_item" || kind == "procedure_text" ||
         kind == "shop_named" || kind == "cause_numbers";
}

/// A book that keeps every promise, with odd texts and numbers in every kind of fact. The picture
/// "cafe" belongs to it.
inline std::vector<model::Entry> uglyEntries(unsigned seed) {
  std::mt19937 random(seed);
  const RandomFiller fill{random, &uglyReference};
  std::vector<model::Entry> entries = smallShop();
  const auto add = [&](std::string_view kind, model::Payload payload) -> model::Entry& {
    const auto id = static_cast<std::int64_t>(entries.size()) + 1;
    entries.push_back(makeEntry(id, std::move(payload)));
    model::Entry& entry = entries.back();
    if (!isOfShop(kind)) entry.job = model::JobId{1};
    fill("step", entry.step);
    fill("side", entry.side);
    fill("reason_text", entry.reasonText);
    entry.by = model::EntryId{1};
    entry.doneAt.offsetMinutes = fill.upTo(1680) - 840;
    return entry;
  };
  add("spec_item", randomFact<model::SpecItem>(fill));
  add("instrument_check", randomFact<model::InstrumentCheck>(fill));
  forEachKind([&]<class Fact>() {
    for (int i = 0; i < 2; ++i) {
      auto fact = randomFact<Fact>(fill);
      if constexpr (std::is_same_v<Fact, model::Photo>) fact.hash = "cafe";
      if constexpr (std::is_same_v<Fact, model::RunStarted>) fact.hash = "h1";
      model::Entry& entry = add(Fact::kKind, std::move(fact));
      if (!std::is_same_v<Fact, model::Withdrawal> && i == 0) continue;
      entry.replaces = model::EntryId{entry.id.value - 1};
      entry.reason = model::CorrectionReason::Other;
    }
  });
  return entries;
}

}  // namespace sw::store
