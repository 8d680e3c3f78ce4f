// SPDX-License-Identifier: GPL-3.0-or-later
// Opening a job, its complaint and plan, and what is used, noted and agreed along the way.
#include <algorithm>

#include "workshop/context.h"
#include "workshop/rules.h"
#include "workshop/runs.h"

namespace sw::workshop {

namespace {

/// The shop's currency, or the one named.
Result<std::string> currencyOf(const Context& context, const std::optional<std::string>& named) {
  if (named) return *named;
  auto setting = context.book().setting("currency");
  if (!setting) return failAs(setting);
  return setting->value_or("EUR");
}

Result<std::optional<std::int64_t>> readPrice(const std::optional<std::string>& text,
                                              const std::string& field) {
  if (!text) return std::nullopt;
  auto money = readMoney(*text, field);
  if (!money) return failAs(money);
  return std::optional<std::int64_t>(*money);
}

/// Quantities of parts: pieces, or litres, grams, metres as typed.
Result<TypedQuantity> readAmount(Context& context, const std::optional<std::string>& text) {
  if (!text) return TypedQuantity{QuantityKind::Number, "1", "", 1.0};
  for (const QuantityKind kind :
       {QuantityKind::Number, QuantityKind::Volume, QuantityKind::Mass, QuantityKind::Length}) {
    auto parsed = parseQuantity(*text, {"quantity", kind, {}});
    if (parsed && parsed->value.si > 0) return parsed->value;
  }
  return readQuantity(context, std::string_view(*text), "quantity", QuantityKind::Number);
}

tl::unexpected<Error> missing(const std::string& field) {
  return fail(ErrorCode::Missing, "workshop.field_needed", field);
}

}  // namespace

Result<void> act(const OpenJob& action, Context& context) {
  if (action.registration.empty()) return missing("registration");
  auto jobId = context.book().nextJobId();
  if (!jobId) return failAs(jobId);
  model::JobOpened opened;
  std::string unit = "km";
  if (const auto* known = context.shop().vehicleByRegistration(action.registration)) {
    opened.vehicle = known->fact.vehicle;
    unit = known->fact.odometerUnit;
  } else {
    auto id = context.book().nextVehicleId();
    if (!id) return failAs(id);
    model::Vehicle vehicle;
    vehicle.vehicle = *id;
    vehicle.registration = action.registration;
    opened.vehicle = *id;
    context.addShop(std::move(vehicle));
    context.tell("vehicle_created", {{"registration", action.registration}});
  }
  auto odometer = readQuantity(context, action.odometer, "odometer", QuantityKind::Length, unit);
  if (!odometer) return failAs(odometer);
  opened.odometer = std::move(*odometer);
  opened.request = action.request.value_or("");
  context.openJob(*jobId);
  context.add(std::move(opened), {});
  context.tell("job_opened", {{"job", std::to_string(jobId->value)}});
  return {};
}

Result<void> act(const SetComplaint& action, Context& context) {
  model::Complaint complaint = context.job().complaint.value_or(model::Complaint{});
  for (const auto& [text, name, target] :
       {std::tuple{&action.onsetRising, "onset_rising", &complaint.onsetRising},
        std::tuple{&action.releaseRising, "release_rising", &complaint.releaseRising},
        std::tuple{&action.onsetFalling, "onset_falling", &complaint.onsetFalling},
        std::tuple{&action.releaseFalling, "release_falling", &complaint.releaseFalling}}) {
    auto speed = readQuantity(context, *text, name, QuantityKind::Speed);
    if (!speed) return failAs(speed);
    if (*speed) *target = std::move(*speed);
  }
  const bool anySpeed = complaint.onsetRising || complaint.releaseRising ||
                        complaint.onsetFalling || complaint.releaseFalling;
  if (action.speedSource) complaint.speedSource = action.speedSource;
  // A dial over-reads: a speed without its instrument is only half a fact.
  if (anySpeed && !complaint.speedSource) return missing("speed_source");
  const auto take = [](const OptText& from, std::string& to) {
    if (from) to = *from;
  };
  take(action.words, complaint.words);
  take(action.whereFelt, complaint.whereFelt);
  take(action.recentWork, complaint.recentWork);
  take(action.conditions, complaint.conditions);
  complaint.braking = action.braking.value_or(complaint.braking);
  complaint.afterBump = action.afterBump.value_or(complaint.afterBump);
  complaint.speedBand = action.speedBand.value_or(complaint.speedBand);
  context.add(std::move(complaint), {});
  return {};
}

Result<void> act(const CheckCause& action, Context& context) {
  context.add(model::CauseChecked{action.cause, action.excluded, action.how}, context.place());
  return {};
}

Result<void> act(const StartPlan& action, Context& context) {
  const auto* plan = context.library().plan(action.plan);
  if (plan == nullptr) {
    return fail(ErrorCode::NotFound, "workshop.no_plan", "plan", {{"text", action.plan}});
  }
  auto sides = readSides(action.sides);
  if (!sides) return failAs(sides);
  for (const std::string& procedure : plan->procedures) {
    auto run = startRun(context, {procedure, *sides, nextRound(context.job(), procedure, *sides),
                                  "plan", std::nullopt});
    if (!run) return failAs(run);
  }
  context.tell("plan_started", {{"plan", action.plan}});
  return {};
}

Result<void> act(const StartProcedure& action, Context& context) {
  auto sides = readSides(action.sides);
  if (!sides) return failAs(sides);
  std::optional<model::EntryId> anchor;
  if (action.after) {
    const auto run = context.job().newestRun(*action.after, std::nullopt);
    if (!run) {
      return fail(ErrorCode::NotFound, "workshop.no_run", "after", {{"text", *action.after}});
    }
    anchor = model::EntryId{context.job().runs[*run].id.value};
  }
  auto run =
      startRun(context, {action.procedure, *sides,
                         nextRound(context.job(), action.procedure, *sides), "chosen", anchor});
  if (!run) return failAs(run);
  return {};
}

Result<void> act(const ChooseSupport& action, Context& context) {
  context.add(model::SupportChosen{action.support}, context.place());
  if (!context.step()) return {};
  auto step = workStep(context);
  if (!step) return failAs(step);
  return completeStep(context, *step, model::StepAction::Done, "");
}

Result<void> act(const UsePart& action, Context& context) {
  model::PartUsed part;
  part.name = action.name;
  part.key = action.key.value_or("");
  part.number = action.number.value_or("");
  part.consumable = action.consumable.value_or(false);
  auto quantity = readAmount(context, action.quantity);
  if (!quantity) return failAs(quantity);
  part.quantity = std::move(*quantity);
  auto price = readPrice(action.unitPrice, "unit_price");
  if (!price) return failAs(price);
  part.unitPriceMinor = *price;
  auto currency = currencyOf(context, action.currency);
  if (!currency) return failAs(currency);
  part.currency = std::move(*currency);
  if (part.name.empty()) return missing("name");
  context.add(std::move(part), context.place());
  return {};
}

Result<void> act(const AddLabour& action, Context& context) {
  auto time = readQuantity(context, std::string_view(action.time), "time", QuantityKind::Duration);
  if (!time) return failAs(time);
  if (!(time->si > 0)) {
    return fail(ErrorCode::OutOfRange, "workshop.must_be_positive", "time",
                {{"text", action.time}});
  }
  auto rate = readPrice(action.hourlyRate, "hourly_rate");
  if (!rate) return failAs(rate);
  auto currency = currencyOf(context, action.currency);
  if (!currency) return failAs(currency);
  context.add(model::Labour{time->si / 60.0, action.text.value_or(""), *rate, *currency},
              context.place());
  return {};
}

Result<void> act(const DeclineWork& action, Context& context) {
  if (action.what.empty()) return missing("what");
  context.add(model::WorkDeclined{action.what, action.words.value_or("")}, context.place());
  return {};
}

Result<void> act(const AddNote& action, Context& context) {
  if (action.text.empty()) return missing("text");
  context.add(model::Note{action.text}, context.place());
  return {};
}

Result<void> act(const AddPhoto& action, Context& context) {
  if (context.pictures() == nullptr) {
    return fail(ErrorCode::Refused, "workshop.no_picture_reader", "file");
  }
  auto prepared = context.pictures()->prepare(action.file);
  if (!prepared) return tl::make_unexpected(prepared.error().about("file"));
  const auto slash = action.file.find_last_of("/\\");
  model::Photo photo;
  photo.hash = prepared->picture.hash;
  photo.fileName = slash == std::string::npos ? action.file : action.file.substr(slash + 1);
  photo.mime = prepared->picture.mime;
  photo.width = prepared->width;
  photo.height = prepared->height;
  photo.caption = action.caption.value_or("");
  context.add(std::move(photo), context.place());
  context.addPicture(std::move(prepared->picture));
  return {};
}

Result<void> act(const AddRecheck& action, Context& context) {
  model::RecheckDue recheck;
  recheck.what = action.what;
  auto on = readDate(action.on, "on");
  if (!on) return failAs(on);
  recheck.on = *on;
  auto odometer = readQuantity(context, action.atOdometer, "at_odometer", QuantityKind::Length,
                               context.job().vehicle.fact.odometerUnit);
  if (!odometer) return failAs(odometer);
  recheck.atOdometer = std::move(*odometer);
  if (!recheck.on && !recheck.atOdometer) return missing("on");
  context.add(std::move(recheck), context.place());
  return {};
}

Result<void> act(const FinishRecheck& action, Context& context) {
  if (action.result.empty()) return missing("result");
  const JobState& job = context.job();
  const auto isValid = [&](const model::Entry* entry) {
    return entry->id.value == action.recheck && model::as<model::RecheckDue>(*entry) != nullptr;
  };
  if (std::none_of(job.valid.begin(), job.valid.end(), isValid)) {
    return fail(ErrorCode::NotFound, "workshop.no_recheck", "recheck",
                {{"text", std::to_string(action.recheck)}});
  }
  if (job.recheckDone({action.recheck}) != nullptr) {
    return fail(ErrorCode::Conflict, "workshop.recheck_is_done", "recheck",
                {{"text", std::to_string(action.recheck)}});
  }
  context.add(model::RecheckDone{{action.recheck}, action.result}, {});
  return {};
}

}  // namespace sw::workshop
