// SPDX-License-Identifier: GPL-3.0-or-later
#include "workshop/rules.h"

#include <algorithm>

#include "measure/evaluation.h"
#include "workshop/runs.h"

namespace sw::workshop {

namespace {

using model::Side;

bool open(const JobState& job, std::size_t step) {
  const HoldView* hold = job.holdAt(step);
  return hold != nullptr ? !hold->passed() : !job.steps[step].done();
}

/// Steps of a run that must be done before runs that come after it, for a side.
bool blocks(const JobState& job, std::size_t step, std::optional<Side> side) {
  const StepView& view = job.steps[step];
  const bool concerns = !side || !view.side || view.side == side;
  return concerns && !view.superseded && !view.step->optional && open(job, step);
}

void openHolds(const JobState& job, std::size_t step, std::vector<Refusal>& out) {
  for (const HoldView& hold : job.holds) {
    if (hold.step >= step || hold.passed() || job.steps[hold.step].superseded) continue;
    if (job.steps[hold.step].step->optional) continue;
    out.push_back({"hold_open", job.stepName(hold.step), job.steps[hold.step].step->hold->key});
  }
}

void openNeeds(const JobState& job, std::size_t step, std::vector<Refusal>& out) {
  for (const std::size_t need : job.steps[step].needs) {
    // A hold that a step names is asked even where the rest of its run may be skipped.
    const bool skippable = job.steps[need].step->optional && job.holdAt(need) == nullptr;
    if (open(job, need) && !skippable) {
      out.push_back({"needs", job.stepName(need), job.steps[need].step->title});
    }
  }
}

void openRunsBefore(const JobState& job, std::size_t step, std::vector<Refusal>& out) {
  const StepView& view = job.steps[step];
  for (const std::string& procedure : job.runs[view.run].procedure->after) {
    for (std::size_t i = 0; i < step; ++i) {
      const bool inRun = job.runs[job.steps[i].run].fact.procedure == procedure;
      if (inRun && blocks(job, i, view.side)) {
        out.push_back({"needs", job.stepName(i), job.steps[i].step->title});
        break;
      }
    }
  }
}

template <class T>
bool hasFact(const JobState& job, std::size_t step) {
  return std::any_of(job.valid.begin(), job.valid.end(), [&](const model::Entry* entry) {
    return model::as<T>(*entry) != nullptr && job.belongsTo(*entry, step);
  });
}

bool observedHere(const JobState& job, std::size_t step, const std::string& key) {
  return std::any_of(job.valid.begin(), job.valid.end(), [&](const model::Entry* entry) {
    const auto* seen = model::as<model::Observation>(*entry);
    return seen != nullptr && seen->key == key && job.belongsTo(*entry, step);
  });
}

/// The group is torqued when the newest check of the step is the last stage with all fasteners.
bool torquedFully(const JobState& job, std::size_t step) {
  bool full = false;
  for (const model::Entry* entry : job.valid) {
    const auto* check = model::as<model::TorqueCheck>(*entry);
    if (check == nullptr || !job.belongsTo(*entry, step)) continue;
    full = check->stage == check->stages && check->done == check->count;
  }
  return full;
}

void openSteps(const JobState& job, std::vector<Refusal>& out) {
  for (std::size_t i = 0; i < job.steps.size(); ++i) {
    const StepView& view = job.steps[i];
    if (view.step->kind == procedures::StepKind::Hold || !blocks(job, i, std::nullopt)) continue;
    out.push_back({"step_open", job.stepName(i), view.step->title});
  }
}

void unprovedReadings(const JobState& job, std::vector<Refusal>& out) {
  for (std::size_t i = 0; i < job.steps.size(); ++i) {
    const StepView& view = job.steps[i];
    if (!view.step->measure || !view.step->measure->safety || view.superseded) continue;
    const SeriesView* series = job.newestSeries(i);
    const bool within =
        series != nullptr && series->verdict && series->verdict->verdict == word(Verdict::Within);
    const bool isLoose = view.side && loose(job, *view.side);
    if ((within && !isLoose) || job.overridden("not_proved", i)) continue;
    const std::string verdict =
        series != nullptr && series->verdict ? series->verdict->verdict : "not_measured";
    out.push_back({"not_proved", job.stepName(i), within ? "loose" : verdict});
  }
}

/// The step an entry was recorded at, in its run's frozen text.
const procedures::Step* definitionOf(const JobState& job, const model::Entry& entry) {
  for (const RunView& run : job.runs) {
    if (entry.run != run.id) continue;
    for (const procedures::Step& step : run.procedure->steps) {
      if (step.id == entry.step) return &step;
    }
  }
  return nullptr;
}

bool partUsed(const JobState& job, const std::string& key, std::optional<Side> side,
              model::EntryId since) {
  return std::any_of(job.valid.begin(), job.valid.end(), [&](const model::Entry* entry) {
    const auto* part = model::as<model::PartUsed>(*entry);
    return part != nullptr && part->key == key && entry->side == side && entry->id > since;
  });
}

void missingSingleUse(const JobState& job, std::vector<Refusal>& out) {
  for (std::size_t i = 0; i < job.steps.size(); ++i) {
    const StepView& view = job.steps[i];
    if (view.superseded || view.action == model::StepAction::NotApplicable) continue;
    if (view.step->optional && !view.done()) continue;
    const auto facts = factsOf(job, job.runs[view.run].fact.round);
    for (const auto& part : view.step->parts) {
      if (!part.singleUse || !procedures::holds(part.when, facts, view.side)) continue;
      // Every round takes new ones: a part counts for the run it was used in or after.
      if (partUsed(job, part.key, view.side, {job.runs[view.run].id.value})) continue;
      out.push_back({"single_use", job.stepName(i), part.name});
    }
  }
}

}  // namespace

bool runFinished(const JobState& job, std::size_t run, std::optional<Side> side) {
  for (std::size_t i = 0; i < job.steps.size(); ++i) {
    if (job.steps[i].run == run && blocks(job, i, side)) return false;
  }
  return true;
}

std::string meaningOf(const JobState& job, const model::Entry& entry,
                      const model::Observation& seen) {
  if (seen.key == kComputedPeak) return seen.value == "peak" ? "worn" : "";
  const procedures::Step* step = definitionOf(job, entry);
  if (step == nullptr) return {};
  for (const auto& observe : step->observe) {
    if (observe.key != seen.key) continue;
    for (const auto& choice : observe.choices) {
      if (choice.word == seen.value) return choice.means;
    }
  }
  return {};
}

std::vector<Refusal> againstWork(const JobState& job, std::size_t step) {
  std::vector<Refusal> refusals;
  openHolds(job, step, refusals);
  if (!job.overridden("order", step)) {
    openNeeds(job, step, refusals);
    openRunsBefore(job, step, refusals);
  }
  const StepView& view = job.steps[step];
  const bool drives = view.step->measure && view.step->measure->drivesRounds;
  if (drives && view.side && wornUnrenewed(job, *view.side)) {
    refusals.push_back({"worn", job.stepName(step), view.step->title});
  }
  return refusals;
}

std::vector<Refusal> lacking(const JobState& job, std::size_t step) {
  std::vector<Refusal> refusals;
  const StepView& view = job.steps[step];
  const std::string name = job.stepName(step);
  if (view.step->measure) {
    const SeriesView* series = job.newestSeries(step);
    const auto planned =
        series == nullptr ? std::size_t{1} : static_cast<std::size_t>(series->fact.planned);
    if (series == nullptr || series->usedCount() < planned) {
      refusals.push_back({"no_reading", name, view.step->title});
    }
  }
  for (const auto& observe : view.step->observe) {
    if (!observedHere(job, step, observe.key)) {
      refusals.push_back({"not_observed", name, observe.key});
    }
  }
  if (view.step->torque && !torquedFully(job, step)) {
    refusals.push_back({"not_torqued", name, view.step->torque->name});
  }
  if (view.step->shimPack && !hasFact<model::ShimPack>(job, step)) {
    refusals.push_back({"no_pack", name, view.step->title});
  }
  if (view.step->roadTest && !hasFact<model::RoadTest>(job, step)) {
    refusals.push_back({"no_road_test", name, view.step->title});
  }
  return refusals;
}

std::vector<Refusal> againstDrive(const JobState& job) {
  std::vector<Refusal> refusals;
  for (const Side side : {Side::Left, Side::Right}) {
    model::EntryId pack, pull;
    for (const PackView& view : job.packs) {
      if (view.side == side && view.fact.role == model::PackRole::Fitted) pack = view.entry;
    }
    for (const SeriesView& series : job.series) {
      if (series.side != side || series.fact.quantity != QuantityKind::Force) continue;
      for (const ReadingView& reading : series.readings) pull = std::max(pull, reading.entry);
    }
    if (pack > pull) {
      refusals.push_back({"no_pull_since_pack", "", std::string(wordOf(side))});
    }
  }
  return refusals;
}

std::vector<Refusal> againstSignOff(const JobState& job) {
  std::vector<Refusal> refusals;
  for (const HoldView& hold : job.holds) {
    const StepView& view = job.steps[hold.step];
    if (hold.passed() || view.superseded || view.step->optional) continue;
    refusals.push_back({"hold_open", job.stepName(hold.step), view.step->hold->key});
  }
  unprovedReadings(job, refusals);
  for (const LedgerView& item : job.ledger) {
    if (item.clear()) continue;
    const std::string step = item.step ? job.stepName(*item.step) : std::string{};
    std::string name = item.name;
    if (item.side) name += " (" + std::string(wordOf(*item.side)) + ")";
    refusals.push_back({"ledger", step, name + ": " + std::string(wordOf(item.state))});
  }
  missingSingleUse(job, refusals);
  openSteps(job, refusals);
  for (const model::Entry* entry : job.valid) {
    if (const auto* declined = model::as<model::WorkDeclined>(*entry)) {
      refusals.push_back({"declined", entry->step, declined->what});
    }
  }
  return refusals;
}

tl::unexpected<Error> refuse(const std::string& key, const std::vector<Refusal>& refusals) {
  Error error{ErrorCode::Refused, key, {}, {}};
  for (const Refusal& refusal : refusals) {
    error.details.emplace_back("refusal", refusal.key + "|" + refusal.step + "|" + refusal.what);
  }
  return tl::make_unexpected(std::move(error));
}

Result<void> completeStep(Context& context, std::size_t step, model::StepAction action,
                          const std::string& text) {
  const Place place = context.placeOf(step);
  const procedures::Step* definition = context.job().steps[step].step;
  const auto side = context.job().steps[step].side;
  context.add(model::StepMark{action, text}, place);
  const bool performed =
      action == model::StepAction::Done || action == model::StepAction::DoneBeforeRecording;
  if (performed) {
    const JobState& job = context.job();
    const auto facts = factsOf(job, job.runs[job.steps[step].run].fact.round);
    for (const auto& effect : definition->ledger) {
      if (!procedures::holds(effect.when, facts, side)) continue;
      context.add(model::LedgerMove{effect.item, effect.name, effect.type, effect.to,
                                    effect.fastened, std::nullopt, std::nullopt, ""},
                  place);
    }
  }
  return context.refresh();
}

Result<void> completeIfReady(Context& context, std::size_t step) {
  if (context.job().steps[step].done() || !lacking(context.job(), step).empty()) return {};
  return completeStep(context, step, model::StepAction::Done, "");
}

Result<std::size_t> workStep(Context& context) {
  if (!context.step()) return fail(ErrorCode::Missing, "workshop.step_needed", "step");
  if (context.job().closed) {
    return fail(ErrorCode::Refused, "workshop.job_closed", "job");
  }
  const auto refusals = againstWork(context.job(), *context.step());
  if (!refusals.empty()) return refuse("workshop.not_yet", refusals);
  return *context.step();
}

}  // namespace sw::workshop
