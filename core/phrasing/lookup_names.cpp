// SPDX-License-Identifier: GPL-3.0-or-later
// Names for what is looked up: lines of a spec sheet, and what a search found.
#include "phrasing/named_table.h"
#include "phrasing/names.h"

namespace sw::phrasing {

namespace {

using Row = Named<std::string_view>;

constexpr std::array kSpecKeys = {
    Row{"swivel.starting_force",
        QT_TRANSLATE_NOOP3("phrasing", "swivel starting force, hub bare", "line of a spec sheet")},
    Row{"swivel.dressed_pull",
        QT_TRANSLATE_NOOP3("phrasing", "swivel pull, all refitted", "line of a spec sheet")},
    Row{"swivel.end_float",
        QT_TRANSLATE_NOOP3("phrasing", "swivel end float", "line of a spec sheet")},
    Row{"wheel_bearing.end_float",
        QT_TRANSLATE_NOOP3("phrasing", "wheel bearing end float", "line of a spec sheet")},
    Row{"wheel_bearing.preload_pull",
        QT_TRANSLATE_NOOP3("phrasing", "wheel bearing preload pull", "line of a spec sheet")},
    Row{"tyre.front_pressure",
        QT_TRANSLATE_NOOP3("phrasing", "front tyre pressure", "line of a spec sheet")},
    Row{"tyre.radial_runout",
        QT_TRANSLATE_NOOP3("phrasing", "tyre run-out, up and down", "line of a spec sheet")},
    Row{"tyre.lateral_runout",
        QT_TRANSLATE_NOOP3("phrasing", "tyre run-out, side to side", "line of a spec sheet")},
    Row{"rim.radial_runout",
        QT_TRANSLATE_NOOP3("phrasing", "rim run-out, up and down", "line of a spec sheet")},
    Row{"rim.lateral_runout",
        QT_TRANSLATE_NOOP3("phrasing", "rim run-out, side to side", "line of a spec sheet")},
    Row{"disc.min_thickness",
        QT_TRANSLATE_NOOP3("phrasing", "brake disc thickness, least", "line of a spec sheet")},
    Row{"disc.thickness_variation",
        QT_TRANSLATE_NOOP3("phrasing", "brake disc thickness variation", "line of a spec sheet")},
    Row{"disc.machine_to",
        QT_TRANSLATE_NOOP3("phrasing", "brake disc thickness after machining, least",
                           "line of a spec sheet")},
    Row{"disc.runout",
        QT_TRANSLATE_NOOP3("phrasing", "brake disc run-out", "line of a spec sheet")},
    Row{"toe.total", QT_TRANSLATE_NOOP3("phrasing", "toe of the axle, without its sign",
                                        "line of a spec sheet")},
    Row{"caster.angle", QT_TRANSLATE_NOOP3("phrasing", "caster", "line of a spec sheet")},
    Row{"shims.sizes", QT_TRANSLATE_NOOP3("phrasing", "swivel shim sizes", "line of a spec sheet")},
    Row{"shims.max_pack",
        QT_TRANSLATE_NOOP3("phrasing", "thickest shim pack allowed", "line of a spec sheet")},
    Row{"shims.max_count",
        QT_TRANSLATE_NOOP3("phrasing", "most shims in a pack", "line of a spec sheet")},
    Row{"swivel_cap_bolts",
        QT_TRANSLATE_NOOP3("phrasing", "upper swivel cap bolts", "line of a spec sheet")},
    Row{"lower_swivel_cap_bolts",
        QT_TRANSLATE_NOOP3("phrasing", "lower swivel cap bolts", "line of a spec sheet")},
    Row{"steering_arm_nuts",
        QT_TRANSLATE_NOOP3("phrasing", "steering arm and cap nuts", "line of a spec sheet")},
    Row{"seal_retainer_bolts",
        QT_TRANSLATE_NOOP3("phrasing", "seal retainer bolts", "line of a spec sheet")},
    Row{"track_rod_nut", QT_TRANSLATE_NOOP3("phrasing", "track rod nut", "line of a spec sheet")},
    Row{"drag_link_nut", QT_TRANSLATE_NOOP3("phrasing", "drag link nut", "line of a spec sheet")},
    Row{"damper_nut",
        QT_TRANSLATE_NOOP3("phrasing", "steering damper nut", "line of a spec sheet")},
    Row{"caliper_bolts", QT_TRANSLATE_NOOP3("phrasing", "caliper bolts", "line of a spec sheet")},
    Row{"stub_axle_bolts",
        QT_TRANSLATE_NOOP3("phrasing", "stub axle bolts", "line of a spec sheet")},
    Row{"hub_nut", QT_TRANSLATE_NOOP3("phrasing", "hub nut or lock nut", "line of a spec sheet")},
    Row{"drive_flange_bolts",
        QT_TRANSLATE_NOOP3("phrasing", "drive flange bolts", "line of a spec sheet")},
    Row{"hub_unit_bolts",
        QT_TRANSLATE_NOOP3("phrasing", "bolts of the bearing unit", "line of a spec sheet")},
    Row{"disc_bolts",
        QT_TRANSLATE_NOOP3("phrasing", "bolts of disc and hub", "line of a spec sheet")},
    Row{"adjuster_clamp_bolts",
        QT_TRANSLATE_NOOP3("phrasing", "adjuster clamps of the rods", "line of a spec sheet")},
    Row{"arm_axle_bolts",
        QT_TRANSLATE_NOOP3("phrasing", "arm bolts at the axle", "line of a spec sheet")},
    Row{"arm_pivot_nuts",
        QT_TRANSLATE_NOOP3("phrasing", "arm nuts at the chassis", "line of a spec sheet")},
    Row{"panhard_bolts",
        QT_TRANSLATE_NOOP3("phrasing", "panhard rod bolts", "line of a spec sheet")},
    Row{"wheel_nuts", QT_TRANSLATE_NOOP3("phrasing", "wheel nuts", "line of a spec sheet")},
};

constexpr std::array kFound = {
    Row{"vehicle", QT_TRANSLATE_NOOP3("phrasing", "vehicle", "what a search found")},
    Row{"request", QT_TRANSLATE_NOOP3("phrasing", "owner's words", "what a search found")},
    Row{"complaint", QT_TRANSLATE_NOOP3("phrasing", "complaint", "what a search found")},
    Row{"part", QT_TRANSLATE_NOOP3("phrasing", "part", "what a search found")},
    Row{"note", QT_TRANSLATE_NOOP3("phrasing", "note", "what a search found")},
};

template <std::size_t N>
QString nameOrKey(const std::array<Row, N>& table, std::string_view key) {
  const QString name = nameIn(table, key);
  return name.isEmpty() ? shown(std::string(key)) : name;
}

}  // namespace

QString specKeyName(std::string_view key) {
  return nameOrKey(kSpecKeys, key);
}

QString foundName(std::string_view kind) {
  return nameOrKey(kFound, kind);
}

}  // namespace sw::phrasing
