// SPDX-License-Identifier: GPL-3.0-or-later
#include "workshop/spec_needs.h"

#include <algorithm>

#include "mechanics/swivel/shim_packs.h"
#include "procedures/fact_words.h"

namespace sw::workshop {

namespace {

using model::SpecKind;

class Collector {
 public:
  void add(const std::string& title, const procedures::Step& step) {
    if (step.measure && !step.measure->limit.empty()) {
      SpecNeed& need = of(title, step.measure->limit, SpecKind::Limit, step.measure->quantity);
      need.safety = need.safety || step.measure->safety;
    }
    if (step.measure && step.measure->reads == procedures::Reads::DiscThicknessRound) {
      (void)of(title, std::string(kDiscVariationKey), SpecKind::Limit, QuantityKind::Length);
    }
    if (step.torque) {
      SpecNeed& need = of(title, step.torque->fasteners, SpecKind::Torque, QuantityKind::Torque);
      if (need.group.empty()) need.group = step.torque->name;
    }
    if (step.measure && step.measure->drivesRounds) addShims(title);
    if (step.hold && asksWheelNuts(*step.hold)) {
      (void)of(title, std::string(kWheelNutsKey), SpecKind::Torque, QuantityKind::Torque);
    }
  }

  std::vector<SpecNeed> take() { return std::move(m_needs); }

 private:
  static bool asksWheelNuts(const procedures::Hold& hold) {
    return std::any_of(hold.statements.begin(), hold.statements.end(),
                       [](const auto& asked) { return asked.check == "wheel_nut_torque"; });
  }

  void addShims(const std::string& title) {
    (void)of(title, std::string(kShimSizesKey), SpecKind::Text, std::nullopt);
    of(title, std::string(kShimMaxPackKey), SpecKind::Value, QuantityKind::Length).instead =
        kShimMaxCountKey;
    of(title, std::string(kShimMaxCountKey), SpecKind::Value, QuantityKind::Number).instead =
        kShimMaxPackKey;
  }

  /// The need with the key, made where it is new, with the procedure noted in it.
  SpecNeed& of(const std::string& title, const std::string& key, SpecKind type,
               std::optional<QuantityKind> quantity) {
    auto found = std::find_if(m_needs.begin(), m_needs.end(),
                              [&](const SpecNeed& need) { return need.key == key; });
    if (found == m_needs.end()) {
      SpecNeed need;
      need.key = key;
      need.type = type;
      need.quantity = quantity;
      found = m_needs.insert(m_needs.end(), std::move(need));
    }
    auto& titles = found->procedures;
    if (std::find(titles.begin(), titles.end(), title) == titles.end()) titles.push_back(title);
    return *found;
  }

