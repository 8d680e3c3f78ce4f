// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/brakes/disc_index.h"

#include <cmath>
#include <complex>
#include <numbers>
#include <string>

#include "mechanics/number_checks.h"
#include "mechanics/polar.h"

namespace sw::mechanics {

namespace {

using Complex = std::complex<double>;

Complex turnedBy(int position, int studs) {
  return std::polar(1.0, 2 * std::numbers::pi * position / studs);
}

Result<void> checkStuds(int studs) {
  if (studs >= kFewestStuds && studs <= kMostStuds) return {};
  return fail(ErrorCode::OutOfRange, "disc_index.bad_studs", "studs",
              {{"studs", std::to_string(studs)},
               {"least", std::to_string(kFewestStuds)},
               {"most", std::to_string(kMostStuds)}});
}

Result<void> checkVector(const UncertainVector& given, const std::string& field) {
  return NumberChecks()
      .notNegative(field + "/amount", given.vector.amount)
      .finite(field + "/angle", given.vector.angle)
      .notNegative(field + "/uncertainty", given.standardUncertainty)
      .done();
}

Result<void> checkRun(const IndexPosition& run, int studs, const std::string& field) {
  if (run.position < 0 || run.position >= studs) {
    return fail(ErrorCode::OutOfRange, "disc_index.bad_position", field + "/position",
                {{"position", std::to_string(run.position)}, {"most", std::to_string(studs - 1)}});
  }
  return checkVector(run.runout, field);
}

UncertainVector withUncertainty(Complex value, double uncertainty) {
  return {fromComplex(value), Length::fromSi(uncertainty)};
}

// Two positions that lie alike on both sides of the best differ by rounding only.
constexpr Length kSame = metres(1e-12);

void finish(DiscIndex& index) {
  const Length hub = index.parts.hub.vector.amount;
  const Length disc = index.parts.disc.vector.amount;
  index.floor = hub > disc ? hub - disc : disc - hub;
  index.ceiling = hub + disc;
  const auto amountAt = [&index](int position) {
    return index.positions[static_cast<std::size_t>(position)].runout.vector.amount;
  };
  for (const IndexPosition& each : index.positions) {
    const Length amount = each.runout.vector.amount;
    if (amount < amountAt(index.best) - kSame) index.best = each.position;
    if (amount > amountAt(index.worst) + kSame) index.worst = each.position;
  }
}

}  // namespace

Result<DiscIndex> indexFromRuns(int studs, const IndexPosition& first,
                                const IndexPosition& second) {
  if (auto checked = checkStuds(studs); !checked) return failAs(checked);
  if (auto checked = checkRun(first, studs, "runs/0"); !checked) return failAs(checked);
  if (auto checked = checkRun(second, studs, "runs/1"); !checked) return failAs(checked);
  if (first.position == second.position) {
    return fail(ErrorCode::Degenerate, "disc_index.same_position", "runs/1/position");
  }
  const Complex a = toComplex(first.runout.vector);
  const Complex b = toComplex(second.runout.vector);
  const Complex za = turnedBy(first.position, studs);
  const Complex zb = turnedBy(second.position, studs);
  const double ua = first.runout.standardUncertainty.si();
  const double ub = second.runout.standardUncertainty.si();
  const Complex disc = (b - a) / (zb - za);
  const double ofParts = std::hypot(ua, ub) / std::abs(zb - za);
  DiscIndex index;
  // H = (T_a z_b - T_b z_a) / (z_b - z_a), and |z| = 1: the same uncertainty as D.
  index.parts.hub = withUncertainty(a - disc * za, ofParts);
  index.parts.disc = withUncertainty(disc, ofParts);
  for (int position = 0; position < studs; ++position) {
    const Complex share = (turnedBy(position, studs) - za) / (zb - za);
    const double u = std::hypot(std::abs(1.0 - share) * ua, std::abs(share) * ub);
    index.positions.push_back({position, withUncertainty(a + share * (b - a), u)});
  }
  finish(index);
  return index;
}

Result<DiscIndex> indexFromParts(int studs, const HubAndDisc& parts) {
  if (auto checked = checkStuds(studs); !checked) return failAs(checked);
  if (auto checked = checkVector(parts.hub, "hub"); !checked) return failAs(checked);
  if (auto checked = checkVector(parts.disc, "disc"); !checked) return failAs(checked);
  DiscIndex index;
  index.parts = parts;
  index.parts.hub.vector.angle = withinATurn(parts.hub.vector.angle);
  index.parts.disc.vector.angle = withinATurn(parts.disc.vector.angle);
  const double u =
      std::hypot(parts.hub.standardUncertainty.si(), parts.disc.standardUncertainty.si());
  for (int position = 0; position < studs; ++position) {
    const Complex sum =
        toComplex(parts.hub.vector) + toComplex(parts.disc.vector) * turnedBy(position, studs);
    index.positions.push_back({position, withUncertainty(sum, u)});
  }
  finish(index);
  return index;
}

}  // namespace sw::mechanics
