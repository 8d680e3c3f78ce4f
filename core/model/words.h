// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>

#include "base/words.h"

// The enumerations of the facts and the words they are stored under.

namespace sw::model {

/// As seen from the driver's seat.
enum class Side { Left, Right };
[[nodiscard]] constexpr Side otherSide(Side side) {
  return side == Side::Left ? Side::Right : Side::Left;
}

enum class CorrectionReason { TypingSlip, WrongSide, WrongUnit, BadPull, Withdrawn, Other };
enum class StepAction { Done, DoneBeforeRecording, NotApplicable, Reopened };
enum class ReadingUse { Used, Settling, NotUsed };
enum class LedgerKind { Removed, PutOn };
/// Removed items: Off -> HandTight -> Torqued, or Off -> Back; Replaced and LeftOff end one too.
/// Put-on items: On -> TakenOff.
enum class LedgerState { Off, HandTight, Torqued, Back, Replaced, LeftOff, On, TakenOff };
enum class PackRole { Found, Fitted };
enum class ShimPlace { Top, Bottom };
enum class JobOutcome { SignedOff, Declined, ClosedWithoutSignOff };
enum class RoadTestWhen { Before, After };
enum class ShakeResult { None, Less, Same, Worse };
enum class SpeedSource { Dial, Gps };
enum class BrakingAnswer { Only, Also, StartsAndStays, No, Unknown };
enum class YesNo { Yes, No, Unknown };
enum class SupportKind { Stands, TwoPost, FourPost, Pit };
enum class SpecKind { Limit, Torque, Value, Text };
enum class InstrumentKind {
  SpringScale,
  Micrometer,
  DialIndicator,
  Caliper,
  Feeler,
  SteelRule,
  TorqueWrench,
  PressureGauge,
  Other
};

// The state a pull was taken in; pulls of different states are never put on one line.
enum class OnOff { Off, On };
enum class Sealant { None, Wet, Cured };
enum class Grease { Dry, Fresh, Old };
enum class Movement { First, Steady };
enum class RestPosition { Ahead, LeftFifteen, RightFifteen };

// Axle arrangement.
enum class ShimLayout { CapFlange, Inner };  ///< under the cap flange / between pin and cap
enum class ShimEnds { Top, Bottom, Both };
enum class SwivelBearing { Taper, Bush, SprungPin };
enum class Lubricant { Grease, Oil };
enum class DiscMount { Outside, BehindHub };
enum class WheelBearingSetting { EndFloat, Preload, Unit };
enum class FixesTo { TrackRod, DragLink, SteeringArm, Axle, Frame };
enum class HandOfDrive { Left, Right };

}  // namespace sw::model

