// SPDX-License-Identifier: GPL-3.0-or-later
#include "workshop/shop_state.h"

#include <set>

namespace sw::workshop {

namespace {

template <class Map, class Predicate>
auto findIf(const Map& map, Predicate predicate) -> const typename Map::mapped_type* {
  for (const auto& [key, revision] : map) {
    if (predicate(revision.fact)) return &revision;
  }
  return nullptr;
}

template <class Map>
auto pointersOf(const Map& map) {
  std::vector<const typename Map::mapped_type*> result;
  result.reserve(map.size());
  for (const auto& [key, revision] : map) result.push_back(&revision);
  return result;
}

template <class Map, class Key>
auto pointerTo(const Map& map, const Key& key) -> const typename Map::mapped_type* {
  const auto found = map.find(key);
  return found == map.end() ? nullptr : &found->second;
}

}  // namespace

ShopState::ShopState(const std::vector<model::Entry>& entries) {
  std::set<std::int64_t> replaced;
  for (const auto& entry : entries) {
    if (entry.replaces) replaced.insert(entry.replaces->value);
  }
  for (const auto& entry : entries) {
    m_all.emplace(entry.id.value, entry.payload);
    if (replaced.contains(entry.id.value)) continue;
    if (const auto* p = model::as<model::Person>(entry)) {
      m_people.insert_or_assign(p->person.value, Revision<model::Person>{entry.id, *p});
    } else if (const auto* i = model::as<model::Instrument>(entry)) {
      m_instruments.insert_or_assign(i->instrument.value,
                                     Revision<model::Instrument>{entry.id, *i});
    } else if (const auto* c = model::as<model::InstrumentCheck>(entry)) {
      m_checks.insert_or_assign(c->instrument.value,
                                Revision<model::InstrumentCheck>{entry.id, *c});
    } else if (const auto* v = model::as<model::Vehicle>(entry)) {
      m_vehicles.insert_or_assign(v->vehicle.value, Revision<model::Vehicle>{entry.id, *v});
    } else if (const auto* s = model::as<model::SpecItem>(entry)) {
      m_specs.insert_or_assign({s->vehicle.value, s->key}, Revision<model::SpecItem>{entry.id, *s});
    } else if (const auto* n = model::as<model::ShopNamed>(entry)) {
      m_name = n->name;
    } else if (const auto* own = model::as<model::CauseNumbers>(entry)) {
      m_causeNumbers = own->numbers;
    } else if (const auto* t = model::as<model::ProcedureText>(entry)) {
      m_texts.insert_or_assign(t->hash, Revision<model::ProcedureText>{entry.id, *t});
    }
  }
}

const Revision<model::Person>* ShopState::personByInitials(std::string_view initials) const {
  return findIf(m_people, [&](const auto& p) { return p.active && p.initials == initials; });
}

const Revision<model::Instrument>* ShopState::instrumentByName(std::string_view name) const {
  return findIf(m_instruments, [&](const auto& i) { return i.active && i.name == name; });
}

const Revision<model::Instrument>* ShopState::instrument(model::InstrumentId id) const {
  return pointerTo(m_instruments, id.value);
}

const Revision<model::InstrumentCheck>* ShopState::check(model::InstrumentId id) const {
  return pointerTo(m_checks, id.value);
}

const Revision<model::Vehicle>* ShopState::vehicleByRegistration(std::string_view text) const {
  return findIf(m_vehicles, [&](const auto& v) { return v.registration == text; });
}

const Revision<model::Vehicle>* ShopState::vehicle(model::VehicleId id) const {
  return pointerTo(m_vehicles, id.value);
}

const Revision<model::SpecItem>* ShopState::spec(model::VehicleId id, std::string_view key) const {
  const auto* found = pointerTo(m_specs, std::pair{id.value, std::string(key)});
  return found != nullptr && !found->fact.withdrawn ? found : nullptr;
}

std::vector<const Revision<model::SpecItem>*> ShopState::specSheet(model::VehicleId id) const {
  std::vector<const Revision<model::SpecItem>*> sheet;
  for (const auto& [key, revision] : m_specs) {
    if (key.first == id.value && !revision.fact.withdrawn) sheet.push_back(&revision);
  }
  return sheet;
}

const Revision<model::ProcedureText>* ShopState::procedureText(std::string_view hash) const {
  const auto found = m_texts.find(hash);
  return found == m_texts.end() ? nullptr : &found->second;
}

std::vector<const Revision<model::Person>*> ShopState::people() const {
  return pointersOf(m_people);
}

std::vector<const Revision<model::Instrument>*> ShopState::instruments() const {
  return pointersOf(m_instruments);
}

std::vector<const Revision<model::Vehicle>*> ShopState::vehicles() const {
  return pointersOf(m_vehicles);
}

}  // namespace sw::workshop
