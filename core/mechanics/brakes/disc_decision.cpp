// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/brakes/disc_decision.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "mechanics/number_checks.h"

namespace sw::mechanics {

namespace {

void checkMeasured(NumberChecks& checks, const std::string& field,
                   const std::optional<MeasuredLength>& measured) {
  if (!measured) return;
  checks.notNegative(field, measured->value)
      .notNegative(field + "_uncertainty", measured->standardUncertainty);
}

Result<void> check(const DiscDecisionInput& input) {
  NumberChecks checks;
  for (std::size_t at = 0; at < kDiscsOfAnAxle; ++at) {
    const DiscFigures& disc = input.discs[at];
    const std::string field = "discs/" + std::to_string(at) + "/";
    checks.positive(field + "minimum", disc.minimum.value)
        .positive(field + "minimum_uncertainty", disc.minimum.standardUncertainty);
    checkMeasured(checks, field + "variation", disc.variation);
    checkMeasured(checks, field + "runout", disc.runout);
    checkMeasured(checks, field + "residual", disc.residual);
    checks.notNegative(field + "first_order", disc.firstOrder)
        .notNegative(field + "cut_per_side", disc.cutPerSide);
  }
  const DiscLimits& limits = input.limits;
  checks.positive("discard", limits.discard)
      .positive("machine_to", limits.machineTo)
      .positive("variation_limit", limits.variation)
      .positive("runout_limit", limits.runout)
      .positive("difference_limit", limits.differenceAfter)
      .confidence(input.confidence);
  if (auto done = checks.done(); !done) return done;
  if (!limits.machineTo || *limits.machineTo >= limits.discard) return {};
  return fail(ErrorCode::OutOfRange, "disc_decision.machine_to_below_discard", "machine_to");
}

Judged<Length> judge(const MeasuredLength& measured, const Limits<Length>& limits,
                     double confidence) {
  return judged<Length>({measured.value.si(), measured.standardUncertainty.si(), {}}, limits,
                        confidence);
}

std::optional<Judged<Length>> judgeMost(const std::optional<MeasuredLength>& measured,
                                        std::optional<Length> most, double confidence) {
  if (!measured) return std::nullopt;
  return judge(*measured, {.min = {}, .max = most}, confidence);
}

JudgedDisc judgedDisc(const DiscFigures& disc, const DiscLimits& limits, double confidence) {
  JudgedDisc result;
  result.condition = disc.condition;
  result.minimum = judge(disc.minimum, {.min = limits.discard, .max = {}}, confidence);
  result.variation = judgeMost(disc.variation, limits.variation, confidence);
  result.runout = judgeMost(disc.runout, limits.runout, confidence);
  result.residual = judgeMost(disc.residual, limits.runout, confidence);
  if (disc.firstOrder) result.tilt = 2 * *disc.firstOrder;
  if (disc.cutPerSide && limits.machineTo) {
    const MeasuredLength after{disc.minimum.value - 2 * *disc.cutPerSide,
                               disc.minimum.standardUncertainty};
    result.afterMachining = judge(after, {.min = limits.machineTo, .max = {}}, confidence);
  }
  return result;
}

std::optional<Judged<Length>> differenceOf(const DiscDecisionInput& input,
                                           const DiscDecision& decision) {
  const auto& left = decision.discs[0].afterMachining;
  const auto& right = decision.discs[1].afterMachining;
  if (!left || !right) return std::nullopt;
  const MeasuredLength difference{
      metres(std::abs((left->value - right->value).si())),
      metres(std::hypot(left->standardUncertainty.si(), right->standardUncertainty.si()))};
  return judge(difference, {.min = {}, .max = input.limits.differenceAfter}, input.confidence);
}

/// What is judged of one figure, and under which names it is told.
struct FigureReasons {
  DiscReason outside, undecided, missing;
};

/// Collects the findings of the axle; the caller asks which kinds there are.
class Findings {
 public:
  explicit Findings(std::vector<DiscFinding>& findings) : m_findings(findings) {}

  void add(DiscReason reason, std::optional<std::size_t> disc = {},
           std::optional<Length> value = {}, std::optional<Length> limit = {}) {
    m_findings.push_back({reason, disc, value, limit});
  }
  /// Of a figure that should not exceed a limit; without a limit there is nothing to find.
  void addFigure(const std::optional<Judged<Length>>& figure, std::optional<Length> limit,
                 std::size_t disc, const FigureReasons& reasons) {
    if (!limit) return;
    if (!figure) return add(reasons.missing, disc, {}, limit);
    if (figure->verdict == Verdict::Outside) add(reasons.outside, disc, figure->value, limit);
    if (figure->verdict == Verdict::Undecided) add(reasons.undecided, disc, figure->value, limit);
  }
  [[nodiscard]] bool has(std::initializer_list<DiscReason> reasons) const {
    return std::any_of(m_findings.begin(), m_findings.end(), [&](const DiscFinding& finding) {
      return std::find(reasons.begin(), reasons.end(), finding.reason) != reasons.end();
    });
  }

