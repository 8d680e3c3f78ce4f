// SPDX-License-Identifier: GPL-3.0-or-later
// People, instruments, vehicles and spec sheets: insert-only revisions of what jobs point at.
#include <algorithm>
#include <array>

#include "diagnosis/own_numbers.h"
#include "diagnosis/shipped_causes.h"
#include "measure/compare_figures.h"
#include "model/vin.h"
#include "units/format.h"
#include "workshop/context.h"

namespace sw::workshop {

namespace {

using model::SpecItem;

template <class T>
void take(const std::optional<T>& from, T& to) {
  if (from) to = *from;
}

template <class T>
void take(const std::optional<T>& from, std::optional<T>& to) {
  if (from) to = *from;
}

tl::unexpected<Error> missing(const std::string& field) {
  return fail(ErrorCode::Missing, "workshop.field_needed", field);
}

tl::unexpected<Error> unknownVehicle(const std::string& field, const std::string& text) {
  return fail(ErrorCode::NotFound, "workshop.no_vehicle", field, {{"text", text}});
}

/// The permissible error may be a share of the reading ("4 %") for torque wrenches.
Result<std::optional<TypedQuantity>> readPermissible(Context& context,
                                                     const std::optional<std::string>& text,
                                                     QuantityKind kind) {
  if (!text) return std::nullopt;
  const auto percent = text->find('%');
  if (percent == std::string::npos) return readQuantity(context, text, "permissible_error", kind);
  auto number = readQuantity(context, std::string_view(*text).substr(0, percent),
                             "permissible_error", QuantityKind::Number);
  if (!number) return failAs(number);
  number->unit.assign(1, '%');
  number->si /= 100.0;
  return std::optional<TypedQuantity>(std::move(*number));
}

Result<void> fillInstrument(const SetInstrument& action, Context& context, QuantityKind kind,
                            model::Instrument& instrument) {
  if (action.graduation) {
    auto graduation =
        readQuantity(context, std::string_view(*action.graduation), "graduation", kind);
    if (!graduation) return failAs(graduation);
    if (!(graduation->si > 0)) {
      return fail(ErrorCode::OutOfRange, "workshop.must_be_positive", "graduation",
                  {{"text", *action.graduation}});
    }
    instrument.graduation = std::move(*graduation);
  }
  auto permissible = readPermissible(context, action.permissibleError, kind);
  if (!permissible) return failAs(permissible);
  take(*permissible, instrument.permissibleError);
  for (const auto& [text, name, target] :
       {std::tuple{&action.rangeMin, "range_min", &instrument.rangeMin},
        std::tuple{&action.rangeMax, "range_max", &instrument.rangeMax}}) {
    auto value = readQuantity(context, *text, name, kind);
    if (!value) return failAs(value);
    take(*value, *target);
  }
  auto calibrated = readDate(action.calibratedOn, "calibrated_on");
  if (!calibrated) return failAs(calibrated);
  take(*calibrated, instrument.calibratedOn);
  auto due = readDate(action.calibrationDue, "calibration_due");
  if (!due) return failAs(due);
  take(*due, instrument.calibrationDue);
  return {};
}

/// Both figures of a line that carries two units must agree within their rounding; if not, the pair
/// is told as a query, never corrected.
Result<void> queryFigures(Context& context, const SpecItem& item) {
  const std::array pairs{std::pair{&item.min, &item.secondMin},
                         std::pair{&item.max, &item.secondMax},
                         std::pair{&item.value, &item.secondValue}};
  for (const auto& [first, second] : pairs) {
    if (!*first || !*second) continue;
    auto comparison = compareFigures(**first, **second);
    if (!comparison) return failAs(comparison);
    if (comparison->agreement == FigureAgreement::Agree) continue;
    const auto secondUnit = findUnit((*second)->kind, (*second)->unit);
    const auto firstUnit = findUnit((*first)->kind, (*first)->unit);
    context.tell("figures_disagree",
                 {{"key", item.key},
                  {"first", (*first)->text()},
                  {"second", (*second)->text()},
                  {"first_converted", secondUnit ? displayText((*first)->si, *secondUnit) : ""},
                  {"second_converted", firstUnit ? displayText((*second)->si, *firstUnit) : ""},
                  {"beside_first", comparison->besideFirst.text()},
                  {"beside_second", comparison->besideSecond.text()}});
  }
  return {};
}

/// Reads a figure of a spec line whose kind is not known beforehand.
Result<std::optional<TypedQuantity>> readFigure(Context& context,
                                                const std::optional<std::string>& text,
                                                const std::string& field, QuantityKind kind) {
  return readQuantity(context, text, field, kind);
}

/// The kind a spec line measures: of the line it replaces, by its type, or tried in turn.
QuantityKind kindOfSpec(const SetSpec& action, const SpecItem& old) {
  for (const auto* figure : {&old.value, &old.min, &old.max}) {
    if (*figure) return (*figure)->kind;
  }
  if (action.type == model::SpecKind::Torque) return QuantityKind::Torque;
  const std::optional<std::string>* first = nullptr;
  for (const auto* text : {&action.value, &action.min, &action.max}) {
    if (*text && first == nullptr) first = text;
  }
  if (first == nullptr) return QuantityKind::Number;
  constexpr std::array kTried{QuantityKind::Number, QuantityKind::Force,  QuantityKind::Length,
                              QuantityKind::Torque, QuantityKind::Mass,   QuantityKind::Pressure,
                              QuantityKind::Angle,  QuantityKind::Volume, QuantityKind::Duration};
  for (const QuantityKind kind : kTried) {
    if (parseQuantity(**first, {"value", kind, {}})) return kind;
  }
  return QuantityKind::Force;
}

Result<void> fillFigures(const SetSpec& action, Context& context, QuantityKind kind,
                         SpecItem& item) {
  const std::array figures{std::tuple{&action.min, "min", &item.min},
                           std::tuple{&action.max, "max", &item.max},
                           std::tuple{&action.value, "value", &item.value},
                           std::tuple{&action.secondMin, "second_min", &item.secondMin},
                           std::tuple{&action.secondMax, "second_max", &item.secondMax},
                           std::tuple{&action.secondValue, "second_value", &item.secondValue}};
  for (const auto& [text, name, target] : figures) {
    auto value = readFigure(context, *text, name, kind);
    if (!value) return failAs(value);
    take(*value, *target);
  }
  if (item.min && item.max && item.min->si > item.max->si) {
    return fail(ErrorCode::InvalidInput, "workshop.limits_reversed", "min",
                {{"min", item.min->text()}, {"max", item.max->text()}});
  }
  return {};
}

/// A number that looks mistyped is told, never refused: older chassis numbers follow no rule.
void tellVinHints(Context& context, const std::string& vin) {
  for (const model::VinHint hint : model::vinHints(vin)) {
    if (hint == model::VinHint::CheckDigitAgrees) continue;
    context.tell("vin_hint", {{"hint", std::string(word(hint))}, {"vin", vin}});
  }
}

/// The specification must say something.
bool saysNothing(const SpecItem& item) {
  return !item.min && !item.max && !item.value && item.text.empty() && !item.withdrawn;
}

/// What an instrument without a kind of its own reads, as its graduation is typed with a unit: a
/// camber gauge in degrees, a balancing machine in grams.
std::optional<QuantityKind> kindOfGraduation(const std::string& text) {
  for (const QuantityKind kind :
       {QuantityKind::Length, QuantityKind::Angle, QuantityKind::Mass, QuantityKind::Force,
        QuantityKind::Torque, QuantityKind::Pressure, QuantityKind::Frequency}) {
    const auto parsed = parseQuantity(text, {"graduation", kind, {}});
    const auto& notes = parsed ? parsed->notes : std::vector<ReadNote>{};
    const bool asTyped = std::all_of(
        notes.begin(), notes.end(), [](ReadNote note) { return note == ReadNote::CommaAsDecimal; });
    if (parsed && asTyped) return kind;
  }
  return std::nullopt;
}

}  // namespace

Result<void> act(const SetPerson& action, Context& context) {
  model::Person person;
  const auto* known = context.shop().personByInitials(action.initials);
  if (known != nullptr) {
    person = known->fact;
  } else {
    if (!action.name) return missing("name");
    auto id = context.book().nextPersonId();
    if (!id) return failAs(id);
    person.person = *id;
    person.initials = action.initials;
  }
  if (action.newInitials && context.shop().personByInitials(*action.newInitials) != nullptr) {
    return fail(ErrorCode::Conflict, "workshop.initials_taken", "new_initials",
                {{"text", *action.newInitials}});
  }
  take(action.name, person.name);
  take(action.newInitials, person.initials);
  take(action.active, person.active);
  if (person.initials.empty() || person.name.empty()) return missing("initials");
  context.addShop(std::move(person));
  return {};
}

Result<void> act(const SetInstrument& action, Context& context) {
  model::Instrument instrument;
  const auto* known = context.shop().instrumentByName(action.name);
  if (known != nullptr) {
    instrument = known->fact;
  } else {
    if (!action.type) return missing("type");
    if (!action.graduation) return missing("graduation");
    auto id = context.book().nextInstrumentId();
    if (!id) return failAs(id);
    instrument.instrument = *id;
    instrument.name = action.name;
  }
  take(action.type, instrument.type);
  if (action.errorShape && *action.errorShape != "rectangular" &&
      *action.errorShape != "triangular" && *action.errorShape != "certificate") {
    return fail(
        ErrorCode::InvalidInput, "json.not_one_of", "error_shape",
        {{"text", *action.errorShape}, {"choices", "rectangular, triangular, certificate"}});
  }
  take(action.errorShape, instrument.errorShape);
  take(action.coverageFactor, instrument.coverageFactor);
  take(action.certificate, instrument.certificate);
  take(action.active, instrument.active);
  const QuantityKind before = known != nullptr ? known->fact.graduation.kind : QuantityKind::Length;
  const QuantityKind kind =
      measuredBy(instrument.type)
          .value_or(kindOfGraduation(action.graduation.value_or("")).value_or(before));
  if (auto filled = fillInstrument(action, context, kind, instrument); !filled) {
    return failAs(filled);
  }
  context.addShop(std::move(instrument));
  return {};
}

Result<void> act(const CheckInstrument& action, Context& context) {
  const auto* known = context.shop().instrumentByName(action.instrument);
  if (known == nullptr) {
    return fail(ErrorCode::NotFound, "workshop.no_instrument", "instrument",
                {{"text", action.instrument}});
  }
  const auto& graduation = known->fact.graduation;
  model::InstrumentCheck check;
  check.instrument = known->fact.instrument;
  check.against = action.against;
  auto applied = readQuantity(context, std::string_view(action.applied), "applied", graduation.kind,
                              graduation.unit);
  if (!applied) return failAs(applied);
  auto shown = readQuantity(context, std::string_view(action.shown), "shown", graduation.kind,
                            graduation.unit);
  if (!shown) return failAs(shown);
  auto uncertainty = readQuantity(context, action.appliedUncertainty, "applied_uncertainty",
                                  graduation.kind, graduation.unit);
  if (!uncertainty) return failAs(uncertainty);
  check.applied = std::move(*applied);
  check.shown = std::move(*shown);
  check.appliedUncertainty = std::move(*uncertainty);
  context.addShop(std::move(check));
  return {};
}

Result<void> act(const SetVehicle& action, Context& context) {
  model::Vehicle vehicle;
  const auto* known = context.shop().vehicleByRegistration(action.registration);
  if (known != nullptr) {
    vehicle = known->fact;
  } else {
    auto id = context.book().nextVehicleId();
    if (!id) return failAs(id);
    vehicle.vehicle = *id;
    vehicle.registration = action.registration;
  }
  if (vehicle.registration.empty()) return missing("registration");
  if (action.odometerUnit && *action.odometerUnit != "km" && *action.odometerUnit != "mi") {
    return fail(ErrorCode::InvalidInput, "json.not_one_of", "odometer_unit",
                {{"text", *action.odometerUnit}, {"choices", "km, mi"}});
  }
  auto load = readQuantity(context, action.frontAxleLoad, "front_axle_load", QuantityKind::Mass);
  if (!load) return failAs(load);
  take(*load, vehicle.frontAxleLoad);
  take(action.newRegistration, vehicle.registration);
  take(action.makeModel, vehicle.makeModel);
  take(action.vin, vehicle.vin);
  if (action.vin) tellVinHints(context, *action.vin);
  take(action.owner, vehicle.owner);
  take(action.odometerUnit, vehicle.odometerUnit);
  take(action.tyreFitted, vehicle.tyreFitted);
  take(action.tyreOriginal, vehicle.tyreOriginal);
  take(action.handOfDrive, vehicle.handOfDrive);
  take(action.trafficSide, vehicle.trafficSide);
  take(action.notes, vehicle.notes);
  auto& axle = vehicle.arrangement;
  take(action.dragLinkSide, axle.dragLinkSide);
  take(action.steeringArmOnCap, axle.steeringArmOnCap);
  take(action.lubricant, axle.lubricant);
  take(action.shimEnds, axle.shimEnds);
  take(action.shimLayout, axle.shimLayout);
  take(action.swivelBearing, axle.swivelBearing);
  take(action.dragLinkFixesTo, axle.dragLinkFixesTo);
  take(action.damperFixesTo, axle.damperFixesTo);
  take(action.discMount, axle.discMount);
  take(action.wheelBearing, axle.wheelBearing);
  take(action.absLead, axle.absLead);
  take(action.lockingHubs, axle.lockingHubs);
  context.addShop(std::move(vehicle));
  return {};
}

Result<void> act(const SetSpec& action, Context& context) {
  const auto* vehicle = context.shop().vehicleByRegistration(action.registration);
  if (vehicle == nullptr) return unknownVehicle("registration", action.registration);
  SpecItem item;
  if (const auto* known = context.shop().spec(vehicle->fact.vehicle, action.key))
    item = known->fact;
  item.vehicle = vehicle->fact.vehicle;
  item.key = action.key;
  item.type = action.type;
  auto filled = fillFigures(action, context, kindOfSpec(action, item), item);
  if (!filled) return failAs(filled);
  take(action.text, item.text);
  take(action.fastenerSize, item.fastenerSize);
  take(action.fastenerClass, item.fastenerClass);
  take(action.count, item.count);
  take(action.pattern, item.pattern);
  take(action.singleUse, item.singleUse);
  take(action.source, item.source);
  take(action.withdrawn, item.withdrawn);
  auto date = readDate(action.sourceDate, "source_date");
  if (!date) return failAs(date);
  take(*date, item.sourceDate);
  if (saysNothing(item)) return missing("value");
  if (auto queried = queryFigures(context, item); !queried) return failAs(queried);
  context.addShop(std::move(item));
  return {};
}

Result<void> act(const CopySpec& action, Context& context) {
  const auto* from = context.shop().vehicleByRegistration(action.from);
  if (from == nullptr) return unknownVehicle("from", action.from);
  const auto* to = context.shop().vehicleByRegistration(action.to);
  if (to == nullptr) return unknownVehicle("to", action.to);
  const auto sheet = context.shop().specSheet(from->fact.vehicle);
  if (sheet.empty()) {
    return fail(ErrorCode::NotFound, "workshop.empty_spec_sheet", "from", {{"text", action.from}});
  }
  for (const auto* line : sheet) {
    SpecItem copy = line->fact;
    copy.vehicle = to->fact.vehicle;
    context.addShop(std::move(copy));
  }
  return {};
}

Result<void> act(const SourceSpec& action, Context& context) {
  const auto* vehicle = context.shop().vehicleByRegistration(action.registration);
  if (vehicle == nullptr) return unknownVehicle("registration", action.registration);
  auto date = readDate(action.sourceDate, "source_date");
  if (!date) return failAs(date);
  const auto sheet = context.shop().specSheet(vehicle->fact.vehicle);
  if (sheet.empty()) {
    return fail(ErrorCode::NotFound, "workshop.empty_spec_sheet", "registration",
                {{"text", action.registration}});
  }
  for (const auto* line : sheet) {
    SpecItem revised = line->fact;
    revised.source = action.source;
    take(*date, revised.sourceDate);
    context.addShop(std::move(revised));
  }
  return {};
}

Result<void> act(const SetSetting& action, Context& context) {
  if (action.key.empty()) return missing("key");
  if (action.key == "shop_name") {
    context.addShop(model::ShopNamed{action.value});
    return {};
  }
  if (action.key == "cause_numbers") {
    const auto own = diagnosis::withOwnNumbers(diagnosis::shippedCauses(), action.value);
    if (!own) return tl::make_unexpected(own.error().about("value" + own.error().field));
    context.addShop(model::CauseNumbers{action.value});
    return {};
  }
  return context.book().setSetting(action.key, action.value);
}

}  // namespace sw::workshop
