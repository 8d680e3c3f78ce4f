// SPDX-License-Identifier: GPL-3.0-or-later
#include "procedures/instantiate.h"

#include <algorithm>
#include <array>
#include <map>

#include "procedures/fact_words.h"

namespace sw::procedures {

namespace {

using model::Side;
using Indices = std::vector<std::size_t>;

/// Finds one field of the arrangement by name and takes its word.
struct FieldWord {
  const std::string& fact;
  std::optional<std::string>& found;

  template <class E>
  void operator()(std::string_view name, const std::optional<E>& value) const {
    if (name != fact || !value) return;
    const std::string_view text = wordOf(*value);
    if (text != "unknown") found = std::string(text);
  }
};

void addAll(Indices& to, const Indices& more) {
  to.insert(to.end(), more.begin(), more.end());
  std::sort(to.begin(), to.end());
  to.erase(std::unique(to.begin(), to.end()), to.end());
}

/// Whom a step's followers wait for: seen from the left, from the right, and from a once step,
/// which joins both.
enum Seen : std::size_t { SeenFromBoth, SeenFromLeft, SeenFromRight };
constexpr std::size_t kSeenCount = 3;
using Waits = std::array<Indices, kSeenCount>;

Seen seenFrom(Side side) {
  return side == Side::Left ? SeenFromLeft : SeenFromRight;
}

class Builder {
 public:
  Builder(const Procedure& procedure, const std::vector<Side>& sides, const Facts& facts)
      : m_procedure(procedure), m_facts(facts) {
    for (const Side side : {Side::Left, Side::Right}) {
      if (std::find(sides.begin(), sides.end(), side) != sides.end()) m_sides.push_back(side);
    }
    if (const auto word = facts("drag_link_side", std::nullopt)) {
      m_dragLinkSide = fromWord<Side>(*word);
    }
  }

  std::vector<StepInstance> build() {
    for (const Step& step : m_procedure.steps) {
      Waits waits = step.side == StepSide::Once ? addOnce(step) : addSided(step);
      m_waits.insert_or_assign(step.id, std::move(waits));
    }
    return std::move(m_instances);
  }

 private:
  /// What the step itself waits for. Needs are earlier steps, so their waits are known already.
  Indices needsOf(const Step& step, Seen seen) const {
    Indices all;
    for (const std::string& need : step.needs) {
      const auto found = m_waits.find(need);
      if (found != m_waits.end()) addAll(all, found->second.at(seen));
    }
    return all;
  }

  /// The step's own instance where it is made, else what it would have waited for.
  Indices add(const Step& step, std::optional<Side> side) {
    Indices needs = needsOf(step, side ? seenFrom(*side) : SeenFromBoth);
    const bool made = (!side || worksOn(step, *side)) && holds(step.when, m_facts, side);
    if (!made) return needs;
    m_instances.push_back({&step, side, std::move(needs)});
    return {m_instances.size() - 1};
  }

  Waits addOnce(const Step& step) {
    const Indices own = add(step, std::nullopt);
    return {own, own, own};
  }

  Waits addSided(const Step& step) {
    Waits waits;
    if (m_sides.empty()) waits.at(SeenFromBoth) = needsOf(step, SeenFromBoth);
    for (const Side side : m_sides) {
      waits.at(seenFrom(side)) = add(step, side);
      addAll(waits.at(SeenFromBoth), waits.at(seenFrom(side)));
    }
    return waits;
  }

  bool worksOn(const Step& step, Side side) const {
    if (step.side == StepSide::Each || !m_dragLinkSide) return true;
    return (step.side == StepSide::DragLinkSide) == (side == *m_dragLinkSide);
  }

  const Procedure& m_procedure;
  const Facts& m_facts;
  std::vector<Side> m_sides;
  std::optional<Side> m_dragLinkSide;
  std::vector<StepInstance> m_instances;
  std::map<std::string, Waits> m_waits;
};

}  // namespace

bool holds(const Condition& condition, const Facts& facts, std::optional<Side> side) {
  return std::all_of(condition.begin(), condition.end(), [&](const auto& clause) {
    const auto& [fact, words] = clause;
    const auto word =
        fact == "side" && side ? std::optional(std::string(wordOf(*side))) : facts(fact, side);
    if (!word) return !isObserved(fact);
    return std::find(words.begin(), words.end(), *word) != words.end();
  });
}

std::optional<std::string> arrangementWord(const model::AxleArrangement& arrangement,
                                           const std::string& fact) {
  std::optional<std::string> found;
  model::AxleArrangement::fields(arrangement, FieldWord{fact, found});
  return found;
}

std::vector<StepInstance> instantiate(const Procedure& procedure, const std::vector<Side>& sides,
                                      const Facts& facts) {
  return Builder(procedure, sides, facts).build();
}

}  // namespace sw::procedures
