// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <iterator>
#include <limits>
#include <random>
#include <string>
#include <string_view>

#include "store/fact_columns.h"

namespace sw::store {

/// Fills every field of a fact with something odd, through the same visitor as the store, so that a
/// new field is tried without anybody thinking of it.
struct RandomFiller {
  std::mt19937& random;
  /// The entry that a field of this name may point at.
  std::int64_t (*entryFor)(std::string_view name) = [](std::string_view) {
    return std::int64_t{1};
  };

  template <class N>
  N upTo(N most) const {
    return std::uniform_int_distribution<N>(0, most)(random);
  }

  std::string text() const {
    static constexpr std::string_view kPieces[] = {"",
                                                   " ",
                                                   "0",
                                                   "25.0",
                                                   "'; DROP TABLE entry; --",
                                                   "\"",
                                                   "\n",
                                                   "\t",
                                                   "%1",
                                                   "?",
                                                   ":name",
                                                   "\xC3\xA4",
                                                   "\xE2\x82\xAC",
                                                   "\xF0\x9F\x94\xA7",
                                                   "e\xCC\x81",
                                                   "\xE2\x80\xAE",
                                                   "NULL",
                                                   "=1+1",
                                                   "\x01",
                                                   "z\xEF\xBB\xBF",
                                                   "<b>",
                                                   "\\"};
    std::string out;
    for (int i = upTo(5); i > 0; --i) out += kPieces[upTo<std::size_t>(std::size(kPieces) - 1)];
    return out;
  }
  double number() const {
    static constexpr double kOdd[] = {0.0,    0.1,  -0.1,      1e-300,
                                      -1e299, 18.5, 1.0 / 3.0, 4.450147717014403e-308};
    return kOdd[upTo<std::size_t>(std::size(kOdd) - 1)];
  }

  template <class T>
  void operator()(std::string_view name, std::optional<T>& value) const {
    value.reset();
    if (upTo(1) == 1) (*this)(name, value.emplace());
  }

  template <class T>
  void operator()(std::string_view name, T& value) const {
    if constexpr (std::is_same_v<T, model::PullState>) {
      model::PullState::fields(value, *this);
    } else if constexpr (std::is_same_v<T, TypedQuantity>) {
      value = {static_cast<QuantityKind>(upTo(static_cast<int>(QuantityKind::Number))), text(),
               text(), number()};
    } else if constexpr (std::is_same_v<T, QuantityKind>) {
      value = static_cast<QuantityKind>(upTo(static_cast<int>(QuantityKind::Number)));
    } else if constexpr (std::is_same_v<T, Date>) {
      value = addDays({2000, 2, 29}, upTo(20000));
    } else if constexpr (std::is_same_v<T, model::EntryId>) {
      value = model::EntryId{entryFor(name)};
    } else if constexpr (IsId<T>::value) {
      value.value = 1 + upTo<std::int64_t>(1'000'000);
    } else if constexpr (HasWords<T>) {
      value = Words<T>::table[upTo<std::size_t>(Words<T>::table.size() - 1)].first;
    } else if constexpr (std::is_same_v<T, bool>) {
      value = upTo(1) == 1;
    } else if constexpr (std::is_same_v<T, std::string>) {
      value = text();
    } else if constexpr (std::is_same_v<T, double>) {
      value = number();
    } else {
      value = upTo<std::int64_t>(std::numeric_limits<std::int64_t>::max() - 1) - (1LL << 40);
    }
  }
};

template <class Fact>
Fact randomFact(const RandomFiller& fill) {
  Fact fact;
  Fact::fields(fact, fill);
  return fact;
}

}  // namespace sw::store
