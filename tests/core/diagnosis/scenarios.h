// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <ostream>
#include <string>
#include <utility>
#include <vector>

#include "model/words.h"

// What a driver tells, what was checked, and what a mechanic of long standing would think and do.
// Source of every row: common practice, no source. They were written before any number of the
// shipped table was tuned to them.

namespace sw::diagnosis::testing {

struct Scenario {
  std::string name;
  std::vector<std::pair<std::string, std::string>> answers = {};  ///< feature, word
  std::vector<std::string> nothing = {};                          ///< checks that found nothing
  std::vector<std::string> repaired = {};                         ///< causes, in vain

  std::string preset = "full_shop";
  std::optional<model::DiscMount> discMount = std::nullopt;
  std::string setup = "ground";
  std::vector<std::string> leftOut = {};

  std::vector<std::string> first = {};                       ///< the cause that leads
  std::vector<std::string> amongTwo = {};                    ///< causes among the first two
  std::vector<std::string> amongFour = {};                   ///< causes among the first four
  std::vector<std::pair<std::string, double>> atLeast = {};  ///< cause, share
  std::vector<std::pair<std::string, double>> atMost = {};

  std::vector<std::string> beginsWith = {};  ///< one of these after the walk-round
  std::vector<std::pair<std::string, std::size_t>> within = {};  ///< check, its place after it
  /// The first comes before the second, or the second is not planned.
  std::vector<std::pair<std::string, std::string>> before = {};
  std::vector<std::string> planned = {};
  std::vector<std::string> unplanned = {};
  double ofBulletin = 1;  ///< minutes at most, as a part of those of the fixed order

