// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bearings/play_limits.h"

#include <nlohmann/json.hpp>

#include "compute/bearings/bearings.h"
#include "compute/bearings/play_limits_picture.h"
#include "compute/brakes/gauge_input.h"

namespace sw::compute {

namespace {

using mechanics::SteeringGear;

struct PlayInput {
  std::optional<Length> wheel, rim, steeringWheel;
  std::optional<Mass> grossMass;
  std::optional<SteeringGear> gear;
};

Result<PlayInput> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  PlayInput input;
  input.wheel = reader.optional<Length>("wheel_diameter", Sign::Positive);
  input.rim = reader.optional<Length>("rim_diameter", Sign::Positive);
  input.grossMass = reader.optional<Mass>("gross_mass", Sign::Positive);
  input.steeringWheel = reader.optional<Length>("steering_wheel_diameter", Sign::Positive);
  input.gear = reader.choice<mechanics::SteeringGear>("steering_gear");
  if (input.rim) reader.requireKey("gross_mass");
  if (input.grossMass) reader.requireKey("rim_diameter");
  if (input.gear) reader.requireKey("steering_wheel_diameter");
  reader.takeSeed();
  if (auto done = reader.finish(); !done) return failAs(done);
  return input;
}

/// Collects the rows; the first failure is kept.
class Rows {
 public:
  void add(const char* check, const Result<Length>& limit, const char* where, const char* source) {
    if (!limit) {
      if (!m_error) m_error = limit.error();
      return;
    }
    m_rows.push_back(
        {{"check", check}, {"limit", quantityText(*limit)}, {"where", where}, {"source", source}});
  }
  [[nodiscard]] Result<Json> done() {
    if (m_error) return asInputError(*m_error);
    return std::move(m_rows);
  }

 private:
  Json m_rows = Json::array();
  std::optional<Error> m_error;
};

Result<Json> limitsJson(const PlayInput& input) {
  Rows rows;
  rows.add("wheel_bearing", mechanics::kBearingRockLimit, "tyre sidewall, rocked top and bottom",
           "COMAR 11.22.03.04");
  if (input.wheel) {
    rows.add("kingpin", mechanics::kingpinRockLimit(*input.wheel),
             "rim, wheel braked, total rock top and bottom",
             "superseded British inspection guide of 2012");
  }
  if (input.rim && input.grossMass) {
    rows.add("steering_linkage", mechanics::linkageRockLimit(*input.rim, *input.grossMass),
             "tread, front and rear, wheel bearings set first", "49 CFR 570.60");
  }
  if (input.steeringWheel) {
    rows.add("steering_wheel_lash", mechanics::steeringLashLimit(*input.steeringWheel),
             "rim of the steering wheel", "49 CFR 570.60");
  }
  if (input.steeringWheel && input.gear) {
    rows.add("steering_wheel_lash", mechanics::steeringLashLimit(*input.steeringWheel, *input.gear),
             "rim of the steering wheel", "superseded British inspection guide of 2012");
  }
  return rows.done();
}

/// The same limits for the picture; what cannot be told is left out.
PlayLimitsShown shownLimits(const PlayInput& input) {
  const auto told = [](const Result<Length>& limit) {
    return limit ? std::optional<Length>(*limit) : std::nullopt;
  };
  PlayLimitsShown shown;
  shown.bearing = mechanics::kBearingRockLimit;
  if (input.wheel) shown.kingpin = told(mechanics::kingpinRockLimit(*input.wheel));
  if (input.rim && input.grossMass) {
    shown.linkage = told(mechanics::linkageRockLimit(*input.rim, *input.grossMass));
  }
  if (input.steeringWheel) shown.lash = told(mechanics::steeringLashLimit(*input.steeringWheel));
  if (input.steeringWheel && input.gear) {
    shown.lashBritish = told(mechanics::steeringLashLimit(*input.steeringWheel, *input.gear));
  }
  return shown;
}

std::vector<FieldDescription> inputFields() {
  const FieldNotes positive{.range = "more than 0"};
  return withEnvelope(
      {quantityField("wheel_diameter", QuantityKind::Length,
                     "on which kingpin rock is read, such as the rim's", positive),
       quantityField("rim_diameter", QuantityKind::Length,
                     "nominal, for the linkage; needs gross_mass", positive),
       quantityField("gross_mass", QuantityKind::Mass,
                     "permitted mass of the vehicle; needs rim_diameter", positive),
       quantityField("steering_wheel_diameter", QuantityKind::Length, "for its lash", positive),
       {.name = "steering_gear",
        .kind = "word",
        .range = "box | rack",
        .meaning = "for the lash by the British guide"}});
}

FieldDescription textField(std::string_view name) {
  return {.name = name, .kind = "text", .presence = Presence::Required};
}

std::vector<FieldDescription> outputFields() {
  return {{.name = "limits",
           .kind = "list of object",
           .presence = Presence::Required,
           .meaning = "one row for each that can be told",
           .fields = {{.name = "check",
                       .kind = "word",
                       .presence = Presence::Required,
                       .range = "wheel_bearing | kingpin | steering_linkage | "
                                "steering_wheel_lash"},
                      quantityField("limit", QuantityKind::Length, "most play",
                                    {.presence = Presence::Required}),
                      textField("where"),
                      textField("source")}}};
}

constexpr std::string_view kExampleInput = R"({"wheel_diameter": "430 mm", "rim_diameter": "15 in",
                          "gross_mass": "2600 kg", "steering_wheel_diameter": "405 mm",
                          "steering_gear": "box"})";

