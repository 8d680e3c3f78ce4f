// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <limits>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/words.h"
#include "compute/calculation.h"
#include "model/json.h"
#include "units/kind_of.h"
#include "units/parse.h"

namespace sw::compute {

/// Which values of a quantity are possible.
enum class Sign { Any, NotNegative, Positive };

/// What a quantity field holds; a JSON number is taken in `unit` (empty = the kind's default).
struct QuantitySpec {
  QuantityKind kind = QuantityKind::Number;
  Sign sign = Sign::Any;
  std::string_view unit = {};
};

/// Ends of a range of plain numbers. `text` says it in messages: "between 0.5 and 1, not either".
enum class Ends { Included, Excluded };
struct NumberRange {
  double least = -std::numeric_limits<double>::infinity();
  double most = std::numeric_limits<double>::infinity();
  Ends ends = Ends::Included;
  std::string_view text = {};
};
inline constexpr NumberRange kPositiveNumber{
    .least = 0, .ends = Ends::Excluded, .text = "more than 0"};

/// The quantity in one JSON value: text with a unit, or a number in the declared unit. What is
/// worth saying about how it was read goes to `notes`. Errors: those of parseQuantity with the path
/// as field; InvalidInput "json.wrong_kind"; OutOfRange "compute.out_of_range" (details: text,
/// range).
[[nodiscard]] Result<TypedQuantity> readQuantity(const Json& value, const std::string& path,
                                                 const QuantitySpec& spec,
                                                 std::vector<Note>& notes);

/// All words of an enumeration, in the order of its table.
template <HasWords E>
[[nodiscard]] std::vector<std::string_view> wordsOf() {
  std::vector<std::string_view> words;
  for (const auto& [value, word] : Words<E>::table) words.push_back(word);
  return words;
}

/// Reads one object of an input strictly, as model::ObjectReader does, with quantities and ranges.
/// The first error is kept and later getters return nothing.
class InputReader {
 public:
  /// json and notes must outlive the reader.
  InputReader(const Json& json, std::string path, std::vector<Note>& notes);

  [[nodiscard]] model::ObjectReader& fields() { return m_fields; }

  [[nodiscard]] std::optional<TypedQuantity> typed(std::string_view key, const QuantitySpec& spec);
  /// The SI value.
  [[nodiscard]] std::optional<double> quantity(std::string_view key, const QuantitySpec& spec);
  /// The SI value; 0 and an error where it is absent.
  [[nodiscard]] double requiredQuantity(std::string_view key, const QuantitySpec& spec);
  /// The same as a quantity of its type: reader.required<Length>("arm", Sign::Positive).
  template <class Q>
  [[nodiscard]] Q required(std::string_view key, Sign sign = Sign::Any) {
    return Q::fromSi(requiredQuantity(key, {.kind = kKindOf<Q>, .sign = sign}));
  }
  template <class Q>
  [[nodiscard]] std::optional<Q> optional(std::string_view key, Sign sign = Sign::Any) {
    const auto si = quantity(key, {.kind = kKindOf<Q>, .sign = sign});
    return si ? std::optional<Q>(Q::fromSi(*si)) : std::nullopt;
  }
  template <class Q>
  [[nodiscard]] std::vector<Q> list(std::string_view key, Sign sign = Sign::Any) {
    std::vector<Q> values;
    for (const double si : quantities(key, {.kind = kKindOf<Q>, .sign = sign})) {
      values.push_back(Q::fromSi(si));
    }
    return values;
  }
  /// A word out of a list; empty, with an error kept, where it is absent or not a choice.
  [[nodiscard]] std::string requiredWord(std::string_view key,
                                         const std::vector<std::string_view>& words);
  /// An enumeration by its word; nothing where it is absent or, with an error kept, not a choice.
  template <HasWords E>
  [[nodiscard]] std::optional<E> choice(std::string_view key) {
    const auto word = m_fields.oneOf(key, wordsOf<E>());
    return word ? fromWord<E>(*word) : std::nullopt;
  }
  /// The same, missing where the key is absent.
  template <HasWords E>
  [[nodiscard]] std::optional<E> requiredChoice(std::string_view key) {
    requireKey(key);
    return choice<E>(key);
  }
  [[nodiscard]] std::optional<double> number(std::string_view key, const NumberRange& range);
  [[nodiscard]] std::optional<int> wholeNumber(std::string_view key, int least, int most);
  /// A positive number, or "infinity", which is the same as absent: infinitely many.
  [[nodiscard]] std::optional<double> degreesOfFreedom(std::string_view key);
  /// Reads a list of quantities, each error naming its place ("/readings/2").
  [[nodiscard]] std::vector<double> quantities(std::string_view key, const QuantitySpec& spec);

  /// Lets `read` have the object under the key, if it is there, and makes sure nothing in it was
  /// left unread.
  template <class Read>
  void inObject(std::string_view key, Read read) {
    const Json* value = m_fields.object(key);
    if (value == nullptr) return;
    InputReader inner(*value, m_fields.pathOf(key), m_notes);
    read(inner);
    keep(inner.finish());
  }

  /// The same for each object of the list under the key ("/pulls/2/force").
  template <class Read>
  void eachObject(std::string_view key, Read read) {
    const Json* list = m_fields.array(key);
    if (list == nullptr) return;
    for (std::size_t at = 0; at < list->size(); ++at) {
      const std::string path = m_fields.pathOf(key) + "/" + std::to_string(at);
      if (!list->at(at).is_object()) return notAnObject(path);
      InputReader inner(list->at(at), path, m_notes);
      read(inner);
      keep(inner.finish());
    }
  }

  /// Reads the seed every calculation accepts.
  void takeSeed();
  void requireKey(std::string_view key);
  void fail(Error error) { m_fields.fail(std::move(error)); }
  [[nodiscard]] Result<void> finish() { return m_fields.finish(); }

 private:
  void keep(const Result<void>& inner);
  void notAnObject(std::string path);

  model::ObjectReader m_fields;
  std::vector<Note>& m_notes;
};

/// An error of core as one of an input: its field as a path into it.
[[nodiscard]] tl::unexpected<Error> asInputError(Error error);

}  // namespace sw::compute
