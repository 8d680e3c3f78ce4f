// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/swivel/first_pack.h"

#include <nlohmann/json.hpp>

#include "compute/output.h"
#include "compute/swivel/first_pack_picture.h"
#include "compute/swivel/shim_fields.h"
#include "compute/swivel/swivel.h"

namespace sw::compute {

namespace {

using mechanics::FirstPack;
using mechanics::FirstPackInput;
using mechanics::FirstPackMethod;
using mechanics::GapPattern;

constexpr Length kFeelerUncertainty = millimetres(0.01);

Result<FirstPackInput> read(const Json& json, std::vector<Note>& notes) {
  InputReader reader(json, "", notes);
  FirstPackInput input;
  input.effect = readLayout(reader);
  input.method = reader.requiredChoice<FirstPackMethod>("method").value_or(input.method);
  const bool nip = input.method == FirstPackMethod::Nip;
  const auto gaps = reader.list<Length>("gaps", Sign::NotNegative);
  const auto floats = reader.list<Length>("end_float", Sign::NotNegative);
  input.readings = nip ? gaps : floats;
  input.oneReading = reader.optional<Length>("reading_uncertainty", Sign::NotNegative)
                         .value_or(kFeelerUncertainty);
  input.found = reader.optional<Length>("pack_found", Sign::NotNegative);
  input.foundUncertainty =
      reader.optional<Length>("pack_found_uncertainty", Sign::NotNegative).value_or(Length{});
  input.allowance = reader.optional<Length>("allowance").value_or(Length{});
  input.unevenFrom =
      reader.optional<Length>("uneven_from", Sign::NotNegative).value_or(input.unevenFrom);
  reader.inObject("split", [&](InputReader& split) {
    input.split = mechanics::PackSplit{split.required<Length>("top", Sign::NotNegative),
                                       split.required<Length>("bottom", Sign::NotNegative)};
  });
  input.stock = readStock(reader);
  reader.takeSeed();
  if (auto done = reader.finish(); !done) return failAs(done);
  return input;
}

Json packsJson(const FirstPack& first) {
  Json list = Json::array();
  for (const auto& offered : first.packs) {
    Json row = packJson(offered.pack);
    row["from_wanted"] = quantityText(offered.pack.total - first.wanted);
    if (offered.split) {
      row["top"] = quantityText(offered.split->top);
      row["bottom"] = quantityText(offered.split->bottom);
    }
    list.push_back(std::move(row));
  }
  return list;
}

void noteGaps(const FirstPack& first, std::vector<Note>& notes) {
  if (!first.gaps || first.gaps->pattern == GapPattern::Even) return;
  const std::string at = first.gaps->atBolt ? std::to_string(*first.gaps->atBolt) : "?";
  if (first.gaps->pattern == GapPattern::Tilted) {
    notes.push_back({"tilted", "The cap sits tilted, widest at bolt " + at +
                                   ": clean both faces, look for a burr or a tilted shim, nip "
                                   "evenly and measure again before you choose a pack."});
  } else {
    notes.push_back({"one_bolt_off", "The gap at bolt " + at +
                                         " does not fit the others: dirt or a burr there, or a "
                                         "slip of the feeler; measure it again."});
  }
}

std::vector<FieldDescription> inputFields() {
  std::vector<FieldDescription> fields{
      layoutField(),
      {.name = "method",
       .kind = "word",
       .presence = Presence::Required,
       .range = "nip | end_float",
       .meaning = "nip: cap nipped evenly without shims to the drag wanted, feeler at every bolt "
                  "(flange shims only); end_float: dial gauge with the pack found in place"},
      {.name = "gaps",
       .kind = "list of length",
       .unit = "mm",
       .range = "2 to 12",
       .meaning = "at the bolts in their order; needed for nip"},
      {.name = "end_float",
       .kind = "list of length",
       .unit = "mm",
       .meaning = "readings of the dial gauge; needed for end_float"},
      quantityField("reading_uncertainty", QuantityKind::Length,
                    "standard uncertainty of one reading, feeler or gauge",
                    {.range = "0 or more", .defaultValue = R"("0.01 mm")"}),
      quantityField("pack_found", QuantityKind::Length,
                    "by micrometer; needed for end_float, and to name the shims it is made of"),
      quantityField("pack_found_uncertainty", QuantityKind::Length, "standard uncertainty",
                    {.range = "0 or more", .defaultValue = R"("0 mm")"}),
      quantityField("allowance", QuantityKind::Length,
                    "interference wanted beyond what was measured; 0 where the nip gave the drag",
                    {.defaultValue = R"("0 mm")"}),
      quantityField("uneven_from", QuantityKind::Length, "gaps that differ by more are named",
                    {.range = "0 or more", .defaultValue = R"("0.05 mm")"}),
      {.name = "split",
       .kind = "object",
       .meaning = "packs found at top and bottom, where both ends have shims",
       .fields = {
           quantityField("top", QuantityKind::Length, "", {.presence = Presence::Required}),
           quantityField("bottom", QuantityKind::Length, "", {.presence = Presence::Required})}}};
  for (auto& field : stockFields()) fields.push_back(std::move(field));
  return withEnvelope(std::move(fields));
}

std::vector<FieldDescription> outputFields() {
  auto rows = packFields();
  rows.push_back(quantityField("from_wanted", QuantityKind::Length, "thicker than wanted by"));
  rows.push_back(quantityField("top", QuantityKind::Length,
                               "share of these shims at the top, the split kept as found"));
  rows.push_back(quantityField("bottom", QuantityKind::Length, "share at the bottom"));
  return {quantityField("wanted", QuantityKind::Length, "the pack the measurement asks for",
                        {.presence = Presence::Required}),
          quantityField("standard_uncertainty", QuantityKind::Length, "of the wanted pack",
                        {.presence = Presence::Required}),
          {.name = "gap_pattern",
           .kind = "word",
           .range = "even | tilted | one_bolt_off",
           .meaning = "what the gaps at the bolts say"},
          quantityField("gap_range", QuantityKind::Length, "widest less narrowest gap"),
          quantityField("tilt", QuantityKind::Length, "of the cap, peak to peak"),
          {.name = "at_bolt",
           .kind = "whole number",
           .meaning = "the widest side of a tilt, or the bolt that does not fit"},
          {.name = "packs",
           .kind = "list of object",
           .presence = Presence::Required,
           .meaning = "packs that can be made: the nearest, then its neighbours",
           .fields = std::move(rows)},
          {.name = "found_stack",
           .kind = "object",
           .meaning = "shims that make the pack found, within 0.02 mm",
           .fields = packFields()}};
}

constexpr std::string_view kFormula =
    "nip: pack = mean gap at the bolts − allowance\n"
    "end float, shims under the cap flange: pack = pack found − mean float − allowance\n"
    "end float, shims between pin and cap: pack = pack found + mean float + allowance\n"
    "uncertainty = √(S² + R² + P²): S = spread of the readings ÷ √(number of readings), R = "
    "uncertainty of one reading, P = uncertainty of the pack found\n"
    "tilt of the cap = highest − lowest of the one wave round the bolts that fits the gaps "
    "best; it is taken out of the spread";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "The housing does not give under the nip, and the shims lie flat.",
    "The cap has 2 to 12 bolts, evenly spaced; a tilt can be told from 4 bolts on.",
    "A feeler or gauge repeats its own error, so more readings do not make it smaller.",
    "Gaps that differ by more than 0.05 mm, unless told otherwise, are uneven and mean dirt, "
    "a burr or a tilted shim (common practice, no source).",
    "The allowance is the interference wanted beyond no float; it is 0 where the nip already "
    "gave the drag.",
    "A pack of nothing or less is refused: the parts are worn or the layout is wrong.",
    "Not in place of a pull: the pack found here is a start, the pull decides.",
});

}  // namespace

