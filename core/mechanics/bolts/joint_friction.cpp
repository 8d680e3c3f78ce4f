// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/bolts/joint_friction.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "mechanics/number_checks.h"
#include "units/format.h"

namespace sw::mechanics {

namespace {

constexpr double kRuleOfThumb = 1.3;
constexpr double kSameSize = 1e-6;  // m

struct ClassRow {
  FrictionClass frictionClass;
  double least;
  double most;  ///< 0 = open
};
constexpr auto kClasses = std::to_array<ClassRow>({{FrictionClass::A, 0.04, 0.10},
                                                   {FrictionClass::B, 0.08, 0.16},
                                                   {FrictionClass::C, 0.14, 0.24},
                                                   {FrictionClass::D, 0.20, 0.35},
                                                   {FrictionClass::E, 0.30, 0}});

/// mm
struct HeadRow {
  double diameter;
  double face;
  double hole;
};
constexpr auto kHeads = std::to_array<HeadRow>({{5, 6.88, 5.5},
                                                {6, 8.88, 6.6},
                                                {8, 11.63, 9},
                                                {10, 14.63, 11},
                                                {12, 16.63, 13.5},
                                                {14, 19.37, 15.5},
                                                {16, 22.49, 17.5},
                                                {18, 25.34, 20},
                                                {20, 28.19, 22}});

std::optional<HeadRow> standardHead(const Thread& thread) {
  if (thread.standard != ThreadStandard::IsoMetric) return std::nullopt;
  const auto found = std::find_if(kHeads.begin(), kHeads.end(), [&](const HeadRow& row) {
    return std::abs(thread.diameter.si() - millimetres(row.diameter).si()) < kSameSize;
  });
  if (found == kHeads.end()) return std::nullopt;
  return *found;
}

Result<FrictionDiameter> fromFace(Length outer, Length hole, FrictionDiameterFrom from) {
  if (auto error = NumberChecks()
                       .positive("bearing_diameter", outer)
                       .positive("hole_diameter", hole)
                       .error()) {
    return tl::make_unexpected(std::move(*error));
  }
  if (outer <= hole) {
    return fail(ErrorCode::OutOfRange, "bolts.face_inside_hole", "bearing_diameter",
                {{"text", fullPrecision(inMillimetres(outer)) + " mm"},
                 {"min", fullPrecision(inMillimetres(hole)) + " mm"}});
  }
  return FrictionDiameter{0.5 * (outer + hole), from};
}

}  // namespace

Result<void> checkFriction(const FrictionRange& range, std::string_view field) {
  if (range.least > 0 && range.least <= range.most && range.most <= 1) return {};
  return fail(ErrorCode::OutOfRange, "bolts.bad_friction", std::string(field),
              {{"min", fullPrecision(range.least)}, {"max", fullPrecision(range.most)}});
}

Result<FrictionRange> frictionOf(FrictionClass frictionClass, std::optional<double> least,
                                 std::optional<double> most) {
  const auto* row = std::find_if(kClasses.begin(), kClasses.end(), [&](const ClassRow& each) {
    return each.frictionClass == frictionClass;
  });
  if (row->most == 0 && !most) {
    return fail(ErrorCode::Missing, "bolts.open_friction_class", "friction",
                {{"text", std::string(wordOf(frictionClass))}});
  }
  const FrictionRange range{least.value_or(row->least), most.value_or(row->most)};
  if (auto checked = checkFriction(range, "friction"); !checked) return failAs(checked);
  return range;
}

Result<FrictionDiameter> frictionDiameter(const Thread& thread, const BearingFace& face) {
  const auto head = standardHead(thread);
  if (face.outer && face.hole) {
    return fromFace(*face.outer, *face.hole, FrictionDiameterFrom::Given);
  }
  if (head) {
    const auto from =
        face.outer || face.hole ? FrictionDiameterFrom::Given : FrictionDiameterFrom::StandardHead;
    return fromFace(face.outer.value_or(millimetres(head->face)),
                    face.hole.value_or(millimetres(head->hole)), from);
  }
  if (face.outer || face.hole) {
    return fail(ErrorCode::Missing, "bolts.needs_face",
                face.outer ? "hole_diameter" : "bearing_diameter");
  }
  return FrictionDiameter{kRuleOfThumb * thread.diameter, FrictionDiameterFrom::RuleOfThumb};
}

}  // namespace sw::mechanics
