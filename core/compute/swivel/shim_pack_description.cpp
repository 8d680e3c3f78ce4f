// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/swivel/shim_fields.h"
#include "compute/swivel/swivel.h"

namespace sw::compute {

namespace {

std::vector<FieldDescription> pulledPack() {
  return {quantityField("pack", QuantityKind::Length, "total of the pack",
                        {.presence = Presence::Required, .range = "0 or more"}),
          {.name = "pulls",
           .kind = "list of force",
           .unit = "N",
           .presence = Presence::Required,
           .range = "0 or more",
           .meaning = "without the settling pull"}};
}

std::vector<FieldDescription> statedPack() {
  auto fields = pulledPack();
  fields.push_back({.name = "state",
                    .kind = "text",
                    .meaning = "state of the hub, any words; packs of other words are left out"});
  return fields;
}

std::vector<FieldDescription> band(QuantityKind kind) {
  return {quantityField("min", kind, "", {.range = "0 or more"}),
          quantityField("max", kind, "", {.range = "0 or more"})};
}

std::vector<FieldDescription> pullFields() {
  return {
      quantityField("arm", QuantityKind::Length, "from the swivel axis to the scale's hook",
                    {.range = "more than 0"}),
      quantityField("limit_arm", QuantityKind::Length,
                    "the arm the limit speaks of, where it is another", {.range = "more than 0"}),
      quantityField("off_square", QuantityKind::Angle, "measured deviation from square",
                    {.range = "-90 to 90 deg, not either", .defaultValue = R"("0 deg")"}),
      quantityField("pull_angle_within", QuantityKind::Angle,
                    "unknown deviation from square up to this, either way",
                    {.range = "0 to below 90 deg", .defaultValue = R"("0 deg")"})};
}

std::vector<FieldDescription> beliefFields() {
  return {{.name = "scatter",
           .kind = "object",
           .meaning = "of one pull, known from past series of this scale and hand",
           .fields = {quantityField("amount", QuantityKind::Force, "standard deviation",
                                    {.presence = Presence::Required, .range = "more than 0"}),
                      {.name = "readings",
                       .kind = "number",
                       .presence = Presence::Required,
                       .range = "1 to 1000000",
                       .meaning = "known as from that many"}}},
          quantityField("rebuild_scatter", QuantityKind::Force,
                        "standard deviation between set-ups of one and the same pack",
                        {.range = "0 or more", .defaultValue = R"("0 N")"}),
          {.name = "measured_float",
           .kind = "object",
           .meaning = "the pack that just takes up the float, from feeler or dial gauge",
           .fields = {quantityField("pack", QuantityKind::Length, "",
                                    {.presence = Presence::Required, .range = "0 or more"}),
                      quantityField("standard_uncertainty", QuantityKind::Length, "",
                                    {.presence = Presence::Required, .range = "more than 0"})}},
          {.name = "film",
           .kind = "object",
           .meaning = "of sealant between cap and housing when sealed; the trial packs go in dry",
           .fields = {quantityField("least", QuantityKind::Length, "",
                                    {.presence = Presence::Required, .range = "0 or more"}),
                      quantityField("most", QuantityKind::Length, "",
                                    {.presence = Presence::Required, .range = "0 or more"})}},
          {.name = "history",
           .kind = "list of object",
           .meaning = "sides of this shop's closed jobs on the same arrangement and arm",
           .fields = {{.name = "packs",
                       .kind = "list of object",
                       .presence = Presence::Required,
                       .fields = pulledPack()}}},
          quantityField("other_side", QuantityKind::Force,
                        "of the other side; of packs equally likely to do, the one nearest to it "
                        "is recommended",
                        {.range = "0 or more"})};
}

std::vector<FieldDescription> inputFields() {
  std::vector<FieldDescription> fields{layoutField()};
  for (auto& field : stockFields()) fields.push_back(std::move(field));
  fields.push_back({.name = "limit",
                    .kind = "object",
                    .meaning = "on the starting force, one or both; needed unless limit_torque is",
                    .fields = band(QuantityKind::Force)});
  fields.push_back({.name = "limit_torque",
                    .kind = "object",
                    .meaning = "the limit as a torque about the swivel axis; needs arm",
                    .fields = band(QuantityKind::Torque)});
  fields.push_back({.name = "measured",
                    .kind = "list of object",
                    .meaning = "packs pulled so far, in order; the last is the one that is in",
                    .fields = statedPack()});
  fields.push_back({.name = "state",
                    .kind = "text",
                    .meaning = "only packs in this state count; default: that of the last"});
  for (auto& field : pullFields()) fields.push_back(std::move(field));
  fields.push_back(
      {.name = "instrument",
       .kind = "object",
       .meaning = "the scale",
       .fields = {quantityField("graduation", QuantityKind::Force, "",
                                {.presence = Presence::Required, .range = "more than 0"}),
                  quantityField("permissible_error", QuantityKind::Force,
                                "either way, as on its certificate or data sheet",
                                {.range = "more than 0"})}});
  for (auto& field : beliefFields()) fields.push_back(std::move(field));
  return withEnvelope(std::move(fields), {{.name = "planned",
                                           .kind = "whole number",
                                           .defaultValue = "5",
                                           .range = "1 to 100",
                                           .meaning = "pulls that will be made on the next pack"}});
}

std::vector<FieldDescription> range(QuantityKind kind) {
  return {quantityField("middle", kind, "half lies below"), quantityField("low", kind, "2.5 %"),
          quantityField("high", kind, "97.5 %")};
}

std::vector<FieldDescription> rowFields() {
  auto fields = packFields();
  fields.push_back({.name = "reach",
                    .kind = "word",
                    .range = "measured | within_reach | beyond_reach",
                    .meaning = "how the pack lies to what was measured"});
  const auto force = [&](std::string_view name, std::string_view meaning) {
    fields.push_back(quantityField(name, QuantityKind::Force, meaning));
  };
  force("expected", "force; this and the rest where something can be predicted");
  force("true_low", "the middle 95 % of the true force");
  force("true_high", "");
  force("shown_low", "the middle 95 % of the mean the scale will probably show");
  force("shown_high", "");
  for (const auto& [name, meaning] :
       std::initializer_list<std::pair<std::string_view, std::string_view>>{
           {"within", "probability that the true force lies within the limit"},
           {"below", "that it lies below"},
           {"above", "that it lies above"},
           {"proved", "that the planned pulls will prove it within"}}) {
    fields.push_back({.name = name, .kind = "number", .range = "0 to 1", .meaning = meaning});
  }
  force("from_other_side", "expected difference");
  return fields;
}

constexpr std::string_view kFormula =
    "force = drag + slope × bite; without bite the drag alone\n"
    "bite = knee − pack for shims under the cap flange, pack − knee for shims between pin "
    "and cap; never below 0\n"
    "drag: of seal and grease; knee: the pack that just takes up the float; slope: newtons "
    "for each millimetre of pack\n"
    "many knees and slopes are tried, and each counts by what was known before and by how "
    "well it fits the pulls\n"
    "within = probability over all of them that the true force lies inside the limit; proved "
    "= that the mean of the planned pulls will prove it\n"
    "recommended: the pack with the greatest proved; of packs within 2 % of each other the "
    "one nearest to the other side, then to the middle of the limit\n"
    "reach: one step until two packs with bite were pulled, then at most twice the measured "
    "interval beyond them";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "All pulls are of one state (seal, rods, sealant, grease), square to the arm or "
    "corrected for it, and at one arm length.",
    "Above the knee the force rises in a straight line; rollers stiffen with load, which "
    "bends it up by a few per cent over the usual span.",
    "The pulls scatter alike on every pack.",
    "Shims are clean, flat and without burrs, so that their thicknesses add up.",
    "There is no default slope: without this shop's closed jobs every order of magnitude "
    "from 2 to 1100 N/mm is as likely as any other.",
    "History counts only from the same arrangement, arm and state.",
    "Not for packs far beyond those measured; a pack that probably still has float tells "
    "nothing of the slope.",
});

}  // namespace