  std::vector<SpecNeed> m_needs;
};

/// The figure that is judged by; null where there is none.
const TypedQuantity* figureOf(const model::SpecItem& line, SpecKind type) {
  const auto of = [](const std::optional<TypedQuantity>& figure) {
    return figure ? &*figure : nullptr;
  };
  switch (type) {
    case SpecKind::Limit:
      return line.min ? of(line.min) : of(line.max);
    case SpecKind::Torque:
      return line.value ? of(line.value) : of(line.min);
    case SpecKind::Value:
      return of(line.value);
    case SpecKind::Text:
      break;
  }
  return nullptr;
}

std::vector<std::string> lacksOf(const SpecNeed& need, const model::SpecItem& line) {
  if (need.type == SpecKind::Text) {
    const bool sizes = mechanics::parseStack(line.text, need.key).has_value();
    return sizes ? std::vector<std::string>{} : std::vector<std::string>{"sizes"};
  }
  std::vector<std::string> lacks;
  const TypedQuantity* figure = figureOf(line, need.type);
  if (figure == nullptr) {
    lacks.emplace_back("figure");
  } else if (need.quantity && figure->kind != *need.quantity) {
    lacks.emplace_back("kind");
  }
  if (need.type == SpecKind::Torque && !line.count) lacks.emplace_back("count");
  return lacks;
}

std::vector<SpecNeed> compare(std::vector<SpecNeed> needs, const ShopState& shop,
                              model::VehicleId vehicle) {
  for (SpecNeed& need : needs) {
    const auto* line = shop.spec(vehicle, need.key);
    if (line == nullptr) continue;
    need.lacks = lacksOf(need, line->fact);
    need.state = need.lacks.empty() ? SpecLineState::Complete : SpecLineState::Incomplete;
    need.sourced = !line->fact.source.empty();
  }
  return needs;
}

/// A step may come to be done when nothing known speaks against it on any of the sides. What will
/// be observed is not known before.
bool mayHold(const procedures::Condition& condition, const procedures::Facts& facts,
             const std::vector<model::Side>& sides) {
  const auto on = [&](model::Side side) {
    return std::all_of(condition.begin(), condition.end(), [&](const auto& clause) {
      const auto& [fact, words] = clause;
      const auto word = facts(fact, side);
      if (!word || (procedures::isObserved(fact) && word->empty())) return true;
      return std::find(words.begin(), words.end(), *word) != words.end();
    });
  };
  return condition.empty() || std::any_of(sides.begin(), sides.end(), on);
}

const std::vector<model::Side> kBothSides{model::Side::Left, model::Side::Right};

/// What the arrangement decides; the round and the support stay open, so that every round counts.
procedures::Facts factsOf(const model::Vehicle& vehicle) {
  return [&vehicle](const std::string& name, std::optional<model::Side> side) {
    if (name == "side" && side) return std::optional(std::string(wordOf(*side)));
    return procedures::arrangementWord(vehicle.arrangement, name);
  };
}

Result<std::vector<SpecNeed>> needsOf(const std::vector<const procedures::Procedure*>& list,
                                      const ShopState& shop, model::VehicleId id) {
  const auto* vehicle = shop.vehicle(id);
  if (vehicle == nullptr) {
    return fail(ErrorCode::NotFound, "workshop.no_vehicle", "vehicle",
                {{"text", std::to_string(id.value)}});
  }
  Collector collector;
  const auto facts = factsOf(vehicle->fact);
  for (const procedures::Procedure* procedure : list) {
    for (const auto& step : procedure->steps) {
      if (mayHold(step.when, facts, kBothSides)) collector.add(procedure->title, step);
    }
  }
  return compare(collector.take(), shop, id);
}

/// Marked as not applicable on every side it was made for.
bool leftOut(const JobState& job, std::size_t run, const procedures::Step& step) {
  bool any = false;
  for (const StepView& view : job.steps) {
    if (view.run != run || view.step != &step) continue;
    if (view.action != model::StepAction::NotApplicable) return false;
    any = true;
  }
  return any;
}

}  // namespace

std::vector<SpecNeed> specNeedsOf(const JobState& job, const ShopState& shop) {
  Collector collector;
  for (std::size_t i = 0; i < job.runs.size(); ++i) {
    const RunView& run = job.runs[i];
    const auto facts = workshop::factsOf(job, run.fact.round);
    for (const auto& step : run.procedure->steps) {
      if (!mayHold(step.when, facts, run.sides) || leftOut(job, i, step)) continue;
      collector.add(run.procedure->title, step);
    }
  }
  return compare(collector.take(), shop, job.opened.vehicle);
}

Result<std::vector<SpecNeed>> specNeedsOf(const procedures::Library& library,
                                          const std::string& plan, const ShopState& shop,
                                          model::VehicleId vehicle) {
  const auto* found = library.plan(plan);
  if (found == nullptr) {
    return fail(ErrorCode::NotFound, "workshop.no_plan", "plan", {{"text", plan}});
  }
  std::vector<const procedures::Procedure*> list;
  for (const std::string& id : found->procedures) {
    if (const auto* procedure = library.procedure(id)) list.push_back(procedure);
  }
  return needsOf(list, shop, vehicle);
}

Result<std::vector<SpecNeed>> specNeedsOf(const procedures::Library& library, const ShopState& shop,
                                          model::VehicleId vehicle) {
  std::vector<const procedures::Procedure*> list;
  for (const auto& procedure : library.procedures()) list.push_back(&procedure);
  return needsOf(list, shop, vehicle);
}

bool satisfied(const SpecNeed& need, const std::vector<SpecNeed>& all) {
  return need.state == SpecLineState::Complete ||
         std::any_of(all.begin(), all.end(), [&](const SpecNeed& other) {
           return other.key == need.instead && other.state == SpecLineState::Complete;
         });
}

}  // namespace sw::workshop
