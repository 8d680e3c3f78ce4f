// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/swivel/pack_advice.h"

#include <algorithm>
#include <cmath>

#include "base/words.h"
#include "measure/decision.h"

namespace sw {

template <>
struct Words<mechanics::PackReach> {
  static constexpr std::pair<mechanics::PackReach, std::string_view> table[]{
      {mechanics::PackReach::Measured, "measured"},
      {mechanics::PackReach::Reachable, "within_reach"},
      {mechanics::PackReach::Beyond, "beyond_reach"}};
};

template <>
struct Words<mechanics::PredictionBasis> {
  static constexpr std::pair<mechanics::PredictionBasis, std::string_view> table[]{
      {mechanics::PredictionBasis::None, "none"},
      {mechanics::PredictionBasis::History, "from_history"},
      {mechanics::PredictionBasis::OwnPulls, "own_pulls"},
      {mechanics::PredictionBasis::OwnPullsAndHistory, "own_pulls_and_history"}};
};

template <>
struct Words<mechanics::PackReason> {
  static constexpr std::pair<mechanics::PackReason, std::string_view> table[]{
      {mechanics::PackReason::Stay, "stay"},
      {mechanics::PackReason::LikeliestWithin, "likeliest_within"},
      {mechanics::PackReason::AsFarAsAllowed, "as_far_as_allowed"},
      {mechanics::PackReason::OneStep, "one_step"},
      {mechanics::PackReason::MeasuredKnee, "takes_up_the_float"},
      {mechanics::PackReason::MeasureFirst, "measure_first"},
      {mechanics::PackReason::PacksEnd, "packs_end"},
      {mechanics::PackReason::NoneLikely, "none_likely"}};
};

}  // namespace sw

namespace sw::mechanics {

std::string_view word(PackReach reach) {
  return wordOf(reach);
}

std::string_view word(PredictionBasis basis) {
  return wordOf(basis);
}

std::string_view word(PackReason reason) {
  return wordOf(reason);
}

namespace {

constexpr double kAlmostAsGood = 0.02;
constexpr double kConfidence = 0.95;
constexpr double kOvershootAllowed = 0.15;
constexpr double kHopeless = 0.02;
constexpr double kJumpsOver = 0.95;
constexpr int kHalvings = 12;
constexpr double kReachFactor = 2.0;
constexpr double kFlatIfAbove = 0.7;
constexpr double kScatterShare = 0.05;  // of the pull, where nothing else is known

Result<void> checkQuestion(const PackQuestion& question) {
  if (!question.limit.any()) return fail(ErrorCode::Missing, "shims.no_limit", "limit");
  if (question.limit.min && question.limit.max && *question.limit.min > *question.limit.max) {
    return fail(ErrorCode::OutOfRange, "measure.empty_limit", "limit");
  }
  if (question.terms.pulls < 1)
    return fail(ErrorCode::OutOfRange, "measure.not_positive", "planned");
  for (const PackPulls& pack : question.measured) {
    if (pack.pulls.empty()) return fail(ErrorCode::Missing, "measure.no_readings", "measured");
    for (const Force pull : pack.pulls) {
      if (!std::isfinite(pull.si()))
        return fail(ErrorCode::OutOfRange, "measure.not_finite", "pulls");
      if (pull.si() < 0) return fail(ErrorCode::OutOfRange, "measure.not_positive", "pulls");
    }
  }
  return {};
}

/// One quantile from pack to pack: the next lies near the line through the last two.
class Trail {
 public:
  double quantile(const measure::StudentMixture& mixture, double probability, Length pack) {
    std::optional<double> guess;
    if (m_before && m_last) {
      const double step = (m_last->pack - m_before->pack).si();
      const double share = step != 0 ? (pack - m_last->pack).si() / step : 0.0;
      guess = m_last->value + share * (m_last->value - m_before->value);
    }
    m_before = m_last;
    m_last = Point{pack, mixture.quantile(probability, guess)};
    return m_last->value;
  }

 private:
  struct Point {
    Length pack;
    double value = 0;
  };
  std::optional<Point> m_before, m_last;
};

/// Works one question through.
class Adviser {
 public:
  Adviser(const PackQuestion& question, std::vector<AllowedPack> packs)
      : m_question(question), m_packs(std::move(packs)) {}

