// SPDX-License-Identifier: GPL-3.0-or-later
#include "job_fixture.h"

#include <algorithm>
#include <stdexcept>

#include "units/parse.h"
#include "workshop/series_judge.h"

namespace sw::testing {

TypedQuantity quantity(const std::string& text, QuantityKind kind) {
  auto parsed = parseQuantity(text, {"fixture", kind, {}});
  if (!parsed) throw std::runtime_error("fixture: " + text);
  return parsed->value;
}

JobFixture::JobFixture()
    : m_library(procedures::Library::load(std::string(SW_SOURCE_DIR) + "/resources")) {
  fillShop();
  model::JobOpened opened;
  opened.vehicle = {1};
  opened.odometer = quantity("148210 km", QuantityKind::Length);
  opened.request = "Cure the steering shake";
  add(opened);
}

EntryId JobFixture::shopFact(model::Payload payload) {
  model::Entry entry = header();
  entry.payload = std::move(payload);
  m_shop.push_back(std::move(entry));
  return m_shop.back().id;
}

EntryId JobFixture::add(model::Payload payload, const FixturePlace& place) {
  model::Entry entry = header();
  entry.job = model::JobId{7};
  entry.run = place.run;
  entry.step = place.step;
  entry.side = place.side;
  entry.payload = std::move(payload);
  m_job.push_back(std::move(entry));
  return m_job.back().id;
}

EntryId JobFixture::correct(EntryId old, model::Payload payload, model::CorrectionReason reason,
                            const std::string& text) {
  for (auto* list : {&m_job, &m_shop}) {
    const auto found = std::find_if(list->begin(), list->end(),
                                    [&](const auto& entry) { return entry.id == old; });
    if (found == list->end()) continue;
    model::Entry entry = header();
    entry.job = found->job;
    entry.run = found->run;
    entry.step = found->step;
    entry.side = found->side;
    entry.replaces = old;
    entry.reason = reason;
    entry.reasonText = text;
    entry.payload = std::move(payload);
    list->push_back(std::move(entry));
    return list->back().id;
  }
  throw std::runtime_error("fixture: no entry to correct");
}

model::RunId JobFixture::start(const std::string& procedure, std::vector<Side> sides,
                               std::int64_t round, const std::string& why) {
  const auto* found = m_library.procedure(procedure);
  if (found == nullptr) throw std::runtime_error("fixture: no procedure " + procedure);
  shopFact(model::ProcedureText{found->hash, found->id, found->version, found->text});
  model::RunStarted started;
  started.procedure = found->id;
  started.hash = found->hash;
  for (const Side side : sides) (side == Side::Left ? started.left : started.right) = true;
  started.round = round;
  started.why = why;
  return model::RunId{add(started).value};
}

void JobFixture::startPlan(const std::string& plan) {
  for (const auto& procedure : m_library.plan(plan)->procedures) start(procedure);
}

std::vector<const procedures::Procedure*> JobFixture::planProcedures(
    const std::string& plan) const {
  std::vector<const procedures::Procedure*> list;
  for (const auto& id : m_library.plan(plan)->procedures) list.push_back(m_library.procedure(id));
  return list;
}

EntryId JobFixture::takeSeries(const FixturePlace& place, const std::string& limitKey,
                               const std::vector<std::string>& readings, QuantityKind kind,
                               const procedures::MeasureSpec& spec) {
  model::Series series;
  series.quantity = kind;
  series.limitKey = limitKey;
  series.state = spec.state;
  series.instrument = instrumentFor(kind);
  series.planned = spec.planned;
  series.settling = spec.settling;
  series.safety = spec.safety;
  if (spec.angleWithin) series.angleWithin = quantity(*spec.angleWithin, QuantityKind::Angle);
  const auto shop = shopState();
  if (const auto* limit = shop.spec({1}, limitKey)) {
    const bool fits = !series.state || workshop::stateFits(limit->fact, *series.state);
    if (fits) series.limit = limit->entry;
  }
  const EntryId id = add(series, place);
  std::int64_t taken = 0;
  for (const auto& reading : readings) {
    const auto use =
        taken++ < spec.settling ? model::ReadingUse::Settling : model::ReadingUse::Used;
    add(model::Reading{id, quantity(reading, kind), use}, place);
  }
  judge(id);
  return id;
}

void JobFixture::judge(EntryId id) {
  const auto job = state();
  for (const auto& view : job.series) {
    if (view.id != id || view.usedCount() == 0) continue;
    const auto shop = shopState();
    const auto basis = workshop::basisOf(view.fact, shop);
    const auto outcome = workshop::judgeSeries(view, *basis);
    if (!outcome) throw std::runtime_error("fixture: " + outcome.error().key);
    const auto fact = workshop::verdictFact(id, *outcome);
    if (view.verdictEntry) {
      correct(*view.verdictEntry, fact, model::CorrectionReason::Other, "judged again");
    } else {
      add(fact, {view.run, view.step, view.side});
    }
  }
}

void JobFixture::workThrough() {
  add(model::SupportChosen{model::SupportKind::Stands});
  for (int pass = 0; pass < 5; ++pass) {
    const auto job = state();
    bool any = false;
    for (std::size_t i = 0; i < job.steps.size(); ++i) {
      const auto& step = job.steps[i];
      const auto* hold = job.holdAt(i);
      if (step.superseded || (hold != nullptr ? hold->passed() : step.done())) continue;
      any = true;
      doStep(job, i);
    }
    if (!any) return;
  }
}

workshop::JobState JobFixture::state() const {
  const auto shop = shopState();
  auto derived = workshop::deriveJob(
      workshop::shareFacts(m_job), shop,
      [this](const std::string& hash) -> std::shared_ptr<const procedures::Procedure> {
        for (const auto& one : m_library.procedures()) {
          // Owned by the library, which outlives the state.
          if (one.hash == hash) return {std::shared_ptr<void>{}, &one};
        }
        return nullptr;
      },
      m_now);
  if (!derived) throw std::runtime_error("fixture: " + derived.error().key);
  return std::move(*derived);
}

model::Entry JobFixture::header() {
  model::Entry entry;
  entry.id = {++m_last};
  m_now.utcMilliseconds += 60'000;
  entry.doneAt = entry.enteredAt = m_now;
  if (person.valid()) entry.by = person;
  entry.programVersion = "0.1.0";
  return entry;
}

EntryId JobFixture::instrument(std::int64_t id, const std::string& name, model::InstrumentKind type,
                               QuantityKind kind, const std::string& graduation,
                               const std::string& error, const std::string& max) {
  model::Instrument fact;
  fact.instrument = {id};
  fact.name = name;
  fact.type = type;
  fact.graduation = quantity(graduation, kind);
  fact.permissibleError = quantity(error, kind);
  fact.rangeMax = quantity(max, kind);
  fact.calibratedOn = Date{2030, 9, 1};
  fact.calibrationDue = Date{2032, 9, 1};
  return shopFact(fact);
}

EntryId JobFixture::instrumentFor(QuantityKind kind) const {
  if (kind == QuantityKind::Force) return scale;
  if (kind == QuantityKind::Pressure) return gauge;
  return kind == QuantityKind::Torque ? wrench : dial;
}

void JobFixture::limit(const std::string& key, QuantityKind kind, const std::string& min,
                       const std::string& max, const std::string& secondMin,
                       const std::string& secondMax) {
  model::SpecItem item;
  item.vehicle = {1};
  item.key = key;
  item.type = model::SpecKind::Limit;
  if (!min.empty()) item.min = quantity(min, kind);
  if (!max.empty()) item.max = quantity(max, kind);
  if (!secondMin.empty()) item.secondMin = quantity(secondMin, kind);
  if (!secondMax.empty()) item.secondMax = quantity(secondMax, kind);
  item.source = "Shop notes, invented";
  shopFact(item);
}

void JobFixture::torque(const std::string& key, const std::string& value, const std::string& second,
                        std::int64_t count, const std::string& upTo) {
  model::SpecItem item;
  item.vehicle = {1};
  item.key = key;
  item.type = model::SpecKind::Torque;
  item.value = quantity(value, QuantityKind::Torque);
  item.secondValue = quantity(second, QuantityKind::Torque);
  if (!upTo.empty()) item.max = quantity(upTo, QuantityKind::Torque);
  item.fastenerSize = "M10x1.5";
  item.fastenerClass = "8.8";
  item.count = count;
  item.pattern = count > 2 ? "cross" : "";
  item.source = "Shop notes, invented";
  shopFact(item);
}

void JobFixture::fillShop() {
  person = shopFact(model::Person{{1}, "Ada Sommer", "AS", true});
  scale = instrument(1, "Spring scale 2", model::InstrumentKind::SpringScale, QuantityKind::Force,
                     "0.5 N", "0.5 N", "100 N");
  gauge = instrument(2, "Tyre gauge", model::InstrumentKind::PressureGauge, QuantityKind::Pressure,
                     "0.05 bar", "0.05 bar", "6 bar");
  dial = instrument(3, "Dial indicator 1", model::InstrumentKind::DialIndicator,
                    QuantityKind::Length, "0.01 mm", "0.01 mm", "200 mm");
  wrench = instrument(4, "Torque wrench 40-200", model::InstrumentKind::TorqueWrench,
                      QuantityKind::Torque, "1 N m", "4 N m", "200 N m");
  model::Vehicle vehicle;
  vehicle.vehicle = {1};
  vehicle.registration = "TRX 318";
  vehicle.makeModel = "Light four-wheel drive, long wheelbase";
  vehicle.vin = "4471-00921";
  vehicle.owner = "M. Keller";
  vehicle.tyreFitted = "235/85 R16";
  vehicle.tyreOriginal = "7.50 R16";
  vehicle.handOfDrive = model::HandOfDrive::Right;
  vehicle.trafficSide = model::HandOfDrive::Left;
  vehicle.frontAxleLoad = quantity("960 kg", QuantityKind::Mass);
  vehicle.arrangement.dragLinkSide = Side::Right;
  vehicle.arrangement.steeringArmOnCap = model::YesNo::No;
  vehicle.arrangement.lubricant = model::Lubricant::Grease;
  vehicle.arrangement.shimEnds = model::ShimEnds::Top;
  vehicle.arrangement.shimLayout = model::ShimLayout::CapFlange;
  vehicle.arrangement.swivelBearing = model::SwivelBearing::Taper;
  vehicle.arrangement.dragLinkFixesTo = model::FixesTo::SteeringArm;
  vehicle.arrangement.damperFixesTo = model::FixesTo::TrackRod;
  vehicle.arrangement.discMount = model::DiscMount::Outside;
  vehicle.arrangement.wheelBearing = model::WheelBearingSetting::EndFloat;
  vehicle.arrangement.lockingHubs = model::YesNo::No;
  shopFact(vehicle);
  limit("swivel.starting_force", QuantityKind::Force, "16 N", "24 N", "1.63 kgf", "2.45 kgf");
  limit("swivel.dressed_pull", QuantityKind::Force, "18 N", "40 N");
  limit("swivel.end_float", QuantityKind::Length, "", "0.08 mm");
  limit("tyre.front_pressure", QuantityKind::Pressure, "1.8 bar", "2.6 bar");
  torque("swivel_cap_bolts", "62 N m", "46 lbf ft", 4);
  torque("seal_retainer_bolts", "11 N m", "8 lbf ft", 6);
  torque("drag_link_nut", "48 N m", "35 lbf ft", 1, "64 N m");
  torque("track_rod_nut", "48 N m", "35 lbf ft", 1, "64 N m");
  torque("damper_nut", "55 N m", "41 lbf ft", 1);
  torque("caliper_bolts", "88 N m", "65 lbf ft", 2);
  torque("wheel_nuts", "118 N m", "87 lbf ft", 5);
}

std::vector<std::string> JobFixture::readingsFor(const procedures::MeasureSpec& spec) {
  static const std::vector<std::string> kForces{"21 N", "20 N", "19.5 N", "20 N", "20.5 N"};
  static const std::vector<std::string> kDressed{"30 N", "29.5 N", "30 N", "30.5 N"};
  const bool dressed = spec.limit == "swivel.dressed_pull";
  std::vector<std::string> list;
  for (std::int64_t i = 0; i < spec.planned + spec.settling; ++i) {
    const auto n = static_cast<std::size_t>(i) % 4;
    if (spec.quantity == QuantityKind::Force) list.push_back(dressed ? kDressed[n] : kForces[n]);
    if (spec.quantity == QuantityKind::Pressure) list.push_back("2.20 bar");
    if (spec.quantity != QuantityKind::Length) continue;
    if (spec.limit.empty()) list.push_back("152 mm");
    if (!spec.limit.empty()) list.push_back(n == 1 ? "0.04 mm" : "0.03 mm");
  }
  return list;
}

void JobFixture::answer(const procedures::Hold& hold, const workshop::StatementView& view,
                        const FixturePlace& place) {
  const auto& statement = *view.statement;
  model::HoldAnswer fact{hold.key, statement.key, "seen and tried", std::nullopt, true};
  for (const auto& choice : statement.choices) {
    if (choice.passes) fact.answer = choice.word;
  }
  if (statement.answer == procedures::AnswerType::Count) {
    fact.answer = std::to_string(statement.atLeast.value_or(1));
    fact.si = static_cast<double>(statement.atLeast.value_or(1));
  }
  if (statement.answer == procedures::AnswerType::Quantity) {
    const bool mass = statement.quantity == QuantityKind::Mass;
    fact.answer = mass ? "2000 kg" : "118 N m";
    fact.si = mass ? 2000 : 118;
  }
  add(fact, place);
}

void JobFixture::doStep(const workshop::JobState& job, std::size_t index) {
  const auto& view = job.steps[index];
  const procedures::Step& step = *view.step;
  const FixturePlace place{job.runs[view.run].id, step.id, view.side};
  if (const auto* hold = job.holdAt(index)) {
    for (const auto& statement : hold->statements) answer(*step.hold, statement, place);
    return;
  }
  for (const auto& observe : step.observe) {
    const auto good = std::find_if(observe.choices.begin(), observe.choices.end(),
                                   [](const auto& choice) { return choice.means.empty(); });
    add(model::Observation{observe.key, good->word, ""}, place);
  }
  if (step.measure) {
    takeSeries(place, step.measure->limit, readingsFor(*step.measure), step.measure->quantity,
               *step.measure);
  }
  if (step.shimPack) {
    model::ShimPack pack;
    pack.role = step.shimPack->role;
    pack.shims = pack.role == model::PackRole::Found ? "0.50 + 0.20" : "0.50 + 0.10";
    pack.count = 2;
    pack.total =
        quantity(pack.role == model::PackRole::Found ? "0.7 mm" : "0.6 mm", QuantityKind::Length);
    add(pack, place);
  }
  if (step.waitMinutes) add(model::TimerStarted{*step.waitMinutes, step.title}, place);
  if (step.roadTest) {
    model::RoadTest test;
    test.when = step.roadTest->when;
    const bool before = test.when == model::RoadTestWhen::Before;
    test.shake = before ? model::ShakeResult::Same : model::ShakeResult::None;
    if (before) test.onset = quantity("72 km/h", QuantityKind::Speed);
    test.speedSource = model::SpeedSource::Gps;
    test.selfReturn = "returns";
    add(test, place);
  }
  markDone(job, view, place);
}

void JobFixture::markDone(const workshop::JobState& job, const workshop::StepView& view,
                          const FixturePlace& place) {
  const procedures::Step& step = *view.step;
  const auto facts = workshop::factsOf(job, job.runs[view.run].fact.round);
  for (const auto& part : step.parts) {
    if (!procedures::holds(part.when, facts, view.side)) continue;
    model::PartUsed used;
    used.name = part.name;
    used.key = part.key;
    used.number = "P-" + std::to_string(100 + m_last % 50);
    used.quantity = quantity(std::to_string(part.quantity), QuantityKind::Number);
    used.unitPriceMinor = 145;
    used.currency = "EUR";
    add(used, place);
  }
  if (step.torque) torqueGroup(step, place);
  add(model::StepMark{model::StepAction::Done, ""}, place);
  for (const auto& effect : step.ledger) {
    if (!procedures::holds(effect.when, facts, view.side)) continue;
    add(model::LedgerMove{effect.item, effect.name, effect.type, effect.to, effect.fastened,
                          std::nullopt, std::nullopt, ""},
        place);
  }
}

void JobFixture::torqueGroup(const procedures::Step& step, const FixturePlace& place) {
  const auto shop = shopState();
  const auto* spec = shop.spec({1}, step.torque->fasteners);
  if (spec == nullptr) throw std::runtime_error("fixture: no " + step.torque->fasteners);
  model::TorqueCheck check;
  check.group = step.torque->fasteners;
  check.spec = spec->entry;
  check.set = *spec->fact.value;
  check.wrench = wrench;
  check.stages = check.stage =
      std::max<std::int64_t>(1, static_cast<std::int64_t>(step.torque->stages.size()));
  check.done = check.count = spec->fact.count.value_or(1);
  check.pattern = spec->fact.pattern;
  check.calibration = "ok";
  add(check, place);
  if (step.torque->item.empty()) return;
  add(model::LedgerMove{step.torque->item, step.torque->name, model::LedgerKind::Removed,
                        model::LedgerState::Torqued, true, check.done, check.count, ""},
      place);
}

}  // namespace sw::testing
