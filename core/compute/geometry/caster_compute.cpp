// SPDX-License-Identifier: GPL-3.0-or-later
#include <cmath>
#include <nlohmann/json.hpp>

#include "compute/geometry/caster_fields.h"
#include "compute/geometry/caster_picture.h"
#include "compute/geometry/geometry.h"
#include "compute/geometry/limit_reading.h"
#include "compute/output.h"
#include "mechanics/geometry/caster_swing.h"

namespace sw::compute {

namespace {

using mechanics::Swing;

enum class Method { SmallAngle, Exact };

struct CasterInput {
  Swing cambers;
  std::optional<Swing> tilts;
  std::optional<Angle> inclination, frameAngle;
  mechanics::SwingSetting setting;
  mechanics::SwingUncertainty uncertainty;
  std::optional<LimitBand> limit;
  Method method = Method::SmallAngle;
  double confidence = 0.95;
};

void readTilts(InputReader& reader, CasterInput& input) {
  const auto outward = reader.optional<Angle>("tilt_outward");
  const auto inward = reader.optional<Angle>("tilt_inward");
  if (outward) reader.requireKey("tilt_inward");
  if (inward) reader.requireKey("tilt_outward");
  if (outward && inward) input.tilts = Swing{input.cambers.turn, *outward, *inward};
}

void readOptions(InputReader& reader, CasterInput& input) {
  reader.inObject("options", [&](InputReader& inner) {
    if (inner.fields().oneOf("method", {"small_angle", "exact"}) == "exact") {
      input.method = Method::Exact;
    }
    input.setting.shown =
        inner.choice<mechanics::TurnShown>("turn_shown").value_or(input.setting.shown);
    input.confidence = readConfidence(inner);
  });
}

Result<CasterInput> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  CasterInput input;
  input.cambers.turn = reader.required<Angle>("turn", Sign::Positive);
  input.cambers.outward = reader.required<Angle>("camber_outward");
  input.cambers.inward = reader.required<Angle>("camber_inward");
  readTilts(reader, input);
  input.inclination = reader.optional<Angle>("kingpin_inclination");
  if (input.tilts && input.inclination)
    requireOneOf(reader, {"kingpin_inclination", "tilt_outward"});
  input.setting.camberAhead = reader.optional<Angle>("camber_ahead").value_or(Angle{});
  input.uncertainty.reading =
      reader.optional<Angle>("reading_uncertainty", Sign::NotNegative).value_or(Angle{});
  input.uncertainty.turn =
      reader.optional<Angle>("turn_uncertainty", Sign::NotNegative).value_or(Angle{});
  input.frameAngle = reader.optional<Angle>("frame_angle");
  input.limit = readLimit(reader, "limit", QuantityKind::Angle);
  readOptions(reader, input);
  if (input.method == Method::Exact && !input.tilts) reader.requireKey("kingpin_inclination");
  reader.takeSeed();
  if (auto done = reader.finish(); !done) return failAs(done);
  return input;
}

struct Axis {
  Angle caster;
  std::optional<Angle> inclination;
};

enum class Gauge { Camber, Tilt };

/// The fields of a swing are named after what was read.
tl::unexpected<Error> atItsPlace(const Error& error, Gauge gauge) {
  if (error.field != "outward" && error.field != "inward") return asInputError(error);
  return asInputError(error.about((gauge == Gauge::Camber ? "camber_" : "tilt_") + error.field));
}

Result<Axis> smallAngles(const CasterInput& input) {
  const auto caster = mechanics::smallAngleSwing(input.cambers);
  if (!caster) return atItsPlace(caster.error(), Gauge::Camber);
  if (!input.tilts) return Axis{*caster, {}};
  const auto inclination = mechanics::smallAngleSwing(*input.tilts);
  if (!inclination) return atItsPlace(inclination.error(), Gauge::Tilt);
  return Axis{*caster, *inclination};
}

Result<Axis> axisOf(const CasterInput& input) {
  // Checks each swing by itself, so that an error names its readings.
  const auto small = smallAngles(input);
  if (!small || input.method == Method::SmallAngle) return small;
  if (input.tilts) {
    const auto axis = mechanics::exactAxis(input.cambers, *input.tilts, input.setting);
    if (!axis) return atItsPlace(axis.error(), Gauge::Camber);
    return Axis{axis->caster, axis->inclination};
  }
  const auto caster =
      mechanics::exactCaster(input.cambers, input.inclination.value_or(Angle{}), input.setting);
  if (!caster) return atItsPlace(caster.error(), Gauge::Camber);
  return Axis{*caster, {}};
}

void noteSwing(const CasterInput& input, std::vector<Note>& notes) {
  if (input.method == Method::SmallAngle) {
    notes.push_back({"small_angles",
                     "Small angles: within about 1 % of exact. The factor is "
                     "1 / (2 sin turn); 1.5, 1.432 and 1.556 for 20 degrees, met in "
                     "public, are not."});
    if (input.inclination) {
      notes.push_back({"not_used", "The kingpin inclination counts only for the exact method."});
    }
  }
  notes.push_back({"level_turntables",
                   "A floor that slopes evenly cancels, turntables that stand "
                   "unlevel to each other do not. Swing from straight ahead."});
  if (!input.frameAngle) {
    notes.push_back({"frame_level",
                     "Caster is specified with the frame level: give frame_angle if "
                     "it is not."});
  }
  notes.push_back({"live_axle",
                   "On a live axle camber and inclination are in the forging: wrong "
                   "ones mean bent or worn parts. Caster changes by turning the "
                   "axle."});
  notes.push_back(documentationNote());
}

constexpr std::string_view kFormula =
    "caster = (camber steered outward − camber steered inward) ÷ (2 × sin(turn)); for a turn "
    "of 20° that is difference × 1.4619\n"
    "kingpin inclination = the same with the tilt of the wheel's fore-and-aft line, front "
    "end up positive, brake locked\n"
    "exact method: the axis in space is sought about which such a swing gives just these "
    "readings\n"
    "uncertainty = √(R² + T²): R = √2 × uncertainty of a reading ÷ (2 × sin(turn)), T = "
    "caster × uncertainty of the turn in radians ÷ tan(turn)\n"
    "at level frame: caster + frame angle, front of the frame down positive";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "The turntables are level side to side; a slope they share cancels out.",
    "The wheel does not roll while it is swung, and is swung as far to either side, 5 to 45 "
    "degrees.",
    "Caster is positive with the axis leaning back at the top, inclination with the top "
    "leaning inboard, camber with the wheel leaning out at the top.",
    "The small-angle formula lies within about 1 % of the exact one at usual axes.",
    "Readings that no axis within 30 degrees gives are refused.",
    "Not with factors that are not 1 ÷ (2 × sin(turn)): of those met in public for 20 "
    "degrees 1.5 is 2.6 % too much, 1.432 is 2 % too little and 1.556 wrong by 6.4 %.",
});

}  // namespace