Description describeFirstPack() {
  return {.title = "The first shim pack, from a measurement",
          .method = "gap at every bolt, or end float and allowance",
          .source = "dimension chain; common practice, no source",
          .formula = kFormula,
          .assumptions = kAssumptions,
          .inputs = inputFields(),
          .outputs = outputFields(),
          .exampleInput = R"({"layout": "cap_flange", "method": "nip",
  "gaps": ["0.45 mm", "0.46 mm", "0.44 mm", "0.45 mm", "0.46 mm", "0.45 mm"],
  "shims": [{"thickness": "0.15 mm", "on_hand": 4}, {"thickness": "0.35 mm", "on_hand": 2}],
  "max_count": 4})",
          .exampleOutput = R"({
  "result": {
    "wanted": "0.451666666666667 mm",
    "standard_uncertainty": "0.0106718737290547 mm",
    "gap_pattern": "even",
    "gap_range": "0.02 mm",
    "tilt": "0.00666666666666669 mm",
    "packs": [
      {
        "pack": "0.45 mm",
        "shims": ["0.15 mm", "0.15 mm", "0.15 mm"],
        "count": 3,
        "from_wanted": "-0.00166666666666663 mm"},
      {
        "pack": "0.5 mm",
        "shims": ["0.35 mm", "0.15 mm"],
        "count": 2,
        "from_wanted": "0.0483333333333333 mm"},
      {
        "pack": "0.35 mm",
        "shims": ["0.35 mm"],
        "count": 1,
        "from_wanted": "-0.101666666666667 mm"}]},
  "notes": [
    {
      "code": "pull_decides",
      "text": "A measured pack is a start: fit it dry, seat the bearings and let the pull decide."}],
  "method": {
    "name": "gap at every bolt, or end float and allowance",
    "source": "dimension chain; common practice, no source",
    "options": {}}})"};
}

Result<Outcome> runFirstPack(const Json& json) {
  Outcome outcome;
  const auto input = read(json, outcome.notes);
  if (!input) return failAs(input);
  const auto first = mechanics::firstPack(*input);
  if (!first) return asInputError(first.error());
  Json& result = outcome.result;
  result["wanted"] = quantityText(first->wanted);
  result["standard_uncertainty"] = quantityText(first->standardUncertainty);
  if (first->gaps) {
    result["gap_pattern"] = mechanics::word(first->gaps->pattern);
    result["gap_range"] = quantityText(first->gaps->range);
    result["tilt"] = quantityText(first->gaps->tilt);
    if (first->gaps->atBolt) result["at_bolt"] = *first->gaps->atBolt;
  }
  result["packs"] = packsJson(*first);
  if (first->foundStack) result["found_stack"] = packJson(*first->foundStack);
  noteGaps(*first, outcome.notes);
  outcome.notes.push_back(
      {"pull_decides",
       "A measured pack is a start: fit it dry, seat the bearings and let the pull decide."});
  outcome.draw = [input = *input, first = *first](figure::Size size) {
    return firstPackPicture(input, first, size);
  };
  return outcome;
}

}  // namespace sw::compute
