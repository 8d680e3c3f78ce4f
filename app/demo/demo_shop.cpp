// SPDX-License-Identifier: GPL-3.0-or-later
#include "demo/demo_shop.h"

#include <fstream>
#include <nlohmann/json.hpp>
#include <vector>

#include "demo/mechanic.h"
#include "workshop/command_json.h"

namespace sw::app::demo {

namespace {

using model::JobOutcome;
using workshop::JobState;

enum class End { SignedOff, Declined, GivenUp, LeftOpen };

/// One job of the demonstration.
struct Story {
  const char* day;
  const char* registration;
  const char* odometer;
  const char* request;
  const char* initials;
  const char* plan;    ///< empty = none was started
  const char* stopAt;  ///< "procedure/step" it was left open at, or empty
  End end = End::SignedOff;
  double leftInterference = 0.45;
  double rightInterference = 0.46;
  model::ShakeResult afterDrive = model::ShakeResult::None;
  model::SupportKind support = model::SupportKind::Stands;
};

const std::vector<Story>& stories() {
  using model::ShakeResult;
  using model::SupportKind;
  static const std::vector<Story> kStories{
      {"2024-11-25T08:10+01:00", "HB-0417", "84210 km", "Wheel shakes between 65 and 75", "MT",
       "swivel-preload", "", End::SignedOff, 0.375, 0.46},
      {"2025-02-10T08:05+01:00", "HB-0923", "191044 km", "Steering wobble after a pothole", "JF",
       "swivel-preload", "", End::SignedOff, 0.44, 0.45, ShakeResult::None, SupportKind::FourPost},
      {"2025-04-07T08:30+02:00", "HB-1180", "30877 mi", "Swivels to be measured before the season",
       "AO", "swivel-pull-only", "", End::SignedOff},
      {"2025-06-16T08:00+02:00", "HB-2002", "142908 km", "Shake at about 80, new tyres last month",
       "MT", "swivel-preload", "", End::SignedOff, 0.47, 0.47, ShakeResult::Less,
       SupportKind::TwoPost},
      {"2025-09-01T10:20+02:00", "HB-0417", "91877 km", "A hum from the front", "JF", "", "",
       End::Declined},
      {"2025-10-13T08:15+02:00", "HB-1355", "118300 km", "Shakes after bumps", "AO",
       "swivel-pull-only", "as-found-pull/pull_ahead", End::GivenUp},
      {"2026-01-19T08:00+01:00", "HB-1180", "31902 mi", "Light shimmy at 45 mph", "MT",
       "swivel-preload", "", End::SignedOff, 0.43, 0.44},
      {"2026-03-09T08:25+01:00", "HB-2450", "47010 km", "Shakes fully loaded", "JF",
       "swivel-preload", "", End::SignedOff, 0.45, 0.44, ShakeResult::None, SupportKind::Pit},
      {"2026-05-18T09:00+02:00", "HB-2217", "60125 km", "Shake comes and goes", "AO", "", "",
       End::GivenUp},
      {"2026-11-16T08:10+01:00", "HB-0923", "204411 km", "Wobble is back when empty", "JF",
       "swivel-preload", "caliper-off/caliper_off", End::LeftOpen, 0.40, 0.41, ShakeResult::None,
       SupportKind::FourPost},
      {"2026-11-18T08:00+01:00", "HB-2002", "166230 km", "Steering heavy to one side", "MT",
       "swivel-preload", "fit-shims-and-pull/cap_torque_bolts", End::LeftOpen, 0.42, 0.44,
       ShakeResult::None, SupportKind::TwoPost},
      {"2026-11-20T11:45+01:00", "HB-0417", "103556 km", "Shake at 70, worse after a bump", "AO",
       "swivel-preload", "free-checks/tyres", End::LeftOpen},
  };
  return kStories;
}

/// People, instruments, vehicles and spec sheets, one command a line.
Result<void> setUp(workshop::Workshop& shop, const std::string& file) {
  std::ifstream in(file);
  if (!in) return fail(ErrorCode::NotFound, "cli.cannot_read", file, {{"text", file}});
  std::string line;
  while (std::getline(in, line)) {
    if (line.empty()) continue;
    const auto json = model::parseJson(line);
    if (!json) return failAs(json);
    const auto command = workshop::commandFromJson(*json);
    if (!command) return failAs(command);
    if (auto done = shop.perform(*command); !done) return failAs(done);
  }
  return {};
}

workshop::SetComplaint complaintOf(const Story& story) {
  workshop::SetComplaint complaint;
  complaint.words = story.request;
  complaint.onsetRising = "72 km/h";
  complaint.releaseRising = "84 km/h";
  complaint.onsetFalling = "70 km/h";
  complaint.releaseFalling = "61 km/h";
  complaint.speedSource = model::SpeedSource::Dial;
  complaint.braking = model::BrakingAnswer::No;
  complaint.afterBump = model::YesNo::Yes;
  complaint.speedBand = model::YesNo::Yes;
  complaint.whereFelt = "steering wheel";
  return complaint;
}

/// One story, told by the mechanic's commands.
class Telling {
 public:
  Telling(workshop::Workshop& shop, ManualClock& clock, const Story& story, std::uint64_t seed)
      : m_shop(shop),
        m_clock(clock),
        m_story(story),
        m_mechanic(shop, clock, story.initials, seed) {}

