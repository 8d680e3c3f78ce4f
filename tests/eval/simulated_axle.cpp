// SPDX-License-Identifier: GPL-3.0-or-later
#include "simulated_axle.h"

#include <algorithm>
#include <cmath>

namespace sw::eval {

double SimulatedSide::force(double pack, double film) const {
  const double way =
      effect == mechanics::ShimEffect::ThinnerRaises ? knee - pack - film : pack - knee - film;
  const double past = std::max(0.0, way);
  if (power == 1.0) return drag + slope * past;
  return drag + slope * curveAt * std::pow(past / curveAt, power);
}

double SimulatedScale::pull(double force, std::mt19937_64& random) const {
  const double shown = force + error + std::normal_distribution<double>(0.0, scatter)(random);
  return std::max(0.0, std::round(shown / graduation) * graduation);
}

mechanics::PackPulls pulledOn(const SimulatedSide& side, const SimulatedScale& scale, double pack,
                              int pulls, std::mt19937_64& random) {
  mechanics::PackPulls pulled{millimetres(pack), {}};
  const double force = side.force(pack);
  for (int i = 0; i < pulls; ++i) pulled.pulls.push_back(newtons(scale.pull(force, random)));
  return pulled;
}

}  // namespace sw::eval
