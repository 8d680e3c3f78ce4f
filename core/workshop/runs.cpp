// SPDX-License-Identifier: GPL-3.0-or-later
#include "workshop/runs.h"

#include <algorithm>
#include <map>

#include "measure/evaluation.h"
#include "mechanics/swivel/shim_packs.h"
#include "units/format.h"
#include "workshop/rules.h"
#include "workshop/spec_needs.h"

namespace sw::workshop {

namespace {

using model::Side;

constexpr std::string_view kNextRoundPlan = "swivel-next-round";
constexpr std::string_view kWhatElse = "what-else-to-suspect";
constexpr std::string_view kRenewal = "renew-swivel-bearings";
constexpr int kMaxShimsUnlessSaid = 100;

bool textFrozen(const Context& context, const std::string& hash) {
  if (context.shop().procedureText(hash) != nullptr) return true;
  return std::any_of(context.added().begin(), context.added().end(), [&](const auto& entry) {
    const auto* text = model::as<model::ProcedureText>(entry);
    return text != nullptr && text->hash == hash;
  });
}

struct NewestObservation {
  model::EntryId entry;
  std::string means;
};

/// The newest observation of every key on a side with what its word means in the step it was made
/// at.
std::map<std::string, NewestObservation> meanings(const JobState& job, Side side) {
  std::map<std::string, NewestObservation> newest;
  for (const model::Entry* entry : job.valid) {
    const auto* seen = model::as<model::Observation>(*entry);
    if (seen == nullptr || entry->side != side) continue;
    newest[seen->key] = {entry->id, meaningOf(job, *entry, *seen)};
  }
  return newest;
}

/// The newest renewal run of the side in which everything is done.
std::optional<model::RunId> finishedRenewal(const JobState& job, Side side) {
  const auto run = job.newestRun(std::string(kRenewal), side);
  if (!run || !runFinished(job, *run, side)) return std::nullopt;
  return job.runs[*run].id;
}

std::string stackText(const mechanics::AllowedPack& pack) {
  std::string text;
  for (const Length shim : pack.shims) {
    if (!text.empty()) text += " + ";
    text += fullPrecision(inMillimetres(shim));
  }
  return text;
}

Result<void> startNextPack(Context& context, std::size_t step, Side side,
                           ForceDirection direction) {
  const RunView& run = context.job().runs[context.job().steps[step].run];
  auto answer = nextAllowedPack(context.job(), context.shop(), side, direction);
  if (!answer) return failAs(answer);
  const model::EntryId anchor{run.id.value};
  const std::string sideWord(wordOf(side));
  if (!answer->pack && answer->why == "end") {
    context.tell("packs_exhausted", {{"side", sideWord}});
    if (context.job().newestRun(std::string(kWhatElse), side)) return {};
    auto suspects =
        startRun(context, {std::string(kWhatElse), {side}, 1, "packs_exhausted", anchor});
    return suspects ? Result<void>{} : failAs(suspects);
  }
  if (answer->pack) {
    context.tell("next_pack",
                 {{"side", sideWord},
                  {"stack", answer->pack->stack},
                  {"total", fixedDecimal(inMillimetres(answer->pack->total), 2) + " mm"}});
  } else {
    context.tell("next_pack_unknown", {{"side", sideWord}, {"why", answer->why}});
  }
  const std::string why = direction == ForceDirection::Raise ? "short_of_target" : "over_the_limit";
  auto next = startRun(context, {run.fact.procedure, {side}, run.fact.round + 1, why, anchor});
  if (!next) return failAs(next);
  return {};
}

bool fitsPacks(const RunView& run) {
  const auto& steps = run.procedure->steps;
  return std::any_of(steps.begin(), steps.end(), [](const procedures::Step& step) {
    return step.measure && step.measure->drivesRounds;
  });
}

/// Renewal stands behind what its procedure names as coming first, or behind the run that found
/// wear.
std::optional<std::size_t> renewalAnchor(const Context& context, Side side,
                                         std::optional<std::size_t> here) {
  std::optional<std::size_t> anchor = here;
  const auto* procedure = context.library().procedure(kRenewal);
  if (procedure == nullptr) return anchor;
  for (const std::string& before : procedure->after) {
    const auto run = context.job().newestRun(before, side);
    if (run && (!anchor || *run > *anchor)) anchor = run;
  }
  return anchor;
}

}  // namespace

Result<std::vector<Side>> readSides(const std::optional<std::string>& text) {
  if (!text || *text == "both") return std::vector{Side::Left, Side::Right};
  if (const auto side = fromWord<Side>(*text)) return std::vector{*side};
  return fail(ErrorCode::InvalidInput, "json.not_one_of", "sides",
              {{"text", *text}, {"choices", "both, left, right"}});
}

std::int64_t nextRound(const JobState& job, const std::string& procedure,
                       const std::vector<Side>& sides) {
  std::int64_t round = 0;
  for (const RunView& run : job.runs) {
    const bool shares = std::any_of(sides.begin(), sides.end(), [&](Side side) {
      return std::find(run.sides.begin(), run.sides.end(), side) != run.sides.end();
    });
    if (run.fact.procedure == procedure && shares) round = std::max(round, run.fact.round);
  }
  return round + 1;
}

Result<model::RunId> startRun(Context& context, const RunRequest& request) {
  const auto* procedure = context.library().procedure(request.procedure);
  if (procedure == nullptr) {
    return fail(ErrorCode::NotFound, "workshop.no_procedure", "procedure",
                {{"text", request.procedure}});
  }
  if (!textFrozen(context, procedure->hash)) {
    context.addShop(
        model::ProcedureText{procedure->hash, procedure->id, procedure->version, procedure->text});
  }
  model::RunStarted started;
  started.procedure = procedure->id;
  started.hash = procedure->hash;
  for (const Side side : request.sides) (side == Side::Left ? started.left : started.right) = true;
  started.round = request.round;
  started.why = request.why;
  started.placedAfter = request.placedAfter;
  const auto id = context.add(std::move(started), {});
  if (request.why != "plan") {
    context.tell("run_appended", {{"procedure", procedure->id},
                                  {"round", std::to_string(request.round)},
                                  {"why", request.why}});
  }
  return model::RunId{id.value};
}

bool wornUnrenewed(const JobState& job, Side side) {
  const auto renewed = finishedRenewal(job, side);
  for (const auto& [key, newest] : meanings(job, side)) {
    const bool before = renewed && newest.entry.value < renewed->value;
    if (newest.means == "worn" && !before) return true;
  }
  return false;
}

bool loose(const JobState& job, Side side) {
  for (const auto& [key, newest] : meanings(job, side)) {
    if (newest.means == "loose") return true;
  }
  return false;
}

Result<mechanics::ShimStock> shimStock(const JobState& job, const ShopState& shop) {
  mechanics::ShimStock stock;
  stock.maxCount = kMaxShimsUnlessSaid;
  const auto vehicle = job.opened.vehicle;
  const auto* sizes = shop.spec(vehicle, kShimSizesKey);
  const auto* maxPack = shop.spec(vehicle, kShimMaxPackKey);
  const auto* maxCount = shop.spec(vehicle, kShimMaxCountKey);
  if (sizes == nullptr || (maxPack == nullptr && maxCount == nullptr)) return stock;
  auto stack = mechanics::parseStack(sizes->fact.text, "shims.sizes");
  if (!stack) return failAs(stack);
  for (const Length shim : stack->shims) stock.sizes.push_back({shim, std::nullopt});
  if (maxPack != nullptr && maxPack->fact.value) {
    stock.maxPack = maxPack->fact.value->as<Length>();
    const Length thinnest = *std::min_element(stack->shims.begin(), stack->shims.end());
    stock.maxCount = std::max(1, static_cast<int>(*stock.maxPack / thinnest + 1e-9));
  }
  if (maxCount != nullptr && maxCount->fact.value) {
    stock.maxCount = static_cast<int>(maxCount->fact.value->si);
  }
  return stock;
}

Result<PackAnswer> nextAllowedPack(const JobState& job, const ShopState& shop, Side side,
                                   ForceDirection direction) {
  const auto layout = job.vehicle.fact.arrangement.shimLayout;
  if (!layout) return PackAnswer{std::nullopt, "layout"};
  const auto current = job.packTotal(side);
  if (!current) return PackAnswer{std::nullopt, "pack"};
  auto stock = shimStock(job, shop);
  if (!stock) return failAs(stock);
  if (stock->sizes.empty()) return PackAnswer{std::nullopt, "sizes"};
  auto packs = mechanics::allowedPacks(*stock);
  if (!packs) return failAs(packs);
  mechanics::PackStep step;
  step.current = *current;
  step.effect = *layout == model::ShimLayout::CapFlange ? mechanics::ShimEffect::ThinnerRaises
                                                        : mechanics::ShimEffect::ThickerRaises;
  step.direction = direction == ForceDirection::Raise ? mechanics::ForceDirection::RaiseForce
                                                      : mechanics::ForceDirection::LowerForce;
  step.sameWithin = millimetres(0.005);  // half a graduation of a 0.01 mm micrometer
  const auto next = mechanics::nextPack(*packs, step);
  if (!next) return PackAnswer{std::nullopt, "end"};
  return PackAnswer{PackAdvice{next->total, stackText(*next), next->count()}, ""};
}

Result<void> followPull(Context& context, const SeriesView& series, std::size_t step) {
  const StepView& view = context.job().steps[step];
  if (!view.step->measure || !view.step->measure->drivesRounds || !view.side) return {};
  if (!series.verdict || view.superseded) return {};
  const Side side = *view.side;
  if (wornUnrenewed(context.job(), side)) return followWear(context, side);
  const bool outside = series.verdict->verdict == word(Verdict::Outside);
  const bool within = series.verdict->verdict == word(Verdict::Within);
  if (within && loose(context.job(), side)) {
    context.tell("within_but_loose", {{"side", std::string(wordOf(side))}});
    return startNextPack(context, step, side, ForceDirection::Raise);
  }
  if (!outside) return {};
  const bool above = series.verdict->limitSide == word(LimitSide::Above);
  return startNextPack(context, step, side, above ? ForceDirection::Lower : ForceDirection::Raise);
}

Result<void> followWear(Context& context, Side side) {
  const JobState& job = context.job();
  context.tell("renew_not_shim", {{"side", std::string(wordOf(side))}});
  const std::string renewal(kRenewal);
  const auto open = job.newestRun(renewal, side);
  if (open && !runFinished(job, *open, side)) return {};
  const auto here = context.step() ? std::optional(job.steps[*context.step()].run) : std::nullopt;
  std::optional<model::EntryId> anchor;
  if (const auto behind = renewalAnchor(context, side, here)) {
    anchor = model::EntryId{job.runs[*behind].id.value};
  }
  auto run = startRun(context, {renewal, {side}, nextRound(job, renewal, {side}), "worn", anchor});
  if (!run) return failAs(run);
  // Worn bearings found while fitting: after the renewal the pack is fitted and pulled afresh.
  if (!here || !fitsPacks(job.runs[*here])) return {};
  const RunView& fitting = job.runs[*here];
  auto again = startRun(
      context,
      {fitting.fact.procedure, {side}, fitting.fact.round + 1, "worn", model::EntryId{run->value}});
  if (!again) return failAs(again);
  return {};
}

Result<void> followRoadTest(Context& context) {
  const JobState& job = context.job();
  std::vector<Side> sides;
  bool fitted = false;
  for (const Side side : {Side::Left, Side::Right}) {
    if (!job.packTotal(side)) continue;
    fitted = true;
    auto answer = nextAllowedPack(job, context.shop(), side, ForceDirection::Raise);
    if (!answer) return failAs(answer);
    if (answer->why != "end") sides.push_back(side);
    if (answer->pack) {
      context.tell("next_pack",
                   {{"side", std::string(wordOf(side))},
                    {"stack", answer->pack->stack},
                    {"total", fixedDecimal(inMillimetres(answer->pack->total), 2) + " mm"}});
    }
  }
  const auto* plan = context.library().plan(kNextRoundPlan);
  if (!fitted || plan == nullptr || sides.empty()) {
    context.tell(fitted ? "packs_exhausted" : "still_shakes");
    auto run = startRun(context, {std::string(kWhatElse),
                                  {Side::Left, Side::Right},
                                  nextRound(job, std::string(kWhatElse), {Side::Left, Side::Right}),
                                  "still_shakes",
                                  std::nullopt});
    return run ? Result<void>{} : failAs(run);
  }
  for (const std::string& procedure : plan->procedures) {
    auto run = startRun(context, {procedure, sides, nextRound(job, procedure, sides),
                                  "still_shakes", std::nullopt});
    if (!run) return failAs(run);
  }
  context.tell("runs_appended", {{"count", std::to_string(plan->procedures.size())},
                                 {"first", plan->procedures.front()},
                                 {"last", plan->procedures.back()}});
  return {};
}

}  // namespace sw::workshop
