// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>

#include "compute/bolts/bolt_fields.h"
#include "compute/bolts/bolts.h"
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
  wrench.operations = reader.wholeNumber("operations", 0, kMostOperations);
  wrench.condition = choice<WrenchCondition>(reader, "condition").value_or(WrenchCondition::Sound);
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

tl::unexpected<Error> inField(const std::string& path, Error error) {
  const std::string field = path + "/" + error.field;
  return tl::make_unexpected(error.about(field));
}

Json fitJson(const WrenchFit& fit, const Date& today, const CalibrationInterval& interval) {
  Json reasons = Json::array();
  for (const auto reason : fit.reasons) reasons.push_back(wordOf(reason));
  Json row = {
      {"name", fit.wrench.name},
      {"use", wordOf(fit.use)},
      {"reasons", std::move(reasons)},
      {"calibration", measure::word(mechanics::wrenchCalibration(fit.wrench, today, interval))},
      {"deviation", plainNumber(fit.deviation)},
      {"standard_uncertainty", quantityText(fit.standardUncertainty)},
      {"expanded_uncertainty", quantityText(2 * fit.standardUncertainty)}};
  if (fit.wrench.calibratedOn) {
    row["calibration_due"] =
        toIso(mechanics::calibrationDue(*fit.wrench.calibratedOn, interval.months));
  }
  return row;
}

Result<void> putWrenches(const SettingInput& input, Torque setting, Json& result) {
  std::vector<WrenchFit> fits;
  for (std::size_t at = 0; at < input.wrenches.size(); ++at) {
    auto fit = mechanics::wrenchFor(setting, input.wrenches[at], *input.today, input.interval);
    if (!fit) return inField("/wrenches/" + std::to_string(at), fit.error());
    fits.push_back(std::move(*fit));
  }
  fits = mechanics::bestFirst(std::move(fits));
  Json list = Json::array();
  for (const WrenchFit& fit : fits) list.push_back(fitJson(fit, *input.today, input.interval));
  result["wrenches"] = std::move(list);
  const bool usable = !fits.empty() && fits.front().use != mechanics::WrenchUse::Refuse;
  if (usable) result["best"] = fits.front().wrench.name;
  return {};
}

Result<void> putSetting(const SettingInput& input, Outcome& outcome) {
  Torque setting = *input.torque;
  if (input.adapter) {
    const auto ratio = mechanics::adapterRatio(*input.adapter);
    if (!ratio) return inField("/adapter", ratio.error());
    setting = setting / *ratio;
    outcome.result["adapter_ratio"] = plainNumber(*ratio);
    outcome.notes.push_back({"hand_in_the_middle",
                             "Holds with the hand in the middle of the grip and the adapter at "
                             "this angle: 10 degrees off square can make 4 %. Not for flexible "
                             "handles."});
  }
  outcome.result["set"] = quantityText(setting);
  if (input.wrenches.empty()) return {};
  outcome.notes.push_back({"friction_scatters_more",
                           "The wrench is the small part: friction scatters the clamp force by "
                           "about a quarter either way."});
  return putWrenches(input, setting, outcome.result);
}

