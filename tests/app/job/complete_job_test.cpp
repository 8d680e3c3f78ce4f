// SPDX-License-Identifier: GPL-3.0-or-later
#include "complete_job.h"
#include "store/check_book.h"
#include "workshop/check_verdicts.h"

namespace sw::test {
namespace {

struct Axle {
  const char* name;
  const char* extras;  ///< fields of set_vehicle
  const char* layout;
};

void PrintTo(const Axle& axle, std::ostream* out) {
  *out << axle.name;
}

class WholeJob : public testing::TestWithParam<Axle> {};

TEST_P(WholeJob, IsSignedOffAndTheBookIsSound) {
  Shop shop;
  shop.setUp(GetParam().extras);
  app::demo::Mechanic mechanic(*shop.workshop, shop.clock, "KL", 7);
  workWholePlan(shop, mechanic, situation(), "swivel-preload");
  const auto refusals = workshop::againstSignOff(shop.state());
  ASSERT_TRUE(refusals.empty()) << listed(refusals);
  shop.ok(R"({"do":"sign_off"})");
  const auto state = shop.state();
  EXPECT_EQ(state.closed->outcome, model::JobOutcome::SignedOff);
  for (const auto& item : state.ledger) EXPECT_TRUE(item.clear()) << item.name;
  const std::array<store::BookCheck, 1> more{&workshop::checkVerdicts};
  const auto report = store::checkBook(shop.path, shop.clock, more);
  ASSERT_TRUE(report);
  EXPECT_TRUE(report->sound()) << (report->findings.empty() ? "" : report->findings.front().key);
}

INSTANTIATE_TEST_SUITE_P(
    Axles, WholeJob,
    testing::Values(
        Axle{"FlangeGrease", "", ""},
        Axle{"InnerOilBoth", R"(,"shim_layout":"inner","lubricant":"oil","shim_ends":"both")", ""},
        Axle{
            "ArmOnCap",
            R"(,"steering_arm_on_cap":"yes","drag_link_side":"right","damper_fixes_to":"drag_link")",
            ""},
        Axle{"BottomShims", R"(,"shim_ends":"bottom","disc_mount":"behind_hub","abs_lead":"yes")",
             ""},
        Axle{"DamperOnFrame", R"(,"damper_fixes_to":"frame","locking_hubs":"yes")", ""}));

TEST(WholeJobStory, AShortPackASecondPackAndADriveThatStillShakes) {
  Shop shop;
  shop.setUp();
  auto what = situation();
  what.left.interferenceMillimetres = 0.36;    // short with the pack found
  what.afterDrive = model::ShakeResult::Less;  // and the first drive still shakes
  app::demo::Mechanic mechanic(*shop.workshop, shop.clock, "KL", 11);
  workWholePlan(shop, mechanic, what, "swivel-preload");
  const auto state = shop.state();
  const auto left = state.newestRun("fit-shims-and-pull", model::Side::Left);
  ASSERT_TRUE(left);
  EXPECT_GE(state.runs[*left].fact.round, 3);
  std::size_t drives = 0;
  for (const auto* entry : state.valid) {
    const auto* drive = model::as<model::RoadTest>(*entry);
    if (drive != nullptr && drive->when == model::RoadTestWhen::After) ++drives;
  }
  EXPECT_EQ(drives, 2U);
  const auto refusals = workshop::againstSignOff(state);
  EXPECT_TRUE(refusals.empty()) << listed(refusals);
}

TEST(WholeJobStory, DeclinedWorkIsNeverSignedOffAsDone) {
  Shop shop;
  shop.setUp();
  app::demo::Mechanic mechanic(*shop.workshop, shop.clock, "KL", 5);
  workWholePlan(shop, mechanic, situation(), "swivel-pull-only");
  shop.ok(R"({"do":"decline","what":"new swivel seals","words":"next year"})");
  const auto error = shop.refused(R"({"do":"sign_off"})", "workshop.sign_off_refused");
  EXPECT_EQ(error.detail("refusal"), "declined||new swivel seals");
  shop.ok(R"({"do":"close","outcome":"declined","reason":"seals are weeping, owner informed"})");
  EXPECT_EQ(shop.state().closed->outcome, model::JobOutcome::Declined);
}

TEST(WholeJobStory, AfterAKillTheProgramKnowsWhereItStood) {
  Shop shop;
  shop.setUp();
  shop.ok(R"({"do":"start_plan","plan":"swivel-preload"})");
  app::demo::Mechanic mechanic(*shop.workshop, shop.clock, "KL", 5);
  const auto worked =
      mechanic.work({shop.job}, situation(), [](const workshop::JobState& state, std::size_t step) {
        return state.stepName(step).starts_with("fit-shims-and-pull/cap_torque");
      });
  ASSERT_TRUE(worked);
  shop.ok(R"({"do":"ledger","item":"upper_cap","side":"left","state":"hand_tight","done":2,)"
          R"("count":4})");
  const auto before = shop.state();
  const auto expected = before.stepName(*workshop::resumePoint(before).step);
  shop.workshop.reset();
  shop.book.reset();
  auto opened = store::Book::open(shop.path, store::OpenMode::ReadWrite, shop.clock);
  ASSERT_TRUE(opened) << opened.error().key;
  shop.book = std::move(*opened);
  shop.reopen();
  shop.clock.advanceMilliseconds(24LL * 3600 * 1000);
  const auto state = shop.state();
  const auto point = workshop::resumePoint(state);
  ASSERT_TRUE(point.step);
  bool handTight = false;
  for (const auto index : point.handTight) {
    const auto& item = state.ledger[index];
    if (item.item != "upper_cap" || item.side != model::Side::Left) continue;
    handTight = item.done == 2 && item.count == 4;
  }
  EXPECT_TRUE(handTight);
  // The support is asked again on another day, before anything else.
  EXPECT_EQ(point.holdsToAnswer.size(), 1U);
  EXPECT_EQ(state.stepName(*point.step), "make-safe-and-lift/support");
  EXPECT_TRUE(expected.starts_with("fit-shims-and-pull/")) << expected;
}

}  // namespace
}  // namespace sw::test
