// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>

#include "compute/bolts/bolt_fields.h"
#include "compute/bolts/bolts.h"
#include "compute/bolts/wheel_nut_recheck_picture.h"
#include "compute/output.h"
#include "mechanics/bolts/wheel_nut_recheck.h"
#include "units/format.h"

namespace sw::compute {

namespace {

using mechanics::VehicleWeight;
using mechanics::WheelNutRecheck;
using mechanics::WheelNutsFitted;

struct RecheckInput {
  WheelNutsFitted fitted;
  Unit unit;  ///< of the odometer, as typed
};

constexpr QuantitySpec kDistance{
    .kind = QuantityKind::Length, .sign = Sign::NotNegative, .unit = "km"};

Unit kilometre() {
  return findUnit(QuantityKind::Length, "km").value_or(defaultUnit(QuantityKind::Length));
}

std::optional<Length> distance(InputReader& reader, std::string_view key) {
  const auto si = reader.quantity(key, kDistance);
  if (!si) return std::nullopt;
  return Length::fromSi(*si);
}

Result<RecheckInput> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  RecheckInput input{{}, kilometre()};
  reader.requireKey("odometer");
  if (const auto typed = reader.typed("odometer", kDistance)) {
    input.fitted.odometer = typed->as<Length>();
    input.unit = findUnit(QuantityKind::Length, typed->unit).value_or(input.unit);
  }
  input.fitted.odometerNow = distance(reader, "odometer_now");
  input.fitted.firstAfter = distance(reader, "first_after");
  input.fitted.vehicle = reader.choice<VehicleWeight>("vehicle").value_or(input.fitted.vehicle);
  reader.takeSeed();
  if (auto done = reader.finish(); !done) return failAs(done);
  return input;
}

std::string inKilometres(Length length) {
  return exactText(length.si(), kilometre());
}

/// Whole units, as an odometer shows them.
std::string onOdometer(Length length, const Unit& unit) {
  return fixedDecimal(length.si() / unit.toSi, 0) + " " + std::string(unit.symbol);
}

Json recheckJson(const WheelNutRecheck& recheck, const Unit& unit) {
  Json row = {{"after", inKilometres(recheck.after)},
              {"by", inKilometres(recheck.by)},
              {"from_reading", inKilometres(recheck.afterReading)},
              {"by_reading", inKilometres(recheck.byReading)},
              {"from_on_odometer", onOdometer(recheck.afterReading, unit)},
              {"by_on_odometer", onOdometer(recheck.byReading, unit)}};
  if (recheck.orAfter) row["or_after"] = quantityText(*recheck.orAfter);
  if (recheck.state) row["state"] = wordOf(*recheck.state);
  return row;
}

FieldDescription kilometres(std::string_view name, std::string_view meaning,
                            const FieldNotes& notes = {}) {
  FieldDescription field = quantityField(name, QuantityKind::Length, meaning, notes);
  field.unit = "km";
  return field;
}

std::vector<FieldDescription> inputFields() {
  return withEnvelope(
      {kilometres("odometer",
                  "reading when the wheel was fitted; answers come in "
                  "its unit too",
                  {.presence = Presence::Required, .range = "0 or more"}),
       kilometres("odometer_now", "reading now, for what is due", {.range = "odometer or more"}),
       kilometres("first_after",
                  "own distance of the first check; else 50 km, "
                  "heavy 40 km",
                  {.range = "more than 0, up to 100 km"}),
       {.name = "vehicle",
        .kind = "word",
        .defaultValue = R"("light")",
        .range = "light | heavy"}});
}

std::vector<FieldDescription> outputFields() {
  return {
      {.name = "rechecks",
       .kind = "list of object",
       .presence = Presence::Required,
       .meaning = "in the order they come",
       .fields = {
           kilometres("after", "distance since fitting"),
           kilometres("by", "distance since fitting"),
           kilometres("from_reading", "of the odometer"),
           kilometres("by_reading", "of the odometer"),
           {.name = "from_on_odometer", .kind = "text", .meaning = "in the unit typed, whole"},
           {.name = "by_on_odometer", .kind = "text", .meaning = "likewise"},
           quantityField("or_after", QuantityKind::Duration, "of driving, whichever comes first"),
           {.name = "state",
            .kind = "word",
            .range = "not_yet | due | passed",
            .meaning =
                "where the reading of now is given; passed: check now unless it was done"}}}};
}

void putNotes(VehicleWeight vehicle, std::vector<Note>& notes) {
  notes.push_back({"how_to_check",
                   "Cold, to the full torque, without slackening first. Record it as checked, not "
                   "as tightened."});
  notes.push_back({"it_turned",
                   "A nut that turns had settled or come loose: look at seats, studs and threads "
                   "and check again."});
  notes.push_back({"threads_as_documented",
                   "Dry or lightly oiled threads: sources differ, so follow the vehicle's "
                   "documentation and record which."});
  notes.push_back(
      {"where_from", vehicle == VehicleWeight::Heavy
                         ? "40 to 80 km or 30 minutes: BS AU 50-2.7a; in a fleet trial nuts still "
                           "came loose at 160 km."
                         : "50 km and up to 160 km: advice of the tyre trade, no standard. The "
                           "vehicle's or the wheel's own distance comes first."});
}

constexpr std::string_view kExampleOutput =
    R"({
  "result": {
    "rechecks": [
      {
        "after": "50 km",
        "by": "100 km",
        "from_reading": "103385.97824 km",
        "by_reading": "103435.97824 km",
        "from_on_odometer": "64241 mi",
        "by_on_odometer": "64272 mi",
        "state": "due"},
      {
        "after": "100 km",
        "by": "160 km",
        "from_reading": "103435.97824 km",
        "by_reading": "103495.97824 km",
        "from_on_odometer": "64272 mi",
        "by_on_odometer": "64309 mi",
        "state": "not_yet"}]},
  "notes": [
    {
      "code": "how_to_check",
      "text": "Cold, to the full torque, without slackening first. Record it as checked, )"
    R"(not as tightened."},
    {
      "code": "it_turned",
      "text": "A nut that turns had settled or come loose: look at seats, studs and )"
    R"(threads and check again."},
    {
      "code": "threads_as_documented",
      "text": "Dry or lightly oiled threads: sources differ, so follow the vehicle's )"
    R"(documentation and record which."},
    {
      "code": "where_from",
      "text": "50 km and up to 160 km: advice of the tyre trade, no standard. The )"
    R"(vehicle's or the wheel's own distance comes first."}],
  "method": {
    "name": "distances since the wheel was fitted",
    "source": "tyre trade advice and BS AU 50-2.7a:1995, both at second hand",
    "options": {}}})";

