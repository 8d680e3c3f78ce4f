// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/student_mixture.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace sw::measure {

namespace {

constexpr int kPieces = 256;  // of u = x / (2 + x), 0 to 1
constexpr double kHalfWay = 2.0;
constexpr double kQuantileTolerance = 1e-4;  // of the spread
constexpr double kProbabilityTolerance = 1e-6;
constexpr double kFirstReach = 0.3;
constexpr double kNearReach = 0.05;
constexpr int kMostSteps = 100;

double studentDensity(double x, double nu) {
  const double logNorm =
      std::lgamma((nu + 1.0) / 2.0) - std::lgamma(nu / 2.0) - 0.5 * std::log(nu * std::numbers::pi);
  return std::exp(logNorm - (nu + 1.0) / 2.0 * std::log1p(x * x / nu));
}

/// A root between two ends of opposite sign, by false position with halving of the end that stays
/// (Illinois), and a plain halving now and then.
struct Bracket {
  double low = 0, high = 0;
  double atLow = 0, atHigh = 0;
  int stays = 0;  ///< below 0: the high end stayed last, above 0: the low one

  [[nodiscard]] double next(int step) const {
    const double rise = atHigh - atLow;
    const double x = rise > 0 ? low - atLow * (high - low) / rise : low;
    const bool halve = step % 8 == 7 || !(x > low && x < high);
    return halve ? 0.5 * (low + high) : x;
  }
  void take(double x, double atX) {
    if (atX < 0) {
      low = x;
      atLow = atX;
      if (stays < 0) atHigh *= 0.5;
      stays = -1;
    } else {
      high = x;
      atHigh = atX;
      if (stays > 0) atLow *= 0.5;
      stays = 1;
    }
  }
};

}  // namespace

StudentTable::StudentTable(double degreesOfFreedom) {
  struct Node {
    double value = 0;
    double slope = 0;  ///< per node spacing
  };
  std::vector<Node> nodes;
  nodes.reserve(kPieces + 1);
  for (int i = 0; i < kPieces; ++i) {
    const double left = 1.0 - static_cast<double>(i) / kPieces;
    const double x = kHalfWay * (1.0 - left) / left;
    const double steep = kHalfWay / (left * left) / kPieces;
    nodes.push_back({studentCdf(x, degreesOfFreedom), studentDensity(x, degreesOfFreedom) * steep});
  }
  nodes.push_back({1.0, 0.0});
  // Hermite: value and slope of both nodes.
  m_pieces.reserve(kPieces);
  for (std::size_t i = 0; i < kPieces; ++i) {
    const Node& a = nodes[i];
    const Node& b = nodes[i + 1];
    const double rise = b.value - a.value;
    m_pieces.push_back(
        {a.value, a.slope, 3.0 * rise - 2.0 * a.slope - b.slope, a.slope + b.slope - 2.0 * rise});
  }
}

double StudentTable::cdf(double away, double scale) const {
  // One division: this is what a table of packs spends its time on.
  const double size = std::abs(away);
  const double u = size / (kHalfWay * scale + size) * kPieces;
  const auto at = std::min(static_cast<std::size_t>(u), std::size_t{kPieces - 1});
  const double t = u - static_cast<double>(at);
  const auto& [value, slope, square, cube] = m_pieces[at];
  const double upper = value + t * (slope + t * (square + t * cube));
  return away < 0 ? 1.0 - upper : upper;
}

StudentMixture::StudentMixture(const StudentTable& table, std::vector<MixturePart> parts)
    : m_table(table), m_parts(std::move(parts)) {
  double sum = 0;
  for (const MixturePart& part : m_parts) sum += part.weight;
  for (MixturePart& part : m_parts) part.weight /= sum;
}

double StudentMixture::cdf(double x) const {
  double sum = 0;
  for (const MixturePart& part : m_parts) {
    const auto& [location, scale] = part.place;
    const double share = scale > 0 ? m_table.cdf(x - location, scale) : (x >= location ? 1.0 : 0.0);
    sum += part.weight * share;
  }
  return sum;
}

double StudentMixture::quantile(double probability, std::optional<double> guess) const {
  const double middle = mean();
  double variance = 0;
  for (const MixturePart& part : m_parts) {
    const double away = part.place.location - middle;
    variance += part.weight * (part.place.scale * part.place.scale + away * away);
  }
  const double spread = std::sqrt(variance);
  if (!(spread > 0)) return middle;
  const double start = guess ? *guess : middle + spread * normalQuantile(probability);
  const double reach = (guess ? kNearReach : kFirstReach) * spread;
  Bracket bracket{start - reach, start + reach};
  bracket.atLow = cdf(bracket.low) - probability;
  bracket.atHigh = cdf(bracket.high) - probability;
  for (double wider = spread; bracket.atLow > 0; wider *= 2.0) {
    bracket.high = bracket.low;
    bracket.atHigh = bracket.atLow;
    bracket.low -= wider;
    bracket.atLow = cdf(bracket.low) - probability;
  }
  for (double wider = spread; bracket.atHigh < 0; wider *= 2.0) {
    bracket.low = bracket.high;
    bracket.atLow = bracket.atHigh;
    bracket.high += wider;
    bracket.atHigh = cdf(bracket.high) - probability;
  }
  for (int step = 0; step < kMostSteps; ++step) {
    const double x = bracket.next(step);
    const double atX = cdf(x) - probability;
    if (std::abs(atX) < kProbabilityTolerance) return x;
    bracket.take(x, atX);
    if (bracket.high - bracket.low < kQuantileTolerance * spread) break;
  }
  return 0.5 * (bracket.low + bracket.high);
}

double StudentMixture::mean() const {
  double sum = 0;
  for (const MixturePart& part : m_parts) sum += part.weight * part.place.location;
  return sum;
}

}  // namespace sw::measure
