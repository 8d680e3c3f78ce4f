// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/geometry/track_rod.h"

#include <array>
#include <cmath>
#include <utility>

#include "base/words.h"
#include "mechanics/wheels/value_checks.h"

namespace sw {

template <>
struct Words<mechanics::RodChange> {
  static constexpr std::array<std::pair<mechanics::RodChange, std::string_view>, 3> table{
      {{mechanics::RodChange::Lengthen, "lengthen"},
       {mechanics::RodChange::Shorten, "shorten"},
       {mechanics::RodChange::Leave, "leave"}}};
};

namespace mechanics {

namespace {

constexpr Angle kMostToe = degrees(20);
constexpr double kMostPitchOverArm = 0.2;

std::optional<Error> check(const TrackRod& rod, const ToeChange& change) {
  if (auto error =
          firstBad({{"pitch", rod.pitch.si()},
                    {"arm", rod.arm.si()},
                    {"present", change.present.si(), Need::Any},
                    {"wanted", change.wanted.si(), Need::Any},
                    {"present_uncertainty", change.presentUncertainty.si(), Need::NotNegative}})) {
    return error;
  }
  if (rod.pitch > rod.arm * kMostPitchOverArm)
    return outOfRange("pitch", "below a fifth of the arm");
  if (auto error = badAngle("present", change.present, kMostToe, "-20 to 20 deg")) return error;
  return badAngle("wanted", change.wanted, kMostToe, "-20 to 20 deg");
}

RodChange changeOf(Angle toeIn, RodPlace place) {
  if (toeIn.si() == 0) return RodChange::Leave;
  const RodChange forToeIn =
      place == RodPlace::BehindAxle ? RodChange::Lengthen : RodChange::Shorten;
  const RodChange forToeOut =
      place == RodPlace::BehindAxle ? RodChange::Shorten : RodChange::Lengthen;
  return toeIn.si() > 0 ? forToeIn : forToeOut;
}

}  // namespace

std::string_view word(RodPlace place) {
  return wordOf(place);
}
std::string_view word(RodThread thread) {
  return wordOf(thread);
}
std::string_view word(RodChange change) {
  return wordOf(change);
}

Result<RodTurns> trackRodTurns(const TrackRod& rod, const ToeChange& change) {
  if (auto error = check(rod, change)) return tl::make_unexpected(std::move(*error));
  const double threads = rod.thread == RodThread::BothEnds ? 2 : 1;
  RodTurns result;
  result.toePerTurn = radians(threads * (rod.pitch / rod.arm));
  const Angle toeIn = change.wanted - change.present;
  result.turns = std::abs(toeIn / result.toePerTurn);
  result.change = changeOf(toeIn, rod.place);
  result.standardUncertainty = change.presentUncertainty / result.toePerTurn;
  return result;
}

}  // namespace mechanics
}  // namespace sw
