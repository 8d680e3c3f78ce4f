// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <map>
#include <nlohmann/json.hpp>

#include "report/export_json.h"

namespace sw::report {

namespace {

using model::Entry;
using model::Json;
using model::Side;

constexpr int kDigits = 12;
constexpr double kNothing = 1e-15;  // below this a difference of equal readings is rounding noise

double rounded(double value) {
  if (std::abs(value) < kNothing) return 0.0;
  const int place = kDigits - 1 - static_cast<int>(std::floor(std::log10(std::abs(value))));
  const double scale = std::pow(10.0, std::abs(place));
  return place >= 0 ? std::round(value * scale) / scale : std::round(value / scale) * scale;
}

void put(Json& json, const char* key, const std::optional<double>& value) {
  if (value) json[key] = rounded(*value);
}
void put(Json& json, const char* key, const std::optional<TypedQuantity>& value) {
  if (value) json[key] = rounded(value->si);
}

/// A fact with the place it is sorted by.
struct Placed {
  std::string procedure;
  std::int64_t round = 0;
  std::string step;
  std::string side;
  Json fact;

  [[nodiscard]] auto key() const { return std::tie(procedure, round, step, side); }
};

class Comparable {
 public:
  Comparable(const workshop::JobState& job, SideMapping sides) : m_job(job), m_sides(sides) {
    for (const auto& run : job.runs) m_runs.emplace(run.id.value, &run);
  }

  Json json() const {
    Json json = Json::object();
    json["outcome"] =
        m_job.closed ? std::string(wordOf(m_job.closed->outcome)) : std::string("open");
    json["runs"] = runs();
    json["steps"] = facts<model::StepMark>(
        [](const model::StepMark& mark, Json& out) { out["action"] = wordOf(mark.action); });
    json["observations"] = facts<model::Observation>([](const model::Observation& seen, Json& out) {
      out["key"] = seen.key;
      out["value"] = seen.value;
    });
    json["series"] = series();
    json["torque"] = facts<model::TorqueCheck>(putTorque);
    json["packs"] = facts<model::ShimPack>(putPack);
    json["ledger"] = ledger();
    json["holds"] = facts<model::HoldAnswer>(putAnswer);
    json["parts"] = facts<model::PartUsed>(putPart);
    json["labour"] = facts<model::Labour>([](const model::Labour& labour, Json& out) {
      out["minutes"] = rounded(labour.minutes);
      if (labour.hourlyRateMinor) out["hourly_rate_minor"] = *labour.hourlyRateMinor;
    });
    json["road_tests"] = facts<model::RoadTest>(putRoadTest);
    json["overrides"] = facts<model::Override>(
        [](const model::Override& granted, Json& out) { out["rule"] = granted.rule; });
    json["rechecks"] = facts<model::RecheckDue>([](const model::RecheckDue& due, Json& out) {
      if (due.on) out["on"] = toIso(*due.on);
      put(out, "at_odometer", due.atOdometer);
    });
    json["declined"] = facts<model::WorkDeclined>([](const model::WorkDeclined&, Json&) {});
    return json;
  }

 private:
  static void putTorque(const model::TorqueCheck& check, Json& out) {
    out["group"] = check.group;
    out["set"] = rounded(check.set.si);
    out["stage"] = check.stage;
    out["stages"] = check.stages;
    out["done"] = check.done;
    out["count"] = check.count;
    out["calibration"] = check.calibration;
  }
  static void putPack(const model::ShimPack& pack, Json& out) {
    out["role"] = wordOf(pack.role);
    out["place"] = wordOf(pack.place);
    out["count"] = pack.count;
    out["total"] = rounded(pack.total.si);
    put(out, "measured", pack.measured);
  }
  static void putAnswer(const model::HoldAnswer& answer, Json& out) {
    out["hold"] = answer.hold;
    out["statement"] = answer.statement;
    if (answer.si) {
      out["si"] = rounded(*answer.si);
    } else {
      out["answer"] = answer.answer;
    }
    out["passes"] = answer.passes;
  }
  static void putPart(const model::PartUsed& part, Json& out) {
    out["key"] = part.key;
    out["quantity"] = rounded(part.quantity.si);
    if (part.unitPriceMinor) out["unit_price_minor"] = *part.unitPriceMinor;
    out["currency"] = part.currency;
    out["consumable"] = part.consumable;
  }
  static void putRoadTest(const model::RoadTest& test, Json& out) {
    out["when"] = wordOf(test.when);
    out["shake"] = wordOf(test.shake);
    put(out, "onset", test.onset);
    put(out, "release", test.release);
    out["self_return"] = test.selfReturn;
  }

  std::string sideWord(std::optional<Side> side) const {
    if (!side) return {};
    return std::string(wordOf(m_sides == SideMapping::Exchanged ? model::otherSide(*side) : *side));
  }

