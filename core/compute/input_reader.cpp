// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/input_reader.h"

#include <cmath>
#include <nlohmann/json.hpp>

#include "compute/notes.h"
#include "units/format.h"

namespace sw::compute {

namespace {

constexpr std::string_view kInfinity = "infinity";

Error outOfRange(std::string path, std::string text, std::string_view range) {
  return {ErrorCode::OutOfRange,
          "compute.out_of_range",
          std::move(path),
          {{"text", std::move(text)}, {"range", std::string(range)}}};
}

std::string_view rangeOf(Sign sign) {
  switch (sign) {
    case Sign::Any:
      return {};
    case Sign::NotNegative:
      return "0 or more";
    case Sign::Positive:
      return "more than 0";
  }
  return {};
}

bool allowed(double si, Sign sign) {
  switch (sign) {
    case Sign::Any:
      return true;
    case Sign::NotNegative:
      return si >= 0;
    case Sign::Positive:
      return si > 0;
  }
  return true;
}

bool inside(double value, const NumberRange& range) {
  return range.ends == Ends::Included ? value >= range.least && value <= range.most
                                      : value > range.least && value < range.most;
}

Unit declaredUnit(const QuantitySpec& spec) {
  return findUnit(spec.kind, spec.unit).value_or(defaultUnit(spec.kind));
}

TypedQuantity ofNumber(double value, const QuantitySpec& spec) {
  const Unit unit = declaredUnit(spec);
  return {spec.kind, fullPrecision(value), std::string(unit.symbol), value * unit.toSi};
}

Result<TypedQuantity> ofText(const std::string& text, const std::string& path,
                             const QuantitySpec& spec, std::vector<Note>& notes) {
  const FieldSpec field{path, spec.kind, std::string(declaredUnit(spec).symbol)};
  auto parsed = parseQuantity(text, field);
  if (!parsed) return tl::make_unexpected(parsed.error().about(path));
  for (const ReadNote note : parsed->notes) notes.push_back(readNote(note, path, *parsed));
  return std::move(parsed->value);
}

}  // namespace

Result<TypedQuantity> readQuantity(const Json& value, const std::string& path,
                                   const QuantitySpec& spec, std::vector<Note>& notes) {
  Result<TypedQuantity> read;
  if (value.is_string()) {
    read = ofText(value.get<std::string>(), path, spec, notes);
  } else if (value.is_number()) {
    read = ofNumber(value.get<double>(), spec);
  } else {
    return fail(ErrorCode::InvalidInput, "json.wrong_kind", path,
                {{"expected", std::string(word(spec.kind))}});
  }
  if (!read) return read;
  if (!std::isfinite(read->si))
    return tl::make_unexpected(outOfRange(path, read->text(), "finite"));
  if (allowed(read->si, spec.sign)) return read;
  return tl::make_unexpected(outOfRange(path, read->text(), rangeOf(spec.sign)));
}

InputReader::InputReader(const Json& json, std::string path, std::vector<Note>& notes)
    : m_fields(json, std::move(path)), m_notes(notes) {}

std::optional<TypedQuantity> InputReader::typed(std::string_view key, const QuantitySpec& spec) {
  const Json* value = m_fields.raw(key);
  if (value == nullptr) return std::nullopt;
  auto read = readQuantity(*value, m_fields.pathOf(key), spec, m_notes);
  if (read) return std::move(*read);
  fail(read.error());
  return std::nullopt;
}

std::optional<double> InputReader::quantity(std::string_view key, const QuantitySpec& spec) {
  const auto read = typed(key, spec);
  if (!read) return std::nullopt;
  return read->si;
}

double InputReader::requiredQuantity(std::string_view key, const QuantitySpec& spec) {
  requireKey(key);
  return quantity(key, spec).value_or(0.0);
}

std::string InputReader::requiredWord(std::string_view key,
                                      const std::vector<std::string_view>& words) {
  requireKey(key);
  return m_fields.oneOf(key, words).value_or(std::string{});
}

std::optional<double> InputReader::number(std::string_view key, const NumberRange& range) {
  const auto value = m_fields.number(key);
  if (!value || inside(*value, range)) return value;
  fail(outOfRange(m_fields.pathOf(key), fullPrecision(*value), range.text));
  return std::nullopt;
}

std::optional<int> InputReader::wholeNumber(std::string_view key, int least, int most) {
  const auto value = m_fields.integer(key);
  if (!value) return std::nullopt;
  if (*value >= least && *value <= most) return static_cast<int>(*value);
  fail(outOfRange(m_fields.pathOf(key), std::to_string(*value),
                  std::to_string(least) + " to " + std::to_string(most)));
  return std::nullopt;
}

std::optional<double> InputReader::degreesOfFreedom(std::string_view key) {
  const Json* value = m_fields.raw(key);
  if (value == nullptr || *value == kInfinity) return std::nullopt;
  return number(key, {.least = 0, .ends = Ends::Excluded, .text = "more than 0, or \"infinity\""});
}

std::vector<double> InputReader::quantities(std::string_view key, const QuantitySpec& spec) {
  std::vector<double> values;
  const Json* list = m_fields.array(key);
  if (list == nullptr) return values;
  values.reserve(list->size());
  for (std::size_t at = 0; at < list->size(); ++at) {
    const std::string path = m_fields.pathOf(key) + "/" + std::to_string(at);
    const auto read = readQuantity((*list)[at], path, spec, m_notes);
    if (!read) {
      fail(read.error());
      return values;
    }
    values.push_back(read->si);
  }
  return values;
}

void InputReader::takeSeed() {
  const auto seed = m_fields.integer("seed");
  if (seed && *seed < 0) {
    fail(outOfRange(m_fields.pathOf("seed"), std::to_string(*seed), "0 or more"));
  }
}

void InputReader::requireKey(std::string_view key) {
  if (m_fields.has(key)) return;
  fail({ErrorCode::Missing, "json.missing", m_fields.pathOf(key), {}});
}

void InputReader::keep(const Result<void>& inner) {
  if (!inner) fail(inner.error());
}

void InputReader::notAnObject(std::string path) {
  fail({ErrorCode::InvalidInput, "json.wrong_kind", std::move(path), {{"expected", "object"}}});
}

tl::unexpected<Error> asInputError(Error error) {
  // A calculation does not refuse, it finds a value out of range.
  if (error.code == ErrorCode::Refused) error.code = ErrorCode::OutOfRange;
  return tl::make_unexpected(error.about(error.field.empty() ? "" : "/" + error.field));
}

}  // namespace sw::compute
