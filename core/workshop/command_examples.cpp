// SPDX-License-Identifier: GPL-3.0-or-later
#include "workshop/command_examples.h"

#include <algorithm>
#include <array>

namespace sw::workshop {

namespace {

struct Example {
  std::string_view command;
  std::string_view line;
};

constexpr auto kExamples = std::to_array<Example>({
    {"set_person", R"({"do":"set_person","initials":"KL","name":"Kaya Lindner"})"},
    {"set_instrument",
     R"({"do":"set_instrument","by":"KL","name":"scale 50 N","type":"spring_scale",)"
     R"("graduation":"0.2 N","permissible_error":"0.2 N","range_max":"50 N"})"},
    {"check_instrument",
     R"({"do":"check_instrument","by":"KL","instrument":"scale 50 N","against":"2 kg of water",)"
     R"("applied":"2 kg","shown":"19.8 N","applied_uncertainty":"0.01 kg"})"},
    {"set_vehicle",
     R"({"do":"set_vehicle","by":"KL","registration":"AB 12","front_axle_load":"880 kg",)"
     R"("lubricant":"grease","shim_ends":"top","shim_layout":"cap_flange"})"},
    {"set_spec",
     R"({"do":"set_spec","by":"KL","registration":"AB 12","key":"wheel_nuts","type":"torque",)"
     R"("value":"108 N m","count":5,"pattern":"star","source":"workshop book"})"},
    {"copy_spec", R"({"do":"copy_spec","by":"KL","from":"AB 12","to":"CD 34"})"},
    {"source_spec",
     R"({"do":"source_spec","by":"KL","registration":"AB 12","source":"workshop book",)"
     R"("source_date":"2030-12-01"})"},
    {"open_job", R"({"do":"open_job","by":"KL","registration":"AB 12","odometer":"120500",)"
                 R"("request":"Shakes at about 70"})"},
    {"complaint",
     R"({"do":"complaint","onset_rising":"70 km/h","speed_source":"dial","braking":"no",)"
     R"("after_bump":"yes"})"},
    {"cause_checked",
     R"({"do":"cause_checked","cause":"tyres","excluded":true,"how":"even tread, no bulge"})"},
    {"start_plan", R"({"do":"start_plan","plan":"swivel-preload"})"},
    {"start_procedure", R"({"do":"start_procedure","procedure":"as-found-pull","sides":"left"})"},
    {"choose_support",
     R"({"do":"choose_support","step":"make-safe-and-lift/choose_support","support":"stands"})"},
    {"answer", R"({"do":"answer","step":"make-safe-and-lift/support","statement":"stand_rating",)"
               R"("answer":"900 kg"})"},
    {"do_step", R"({"do":"do_step","step":"wheels-off/wheel_off","side":"left",)"
                R"("done_at":"2031-02-24T09:57+01:00"})"},
    {"observe", R"({"do":"observe","step":"as-found-pull/feel","side":"left","key":"feel",)"
                R"("value":"smooth"})"},
    {"take_readings", R"({"do":"take_readings","step":"as-found-pull/pull_ahead","side":"left",)"
                      R"("readings":"22 19.0 19.2 19.4 N","instrument":"scale 50 N"})"},
    {"correct",
     R"({"do":"correct","entry":61,"field":"value","value":"19.1","reason":"typing_slip"})"},
    {"withdraw", R"({"do":"withdraw","entry":61,"reason_text":"the hook had slipped"})"},
    {"done_before",
     R"({"do":"done_before","job":14,"step":"fit-shims-and-pull/fit_pack","side":"left"})"},
    {"undo", R"({"do":"undo","reason_text":"meant for the other hub"})"},
    {"move_series", R"({"do":"move_series","series":58,"reason_text":"this was the right hub"})"},
    {"torque", R"({"do":"torque","step":"caliper-refit/caliper_torque","side":"left",)"
               R"("wrench":"large wrench"})"},
    {"ledger", R"({"do":"ledger","item":"upper_cap","side":"left","state":"hand_tight","done":2,)"
               R"("count":4})"},
    {"use_part",
     R"({"do":"use_part","name":"swivel grease","quantity":"0.4 kg","unit_price":"11.50",)"
     R"("consumable":true})"},
    {"shim_pack",
     R"({"do":"shim_pack","step":"fit-shims-and-pull/fit_pack","side":"left","role":"fitted",)"
     R"("shims":"0.50 + 0.25"})"},
    {"labour", R"({"do":"labour","time":"5.5 h","text":"front axle","hourly_rate":"52.00"})"},
    {"decline", R"({"do":"decline","what":"new swivel seals","words":"next year"})"},
    {"note", R"({"do":"note","text":"left hub wet"})"},
    {"calculate", R"({"do":"calculate","calculation":"starting-force","remark":"left, dressed",)"
                  R"("input":{"force":"28 N","arm":"170 mm"}})"},
    {"tell", R"({"do":"tell","feature":"braking","answer":"starts_and_stays"})"},
    {"leave_out_of_learning",
     R"({"do":"leave_out_of_learning","why":"the owner changed three parts at home"})"},
    {"take_into_learning", R"({"do":"take_into_learning"})"},
    {"put_right",
     R"({"do":"put_right","cause":"wheel_unbalance","how":"both front wheels balanced"})"},
    {"photo", R"({"do":"photo","file":"left-hub.jpg","caption":"left hub, wet"})"},
    {"start_timer",
     R"({"do":"start_timer","step":"refit-swivel/cure","side":"left","time":"12 h"})"},
    {"override", R"({"do":"override","rule":"order","step":"wheels-off/wheel_off","side":"left",)"
                 R"("why":"the wheel is off already"})"},
    {"road_test", R"({"do":"road_test","step":"road-test-after/drive","shake":"none",)"
                  R"("self_return":"returns"})"},
    {"recheck", R"({"do":"recheck","what":"wheel nuts after the first drive","on":"2031-04-10"})"},
    {"recheck_done", R"({"do":"recheck_done","recheck":240,"result":"all held"})"},
    {"sign_off", R"({"do":"sign_off"})"},
    {"close",
     R"({"do":"close","outcome":"closed_without_sign_off","reason":"owner took it home"})"},
    {"set_setting", R"({"do":"set_setting","by":"KL","key":"currency","value":"EUR"})"},
});

}  // namespace

std::string_view exampleOf(std::string_view command) {
  const auto found = std::find_if(kExamples.begin(), kExamples.end(),
                                  [&](const Example& one) { return one.command == command; });
  return found == kExamples.end() ? std::string_view{} : found->line;
}

}  // namespace sw::workshop
