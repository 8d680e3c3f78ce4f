// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/geometry/caster_fields.h"

#include "compute/geometry/limit_reading.h"

namespace sw::compute {

namespace {

FieldDescription angle(std::string_view name, std::string_view meaning,
                       const FieldNotes& notes = {.range = "-40 to 40 deg"}) {
  return quantityField(name, QuantityKind::Angle, meaning, notes);
}

constexpr FieldNotes kReading{.presence = Presence::Required, .range = "-40 to 40 deg"};
constexpr FieldNotes kSpread{.range = "0 or more", .defaultValue = R"("0 deg")"};

}  // namespace

std::vector<FieldDescription> casterInputFields() {
  return {
      angle("turn", "to either side from straight ahead",
            {.presence = Presence::Required, .range = "5 to 45 deg"}),
      angle("camber_outward", "wheel steered outward, leaning out positive", kReading),
      angle("camber_inward", "wheel steered inward", kReading),
      angle("tilt_outward",
            "tilt of the wheel's fore-and-aft line, front end up positive, brake "
            "locked, wheel steered outward; with tilt_inward"),
      angle("tilt_inward", "the same, wheel steered inward"),
      angle("kingpin_inclination", "top inboard positive; the exact method needs it or the tilts",
            {.range = "-30 to 30 deg"}),
      angle("camber_ahead", "wheels straight ahead, for the exact method",
            {.range = "-15 to 15 deg", .defaultValue = R"("0 deg")"}),
      angle("reading_uncertainty", "standard uncertainty of each reading", kSpread),
      angle("turn_uncertainty", "standard uncertainty of the turn", kSpread),
      angle("frame_angle", "of the frame, front down positive; the limit is for a level one",
            {.range = "-30 to 30 deg"}),
      limitField("limit", QuantityKind::Angle, "of the caster at level frame")};
}

std::vector<FieldDescription> casterOptionFields() {
  return {{.name = "method",
           .kind = "word",
           .defaultValue = R"("small_angle")",
           .range = "small_angle | exact",
           .meaning = "small_angle is the trade's, within about 1 %"},
          {.name = "turn_shown",
           .kind = "word",
           .defaultValue = R"("turntable")",
           .range = "turntable | about_axis",
           .meaning = "what turn is, for the exact method: the heading on a turntable or the turn "
                      "about the axis itself"},
          confidenceField()};
}

std::vector<FieldDescription> casterOutputFields() {
  constexpr FieldNotes kAlways{.presence = Presence::Required};
  return {angle("caster", "axis leaning back at the top positive", kAlways),
          angle("standard_uncertainty", "of the caster", kAlways),
          {.name = "factor",
           .kind = "number",
           .presence = Presence::Required,
           .meaning = "1 / (2 sin turn)"},
          angle("kingpin_inclination", "where the tilts are given", {}),
          angle("caster_at_level_frame", "where frame_angle is given", {}),
          verdictField("within | outside | undecided | instrument_too_coarse | no_limit",
                       "of the caster at level frame")};
}

}  // namespace sw::compute
