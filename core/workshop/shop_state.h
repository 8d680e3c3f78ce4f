// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "model/entry.h"

namespace sw::workshop {

/// One revision in force: the fact and the entry that carries it.
template <class T>
struct Revision {
  model::EntryId entry;
  T fact;
};

/// The shop as it stood after a given entry: people, instruments, vehicles, spec sheets, procedure
/// texts. Built from shop entries in order of id; corrections take the place of what they replace.
class ShopState {
 public:
  explicit ShopState(const std::vector<model::Entry>& entries);

  [[nodiscard]] const Revision<model::Person>* personByInitials(std::string_view initials) const;
  [[nodiscard]] const Revision<model::Instrument>* instrumentByName(std::string_view name) const;
  [[nodiscard]] const Revision<model::Instrument>* instrument(model::InstrumentId id) const;
  /// The newest own check of the instrument, if any.
  [[nodiscard]] const Revision<model::InstrumentCheck>* check(model::InstrumentId id) const;
  [[nodiscard]] const Revision<model::Vehicle>* vehicleByRegistration(std::string_view text) const;
  [[nodiscard]] const Revision<model::Vehicle>* vehicle(model::VehicleId id) const;
  [[nodiscard]] const Revision<model::SpecItem>* spec(model::VehicleId id,
                                                      std::string_view key) const;
  [[nodiscard]] std::vector<const Revision<model::SpecItem>*> specSheet(model::VehicleId id) const;
  [[nodiscard]] const Revision<model::ProcedureText>* procedureText(std::string_view hash) const;

  /// What the shop calls itself; empty when nobody said.
  [[nodiscard]] const std::string& name() const { return m_name; }
  /// The shop's own numbers of causes, JSON text; empty = the shipped ones.
  [[nodiscard]] const std::string& causeNumbers() const { return m_causeNumbers; }

  [[nodiscard]] std::vector<const Revision<model::Person>*> people() const;
  [[nodiscard]] std::vector<const Revision<model::Instrument>*> instruments() const;
  [[nodiscard]] std::vector<const Revision<model::Vehicle>*> vehicles() const;

  /// Any shop revision by its entry id, whether still in force or not.
  template <class T>
  [[nodiscard]] const T* revision(model::EntryId entry) const {
    const auto found = m_all.find(entry.value);
    return found == m_all.end() ? nullptr : std::get_if<T>(&found->second);
  }

 private:
  std::map<std::int64_t, model::Payload> m_all;
  std::string m_name;
  std::string m_causeNumbers;
  std::map<std::int64_t, Revision<model::Person>> m_people;
  std::map<std::int64_t, Revision<model::Instrument>> m_instruments;
  std::map<std::int64_t, Revision<model::InstrumentCheck>> m_checks;
  std::map<std::int64_t, Revision<model::Vehicle>> m_vehicles;
  std::map<std::pair<std::int64_t, std::string>, Revision<model::SpecItem>> m_specs;
  std::map<std::string, Revision<model::ProcedureText>, std::less<>> m_texts;
};

}  // namespace sw::workshop
