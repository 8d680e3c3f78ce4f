// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/geometry/limit_reading.h"

#include <algorithm>
#include <string>

namespace sw::compute {

std::optional<LimitBand> readLimit(InputReader& reader, std::string_view key, QuantityKind kind) {
  if (!reader.fields().has(key)) return std::nullopt;
  LimitBand limit;
  reader.inObject(key, [&](InputReader& inner) {
    limit = readBand(inner, {.kind = kind});
    if (!inner.fields().has("max")) inner.requireKey("min");
  });
  if (limit.min && limit.max && *limit.min > *limit.max) {
    reader.fail(
        {ErrorCode::OutOfRange, "measure.empty_limit", reader.fields().pathOf(key) + "/min", {}});
  }
  return limit;
}

FieldDescription limitField(std::string_view name, QuantityKind kind, std::string_view meaning) {
  return {.name = name,
          .kind = "object",
          .meaning = meaning,
          .fields = {quantityField("min", kind, "lower limit; this, max or both"),
                     quantityField("max", kind, "upper limit")}};
}

Verdict verdictOf(const measure::Estimate& estimate, const std::optional<LimitBand>& limit,
                  double confidence) {
  if (!limit) return Verdict::NoLimit;
  constexpr auto kRule = DecisionRule::ConformanceProbability;
  const Verdict verdict =
      measure::decide(estimate, *limit, {.bar = confidence, .rule = kRule}).verdict;
  if (verdict != Verdict::Undecided) return verdict;  // a coarse gauge may still prove "outside"
  const bool coarse =
      measure::instrumentTooCoarse(*limit, estimate.standardUncertainty, confidence, kRule);
  return coarse ? Verdict::InstrumentTooCoarse : verdict;
}

FieldDescription verdictField(std::string_view range, std::string_view meaning) {
  return {.name = "verdict",
          .kind = "word",
          .presence = Presence::Required,
          .range = range,
          .meaning = meaning};
}

void requireOneOf(InputReader& reader, std::initializer_list<std::string_view> keys) {
  const auto given = std::count_if(keys.begin(), keys.end(),
                                   [&](std::string_view key) { return reader.fields().has(key); });
  const std::string_view first = *keys.begin();
  if (given == 0) reader.requireKey(first);
  if (given > 1) {
    reader.fail({ErrorCode::OutOfRange, "wheels.one_source", reader.fields().pathOf(first), {}});
  }
}

}  // namespace sw::compute
