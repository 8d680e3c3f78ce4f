// SPDX-License-Identifier: GPL-3.0-or-later
#include "shop_fixture.h"

#include <QCoreApplication>
#include <nlohmann/json.hpp>
#include <stdexcept>

#include "gtest/gtest.h"
#include "workshop/command_json.h"

namespace sw::test {

namespace {

/// Qt Sql finds its driver through the application object.
void needApplication() {
  static int count = 1;
  static char name[] = "test";
  static char* values[] = {name, nullptr};
  static QCoreApplication* application =
      QCoreApplication::instance() != nullptr ? nullptr : new QCoreApplication(count, values);
  (void)application;
}

}  // namespace

Shop::Shop(const store::BookOptions& options) : clock(*parseTimestamp("2031-03-03T08:00+01:00")) {
  needApplication();
  library = procedures::Library::load(std::string(SW_SOURCE_DIR) + "/resources");
  path = folder.filePath(QStringLiteral("b\u00fcch einer werkstatt.swbook")).toStdString();
  auto made = store::Book::create(path, clock, options);
  if (!made) throw std::runtime_error("no book: " + made.error().key);
  book = std::move(*made);
  reopen();
}

void Shop::reopenBook(const store::BookOptions& options) {
  workshop.reset();
  book.reset();
  auto opened = store::Book::open(path, store::OpenMode::ReadWrite, clock, options);
  if (!opened) throw std::runtime_error("no book: " + opened.error().key);
  book = std::move(*opened);
  reopen();
}

Result<workshop::Outcome> Shop::say(const std::string& json) {
  auto parsed = model::parseJson(json);
  if (!parsed) return tl::make_unexpected(parsed.error());
  auto command = workshop::commandFromJson(*parsed);
  if (!command) return tl::make_unexpected(command.error());
  if (command->job) job = *command->job;
  if (!command->job && job > 0) command->job = job;
  if (!command->by && !by.empty()) command->by = by;
  auto outcome = workshop->perform(*command);
  if (outcome && outcome->job) job = outcome->job->value;
  return outcome;
}

workshop::Outcome Shop::ok(const std::string& json) {
  auto outcome = say(json);
  EXPECT_TRUE(outcome.has_value()) << json << "\n" << describe(outcome);
  return outcome ? *outcome : workshop::Outcome{};
}

Error Shop::refused(const std::string& json, const std::string& key) {
  auto outcome = say(json);
  EXPECT_FALSE(outcome.has_value()) << json;
  if (outcome) return {};
  EXPECT_EQ(outcome.error().key, key) << json << "\n" << describe(outcome);
  return outcome.error();
}

std::string Shop::describe(const Result<workshop::Outcome>& outcome) {
  if (outcome) return "accepted";
  std::string text = outcome.error().key + " [" + outcome.error().field + "]";
  for (const auto& [name, value] : outcome.error().details) text += " " + name + "=" + value;
  return text;
}

workshop::JobState Shop::state() {
  auto state = workshop->job({job});
  EXPECT_TRUE(state.has_value()) << (state ? "" : state.error().key);
  return state ? std::move(*state) : workshop::JobState{};
}

bool Shop::told(const workshop::Outcome& outcome, const std::string& key) {
  for (const auto& event : outcome.events) {
    if (event.key == key) return true;
  }
  return false;
}

std::string Shop::value(const workshop::Outcome& outcome, const std::string& key,
                        const std::string& name) {
  for (const auto& event : outcome.events) {
    if (event.key != key) continue;
    for (const auto& [candidate, text] : event.values) {
      if (candidate == name) return text;
    }
  }
  return {};
}

void Shop::setUp(const std::string& vehicleExtras) {
  by.clear();
  ok(R"({"do":"set_person","initials":"KL","name":"Kaya Lindner"})");
  ok(R"({"do":"set_person","initials":"RT","name":"Rufus Thorne"})");
  by = "KL";
  ok(R"({"do":"set_instrument","name":"scale","type":"spring_scale","graduation":"0.2 N",)"
     R"("permissible_error":"0.2 N","range_max":"60 N"})");
  ok(R"({"do":"set_instrument","name":"fish scale","type":"spring_scale","graduation":"0.05 kgf"})");
  ok(R"({"do":"set_instrument","name":"micrometer","type":"micrometer","graduation":"0.01 mm",)"
     R"("permissible_error":"0.004 mm"})");
  ok(R"({"do":"set_instrument","name":"dial","type":"dial_indicator","graduation":"0.01 mm",)"
     R"("permissible_error":"0.01 mm"})");
  ok(R"({"do":"set_instrument","name":"rule","type":"steel_rule","graduation":"0.5 mm",)"
     R"("permissible_error":"0.3 mm"})");
  ok(R"({"do":"set_instrument","name":"feeler","type":"feeler","graduation":"0.05 mm",)"
     R"("permissible_error":"0.005 mm"})");
  ok(R"({"do":"set_instrument","name":"gauge","type":"pressure_gauge","graduation":"0.1 bar",)"
     R"("permissible_error":"0.1 bar"})");
  ok(R"({"do":"set_instrument","name":"small","type":"torque_wrench","graduation":"0.5 N m",)"
     R"("permissible_error":"4 %","range_min":"2 N m","range_max":"30 N m",)"
     R"("calibrated_on":"2031-01-10","calibration_due":"2032-01-10"})");
  ok(R"({"do":"set_instrument","name":"large","type":"torque_wrench","graduation":"1 N m",)"
     R"("permissible_error":"4 %","range_min":"24 N m","range_max":"200 N m",)"
     R"("calibrated_on":"2031-01-10","calibration_due":"2032-01-10"})");
  ok(R"({"do":"set_vehicle","registration":"AB 12","front_axle_load":"880 kg",)"
     R"("drag_link_side":"left","steering_arm_on_cap":"no","lubricant":"grease",)"
     R"("shim_ends":"top","shim_layout":"cap_flange","swivel_bearing":"taper",)"
     R"("drag_link_fixes_to":"steering_arm","damper_fixes_to":"track_rod",)"
     R"("disc_mount":"outside","wheel_bearing":"end_float","abs_lead":"no"})");
  if (!vehicleExtras.empty()) {
    ok(R"({"do":"set_vehicle","registration":"AB 12")" + vehicleExtras + "}");
  }
  setUpSpecs();
  ok(R"({"do":"open_job","registration":"AB 12","odometer":"120500"})");
}

void Shop::drive(model::ShakeResult shake, model::RoadTestWhen when) {
  model::RoadTest test;
  test.when = when;
  test.shake = shake;
  model::Entry entry;
  entry.id = *book->nextEntryId();
  entry.job = model::JobId{job};
  entry.doneAt = entry.enteredAt = clock.now();
  entry.programVersion = "1";
  entry.payload = test;
  const model::Entry one[] = {entry};
  const auto done = book->append(one);
  EXPECT_TRUE(done) << done.error().key << done.error().detail("text");
  reopen();
}

void Shop::spec(const std::string& rest) {
  ok(R"({"do":"set_spec","registration":"AB 12",)" + rest + "}");
}

void Shop::setUpSpecs() {
  spec(R"("key":"swivel.starting_force","type":"limit","min":"15 N","max":"26 N")");
  spec(R"("key":"swivel.dressed_pull","type":"limit","max":"60 N")");
  spec(R"("key":"swivel.end_float","type":"limit","max":"0.1 mm")");
  spec(R"("key":"wheel_bearing.end_float","type":"limit","min":"0.02 mm","max":"0.09 mm")");
  spec(R"("key":"shims.sizes","type":"text","text":"0.1 0.15 0.25 0.5 mm")");
  spec(R"("key":"shims.max_pack","type":"value","value":"1.2 mm")");
  spec(R"("key":"shims.max_count","type":"value","value":"4")");
  for (const char* line :
       {R"("key":"swivel_cap_bolts","type":"torque","value":"52 N m","count":4,"pattern":"cross")",
        R"("key":"lower_swivel_cap_bolts","type":"torque","value":"52 N m","count":4)",
        R"("key":"steering_arm_nuts","type":"torque","value":"66 N m","count":4)",
        R"("key":"seal_retainer_bolts","type":"torque","value":"9 N m","count":6)",
        R"("key":"track_rod_nut","type":"torque","value":"36 N m","count":1)",
        R"("key":"drag_link_nut","type":"torque","value":"36 N m","count":1)",
        R"("key":"damper_nut","type":"torque","value":"31 N m","count":2)",
        R"("key":"caliper_bolts","type":"torque","value":"79 N m","count":2)",
        R"("key":"stub_axle_bolts","type":"torque","value":"60 N m","count":6)",
        R"("key":"hub_nut","type":"torque","value":"68 N m","count":1)",
        R"("key":"drive_flange_bolts","type":"torque","value":"41 N m","count":6)",
        R"("key":"wheel_nuts","type":"torque","value":"108 N m","count":5,"pattern":"star")"}) {
    spec(line);
  }
}

}  // namespace sw::test
