// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/swivel/first_pack.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/words.h"
#include "units/format.h"

namespace sw {

template <>
struct Words<mechanics::GapPattern> {
  static constexpr std::pair<mechanics::GapPattern, std::string_view> table[]{
      {mechanics::GapPattern::Even, "even"},
      {mechanics::GapPattern::Tilted, "tilted"},
      {mechanics::GapPattern::OneBoltOff, "one_bolt_off"}};
};

}  // namespace sw

namespace sw::mechanics {

std::string_view word(FirstPackMethod method) {
  return wordOf(method);
}

std::string_view word(GapPattern pattern) {
  return wordOf(pattern);
}

namespace {

constexpr std::size_t kLeastBolts = 2;
constexpr std::size_t kMostBolts = 12;
constexpr std::size_t kBoltsForTilt = 4;
constexpr std::size_t kMostOffered = 3;
constexpr std::size_t kMostSplitShims = 16;
constexpr Length kStackTolerance = millimetres(0.02);

double meanOf(const std::vector<Length>& values) {
  double sum = 0;
  for (const Length value : values) sum += value.si();
  return sum / static_cast<double>(values.size());
}

Result<void> check(const FirstPackInput& input) {
  const bool nip = input.method == FirstPackMethod::Nip;
  const std::string field = nip ? "gaps" : "end_float";
  if (nip && input.effect != ShimEffect::ThinnerRaises) {
    return fail(ErrorCode::OutOfRange, "first_pack.nip_needs_flange", "method");
  }
  if (input.readings.empty()) return fail(ErrorCode::Missing, "first_pack.no_readings", field);
  if (nip && (input.readings.size() < kLeastBolts || input.readings.size() > kMostBolts)) {
    return fail(ErrorCode::OutOfRange, "first_pack.bolts", field,
                {{"least", std::to_string(kLeastBolts)}, {"most", std::to_string(kMostBolts)}});
  }
  const auto bad = [](Length value) { return !std::isfinite(value.si()) || value.si() < 0; };
  if (std::any_of(input.readings.begin(), input.readings.end(), bad)) {
    return fail(ErrorCode::OutOfRange, "first_pack.negative", field);
  }
  if (!nip && !input.found) return fail(ErrorCode::Missing, "first_pack.no_found", "pack_found");
  return {};
}

/// The gaps with their tilt: mean, first harmonic, what is left.
struct Circle {
  double mean = 0, cosine = 0, sine = 0;
  std::vector<double> rest;
  [[nodiscard]] double tilt() const { return std::hypot(cosine, sine); }
};

Circle circleOf(const std::vector<Length>& gaps) {
  Circle circle;
  circle.mean = meanOf(gaps);
  const auto n = static_cast<double>(gaps.size());
  const bool tilts = gaps.size() >= kBoltsForTilt;
  const auto angle = [n](std::size_t i) {
    return 2.0 * std::numbers::pi * static_cast<double>(i) / n;
  };
  for (std::size_t i = 0; tilts && i < gaps.size(); ++i) {
    circle.cosine += 2.0 / n * gaps[i].si() * std::cos(angle(i));
    circle.sine += 2.0 / n * gaps[i].si() * std::sin(angle(i));
  }
  for (std::size_t i = 0; i < gaps.size(); ++i) {
    circle.rest.push_back(gaps[i].si() - circle.mean - circle.cosine * std::cos(angle(i)) -
                          circle.sine * std::sin(angle(i)));
  }
  return circle;
}

GapShape shapeOf(const FirstPackInput& input, const Circle& circle) {
  const auto& gaps = input.readings;
  const auto [narrow, wide] = std::minmax_element(gaps.begin(), gaps.end());
  GapShape shape;
  shape.range = *wide - *narrow;
  shape.tilt = Length::fromSi(2.0 * circle.tilt());
  // A difference of two readings has sqrt(2) of the uncertainty of one.
  const double noise = 2.0 * std::numbers::sqrt2 * input.oneReading.si();
  if (shape.range.si() <= std::max(input.unevenFrom.si(), noise)) return shape;
  const auto off = std::max_element(circle.rest.begin(), circle.rest.end(),
                                    [](double a, double b) { return std::abs(a) < std::abs(b); });
  if (std::abs(*off) > circle.tilt() || gaps.size() < kBoltsForTilt) {
    shape.pattern = GapPattern::OneBoltOff;
    shape.atBolt = static_cast<int>(off - circle.rest.begin()) + 1;
    return shape;
  }
  shape.pattern = GapPattern::Tilted;
  const double turn = std::atan2(circle.sine, circle.cosine) / (2.0 * std::numbers::pi);
  const int bolts = static_cast<int>(gaps.size());
  const int at = static_cast<int>(std::lround(turn * bolts));
  shape.atBolt = (at % bolts + bolts) % bolts + 1;
  return shape;
}

double scatterOf(const std::vector<double>& rest, double freedom) {
  double squares = 0;
  for (const double r : rest) squares += r * r;
  return freedom > 0 ? std::sqrt(squares / freedom) : 0.0;
}

void measureGaps(const FirstPackInput& input, FirstPack& first) {
  const Circle circle = circleOf(input.readings);
  const auto n = static_cast<double>(input.readings.size());
  const double fitted = input.readings.size() >= kBoltsForTilt ? 3.0 : 1.0;
  first.gaps = shapeOf(input, circle);
  first.wanted = Length::fromSi(circle.mean) - input.allowance;
  first.standardUncertainty = Length::fromSi(
      std::hypot(scatterOf(circle.rest, n - fitted) / std::sqrt(n), input.oneReading.si()));
}

void measureFloat(const FirstPackInput& input, FirstPack& first) {
  const double mean = meanOf(input.readings);
  std::vector<double> rest;
  for (const Length reading : input.readings) rest.push_back(reading.si() - mean);
  const auto n = static_cast<double>(rest.size());
  const Length change = Length::fromSi(mean) + input.allowance;
  const bool thinner = input.effect == ShimEffect::ThinnerRaises;
  first.wanted = thinner ? *input.found - change : *input.found + change;
  first.standardUncertainty = Length::fromSi(std::hypot(
      scatterOf(rest, n - 1.0) / std::sqrt(n), input.oneReading.si(), input.foundUncertainty.si()));
}

/// The same shims dealt to top and bottom so that the difference stays nearest to the one found.
std::optional<PackSplit> splitOf(const AllowedPack& pack, const std::optional<PackSplit>& found) {
  if (!found || pack.shims.size() > kMostSplitShims) return std::nullopt;
  const double wanted = 0.5 * (pack.total.si() + (found->top - found->bottom).si());
  double nearest = 1e300;
  double best = 0;
  for (std::size_t choice = 0; choice < (std::size_t{1} << pack.shims.size()); ++choice) {
    double top = 0;
    for (std::size_t i = 0; i < pack.shims.size(); ++i) {
      if ((choice >> i & 1U) != 0) top += pack.shims[i].si();
    }
    if (std::abs(top - wanted) >= nearest - 1e-9) continue;
    nearest = std::abs(top - wanted);
    best = top;
  }
  return PackSplit{Length::fromSi(best), pack.total - Length::fromSi(best)};
}

std::size_t nearestTo(const std::vector<AllowedPack>& packs, Length wanted) {
  const auto nearest =
      std::min_element(packs.begin(), packs.end(), [wanted](const auto& a, const auto& b) {
        return std::abs((a.total - wanted).si()) < std::abs((b.total - wanted).si());
      });
  return static_cast<std::size_t>(nearest - packs.begin());
}

void offerPacks(const FirstPackInput& input, const std::vector<AllowedPack>& packs,
                FirstPack& first) {
  const std::size_t nearest = nearestTo(packs, first.wanted);
  std::vector<std::size_t> offered{nearest};
  if (nearest + 1 < packs.size()) offered.push_back(nearest + 1);
  if (nearest > 0 && offered.size() < kMostOffered) offered.push_back(nearest - 1);
  for (const std::size_t at : offered) {
    first.packs.push_back({packs[at], splitOf(packs[at], input.split)});
  }
}

}  // namespace

Result<FirstPack> firstPack(const FirstPackInput& input) {
  if (auto usable = check(input); !usable) return failAs(usable);
  const auto packs = allowedPacks(input.stock);
  if (!packs) return failAs(packs);
  if (packs->empty()) return fail(ErrorCode::Degenerate, "shims.no_pack", "shim_sizes");
  FirstPack first;
  input.method == FirstPackMethod::Nip ? measureGaps(input, first) : measureFloat(input, first);
  if (!(first.wanted.si() > 0)) {
    return fail(ErrorCode::Degenerate, "first_pack.nothing_left",
                input.method == FirstPackMethod::Nip ? "gaps" : "end_float",
                {{"text", exactText(first.wanted.si(), defaultUnit(QuantityKind::Length))}});
  }
  offerPacks(input, *packs, first);
  if (input.found) {
    const AllowedPack& stack = (*packs)[nearestTo(*packs, *input.found)];
    const double away = std::abs((stack.total - *input.found).si());
    if (away <= kStackTolerance.si()) first.foundStack = stack;
  }
  return first;
}

}  // namespace sw::mechanics