  PackAdvice advise(AdviceDetail detail);

 private:
  [[nodiscard]] double raising(Length pack) const {
    return mechanics::raising(m_question.effect, pack);
  }
  [[nodiscard]] bool same(Length a, Length b) const {
    return std::abs((a - b).si()) <= kSamePack.si();
  }
  [[nodiscard]] std::size_t packsMeasured() const;
  [[nodiscard]] PredictionBasis basis() const;
  [[nodiscard]] std::optional<ForceDirection> directionAsked() const;
  void fitLine();
  void setReach();
  void setGuard();
  [[nodiscard]] double provedShare(const measure::StudentMixture& shown) const;
  void predict(PackRow& row, AdviceDetail detail);
  void findWanted();
  [[nodiscard]] std::optional<std::size_t> nextRow(ForceDirection direction) const;
  [[nodiscard]] PackReach reachOf(Length pack) const;
  void openNextSteps();
  void recommend();
  void recommendByMeasuredKnee();
  [[nodiscard]] bool knownFloatLeft() const;
  void recommendOneStep();
  void recommendWhereNoneIsLikely();
  void recommendByProbability();
  [[nodiscard]] std::size_t nearestRow(Length pack) const;
  [[nodiscard]] std::optional<std::size_t> rowOf(Length pack) const;
  [[nodiscard]] std::optional<std::size_t> likeliest() const;
  [[nodiscard]] bool better(const PackRow& a, const PackRow& b) const;

