// SPDX-License-Identifier: GPL-3.0-or-later
#include "workshop/context.h"

#include <charconv>

namespace sw::workshop {

namespace {

std::string_view word(ReadNote note) {
  switch (note) {
    case ReadNote::BareNumber:
      return "bare_number";
    case ReadNote::MassAsForce:
      return "mass_as_force";
    case ReadNote::MassAsTorque:
      return "mass_as_torque";
    case ReadNote::CommaAsDecimal:
      return "comma_as_decimal";
  }
  return {};
}

}  // namespace

Result<void> Context::enterJob(model::JobId job, JobFacts facts) {
  m_jobId = job;
  m_base = std::move(facts);
  return refresh();
}

Result<void> Context::refresh() {
  JobFacts facts = m_base;
  for (const auto& entry : m_added) {
    if (entry.job.has_value()) facts.push_back(std::make_shared<const model::Entry>(entry));
  }
  // Procedure texts frozen by this very command are not in the book yet.
  const auto lookup = [this](const std::string& hash) {
    if (auto known = m.lookup(hash)) return known;
    for (const auto& procedure : m.library->procedures()) {
      if (procedure.hash == hash) return std::make_shared<const procedures::Procedure>(procedure);
    }
    return std::shared_ptr<const procedures::Procedure>{};
  };
  auto state = deriveJob(std::move(facts), *m.shop, lookup, m.doneAt);
  if (!state) return failAs(state);
  m_state = std::move(*state);
  m_derivedFrom = m_added.size();
  return {};
}

Result<void> Context::refreshIfStale() {
  return m_derivedFrom == m_added.size() ? Result<void>{} : refresh();
}

Place Context::placeOf(std::size_t step) const {
  const StepView& view = m_state->steps.at(step);
  return {m_state->runs[view.run].id, view.step->id, view.side};
}

Place Context::place() const {
  if (m_step) return placeOf(*m_step);
  return {std::nullopt, {}, m_side};
}

model::Entry Context::header(const Place& place) const {
  model::Entry entry;
  entry.id = {m.next.value + static_cast<std::int64_t>(m_added.size())};
  entry.job = m_jobId;
  entry.run = place.run;
  entry.step = place.step;
  entry.side = place.side;
  entry.doneAt = m.doneAt;
  entry.enteredAt = m.now;
  entry.by = m.by;
  entry.programVersion = programVersion();
  return entry;
}

model::EntryId Context::add(model::Payload payload, const Place& place) {
  model::Entry entry = header(place);
  entry.payload = std::move(payload);
  m_added.push_back(std::move(entry));
  return m_added.back().id;
}

model::EntryId Context::addShop(model::Payload payload) {
  const model::EntryId id = add(std::move(payload), {});
  m_added.back().job.reset();
  return id;
}

model::EntryId Context::replace(const model::Entry& old, model::Payload payload,
                                model::CorrectionReason reason, const std::string& text,
                                std::optional<model::Side> side) {
  model::Entry entry = header({old.run, old.step, side});
  entry.job = old.job;
  entry.doneAt = old.doneAt;
  entry.replaces = old.id;
  entry.reason = reason;
  entry.reasonText = text;
  entry.payload = std::move(payload);
  m_added.push_back(std::move(entry));
  return m_added.back().id;
}

void Context::tell(std::string key, std::vector<std::pair<std::string, std::string>> values) {
  m_events.push_back({std::move(key), std::move(values)});
}

Result<TypedQuantity> readQuantity(Context& context, std::string_view text,
                                   const std::string& field, QuantityKind kind,
                                   const std::string& defaultUnit) {
  auto parsed = parseQuantity(text, {field, kind, defaultUnit});
  if (!parsed) return failAs(parsed);
  for (const ReadNote note : parsed->notes) {
    context.tell(
        "read_as",
        {{"field", field}, {"how", std::string(word(note))}, {"value", parsed->value.text()}});
  }
  return parsed->value;
}

Result<std::optional<TypedQuantity>> readQuantity(Context& context,
                                                  const std::optional<std::string>& text,
                                                  const std::string& field, QuantityKind kind,
                                                  const std::string& defaultUnit) {
  if (!text) return std::nullopt;
  auto value = readQuantity(context, std::string_view(*text), field, kind, defaultUnit);
  if (!value) return failAs(value);
  return std::optional<TypedQuantity>(std::move(*value));
}

Result<std::optional<Date>> readDate(const std::optional<std::string>& text,
                                     const std::string& field) {
  if (!text) return std::nullopt;
  auto date = parseDate(*text);
  if (!date) return tl::make_unexpected(date.error().about(field));
  return std::optional<Date>(*date);
}

Result<std::int64_t> readMoney(std::string_view text, const std::string& field) {
  const auto parsed = parseQuantity(text, {field, QuantityKind::Number, {}});
  if (!parsed) return failAs(parsed);
  const double minor = parsed->value.si * 100.0;
  const auto whole = static_cast<std::int64_t>(minor + (minor < 0 ? -0.5 : 0.5));
  const double difference = minor - static_cast<double>(whole);
  if (parsed->value.si < 0 || parsed->value.si > 1e9 || difference > 1e-6 || difference < -1e-6) {
    return fail(ErrorCode::InvalidInput, "workshop.not_money", field,
                {{"text", std::string(text)}, {"example", "4.50"}});
  }
  return whole;
}

std::optional<QuantityKind> measuredBy(model::InstrumentKind type) {
  using model::InstrumentKind;
  switch (type) {
    case InstrumentKind::SpringScale:
      return QuantityKind::Force;
    case InstrumentKind::Micrometer:
    case InstrumentKind::DialIndicator:
    case InstrumentKind::Caliper:
    case InstrumentKind::Feeler:
    case InstrumentKind::SteelRule:
      return QuantityKind::Length;
    case InstrumentKind::TorqueWrench:
      return QuantityKind::Torque;
    case InstrumentKind::PressureGauge:
      return QuantityKind::Pressure;
    case InstrumentKind::Other:
      return std::nullopt;
  }
  return std::nullopt;
}

}  // namespace sw::workshop
