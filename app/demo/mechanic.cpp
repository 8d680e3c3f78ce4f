// SPDX-License-Identifier: GPL-3.0-or-later
#include "demo/mechanic.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "units/format.h"
#include "workshop/rules.h"
#include "workshop/runs.h"

namespace sw::app::demo {

namespace {

using model::Side;
using workshop::JobState;
using workshop::StepView;

constexpr int kClosingHour = 17;
constexpr int kOpeningHour = 8;
constexpr std::int64_t kMillisecondsPerMinute = 60'000;
constexpr std::size_t kMostSteps = 2000;

constexpr double kLongestOnTheRule = 0.5;  // metres

/// What a sound vehicle shows, in SI, by the line of the sheet it is judged by or else by the step.
struct Typical {
  std::string_view what;
  double si;
};
constexpr auto kTypical = std::to_array<Typical>({{"wheel_bearing.end_float", 0.05e-3},
                                                  {"wheel_bearing.preload_pull", 18.0},
                                                  {"disc.min_thickness", 11.42e-3},
                                                  {"disc.runout", 0.04e-3},
                                                  {"toe.total", 1.0e-3},
                                                  {"thickness", 11.45e-3},
                                                  {"length_before", 1.183},
                                                  {"length_after", 1.183},
                                                  {"diameter", 0.702},
                                                  {"height", 0.455}});

std::optional<double> typical(std::string_view what) {
  for (const Typical& row : kTypical) {
    if (row.what == what) return row.si;
  }
  return std::nullopt;
}

std::int64_t minuteOfDay(const Timestamp& time) {
  const std::int64_t local = time.utcMilliseconds / kMillisecondsPerMinute + time.offsetMinutes;
  return ((local % 1440) + 1440) % 1440;
}

bool undecidedButMorePullsHelp(const workshop::Outcome& outcome) {
  bool undecided = false;
  bool more = false;
  for (const auto& event : outcome.events) {
    if (event.key != "verdict") continue;
    for (const auto& [name, value] : event.values) {
      undecided = undecided || (name == "verdict" && value == "undecided");
      more = more || (name == "advice" && value == "more_readings");
    }
  }
  return undecided && more;
}

}  // namespace

/// Everything one step asks for, sent command by command.
class Mechanic::StepWork {
 public:
  StepWork(Mechanic& mechanic, model::JobId job, const Situation& situation, const JobState& state,
           std::size_t step)
      : m_mechanic(mechanic),
        m_job(job),
        m_situation(situation),
        m_state(state),
        m_index(step),
        m_view(state.steps[step]),
        m_definition(*m_view.step) {}

  Result<void> run() {
    if (m_definition.hold) return answerHold();
    if (m_definition.id == "choose_support") {
      return send(workshop::ChooseSupport{m_situation.support});
    }
    if (auto parts = useParts(); !parts) return failAs(parts);
    if (auto seen = observe(); !seen) return failAs(seen);
    if (m_definition.waitMinutes) return waitOut();
    if (m_definition.shimPack) return recordPack();
    if (m_definition.measure) return measure();
    if (m_definition.torque) return torque();
    if (m_definition.roadTest) return drive();
    if (!m_definition.observe.empty()) return {};  // the last observation completed it
    return send(workshop::DoStep{});
  }

 private:
  Result<void> send(workshop::Action action) {
    workshop::Command command;
    command.job = m_job.value;
    command.step = m_state.runs[m_view.run].fact.procedure + "/" + m_definition.id;
    command.side = m_view.side;
    command.round = m_state.runs[m_view.run].fact.round;
    command.action = std::move(action);
    auto outcome = m_mechanic.send(std::move(command));
    return outcome ? Result<void>{} : failAs(outcome);
  }

  Result<void> answerHold() {
    for (const auto& view : m_state.holdAt(m_index)->statements) {
      workshop::AnswerHold answer;
      answer.statement = view.statement->key;
      answer.answer = seenAt(*view.statement);
      if (auto sent = send(answer); !sent) return sent;
    }
    return {};
  }

