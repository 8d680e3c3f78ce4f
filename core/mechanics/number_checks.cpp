// SPDX-License-Identifier: GPL-3.0-or-later
#include "mechanics/number_checks.h"

#include <cmath>
#include <string>

namespace sw::mechanics {

NumberChecks& NumberChecks::require(bool holds, std::string_view key, std::string_view field) {
  if (!holds && !m_error) {
    m_error = Error{ErrorCode::OutOfRange, std::string(key), std::string(field), {}};
  }
  return *this;
}

NumberChecks& NumberChecks::finite(std::string_view field, double value) {
  return require(std::isfinite(value), "measure.not_finite", field);
}

NumberChecks& NumberChecks::notNegative(std::string_view field, double value) {
  return finite(field, value).require(value >= 0, "measure.not_positive", field);
}

NumberChecks& NumberChecks::positive(std::string_view field, double value) {
  return finite(field, value).require(value > 0, "measure.not_positive", field);
}

NumberChecks& NumberChecks::confidence(double probability) {
  return require(probability > 0.5 && probability < 1, "measure.bad_confidence", "confidence");
}

Result<void> NumberChecks::done() const {
  if (m_error) return tl::make_unexpected(*m_error);
  return {};
}

}  // namespace sw::mechanics
