// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/brakes/even_samples.h"

#include <algorithm>
#include <cmath>
#include <complex>
#include <numbers>
#include <numeric>

namespace sw::mechanics {

namespace {

constexpr double kPi = std::numbers::pi;
// Far below what any gauge shows; what is smaller is rounding, and its phase means nothing.
constexpr Length kNothing = metres(1e-12);

double stepAngle(std::size_t at, std::size_t count) {
  return 2 * kPi * static_cast<double>(at) / static_cast<double>(count);
}

VectorAmount waveOf(const std::vector<Length>& readings, int order) {
  std::complex<double> sum = 0;
  for (std::size_t at = 0; at < readings.size(); ++at) {
    sum += std::polar(1.0, order * stepAngle(at, readings.size())) * readings[at].si();
  }
  const VectorAmount wave = fromComplex(sum * (2.0 / static_cast<double>(readings.size())));
  return wave.amount < kNothing ? VectorAmount{} : wave;
}

}  // namespace

double capturedShare(int points, int order) {
  const int places = points / std::gcd(points, order);
  const double cosine = std::cos(kPi / places);
  if (places == 2) return 0;  // cos of a quarter turn is not exactly 0 in a double
  return places % 2 == 0 ? cosine : (1 + cosine) / 2;
}

std::vector<Order> ordersOf(const std::vector<Length>& readings) {
  const int points = static_cast<int>(readings.size());
  // Taking off the mean first keeps the digits of a small wave on a thick disc.
  const Length mean = extentOf(readings).mean;
  std::vector<Length> centred;
  for (const Length reading : readings) centred.push_back(reading - mean);
  std::vector<Order> orders;
  for (int order = 1; order <= kHighestOrder; ++order) {
    Order each{order, capturedShare(points, order), {}};
    if (2 * order < points) each.wave = waveOf(centred, order);
    orders.push_back(each);
  }
  return orders;
}

Extent extentOf(const std::vector<Length>& readings) {
  const auto [least, most] = std::minmax_element(readings.begin(), readings.end());
  const Length sum = std::accumulate(readings.begin(), readings.end(), Length{});
  return {*least, *most, sum / static_cast<double>(readings.size()),
          static_cast<std::size_t>(std::distance(readings.begin(), least))};
}

std::vector<Length> withoutFirstOrder(const std::vector<Length>& readings,
                                      const VectorAmount& first) {
  std::vector<Length> rest;
  for (std::size_t at = 0; at < readings.size(); ++at) {
    const double turned = stepAngle(at, readings.size()) - first.angle.si();
    rest.push_back(readings[at] - std::cos(turned) * first.amount);
  }
  return rest;
}

}  // namespace sw::mechanics
