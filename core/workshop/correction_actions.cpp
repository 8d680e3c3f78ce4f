// SPDX-License-Identifier: GPL-3.0-or-later
// Corrections: a new entry with a reason takes the place of the old one; both stay on record.
#include <algorithm>
#include <nlohmann/json.hpp>

#include "mechanics/swivel/shim_packs.h"
#include "model/entry_json.h"
#include "workshop/judging.h"
#include "workshop/pack_total.h"
#include "workshop/replacing.h"
#include "workshop/rules.h"
#include "workshop/runs.h"

namespace sw::workshop {

namespace {

using model::CorrectionReason;
using model::Entry;
using model::EntryId;
using model::Json;

/// Facts that are answered, started or judged, not typed: they have their own ways.
bool correctable(const Entry& entry) {
  return model::as<model::VerdictGiven>(entry) == nullptr &&
         model::as<model::RunStarted>(entry) == nullptr &&
         model::as<model::HoldAnswer>(entry) == nullptr &&
         model::as<model::Withdrawal>(entry) == nullptr &&
         model::as<model::JobClosed>(entry) == nullptr;
}

bool withdrawable(const Entry& entry) {
  return model::as<model::VerdictGiven>(entry) == nullptr &&
         model::as<model::JobOpened>(entry) == nullptr &&
         model::as<model::Withdrawal>(entry) == nullptr &&
         model::as<model::JobClosed>(entry) == nullptr;
}

/// The job's entry, still valid. Errors: NotFound "workshop.no_entry", Conflict
/// "workshop.already_replaced".
Result<const Entry*> validEntry(const Context& context, std::int64_t id) {
  for (const Entry* entry : context.job().valid) {
    if (entry->id.value == id) return entry;
  }
  if (context.job().findEntry({id}) != nullptr) {
    return fail(ErrorCode::Conflict, "workshop.already_replaced", "entry",
                {{"text", std::to_string(id)}});
  }
  return fail(ErrorCode::NotFound, "workshop.no_entry", "entry", {{"text", std::to_string(id)}});
}

bool isQuantity(const Json& value) {
  return value.is_object() && value.contains("si");
}

/// The typed text in the shape the old field has.
Result<Json> newValue(Context& context, const Json& old, const std::string& field,
                      const std::string& text) {
  if (isQuantity(old)) {
    const auto kind = quantityKindFromWord(old["kind"].get<std::string>());
    auto typed = readQuantity(context, std::string_view(text), field,
                              kind.value_or(QuantityKind::Number), old["unit"].get<std::string>());
    if (!typed) return failAs(typed);
    Json json = Json::object();
    json["number"] = typed->number;
    json["unit"] = typed->unit;
    json["kind"] = old["kind"];
    json["si"] = typed->si;
    return json;
  }
  if (old.is_string()) return Json(text);
  if (old.is_boolean() && (text == "true" || text == "false")) return Json(text == "true");
  if (old.is_number()) {
    auto number = readQuantity(context, std::string_view(text), field, QuantityKind::Number);
    if (!number) return failAs(number);
    if (old.is_number_integer()) return Json(static_cast<std::int64_t>(number->si));
    return Json(number->si);
  }
  return fail(ErrorCode::InvalidInput, "workshop.field_cannot_change", field, {{"text", text}});
}

/// The old payload with one field changed, through its own strict reader.
Result<model::Payload> changedPayload(Context& context, const Entry& entry, const Correct& action) {
  Json json = model::toJson(entry);
  Json& fact = json["fact"];
  if (!fact.contains(action.field)) {
    return fail(ErrorCode::NotFound, "workshop.no_such_field", "field", {{"text", action.field}});
  }
  auto value = newValue(context, fact[action.field], action.field, action.value);
  if (!value) return failAs(value);
  fact[action.field] = std::move(*value);
  auto changed = model::entryFromJson(json);
  if (!changed) return tl::make_unexpected(changed.error().about(action.field));
  return changed->payload;
}

/// What a pack of shims adds up to follows what is typed for it; a sum is not typed over.
Result<void> followStack(model::ShimPack& pack, const std::string& field) {
  if (field == "shims") {
    auto stack = mechanics::parseStack(pack.shims, field);
    if (!stack) return failAs(stack);
    pack.count = static_cast<std::int64_t>(stack->shims.size());
    pack.total = stackTotal(*stack);
    return {};
  }
  if (!pack.shims.empty() && (field == "total" || field == "count")) {
    return fail(ErrorCode::Refused, "workshop.pack_is_a_sum", field, {{"text", pack.shims}});
  }
  if (pack.shims.empty() && field == "measured") pack.total = *pack.measured;
  if (pack.shims.empty() && field == "total" && pack.measured) pack.measured = pack.total;
  return {};
}

/// The series an entry belongs to, so that its verdict is given again.
std::optional<EntryId> seriesOf(const Entry& entry) {
  if (const auto* reading = model::as<model::Reading>(entry)) return reading->series;
  if (model::as<model::Series>(entry) != nullptr) return entry.id;
  return std::nullopt;
}

Result<void> judgeMoved(Context& context, EntryId series) {
  if (auto again = context.refresh(); !again) return failAs(again);
  return judgeAgain(context, series);
}

std::optional<EntryId> seriesNamed(const JobState& job, std::int64_t id) {
  for (const Entry* entry : job.valid) {
    if (entry->id.value == id) return seriesOf(*entry);
  }
  return std::nullopt;
}

}  // namespace

Result<void> act(const Correct& action, Context& context) {
  if (action.reason == CorrectionReason::Withdrawn) {  // marks what an undo entered again
    return fail(ErrorCode::InvalidInput, "json.not_one_of", "reason",
                {{"text", std::string(wordOf(action.reason))},
                 {"choices", "typing_slip, wrong_side, wrong_unit, bad_pull, other"}});
  }
  auto found = validEntry(context, action.entry);
  if (!found) return failAs(found);
  const Entry entry = **found;
  if (!correctable(entry)) {
    return fail(ErrorCode::Refused, "workshop.not_corrected_so", "entry",
                {{"kind", std::string(model::kindOf(entry.payload))}});
  }
  const std::string text = action.reasonText.value_or("");
  auto side = entry.side;
  model::Payload payload = entry.payload;
  if (action.field == "side") {
    side = fromWord<model::Side>(action.value);
    if (!side || !entry.side) {
      return fail(ErrorCode::InvalidInput, "json.not_one_of", "value",
                  {{"text", action.value}, {"choices", "left, right"}});
    }
  } else {
    auto changed = changedPayload(context, entry, action);
    if (!changed) return failAs(changed);
    payload = std::move(*changed);
    if (auto* pack = std::get_if<model::ShimPack>(&payload)) {
      if (auto followed = followStack(*pack, action.field); !followed) return failAs(followed);
    }
  }
  if (model::payloadJson(payload) == model::payloadJson(entry.payload) && side == entry.side) {
    return fail(ErrorCode::Refused, "workshop.nothing_changes", "value", {{"text", action.value}});
  }
  if (model::as<model::Series>(entry) != nullptr) {
    withdrawVerdict(context, entry.id, action.reason, text);
    return judgeMoved(context,
                      reenterSeries(context, entry, std::move(payload), side, action.reason, text));
  }
  context.replace(entry, std::move(payload), action.reason, text, side);
  if (auto again = context.refresh(); !again) return failAs(again);
  if (const auto series = seriesOf(entry)) return judgeAgain(context, *series);
  return {};
}

Result<void> act(const Withdraw& action, Context& context) {
  auto found = validEntry(context, action.entry);
  if (!found) return failAs(found);
  const Entry entry = **found;
  if (!withdrawable(entry)) {
    return fail(ErrorCode::Refused, "workshop.not_withdrawn_so", "entry",
                {{"kind", std::string(model::kindOf(entry.payload))}});
  }
  const std::string text = action.reasonText.value_or("");
  std::vector<Entry> taken{entry};
  if (model::as<model::StepMark>(entry) != nullptr) {
    // What the same action moved in the ledger goes back with it.
    for (const Entry* other : context.job().valid) {
      const bool together = model::as<model::LedgerMove>(*other) != nullptr &&
                            other->run == entry.run && other->step == entry.step &&
                            other->side == entry.side && other->enteredAt == entry.enteredAt &&
                            other->id > entry.id;
      if (together) taken.push_back(*other);
    }
  }
  if (model::as<model::Series>(entry) != nullptr) {
    withdrawVerdict(context, entry.id, CorrectionReason::Withdrawn, text);
    for (Entry& reading : readingsOf(context.job(), entry.id)) taken.push_back(std::move(reading));
  }
  for (const Entry& one : taken) {
    context.replace(one, model::Withdrawal{text}, CorrectionReason::Withdrawn, text, one.side);
  }
  if (auto again = context.refresh(); !again) return failAs(again);
  if (const auto* reading = model::as<model::Reading>(entry)) {
    const auto series = reading->series;
    for (const SeriesView& view : context.job().series) {
      if (view.id != series || view.usedCount() > 0) continue;
      withdrawVerdict(context, series, CorrectionReason::Withdrawn, text);
      return context.refresh();
    }
    return judgeAgain(context, series);
  }
  return {};
}

Result<void> act(const MoveSeries& action, Context& context) {
  const auto id = seriesNamed(context.job(), action.series);
  if (!id) {
    return fail(ErrorCode::NotFound, "workshop.no_series", "series",
                {{"text", std::to_string(action.series)}});
  }
  auto found = validEntry(context, id->value);
  if (!found) return failAs(found);
  const Entry entry = **found;
  if (!entry.side) return fail(ErrorCode::Refused, "workshop.series_without_side", "series");
  const auto other = model::otherSide(*entry.side);
  const std::string text = action.reasonText.value_or("");
  withdrawVerdict(context, entry.id, CorrectionReason::WrongSide, text);
  const EntryId moved =
      reenterSeries(context, entry, entry.payload, other, CorrectionReason::WrongSide, text);
  context.tell("series_moved",
               {{"series", std::to_string(moved.value)}, {"side", std::string(wordOf(other))}});
  if (auto judged = judgeMoved(context, moved); !judged) return failAs(judged);
  // The step of the side that really was measured may now be complete; the one that was not is open
  // again.
  for (std::size_t i = 0; i < context.job().steps.size(); ++i) {
    const StepView& view = context.job().steps[i];
    if (context.job().runs[view.run].id != entry.run || view.step->id != entry.step) continue;
    const bool emptied =
        view.side == entry.side && view.done() && !lacking(context.job(), i).empty();
    if (emptied) {
      auto open = completeStep(context, i, model::StepAction::Reopened,
                               "its readings belong to the other side");
      if (!open) return failAs(open);
    } else if (view.side == other) {
      if (auto ready = completeIfReady(context, i); !ready) return failAs(ready);
    }
  }
  return {};
}

}  // namespace sw::workshop