constexpr std::string_view kExampleOutput =
    R"({
  "result": {
    "limits": [
      {
        "check": "wheel_bearing", "limit": "3.175 mm",
        "where": "tyre sidewall, rocked top and bottom", "source": "COMAR 11.22.03.04"},
      {
        "check": "kingpin", "limit": "8.6 mm",
        "where": "rim, wheel braked, total rock top and bottom",
        "source": "superseded British inspection guide of 2012"},
      {
        "check": "steering_linkage", "limit": "6.35 mm",
        "where": "tread, front and rear, wheel bearings set first",
        "source": "49 CFR 570.60"},
      {
        "check": "steering_wheel_lash", "limit": "50.8 mm",
        "where": "rim of the steering wheel", "source": "49 CFR 570.60"},
      {
        "check": "steering_wheel_lash", "limit": "79.9342105263158 mm",
        "where": "rim of the steering wheel",
        "source": "superseded British inspection guide of 2012"}]},
  "notes": [
    {
      "code": "floor_only",
      "text": "Floors of roadworthiness, far too loose to cure shimmy: no play that is )"
    R"(felt belongs in a joint."},
    {
      "code": "elsewhere",
      "text": "Rules differ from place to place and change: those in force where the )"
    R"(vehicle is used count, and its own documentation where it is stricter."}],
  "method": {
    "name": "limits of inspection rules, scaled by diameter",
    "source": "49 CFR 570.60; COMAR 11.22.03.04; superseded British inspection guide of 2012",
    "options": {}}})";

constexpr std::string_view kFormula =
    "wheel bearing, rocked top and bottom, at the tyre sidewall: 3.2 mm (1/8 in)\n"
    "kingpin, wheel braked, total rock at the rim: 10 mm × wheel diameter ÷ 500 mm\n"
    "steering linkage, at the tread: 6.4 mm (1/4 in) up to 4536 kg (10 000 lb) gross; above "
    "that 1/4 in on rims to 16 in, 3/8 in to 18 in, 1/2 in beyond\n"
    "lash at the steering wheel: 2 in below 18 in diameter, 2 1/4 in from 18 in, 2 1/2 in "
    "from 20 in, 2 3/4 in from 22 in on\n"
    "the same by the British guide: 75 mm with a steering box, 13 mm with a rack, × "
    "steering-wheel diameter ÷ 380 mm";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "The wheel bearings are set before the linkage is judged.",
    "Between two sizes of steering wheel the smaller one counts, being stricter (own rule).",
    "The British guide of 2012 is superseded, and claims no precise limit for the kingpin.",
    "The vehicle's documentation and the rules in force where it is used come first.",
    "Not as a target: these are floors of roadworthiness, far too loose to cure shimmy.",
});

}  // namespace

Description describePlayLimits() {
  return {.title = "Play a roadworthiness inspection lets pass",
          .method = "limits of inspection rules, scaled by diameter",
          .source = "49 CFR 570.60; COMAR 11.22.03.04; superseded British inspection guide of 2012",
          .formula = kFormula,
          .assumptions = kAssumptions,
          .inputs = inputFields(),
          .outputs = outputFields(),
          .exampleInput = kExampleInput,
          .exampleOutput = kExampleOutput};
}

Result<Outcome> runPlayLimits(const Json& json) {
  Outcome outcome;
  const auto input = read(json, outcome.notes);
  if (!input) return failAs(input);
  auto limits = limitsJson(*input);
  if (!limits) return failAs(limits);
  outcome.result["limits"] = std::move(*limits);
  outcome.notes.push_back({"floor_only",
                           "Floors of roadworthiness, far too loose to cure shimmy: "
                           "no play that is felt belongs in a joint."});
  outcome.notes.push_back(
      {"elsewhere",
       "Rules differ from place to place and change: those in force where the vehicle "
       "is used count, and its own documentation where it is stricter."});
  outcome.draw = [shown = shownLimits(*input)](figure::Size size) {
    return playLimitsPicture(shown, size);
  };
  return outcome;
}

}  // namespace sw::compute