Result<void> putCheck(const CheckInput& input, Outcome& outcome) {
  const double permitted =
      input.deviation ? *input.deviation : mechanics::permittedDeviation(*input.maximum);
  const auto check = mechanics::checkWrench(input.set, input.reference, permitted);
  if (!check) return inField("/check", check.error());
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

FieldDescription wrenchesIn() {
  return {.name = "wrenches",
          .kind = "list of object",
          .meaning = "torque wrenches to choose from",
          .fields = {{.name = "name", .kind = "text", .presence = Presence::Required},
                     quantityField("lowest_mark", QuantityKind::Torque,
                                   "of the scale; without it a fifth of the maximum counts",
                                   {.range = "more than 0"}),
                     quantityField("maximum", QuantityKind::Torque, "of the scale",
                                   {.presence = Presence::Required, .range = "more than 0"}),
                     {.name = "deviation",
                      .kind = "number",
                      .range = "between 0 and 1, not either",
                      .meaning = "permitted, as a share; without it 0.04, or 0.06 up to 10 N m"},
                     {.name = "calibrated_on",
                      .kind = "text",
                      .range = "a day like 2031-04-05",
                      .meaning = "absent: never"},
                     {.name = "operations",
                      .kind = "whole number",
                      .range = "0 or more",
                      .meaning = "since calibration"},
                     {.name = "condition",
                      .kind = "word",
                      .defaultValue = R"("sound")",
                      .range = "sound | dropped_or_overloaded"}}};
}

std::vector<FieldDescription> inputFields() {
  return withEnvelope(
      {quantityField("torque", QuantityKind::Torque,
                     "wanted at the fastener; needed but for a check alone",
                     {.range = "more than 0"}),
       {.name = "adapter",
        .kind = "object",
        .meaning = "crowfoot or extension across the wrench; a coaxial extension needs none",
        .fields = {quantityField("lever_length", QuantityKind::Length,
                                 "from the middle of the hand to the drive",
                                 {.presence = Presence::Required, .range = "more than 0"}),
                   quantityField("adapter_length", QuantityKind::Length,
                                 "from the drive to the middle of the fastener",
                                 {.presence = Presence::Required, .range = "0 or more"}),
                   quantityField(
                       "adapter_angle", QuantityKind::Angle,
                       "between handle and adapter: 0 straight ahead, 90 square, 180 back",
                       {.range = "-180 to 180 deg", .defaultValue = R"("0 deg")"})}},
       wrenchesIn(),
       {.name = "today",
        .kind = "text",
        .range = "a day like 2031-04-05",
        .meaning = "needed with wrenches: their calibration is held against it"},
       {.name = "interval",
        .kind = "object",
        .meaning = "own calibration interval",
        .fields =
            {{.name = "months", .kind = "whole number", .defaultValue = "12", .range = "1 to 120"},
             {.name = "operations",
              .kind = "whole number",
              .defaultValue = "5000",
              .range = "1 or more"}}},
       {.name = "check",
        .kind = "object",
        .meaning = "a reading of a wrench on a tester",
        .fields = {
            quantityField("set", QuantityKind::Torque, "on the wrench",
                          {.presence = Presence::Required, .range = "more than 0"}),
            quantityField("reference", QuantityKind::Torque, "shown by the tester",
                          {.presence = Presence::Required, .range = "more than 0"}),
            quantityField("maximum", QuantityKind::Torque,
                          "of the wrench; needed without deviation", {.range = "more than 0"}),
            {.name = "deviation",
             .kind = "number",
             .range = "between 0 and 1, not either",
             .meaning = "permitted, as a share"}}}});
}

FieldDescription wrenchesOut() {
  return {
      .name = "wrenches",
      .kind = "list of object",
      .meaning = "the best first",
      .fields = {
          {.name = "name", .kind = "text"},
          {.name = "use", .kind = "word", .range = "ok | warn | refuse"},
          {.name = "reasons",
           .kind = "list of word",
           .range = "above_maximum | below_lowest_mark | below_20_percent | "
                    "dropped_or_overloaded | never_calibrated | calibration_overdue | "
                    "below_30_percent | calibration_due"},
          {.name = "calibration", .kind = "word", .range = "never_calibrated | ok | due | overdue"},
          {.name = "calibration_due", .kind = "text", .meaning = "by months alone"},
          {.name = "deviation", .kind = "number", .meaning = "permitted, as a share"},
          quantityField("standard_uncertainty", QuantityKind::Torque,
                        "of the torque at the drive, from the deviation alone"),
          quantityField("expanded_uncertainty", QuantityKind::Torque, "twice that")}};
}

std::vector<FieldDescription> outputFields() {
  return {quantityField("set", QuantityKind::Torque, "what to set the wrench to"),
          {.name = "adapter_ratio",
           .kind = "number",
           .meaning = "torque at the fastener / torque at the drive"},
          wrenchesOut(),
          {.name = "best", .kind = "text", .meaning = "absent where none does"},
          {.name = "check",
           .kind = "object",
           .fields = {
               {.name = "deviation", .kind = "number", .meaning = "(set - reference) / reference"},
               {.name = "permitted", .kind = "number"},
               {.name = "pass_band",
                .kind = "object",
                .meaning = "readings of the tester that pass",
                .fields = {quantityField("min", QuantityKind::Torque, ""),
                           quantityField("max", QuantityKind::Torque, "")}},
               {.name = "verdict", .kind = "word", .range = "within | outside"}}}};
}

constexpr std::string_view kExampleOutput =
    R"({
  "result": {
    "adapter_ratio": 1.15277777777778,
    "set": "56.3855421686747 N m",
    "wrenches": [
      {
        "name": "middle one",
        "use": "warn",
        "reasons": ["calibration_overdue"],
        "calibration": "overdue",
        "deviation": 0.04,
        "standard_uncertainty": "1.30216831797949 N m",
        "expanded_uncertainty": "2.60433663595899 N m",
        "calibration_due": "2030-11-20"},
      {
        "name": "long one",
        "use": "refuse",
        "reasons": ["below_lowest_mark"],
        "calibration": "ok",
        "deviation": 0.04,
        "standard_uncertainty": "1.30216831797949 N m",
        "expanded_uncertainty": "2.60433663595899 N m",
        "calibration_due": "2031-09-02"}],
    "best": "middle one",
    "check": {
      "deviation": -0.024390243902439,
      "permitted": 0.04,
      "pass_band": {"min": "57.6923076923077 N m", "max": "62.5 N m"},
      "verdict": "within"}},
  "notes": [
    {
      "code": "hand_in_the_middle",
      "text": "Holds with the hand in the middle of the grip and the adapter at this )"
    R"(angle: 10 degrees off square can make 4 %. Not for flexible handles."},
    {
      "code": "friction_scatters_more",
      "text": "The wrench is the small part: friction scatters the clamp force by about a )"
    R"(quarter either way."},
    {
      "code": "one_check_is_no_calibration",
      "text": "One reading at one setting, the tester taken as exact. A calibration takes )"
    R"(several readings each at 20, 60 and 100 % of the maximum."},
    {"code": "documentation", "text": "The vehicle's own documentation comes first."}],
  "method": {
    "name": "moment of the hand about the fastener; range and calibration of the wrench",
    "source": "plane statics; ISO 6789 (from memory); JCGM 100:2008 4.3",
    "options": {}}})";

}  // namespace

