// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>

#include "compute/input_reader.h"
#include "compute/output.h"
#include "compute/wheels/tyre_reading.h"
#include "compute/wheels/wheel_frequency_picture.h"
#include "compute/wheels/wheels.h"
#include "mechanics/wheels/wheel_frequency.h"
#include "units/format.h"

namespace sw::compute {

namespace {

using mechanics::RollingCircumference;
using mechanics::UncertainFrequency;
using mechanics::UncertainSpeed;

constexpr int kUsualOrders = 3;
constexpr int kMostOrders = 20;
constexpr double kCoverage = 2;

enum class SpeedFrom { True, Dial };

struct FrequencyInput {
  RollingInput rolling;
  std::optional<mechanics::TyreDesignation> builtWith;
  std::vector<Speed> speeds;
  std::vector<Frequency> frequencies;
  Speed speedUncertainty;
  Frequency frequencyUncertainty;
  SpeedFrom speedFrom = SpeedFrom::True;
  std::optional<double> finalDrive;
  int orders = kUsualOrders;
  SpeedGrowth growth = SpeedGrowth::None;
};

void readOptions(InputReader& reader, FrequencyInput& input) {
  reader.inObject("options", [&](InputReader& inner) {
    readRollingOptions(inner, input.rolling);
    input.orders = inner.wholeNumber("orders", 1, kMostOrders).value_or(input.orders);
    const auto growth = inner.fields().oneOf("speed_growth", {"none", "linear"});
    if (growth == "linear") input.growth = SpeedGrowth::Linear;
  });
}

Result<FrequencyInput> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  FrequencyInput input;
  input.rolling = readRolling(reader);
  input.builtWith = readDesignation(reader, "built_with_tyre");
  input.speeds = reader.list<Speed>("speeds", Sign::NotNegative);
  input.frequencies = reader.list<Frequency>("frequencies", Sign::NotNegative);
  if (!reader.fields().has("frequencies")) reader.requireKey("speeds");
  input.speedUncertainty =
      reader.optional<Speed>("speed_uncertainty", Sign::NotNegative).value_or(Speed{});
  input.frequencyUncertainty =
      reader.optional<Frequency>("frequency_uncertainty", Sign::NotNegative).value_or(Frequency{});
  if (reader.fields().oneOf("speed_from", {"true", "dial"}) == "dial") {
    input.speedFrom = SpeedFrom::Dial;
  }
  input.finalDrive = reader.number("final_drive", kPositiveNumber);
  readOptions(reader, input);
  reader.takeSeed();
  if (auto done = reader.finish(); !done) return failAs(done);
  return input;
}

/// The tyre on, and the one the dial goes by.
struct Wheels {
  RollingCircumference on;
  RollingCircumference dial;
};

Result<Wheels> wheelsOf(const FrequencyInput& input, std::vector<Note>& notes) {
  const auto on = rollingOf(input.rolling, notes);
  if (!on) return failAs(on);
  if (!input.builtWith) return Wheels{*on, *on};
  const auto dimensions =
      dimensionsOf(*input.builtWith, "built_with_tyre", input.rolling.assumedAspect);
  if (!dimensions) return failAs(dimensions);
  noteMarking(*dimensions, "The tyre it was built with", notes);
  // One convention for both, or a tyre would not even agree with itself.
  const auto convention =
      input.rolling.convention.value_or(mechanics::conventionOf(input.builtWith->construction));
  const auto dial = mechanics::circumferenceFromDiameter(dimensions->diameter, convention);
  if (!dial) return asInputError(dial.error());
  return Wheels{*on, *dial};
}

Result<RollingCircumference> grown(const RollingCircumference& rolling, Speed speed,
                                   SpeedGrowth growth) {
  if (growth == SpeedGrowth::None) return rolling;
  return mechanics::atSpeed(rolling, speed);
}

/// Where the speeds are those of the dial, only the tyre it goes by matters for a frequency.
const RollingCircumference& governing(const FrequencyInput& input, const Wheels& wheels) {
  return input.speedFrom == SpeedFrom::Dial ? wheels.dial : wheels.on;
}

Json frequencyJson(const UncertainFrequency& frequency) {
  return {{"frequency", quantityText(frequency.frequency)},
          {"standard_uncertainty", quantityText(frequency.standardUncertainty)}};
}

Json speedJson(const UncertainSpeed& speed) {
  return {{"speed", quantityText(speed.speed)},
          {"standard_uncertainty", quantityText(speed.standardUncertainty)}};
}

Result<Json> atSpeedJson(const FrequencyInput& input, const Wheels& wheels, Speed speed) {
  const auto rolling = grown(governing(input, wheels), speed, input.growth);
  if (!rolling) return tl::make_unexpected(rolling.error().about("/speeds"));
  const UncertainSpeed driven{speed, input.speedUncertainty};
  Json row = Json::object();
  row["speed"] = quantityText(speed);
  if (input.speedFrom == SpeedFrom::Dial) {
    row["true_speed"] = quantityText(speed * mechanics::trueOverDial(wheels.on, wheels.dial));
  }
  row["circumference"] = quantityText(rolling->circumference);
  Json orders = Json::array();
  for (int order = 1; order <= input.orders; ++order) {
    const auto frequency = mechanics::frequencyAtSpeed(driven, *rolling, order);
    if (!frequency) return asInputError(frequency.error());
    Json line = {{"order", order}};
    line.update(frequencyJson(*frequency));
    orders.push_back(std::move(line));
  }
  row["orders"] = std::move(orders);
  if (!input.finalDrive) return row;
  const auto shaft = mechanics::frequencyAtSpeed(driven, *rolling, *input.finalDrive);
  if (!shaft) return asInputError(shaft.error());
  row["prop_shaft"] = frequencyJson(*shaft);
  return row;
}

Result<Json> atFrequencyJson(const FrequencyInput& input, const Wheels& wheels,
                             Frequency frequency) {
  const UncertainFrequency heard{frequency, input.frequencyUncertainty};
  const auto speedOf = [&](double multiple) -> Result<UncertainSpeed> {
    RollingCircumference rolling = governing(input, wheels);
    if (input.growth == SpeedGrowth::Linear) {
      const auto grown = mechanics::atTurnRate(rolling, frequency / multiple);
      if (!grown) return failAs(grown);
      rolling = *grown;
    }
    return mechanics::speedAtFrequency(heard, rolling, multiple);
  };
  Json row = {{"frequency", quantityText(frequency)}};
  Json orders = Json::array();
  for (int order = 1; order <= input.orders; ++order) {
    const auto speed = speedOf(order);
    if (!speed) return asInputError(speed.error());
    Json line = {{"order", order}};
    line.update(speedJson(*speed));
    orders.push_back(std::move(line));
  }
  row["orders"] = std::move(orders);
  if (!input.finalDrive) return row;
  const auto shaft = speedOf(*input.finalDrive);
  if (!shaft) return asInputError(shaft.error());
  row["prop_shaft"] = speedJson(*shaft);
  return row;
}

void noteBasis(const FrequencyInput& input, const Wheels& wheels, std::vector<Note>& notes) {
  const double relative = governing(input, wheels).relativeUncertainty;
  const double percent = kCoverage * 100 * relative;
  notes.push_back({"order_tolerance", "The circumference is known to " + fullPrecision(percent) +
                                          " % (k = 2): take no order for found that fits closer "
                                          "than that, and measure a roll-out for less."});
  using mechanics::RollingConvention;
  const auto convention = wheels.on.convention;
  if (convention == RollingConvention::Geometric) {
    notes.push_back({"geometric_too_long",
                     "pi times the diameter is about 3 % too long for a "
                     "radial tyre."});
  }
  if (convention == RollingConvention::StaticRadius) {
    notes.push_back({"static_too_short",
                     "The static radius gives about 1 % too little for a "
                     "radial tyre, since the belt keeps its length."});
  }
  if (convention == RollingConvention::RollOut && input.growth == SpeedGrowth::None) {
    notes.push_back({"rolled_by_hand",
                     "A roll-out at walking pace is about 0.6 % short of the one "
                     "at 60 km/h; speed_growth linear allows for it."});
  }
}

void noteDial(const FrequencyInput& input, std::vector<Note>& notes) {
  if (input.speedFrom == SpeedFrom::True) {
    if (!input.builtWith) return;
    notes.push_back(
        {"not_used", "The tyre it was built with counts only for speeds from the dial."});
    return;
  }
  notes.push_back({"dial_follows_its_tyre",
                   "The dial counts turns for the tyre the vehicle was built with, so its speed "
                   "gives the frequency whatever tyre is on."});
  notes.push_back({"dial_reads_high",
                   "A dial may show more than the true speed; a satellite speed is better."});
  if (input.builtWith) return;
  notes.push_back({"built_with_unknown",
                   "The tyre on was taken as the one the vehicle was built "
                   "with; give built_with_tyre if it was another."});
}

template <class Values, class Row>
Result<void> putRows(const Values& values, const char* key, Json& result, Row row) {
  if (values.empty()) return {};
  Json rows = Json::array();
  for (const auto& value : values) {
    auto json = row(value);
    if (!json) return failAs(json);
    rows.push_back(std::move(*json));
  }
  result[key] = std::move(rows);
  return {};
}

Result<void> putAll(const FrequencyInput& input, const Wheels& wheels, Json& result) {
  result["circumference"] = quantityText(wheels.on.circumference);
  result["standard_uncertainty"] = quantityText(wheels.on.standardUncertainty());
  result["dynamic_radius"] = quantityText(wheels.on.dynamicRadius());
  result["turns_per_kilometre"] = plainNumber(wheels.on.turnsPerKilometre());
  if (input.builtWith) {
    result["true_over_dial"] = plainNumber(mechanics::trueOverDial(wheels.on, wheels.dial));
  }
  auto done = putRows(input.speeds, "at_speeds", result,
                      [&](Speed speed) { return atSpeedJson(input, wheels, speed); });
  if (!done) return done;
  return putRows(input.frequencies, "at_frequencies", result,
                 [&](Frequency frequency) { return atFrequencyJson(input, wheels, frequency); });
}

FrequencyDrawing drawingOf(const FrequencyInput& input, const Wheels& wheels) {
  return {governing(input, wheels),
          input.growth,
          input.orders,
          input.finalDrive,
          input.speeds,
          input.frequencies,
          input.speedFrom == SpeedFrom::Dial ? "speed on the dial, km/h" : "speed, km/h"};
}

}  // namespace

Result<Outcome> runWheelFrequency(const Json& json) {
  Outcome outcome;
  const auto input = read(json, outcome.notes);
  if (!input) return failAs(input);
  const auto wheels = wheelsOf(*input, outcome.notes);
  if (!wheels) return failAs(wheels);
  if (auto done = putAll(*input, *wheels, outcome.result); !done) return failAs(done);
  noteBasis(*input, *wheels, outcome.notes);
  noteDial(*input, outcome.notes);
  outcome.draw = [drawing = drawingOf(*input, *wheels)](figure::Size size) {
    return wheelFrequencyPicture(drawing, size);
  };
  putRollingOptions(input->rolling, wheels->on, outcome.options);
  outcome.options["orders"] = input->orders;
  outcome.options["speed_growth"] = input->growth == SpeedGrowth::Linear ? "linear" : "none";
  return outcome;
}

}  // namespace sw::compute