  [[nodiscard]] std::string seenAt(const procedures::Statement& statement) const {
    using procedures::AnswerType;
    if (statement.answer == AnswerType::Choice) {
      const auto good = std::find_if(statement.choices.begin(), statement.choices.end(),
                                     [](const auto& choice) { return choice.passes; });
      return good == statement.choices.end() ? "" : good->word;
    }
    if (statement.answer == AnswerType::Count) {
      return std::to_string(std::max<std::int64_t>(statement.atLeast.value_or(1), 1));
    }
    if (statement.check == "wheel_nut_torque") return wheelNutTorque();
    if (statement.answer == AnswerType::Quantity) return "1500 kg";
    return "seen";
  }

  [[nodiscard]] std::string wheelNutTorque() const {
    const auto shop = m_mechanic.m_shop.shop();
    if (!shop) return "";
    const auto* spec = (*shop)->spec(m_state.opened.vehicle, "wheel_nuts");
    return spec != nullptr && spec->fact.value ? spec->fact.value->text() : "";
  }

  Result<void> useParts() {
    for (const auto& part : m_definition.parts) {
      const auto facts = workshop::factsOf(m_state, m_state.runs[m_view.run].fact.round);
      if (!part.singleUse || !procedures::holds(part.when, facts, m_view.side)) continue;
      workshop::UsePart use;
      use.name = part.name;
      use.key = part.key;
      use.quantity = std::to_string(part.quantity);
      if (auto sent = send(use); !sent) return sent;
    }
    return {};
  }

  /// The first word of every question is the unremarkable one.
  Result<void> observe() {
    for (const auto& question : m_definition.observe) {
      const std::string& first = question.choices.at(0).word;
      if (auto sent = send(workshop::Observe{question.key, first, std::nullopt}); !sent)
        return sent;
    }
    return {};
  }

  Result<void> waitOut() {
    const bool running =
        std::any_of(m_state.timers.begin(), m_state.timers.end(),
                    [&](const workshop::TimerView& timer) { return timer.step == m_index; });
    if (running) return send(workshop::DoStep{});
    if (auto started = send(workshop::StartTimer{}); !started) return started;
    m_mechanic.passMinutes(*m_definition.waitMinutes + 1);
    return {};
  }

  [[nodiscard]] const Hub& hub() const {
    return m_view.side == Side::Right ? m_situation.right : m_situation.left;
  }

  /// The pack in millimetres that the side has now.
  [[nodiscard]] double packNow() const {
    const auto total = m_view.side ? m_state.packTotal(*m_view.side) : std::nullopt;
    return total ? inMillimetres(*total) : packFoundTotal();
  }

  [[nodiscard]] double packFoundTotal() const {
    double total = 0;
    for (const auto& pack : m_state.packs) {
      if (pack.side == m_view.side && pack.fact.role == model::PackRole::Found) {
        total = pack.fact.total.si * 1000.0;
      }
    }
    return total;
  }

  [[nodiscard]] double trueForce() const {
    const bool flange = m_state.vehicle.fact.arrangement.shimLayout == model::ShimLayout::CapFlange;
    const double found = packFoundTotal();
    const double change = found > 0 ? packNow() - found : 0.0;
    const double interference = hub().interferenceMillimetres + (flange ? -change : change);
    const double beyond = std::max(0.0, interference - hub().kneeMillimetres);
    double force = hub().dragNewtons + hub().newtonsPerMillimetre * beyond;
    const auto& state = m_definition.measure->state;
    if (state && state->seal == model::OnOff::On) force += 14.0;
    if (state && state->sealant == model::Sealant::Wet) force += 0.5;
    return force;
  }

  Result<void> recordPack() {
    workshop::RecordPack pack;
    pack.role = m_definition.shimPack->role;
    pack.shims = m_situation.packFound;
    if (pack.role == model::PackRole::Found) {
      pack.instrument = m_situation.micrometer;
      return send(pack);
    }
    // The first pack fitted is the one found; every later round takes the next one allowed.
    if (m_state.runs[m_view.run].fact.round > 1 && m_view.side) {
      const auto shop = m_mechanic.m_shop.shop();
      if (!shop) return failAs(shop);
      const bool over = m_state.runs[m_view.run].fact.why == "over_the_limit";
      auto next = workshop::nextAllowedPack(
          m_state, **shop, *m_view.side,
          over ? workshop::ForceDirection::Lower : workshop::ForceDirection::Raise);
      if (!next) return failAs(next);
      if (next->pack) pack.shims = next->pack->stack;
    }
    return send(pack);
  }