  friend void PrintTo(const Scenario& scenario, std::ostream* out) { *out << scenario.name; }
};

inline const std::vector<Scenario>& scenarios() {
  static const std::vector<Scenario> rows{
      // Brakes.
      {.name = "ShakeOnlyUnderBraking",
       .answers = {{"steady", "no"}, {"braking", "only"}},
       .first = {"disc"},
       .atLeast = {{"disc", .5}},
       .within = {{"discs", 3}},
       .before = {{"discs", "balance"}, {"discs", "swivel_pull"}, {"discs", "damper"}},
       .ofBulletin = .95},
      {.name = "ShakeOnlyUnderBrakingSinceTheBrakesWereDone",
       .answers = {{"braking", "only"}, {"recent_work", "brakes_or_hub"}},
       .first = {"disc"},
       .atLeast = {{"disc", .7}},
       .within = {{"discs", 2}}},
      {.name = "BrakingSetsItOffAndItStays",
       .answers = {{"braking", "starts_and_stays"}},
       .amongTwo = {"arm_bush"},
       .amongFour = {"arm_bush", "swivel_preload", "swivel_wear"},
       .atMost = {{"disc", .03}},
       .beginsWith = {"arm_bushes", "joints", "panhard", "spring_clamps", "rock_wheels"},
       .within = {{"arm_bushes", 3}},
       .before = {{"arm_bushes", "discs"}, {"rock_wheels", "discs"}, {"swivel_pull", "discs"}}},
      {.name = "BrakingSetsItOffWithAKnock",
       .answers = {{"braking", "starts_and_stays"}, {"knocks", "yes"}},
       .first = {"arm_bush"},
       .atMost = {{"disc", .02}},
       .within = {{"arm_bushes", 2}},
       .before = {{"rock_wheels", "discs"}}},
      {.name = "BrakingOrABumpSetsItOff",
       .answers = {{"braking", "starts_and_stays"},
                   {"after_bump", "yes"},
                   {"goes_on_slower", "yes"}},
       .first = {"swivel_preload"},
       .amongFour = {"swivel_wear"},
       .atMost = {{"disc", .01}, {"wheel_unbalance", .01}},
       .planned = {"rock_wheels", "swivel_pull"}},
      {.name = "OneHotWheelAndAPull",
       .answers = {{"one_hot", "yes"}, {"pulls", "yes"}},
       .first = {"caliper"},
       .atLeast = {{"caliper", .6}},
       .within = {{"spin_wheels", 2}},
       .ofBulletin = .75},

      // A band of speeds on a smooth road.
      {.name = "ShakeAtASteadySpeed",
       .answers = {{"steady", "yes"}, {"braking", "no"}, {"follows_speed", "yes"}},
       .amongTwo = {"wheel_unbalance", "tyre"},
       .atLeast = {{"wheel_fasteners", .005}},
       .beginsWith = {"tyres_and_rims", "tyre_runout", "balance"},
       .within = {{"balance", 4}},
       .before = {{"tyres_and_rims", "balance"},
                  {"balance", "damper"},
                  {"balance", "swivel_pull"},
                  {"balance", "caster"},
                  {"joints", "damper"},
                  {"arm_bushes", "damper"},
                  {"damper", "swivel_pull"}},
       .planned = {"balance"}},
      {.name = "ShakeAtASteadySpeedAndNothingIsLoose",
       .answers = {{"steady", "yes"},
                   {"follows_speed", "yes"},
                   {"wanders", "no"},
                   {"after_bump", "no"},
                   {"knocks", "no"}},
       .amongTwo = {"wheel_unbalance", "tyre"},
       .atMost = {{"swivel_preload", .03}, {"rod_joints", .03}},
       .within = {{"balance", 4}},
       .before = {{"balance", "joints"}, {"balance", "arm_bushes"}, {"balance", "rock_wheels"}}},
      {.name = "ShakeAtASteadySpeedAndNoMoreIsKnown",
       .answers = {{"steady", "yes"}},
       .amongTwo = {"wheel_unbalance", "tyre"},
       .before = {{"tyres_and_rims", "balance"}, {"balance", "swivel_pull"}},
       .planned = {"tyres_and_rims", "balance"}},
      {.name = "NewTyres",
       .answers = {{"steady", "yes"}, {"follows_speed", "yes"}, {"recent_work", "tyres_or_wheels"}},
       .first = {"wheel_unbalance"},
       .amongFour = {"tyre", "pressure_or_mud"},
       .atLeast = {{"hub_face", .04}, {"wheel_fasteners", .01}},
       .within = {{"tyres_and_rims", 2}, {"balance", 4}}},
      {.name = "ASteadyShakeThatPulls",
       .answers = {{"steady", "yes"}, {"pulls", "yes"}, {"wanders", "no"}},
       .first = {"tyre"},
       .amongFour = {"pressure_or_mud"},
       .beginsWith = {"tyres_and_rims", "tyre_runout"}},
      {.name = "ASteadyShakeWithoutABalancer",
       .answers = {{"steady", "yes"}, {"follows_speed", "yes"}},
       .preset = "no_balancer",
       .amongTwo = {"wheel_unbalance", "tyre"},
       .before = {{"tyres_and_rims", "swap_wheels"}},
       .planned = {"swap_wheels", "tyres_and_rims"},
       .unplanned = {"balance", "caster"}},
      {.name = "ASteadyShakeInTheDriveway",
       .answers = {{"steady", "yes"}, {"follows_speed", "yes"}, {"after_bump", "no"}},
       .preset = "driveway",
       .amongTwo = {"wheel_unbalance", "tyre"},
       .before = {{"swap_wheels", "swivel_pull"}},
       .planned = {"swap_wheels"},
       .unplanned = {"balance", "caster"}},
      {.name = "BalanceAndRunoutWereRight",
       .answers = {{"steady", "yes"}, {"follows_speed", "yes"}, {"recent_work", "tyres_or_wheels"}},
       .nothing = {"walk_round", "tyres_and_rims", "tyre_runout", "balance"},
       .setup = "wheels_off",
       .amongTwo = {"hub_face"},
       .beginsWith = {"hub_faces"}},
      {.name = "TheWheelsWereBalancedAlready",
       .answers = {{"steady", "yes"}, {"follows_speed", "yes"}},
       .repaired = {"wheel_unbalance"},
       .first = {"tyre"},
       .atMost = {{"wheel_unbalance", .15}},
       .beginsWith = {"tyres_and_rims", "tyre_runout"},
       .planned = {"tyre_runout"}},
      {.name = "FeltInTheSeat",
       .answers = {{"felt_in_seat", "yes"},
                   {"follows_speed", "yes"},
                   {"braking", "no"},
                   {"wanders", "no"}},
       .amongTwo = {"propshaft"},
       .within = {{"propshaft", 3}}},
      {.name = "FeltInTheSeatSinceItWasLifted",
       .answers = {{"felt_in_seat", "yes"},
                   {"follows_speed", "yes"},
                   {"recent_work", "springs_or_bushes"}},
       .first = {"propshaft"},
       .beginsWith = {"propshaft"},
       .ofBulletin = .8},

      // Set off by a bump, and it goes on by itself.
      {.name = "ABumpSetsItOff",
       .answers = {{"after_bump", "yes"}, {"goes_on_slower", "yes"}, {"follows_speed", "no"}},
       .amongFour = {"swivel_preload", "rod_joints"},
       .atMost = {{"wheel_unbalance", .02}, {"tyre", .03}, {"disc", .02}},
       .beginsWith = {"joints", "panhard", "arm_bushes", "rock_wheels"},
       .before = {{"joints", "balance"}, {"rock_wheels", "balance"}, {"joints", "discs"}},
       .planned = {"swivel_pull", "damper"},
       .ofBulletin = .95},
      {.name = "ABumpSetsItOffAndTheRimHasPlay",
       .answers = {{"after_bump", "yes"}, {"wanders", "yes"}},
       .first = {"rod_joints"},
       .amongFour = {"panhard"},
       .beginsWith = {"joints", "panhard", "steering_box"},
       .within = {{"joints", 2}, {"panhard", 3}}},
      {.name = "ABumpSetsItOffAndNothingHasPlay",
       .answers =
           {{"after_bump", "yes"}, {"goes_on_slower", "yes"}, {"wanders", "no"}, {"knocks", "no"}},
       .amongTwo = {"swivel_preload", "damper"},
       .planned = {"rock_wheels", "swivel_pull"}},
      {.name = "PlayWasLookedForInVain",
       .answers = {{"after_bump", "yes"}, {"goes_on_slower", "yes"}},
       .nothing = {"walk_round", "joints", "panhard", "arm_bushes", "rock_wheels"},
       .amongTwo = {"swivel_preload", "damper"},
       .atMost = {{"rod_joints", .05}, {"panhard", .05}},
       .beginsWith = {"swivel_pull", "damper"}},
      {.name = "ABumpSetsItOffButJointsCannotBeChecked",
       .answers = {{"after_bump", "yes"}, {"goes_on_slower", "yes"}, {"follows_speed", "no"}},
       .leftOut = {"joints", "panhard"},
       .amongFour = {"swivel_preload", "rod_joints"},
       .planned = {"arm_bushes", "rock_wheels", "swivel_pull", "damper"},
       .unplanned = {"joints", "panhard"}},
      {.name = "BounceAfterADip",
       .answers = {{"bounces", "yes"}},
       .first = {"shock_absorbers"},
       .within = {{"shock_absorbers", 2}},
       .ofBulletin = .9},

      // Play and wandering.
      {.name = "ItWandersAndHardlyShakes",
       .answers = {{"wanders", "yes"}, {"steady", "no"}, {"after_bump", "no"}},
       .amongFour = {"rod_joints"},
       .beginsWith = {"joints", "steering_box", "panhard"},
       .within = {{"joints", 2}, {"steering_box", 5}}},
      {.name = "AKnockSinceTheSpringsWereDone",
       .answers = {{"knocks", "yes"}, {"recent_work", "springs_or_bushes"}},
       .amongFour = {"panhard", "arm_bush", "spring_clamps"},
       .within = {{"panhard", 4}, {"spring_clamps", 4}}},
      {.name = "LiftedAndItWandersAndPulls",
       .answers = {{"recent_work", "springs_or_bushes"},
                   {"wanders", "yes"},
                   {"pulls", "yes"},
                   {"braking", "no"}},
       .amongTwo = {"caster"},
       .planned = {"caster"}},
      {.name = "SteeringWorkAndItWanders",
       .answers = {{"recent_work", "steering"}, {"wanders", "yes"}, {"braking", "no"}},
       .amongTwo = {"rod_joints"},
       .amongFour = {"toe"},
       .within = {{"joints", 2}},
       .before = {{"joints", "toe"}},
       .planned = {"toe"}},
      {.name = "ALooseSteeringBox",
       .answers = {{"wanders", "yes"},
                   {"knocks", "yes"},
                   {"recent_work", "steering"},
                   {"after_bump", "no"}},
       .amongFour = {"box_mounting", "rod_joints"},
       .within = {{"steering_box", 3}, {"joints", 3}}},
      {.name = "HubWorkAndItWanders",
       .answers = {{"recent_work", "brakes_or_hub"}, {"wanders", "yes"}, {"braking", "no"}},
       .first = {"wheel_bearing"},
       .within = {{"rock_wheels", 3}}},
      {.name = "TheWheelsWereOffAndItKnocks",
       .answers = {{"knocks", "yes"}, {"recent_work", "tyres_or_wheels"}},
       .first = {"wheel_fasteners"}},
      {.name = "AKerbWasHitAndItPulls",
       .answers = {{"recent_work", "hit"}, {"pulls", "yes"}},
       .first = {"tyre"},
       .atLeast = {{"toe", .015}},
       .beginsWith = {"tyres_and_rims", "tyre_runout"}},

      // Where the hands are.
      {.name = "NothingIsKnown",
       .first = {"wheel_unbalance"},
       .beginsWith = {"joints", "panhard", "tyres_and_rims", "arm_bushes", "spring_clamps",
                      "steering_box"},
       .before = {{"joints", "balance"}, {"panhard", "balance"}}},
      {.name = "UnderTheWheelAlready",
       .nothing = {"walk_round"},
       .preset = "no_balancer",
       .setup = "lifted",
       .beginsWith = {"rock_wheels", "spin_wheels"},
       .within = {{"rock_wheels", 2}, {"spin_wheels", 3}}},
      {.name = "UnderTheWheelAlreadyAndOneIsHot",
       .answers = {{"one_hot", "yes"}},
       .nothing = {"walk_round"},
       .setup = "lifted",
       .first = {"caliper"},
       .beginsWith = {"spin_wheels"}}};
  return rows;
}

}  // namespace sw::diagnosis::testing
