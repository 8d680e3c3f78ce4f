// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>

#include "compute/bolts/bolt_fields.h"
#include "compute/bolts/bolts.h"
#include "compute/bolts/wrench_setting_picture.h"
#include "compute/output.h"
#include "mechanics/bolts/torque_wrench.h"
#include "mechanics/bolts/wrench_adapter.h"

namespace sw::compute {

namespace {

using mechanics::CalibrationInterval;
using mechanics::TorqueWrench;
using mechanics::WrenchAdapter;
using mechanics::WrenchCondition;
using mechanics::WrenchFit;

constexpr int kMostOperations = 1000000000;
constexpr NumberRange kDeviation{
    .least = 0, .most = 1, .ends = Ends::Excluded, .text = "between 0 and 1, not either"};

struct CheckInput {
  Torque set;
  Torque reference;
  std::optional<Torque> maximum;
  std::optional<double> deviation;
};

struct SettingInput {
  std::optional<Torque> torque;
  std::optional<WrenchAdapter> adapter;
  std::vector<TorqueWrench> wrenches;
  std::optional<Date> today;
  CalibrationInterval interval;
  std::optional<CheckInput> check;
};

std::optional<Date> dateField(InputReader& reader, std::string_view key) {
  const auto text = reader.fields().text(key);
  if (!text) return std::nullopt;
  const auto date = parseDate(*text);
  if (date) return *date;
  reader.fail(date.error().about(reader.fields().pathOf(key)));
  return std::nullopt;
}

TorqueWrench wrenchField(InputReader& reader) {
  TorqueWrench wrench;
  wrench.name = reader.fields().requiredText("name");
  wrench.lowestMark = reader.optional<Torque>("lowest_mark", Sign::Positive);
  wrench.maximum = reader.required<Torque>("maximum", Sign::Positive);
  wrench.deviation = reader.number("deviation", kDeviation);
  wrench.calibratedOn = dateField(reader, "calibrated_on");
  wrench.graduation = reader.optional<Torque>("graduation", Sign::Positive);
  wrench.handling = reader.number("handling", kDeviation).value_or(wrench.handling);
  wrench.operations = reader.wholeNumber("operations", 0, kMostOperations);
  wrench.condition = reader.choice<WrenchCondition>("condition").value_or(WrenchCondition::Sound);
  return wrench;
}

void readCheck(InputReader& reader, SettingInput& input) {
  reader.inObject("check", [&](InputReader& inner) {
    CheckInput check;
    check.set = inner.required<Torque>("set", Sign::Positive);
    check.reference = inner.required<Torque>("reference", Sign::Positive);
    check.maximum = inner.optional<Torque>("maximum", Sign::Positive);
    check.deviation = inner.number("deviation", kDeviation);
    if (!check.deviation) inner.requireKey("maximum");
    input.check = check;
  });
}

Result<SettingInput> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  SettingInput input;
  input.torque = reader.optional<Torque>("torque", Sign::Positive);
  reader.inObject("adapter", [&](InputReader& inner) {
    WrenchAdapter adapter;
    adapter.lever = inner.required<Length>("lever_length", Sign::Positive);
    adapter.adapter = inner.required<Length>("adapter_length", Sign::NotNegative);
    adapter.angle = inner.optional<Angle>("adapter_angle").value_or(Angle{});
    input.adapter = adapter;
  });
  reader.eachObject("wrenches",
                    [&](InputReader& inner) { input.wrenches.push_back(wrenchField(inner)); });
  input.today = dateField(reader, "today");
  reader.inObject("interval", [&](InputReader& inner) {
    input.interval.months = inner.wholeNumber("months", 1, 120).value_or(input.interval.months);
    input.interval.operations =
        inner.wholeNumber("operations", 1, kMostOperations).value_or(input.interval.operations);
  });
  readCheck(reader, input);
  reader.takeSeed();
  if (!input.check || input.adapter || !input.wrenches.empty()) reader.requireKey("torque");
  if (!input.wrenches.empty()) reader.requireKey("today");
  if (auto done = reader.finish(); !done) return failAs(done);
  return input;
}

tl::unexpected<Error> inField(const std::string& path, const Error& error) {
  const std::string field = path + "/" + error.field;
  return tl::make_unexpected(error.about(field));
}

Json fitJson(const WrenchFit& fit, const SettingInput& input, double ratio) {
  Json reasons = Json::array();
  for (const auto reason : fit.reasons) reasons.push_back(wordOf(reason));
  Json row = {{"name", fit.wrench.name},
              {"use", wordOf(fit.use)},
              {"reasons", std::move(reasons)},
              {"calibration", measure::word(mechanics::wrenchCalibration(fit.wrench, *input.today,
                                                                         input.interval))},
              {"deviation", plainNumber(fit.deviation)},
              {"standard_uncertainty", quantityText(fit.standardUncertainty)},
              {"expanded_uncertainty", quantityText(2 * fit.standardUncertainty)}};
  if (fit.mark) {
    row["mark"] = quantityText(*fit.mark);
    row["at_fastener"] = quantityText(*fit.mark * ratio);
  }
  if (fit.wrench.calibratedOn) {
    row["calibration_due"] =
        toIso(mechanics::calibrationDue(*fit.wrench.calibratedOn, input.interval.months));
  }
  return row;
}

Result<void> putWrenches(const SettingInput& input, double ratio, Json& result,
                         WrenchDrawing& drawing) {
  std::vector<WrenchFit> fits;
  for (std::size_t at = 0; at < input.wrenches.size(); ++at) {
    auto fit = mechanics::wrenchFor(*input.torque / ratio, input.wrenches[at], *input.today,
                                    input.interval);
    if (!fit) return inField("/wrenches/" + std::to_string(at), fit.error());
    fits.push_back(std::move(*fit));
  }
  fits = mechanics::bestFirst(std::move(fits));
  Json list = Json::array();
  for (const WrenchFit& fit : fits) list.push_back(fitJson(fit, input, ratio));
  result["wrenches"] = std::move(list);
  const bool usable = !fits.empty() && fits.front().use != mechanics::WrenchUse::Refuse;
  if (usable) result["best"] = fits.front().wrench.name;
  drawing.fits = std::move(fits);
  return {};
}

Result<void> putSetting(const SettingInput& input, Outcome& outcome, WrenchDrawing& drawing) {
  double ratio = 1;
  if (input.adapter) {
    const auto found = mechanics::adapterRatio(*input.adapter);
    if (!found) return inField("/adapter", found.error());
    ratio = *found;
    outcome.result["adapter_ratio"] = plainNumber(ratio);
    outcome.notes.push_back({"hand_in_the_middle",
                             "Holds with the hand in the middle of the grip and the adapter at "
                             "this angle: 10 degrees off square can make 4 %. Not for flexible "
                             "handles."});
  }
  outcome.result["set"] = quantityText(*input.torque / ratio);
  drawing.wanted = input.torque;
  drawing.setting = *input.torque / ratio;
  drawing.adapter = input.adapter;
  if (input.wrenches.empty()) return {};
  outcome.notes.push_back({"friction_scatters_more",
                           "The wrench is the small part: friction scatters the clamp force by "
                           "about a quarter either way."});
  return putWrenches(input, ratio, outcome.result, drawing);
}

Result<void> putCheck(const CheckInput& input, Outcome& outcome, WrenchDrawing& drawing) {
  const double permitted =
      input.deviation ? *input.deviation : mechanics::permittedDeviation(*input.maximum);
  const auto check = mechanics::checkWrench(input.set, input.reference, permitted);
  if (!check) return inField("/check", check.error());
  drawing.check = {input.reference, *check};
  outcome.result["check"] = {
      {"deviation", plainNumber(check->deviation)},
      {"permitted", plainNumber(permitted)},
      {"pass_band",
       {{"min", quantityText(check->band.least)}, {"max", quantityText(check->band.most)}}},
      {"verdict", wordOf(check->verdict)}};
  outcome.notes.push_back({"one_check_is_no_calibration",
                           "One reading at one setting, the tester taken as exact. A calibration "
                           "takes several readings each at 20, 60 and 100 % of the maximum."});
  return {};
}

}  // namespace

Result<Outcome> runWrenchSetting(const Json& json) {
  Outcome outcome;
  const auto input = read(json, outcome.notes);
  if (!input) return failAs(input);
  WrenchDrawing drawing;
  if (input->torque) {
    if (const auto put = putSetting(*input, outcome, drawing); !put) return failAs(put);
  }
  if (input->check) {
    if (const auto put = putCheck(*input->check, outcome, drawing); !put) return failAs(put);
  }
  outcome.notes.push_back(documentationNote());
  if (drawing.adapter || drawing.check || !drawing.fits.empty()) {
    outcome.draw = [drawing](figure::Size size) { return wrenchSettingPicture(drawing, size); };
  }
  return outcome;
}

}  // namespace sw::compute
