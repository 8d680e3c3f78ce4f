// SPDX-License-Identifier: GPL-3.0-or-later
// Frozen: books with this schema exist. A change of the schema is a new step in a file of its own.
#include <array>
#include <string_view>

#include "store/migrations/insert_only.h"
#include "store/migrations/migration.h"

namespace sw::store {

namespace {

constexpr std::array<std::string_view, 31> kFactKinds{
    "person",         "instrument",  "instrument_check", "vehicle",       "spec_item",
    "procedure_text", "job_opened",  "complaint",        "cause_checked", "run_started",
    "support_chosen", "hold_answer", "step_mark",        "observation",   "series",
    "reading",        "verdict",     "torque_check",     "ledger_move",   "part_used",
    "shim_pack",      "labour",      "work_declined",    "note",          "photo",
    "timer_started",  "override",    "road_test",        "recheck_due",   "job_closed",
    "withdrawal"};

// The words of kinds and quantities stand in tables of their own, so that a later step can
// add one without rebuilding the tables that use them.
constexpr std::array kCommonTables{
    R"sql(CREATE TABLE "kind" (
  "word" TEXT PRIMARY KEY
) STRICT, WITHOUT ROWID)sql",
    R"sql(CREATE TABLE "quantity_kind" (
  "word" TEXT PRIMARY KEY
) STRICT, WITHOUT ROWID)sql",
    R"sql(INSERT INTO "quantity_kind" ("word") VALUES ('length'), ('force'), ('torque'), ('angle'),
  ('mass'), ('speed'), ('frequency'), ('pressure'), ('duration'), ('volume'),
  ('temperature_difference'), ('number'))sql",
    R"sql(CREATE TABLE "entry" (
  "id" INTEGER PRIMARY KEY CHECK ("id" > 0),
  "job" INTEGER CHECK ("job" > 0),
  "run" INTEGER REFERENCES "entry" ("id"),
  "step" TEXT NOT NULL CHECK (instr("step", char(0)) = 0),
  "side" TEXT CHECK ("side" IN ('left', 'right')),
  "kind" TEXT NOT NULL REFERENCES "kind" ("word"),
  "done_at" TEXT NOT NULL CHECK (length("done_at") = 24),
  "done_offset" INTEGER NOT NULL CHECK (abs("done_offset") <= 1440),
  "entered_at" TEXT NOT NULL CHECK (length("entered_at") = 24),
  "entered_offset" INTEGER NOT NULL CHECK (abs("entered_offset") <= 1440),
  "by_person" INTEGER REFERENCES "entry" ("id"),
  "replaces" INTEGER UNIQUE REFERENCES "entry" ("id") CHECK ("replaces" < "id"),
  "reason" TEXT CHECK ("reason" IN ('typing_slip', 'wrong_side', 'wrong_unit', 'bad_pull',
      'withdrawn', 'other')),
  "reason_text" TEXT NOT NULL CHECK (instr("reason_text", char(0)) = 0),
  "program_version" TEXT NOT NULL CHECK (instr("program_version", char(0)) = 0),
  CHECK ("replaces" IS NULL OR "reason" IS NOT NULL),
  CHECK ("kind" <> 'withdrawal' OR "replaces" IS NOT NULL)
) STRICT)sql",
    R"sql(CREATE TABLE "picture" (
  "hash" TEXT PRIMARY KEY CHECK (length("hash") > 0),
  "mime" TEXT NOT NULL CHECK (instr("mime", char(0)) = 0),
  "bytes" BLOB NOT NULL,
  "thumbnail" BLOB NOT NULL
) STRICT)sql",
    R"sql(CREATE TABLE "draft" (
  "place" TEXT PRIMARY KEY,
  "text" TEXT NOT NULL
) STRICT, WITHOUT ROWID)sql",
    R"sql(CREATE TABLE "setting" (
  "key" TEXT PRIMARY KEY,
  "value" TEXT NOT NULL
) STRICT, WITHOUT ROWID)sql",
    R"sql(CREATE TABLE "cursor" (
  "job" INTEGER PRIMARY KEY,
  "place" TEXT NOT NULL
) STRICT)sql",
};