Description describeWrenchSetting() {
  return {.title = "What to set a torque wrench to, which one, and is it right?",
          .method = "moment of the hand about the fastener; range and calibration of the wrench",
          .source = "plane statics; ISO 6789 (from memory); JCGM 100:2008 4.3",
          .inputs = inputFields(),
          .outputs = outputFields(),
          .exampleInput = R"({
  "torque": "65 N m",
  "adapter": {"lever_length": "360 mm", "adapter_length": "55 mm"},
  "wrenches": [
    {"name": "long one", "lowest_mark": "60 N m", "maximum": "320 N m",
     "calibrated_on": "2030-09-02"},
    {"name": "middle one", "lowest_mark": "20 N m", "maximum": "100 N m",
     "calibrated_on": "2029-11-20", "operations": 900}],
  "today": "2031-04-05",
  "check": {"set": "60 N m", "reference": "61.5 N m", "maximum": "100 N m"}
})",
          .exampleOutput = kExampleOutput};
}

Result<Outcome> runWrenchSetting(const Json& json) {
  Outcome outcome;
  const auto input = read(json, outcome.notes);
  if (!input) return failAs(input);
  if (input->torque) {
    if (const auto put = putSetting(*input, outcome); !put) return failAs(put);
  }
  if (input->check) {
    if (const auto put = putCheck(*input->check, outcome); !put) return failAs(put);
  }
  outcome.notes.push_back(documentationNote());
  return outcome;
}

}  // namespace sw::compute
