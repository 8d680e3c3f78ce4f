// SPDX-License-Identifier: GPL-3.0-or-later
// The neighbours of the swivel job, each from opening to sign-off on a vehicle of the demonstration
// shop, as recorded; and without one hold answer, ledger end, part, safety reading or step.
#include <nlohmann/json.hpp>
#include <ostream>
#include <set>

#include "finished_job.h"
#include "job_scripts.h"
#include "model/json.h"
#include "store/check_book.h"
#include "workshop/check_verdicts.h"

namespace sw::test {
namespace {

struct Neighbour {
  const char* script;  ///< in tests/data/jobs
  const char* plan;
  const char* mostOfIt;  ///< a step that makes it this job and no other
  std::size_t parts;     ///< new ones that sign-off asks for, both sides counted
  std::size_t proved;    ///< readings that must be proved within
};

void PrintTo(const Neighbour& neighbour, std::ostream* out) {
  *out << neighbour.script;
}

/// Counted in the procedure files: what is fitted new, and what is proved, on this vehicle's axle.
const Neighbour kNeighbours[] = {
    // Lock of the hub nut a side; the float a side.
    {"wheel-bearing-adjust", "wheel-bearing-adjust", "wheel-bearing-set/float_proved", 2, 2},
    // And the hub seal a side.
    {"wheel-bearing-repack", "wheel-bearing-repack", "hub-repack/pack", 4, 2},
    // A unit is renewed with its shaft nut.
    {"wheel-bearing-repack-unit", "wheel-bearing-repack", "hub-repack/unit_torque", 4, 2},
    // A side: two bearings, tube seal, swivel seal, hub seal, hub lock, plug washers, track-rod
    // pin;
    // once the drag-link pin. The float and the pull a side.
    {"swivel-overhaul", "swivel-overhaul", "zero-pack/gaps", 17, 4},
    // A side: seal and wiper, plug washers.
    {"swivel-seals", "swivel-seals", "renew-swivel-seal/new_in", 4, 0},
    // Four joints with their pins.
    {"rod-ends-and-toe", "rod-ends-and-toe", "set-toe/toe_left", 8, 0},
    {"brake-disc-check", "brake-disc-check", "disc-check/thickness", 0, 2},
    // Two discs, one set of pads.
    {"brake-disc-renewal", "brake-disc-renewal", "disc-renew/pads", 3, 2},
    // And hub seal and hub lock a side; the bearing is proved as well.
    {"brake-disc-renewal-behind-hub", "brake-disc-renewal-behind-hub", "disc-renew/bolt_torque", 7,
     4},
    // A side: bushes, nuts at the axle, nut at the chassis.
    {"arm-bush-renewal", "arm-bush-renewal", "arm-bolts-at-ride-height/pivot_torque", 6, 0},
    {"panhard-bush-renewal", "panhard-bush-renewal", "panhard-bolts-at-ride-height/bolts_torque", 2,
     0},
    // The damper and its nuts.
    {"steering-damper-test", "steering-damper-test", "steering-damper/stroke", 2, 0},
};

class NeighbourJob : public testing::TestWithParam<Neighbour> {
 protected:
  /// Everything but the sign-off, which is the script's last line.
  void SetUp() override {
    for (const std::string& line : linesOf("resources/demo/shop.jsonl")) shop.ok(line);
    const auto script = linesOf("tests/data/jobs/" + std::string(GetParam().script) + ".jsonl");
    ASSERT_FALSE(script.empty());
    signOff = script.back();
    for (std::size_t i = 0; i + 1 < script.size(); ++i) {
      const auto outcome = shop.say(script[i]);
      ASSERT_TRUE(outcome) << script[i] << "\n" << Shop::describe(outcome);
    }
  }