  [[nodiscard]] std::string instrumentFor(const procedures::MeasureSpec& spec) const {
    switch (spec.quantity) {
      case QuantityKind::Force:
        return m_situation.scale;
      case QuantityKind::Pressure:
        return m_situation.gauge;
      default:
        break;
    }
    const auto& wanted = spec.instruments;
    if (wanted.empty()) return m_situation.dial;
    switch (wanted.front()) {
      case model::InstrumentKind::SteelRule:
        return oneLengthSi(spec) > kLongestOnTheRule ? m_situation.tape : m_situation.rule;
      case model::InstrumentKind::Micrometer:
        return m_situation.micrometer;
      case model::InstrumentKind::Feeler:
        return m_situation.feeler;
      default:
        return m_situation.dial;
    }
  }

  /// Of a length: what is typical where it is known, else something small.
  [[nodiscard]] double oneLengthSi(const procedures::MeasureSpec& spec) const {
    if (const auto known = typical(spec.limit.empty() ? m_definition.id : spec.limit))
      return *known;
    if (!spec.limit.empty()) return 0.01e-3;
    const bool ruled =
        !spec.instruments.empty() && spec.instruments.front() == model::InstrumentKind::SteelRule;
    return ruled ? 0.155 : 0.35e-3;
  }

  [[nodiscard]] double oneReadingSi(const procedures::MeasureSpec& spec) const {
    switch (spec.quantity) {
      case QuantityKind::Force:
        return typical(spec.limit).value_or(trueForce()) +
               m_situation.scatterNewtons * m_mechanic.nextNormal();
      case QuantityKind::Pressure:
        return 2.0e5;
      default:
        return oneLengthSi(spec);
    }
  }

  /// Read to the nearest mark, written in the instrument's unit.
  [[nodiscard]] std::string shown(double si, const model::Instrument& instrument) const {
    const double marks = std::round(std::max(0.0, si) / instrument.graduation.si);
    const auto unit = findUnit(instrument.graduation.kind, instrument.graduation.unit);
    const double toSi = unit ? unit->toSi : 1.0;
    return fixedDecimal(marks * instrument.graduation.si / toSi, 2);
  }

  Result<void> measure() {
    const auto& spec = *m_definition.measure;
    const auto shop = m_mechanic.m_shop.shop();
    if (!shop) return failAs(shop);
    const std::string name = instrumentFor(spec);
    const auto* instrument = (*shop)->instrumentByName(name);
    if (instrument == nullptr) {
      return fail(ErrorCode::NotFound, "workshop.no_instrument", "instrument", {{"text", name}});
    }
    workshop::TakeReadings take;
    take.instrument = name;
    for (std::int64_t i = 0; i < spec.planned + spec.settling; ++i) {
      const double extra = i < spec.settling ? 0.8 : 0.0;  // the settling pull reads high
      const bool force = spec.quantity == QuantityKind::Force;
      take.readings += shown(oneReadingSi(spec) + (force ? extra : 0.0), instrument->fact) + " ";
    }
    take.readings.pop_back();
    if (auto taken = send(take); !taken) return taken;
    return pullOn(std::move(take), instrument->fact);
  }

  /// Undecided: pulls again, one by one, as long as the program says that more pulls would decide.
  Result<void> pullOn(workshop::TakeReadings take, const model::Instrument& instrument) {
    constexpr int kMostExtraPulls = 7;
    for (int extra = 0; extra < kMostExtraPulls && m_mechanic.m_morePullsAsked; ++extra) {
      take.readings = shown(oneReadingSi(*m_definition.measure), instrument);
      if (auto taken = send(take); !taken) return taken;
    }
    return {};
  }

  Result<void> torque() {
    const auto stages = std::max<std::size_t>(1, m_definition.torque->stages.size());
    const auto shop = m_mechanic.m_shop.shop();
    if (!shop) return failAs(shop);
    const auto* spec = (*shop)->spec(m_state.opened.vehicle, m_definition.torque->fasteners);
    const auto* small = (*shop)->instrumentByName(m_situation.smallWrench);
    for (std::size_t stage = 1; stage <= stages; ++stage) {
      workshop::MarkTorque mark;
      mark.stage = static_cast<std::int64_t>(stage);
      const double share =
          m_definition.torque->stages.empty() ? 1.0 : m_definition.torque->stages[stage - 1];
      const double set = spec != nullptr && spec->fact.value ? spec->fact.value->si * share : 0.0;
      if (set > 0) mark.set = fixedDecimal(set, 1) + " N m";
      const bool fits = small != nullptr && small->fact.rangeMax && set <= small->fact.rangeMax->si;
      mark.wrench = fits ? m_situation.smallWrench : m_situation.largeWrench;
      if (auto sent = send(mark); !sent) return sent;
    }
    return {};
  }

