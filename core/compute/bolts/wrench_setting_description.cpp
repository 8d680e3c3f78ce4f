// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/bolts/bolts.h"

namespace sw::compute {

namespace {

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
                     quantityField("graduation", QuantityKind::Torque,
                                   "from mark to mark; the nearest mark is told",
                                   {.range = "more than 0"}),
                     {.name = "handling",
                      .kind = "number",
                      .range = "between 0 and 1, not either",
                      .meaning = "share by which the way it is held may be off, half-width"},
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

FieldDescription checkIn() {
  return {
      .name = "check",
      .kind = "object",
      .meaning = "a reading of a wrench on a tester",
      .fields = {quantityField("set", QuantityKind::Torque, "on the wrench",
                               {.presence = Presence::Required, .range = "more than 0"}),
                 quantityField("reference", QuantityKind::Torque, "shown by the tester",
                               {.presence = Presence::Required, .range = "more than 0"}),
                 quantityField("maximum", QuantityKind::Torque,
                               "of the wrench; needed without deviation", {.range = "more than 0"}),
                 {.name = "deviation",
                  .kind = "number",
                  .range = "between 0 and 1, not either",
                  .meaning = "permitted, as a share"}}};
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
       checkIn()});
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
          quantityField("standard_uncertainty", QuantityKind::Torque, "of the torque at the drive"),
          quantityField("expanded_uncertainty", QuantityKind::Torque, "twice that"),
          quantityField("mark", QuantityKind::Torque,
                        "nearest to the setting, where the graduation is given"),
          quantityField("at_fastener", QuantityKind::Torque, "with the wrench set to it")}};
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
        "standard_uncertainty": "1.31014337447582 N m",
        "expanded_uncertainty": "2.62028674895163 N m",
        "mark": "56.5 N m",
        "at_fastener": "65.1319444444444 N m",
        "calibration_due": "2030-11-20"},
      {
        "name": "long one",
        "use": "refuse",
        "reasons": ["below_lowest_mark"],
        "calibration": "ok",
        "deviation": 0.04,
        "standard_uncertainty": "1.94395876028348 N m",
        "expanded_uncertainty": "3.88791752056696 N m",
        "mark": "55 N m",
        "at_fastener": "63.4027777777778 N m",
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
    {"code": "documentation", "text": "The vehicle's own documentation comes first: where it differs, it holds."}],
  "method": {
    "name": "moment of the hand about the fastener; range and calibration of the wrench",
    "source": "plane statics; ISO 6789 (from memory); JCGM 100:2008 4.3",
    "options": {}}})";

constexpr std::string_view kFormula =
    "setting = torque × lever ÷ (lever + adapter × cos(angle))\n"
    "torque at the fastener = setting × (lever + adapter × cos(angle)) ÷ lever\n"
    "lever: middle of the hand to the drive; adapter: drive to the middle of the fastener; "
    "angle 0 straight ahead, 90° across, 180° back over the handle\n"
    "deviation on a tester = (set − reference) ÷ reference; a wrench passes for references "
    "from set ÷ (1 + permitted) to set ÷ (1 − permitted)\n"
    "permitted: 4 % where the wrench goes above 10 N m, 6 % up to 10 N m\n"
    "uncertainty at the drive = √(P² + G² + H²): P = permitted × setting ÷ √3, G = "
    "graduation ÷ √12, H = handling × setting ÷ √3";

constexpr auto kAssumptions = std::to_array<std::string_view>({
    "One pull, square to the handle, in the middle of the grip; the wrench clicks at the "
    "torque at its drive and is used in its direction.",
    "A wrench works from its lowest mark to its maximum; without a lowest mark below 20 % of "
    "the maximum is refused and below 30 % warned of.",
    "Calibration is due after 12 months or 5000 operations, whichever comes first; after a "
    "drop or an overload the wrench is refused until checked.",
    "Friction scatters the clamp force by far more than the wrench does.",
    "An extension along the axis of the socket needs no correction.",
    "Not with a flexible or longer handle than was measured, a hand off the middle of the "
    "grip, or a wrench that reads the force of the hand.",
    "Not as a calibration, and not for electronic wrenches with angle.",
});

}  // namespace

Description describeWrenchSetting() {
  return {.title = "What to set a torque wrench to, which one, and is it right?",
          .method = "moment of the hand about the fastener; range and calibration of the wrench",
          .source = "plane statics; ISO 6789 (from memory); JCGM 100:2008 4.3",
          .formula = kFormula,
          .assumptions = kAssumptions,
          .inputs = inputFields(),
          .outputs = outputFields(),
          .exampleInput = R"({
  "torque": "65 N m",
  "adapter": {"lever_length": "360 mm", "adapter_length": "55 mm"},
  "wrenches": [
    {"name": "long one", "lowest_mark": "60 N m", "maximum": "320 N m",
     "graduation": "5 N m", "calibrated_on": "2030-09-02"},
    {"name": "middle one", "lowest_mark": "20 N m", "maximum": "100 N m",
     "graduation": "0.5 N m", "calibrated_on": "2029-11-20", "operations": 900}],
  "today": "2031-04-05",
  "check": {"set": "60 N m", "reference": "61.5 N m", "maximum": "100 N m"}
})",
          .exampleOutput = kExampleOutput};
}

}  // namespace sw::compute