  Shop shop;
  std::string signOff;
};

TEST_P(NeighbourJob, IsSignedOffAndTheBookIsSound) {
  std::set<std::string> done;
  const auto before = shop.state();
  for (std::size_t i = 0; i < before.steps.size(); ++i) {
    const std::string name = before.stepName(i);
    if (before.steps[i].done()) done.insert(name.substr(0, name.find(' ')));
  }
  EXPECT_TRUE(done.contains(GetParam().mostOfIt));
  std::set<std::string> run;
  for (const auto& view : before.runs) run.insert(view.fact.procedure);
  for (const std::string& procedure : shop.library.plan(GetParam().plan)->procedures) {
    EXPECT_TRUE(run.contains(procedure)) << procedure;
  }
  shop.ok(signOff);
  const auto state = shop.state();
  ASSERT_TRUE(state.closed);
  EXPECT_EQ(state.closed->outcome, model::JobOutcome::SignedOff);
  EXPECT_FALSE(state.vehicleUp);
  for (const auto& item : state.ledger) EXPECT_TRUE(item.clear()) << item.name;
  const std::array<store::BookCheck, 1> more{&workshop::checkVerdicts};
  const auto report = store::checkBook(shop.path, shop.clock, more);
  ASSERT_TRUE(report);
  EXPECT_TRUE(report->sound()) << (report->findings.empty() ? "" : report->findings.front().key);
}

TEST_P(NeighbourJob, NothingOfItCanBeLeftOut) {
  FinishedJob job(shop);
  // Support, wheel nuts twice, brakes and steering, walk-round, go / no-go: three statements each.
  EXPECT_EQ(job.missEveryStatement(), 6U * 3U);
  EXPECT_GE(job.missEveryLedgerItem(), 5U);
  EXPECT_EQ(job.missEverySingleUsePart(), GetParam().parts);
  EXPECT_EQ(job.missEverySafetyReading(), GetParam().proved);
  EXPECT_GE(job.missEveryStep(), 50U);
}

TEST_P(NeighbourJob, IsNotSignedOffWithoutTheLastHold) {
  const auto complete = shop.state();
  const auto& answer = complete.holds.back().statements.back();
  shop.ok(R"({"do":"withdraw","by":"MT","entry":)" + std::to_string(answer.entry->value) + "}");
  const auto error = shop.refused(signOff, "workshop.sign_off_refused");
  EXPECT_TRUE(error.detail("refusal").starts_with("hold_open|road-test-after/wheel_nuts"))
      << error.detail("refusal");
}

INSTANTIATE_TEST_SUITE_P(Jobs, NeighbourJob, testing::ValuesIn(kNeighbours),
                         [](const testing::TestParamInfo<Neighbour>& row) {
                           std::string name = row.param.script;
                           std::erase(name, '-');
                           return name;
                         });

// Rubber clamped with the axle hanging stands twisted at ride height (common practice, no source):
// the vehicle cannot be moved before those bolts have their torque on the ground.
TEST(NeighbourOrder, BoltsInRubberHoldTheVehicleUntilTheyAreTight) {
  struct Row {
    const char* script;
    const char* bolts;
    const char* name;
  };
  for (const Row& row :
       {Row{"arm-bush-renewal", "arm-bolts-at-ride-height/", "arm bolts at the axle"},
        Row{"panhard-bush-renewal", "panhard-bolts-at-ride-height/", "panhard rod bolts"}}) {
    Shop shop;
    for (const std::string& line : linesOf("resources/demo/shop.jsonl")) shop.ok(line);
    for (const std::string& line :
         linesOf("tests/data/jobs/" + std::string(row.script) + ".jsonl")) {
      if (line.find(row.bolts) != std::string::npos) continue;
      if (line.find("before-it-moves/brakes_and_steering") == std::string::npos) {
        shop.ok(line);
        continue;
      }
      EXPECT_EQ(shop.say(line).error().key, "workshop.not_yet");
      // Even where the order is overridden, the list of what came off stands against it.
      shop.ok(R"({"do":"override","by":"MT","rule":"order",)"
              R"("step":"before-it-moves/brakes_and_steering",)"
              R"("why":"looking whether it can be passed"})");
      const auto refused = shop.say(line);
      ASSERT_FALSE(refused);
      EXPECT_EQ(refused.error().key, "workshop.ledger_not_clear");
      EXPECT_NE(refused.error().detail("refusal").find(row.name), std::string::npos)
          << refused.error().detail("refusal");
      break;
    }
  }
}

/// The line as a step that does not apply, with a reason.
std::string leftOut(const std::string& line, const std::string& reason) {
  const auto command = model::parseJson(line);
  EXPECT_TRUE(command) << line;
  model::Json step;
  for (const char* key : {"by", "done_at", "step", "side", "round"}) {
    if (command->contains(key)) step[key] = (*command)[key];
  }
  step["do"] = "do_step";
  step["action"] = "not_applicable";
  step["text"] = reason;
  return step.dump();
}

TEST(NeighbourOrder, AToeThatIsRightIsLeftAlone) {
  Shop shop;
  for (const std::string& line : linesOf("resources/demo/shop.jsonl")) shop.ok(line);
  std::size_t left = 0;
  for (const std::string& line : linesOf("tests/data/jobs/rod-ends-and-toe.jsonl")) {
    const bool adjusts = line.find("set-toe/clamps") != std::string::npos ||
                         line.find("set-toe/turn_rod") != std::string::npos;
    shop.ok(adjusts ? leftOut(line, "toe and its way as the sheet asks") : line);
    left += adjusts ? 1U : 0U;
  }
  EXPECT_EQ(left, 4U);
  const auto state = shop.state();
  ASSERT_TRUE(state.closed);
  EXPECT_EQ(state.closed->outcome, model::JobOutcome::SignedOff);
}

TEST(NeighbourOrder, AThinDiscIsNotSignedOff) {
  Shop shop;
  for (const std::string& line : linesOf("resources/demo/shop.jsonl")) shop.ok(line);
  for (const std::string& line : linesOf("tests/data/jobs/brake-disc-check.jsonl")) {
    auto command = model::parseJson(line);
    ASSERT_TRUE(command);
    const bool thin =
        command->value("step", "") == "disc-proof/thinnest" && command->value("side", "") == "left";
    if (thin) (*command)["readings"] = "10.61 10.61 10.62";  // the sheet of the vehicle: 10.8 mm
    if (command->value("do", "") != "sign_off") {
      shop.ok(command->dump());
      continue;
    }
    const auto error = shop.refused(command->dump(), "workshop.sign_off_refused");
    EXPECT_EQ(error.detail("refusal"), "not_proved|disc-proof/thinnest (left)|outside");
  }
}

TEST(NeighbourPlans, EveryPlanIsWorkedByATest) {
  const std::set<std::string> elsewhere{"swivel-preload", "swivel-pull-only", "swivel-next-round",
                                        "wheel-swap-check"};
  Shop shop;
  for (const auto& plan : shop.library.plans()) {
    const bool here = std::any_of(std::begin(kNeighbours), std::end(kNeighbours),
                                  [&](const Neighbour& row) { return row.plan == plan.id; });
    EXPECT_TRUE(here || elsewhere.contains(plan.id)) << plan.id;
  }
}

}  // namespace
}  // namespace sw::test