 private:
  std::vector<DiscFinding>& m_findings;
};

void findReplacement(const DiscDecisionInput& input, const DiscDecision& decision,
                     Findings& found) {
  for (std::size_t at = 0; at < kDiscsOfAnAxle; ++at) {
    const JudgedDisc& disc = decision.discs[at];
    if (disc.condition != DiscCondition::None) found.add(DiscReason::Condition, at);
    if (disc.minimum.verdict == Verdict::Outside) {
      found.add(DiscReason::BelowDiscard, at, disc.minimum.value, input.limits.discard);
    }
    if (disc.minimum.verdict == Verdict::Undecided) {
      found.add(DiscReason::MinimumNotProved, at, disc.minimum.value, input.limits.discard);
    }
  }
}

void findFaults(const DiscDecisionInput& input, const DiscDecision& decision, Findings& found) {
  for (std::size_t at = 0; at < kDiscsOfAnAxle; ++at) {
    const JudgedDisc& disc = decision.discs[at];
    found.addFigure(disc.variation, input.limits.variation, at,
                    {DiscReason::VariationOutside, DiscReason::VariationUndecided,
                     DiscReason::VariationMissing});
    // Where neither is there it is missing once.
    if (disc.residual || disc.runout) {
      found.addFigure(
          disc.residual, input.limits.runout, at,
          {DiscReason::NotFlat, DiscReason::FlatnessUndecided, DiscReason::RunoutMissing});
    }
    found.addFigure(
        disc.runout, input.limits.runout, at,
        {DiscReason::SeatTilted, DiscReason::RunoutUndecided, DiscReason::RunoutMissing});
  }
}

void findMachining(const DiscDecisionInput& input, const DiscDecision& decision, Findings& found) {
  for (std::size_t at = 0; at < kDiscsOfAnAxle; ++at) {
    const auto& after = decision.discs[at].afterMachining;
    if (!after) {
      found.add(DiscReason::MachiningUnknown, at);
    } else if (after->verdict == Verdict::Outside) {
      found.add(DiscReason::NotMachinable, at, after->value, input.limits.machineTo);
    } else if (after->verdict != Verdict::Within) {
      found.add(DiscReason::MachiningNotProved, at, after->value, input.limits.machineTo);
    }
  }
  const auto& difference = decision.differenceAfter;
  if (!difference) return;
  const Length limit = input.limits.differenceAfter;
  if (difference->verdict == Verdict::Outside) {
    found.add(DiscReason::DifferenceTooLarge, {}, difference->value, limit);
  } else if (difference->verdict == Verdict::Undecided) {
    found.add(DiscReason::DifferenceNotProved, {}, difference->value, limit);
  }
}

DiscAction actionOf(const Findings& found) {
  using R = DiscReason;
  if (found.has({R::Condition, R::BelowDiscard})) return DiscAction::Replace;
  if (found.has({R::VariationOutside, R::NotFlat})) {
    if (found.has({R::NotMachinable})) return DiscAction::Replace;
    const bool open = found.has({R::MachiningNotProved, R::MachiningUnknown, R::DifferenceTooLarge,
                                 R::DifferenceNotProved});
    return open ? DiscAction::NotDecided : DiscAction::Resurface;
  }
  if (found.has({R::MinimumNotProved, R::VariationUndecided, R::VariationMissing,
                 R::FlatnessUndecided, R::RunoutMissing})) {
    return DiscAction::NotDecided;
  }
  if (found.has({R::SeatTilted})) return DiscAction::CleanAndIndex;
  return found.has({R::RunoutUndecided}) ? DiscAction::NotDecided : DiscAction::Keep;
}

}  // namespace

Result<DiscDecision> discDecision(const DiscDecisionInput& input) {
  if (auto checked = check(input); !checked) return failAs(checked);
  DiscDecision decision;
  for (std::size_t at = 0; at < kDiscsOfAnAxle; ++at) {
    decision.discs[at] = judgedDisc(input.discs[at], input.limits, input.confidence);
  }
  decision.differenceAfter = differenceOf(input, decision);
  Findings found(decision.findings);
  findReplacement(input, decision, found);
  findFaults(input, decision, found);
  if (found.has({DiscReason::VariationOutside, DiscReason::NotFlat})) {
    findMachining(input, decision, found);
  }
  decision.action = actionOf(found);
  if (decision.action == DiscAction::Keep) found.add(DiscReason::AllWithin);
  return decision;
}

}  // namespace sw::mechanics
