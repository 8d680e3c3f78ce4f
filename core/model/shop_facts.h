// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>

#include "base/clock.h"
#include "model/ids.h"
#include "model/pull_state.h"
#include "model/words.h"
#include "units/typed_quantity.h"

// Facts of the shop that jobs point at: people, instruments, vehicles and their spec sheets, the
// frozen texts of procedures. Each is an insert-only revision; the newest revision of an id is the
// one in force, and a job keeps the revisions it used.
//
// Every fact struct names its stored kind (kKind) and lists its fields once (`fields`), for the
// store, the JSON forms and the tests alike. Field types: std::string, bool, std::int64_t, double,
// enumerations with Words, ids, Date, Timestamp, TypedQuantity, PullState, and std::optional of
// these.

namespace sw::model {

struct Person {
  static constexpr std::string_view kKind = "person";
  PersonId person;
  std::string name;
  std::string initials;
  bool active = true;

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("person", self.person);
    visit("name", self.name);
    visit("initials", self.initials);
    visit("active", self.active);
  }
};

/// What the shop calls itself; sheets print the name in force when the job was closed.
struct ShopNamed {
  static constexpr std::string_view kKind = "shop_named";
  std::string name;

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("name", self.name);
  }
};

/// The shop's own numbers in the table of causes, all of them; empty text = the shipped ones.
struct CauseNumbers {
  static constexpr std::string_view kKind = "cause_numbers";
  std::string numbers;  ///< JSON text

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("numbers", self.numbers);
  }
};

struct Instrument {
  static constexpr std::string_view kKind = "instrument";
  InstrumentId instrument;
  std::string name;
  InstrumentKind type = InstrumentKind::Other;
  TypedQuantity graduation;
  std::optional<TypedQuantity> permissibleError;
  std::string errorShape = "rectangular";  ///< rectangular | triangular | certificate
  std::optional<double> coverageFactor;    ///< of the certificate
  std::optional<TypedQuantity> rangeMin, rangeMax;
  std::optional<Date> calibratedOn, calibrationDue;
  std::string certificate;
  bool active = true;

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("instrument", self.instrument);
    visit("name", self.name);
    visit("type", self.type);
    visit("graduation", self.graduation);
    visit("permissible_error", self.permissibleError);
    visit("error_shape", self.errorShape);
    visit("coverage_factor", self.coverageFactor);
    visit("range_min", self.rangeMin);
    visit("range_max", self.rangeMax);
    visit("calibrated_on", self.calibratedOn);
    visit("calibration_due", self.calibrationDue);
    visit("certificate", self.certificate);
    visit("active", self.active);
  }
};

/// The user's own check against a known mass or gauge; a fish scale has no certificate.
struct InstrumentCheck {
  static constexpr std::string_view kKind = "instrument_check";
  InstrumentId instrument;
  std::string against;  ///< "kitchen weight, 2 kg"
  TypedQuantity applied;
  TypedQuantity shown;
  std::optional<TypedQuantity> appliedUncertainty;  ///< half-width, rectangular

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("instrument", self.instrument);
    visit("against", self.against);
    visit("applied", self.applied);
    visit("shown", self.shown);
    visit("applied_uncertainty", self.appliedUncertainty);
  }
};

/// What decides which steps a front axle needs. Absent = not known yet.
struct AxleArrangement {
  std::optional<Side> dragLinkSide;
  std::optional<YesNo> steeringArmOnCap;
  std::optional<Lubricant> lubricant;
  std::optional<ShimEnds> shimEnds;
  std::optional<ShimLayout> shimLayout;
  std::optional<SwivelBearing> swivelBearing;
  std::optional<FixesTo> dragLinkFixesTo;
  std::optional<FixesTo> damperFixesTo;
  std::optional<DiscMount> discMount;
  std::optional<WheelBearingSetting> wheelBearing;
  std::optional<YesNo> absLead;
  std::optional<YesNo> lockingHubs;