constexpr std::array kFactTables{
    R"sql(CREATE TABLE "fact_person" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "person" INTEGER NOT NULL,
  "name" TEXT NOT NULL CHECK (instr("name", char(0)) = 0),
  "initials" TEXT NOT NULL CHECK (instr("initials", char(0)) = 0),
  "active" INTEGER NOT NULL CHECK ("active" IN (0, 1))
) STRICT)sql",
    R"sql(CREATE TABLE "fact_instrument" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "instrument" INTEGER NOT NULL,
  "name" TEXT NOT NULL CHECK (instr("name", char(0)) = 0),
  "type" TEXT NOT NULL CHECK ("type" IN ('spring_scale', 'micrometer', 'dial_indicator',
      'caliper', 'feeler', 'steel_rule', 'torque_wrench', 'pressure_gauge', 'other')),
  "graduation_kind" TEXT NOT NULL REFERENCES "quantity_kind" ("word"), "graduation_number" TEXT
      NOT NULL, "graduation_unit" TEXT NOT NULL,
  "graduation_si" REAL NOT NULL CHECK (abs("graduation_si") < 1e300),
  "permissible_error_kind" TEXT REFERENCES "quantity_kind" ("word"), "permissible_error_number"
      TEXT, "permissible_error_unit" TEXT,
  "permissible_error_si" REAL CHECK (abs("permissible_error_si") < 1e300),
  "error_shape" TEXT NOT NULL CHECK (instr("error_shape", char(0)) = 0),
  "coverage_factor" REAL CHECK (abs("coverage_factor") < 1e300),
  "range_min_kind" TEXT REFERENCES "quantity_kind" ("word"), "range_min_number" TEXT,
      "range_min_unit" TEXT,
  "range_min_si" REAL CHECK (abs("range_min_si") < 1e300),
  "range_max_kind" TEXT REFERENCES "quantity_kind" ("word"), "range_max_number" TEXT,
      "range_max_unit" TEXT,
  "range_max_si" REAL CHECK (abs("range_max_si") < 1e300),
  "calibrated_on" TEXT CHECK ("calibrated_on" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  "calibration_due" TEXT CHECK ("calibration_due" GLOB
      '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  "certificate" TEXT NOT NULL CHECK (instr("certificate", char(0)) = 0),
  "active" INTEGER NOT NULL CHECK ("active" IN (0, 1)),
  CHECK (("permissible_error_kind" IS NULL) + ("permissible_error_number" IS NULL) +
      ("permissible_error_unit" IS NULL) + ("permissible_error_si" IS NULL) IN (0, 4)),
  CHECK (("range_min_kind" IS NULL) + ("range_min_number" IS NULL) + ("range_min_unit" IS NULL)
      + ("range_min_si" IS NULL) IN (0, 4)),
  CHECK (("range_max_kind" IS NULL) + ("range_max_number" IS NULL) + ("range_max_unit" IS NULL)
      + ("range_max_si" IS NULL) IN (0, 4))
) STRICT)sql",
    R"sql(CREATE TABLE "fact_instrument_check" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "instrument" INTEGER NOT NULL,
  "against" TEXT NOT NULL CHECK (instr("against", char(0)) = 0),
  "applied_kind" TEXT NOT NULL REFERENCES "quantity_kind" ("word"), "applied_number" TEXT NOT
      NULL, "applied_unit" TEXT NOT NULL,
  "applied_si" REAL NOT NULL CHECK (abs("applied_si") < 1e300),
  "shown_kind" TEXT NOT NULL REFERENCES "quantity_kind" ("word"), "shown_number" TEXT NOT NULL,
      "shown_unit" TEXT NOT NULL,
  "shown_si" REAL NOT NULL CHECK (abs("shown_si") < 1e300),
  "applied_uncertainty_kind" TEXT REFERENCES "quantity_kind" ("word"),
      "applied_uncertainty_number" TEXT, "applied_uncertainty_unit" TEXT,
  "applied_uncertainty_si" REAL CHECK (abs("applied_uncertainty_si") < 1e300),
  CHECK (("applied_uncertainty_kind" IS NULL) + ("applied_uncertainty_number" IS NULL) +
      ("applied_uncertainty_unit" IS NULL) + ("applied_uncertainty_si" IS NULL) IN (0, 4))
) STRICT)sql",
    R"sql(CREATE TABLE "fact_vehicle" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "vehicle" INTEGER NOT NULL,
  "registration" TEXT NOT NULL CHECK (instr("registration", char(0)) = 0),
  "make_model" TEXT NOT NULL CHECK (instr("make_model", char(0)) = 0),
  "vin" TEXT NOT NULL CHECK (instr("vin", char(0)) = 0),
  "owner" TEXT NOT NULL CHECK (instr("owner", char(0)) = 0),
  "odometer_unit" TEXT NOT NULL CHECK (instr("odometer_unit", char(0)) = 0),
  "tyre_fitted" TEXT NOT NULL CHECK (instr("tyre_fitted", char(0)) = 0),
  "tyre_original" TEXT NOT NULL CHECK (instr("tyre_original", char(0)) = 0),
  "hand_of_drive" TEXT CHECK ("hand_of_drive" IN ('left', 'right')),
  "traffic_side" TEXT CHECK ("traffic_side" IN ('left', 'right')),
  "front_axle_load_kind" TEXT REFERENCES "quantity_kind" ("word"), "front_axle_load_number"
      TEXT, "front_axle_load_unit" TEXT,
  "front_axle_load_si" REAL CHECK (abs("front_axle_load_si") < 1e300),
  "drag_link_side" TEXT CHECK ("drag_link_side" IN ('left', 'right')),
  "steering_arm_on_cap" TEXT CHECK ("steering_arm_on_cap" IN ('yes', 'no', 'unknown')),
  "lubricant" TEXT CHECK ("lubricant" IN ('grease', 'oil')),
  "shim_ends" TEXT CHECK ("shim_ends" IN ('top', 'bottom', 'both')),
  "shim_layout" TEXT CHECK ("shim_layout" IN ('cap_flange', 'inner')),
  "swivel_bearing" TEXT CHECK ("swivel_bearing" IN ('taper', 'bush', 'sprung_pin')),
  "drag_link_fixes_to" TEXT CHECK ("drag_link_fixes_to" IN ('track_rod', 'drag_link',
      'steering_arm', 'axle', 'frame')),
  "damper_fixes_to" TEXT CHECK ("damper_fixes_to" IN ('track_rod', 'drag_link', 'steering_arm',
      'axle', 'frame')),
  "disc_mount" TEXT CHECK ("disc_mount" IN ('outside', 'behind_hub')),
  "wheel_bearing" TEXT CHECK ("wheel_bearing" IN ('end_float', 'preload', 'unit')),
  "abs_lead" TEXT CHECK ("abs_lead" IN ('yes', 'no', 'unknown')),
  "locking_hubs" TEXT CHECK ("locking_hubs" IN ('yes', 'no', 'unknown')),
  "notes" TEXT NOT NULL CHECK (instr("notes", char(0)) = 0),
  CHECK (("front_axle_load_kind" IS NULL) + ("front_axle_load_number" IS NULL) +
      ("front_axle_load_unit" IS NULL) + ("front_axle_load_si" IS NULL) IN (0, 4))
) STRICT)sql",
    R"sql(CREATE TABLE "fact_spec_item" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "vehicle" INTEGER NOT NULL,
  "key" TEXT NOT NULL CHECK (instr("key", char(0)) = 0),
  "type" TEXT NOT NULL CHECK ("type" IN ('limit', 'torque', 'value', 'text')),
  "min_kind" TEXT REFERENCES "quantity_kind" ("word"), "min_number" TEXT, "min_unit" TEXT,
  "min_si" REAL CHECK (abs("min_si") < 1e300),
  "max_kind" TEXT REFERENCES "quantity_kind" ("word"), "max_number" TEXT, "max_unit" TEXT,
  "max_si" REAL CHECK (abs("max_si") < 1e300),
  "value_kind" TEXT REFERENCES "quantity_kind" ("word"), "value_number" TEXT, "value_unit" TEXT,
  "value_si" REAL CHECK (abs("value_si") < 1e300),
  "second_min_kind" TEXT REFERENCES "quantity_kind" ("word"), "second_min_number" TEXT,
      "second_min_unit" TEXT,
  "second_min_si" REAL CHECK (abs("second_min_si") < 1e300),
  "second_max_kind" TEXT REFERENCES "quantity_kind" ("word"), "second_max_number" TEXT,
      "second_max_unit" TEXT,
  "second_max_si" REAL CHECK (abs("second_max_si") < 1e300),
  "second_value_kind" TEXT REFERENCES "quantity_kind" ("word"), "second_value_number" TEXT,
      "second_value_unit" TEXT,
  "second_value_si" REAL CHECK (abs("second_value_si") < 1e300),
  "text" TEXT NOT NULL CHECK (instr("text", char(0)) = 0),
  "state_seal" TEXT CHECK ("state_seal" IN ('off', 'on')),
  "state_rods" TEXT CHECK ("state_rods" IN ('off', 'on')),
  "state_damper" TEXT CHECK ("state_damper" IN ('off', 'on')),
  "state_sealant" TEXT CHECK ("state_sealant" IN ('none', 'wet', 'cured')),
  "state_grease" TEXT CHECK ("state_grease" IN ('dry', 'fresh', 'old')),
  "state_movement" TEXT CHECK ("state_movement" IN ('first', 'steady')),
  "state_position" TEXT CHECK ("state_position" IN ('ahead', 'left_15', 'right_15')),
  "fastener_size" TEXT NOT NULL CHECK (instr("fastener_size", char(0)) = 0),
  "fastener_class" TEXT NOT NULL CHECK (instr("fastener_class", char(0)) = 0),
  "count" INTEGER,
  "pattern" TEXT NOT NULL CHECK (instr("pattern", char(0)) = 0),
  "single_use" INTEGER NOT NULL CHECK ("single_use" IN (0, 1)),
  "source" TEXT NOT NULL CHECK (instr("source", char(0)) = 0),
  "source_date" TEXT CHECK ("source_date" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  "withdrawn" INTEGER NOT NULL CHECK ("withdrawn" IN (0, 1)),
  CHECK (("min_kind" IS NULL) + ("min_number" IS NULL) + ("min_unit" IS NULL) + ("min_si" IS
      NULL) IN (0, 4)),
  CHECK (("max_kind" IS NULL) + ("max_number" IS NULL) + ("max_unit" IS NULL) + ("max_si" IS
      NULL) IN (0, 4)),
  CHECK (("value_kind" IS NULL) + ("value_number" IS NULL) + ("value_unit" IS NULL) +
      ("value_si" IS NULL) IN (0, 4)),
  CHECK (("second_min_kind" IS NULL) + ("second_min_number" IS NULL) + ("second_min_unit" IS
      NULL) + ("second_min_si" IS NULL) IN (0, 4)),
  CHECK (("second_max_kind" IS NULL) + ("second_max_number" IS NULL) + ("second_max_unit" IS
      NULL) + ("second_max_si" IS NULL) IN (0, 4)),
  CHECK (("second_value_kind" IS NULL) + ("second_value_number" IS NULL) + ("second_value_unit"
      IS NULL) + ("second_value_si" IS NULL) IN (0, 4))
) STRICT)sql",
    R"sql(CREATE TABLE "fact_procedure_text" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "hash" TEXT NOT NULL CHECK (instr("hash", char(0)) = 0),
  "procedure" TEXT NOT NULL CHECK (instr("procedure", char(0)) = 0),
  "version" INTEGER NOT NULL,
  "text" TEXT NOT NULL CHECK (instr("text", char(0)) = 0)
) STRICT)sql",
    R"sql(CREATE TABLE "fact_job_opened" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "vehicle" INTEGER NOT NULL,
  "odometer_kind" TEXT REFERENCES "quantity_kind" ("word"), "odometer_number" TEXT,
      "odometer_unit" TEXT,
  "odometer_si" REAL CHECK (abs("odometer_si") < 1e300),
  "request" TEXT NOT NULL CHECK (instr("request", char(0)) = 0),
  CHECK (("odometer_kind" IS NULL) + ("odometer_number" IS NULL) + ("odometer_unit" IS NULL) +
      ("odometer_si" IS NULL) IN (0, 4))
) STRICT)sql",
    R"sql(CREATE TABLE "fact_complaint" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "words" TEXT NOT NULL CHECK (instr("words", char(0)) = 0),
  "onset_rising_kind" TEXT REFERENCES "quantity_kind" ("word"), "onset_rising_number" TEXT,
      "onset_rising_unit" TEXT,
  "onset_rising_si" REAL CHECK (abs("onset_rising_si") < 1e300),
  "release_rising_kind" TEXT REFERENCES "quantity_kind" ("word"), "release_rising_number" TEXT,
      "release_rising_unit" TEXT,
  "release_rising_si" REAL CHECK (abs("release_rising_si") < 1e300),
  "onset_falling_kind" TEXT REFERENCES "quantity_kind" ("word"), "onset_falling_number" TEXT,
      "onset_falling_unit" TEXT,
  "onset_falling_si" REAL CHECK (abs("onset_falling_si") < 1e300),
  "release_falling_kind" TEXT REFERENCES "quantity_kind" ("word"), "release_falling_number"
      TEXT, "release_falling_unit" TEXT,
  "release_falling_si" REAL CHECK (abs("release_falling_si") < 1e300),
  "speed_source" TEXT CHECK ("speed_source" IN ('dial', 'gps')),
  "braking" TEXT NOT NULL CHECK ("braking" IN ('only', 'also', 'starts_and_stays', 'no',
      'unknown')),
  "after_bump" TEXT NOT NULL CHECK ("after_bump" IN ('yes', 'no', 'unknown')),
  "speed_band" TEXT NOT NULL CHECK ("speed_band" IN ('yes', 'no', 'unknown')),
  "where_felt" TEXT NOT NULL CHECK (instr("where_felt", char(0)) = 0),
  "recent_work" TEXT NOT NULL CHECK (instr("recent_work", char(0)) = 0),
  "conditions" TEXT NOT NULL CHECK (instr("conditions", char(0)) = 0),
  CHECK (("onset_rising_kind" IS NULL) + ("onset_rising_number" IS NULL) + ("onset_rising_unit"
      IS NULL) + ("onset_rising_si" IS NULL) IN (0, 4)),
  CHECK (("release_rising_kind" IS NULL) + ("release_rising_number" IS NULL) +
      ("release_rising_unit" IS NULL) + ("release_rising_si" IS NULL) IN (0, 4)),
  CHECK (("onset_falling_kind" IS NULL) + ("onset_falling_number" IS NULL) +
      ("onset_falling_unit" IS NULL) + ("onset_falling_si" IS NULL) IN (0, 4)),
  CHECK (("release_falling_kind" IS NULL) + ("release_falling_number" IS NULL) +
      ("release_falling_unit" IS NULL) + ("release_falling_si" IS NULL) IN (0, 4))
) STRICT)sql",
    R"sql(CREATE TABLE "fact_cause_checked" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "cause" TEXT NOT NULL CHECK (instr("cause", char(0)) = 0),
  "excluded" INTEGER NOT NULL CHECK ("excluded" IN (0, 1)),
  "how" TEXT NOT NULL CHECK (instr("how", char(0)) = 0)
) STRICT)sql",
    R"sql(CREATE TABLE "fact_run_started" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "procedure" TEXT NOT NULL CHECK (instr("procedure", char(0)) = 0),
  "hash" TEXT NOT NULL CHECK (instr("hash", char(0)) = 0),
  "left" INTEGER NOT NULL CHECK ("left" IN (0, 1)),
  "right" INTEGER NOT NULL CHECK ("right" IN (0, 1)),
  "round" INTEGER NOT NULL,
  "why" TEXT NOT NULL CHECK (instr("why", char(0)) = 0),
  "placed_after" INTEGER REFERENCES "entry" ("id")
) STRICT)sql",
    R"sql(CREATE TABLE "fact_support_chosen" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "support" TEXT NOT NULL CHECK ("support" IN ('stands', 'two_post', 'four_post', 'pit'))
) STRICT)sql",
    R"sql(CREATE TABLE "fact_hold_answer" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "hold" TEXT NOT NULL CHECK (instr("hold", char(0)) = 0),
  "statement" TEXT NOT NULL CHECK (instr("statement", char(0)) = 0),
  "answer" TEXT NOT NULL CHECK (instr("answer", char(0)) = 0),
  "si" REAL CHECK (abs("si") < 1e300),
  "passes" INTEGER NOT NULL CHECK ("passes" IN (0, 1))
) STRICT)sql",
    R"sql(CREATE TABLE "fact_step_mark" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "action" TEXT NOT NULL CHECK ("action" IN ('done', 'done_before_recording', 'not_applicable',
      'reopened')),
  "text" TEXT NOT NULL CHECK (instr("text", char(0)) = 0)
) STRICT)sql",
    R"sql(CREATE TABLE "fact_observation" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "key" TEXT NOT NULL CHECK (instr("key", char(0)) = 0),
  "value" TEXT NOT NULL CHECK (instr("value", char(0)) = 0),
  "text" TEXT NOT NULL CHECK (instr("text", char(0)) = 0)
) STRICT)sql",
    R"sql(CREATE TABLE "fact_series" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "quantity" TEXT NOT NULL REFERENCES "quantity_kind" ("word"),
  "limit_key" TEXT NOT NULL CHECK (instr("limit_key", char(0)) = 0),
  "limit" INTEGER REFERENCES "entry" ("id"),
  "instrument" INTEGER NOT NULL REFERENCES "entry" ("id"),
  "instrument_check" INTEGER REFERENCES "entry" ("id"),
  "state_seal" TEXT CHECK ("state_seal" IN ('off', 'on')),
  "state_rods" TEXT CHECK ("state_rods" IN ('off', 'on')),
  "state_damper" TEXT CHECK ("state_damper" IN ('off', 'on')),
  "state_sealant" TEXT CHECK ("state_sealant" IN ('none', 'wet', 'cured')),
  "state_grease" TEXT CHECK ("state_grease" IN ('dry', 'fresh', 'old')),
  "state_movement" TEXT CHECK ("state_movement" IN ('first', 'steady')),
  "state_position" TEXT CHECK ("state_position" IN ('ahead', 'left_15', 'right_15')),
  "angle_within_kind" TEXT REFERENCES "quantity_kind" ("word"), "angle_within_number" TEXT,
      "angle_within_unit" TEXT,
  "angle_within_si" REAL CHECK (abs("angle_within_si") < 1e300),
  "arm_kind" TEXT REFERENCES "quantity_kind" ("word"), "arm_number" TEXT, "arm_unit" TEXT,
  "arm_si" REAL CHECK (abs("arm_si") < 1e300),
  "planned" INTEGER NOT NULL,
  "settling" INTEGER NOT NULL,
  "safety" INTEGER NOT NULL CHECK ("safety" IN (0, 1)),
  CHECK (("angle_within_kind" IS NULL) + ("angle_within_number" IS NULL) + ("angle_within_unit"
      IS NULL) + ("angle_within_si" IS NULL) IN (0, 4)),
  CHECK (("arm_kind" IS NULL) + ("arm_number" IS NULL) + ("arm_unit" IS NULL) + ("arm_si" IS
      NULL) IN (0, 4))
) STRICT)sql",
    R"sql(CREATE TABLE "fact_reading" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "series" INTEGER NOT NULL REFERENCES "entry" ("id"),
  "value_kind" TEXT NOT NULL REFERENCES "quantity_kind" ("word"), "value_number" TEXT NOT NULL,
      "value_unit" TEXT NOT NULL,
  "value_si" REAL NOT NULL CHECK (abs("value_si") < 1e300),
  "use" TEXT NOT NULL CHECK ("use" IN ('used', 'settling', 'not_used'))
) STRICT)sql",
    R"sql(CREATE TABLE "fact_verdict" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "series" INTEGER NOT NULL REFERENCES "entry" ("id"),
  "verdict" TEXT NOT NULL CHECK (instr("verdict", char(0)) = 0),
  "so_far" TEXT NOT NULL CHECK (instr("so_far", char(0)) = 0),
  "value" REAL NOT NULL CHECK (abs("value") < 1e300),
  "standard_uncertainty" REAL NOT NULL CHECK (abs("standard_uncertainty") < 1e300),
  "degrees_of_freedom" REAL CHECK (abs("degrees_of_freedom") < 1e300),
  "expanded_uncertainty" REAL NOT NULL CHECK (abs("expanded_uncertainty") < 1e300),
  "probability" REAL CHECK (abs("probability") < 1e300),
  "bar" REAL NOT NULL CHECK (abs("bar") < 1e300),
  "used" INTEGER NOT NULL,
  "rule" TEXT NOT NULL CHECK (instr("rule", char(0)) = 0),
  "limit_side" TEXT NOT NULL CHECK (instr("limit_side", char(0)) = 0),
  "consistency" TEXT NOT NULL CHECK (instr("consistency", char(0)) = 0)
) STRICT)sql",
    R"sql(CREATE TABLE "fact_torque_check" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "group" TEXT NOT NULL CHECK (instr("group", char(0)) = 0),
  "spec" INTEGER REFERENCES "entry" ("id"),
  "set_kind" TEXT NOT NULL REFERENCES "quantity_kind" ("word"), "set_number" TEXT NOT NULL,
      "set_unit" TEXT NOT NULL,
  "set_si" REAL NOT NULL CHECK (abs("set_si") < 1e300),
  "wrench" INTEGER NOT NULL REFERENCES "entry" ("id"),
  "stage" INTEGER NOT NULL,
  "stages" INTEGER NOT NULL,
  "done" INTEGER NOT NULL,
  "count" INTEGER NOT NULL,
  "pattern" TEXT NOT NULL CHECK (instr("pattern", char(0)) = 0),
  "wrench_in_range" INTEGER NOT NULL CHECK ("wrench_in_range" IN (0, 1)),
  "calibration" TEXT NOT NULL CHECK (instr("calibration", char(0)) = 0)
) STRICT)sql",
    R"sql(CREATE TABLE "fact_ledger_move" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "item" TEXT NOT NULL CHECK (instr("item", char(0)) = 0),
  "name" TEXT NOT NULL CHECK (instr("name", char(0)) = 0),
  "type" TEXT NOT NULL CHECK ("type" IN ('removed', 'put_on')),
  "state" TEXT NOT NULL CHECK ("state" IN ('off', 'hand_tight', 'torqued', 'back', 'replaced',
      'left_off', 'on', 'taken_off')),
  "fastened" INTEGER NOT NULL CHECK ("fastened" IN (0, 1)),
  "done" INTEGER,
  "count" INTEGER,
  "reason" TEXT NOT NULL CHECK (instr("reason", char(0)) = 0)
) STRICT)sql",
    R"sql(CREATE TABLE "fact_part_used" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "name" TEXT NOT NULL CHECK (instr("name", char(0)) = 0),
  "key" TEXT NOT NULL CHECK (instr("key", char(0)) = 0),
  "number" TEXT NOT NULL CHECK (instr("number", char(0)) = 0),
  "quantity_kind" TEXT NOT NULL REFERENCES "quantity_kind" ("word"), "quantity_number" TEXT NOT
      NULL, "quantity_unit" TEXT NOT NULL,
  "quantity_si" REAL NOT NULL CHECK (abs("quantity_si") < 1e300),
  "unit_price_minor" INTEGER,
  "currency" TEXT NOT NULL CHECK (instr("currency", char(0)) = 0),
  "consumable" INTEGER NOT NULL CHECK ("consumable" IN (0, 1))
) STRICT)sql",
    R"sql(CREATE TABLE "fact_shim_pack" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "role" TEXT NOT NULL CHECK ("role" IN ('found', 'fitted')),
  "place" TEXT NOT NULL CHECK ("place" IN ('top', 'bottom')),
  "shims" TEXT NOT NULL CHECK (instr("shims", char(0)) = 0),
  "count" INTEGER NOT NULL,
  "total_kind" TEXT NOT NULL REFERENCES "quantity_kind" ("word"), "total_number" TEXT NOT NULL,
      "total_unit" TEXT NOT NULL,
  "total_si" REAL NOT NULL CHECK (abs("total_si") < 1e300),
  "measured_kind" TEXT REFERENCES "quantity_kind" ("word"), "measured_number" TEXT,
      "measured_unit" TEXT,
  "measured_si" REAL CHECK (abs("measured_si") < 1e300),
  "instrument" INTEGER REFERENCES "entry" ("id"),
  CHECK (("measured_kind" IS NULL) + ("measured_number" IS NULL) + ("measured_unit" IS NULL) +
      ("measured_si" IS NULL) IN (0, 4))
) STRICT)sql",
    R"sql(CREATE TABLE "fact_labour" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "minutes" REAL NOT NULL CHECK (abs("minutes") < 1e300),
  "text" TEXT NOT NULL CHECK (instr("text", char(0)) = 0),
  "hourly_rate_minor" INTEGER,
  "currency" TEXT NOT NULL CHECK (instr("currency", char(0)) = 0)
) STRICT)sql",
    R"sql(CREATE TABLE "fact_work_declined" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "what" TEXT NOT NULL CHECK (instr("what", char(0)) = 0),
  "words" TEXT NOT NULL CHECK (instr("words", char(0)) = 0)
) STRICT)sql",
    R"sql(CREATE TABLE "fact_note" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "text" TEXT NOT NULL CHECK (instr("text", char(0)) = 0)
) STRICT)sql",
    R"sql(CREATE TABLE "fact_photo" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "hash" TEXT NOT NULL CHECK (instr("hash", char(0)) = 0),
  "file_name" TEXT NOT NULL CHECK (instr("file_name", char(0)) = 0),
  "mime" TEXT NOT NULL CHECK (instr("mime", char(0)) = 0),
  "width" INTEGER NOT NULL,
  "height" INTEGER NOT NULL,
  "caption" TEXT NOT NULL CHECK (instr("caption", char(0)) = 0)
) STRICT)sql",
    R"sql(CREATE TABLE "fact_timer_started" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "minutes" REAL NOT NULL CHECK (abs("minutes") < 1e300),
  "what" TEXT NOT NULL CHECK (instr("what", char(0)) = 0)
) STRICT)sql",
    R"sql(CREATE TABLE "fact_override" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "rule" TEXT NOT NULL CHECK (instr("rule", char(0)) = 0),
  "what" TEXT NOT NULL CHECK (instr("what", char(0)) = 0),
  "why" TEXT NOT NULL CHECK (instr("why", char(0)) = 0)
) STRICT)sql",
    R"sql(CREATE TABLE "fact_road_test" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "when" TEXT NOT NULL CHECK ("when" IN ('before', 'after')),
  "shake" TEXT NOT NULL CHECK ("shake" IN ('none', 'less', 'same', 'worse')),
  "onset_kind" TEXT REFERENCES "quantity_kind" ("word"), "onset_number" TEXT, "onset_unit" TEXT,
  "onset_si" REAL CHECK (abs("onset_si") < 1e300),
  "release_kind" TEXT REFERENCES "quantity_kind" ("word"), "release_number" TEXT,
      "release_unit" TEXT,
  "release_si" REAL CHECK (abs("release_si") < 1e300),
  "speed_source" TEXT CHECK ("speed_source" IN ('dial', 'gps')),
  "self_return" TEXT NOT NULL CHECK (instr("self_return", char(0)) = 0),
  "text" TEXT NOT NULL CHECK (instr("text", char(0)) = 0),
  CHECK (("onset_kind" IS NULL) + ("onset_number" IS NULL) + ("onset_unit" IS NULL) +
      ("onset_si" IS NULL) IN (0, 4)),
  CHECK (("release_kind" IS NULL) + ("release_number" IS NULL) + ("release_unit" IS NULL) +
      ("release_si" IS NULL) IN (0, 4))
) STRICT)sql",
    R"sql(CREATE TABLE "fact_recheck_due" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "what" TEXT NOT NULL CHECK (instr("what", char(0)) = 0),
  "on" TEXT CHECK ("on" GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  "at_odometer_kind" TEXT REFERENCES "quantity_kind" ("word"), "at_odometer_number" TEXT,
      "at_odometer_unit" TEXT,
  "at_odometer_si" REAL CHECK (abs("at_odometer_si") < 1e300),
  CHECK (("at_odometer_kind" IS NULL) + ("at_odometer_number" IS NULL) + ("at_odometer_unit" IS
      NULL) + ("at_odometer_si" IS NULL) IN (0, 4))
) STRICT)sql",
    R"sql(CREATE TABLE "fact_job_closed" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "outcome" TEXT NOT NULL CHECK ("outcome" IN ('signed_off', 'declined',
      'closed_without_sign_off')),
  "reason" TEXT NOT NULL CHECK (instr("reason", char(0)) = 0)
) STRICT)sql",
    R"sql(CREATE TABLE "fact_withdrawal" (
  "entry" INTEGER PRIMARY KEY REFERENCES "entry" ("id"),
  "text" TEXT NOT NULL CHECK (instr("text", char(0)) = 0)
) STRICT)sql",
};