  Placed placed(const std::optional<model::RunId>& run, const std::string& step,
                std::optional<Side> side) const {
    Placed place;
    const auto found = run ? m_runs.find(run->value) : m_runs.end();
    if (found != m_runs.end()) {
      place.procedure = found->second->fact.procedure;
      place.round = found->second->fact.round;
    }
    place.step = step;
    place.side = sideWord(side);
    place.fact = Json::object();
    if (!place.procedure.empty()) {
      place.fact["procedure"] = place.procedure;
      place.fact["round"] = place.round;
    }
    if (!step.empty()) place.fact["step"] = step;
    if (side) place.fact["side"] = place.side;
    return place;
  }

  static Json sorted(std::vector<Placed> list) {
    std::stable_sort(list.begin(), list.end(),
                     [](const Placed& a, const Placed& b) { return a.key() < b.key(); });
    Json json = Json::array();
    for (Placed& one : list) json.push_back(std::move(one.fact));
    return json;
  }

  template <class T, class F>
  Json facts(F&& fill) const {
    std::vector<Placed> list;
    for (const Entry* entry : m_job.valid) {
      const T* payload = model::as<T>(*entry);
      if (payload == nullptr) continue;
      Placed place = placed(entry->run, entry->step, entry->side);
      fill(*payload, place.fact);
      list.push_back(std::move(place));
    }
    return sorted(std::move(list));
  }

  Json runs() const {
    std::vector<Placed> list;
    for (const auto& run : m_job.runs) {
      Placed place = placed(run.id, {}, std::nullopt);
      place.fact["why"] = run.fact.why;
      Json sides = Json::array();
      for (const Side side : run.sides) sides.push_back(sideWord(side));
      std::sort(sides.begin(), sides.end());
      place.side = sides.dump();
      place.fact["sides"] = std::move(sides);
      list.push_back(std::move(place));
    }
    return sorted(std::move(list));
  }

  Json series() const {
    std::vector<Placed> list;
    for (const auto& series : m_job.series) {
      Placed place = placed(series.run, series.step, series.side);
      Json& out = place.fact;
      out["quantity"] = word(series.fact.quantity);
      out["limit_key"] = series.fact.limitKey;
      out["judged_by_a_limit"] = series.fact.limit.has_value();
      if (series.fact.state) out["state"] = stateJson(*series.fact.state);
      put(out, "angle_within", series.fact.angleWithin);
      put(out, "arm", series.fact.arm);
      out["planned"] = series.fact.planned;
      out["safety"] = series.fact.safety;
      Json readings = Json::array();
      for (const auto& reading : series.readings) {
        readings.push_back(
            Json{{"si", rounded(reading.fact.value.si)}, {"use", wordOf(reading.fact.use)}});
      }
      out["readings"] = std::move(readings);
      if (series.verdict) out["verdict"] = verdictJson(*series.verdict);
      list.push_back(std::move(place));
    }
    return sorted(std::move(list));
  }

  static Json stateJson(const model::PullState& state) {
    Json json = Json::object();
    model::PullState::fields(
        state, [&](std::string_view key, auto value) { json[std::string(key)] = wordOf(value); });
    return json;
  }

  static Json verdictJson(const model::VerdictGiven& verdict) {
    Json json = Json::object();
    json["verdict"] = verdict.verdict;
    json["so_far"] = verdict.soFar;
    json["value"] = rounded(verdict.value);
    json["standard_uncertainty"] = rounded(verdict.standardUncertainty);
    put(json, "degrees_of_freedom", verdict.degreesOfFreedom);
    json["expanded_uncertainty"] = rounded(verdict.expandedUncertainty);
    put(json, "probability", verdict.probability);
    json["bar"] = rounded(verdict.bar);
    json["used"] = verdict.used;
    json["rule"] = verdict.rule;
    json["limit_side"] = verdict.limitSide;
    json["consistency"] = verdict.consistency;
    return json;
  }

  Json ledger() const {
    std::vector<Placed> list;
    for (const auto& item : m_job.ledger) {
      Placed place = placed(std::nullopt, item.item, item.side);
      place.fact = Json::object();
      place.fact["item"] = item.item;
      if (item.side) place.fact["side"] = place.side;
      place.fact["type"] = wordOf(item.type);
      place.fact["state"] = wordOf(item.state);
      if (item.done) place.fact["done"] = *item.done;
      if (item.count) place.fact["count"] = *item.count;
      list.push_back(std::move(place));
    }
    return sorted(std::move(list));
  }

  const workshop::JobState& m_job;
  SideMapping m_sides;
  std::map<std::int64_t, const workshop::RunView*> m_runs;
};

}  // namespace

Json comparableJob(const workshop::JobState& job, SideMapping sides) {
  return Comparable(job, sides).json();
}

}  // namespace sw::report
