// SPDX-License-Identifier: GPL-3.0-or-later
#include "shim_race.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <thread>

#include "measure/evaluation.h"
#include "measure/type_b.h"
#include "simulated_axle.h"

namespace sw::eval {
namespace {

constexpr int kClosedJobs = 6;  // of the shop before, two sides each
constexpr std::uint64_t kSeed = 20261126;
constexpr int kPulls = 5;
constexpr double kFloatUncertainty = 0.015;  // mm, dial gauge or feeler
constexpr int kMostStripDowns = 25;

double between(double low, double high, std::mt19937_64& random) {
  return std::uniform_real_distribution<double>(low, high)(random);
}

/// What one shop has to do with: one axle arrangement, one scale, one stock of shims.
struct Shop {
  mechanics::ShimEffect effect;
  double slope, slopeSpread;  ///< N/mm, of the logarithm
  double drag;                ///< N
  double limitLow, limitHigh;
  double step;  ///< mm, the thinnest shim
  SimulatedScale scale;
};

Shop makeShop(mechanics::ShimEffect effect, std::mt19937_64& random) {
  Shop shop;
  shop.effect = effect;
  shop.slope = std::exp(between(std::log(20.0), std::log(100.0), random));
  shop.slopeSpread = 0.25;
  shop.drag = between(3.0, 7.0, random);
  shop.limitLow = shop.drag + between(6.0, 12.0, random);
  shop.limitHigh = shop.limitLow + between(6.0, 10.0, random);
  shop.step = std::array{0.05, 0.05, 0.075, 0.1}[random() % 4];
  shop.scale.graduation = std::array{0.2, 0.5, 1.0}[random() % 3];
  shop.scale.permissibleError = shop.scale.graduation;
  shop.scale.error = between(-1.0, 1.0, random) * shop.scale.permissibleError;
  shop.scale.scatter = between(0.2, 0.8, random);
  return shop;
}

struct Side {
  SimulatedSide truth;
  double found;  ///< mm, pack as found
};

Side makeSide(const Shop& shop, std::mt19937_64& random) {
  Side side;
  side.truth.effect = shop.effect;
  side.truth.slope =
      shop.slope * std::exp(std::normal_distribution<double>(0, shop.slopeSpread)(random));
  side.truth.drag = shop.drag * between(0.8, 1.2, random);
  side.found = std::round(between(0.9, 1.1, random) / shop.step) * shop.step;
  const double looseBy = between(-0.10, 0.15, random);  // float, or a little preload
  const bool thinner = shop.effect == mechanics::ShimEffect::ThinnerRaises;
  side.truth.knee = side.found + (thinner ? -looseBy : looseBy);
  return side;
}

mechanics::PackQuestion questionOf(const Shop& shop, const Side& side) {
  mechanics::PackQuestion question;
  question.effect = shop.effect;
  const auto step = millimetres(shop.step);
  question.stock.sizes = {{step, 3}, {4.0 * step, 20}};
  question.stock.maxCount = 30;
  question.stock.maxPack = millimetres(side.found + 1.0);
  question.limit = {shop.limitLow, shop.limitHigh};
  question.terms.instrumentUncertainty = newtons(measure::rectangular(shop.scale.permissibleError));
  question.terms.graduationUncertainty =
      newtons(measure::graduationUncertainty(shop.scale.graduation));
  question.terms.pulls = kPulls;
  return question;
}

Verdict verdictOn(const Shop& shop, const mechanics::PackPulls& pulls) {
  SeriesInput series;
  for (const Force pull : pulls.pulls) series.readings.push_back(pull.si());
  series.instrument.graduation = shop.scale.graduation;
  series.instrument.permissibleError = shop.scale.permissibleError;
  series.limit = {shop.limitLow, shop.limitHigh};
  series.planned = kPulls;
  return evaluateSeries(series).value().verdict;
}

struct End {
  int stripDowns = 0;
  bool proved = false;
  double trueForce = 0;
};

/// One more step in the raising direction and try again, until it is proved or the packs end; over
/// the limit: one step back, and that stays.
std::optional<double> usualNext(const Shop& shop, double pack, const mechanics::PackPulls& pulls,
                                bool& last) {
  const double up = shop.effect == mechanics::ShimEffect::ThinnerRaises ? -shop.step : shop.step;
  if (mechanics::meanPull(pulls).si() > shop.limitHigh) {
    last = true;
    return pack - up;
  }
  return pack + up;
}

/// The pack the advisor recommends, unless it is the one that is in.
std::optional<double> advisedNext(const mechanics::PackQuestion& question, double pack) {
  const auto advice =
      mechanics::advisePack(question, mechanics::AdviceDetail::RecommendationOnly).value();
  if (!advice.recommended) return std::nullopt;
  const double next = inMillimetres(advice.rows[*advice.recommended].pack.total);
  if (std::abs(next - pack) < 1e-6) return std::nullopt;
  return next;
}

End work(Way way, const Shop& shop, const Side& side,
         const std::optional<mechanics::ShopHistory>& history, std::mt19937_64 random) {
  auto question = questionOf(shop, side);
  if (way == Way::History || way == Way::FloatAndHistory) question.history = history;
  if (way == Way::FloatAndHistory) {
    const double seen =
        side.truth.knee + std::normal_distribution<double>(0, kFloatUncertainty)(random);
    question.knee = mechanics::MeasuredKnee{millimetres(seen), millimetres(kFloatUncertainty)};
  }
  double pack = side.found;
  End end;
  bool last = false;
  question.measured.push_back(pulledOn(side.truth, shop.scale, pack, kPulls, random));
  while (true) {
    end.trueForce = side.truth.force(pack);
    end.proved = verdictOn(shop, question.measured.back()) == Verdict::Within;
    if (end.proved || last || end.stripDowns == kMostStripDowns) return end;
    const auto next = way == Way::OneStepMore
                          ? usualNext(shop, pack, question.measured.back(), last)
                          : advisedNext(question, pack);
    if (!next || *next <= 0) return end;
    for (const auto& pulled : question.measured) {
      // Back to a pack that was in before: that one stays.
      if (std::abs(inMillimetres(pulled.pack) - *next) < 1e-6) last = true;
    }
    pack = *next;
    ++end.stripDowns;
    question.measured.push_back(pulledOn(side.truth, shop.scale, pack, kPulls, random));
  }
}

mechanics::HistoricSide closedSide(const Shop& shop, std::mt19937_64& random) {
  // A closed job of the usual way: every pack from the one found to the one left.
  const Side side = makeSide(shop, random);
  mechanics::HistoricSide closed;
  double pack = side.found;
  bool last = false;
  for (int i = 0; i < kMostStripDowns; ++i) {
    closed.packs.push_back(pulledOn(side.truth, shop.scale, pack, kPulls, random));
    if (last || verdictOn(shop, closed.packs.back()) == Verdict::Within) break;
    const auto next = usualNext(shop, pack, closed.packs.back(), last);
    if (!next || *next <= 0) break;
    pack = *next;
  }
  return closed;
}

Tallies runShop(mechanics::ShimEffect effect, std::uint64_t seed) {
  std::mt19937_64 random(seed);
  const Shop shop = makeShop(effect, random);
  std::vector<mechanics::HistoricSide> closed;
  for (int i = 0; i < 2 * kClosedJobs; ++i) closed.push_back(closedSide(shop, random));
  const auto history =
      mechanics::learnedFrom(closed, effect, {newtons(std::max(shop.scale.graduation, 0.3)), 2.0});
  Tallies tallies;
  for (int axle = 0; axle < kAxlesAShop; ++axle) {
    const std::array sides{makeSide(shop, random), makeSide(shop, random)};
    for (std::size_t way = 0; way < kWays; ++way) {
      Tally& tally = tallies[way];
      tally.axles += 1;
      for (const Side& side : sides) {
        const End end = work(Way(way), shop, side, history, random);
        tally.stripDowns += end.stripDowns;
        tally.packs += 1;
        tally.proved += end.proved ? 1 : 0;
        tally.over += end.trueForce > shop.limitHigh ? 1 : 0;
        tally.loose += end.trueForce < shop.limitLow ? 1 : 0;
      }
      random.discard(1);
    }
  }
  return tallies;
}

}  // namespace

void Tally::add(const Tally& other) {
  axles += other.axles;
  stripDowns += other.stripDowns;
  packs += other.packs;
  proved += other.proved;
  over += other.over;
  loose += other.loose;
}

Tallies race(mechanics::ShimEffect effect, int shops) {
  std::array<Tallies, 2> halves;
  std::array<std::thread, 2> threads;
  for (std::size_t t = 0; t < threads.size(); ++t) {
    threads[t] = std::thread([&, t] {
      for (int shop = static_cast<int>(t); shop < shops; shop += 2) {
        const Tallies one = runShop(effect, kSeed + static_cast<std::uint64_t>(shop));
        for (std::size_t way = 0; way < kWays; ++way) halves[t][way].add(one[way]);
      }
    });
  }
  for (auto& thread : threads) thread.join();
  Tallies all;
  for (const Tallies& half : halves) {
    for (std::size_t way = 0; way < kWays; ++way) all[way].add(half[way]);
  }
  return all;
}

}  // namespace sw::eval