Description describeShimPack() {
  return {
      .title = "Which shim pack next?",
      .method = "line with a knee, mixed over knees and slopes; every pack that can be made",
      .source = "own composition of the conjugate linear model; reach: common practice, no source",
      .formula = kFormula,
      .assumptions = kAssumptions,
      .inputs = inputFields(),
      .outputs = {{.name = "recommended",
                   .kind = "object",
                   .meaning = "absent where none is",
                   .fields = packFields()},
                  {.name = "reason",
                   .kind = "word",
                   .presence = Presence::Required,
                   .range = "stay | likeliest_within | as_far_as_allowed | one_step | "
                            "takes_up_the_float | measure_first | packs_end | none_likely"},
                  {.name = "basis",
                   .kind = "word",
                   .presence = Presence::Required,
                   .range = "none | from_history | own_pulls | own_pulls_and_history"},
                  {.name = "float_left_likely",
                   .kind = "boolean",
                   .presence = Presence::Required,
                   .meaning = "the last pack probably leaves float"},
                  {.name = "slope",
                   .kind = "object",
                   .meaning = "force over pack past the knee",
                   .fields = range(QuantityKind::Stiffness)},
                  {.name = "float_gone_at",
                   .kind = "object",
                   .meaning = "the pack at the knee",
                   .fields = range(QuantityKind::Length)},
                  quantityField("wanted", QuantityKind::Length,
                                "the pack, makeable or not, expected to pull in the middle of the "
                                "limit"),
                  {.name = "history",
                   .kind = "object",
                   .meaning = "what the closed jobs say of the next axle",
                   .fields = {{.name = "sides", .kind = "whole number"},
                              {.name = "slope",
                               .kind = "object",
                               .fields = range(QuantityKind::Stiffness)}}},
                  {.name = "table",
                   .kind = "list of object",
                   .presence = Presence::Required,
                   .meaning = "every pack that can be made, thinnest first",
                   .fields = rowFields()}},
      .exampleInput = R"({"layout": "cap_flange", "max_count": 3, "max_pack": "0.9 mm",
  "shims": [{"thickness": "0.15 mm", "on_hand": 2}, {"thickness": "0.35 mm", "on_hand": 2}],
  "limit": {"min": "21 N", "max": "33 N"},
  "measured": [{"pack": "0.85 mm", "pulls": ["11.5 N", "12 N", "11.5 N"]},
               {"pack": "0.7 mm", "pulls": ["18 N", "18.5 N", "18 N"]}],
  "instrument": {"graduation": "0.5 N", "permissible_error": "0.5 N"}})",
      .exampleOutput = R"({
  "result": {
    "recommended": {"pack": "0.5 mm", "shims": ["0.35 mm", "0.15 mm"], "count": 2},
    "reason": "likeliest_within",
    "basis": "own_pulls",
    "float_left_likely": false,
    "slope": {
      "middle": "43.5257072799316 N/mm",
      "low": "37.7956397045365 N/mm",
      "high": "298.519886687252 N/mm"},
    "float_gone_at": {"middle": "0.9795 mm", "low": "0.7225 mm", "high": "1.14015 mm"},
    "wanted": "0.497943115234375 mm",
    "table": [
      {
        "pack": "0.15 mm",
        "shims": ["0.15 mm"],
        "count": 1,
        "reach": "beyond_reach",
        "expected": "42.1329576779263 N",
        "true_low": "38.4392617387975 N",
        "true_high": "182.45560562064 N",
        "shown_low": "38.4752481149659 N",
        "shown_high": "182.454312294799 N",
        "within": 0.000613226062708194,
        "below": 2.20877172555704e-05,
        "above": 0.999364686220036,
        "proved": 0.000450677806414843},
      {
        "pack": "0.3 mm",
        "shims": ["0.15 mm", "0.15 mm"],
        "count": 2,
        "reach": "beyond_reach",
        "expected": "35.6082911787446 N",
        "true_low": "32.7395040595186 N",
        "true_high": "137.679144089227 N",
        "shown_low": "32.7859614898144 N",
        "shown_high": "137.677379942113 N",
        "within": 0.0338451461094982,
        "below": 3.34407257180757e-05,
        "above": 0.966121413164784,
        "proved": 0.0156438754749281},
      {
        "pack": "0.35 mm",
        "shims": ["0.35 mm"],
        "count": 1,
        "reach": "beyond_reach",
        "expected": "33.4339532344124 N",
        "true_low": "30.835201492207 N",
        "true_high": "122.753946550127 N",
        "shown_low": "30.8865394796608 N",
        "shown_high": "122.751938901639 N",
        "within": 0.362248536442518,
        "below": 4.1094951225217e-05,
        "above": 0.637710368606257,
        "proved": 0.18189244622649},
      {
        "pack": "0.5 mm",
        "shims": ["0.35 mm", "0.15 mm"],
        "count": 2,
        "reach": "within_reach",
        "expected": "26.9138072750407 N",
        "true_low": "25.0954557076396 N",
        "true_high": "77.9805461607477 N",
        "shown_low": "25.1694248756329 N",
        "shown_high": "77.9771223600872 N",
        "within": 0.885593059415671,
        "below": 0.000152750043643946,
        "above": 0.114254190540686,
        "proved": 0.880615099266486},
      {
        "pack": "0.65 mm",
        "shims": ["0.35 mm", "0.15 mm", "0.15 mm"],
        "count": 3,
        "reach": "within_reach",
        "expected": "20.3966282667245 N",
        "true_low": "19.2493192835609 N",
        "true_high": "33.2287416081695 N",
        "shown_low": "19.3686334162014 N",
        "shown_high": "33.217430939994 N",
        "within": 0.186137154420852,
        "below": 0.787566598908539,
        "above": 0.0262962466706095,
        "proved": 0.0976978263395731},
      {
        "pack": "0.7 mm",
        "shims": ["0.35 mm", "0.35 mm"],
        "count": 2,
        "reach": "measured",
        "expected": "18.1380003912356 N",
        "true_low": "17.1934453971527 N",
        "true_high": "19.0701561262951 N",
        "shown_low": "17.3343990724491 N",
        "shown_high": "18.9252215349451 N",
        "within": 5.34423644870108e-05,
        "below": 0.999946557444736,
        "above": 1.90776505704093e-10,
        "proved": 6.53288590612977e-06},
      {
        "pack": "0.85 mm",
        "shims": ["0.35 mm", "0.35 mm", "0.15 mm"],
        "count": 3,
        "reach": "measured",
        "expected": "11.6940051351516 N",
        "true_low": "10.7624019684875 N",
        "true_high": "12.6398407652717 N",
        "shown_low": "10.9077766879185 N",
        "shown_high": "12.4993918810008 N",
        "within": 1.36503160996782e-08,
        "below": 0.999999986335971,
        "above": 1.37130307109601e-11,
        "proved": 3.01814607750472e-08}]},
  "notes": [
    {
      "code": "likeliest_within",
      "text": "Fit 0.500 mm (0.350 + 0.150): of all packs the one most likely to pull within the limit. Expected 26.9 N, probably 25.1 N to 78.0 N; within the limit: 89 %."},
    {
      "code": "basis_own_pulls",
      "text": "The figures rest on this side's own pulls alone."},
    {
      "code": "pull_decides",
      "text": "A prediction chooses the pack; the pull decides."}],
  "method": {
    "name": "line with a knee, mixed over knees and slopes; every pack that can be made",
    "source": "own composition of the conjugate linear model; reach: common practice, no source",
    "options": {"planned": 5}}})"};
}

}  // namespace sw::compute