constexpr std::array kIndexes{
    R"sql(CREATE INDEX "entry_job" ON "entry" ("job"))sql",
    R"sql(CREATE INDEX "entry_kind_job" ON "entry" ("kind", "job"))sql",
    R"sql(CREATE INDEX "person_person" ON "fact_person" ("person"))sql",
    R"sql(CREATE INDEX "instrument_instrument" ON "fact_instrument" ("instrument"))sql",
    R"sql(CREATE INDEX "vehicle_vehicle" ON "fact_vehicle" ("vehicle"))sql",
    R"sql(CREATE INDEX "job_opened_vehicle" ON "fact_job_opened" ("vehicle"))sql",
};

// A correction stays with its job and its kind; only a withdrawal may take back any kind.
constexpr std::array kEntryTriggers{
    R"sql(CREATE TRIGGER "entry_replaces_kind" BEFORE INSERT ON "entry"
WHEN NEW."replaces" IS NOT NULL AND NEW."kind" <> 'withdrawal'
  AND NEW."kind" IS NOT (SELECT "kind" FROM "entry" WHERE "id" = NEW."replaces")
BEGIN
  SELECT RAISE(ABORT, 'store.replaces_other_kind');
END)sql",
    R"sql(CREATE TRIGGER "entry_replaces_job" BEFORE INSERT ON "entry"
WHEN NEW."replaces" IS NOT NULL
  AND NEW."job" IS NOT (SELECT "job" FROM "entry" WHERE "id" = NEW."replaces")
BEGIN
  SELECT RAISE(ABORT, 'store.replaces_other_job');
END)sql",
};

}  // namespace

Migration firstBook() {
  Migration step{1, "first book", {}};
  auto& out = step.statements;
  out.insert(out.end(), kCommonTables.begin(), kCommonTables.end());
  out.insert(out.end(), kFactTables.begin(), kFactTables.end());
  out.insert(out.end(), kIndexes.begin(), kIndexes.end());
  out.insert(out.end(), kEntryTriggers.begin(), kEntryTriggers.end());
  for (const std::string_view kind : kFactKinds) addFactKind(out, kind);
  addInsertOnly(out, "entry", "id");
  addInsertOnly(out, "picture", "hash");
  addInsertOnly(out, "kind", "word");
  addInsertOnly(out, "quantity_kind", "word");
  return step;
}

}  // namespace sw::store