  Result<void> drive() {
    workshop::RecordRoadTest test;
    const bool after = m_definition.roadTest->when == model::RoadTestWhen::After;
    test.shake =
        after && m_mechanic.m_drives++ == 0 ? m_situation.afterDrive : model::ShakeResult::None;
    if (!after) test.shake = model::ShakeResult::Same;
    if (test.shake != model::ShakeResult::None) {
      test.onset = "73 km/h";
      test.release = "61 km/h";
      test.speedSource = model::SpeedSource::Dial;
    }
    if (after) test.selfReturn = "returns";
    return send(test);
  }

  Mechanic& m_mechanic;
  model::JobId m_job;
  const Situation& m_situation;
  const JobState& m_state;
  std::size_t m_index;
  const StepView& m_view;
  const procedures::Step& m_definition;
};

Mechanic::Mechanic(workshop::Workshop& shop, ManualClock& clock, std::string initials,
                   std::uint64_t seed)
    : m_shop(shop), m_clock(clock), m_initials(std::move(initials)), m_random(seed) {}

Result<workshop::Outcome> Mechanic::send(workshop::Command command) {
  command.by = m_initials;
  if (m_listener) m_listener(command);
  auto outcome = m_shop.perform(command);
  m_morePullsAsked = outcome && undecidedButMorePullsHelp(*outcome);
  return outcome;
}

Result<workshop::Outcome> Mechanic::send(model::JobId job, workshop::Action action) {
  workshop::Command command;
  command.job = job.value;
  command.action = std::move(action);
  return send(std::move(command));
}

void Mechanic::passMinutes(double minutes) {
  m_clock.advanceMilliseconds(static_cast<std::int64_t>(minutes * kMillisecondsPerMinute));
  const std::int64_t minute = minuteOfDay(m_clock.now());
  if (minute < std::int64_t{kClosingHour} * 60 && minute >= std::int64_t{kOpeningHour} * 60) return;
  const std::int64_t toOpening = (std::int64_t{kOpeningHour} * 60 - minute + 1440) % 1440;
  m_clock.advanceMilliseconds(toOpening * kMillisecondsPerMinute);
}

/// Sum of twelve uniform numbers less six: near enough to normal for scatter, the same everywhere.
double Mechanic::nextNormal() {
  double sum = -6.0;
  for (int i = 0; i < 12; ++i) {
    m_random = m_random * 6364136223846793005ULL + 1442695040888963407ULL;
    sum += static_cast<double>(m_random >> 11U) / 9007199254740992.0;
  }
  return sum;
}

Result<void> Mechanic::doOne(model::JobId job, const Situation& situation, const JobState& state,
                             std::size_t step) {
  const Date day = localDate(m_clock.now());
  passMinutes(std::max(1.0, state.steps[step].step->minutes));
  if (localDate(m_clock.now()) != day) return {};  // a new day asks the support first
  return StepWork(*this, job, situation, state, step).run();
}

Result<void> Mechanic::work(model::JobId job, const Situation& situation, const Stop& stop) {
  for (std::size_t count = 0; count < kMostSteps; ++count) {
    auto state = m_shop.job(job);
    if (!state) return failAs(state);
    std::optional<std::size_t> next;
    for (std::size_t i = 0; i < state->steps.size() && !next; ++i) {
      const StepView& view = state->steps[i];
      const auto* hold = state->holdAt(i);
      const bool open = hold != nullptr ? !hold->passed() : !view.done();
      if (open && !view.superseded && !view.step->optional &&
          workshop::againstWork(*state, i).empty()) {
        next = i;
      }
    }
    if (!next || (stop && stop(*state, *next))) return {};
    if (auto done = doOne(job, situation, *state, *next); !done) {
      return tl::make_unexpected(
          done.error().about(state->stepName(*next) + ": " + done.error().field));
    }
  }
  return fail(ErrorCode::Internal, "demo.never_ends");
}

}  // namespace sw::app::demo
