// SPDX-License-Identifier: GPL-3.0-or-later
#include "phrasing/names.h"

#include <set>

#include "model/entry.h"
#include "text.h"

namespace sw::phrasing {
namespace {

using model::HandOfDrive;
using model::Side;

template <class E>
void expectDistinctNames() {
  std::set<std::string> names;
  for (const auto& [value, word] : Words<E>::table) {
    const std::string name = plain(nameOf(value));
    EXPECT_FALSE(name.empty()) << word;
    EXPECT_TRUE(names.insert(name).second) << word << ": " << name;
    EXPECT_EQ(name.find('_'), std::string::npos) << name;
  }
}

TEST(Names, EveryStoredWordHasItsOwnName) {
  expectDistinctNames<model::InstrumentKind>();
  expectDistinctNames<model::LedgerState>();
  expectDistinctNames<model::SupportKind>();
  expectDistinctNames<model::ShimLayout>();
  expectDistinctNames<model::PackRole>();
  expectDistinctNames<model::ShimPlace>();
  expectDistinctNames<model::JobOutcome>();
  expectDistinctNames<model::CorrectionReason>();
  expectDistinctNames<model::ShakeResult>();
  expectDistinctNames<model::SpeedSource>();
}

TEST(Names, EveryQuantityHasItsOwnName) {
  std::set<std::string> names;
  std::set<QuantityKind> kinds;
  for (const Unit& unit : allUnits()) kinds.insert(unit.kind);
  for (const QuantityKind kind : kinds) {
    EXPECT_TRUE(names.insert(plain(nameOf(kind))).second) << word(kind);
  }
  EXPECT_FALSE(names.contains(""));
  EXPECT_GE(names.size(), 11U);
}

TEST(Names, VerdictsAreTheWordsOfTheTrade) {
  EXPECT_EQ(plain(nameOf(Verdict::Within)), "within");
  EXPECT_EQ(plain(nameOf(Verdict::Outside)), "outside");
  EXPECT_EQ(plain(nameOf(Verdict::Undecided)), "undecided");
  EXPECT_EQ(plain(nameOf(Verdict::Provisional)), "provisional");
  EXPECT_EQ(plain(nameOf(Verdict::InstrumentTooCoarse)), "instrument too coarse");
  EXPECT_EQ(plain(nameOf(Verdict::NoLimit)), "no limit on file");
}

template <std::size_t... I>
void expectFactNames(std::index_sequence<I...>) {
  const auto check = [](std::string_view kind) {
    const std::string name = plain(factName(kind));
    EXPECT_FALSE(name.empty());
    EXPECT_EQ(name.find('_'), std::string::npos) << kind << " has no name";
  };
  (check(std::variant_alternative_t<I, model::Payload>::kKind), ...);
}

TEST(Names, EveryFactOfTheBookHasAName) {
  expectFactNames(std::make_index_sequence<std::variant_size_v<model::Payload>>());
  EXPECT_EQ(plain(factName("moon_phase")), "moon_phase");
}

TEST(Names, WhatASearchFound) {
  std::set<std::string> names;
  for (const char* kind : {"vehicle", "request", "complaint", "part", "note"}) {
    EXPECT_TRUE(names.insert(plain(foundName(kind))).second) << kind;
  }
  EXPECT_TRUE(names.contains("owner's words"));
  EXPECT_EQ(plain(foundName("tea_break")), "tea_break");
}

TEST(Names, LinesOfASpecSheet) {
  EXPECT_EQ(plain(specKeyName("wheel_nuts")), "wheel nuts");
  EXPECT_EQ(plain(specKeyName("swivel.end_float")), "swivel end float");
  EXPECT_EQ(plain(specKeyName("shop.own_line")), "shop.own_line");
}

TEST(Names, HoldsByKey) {
  for (const char* key :
       {"support", "brakes_and_steering", "wheel_nuts", "walk_round", "go_no_go"}) {
    EXPECT_NE(plain(holdName(key)), key);
  }
  EXPECT_EQ(plain(holdName("tea_break")), "tea_break");
}

std::string side(Side which, SideStyle style, std::optional<HandOfDrive> hand,
                 std::optional<HandOfDrive> traffic) {
  model::Vehicle vehicle;
  vehicle.handOfDrive = hand;
  vehicle.trafficSide = traffic;
  return plain(sideName(which, sideNaming(style, vehicle)));
}

TEST(SideName, LeftAndRight) {
  EXPECT_EQ(side(Side::Left, SideStyle::LeftRight, HandOfDrive::Right, HandOfDrive::Left), "left");
  EXPECT_EQ(side(Side::Right, SideStyle::LeftRight, {}, {}), "right");
}

TEST(SideName, TheDriverSitsOnTheHandOfDrive) {
  EXPECT_EQ(side(Side::Left, SideStyle::DriverPassenger, HandOfDrive::Left, {}), "driver's side");
  EXPECT_EQ(side(Side::Right, SideStyle::DriverPassenger, HandOfDrive::Left, {}),
            "passenger's side");
  EXPECT_EQ(side(Side::Right, SideStyle::DriverPassenger, HandOfDrive::Right, {}), "driver's side");
  EXPECT_EQ(side(Side::Left, SideStyle::DriverPassenger, HandOfDrive::Right, {}),
            "passenger's side");
}

// Nearside: the side next to the kerb (dictionary sense, from memory); traffic that keeps left has
// it on its left, wherever the driver sits.
TEST(SideName, TheNearsideIsWhereTheKerbIs) {
  EXPECT_EQ(side(Side::Left, SideStyle::NearsideOffside, HandOfDrive::Right, HandOfDrive::Left),
            "nearside");
  EXPECT_EQ(side(Side::Left, SideStyle::NearsideOffside, HandOfDrive::Left, HandOfDrive::Left),
            "nearside");
  EXPECT_EQ(side(Side::Left, SideStyle::NearsideOffside, HandOfDrive::Left, HandOfDrive::Right),
            "offside");
  EXPECT_EQ(side(Side::Right, SideStyle::NearsideOffside, HandOfDrive::Left, HandOfDrive::Right),
            "nearside");
}

TEST(SideName, NeverGuessed) {
  EXPECT_EQ(side(Side::Left, SideStyle::DriverPassenger, {}, HandOfDrive::Left), "left");
  EXPECT_EQ(side(Side::Right, SideStyle::NearsideOffside, HandOfDrive::Left, {}), "right");
}

TEST(PullStateWords, SayEveryPart) {
  EXPECT_EQ(
      plain(stateInWords({})),
      "seal off, rods off, damper off, no sealant, old grease, first movement, straight ahead");
  const model::PullState dressed{model::OnOff::On,
                                 model::OnOff::On,
                                 model::OnOff::On,
                                 model::Sealant::Cured,
                                 model::Grease::Fresh,
                                 model::Movement::Steady,
                                 model::RestPosition::RightFifteen};
  EXPECT_EQ(plain(stateInWords(dressed)),
            "seal on, rods on, damper on, sealant cured, fresh grease, steady movement, 15° to the "
            "right");
}

TEST(PullStateWords, DifferentStatesReadDifferently) {
  std::set<std::string> texts;
  std::size_t count = 0;
  for (const auto& [seal, sealWord] : Words<model::OnOff>::table) {
    for (const auto& [sealant, sealantWord] : Words<model::Sealant>::table) {
      for (const auto& [grease, greaseWord] : Words<model::Grease>::table) {
        for (const auto& [movement, movementWord] : Words<model::Movement>::table) {
          for (const auto& [position, positionWord] : Words<model::RestPosition>::table) {
            model::PullState state;
            state.seal = seal;
            state.rods = seal == model::OnOff::On ? model::OnOff::Off : model::OnOff::On;
            state.sealant = sealant;
            state.grease = grease;
            state.movement = movement;
            state.position = position;
            texts.insert(plain(stateInWords(state)));
            ++count;
          }
        }
      }
    }
  }
  EXPECT_EQ(texts.size(), count);
}

}  // namespace
}  // namespace sw::phrasing
