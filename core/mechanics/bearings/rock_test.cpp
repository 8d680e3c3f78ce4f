// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bearings/rock_test.h"

#include <array>
#include <cmath>
#include <numbers>
#include <string>
#include <utility>

#include "base/words.h"
#include "measure/budget.h"
#include "mechanics/bearings/play_limits.h"
#include "mechanics/bearings/play_series.h"
#include "mechanics/number_checks.h"

namespace sw {

template <>
struct Words<mechanics::PlayState> {
  static constexpr std::array<std::pair<mechanics::PlayState, std::string_view>, 3> table{
      {{mechanics::PlayState::Found, "found"},
       {mechanics::PlayState::NoneNoticeable, "none_noticeable"},
       {mechanics::PlayState::CannotTell, "cannot_tell"}}};
};

}  // namespace sw

namespace sw::mechanics {

namespace {

measure::Estimate estimateOf(const SeriesOutcome& series) {
  return {series.correctedMean, series.standardUncertainty, series.degreesOfFreedom};
}

measure::Estimate difference(const SeriesOutcome& off, const SeriesOutcome& on) {
  const std::array components{measure::Component{off.standardUncertainty, off.degreesOfFreedom, 1},
                              measure::Component{on.standardUncertainty, on.degreesOfFreedom, -1}};
  const measure::Combined combined = measure::combine(components);
  return {off.correctedMean - on.correctedMean, combined.standardUncertainty,
          combined.degreesOfFreedom};
}

PlayState stateOf(const measure::Estimate& play, const RockTestInput& input) {
  const double guard =
      measure::guardBand(play.standardUncertainty, play.degreesOfFreedom, input.confidence);
  if (play.value < -guard) return PlayState::CannotTell;
  if (play.value + guard < input.noticeable.si()) return PlayState::NoneNoticeable;
  return play.value > guard ? PlayState::Found : PlayState::CannotTell;
}

/// Whether the scatter behind one part and behind the whole test is known.
struct Repetition {
  bool ofPart = false;
  bool ofAll = false;
};

RockPart partOf(const measure::Estimate& play, Length floor, const RockTestInput& input,
                Repetition repeated) {
  const Limits<Length> limits{.min = {}, .max = floor};
  RockPart part;
  part.rock = judged<Length>(play, limits, input.confidence);
  part.floor = floor;
  if (repeated.ofAll) {
    part.state = stateOf(play, input);
  } else {
    part.rock.verdict = Verdict::Provisional;
  }
  if (!repeated.ofPart) takeAsProvisional(part.rock, limits);
  return part;
}

}  // namespace

std::string_view word(PlayState state) {
  return wordOf(state);
}

Result<RockTest> rockTest(const RockTestInput& input) {
  const auto checked = NumberChecks()
                           .positive("diameter", input.diameter)
                           .positive("noticeable", input.noticeable)
                           .confidence(input.confidence)
                           .done();
  if (!checked) return failAs(checked);
  const auto on = playSeries({input.brakeOn, input.instrument, {}, input.confidence}, "brake_on");
  if (!on) return failAs(on);
  const auto off =
      playSeries({input.brakeOff, input.instrument, {}, input.confidence}, "brake_off");
  if (!off) return failAs(off);
  const auto floor = kingpinRockLimit(input.diameter);
  if (!floor) return failAs(floor);
  const measure::Estimate increase = difference(*off, *on);
  RockTest test;
  test.repeated = on->scatterKnown && off->scatterKnown;
  test.reversed = test.repeated &&
                  increase.value < -measure::guardBand(increase.standardUncertainty,
                                                       increase.degreesOfFreedom, input.confidence);
  test.swivel = partOf(estimateOf(*on), *floor, input, {on->scatterKnown, test.repeated});
  test.bearing = partOf(increase, kBearingRockLimit, input, {test.repeated, test.repeated});
  return test;
}

Result<Length> rockFromFloat(const BearingFloat& bearing, Length radius) {
  const auto checked = NumberChecks()
                           .notNegative("bearing/end_float", bearing.endFloat)
                           .positive("bearing/contact_angle", bearing.contactAngle)
                           .positive("bearing/spread", bearing.spread)
                           .positive("diameter", radius)
                           .done();
  if (!checked) return failAs(checked);
  if (bearing.contactAngle.si() >= std::numbers::pi / 2) {
    return fail(ErrorCode::OutOfRange, "rock_test.bad_angle", "bearing/contact_angle");
  }
  return 2 * std::tan(bearing.contactAngle.si()) * (radius / bearing.spread) * bearing.endFloat;
}

}  // namespace sw::mechanics