  const PackQuestion& m_question;
  std::vector<AllowedPack> m_packs;
  PackAdvice m_advice;
  double m_reachLow = 0, m_reachHigh = 0;  ///< along the raising direction
  bool m_oneStepOnly = true;
  double m_guard = 0;  ///< N, from a limit
  Trail m_middle, m_low, m_high, m_shownLow, m_shownHigh;
};

std::size_t Adviser::packsMeasured() const {
  std::vector<Length> packs;
  for (const PackPulls& pulls : m_question.measured) {
    const bool known = std::any_of(packs.begin(), packs.end(),
                                   [&](Length pack) { return same(pack, pulls.pack); });
    if (!known) packs.push_back(pulls.pack);
  }
  return packs.size();
}

PredictionBasis Adviser::basis() const {
  const bool history = m_question.history && m_question.history->sides > 0;
  const std::size_t packs = packsMeasured();
  if (packs >= 2) return history ? PredictionBasis::OwnPullsAndHistory : PredictionBasis::OwnPulls;
  return history && packs == 1 ? PredictionBasis::History : PredictionBasis::None;
}

std::optional<ForceDirection> Adviser::directionAsked() const {
  if (m_question.measured.empty()) return std::nullopt;
  const double mean = meanPull(m_question.measured.back()).si();
  const LimitBand& limit = m_question.limit;
  if (limit.min && mean < *limit.min) return ForceDirection::RaiseForce;
  if (limit.max && mean > *limit.max) return ForceDirection::LowerForce;
  return std::nullopt;
}

void Adviser::fitLine() {
  PriorKnowledge knowledge;
  knowledge.effect = m_question.effect;
  knowledge.thinnest = m_packs.front().total;
  knowledge.thickest = m_packs.back().total;
  takePulls(m_question.measured, knowledge);
  const double graduation = m_question.terms.graduationUncertainty.si() * std::sqrt(12.0);
  const double guess = std::max({graduation, kScatterShare * knowledge.lowestPull.si(), 1e-3});
  knowledge.scatter = m_question.scatter.value_or(ScatterWords{Force::fromSi(guess), 2.0});
  knowledge.rebuildScatter = m_question.rebuildScatter;
  knowledge.knee = m_question.knee;
  knowledge.history = m_question.history ? &*m_question.history : nullptr;
  m_advice.line.emplace(priorFrom(knowledge), m_question.effect, m_question.measured);
  m_advice.floatLikely =
      m_advice.line->flatProbability(m_question.measured.back().pack) > kFlatIfAbove;
}

void Adviser::setReach() {
  std::optional<double> loosest;  // on the slope
  std::optional<double> tightest;
  std::optional<double> flat;  // the tightest pack that probably leaves float
  for (const PackPulls& pulls : m_question.measured) {
    const double z = raising(pulls.pack);
    if (m_advice.line && m_advice.line->flatProbability(pulls.pack) <= kFlatIfAbove) {
      loosest = std::min(loosest.value_or(z), z);
      tightest = std::max(tightest.value_or(z), z);
    } else {
      flat = std::max(flat.value_or(z), z);
    }
  }
  m_oneStepOnly = packsMeasured() < 2 || !tightest;
  if (m_oneStepOnly) return;
  // One pack on the slope: the interval back to the last that left float is what is measured.
  if (*tightest - *loosest <= kSamePack.si() && flat) loosest = std::min(*loosest, *flat);
  const double interval = *tightest - *loosest;
  m_reachLow = *loosest - kReachFactor * interval;
  m_reachHigh = *tightest + kReachFactor * interval;
}

/// The share of means that keep the guard band of the verdict rule from both limits.
double Adviser::provedShare(const measure::StudentMixture& shown) const {
  const LimitBand& limit = m_question.limit;
  const double low = limit.min ? *limit.min + m_guard : 0.0;
  const double below = limit.min ? shown.cdf(low) : 0.0;
  if (!limit.max) return 1.0 - below;
  const double high = *limit.max - m_guard;
  return limit.min && high <= low ? 0.0 : std::max(0.0, shown.cdf(high) - below);
}

void Adviser::setGuard() {
  const double pulls = m_question.terms.pulls;
  const double scatter = m_advice.line->scatter().si();
  const double uA = scatter / std::sqrt(pulls);
  const double uB = std::hypot(m_question.terms.instrumentUncertainty.si(),
                               m_question.terms.graduationUncertainty.si());
  const double u = std::hypot(uA, uB);
  const double nu = std::max(1.0, pulls - 1.0) * std::pow(u / uA, 4);
  m_guard = measure::guardBand(u, nu, kConfidence);
}

void Adviser::predict(PackRow& row, AdviceDetail detail) {
  const auto truth = m_advice.line->trueForce(row.pack.total, m_question.terms);
  PackRow::Prediction prediction;
  const double above = m_question.limit.max ? 1.0 - truth.cdf(*m_question.limit.max) : 0.0;
  const double below = m_question.limit.min ? truth.cdf(*m_question.limit.min) : 0.0;
  prediction.below = below;
  prediction.above = above;
  prediction.within = std::max(0.0, 1.0 - below - above);
  prediction.expected = Force::fromSi(m_middle.quantile(truth, 0.5, row.pack.total));
  const auto shown = m_advice.line->shownForce(row.pack.total, m_question.terms);
  prediction.proved = provedShare(shown);
  if (m_question.otherSide) prediction.fromOtherSide = prediction.expected - *m_question.otherSide;
  if (detail == AdviceDetail::WholeTable) {
    prediction.trueForce = {Force::fromSi(m_low.quantile(truth, 0.025, row.pack.total)),
                            Force::fromSi(m_high.quantile(truth, 0.975, row.pack.total))};
    prediction.shownForce = {Force::fromSi(m_shownLow.quantile(shown, 0.025, row.pack.total)),
                             Force::fromSi(m_shownHigh.quantile(shown, 0.975, row.pack.total))};
  }
  row.prediction = prediction;
}

std::size_t Adviser::nearestRow(Length pack) const {
  const auto away = [pack](const PackRow& row) { return std::abs((row.pack.total - pack).si()); };
  const auto nearest =
      std::min_element(m_advice.rows.begin(), m_advice.rows.end(),
                       [&](const PackRow& a, const PackRow& b) { return away(a) < away(b); });
  return static_cast<std::size_t>(nearest - m_advice.rows.begin());
}

/// The row of this very pack.
std::optional<std::size_t> Adviser::rowOf(Length pack) const {
  const std::size_t nearest = nearestRow(pack);
  if (!same(m_advice.rows[nearest].pack.total, pack)) return std::nullopt;
  return nearest;
}

bool Adviser::better(const PackRow& a, const PackRow& b) const {
  const double gain = a.prediction->proved - b.prediction->proved;
  if (std::abs(gain) > kAlmostAsGood) return gain > 0;
  if (a.prediction->fromOtherSide && b.prediction->fromOtherSide) {
    const double nearer =
        std::abs(b.prediction->fromOtherSide->si()) - std::abs(a.prediction->fromOtherSide->si());
    if (std::abs(nearer) > m_advice.line->scatter().si()) return nearer > 0;
  }
  const LimitBand& limit = m_question.limit;
  if (limit.min && limit.max) {
    const double middle = 0.5 * (*limit.min + *limit.max);
    return std::abs(a.prediction->expected.si() - middle) <
           std::abs(b.prediction->expected.si() - middle);
  }
  return a.pack.count() != b.pack.count() ? a.pack.count() < b.pack.count() : gain > 0;
}

/// Of all packs, the one that will most probably do.
std::optional<std::size_t> Adviser::likeliest() const {
  double greatest = 0;
  for (const PackRow& row : m_advice.rows) greatest = std::max(greatest, row.prediction->proved);
  std::optional<std::size_t> best;
  for (std::size_t i = 0; i < m_advice.rows.size(); ++i) {
    if (m_advice.rows[i].prediction->proved < greatest - kAlmostAsGood) continue;
    if (!best || better(m_advice.rows[i], m_advice.rows[*best])) best = i;
  }
  return best;
}

void Adviser::recommendByMeasuredKnee() {
  m_advice.reason = PackReason::MeasureFirst;
  if (!m_question.knee) return;
  const std::size_t nearest = nearestRow(m_question.knee->pack);
  const bool isIn = !m_question.measured.empty() &&
                    same(m_advice.rows[nearest].pack.total, m_question.measured.back().pack);
  if (isIn) return recommendOneStep();
  m_advice.recommended = nearest;
  m_advice.reason = PackReason::MeasuredKnee;
}

void Adviser::recommendOneStep() {
  if (!m_advice.direction) {
    m_advice.recommended = rowOf(m_question.measured.back().pack);
    m_advice.reason = PackReason::Stay;
    return;
  }
  m_advice.recommended = nextRow(*m_advice.direction);
  m_advice.reason = m_advice.recommended ? PackReason::OneStep : PackReason::PacksEnd;
}

/// One step, if it may still land: not back to a pack that was in, nor over the limit.
void Adviser::recommendWhereNoneIsLikely() {
  recommendOneStep();
  if (m_advice.reason != PackReason::OneStep) return;
  const PackRow& next = m_advice.rows[*m_advice.recommended];
  const bool up = m_advice.direction == ForceDirection::RaiseForce;
  const double jumps = up ? next.prediction->above : next.prediction->below;
  if (next.reach != PackReach::Measured && jumps < kJumpsOver) return;
  m_advice.recommended.reset();
  m_advice.reason = PackReason::NoneLikely;
}

void Adviser::recommendByProbability() {
  const auto best = likeliest();
  if (!best || m_advice.rows[*best].prediction->within < kHopeless) {
    return recommendWhereNoneIsLikely();
  }
  const Length current = m_question.measured.back().pack;
  const PackRow& wanted = m_advice.rows[*best];
  if (same(wanted.pack.total, current)) {
    m_advice.recommended = best;
    m_advice.reason = PackReason::Stay;
    return;
  }
  if (wanted.reach != PackReach::Beyond) {
    m_advice.recommended = best;
    m_advice.reason = PackReason::LikeliestWithin;
    return;
  }
  // As far towards it as the measured interval carries.
  const double from = raising(current);
  const double to = raising(wanted.pack.total);
  const bool up = to > from;
  std::optional<std::size_t> farthest;
  double way = 0;
  for (std::size_t i = 0; i < m_advice.rows.size(); ++i) {
    const PackRow& row = m_advice.rows[i];
    const double gone = (raising(row.pack.total) - from) * (up ? 1.0 : -1.0);
    if (row.reach != PackReach::Reachable || gone <= kSamePack.si()) continue;
    const double beyond = up ? row.prediction->above : row.prediction->below;
    if (beyond > kOvershootAllowed || gone <= way) continue;
    farthest = i;
    way = gone;
  }
  m_advice.reason = PackReason::AsFarAsAllowed;
  m_advice.recommended = farthest;
  if (farthest) return;
  m_advice.direction = up ? ForceDirection::RaiseForce : ForceDirection::LowerForce;
  recommendOneStep();
}

/// Float is left and its size was measured: that is no prediction, so it may be several steps.
bool Adviser::knownFloatLeft() const {
  if (!m_question.knee || packsMeasured() >= 2) return false;
  return raising(m_question.measured.back().pack) < raising(m_question.knee->pack) - kSamePack.si();
}

/// Bisection: the expected force rises along the raising direction.
void Adviser::findWanted() {
  const LimitBand& limit = m_question.limit;
  const double target = limit.min && limit.max ? 0.5 * (*limit.min + *limit.max)
                                               : limit.min.value_or(limit.max.value_or(0.0));
  const bool thinner = m_question.effect == ShimEffect::ThinnerRaises;
  Length loose = thinner ? m_packs.back().total : m_packs.front().total;
  Length tight = thinner ? Length{} : 2.0 * m_packs.back().total;
  Trail trail;
  const auto expected = [&](Length pack) {
    return trail.quantile(m_advice.line->trueForce(pack, m_question.terms), 0.5, pack);
  };
  if (expected(loose) > target || expected(tight) < target) return;
  for (int step = 0; step < kHalvings; ++step) {
    const Length middle = 0.5 * (loose + tight);
    (expected(middle) < target ? loose : tight) = middle;
  }
  m_advice.wanted = 0.5 * (loose + tight);
}

void Adviser::recommend() {
  if (m_question.measured.empty() || knownFloatLeft()) return recommendByMeasuredKnee();
  if (m_oneStepOnly) return recommendOneStep();
  recommendByProbability();
}

/// The very next pack from the one that is in.
std::optional<std::size_t> Adviser::nextRow(ForceDirection direction) const {
  const auto next = nextPack(m_packs, {.current = m_question.measured.back().pack,
                                       .effect = m_question.effect,
                                       .direction = direction,
                                       .sameWithin = kSamePack});
  return next ? rowOf(next->total) : std::nullopt;
}

PackReach Adviser::reachOf(Length pack) const {
  const bool measured = std::any_of(m_question.measured.begin(), m_question.measured.end(),
                                    [&](const auto& pulls) { return same(pulls.pack, pack); });
  if (measured) return PackReach::Measured;
  const double z = raising(pack);
  const double slack = kSamePack.si();
  const bool reachable = !m_oneStepOnly && z >= m_reachLow - slack && z <= m_reachHigh + slack;
  return reachable ? PackReach::Reachable : PackReach::Beyond;
}

/// Where one step is all, the packs next to the one that is in are within reach.
void Adviser::openNextSteps() {
  if (!m_oneStepOnly || m_question.measured.empty()) return;
  for (const auto direction : {ForceDirection::RaiseForce, ForceDirection::LowerForce}) {
    const auto row = nextRow(direction);
    if (row && m_advice.rows[*row].reach == PackReach::Beyond) {
      m_advice.rows[*row].reach = PackReach::Reachable;
    }
  }
}

PackAdvice Adviser::advise(AdviceDetail detail) {
  m_advice.basis = basis();
  m_advice.direction = directionAsked();
  if (m_advice.basis != PredictionBasis::None) {
    fitLine();
    setGuard();
  }
  setReach();
  for (const AllowedPack& pack : m_packs) {
    PackRow row{pack, reachOf(pack.total), std::nullopt};
    if (m_advice.line) predict(row, detail);
    m_advice.rows.push_back(std::move(row));
  }
  openNextSteps();
  if (m_advice.line && detail == AdviceDetail::WholeTable) findWanted();
  recommend();
  return std::move(m_advice);
}

}  // namespace

Result<PackAdvice> advisePack(const PackQuestion& question, AdviceDetail detail) {
  if (auto usable = checkQuestion(question); !usable) return failAs(usable);
  auto packs = allowedPacks(question.stock);
  if (!packs) return failAs(packs);
  if (packs->empty()) return fail(ErrorCode::Degenerate, "shims.no_pack", "shim_sizes");
  return Adviser(question, std::move(*packs)).advise(detail);
}

}  // namespace sw::mechanics