  friend bool operator==(const AxleArrangement&, const AxleArrangement&) = default;

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("drag_link_side", self.dragLinkSide);
    visit("steering_arm_on_cap", self.steeringArmOnCap);
    visit("lubricant", self.lubricant);
    visit("shim_ends", self.shimEnds);
    visit("shim_layout", self.shimLayout);
    visit("swivel_bearing", self.swivelBearing);
    visit("drag_link_fixes_to", self.dragLinkFixesTo);
    visit("damper_fixes_to", self.damperFixesTo);
    visit("disc_mount", self.discMount);
    visit("wheel_bearing", self.wheelBearing);
    visit("abs_lead", self.absLead);
    visit("locking_hubs", self.lockingHubs);
  }
};

struct Vehicle {
  static constexpr std::string_view kKind = "vehicle";
  VehicleId vehicle;
  std::string registration;
  std::string makeModel;  ///< free text
  std::string vin;        ///< VIN or older chassis number, as text
  std::string owner;
  std::string odometerUnit = "km";  ///< km | mi
  std::string tyreFitted;
  std::string tyreOriginal;
  std::optional<HandOfDrive> handOfDrive;
  std::optional<HandOfDrive> trafficSide;
  std::optional<TypedQuantity> frontAxleLoad;
  AxleArrangement arrangement;
  std::string notes;

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("vehicle", self.vehicle);
    visit("registration", self.registration);
    visit("make_model", self.makeModel);
    visit("vin", self.vin);
    visit("owner", self.owner);
    visit("odometer_unit", self.odometerUnit);
    visit("tyre_fitted", self.tyreFitted);
    visit("tyre_original", self.tyreOriginal);
    visit("hand_of_drive", self.handOfDrive);
    visit("traffic_side", self.trafficSide);
    visit("front_axle_load", self.frontAxleLoad);
    AxleArrangement::fields(self.arrangement, visit);
    visit("notes", self.notes);
  }
};

/// One line of a vehicle's spec sheet. `key` is what procedures ask for ("swivel.starting_force",
/// "swivel_cap_bolts"). Limits use min/max, torques and values use `value` (and max for a
/// castellated nut's upper limit); the second figures are the same limit in the sheet's other unit.
struct SpecItem {
  static constexpr std::string_view kKind = "spec_item";
  VehicleId vehicle;
  std::string key;
  SpecKind type = SpecKind::Value;
  std::optional<TypedQuantity> min, max, value;
  std::optional<TypedQuantity> secondMin, secondMax, secondValue;
  std::string text;  ///< for SpecKind::Text, e.g. a list of shim sizes
  std::optional<PullState>
      state;                  ///< the state a force limit belongs to; absent = bare, see workshop
  std::string fastenerSize;   ///< "M10x1.5"
  std::string fastenerClass;  ///< "8.8"
  std::optional<std::int64_t> count;  ///< fasteners in the group (a side)
  std::string pattern;                ///< "cross"
  bool singleUse = false;
  std::string source;
  std::optional<Date> sourceDate;
  bool withdrawn = false;

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("vehicle", self.vehicle);
    visit("key", self.key);
    visit("type", self.type);
    visit("min", self.min);
    visit("max", self.max);
    visit("value", self.value);
    visit("second_min", self.secondMin);
    visit("second_max", self.secondMax);
    visit("second_value", self.secondValue);
    visit("text", self.text);
    visit("state", self.state);
    visit("fastener_size", self.fastenerSize);
    visit("fastener_class", self.fastenerClass);
    visit("count", self.count);
    visit("pattern", self.pattern);
    visit("single_use", self.singleUse);
    visit("source", self.source);
    visit("source_date", self.sourceDate);
    visit("withdrawn", self.withdrawn);
  }
};

/// The frozen text of a procedure file, by content hash.
struct ProcedureText {
  static constexpr std::string_view kKind = "procedure_text";
  std::string hash;       ///< SHA-256, hex
  std::string procedure;  ///< id in the file
  std::int64_t version = 1;
  std::string text;  ///< the file, byte for byte

  template <class Self, class V>
  static void fields(Self& self, V&& visit) {
    visit("hash", self.hash);
    visit("procedure", self.procedure);
    visit("version", self.version);
    visit("text", self.text);
  }
};

}  // namespace sw::model
