// SPDX-License-Identifier: GPL-3.0-or-later
#include "shop_fixture.h"

namespace sw::test {
namespace {

TEST(ShopActions, ARegistrationAloneStartsAJob) {
  Shop shop;
  const auto outcome = shop.ok(R"({"do":"open_job","registration":"NEW 1"})");
  EXPECT_TRUE(Shop::told(outcome, "vehicle_created"));
  EXPECT_EQ(shop.state().vehicle.fact.registration, "NEW 1");
}

TEST(ShopActions, WhoIsAskedOnceThereArePeople) {
  Shop shop;
  shop.ok(R"({"do":"open_job","registration":"NEW 1"})");
  shop.ok(R"({"do":"note","text":"nobody on file yet"})");
  shop.ok(R"({"do":"set_person","initials":"KL","name":"Kaya Lindner"})");
  EXPECT_EQ(shop.refused(R"({"do":"note","text":"who?"})", "workshop.who").field, "by");
  shop.refused(R"({"do":"note","text":"x","by":"ZZ"})", "workshop.no_person");
}

TEST(ShopActions, AnotherInstrumentReadsWhatItsGraduationIsTypedIn) {
  Shop shop;
  shop.setUp();
  const auto kindOf = [&](const std::string& name, const std::string& graduation) {
    shop.ok(R"({"do":"set_instrument","name":")" + name + R"(","type":"other","graduation":")" +
            graduation + "\"}");
    return shop.workshop->shop().value()->instrumentByName(name)->fact.graduation.kind;
  };
  EXPECT_EQ(kindOf("camber gauge", "0,5 deg"), QuantityKind::Angle);
  EXPECT_EQ(kindOf("balancing machine", "5 g"), QuantityKind::Mass);
  EXPECT_EQ(kindOf("toe bar", "0.5 mm"), QuantityKind::Length);
  EXPECT_EQ(kindOf("bare", "1"), QuantityKind::Length);
}

TEST(ShopActions, TwoPeopleCannotShareInitials) {
  Shop shop;
  shop.ok(R"({"do":"set_person","initials":"KL","name":"Kaya Lindner"})");
  shop.ok(R"({"do":"set_person","initials":"RT","name":"Rufus Thorne"})");
  shop.refused(R"({"do":"set_person","initials":"RT","new_initials":"KL"})",
               "workshop.initials_taken");
}

TEST(ShopActions, FiguresInTwoUnitsThatDisagreeAreQueriedNeverChanged) {
  Shop shop;
  shop.setUp();
  // 100 N m is 73.8 lbf ft: common practice, no source.
  const auto outcome =
      shop.ok(R"({"do":"set_spec","registration":"AB 12","key":"wheel_nuts","type":"torque",)"
              R"("value":"100 N m","second_value":"72 lbf ft"})");
  ASSERT_TRUE(Shop::told(outcome, "figures_disagree"));
  EXPECT_EQ(Shop::value(outcome, "figures_disagree", "first_converted"), "73.8 lbf ft");
  EXPECT_EQ(Shop::value(outcome, "figures_disagree", "beside_first"), "74 lbf ft");
  const auto* spec = (*shop.workshop->shop())->spec(shop.state().opened.vehicle, "wheel_nuts");
  ASSERT_NE(spec, nullptr);
  EXPECT_EQ(spec->fact.value->text(), "100 N m");
  EXPECT_EQ(spec->fact.secondValue->text(), "72 lbf ft");
}

TEST(ShopActions, FiguresInTwoUnitsThatAgreeAreNotQueried) {
  Shop shop;
  shop.setUp();
  const auto outcome =
      shop.ok(R"({"do":"set_spec","registration":"AB 12","key":"caliper_bolts","type":"torque",)"
              R"("value":"79 N m","second_value":"58 lbf ft"})");
  EXPECT_FALSE(Shop::told(outcome, "figures_disagree"));
}

TEST(ShopActions, ACopiedSheetCarriesOneSource) {
  Shop shop;
  shop.setUp();
  shop.ok(R"({"do":"set_vehicle","registration":"CD 34"})");
  shop.ok(R"({"do":"copy_spec","from":"AB 12","to":"CD 34"})");
  shop.ok(
      R"({"do":"source_spec","registration":"CD 34","source":"owner's handbook, 3rd printing"})");
  const auto* vehicle = (*shop.workshop->shop())->vehicleByRegistration("CD 34");
  ASSERT_NE(vehicle, nullptr);
  const auto sheet = (*shop.workshop->shop())->specSheet(vehicle->fact.vehicle);
  EXPECT_GT(sheet.size(), 10U);
  for (const auto* line : sheet) EXPECT_EQ(line->fact.source, "owner's handbook, 3rd printing");
}

TEST(ShopActions, WrongKindNamesTheFieldAndNothingChanges) {
  Shop shop;
  shop.setUp();
  const auto before = shop.book->nextEntryId();
  const auto error =
      shop.refused(R"({"do":"set_vehicle","registration":"AB 12","front_axle_load":"880 mm"})",
                   "units.wrong_kind");
  EXPECT_EQ(error.field, "front_axle_load");
  EXPECT_EQ(shop.book->nextEntryId()->value, before->value);
}

// The check digit of seventeen ones is 1, of 12345678?00000000 it is 5 (tests/core/model/vin_test).
TEST(ShopActions, AVinThatLooksMistypedIsToldAndTaken) {
  Shop shop;
  shop.setUp();
  const auto vehicle = [&](const std::string& rest) {
    return shop.ok(R"({"do":"set_vehicle","registration":"AB 12",)" + rest + "}");
  };
  const auto hint = [&](const std::string& vin) {
    return Shop::value(vehicle(R"("vin":")" + vin + "\""), "vin_hint", "hint");
  };
  EXPECT_EQ(hint("12345678000000000"), "check_digit_differs");
  EXPECT_EQ(hint("1234567850000000O"), "forbidden_character");
  EXPECT_EQ(hint("QI 1234"), "not_seventeen");
  EXPECT_EQ(shop.state().vehicle.fact.vin, "QI 1234");
  EXPECT_FALSE(Shop::told(vehicle(R"("vin":"12345678500000000")"), "vin_hint"));
  EXPECT_FALSE(Shop::told(vehicle(R"("vin":"")"), "vin_hint"));
  EXPECT_FALSE(Shop::told(vehicle(R"("owner":"Mara Quist")"), "vin_hint"));
}

TEST(ShopActions, ASpeedIsAskedWithItsInstrument) {
  Shop shop;
  shop.setUp();
  EXPECT_EQ(
      shop.refused(R"({"do":"complaint","onset_rising":"70 km/h"})", "workshop.field_needed").field,
      "speed_source");
  shop.ok(R"({"do":"complaint","onset_rising":"70 km/h","speed_source":"gps"})");
  shop.ok(R"({"do":"complaint","braking":"starts_and_stays"})");
  const auto state = shop.state();
  ASSERT_TRUE(state.complaint);
  EXPECT_EQ(state.complaint->onsetRising->text(), "70 km/h");
  EXPECT_EQ(state.complaint->braking, model::BrakingAnswer::StartsAndStays);
  EXPECT_EQ(state.complaint->afterBump, model::YesNo::Unknown);
}

TEST(ShopActions, MoneyIsReadToTheCent) {
  Shop shop;
  shop.setUp();
  shop.ok(R"({"do":"use_part","name":"grease","quantity":"0.4 kg","unit_price":"11,50"})");
  shop.refused(R"({"do":"use_part","name":"grease","unit_price":"1.005"})", "workshop.not_money");
  const auto state = shop.state();
  const auto* part = model::as<model::PartUsed>(*state.valid.back());
  ASSERT_NE(part, nullptr);
  EXPECT_EQ(part->unitPriceMinor, 1150);
  EXPECT_EQ(part->quantity.text(), "0.4 kg");
}

TEST(ShopActions, WhatHappensLaterCannotBeEntered) {
  Shop shop;
  shop.setUp();
  shop.refused(R"({"do":"note","text":"x","done_at":"2031-03-04T08:00+01:00"})",
               "workshop.done_in_future");
  shop.ok(R"({"do":"note","text":"yesterday","done_at":"2031-03-02T16:00+01:00"})");
  const auto state = shop.state();
  EXPECT_EQ(toIso(state.entries.back()->doneAt), "2031-03-02T16:00:00.000+01:00");
  EXPECT_EQ(state.entries.back()->enteredAt, shop.clock.now());
}

}  // namespace
}  // namespace sw::test
