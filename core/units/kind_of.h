// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "units/quantity.h"
#include "units/unit.h"

namespace sw {

/// The kind of a quantity type: kKindOf<Length> is QuantityKind::Length.
template <class Q>
inline constexpr QuantityKind kKindOf = QuantityKind::Number;
template <>
inline constexpr QuantityKind kKindOf<Length> = QuantityKind::Length;
template <>
inline constexpr QuantityKind kKindOf<Force> = QuantityKind::Force;
template <>
inline constexpr QuantityKind kKindOf<Torque> = QuantityKind::Torque;
template <>
inline constexpr QuantityKind kKindOf<Angle> = QuantityKind::Angle;
template <>
inline constexpr QuantityKind kKindOf<Mass> = QuantityKind::Mass;
template <>
inline constexpr QuantityKind kKindOf<Speed> = QuantityKind::Speed;
template <>
inline constexpr QuantityKind kKindOf<Frequency> = QuantityKind::Frequency;
template <>
inline constexpr QuantityKind kKindOf<Pressure> = QuantityKind::Pressure;
template <>
inline constexpr QuantityKind kKindOf<Duration> = QuantityKind::Duration;
template <>
inline constexpr QuantityKind kKindOf<Volume> = QuantityKind::Volume;
template <>
inline constexpr QuantityKind kKindOf<TemperatureDifference> = QuantityKind::TemperatureDifference;
template <>
inline constexpr QuantityKind kKindOf<Area> = QuantityKind::Area;
template <>
inline constexpr QuantityKind kKindOf<Stiffness> = QuantityKind::Stiffness;
template <>
inline constexpr QuantityKind kKindOf<Unbalance> = QuantityKind::Unbalance;

}  // namespace sw
