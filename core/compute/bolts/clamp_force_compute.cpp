// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>

#include "compute/bolts/bolt_fields.h"
#include "compute/bolts/bolts.h"
#include "compute/bolts/clamp_force_picture.h"
#include "compute/bolts/friction_fields.h"
#include "compute/output.h"

namespace sw::compute {

namespace {

using mechanics::BoltJoint;
using mechanics::Friction;
using mechanics::JointFriction;
using mechanics::StrengthClass;
using mechanics::TorqueFormula;
using mechanics::TorsionModulus;
using mechanics::YieldCriterion;

struct ClampInput {
  mechanics::Thread thread;
  std::optional<StrengthClass> strengthClass;
  std::optional<Torque> torque;
  std::optional<Force> clampForce;
  std::optional<double> nutFactor;
  std::optional<double> tighteningFactor;
  FrictionInput friction;
  mechanics::BearingFace face;
  TorsionModulus modulus = TorsionModulus::Plastic;
  TorqueFormula formula = TorqueFormula::Linear;
  double share = mechanics::kUsualUtilisation;
};

void readOptions(InputReader& reader, ClampInput& input) {
  reader.inObject("options", [&](InputReader& inner) {
    input.modulus = inner.choice<TorsionModulus>("torsion").value_or(input.modulus);
    input.formula = inner.choice<TorqueFormula>("formula").value_or(input.formula);
    input.share = inner.number("utilisation", {.least = 0.01, .most = 1, .text = "0.01 to 1"})
                      .value_or(input.share);
  });
}

Result<ClampInput> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  ClampInput input;
  const auto thread = requiredThread(reader, "thread");
  if (thread) input.thread = *thread;
  input.strengthClass = reader.choice<StrengthClass>("strength_class");
  input.torque = reader.optional<Torque>("torque", Sign::Positive);
  input.clampForce = reader.optional<Force>("clamp_force", Sign::Positive);
  input.nutFactor = reader.number(
      "nut_factor", {.least = 0, .most = 2, .ends = Ends::Excluded, .text = "above 0, below 2"});
  input.tighteningFactor =
      reader.number("tightening_factor", {.least = 1, .most = 10, .text = "1 to 10"});
  input.friction = frictionFields(reader);
  input.face = faceFields(reader);
  readOptions(reader, input);
  reader.takeSeed();
  const bool needsClass = !input.torque && !input.clampForce;
  if (needsClass && input.nutFactor) reader.requireKey("torque");
  if (needsClass || input.tighteningFactor) reader.requireKey("strength_class");
  if (auto done = reader.finish(); !done) return failAs(done);
  return input;
}

template <class Q>
Json spanOf(Q a, Q b) {
  return {{"min", quantityText(std::min(a, b))}, {"max", quantityText(std::max(a, b))}};
}

/// K and the friction that a pair of torque and force implies.
Result<void> putImplied(const ClampInput& input, const BoltJoint& joint, Outcome& outcome) {
  const auto factor =
      mechanics::nutFactorFrom(*input.torque, *input.clampForce, input.thread.diameter);
  if (!factor) return asInputError(factor.error());
  outcome.result["nut_factor"] = spanJson(*factor, *factor);
  if (input.nutFactor) {
    outcome.notes.push_back(
        {"not_used", "The nut factor typed is not used: torque and force give it."});
  }
  const auto friction = mechanics::impliedFriction(*input.torque, *input.clampForce, joint);
  if (friction) outcome.result["implied_friction"] = plainNumber(*friction);
  if (!friction) {
    outcome.notes.push_back({"force_too_high_for_torque",
                             "So much force does not come from so little torque, whatever the "
                             "friction: look at both figures and their units."});
  }
  return {};
}

Result<void> putShortForm(const ClampInput& input, Outcome& outcome) {
  const double factor = *input.nutFactor;
  outcome.result["nut_factor"] = spanJson(factor, factor);
  if (input.torque) {
    const auto force =
        mechanics::clampForceByNutFactor(*input.torque, factor, input.thread.diameter);
    if (!force) return asInputError(force.error());
    outcome.result["clamp_force"] = spanOf(*force, *force);
  } else {
    const auto torque =
        mechanics::torqueByNutFactor(*input.clampForce, factor, input.thread.diameter);
    if (!torque) return asInputError(torque.error());
    outcome.result["torque"] = spanOf(*torque, *torque);
  }
  outcome.notes.push_back({"nut_factor_is_not_friction",
                           "The nut factor is no coefficient of friction: 0.12 of friction makes "
                           "about 0.16."});
  outcome.notes.push_back({"short_form",
                           "Nothing but the nut factor and the diameter went into this; strength "
                           "and friction were not used."});
  return {};
}

struct FrictionEnds {
  Friction slippery;
  Friction rough;
};
FrictionEnds endsOf(const JointFriction& range) {
  return {{range.thread.least, range.head.least}, {range.thread.most, range.head.most}};
}

Json caseJson(const ClampInput& input, const BoltJoint& joint, const Friction& friction) {
  const auto shares = mechanics::torqueShares(joint, friction);
  Json row = {{"thread_friction", plainNumber(friction.thread)},
              {"head_friction", plainNumber(friction.head)},
              {"nut_factor", plainNumber(mechanics::nutFactor(joint, friction))},
              {"stretch_share", plainNumber(shares.stretch)},
              {"thread_share", plainNumber(shares.thread)},
              {"head_share", plainNumber(shares.head)},
              {"undoing_share", plainNumber(shares.undoing)}};
  std::optional<Force> force = input.clampForce;
  if (input.torque) force = mechanics::clampForce(*input.torque, joint, friction);
  if (!force) return row;
  row["clamp_force"] = quantityText(*force);
  row["torque"] = quantityText(mechanics::tighteningTorque(*force, joint, friction));
  row["undoing_torque"] = quantityText(mechanics::undoingTorque(*force, joint, friction));
  return row;
}

void putCases(const ClampInput& input, const BoltJoint& joint, Json& result) {
  const FrictionEnds ends = endsOf(input.friction.range);
  result["nut_factor"] =
      spanJson(mechanics::nutFactor(joint, ends.slippery), mechanics::nutFactor(joint, ends.rough));
  if (input.torque) {
    result["clamp_force"] = spanOf(mechanics::clampForce(*input.torque, joint, ends.slippery),
                                   mechanics::clampForce(*input.torque, joint, ends.rough));
  } else if (input.clampForce) {
    result["torque"] = spanOf(mechanics::tighteningTorque(*input.clampForce, joint, ends.slippery),
                              mechanics::tighteningTorque(*input.clampForce, joint, ends.rough));
  }
  Json cases = Json::array({caseJson(input, joint, ends.slippery)});
  const bool one =
      ends.slippery.thread == ends.rough.thread && ends.slippery.head == ends.rough.head;
  if (!one) cases.push_back(caseJson(input, joint, ends.rough));
  result["cases"] = std::move(cases);
}

Result<mechanics::Span> utilisationOf(const ClampInput& input, const BoltJoint& joint,
                                      const YieldCriterion& criterion) {
  const JointFriction& range = input.friction.range;
  if (input.torque) return mechanics::utilisation(*input.torque, joint, range, criterion);
  const auto at = [&](double threadFriction) {
    return mechanics::boltStress(*input.clampForce, joint, threadFriction, criterion.modulus)
               .combined /
           criterion.yield;
  };
  return mechanics::Span{at(range.thread.least), at(range.thread.most)};
}

void noteYield(const mechanics::Span& u, std::vector<Note>& notes) {
  if (u.most <= 1) return;
  notes.push_back(u.least > 1 ? Note{"would_yield",
                                     "The bolt would be stretched beyond yield at any friction in "
                                     "the range: check figure, unit, thread and class."}
                              : Note{"may_yield",
                                     "With slippery threads the bolt would be stretched beyond "
                                     "yield: find out the condition the torque is meant for."});
}

Result<void> putStrength(const ClampInput& input, const BoltJoint& joint, Outcome& outcome) {
  const auto strength = mechanics::strengthOf(*input.strengthClass, input.thread.diameter);
  if (!strength) return asInputError(strength.error());
  const YieldCriterion criterion{strength->yield, input.modulus};
  const auto& thread = input.friction.range.thread;
  const auto most = mechanics::greatestPreload(joint, thread.least, criterion, input.share);
  const auto least = mechanics::greatestPreload(joint, thread.most, criterion, input.share);
  const auto torque =
      mechanics::greatestTorque(joint, input.friction.range, criterion, input.share);
  if (!most) return asInputError(most.error());
  if (!least) return asInputError(least.error());
  if (!torque) return asInputError(torque.error());
  outcome.result["greatest_preload"] = spanOf(*least, *most);
  outcome.result["greatest_torque"] = quantityText(*torque);
  if (input.tighteningFactor) {
    const auto left = mechanics::leastPreload(*most, *input.tighteningFactor);
    if (!left) return asInputError(left.error());
    outcome.result["least_preload"] = quantityText(*left);
  }
  if (input.torque || input.clampForce) {
    const auto u = utilisationOf(input, joint, criterion);
    if (!u) return asInputError(u.error());
    outcome.result["utilisation"] = spanJson(u->least, u->most);
    noteYield(*u, outcome.notes);
  }
  noteClass(input.thread, *input.strengthClass, outcome.notes);
  return {};
}

Result<void> putPicture(const ClampInput& input, const BoltJoint& joint, Outcome& outcome) {
  ClampDrawing drawing{joint, input.friction.range, input.torque, input.clampForce,
                       {},    input.share};
  if (input.strengthClass) {
    const auto strength = mechanics::strengthOf(*input.strengthClass, input.thread.diameter);
    if (!strength) return asInputError(strength.error());
    drawing.criterion = YieldCriterion{strength->yield, input.modulus};
  }
  outcome.draw = [drawing](figure::Size size) { return clampForcePicture(drawing, size); };
  return {};
}

Result<void> putFullForm(const ClampInput& input, Outcome& outcome) {
  const auto face = mechanics::frictionDiameter(input.thread, input.face);
  if (!face) return asInputError(face.error());
  const auto joint = mechanics::boltJoint(input.thread, face->diameter, input.formula);
  if (!joint) return asInputError(joint.error());
  if (auto put = putPicture(input, *joint, outcome); !put) return put;
  outcome.result["friction_diameter"] = quantityText(face->diameter);
  outcome.result["friction_diameter_from"] = wordOf(face->from);
  noteFace(face->from, outcome.notes);
  if (input.torque && input.clampForce) return putImplied(input, *joint, outcome);
  const JointFriction& range = input.friction.range;
  outcome.result["thread_friction"] = spanJson(range.thread.least, range.thread.most);
  outcome.result["head_friction"] = spanJson(range.head.least, range.head.most);
  noteFriction(input.friction, outcome.notes);
  putCases(input, *joint, outcome.result);
  if (!input.strengthClass) return {};
  return putStrength(input, *joint, outcome);
}

void noteAlways(const ClampInput& input, std::vector<Note>& notes) {
  if (input.strengthClass && input.modulus == TorsionModulus::Elastic) {
    notes.push_back({"elastic_torsion",
                     "Elastic torsion, as tables up to 1986 had it: 8 to 10 % less than newer "
                     "ones."});
  }
  notes.push_back({"friction_rules",
                   "Oil on a dry figure, or paste on an oiled one, raises the force by a third and "
                   "more. Undoing torque proves nothing about how tight a bolt was."});
  notes.push_back({"documentation",
                   "A calculated torque does not replace the figure of the vehicle's "
                   "documentation."});
}

}  // namespace

Result<Outcome> runClampForce(const Json& json) {
  Outcome outcome;
  const auto input = read(json, outcome.notes);
  if (!input) return failAs(input);
  outcome.result["thread"] = input->thread.name;
  noteThread(input->thread, outcome.notes);
  const bool shortForm = input->nutFactor && !(input->torque && input->clampForce);
  const auto put = shortForm ? putShortForm(*input, outcome) : putFullForm(*input, outcome);
  if (!put) return failAs(put);
  noteAlways(*input, outcome.notes);
  outcome.options = {{"torsion", wordOf(input->modulus)},
                     {"formula", wordOf(input->formula)},
                     {"utilisation", plainNumber(input->share)}};
  return outcome;
}

}  // namespace sw::compute
