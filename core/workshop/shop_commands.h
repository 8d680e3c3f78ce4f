// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "model/words.h"

// Commands about the shop: people, instruments, vehicles and their spec sheets. See command.h.

namespace sw::workshop {

using Text = std::string;
using OptText = std::optional<std::string>;

struct SetPerson {
  static constexpr std::string_view kName = "set_person";
  static constexpr std::string_view kSummary =
      "A person of the shop; the initials name an existing one";
  Text initials;
  OptText name, newInitials;
  std::optional<bool> active;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("initials", s.initials, "initials, unique in the shop");
    v("name", s.name, "full name; required for a new person");
    v("new_initials", s.newInitials, "when the initials change");
    v("active", s.active, "false when the person has left");
  }
};

struct SetInstrument {
  static constexpr std::string_view kName = "set_instrument";
  static constexpr std::string_view kSummary = "An instrument; the name names an existing one";
  Text name;
  std::optional<model::InstrumentKind> type;
  OptText graduation, permissibleError, errorShape, rangeMin, rangeMax, calibratedOn,
      calibrationDue, certificate;
  std::optional<double> coverageFactor;
  std::optional<bool> active;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("name", s.name, "what the shop calls it");
    v("type", s.type, "kind of instrument; required for a new one");
    v("graduation", s.graduation, "smallest step with unit, e.g. 0.5 N; required for a new one");
    v("permissible_error", s.permissibleError, "half-width, e.g. 0.5 N or, for wrenches, 4 %");
    v("error_shape", s.errorShape, "rectangular, triangular or certificate");
    v("coverage_factor", s.coverageFactor, "k of the certificate");
    v("range_min", s.rangeMin, "lowest usable value");
    v("range_max", s.rangeMax, "highest usable value");
    v("calibrated_on", s.calibratedOn, "date");
    v("calibration_due", s.calibrationDue, "date");
    v("certificate", s.certificate, "certificate number or text");
    v("active", s.active, "false when it is out of use");
  }
};

struct CheckInstrument {
  static constexpr std::string_view kName = "check_instrument";
  static constexpr std::string_view kSummary = "The user's own check against a known mass or gauge";
  Text instrument, against, applied, shown;
  OptText appliedUncertainty;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("instrument", s.instrument, "its name");
    v("against", s.against, "what it was checked with");
    v("applied", s.applied, "the known value");
    v("shown", s.shown, "what the instrument showed");
    v("applied_uncertainty", s.appliedUncertainty, "half-width of the known value, if any");
  }
};

struct SetVehicle {
  static constexpr std::string_view kName = "set_vehicle";
  static constexpr std::string_view kSummary = "A vehicle; the registration names an existing one";
  Text registration;
  OptText newRegistration, makeModel, vin, owner, odometerUnit, tyreFitted, tyreOriginal,
      frontAxleLoad, notes;
  std::optional<model::HandOfDrive> handOfDrive, trafficSide;
  std::optional<model::Side> dragLinkSide;
  std::optional<model::YesNo> steeringArmOnCap, absLead, lockingHubs;
  std::optional<model::Lubricant> lubricant;
  std::optional<model::ShimEnds> shimEnds;
  std::optional<model::ShimLayout> shimLayout;
  std::optional<model::SwivelBearing> swivelBearing;
  std::optional<model::FixesTo> dragLinkFixesTo, damperFixesTo;
  std::optional<model::DiscMount> discMount;
  std::optional<model::WheelBearingSetting> wheelBearing;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("registration", s.registration, "the plate, or what the shop calls the vehicle");
    v("new_registration", s.newRegistration, "when the plate changes");
    v("make_model", s.makeModel, "free text");
    v("vin", s.vin, "VIN or older chassis number, as text");
    v("owner", s.owner, "owner");
    v("odometer_unit", s.odometerUnit, "km or mi");
    v("tyre_fitted", s.tyreFitted, "size on the vehicle now");
    v("tyre_original", s.tyreOriginal, "size it was built with (the dial goes with it)");
    v("hand_of_drive", s.handOfDrive, "left or right");
    v("traffic_side", s.trafficSide, "left or right");
    v("front_axle_load", s.frontAxleLoad, "mass on the front axle");
    v("drag_link_side", s.dragLinkSide, "which hub carries the drag link");
    v("steering_arm_on_cap", s.steeringArmOnCap, "is the steering arm part of the upper cap?");
    v("lubricant", s.lubricant, "oil or grease filled");
    v("shim_ends", s.shimEnds, "where shims sit");
    v("shim_layout", s.shimLayout, "under the cap flange, or inner: between pin and cap");
    v("swivel_bearing", s.swivelBearing, "taper roller, bush or sprung pin");
    v("drag_link_fixes_to", s.dragLinkFixesTo, "what the drag link fixes to");
    v("damper_fixes_to", s.damperFixesTo, "what the steering damper fixes to");
    v("disc_mount", s.discMount, "outside, or bolted behind the hub");
    v("wheel_bearing", s.wheelBearing, "set by end float, by preload, or a unit");
    v("abs_lead", s.absLead, "wheel-speed lead at the hub?");
    v("locking_hubs", s.lockingHubs, "free-wheeling hubs?");
    v("notes", s.notes, "notes");
  }
};

struct SetSpec {
  static constexpr std::string_view kName = "set_spec";
  static constexpr std::string_view kSummary = "One line of a vehicle's spec sheet";
  Text registration, key;
  model::SpecKind type = model::SpecKind::Value;
  OptText min, max, value, secondMin, secondMax, secondValue, text, fastenerSize, fastenerClass,
      pattern, source, sourceDate;
  std::optional<std::int64_t> count;
  std::optional<bool> singleUse, withdrawn;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("registration", s.registration, "the vehicle");
    v("key", s.key, "what the procedures ask for, e.g. swivel.starting_force");
    v("type", s.type, "limit, torque, value or text");
    v("min", s.min, "lower limit with unit");
    v("max", s.max, "upper limit with unit");
    v("value", s.value, "torque or value with unit");
    v("second_min", s.secondMin, "the same lower limit in the sheet's other unit");
    v("second_max", s.secondMax, "the same upper limit in the sheet's other unit");
    v("second_value", s.secondValue, "the same figure in the sheet's other unit");
    v("text", s.text, "for type text, e.g. shim sizes");
    v("fastener_size", s.fastenerSize, "e.g. M10x1.5");
    v("fastener_class", s.fastenerClass, "property class");
    v("count", s.count, "fasteners in the group, one side");
    v("pattern", s.pattern, "cross, star, none");
    v("single_use", s.singleUse, "new ones each time");
    v("source", s.source, "where the figure stands");
    v("source_date", s.sourceDate, "date of the source");
    v("withdrawn", s.withdrawn, "true takes the line off the sheet");
  }
};

struct CopySpec {
  static constexpr std::string_view kName = "copy_spec";
  static constexpr std::string_view kSummary = "Copy a spec sheet from another vehicle";
  Text from, to;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("from", s.from, "registration of the vehicle that has the sheet");
    v("to", s.to, "registration of the vehicle that gets it");
  }
};

struct SourceSpec {
  static constexpr std::string_view kName = "source_spec";
  static constexpr std::string_view kSummary = "One source for the whole spec sheet";
  Text registration, source;
  OptText sourceDate;
  template <class Self, class V>
  static void fields(Self& s, V&& v) {
    v("registration", s.registration, "the vehicle");
    v("source", s.source, "where the figures stand");
    v("source_date", s.sourceDate, "date of the source");
  }
};

}  // namespace sw::workshop