namespace sw {

#define SW_WORDS(Type, ...)                                                                     \
  template <>                                                                                   \
  struct Words<Type> {                                                                          \
    using E = Type;                                                                             \
    static constexpr auto table = std::to_array<std::pair<E, std::string_view>>({__VA_ARGS__}); \
  }

SW_WORDS(model::Side, {E::Left, "left"}, {E::Right, "right"});
SW_WORDS(model::CorrectionReason, {E::TypingSlip, "typing_slip"}, {E::WrongSide, "wrong_side"},
         {E::WrongUnit, "wrong_unit"}, {E::BadPull, "bad_pull"}, {E::Withdrawn, "withdrawn"},
         {E::Other, "other"});
SW_WORDS(model::StepAction, {E::Done, "done"}, {E::DoneBeforeRecording, "done_before_recording"},
         {E::NotApplicable, "not_applicable"}, {E::Reopened, "reopened"});
SW_WORDS(model::ReadingUse, {E::Used, "used"}, {E::Settling, "settling"}, {E::NotUsed, "not_used"});
SW_WORDS(model::LedgerKind, {E::Removed, "removed"}, {E::PutOn, "put_on"});
SW_WORDS(model::LedgerState, {E::Off, "off"}, {E::HandTight, "hand_tight"}, {E::Torqued, "torqued"},
         {E::Back, "back"}, {E::Replaced, "replaced"}, {E::LeftOff, "left_off"}, {E::On, "on"},
         {E::TakenOff, "taken_off"});
SW_WORDS(model::PackRole, {E::Found, "found"}, {E::Fitted, "fitted"});
SW_WORDS(model::ShimPlace, {E::Top, "top"}, {E::Bottom, "bottom"});
SW_WORDS(model::JobOutcome, {E::SignedOff, "signed_off"}, {E::Declined, "declined"},
         {E::ClosedWithoutSignOff, "closed_without_sign_off"});
SW_WORDS(model::RoadTestWhen, {E::Before, "before"}, {E::After, "after"});
SW_WORDS(model::ShakeResult, {E::None, "none"}, {E::Less, "less"}, {E::Same, "same"},
         {E::Worse, "worse"});
SW_WORDS(model::SpeedSource, {E::Dial, "dial"}, {E::Gps, "gps"});
SW_WORDS(model::BrakingAnswer, {E::Only, "only"}, {E::Also, "also"},
         {E::StartsAndStays, "starts_and_stays"}, {E::No, "no"}, {E::Unknown, "unknown"});
SW_WORDS(model::YesNo, {E::Yes, "yes"}, {E::No, "no"}, {E::Unknown, "unknown"});
SW_WORDS(model::SupportKind, {E::Stands, "stands"}, {E::TwoPost, "two_post"},
         {E::FourPost, "four_post"}, {E::Pit, "pit"});
SW_WORDS(model::SpecKind, {E::Limit, "limit"}, {E::Torque, "torque"}, {E::Value, "value"},
         {E::Text, "text"});
SW_WORDS(model::InstrumentKind, {E::SpringScale, "spring_scale"}, {E::Micrometer, "micrometer"},
         {E::DialIndicator, "dial_indicator"}, {E::Caliper, "caliper"}, {E::Feeler, "feeler"},
         {E::SteelRule, "steel_rule"}, {E::TorqueWrench, "torque_wrench"},
         {E::PressureGauge, "pressure_gauge"}, {E::Other, "other"});
SW_WORDS(model::OnOff, {E::Off, "off"}, {E::On, "on"});
SW_WORDS(model::Sealant, {E::None, "none"}, {E::Wet, "wet"}, {E::Cured, "cured"});
SW_WORDS(model::Grease, {E::Dry, "dry"}, {E::Fresh, "fresh"}, {E::Old, "old"});
SW_WORDS(model::Movement, {E::First, "first"}, {E::Steady, "steady"});
SW_WORDS(model::RestPosition, {E::Ahead, "ahead"}, {E::LeftFifteen, "left_15"},
         {E::RightFifteen, "right_15"});
SW_WORDS(model::ShimLayout, {E::CapFlange, "cap_flange"}, {E::Inner, "inner"});
SW_WORDS(model::ShimEnds, {E::Top, "top"}, {E::Bottom, "bottom"}, {E::Both, "both"});
SW_WORDS(model::SwivelBearing, {E::Taper, "taper"}, {E::Bush, "bush"},
         {E::SprungPin, "sprung_pin"});
SW_WORDS(model::Lubricant, {E::Grease, "grease"}, {E::Oil, "oil"});
SW_WORDS(model::DiscMount, {E::Outside, "outside"}, {E::BehindHub, "behind_hub"});
SW_WORDS(model::WheelBearingSetting, {E::EndFloat, "end_float"}, {E::Preload, "preload"},
         {E::Unit, "unit"});
SW_WORDS(model::FixesTo, {E::TrackRod, "track_rod"}, {E::DragLink, "drag_link"},
         {E::SteeringArm, "steering_arm"}, {E::Axle, "axle"}, {E::Frame, "frame"});
SW_WORDS(model::HandOfDrive, {E::Left, "left"}, {E::Right, "right"});

#undef SW_WORDS

}  // namespace sw
