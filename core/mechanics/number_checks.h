// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string_view>

#include "base/result.h"
#include "units/quantity.h"

namespace sw::mechanics {

/// Range checks of the inputs of one calculation, in the order they are asked for; the first that
/// fails is kept. Errors: OutOfRange "measure.not_finite" or "measure.not_positive" with the field.
class NumberChecks {
 public:
  NumberChecks& finite(std::string_view field, double value);
  NumberChecks& notNegative(std::string_view field, double value);
  NumberChecks& positive(std::string_view field, double value);
  /// A probability to be sure with: OutOfRange "measure.bad_confidence" unless 0.5 < p < 1.
  NumberChecks& confidence(double probability);

  template <class Dimension>
  NumberChecks& finite(std::string_view field, Quantity<Dimension> value) {
    return finite(field, value.si());
  }
  template <class Dimension>
  NumberChecks& notNegative(std::string_view field, Quantity<Dimension> value) {
    return notNegative(field, value.si());
  }
  template <class Dimension>
  NumberChecks& positive(std::string_view field, Quantity<Dimension> value) {
    return positive(field, value.si());
  }
  /// What is absent passes.
  template <class Value>
  NumberChecks& positive(std::string_view field, const std::optional<Value>& value) {
    return value ? positive(field, *value) : *this;
  }
  template <class Value>
  NumberChecks& notNegative(std::string_view field, const std::optional<Value>& value) {
    return value ? notNegative(field, *value) : *this;
  }
  template <class Value>
  NumberChecks& finite(std::string_view field, const std::optional<Value>& value) {
    return value ? finite(field, *value) : *this;
  }

  [[nodiscard]] Result<void> done() const;
  /// The same error, for those who hand on nothing else.
  [[nodiscard]] const std::optional<Error>& error() const { return m_error; }

 private:
  NumberChecks& require(bool holds, std::string_view key, std::string_view field);

  std::optional<Error> m_error;
};

}  // namespace sw::mechanics