constexpr std::string_view kFormula =
    "light vehicle: check from reading at fitting + 50 km on (or as given), by + 100 km; "
    "again from + 100 km, by + 160 km\n"
    "heavy vehicle: check after 30 minutes of driving or from + 40 km on (or as given), by + "
    "80 km; again from + 100 km, by + 160 km";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "Nuts are checked cold, unloaded as the sheet says, to the full torque and without "
    "slackening first.",
    "Threads are dry or lightly oiled as the vehicle's documentation says; record which.",
    "The distances come at second hand, from the tyre trade and a British standard; no "
    "standard for light vehicles was seen.",
    "Where the vehicle's or the wheel's documentation gives a distance, that one holds.",
});

}  // namespace

Description describeWheelNutRecheck() {
  return {.title = "At which readings are wheel nuts checked again?",
          .method = "distances since the wheel was fitted",
          .source = "tyre trade advice and BS AU 50-2.7a:1995, both at second hand",
          .formula = kFormula,
          .assumptions = kAssumptions,
          .inputs = inputFields(),
          .outputs = outputFields(),
          .exampleInput = R"({"odometer": "64210 mi", "odometer_now": "64250 mi"})",
          .exampleOutput = kExampleOutput};
}

Result<Outcome> runWheelNutRecheck(const Json& json) {
  Outcome outcome;
  const auto input = read(json, outcome.notes);
  if (!input) return failAs(input);
  const auto rechecks = mechanics::wheelNutRechecks(input->fitted);
  if (!rechecks) return asInputError(rechecks.error());
  Json list = Json::array();
  for (const WheelNutRecheck& each : *rechecks) list.push_back(recheckJson(each, input->unit));
  outcome.result["rechecks"] = std::move(list);
  putNotes(input->fitted.vehicle, outcome.notes);
  outcome.draw = [input = *input, rechecks = *rechecks](figure::Size size) {
    return wheelNutRecheckPicture(input.fitted, rechecks, input.unit, size);
  };
  return outcome;
}

}  // namespace sw::compute