Result<Outcome> runCaster(const Json& json) {
  Outcome outcome;
  const auto input = read(json, outcome.notes);
  if (!input) return failAs(input);
  const auto axis = axisOf(*input);
  if (!axis) return failAs(axis);
  const auto uncertainty =
      mechanics::uncertaintyOfSwing(axis->caster, input->cambers.turn, input->uncertainty);
  if (!uncertainty) return asInputError(uncertainty.error());
  Json& result = outcome.result;
  result["caster"] = quantityText(axis->caster);
  result["standard_uncertainty"] = quantityText(*uncertainty);
  result["factor"] = plainNumber(1 / (2 * std::sin(input->cambers.turn.si())));
  if (axis->inclination) result["kingpin_inclination"] = quantityText(*axis->inclination);
  const auto level =
      mechanics::casterAtLevelFrame(axis->caster, input->frameAngle.value_or(Angle{}));
  if (!level) return asInputError(level.error());
  if (input->frameAngle) result["caster_at_level_frame"] = quantityText(*level);
  const Verdict verdict =
      verdictOf({level->si(), uncertainty->si(), {}}, input->limit, input->confidence);
  result["verdict"] = word(verdict);
  noteSwing(*input, outcome.notes);
  outcome.draw = [drawing = CasterDrawing{*level, axis->inclination, *uncertainty, input->limit,
                                          verdict}](figure::Size size) {
    return casterPicture(drawing, size);
  };
  outcome.options = {{"method", input->method == Method::Exact ? "exact" : "small_angle"},
                     {"turn_shown", word(input->setting.shown)},
                     {"confidence", plainNumber(input->confidence)}};
  return outcome;
}

Description describeCaster() {
  return {.title = "Caster and kingpin inclination from a swing of the wheel",
          .method =
              "difference of the readings to either side over 2 sin of the turn; or the axis "
              "in space that gives them",
          .source = "geometry of a rotation in space; JCGM 100:2008; JCGM 106:2012",
          .formula = kFormula,
          .assumptions = kAssumptions,
          .inputs = withEnvelope(casterInputFields(), casterOptionFields()),
          .outputs = casterOutputFields(),
          .exampleInput = R"({"turn": "20 deg", "camber_outward": "2.1 deg",
                              "camber_inward": "0.35 deg", "tilt_outward": "2.6 deg",
                              "tilt_inward": "-2.9 deg", "camber_ahead": "0.9 deg",
                              "reading_uncertainty": "0.05 deg", "turn_uncertainty": "0.3 deg",
                              "frame_angle": "-0.4 deg", "limit": {"min": "1.5 deg"},
                              "options": {"method": "exact"}})",
          .exampleOutput = R"({
  "result": {
    "caster": "2.54886384089855 deg",
    "standard_uncertainty": "0.109682651051007 deg",
    "factor": 1.46190220008154,
    "kingpin_inclination": "7.9709191753704 deg",
    "caster_at_level_frame": "2.14886384089855 deg",
    "verdict": "within"},
  "notes": [
    {
      "code": "level_turntables",
      "text": "A floor that slopes evenly cancels, turntables that stand unlevel to each)"
                           R"( other do not. Swing from straight ahead."},
    {
      "code": "live_axle",
      "text": "On a live axle camber and inclination are in the forging: wrong ones mean bent)"
                           R"( or worn parts. Caster changes by turning the axle."},
    {
      "code": "documentation",
      "text": "The vehicle's own documentation comes first: where it differs, it holds."}],
  "method": {
    "name": "difference of the readings to either side over 2 sin of the turn; or the axis in)"
                           R"( space that gives them",
    "source": "geometry of a rotation in space; JCGM 100:2008; JCGM 106:2012",
    "options": {"method": "exact", "turn_shown": "turntable", "confidence": 0.95}}})"};
}

}  // namespace sw::compute