  Result<void> run() {
    const auto start = parseTimestamp(m_story.day);
    if (!start) return failAs(start);
    m_clock.set(*start);
    workshop::Command open;
    open.action = workshop::OpenJob{m_story.registration, m_story.odometer, m_story.request};
    const auto opened = m_mechanic.send(open);
    if (!opened) return failAs(opened);
    m_job = *opened->job;
    if (auto sent = send(complaintOf(m_story)); !sent) return sent;
    if (auto worked = workPlan(); !worked) return worked;
    return end();
  }

 private:
  Result<void> send(workshop::Action action) {
    m_clock.advanceMilliseconds(60'000);
    auto outcome = m_mechanic.send(m_job, std::move(action));
    return outcome ? Result<void>{} : failAs(outcome);
  }

  Result<void> workPlan() {
    const std::string plan = m_story.plan;
    if (plan.empty()) return {};
    if (auto started = send(workshop::StartPlan{plan, std::nullopt}); !started) return started;
    Situation situation;
    situation.left.interferenceMillimetres = m_story.leftInterference;
    situation.right.interferenceMillimetres = m_story.rightInterference;
    situation.support = m_story.support;
    situation.afterDrive = m_story.afterDrive;
    const std::string stop = m_story.stopAt;
    return m_mechanic.work(m_job, situation, [&](const JobState& state, std::size_t step) {
      return !stop.empty() && state.stepName(step).starts_with(stop);
    });
  }

  Result<void> charge() {
    workshop::AddLabour labour;
    labour.time = "5.5 h";
    labour.text = "Front axle, swivel bearings";
    labour.hourlyRate = "52.00";
    if (auto sent = send(labour); !sent) return sent;
    workshop::UsePart grease;
    grease.name = "Swivel grease";
    grease.quantity = "0.4 kg";
    grease.unitPrice = "11.50";
    grease.consumable = true;
    if (auto sent = send(grease); !sent) return sent;
    return send(
        workshop::AddRecheck{"Wheel nuts after the first drive, dressed pull at the next visit",
                             toIso(addDays(localDate(m_clock.now()), 30)), std::nullopt});
  }

  Result<void> end() {
    switch (m_story.end) {
      case End::SignedOff:
        if (auto charged = charge(); !charged) return charged;
        return send(workshop::SignOff{});
      case End::Declined:
        if (auto sent =
                send(workshop::DeclineWork{"Strip-down to find the hum", "Wants to sell it"});
            !sent) {
          return sent;
        }
        return send(workshop::CloseJob{JobOutcome::Declined, "Owner took the vehicle home"});
      case End::GivenUp:
        if (auto sent = send(workshop::CheckCause{"tyres",
                                                  "Cupped tread seen, tyres to be renewed "
                                                  "elsewhere first",
                                                  false});
            !sent) {
          return sent;
        }
        return send(workshop::CloseJob{JobOutcome::ClosedWithoutSignOff,
                                       "Owner renews the tyres first and comes back"});
      case End::LeftOpen:
        return leaveHandTight();
    }
    return {};
  }

  /// The job that was left in the middle of a bolt pattern: two of four are in by hand.
  Result<void> leaveHandTight() {
    auto state = m_shop.job(m_job);
    if (!state) return failAs(state);
    for (const auto& item : state->ledger) {
      if (item.item != "upper_cap" || item.state != model::LedgerState::HandTight) continue;
      workshop::Command command;
      command.job = m_job.value;
      command.side = item.side;
      workshop::MoveLedger move{
          "upper_cap", model::LedgerState::HandTight, item.name, {}, true, 2, 4};
      command.action = move;
      auto sent = m_mechanic.send(command);
      return sent ? Result<void>{} : failAs(sent);
    }
    return {};
  }

  workshop::Workshop& m_shop;
  ManualClock& m_clock;
  const Story& m_story;
  Mechanic m_mechanic;
  model::JobId m_job;
};

}  // namespace

Timestamp demoStart() {
  return {1731916800000, 60};
}  // 2024-11-18 09:00 +01:00

Result<void> buildDemoShop(store::Book& book, const procedures::Library& library,
                           ManualClock& clock, const std::string& setUpFile) {
  workshop::Workshop shop(book, library, clock, nullptr);
  if (auto set = setUp(shop, setUpFile); !set) return failAs(set);
  std::uint64_t seed = 20241118;
  for (const Story& story : stories()) {
    if (auto told = Telling(shop, clock, story, seed++).run(); !told) return failAs(told);
  }
  return {};
}

}  // namespace sw::app::demo
