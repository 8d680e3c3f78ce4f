// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/swivel/shim_packs.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <map>

#include "units/parse.h"

namespace sw::mechanics {

namespace {

using Nanometres = std::int64_t;

constexpr Nanometres kPerMicrometre = 1000;
constexpr double kMetresPerNanometre = 1e-9;
constexpr double kLargestThickness = 1.0;  // m
constexpr int kMostShims = 100;
constexpr std::size_t kMostPacks = 100'000;

/// A pack in the making: shims thickest first.
using Shims = std::vector<Nanometres>;
/// The best make-up for each total.
using Packs = std::map<Nanometres, Shims>;

struct Size {
  Nanometres thickness = 0;
  int onHand = 0;
};

Nanometres toNanometres(Length length) {
  return static_cast<Nanometres>(std::llround(length.si() / kMetresPerNanometre));
}

Length toLength(Nanometres value) {
  return Length::fromSi(static_cast<double>(value) * kMetresPerNanometre);
}

/// To the nearest micrometre, halves up.
std::int64_t toMicrometres(Nanometres value) {
  return (value + kPerMicrometre / 2) / kPerMicrometre;
}

bool usable(Length length) {
  return std::isfinite(length.si()) && length.si() <= kLargestThickness &&
         toNanometres(length) >= kPerMicrometre;
}

bool better(const Shims& a, const Shims& b) {
  return a.size() != b.size() ? a.size() < b.size() : a > b;
}

tl::unexpected<Error> notPositive(const std::string& field, std::size_t position) {
  return fail(ErrorCode::OutOfRange, "shims.not_positive", field,
              {{"position", std::to_string(position)}});
}

Result<void> checkBounds(const ShimStock& stock) {
  if (stock.sizes.empty()) return fail(ErrorCode::Missing, "shims.no_sizes", "shim_sizes");
  if (stock.maxPack && !usable(*stock.maxPack)) {
    return fail(ErrorCode::OutOfRange, "shims.not_positive", "max_pack");
  }
  if (stock.maxCount < 1) {
    return fail(ErrorCode::OutOfRange, "shims.not_positive", "max_count");
  }
  if (stock.maxCount > kMostShims) {
    return fail(ErrorCode::OutOfRange, "shims.too_many_in_pack", "max_count",
                {{"most", std::to_string(kMostShims)}});
  }
  return {};
}

/// Sizes thickest first, the same size named twice taken together.
Result<std::vector<Size>> sortedSizes(const ShimStock& stock) {
  std::map<Nanometres, int, std::greater<>> byThickness;
  std::size_t position = 0;
  for (const ShimSize& size : stock.sizes) {
    ++position;
    if (!usable(size.thickness)) return notPositive("shim_sizes", position);
    if (size.onHand && *size.onHand < 0) return notPositive("on_hand", position);
    int& onHand = byThickness[toNanometres(size.thickness)];
    onHand = std::min(stock.maxCount,
                      onHand + std::min(stock.maxCount, size.onHand.value_or(stock.maxCount)));
  }
  std::vector<Size> sizes;
  for (const auto& [thickness, onHand] : byThickness) sizes.push_back({thickness, onHand});
  return sizes;
}

void keepBetter(Packs& packs, Nanometres total, Shims shims) {
  const auto [place, isNew] = packs.try_emplace(total, std::move(shims));
  if (!isNew && better(shims, place->second)) place->second = std::move(shims);
}

/// Every pack so far with 0, 1, 2 ... shims of one more size.
Packs withSize(const Packs& before, const Size& size, Nanometres maxPack, std::size_t maxCount) {
  Packs after = before;
  for (const auto& [total, shims] : before) {
    Shims more = shims;
    Nanometres sum = total;
    for (int i = 0; i < size.onHand; ++i) {
      more.push_back(size.thickness);
      sum += size.thickness;
      if (more.size() > maxCount || sum > maxPack || after.size() > kMostPacks) break;
      keepBetter(after, sum, more);
    }
  }
  return after;
}

AllowedPack toPack(Nanometres total, const Shims& shims) {
  AllowedPack pack;
  std::transform(shims.begin(), shims.end(), std::back_inserter(pack.shims), toLength);
  pack.total = toLength(total);
  return pack;
}

/// One pack for each total in micrometres; the empty one left out.
std::vector<AllowedPack> distinctPacks(const Packs& packs) {
  std::map<std::int64_t, std::pair<Nanometres, const Shims*>> distinct;
  for (const auto& [total, shims] : packs) {
    if (shims.empty()) continue;
    const auto [place, isNew] = distinct.try_emplace(toMicrometres(total), total, &shims);
    if (!isNew && better(shims, *place->second.second)) place->second = {total, &shims};
  }
  std::vector<AllowedPack> list;
  for (const auto& [key, pack] : distinct) list.push_back(toPack(pack.first, *pack.second));
  return list;
}

/// The text with '+' as the separator that series know; the place of an empty item, if any.
std::optional<std::size_t> separate(std::string& text) {
  std::size_t position = 1;
  bool something = false;
  for (char& c : text) {
    if (c == '+') {
      if (!something) return position;
      c = ';';
      something = false;
      ++position;
    } else if (c != ' ') {
      something = true;
    }
  }
  return position > 1 && !something ? std::optional(position) : std::nullopt;
}

}  // namespace

Result<std::vector<AllowedPack>> allowedPacks(const ShimStock& stock) {
  if (const auto bounds = checkBounds(stock); !bounds) return failAs(bounds);
  const auto sizes = sortedSizes(stock);
  if (!sizes) return failAs(sizes);
  const Nanometres maxPack =
      toNanometres(stock.maxPack.value_or(Length::fromSi(kLargestThickness * kMostShims)));
  Packs packs{{0, Shims{}}};
  for (const Size& size : *sizes) {
    packs = withSize(packs, size, maxPack, static_cast<std::size_t>(stock.maxCount));
    if (packs.size() > kMostPacks) {
      return fail(ErrorCode::Degenerate, "shims.too_many_packs", "shim_sizes",
                  {{"most", std::to_string(kMostPacks)}});
    }
  }
  return distinctPacks(packs);
}

std::optional<AllowedPack> nextPack(std::span<const AllowedPack> allowed, const PackStep& step) {
  const bool raise = step.direction == ForceDirection::RaiseForce;
  const bool thicker = raise == (step.effect == ShimEffect::ThickerRaises);
  const std::int64_t current = toMicrometres(toNanometres(step.current));
  const std::int64_t same = toMicrometres(toNanometres(step.sameWithin));
  const auto distance = [&](const AllowedPack& pack) {
    const std::int64_t change = toMicrometres(toNanometres(pack.total)) - current;
    return thicker ? change : -change;
  };
  const AllowedPack* nearest = nullptr;
  for (const AllowedPack& pack : allowed) {
    if (distance(pack) <= same) continue;
    if (nearest == nullptr || distance(pack) < distance(*nearest)) nearest = &pack;
  }
  return nearest == nullptr ? std::nullopt : std::optional(*nearest);
}

Result<ShimStack> parseStack(std::string_view text, const std::string& field) {
  std::string line(text);
  if (const auto position = separate(line)) {
    return fail(ErrorCode::InvalidInput, "shims.empty_place", field,
                {{"position", std::to_string(*position)}});
  }
  const auto series = parseSeries(line, {field, QuantityKind::Length, "mm"});
  if (!series) return failAs(series);
  ShimStack stack;
  for (const ParsedQuantity& item : *series) {
    stack.typed.push_back(item.value);
    stack.shims.push_back(item.value.as<Length>());
    if (!usable(stack.shims.back())) return notPositive(field, stack.shims.size());
    stack.total = stack.total + stack.shims.back();
  }
  return stack;
}

}  // namespace sw::mechanics
