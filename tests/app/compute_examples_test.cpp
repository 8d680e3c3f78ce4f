// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <sstream>

#include "compute/calculation.h"
#include "support/program_run.h"
#include "units/parse.h"

// What --describe promises, held against what the calculation does. The series and starting-force
// examples were also computed with SciPy 1.10.1, the conversions with GNU units 2.22.

namespace sw::test {
namespace {

using model::Json;

constexpr double kSame = 1e-9;  // relative: the last digits differ between compilers

/// The number at the front of a text and what follows it: "18.5 N" is 18.5 and " N".
struct NumberAndRest {
  double number = 0;
  std::string rest;
};

std::optional<NumberAndRest> split(const std::string& text) {
  const auto end = text.find_first_not_of("-.0123456789");
  if (end == 0 || text.empty()) return std::nullopt;
  return NumberAndRest{std::stod(text.substr(0, end)),
                       end == std::string::npos ? "" : text.substr(end)};
}

bool close(double a, double b) {
  return std::abs(a - b) <= kSame * std::max(1e-6, std::abs(b));
}

void expectSame(const Json& got, const Json& wanted, const std::string& path) {
  if (wanted.is_object() && got.is_object()) {
    for (const auto& [key, value] : got.items()) {
      EXPECT_TRUE(wanted.contains(key)) << path << "/" << key;
    }
    for (const auto& [key, value] : wanted.items()) {
      ASSERT_TRUE(got.contains(key)) << path << "/" << key;
      expectSame(got.at(key), value, path + "/" + key);
    }
  } else if (wanted.is_array() && got.is_array() && got.size() == wanted.size()) {
    for (std::size_t i = 0; i < got.size(); ++i) {
      expectSame(got[i], wanted[i], path + "/" + std::to_string(i));
    }
  } else if (wanted.is_number() && got.is_number()) {
    EXPECT_TRUE(close(got.get<double>(), wanted.get<double>())) << path << ": " << got;
  } else if (wanted != got) {
    ASSERT_TRUE(wanted.is_string() && got.is_string()) << path << ": " << got;
    const auto a = split(got.get<std::string>());
    const auto b = split(wanted.get<std::string>());
    ASSERT_TRUE(a && b) << path << ": " << got;
    EXPECT_TRUE(close(a->number, b->number) && a->rest == b->rest) << path << ": " << got;
  }
}

std::vector<std::string> names() {
  std::vector<std::string> result;
  for (const auto& row : compute::calculations()) result.emplace_back(row.name);
  return result;
}

Json description(const std::string& name) {
  const ProgramRun run = runProgram({"compute", name, "--describe"});
  EXPECT_EQ(run.exitCode, 0) << run.err;
  return model::parseJson(run.out).value_or(Json());
}

class EveryCalculation : public testing::TestWithParam<std::string> {};

INSTANTIATE_TEST_SUITE_P(Compute, EveryCalculation, testing::ValuesIn(names()),
                         [](const auto& row) {
                           std::string name = row.param;
                           name.erase(std::remove(name.begin(), name.end(), '-'), name.end());
                           return name;
                         });

TEST_P(EveryCalculation, ExampleGivesWhatItSays) {
  const Json example = description(GetParam()).at("example");
  expectSame(computed(GetParam(), example.at("input").dump()), example.at("output"), "");
}

TEST_P(EveryCalculation, SameBytesInSameBytesOut) {
  const std::string input = description(GetParam()).at("example").at("input").dump();
  const ProgramRun first = runProgram({"compute", GetParam()}, input);
  const ProgramRun second =
      runProgram({"--now", "2031-04-05T10:20", "--seed", "5", "compute", GetParam()}, input);
  EXPECT_EQ(second.exitCode, 0) << second.err;
  EXPECT_EQ(second.out, first.out);
  EXPECT_EQ(runProgram({"compute", GetParam()}, input).out, first.out);
}

/// Every key of the value is described, all through its objects and lists.
void expectDescribed(const Json& value, const Json& fields, const std::string& path) {
  for (const auto& [key, inner] : value.items()) {
    const auto field = std::find_if(fields.begin(), fields.end(), [&](const Json& candidate) {
      return candidate.at("name") == key;
    });
    ASSERT_NE(field, fields.end()) << path << "/" << key << " is not described";
    if (!field->contains("fields")) continue;
    const Json list = inner.is_array() ? inner : Json::array({inner});
    for (const auto& each : list) expectDescribed(each, field->at("fields"), path + "/" + key);
  }
}

void expectComplete(const Json& value, const Json& fields, const char* mark) {
  for (const auto& field : fields) {
    const auto name = field.at("name").get<std::string>();
    EXPECT_TRUE(value.contains(name) || !field.at(mark).get<bool>()) << name;
  }
}

TEST_P(EveryCalculation, DescriptionCoversItsExample) {
  const Json all = description(GetParam());
  EXPECT_FALSE(all.at("title").get<std::string>().empty());
  const Json& example = all.at("example");
  expectDescribed(example.at("input"), all.at("inputs"), "");
  expectComplete(example.at("input"), all.at("inputs"), "required");
  expectDescribed(example.at("output").at("result"), all.at("outputs"), "");
  expectComplete(example.at("output").at("result"), all.at("outputs"), "always");
}

TEST_P(EveryCalculation, MethodCardIsComplete) {
  const Json method = description(GetParam()).at("method");
  for (const char* part : {"name", "source", "formula"}) {
    EXPECT_FALSE(method.at(part).get<std::string>().empty()) << part;
  }
  std::istringstream formula(method.at("formula").get<std::string>());
  for (std::string line; std::getline(formula, line);) {
    EXPECT_FALSE(line.empty()) << "a blank line in the formula";
  }
  ASSERT_FALSE(method.at("assumptions").empty());
  for (const Json& assumption : method.at("assumptions")) {
    const auto sentence = assumption.get<std::string>();
    EXPECT_GT(sentence.size(), 1U);
    EXPECT_TRUE(sentence.ends_with('.')) << sentence;
  }
}

TEST_P(EveryCalculation, RequiredFieldsAreAskedForByName) {
  const Json all = description(GetParam());
  for (const auto& field : all.at("inputs")) {
    if (!field.at("required").get<bool>()) continue;
    const auto name = field.at("name").get<std::string>();
    Json input = all.at("example").at("input");
    input.erase(name);
    const Json error = refused(GetParam(), input.dump());
    EXPECT_EQ(error.at("code"), "missing_field");
    EXPECT_EQ(error.at("field"), "/" + name);
  }
}

TEST_P(EveryCalculation, EveryDescribedFieldIsKnownAndNullNeverIsAValue) {
  const Json all = description(GetParam());
  for (const auto& field : all.at("inputs")) {
    const auto name = field.at("name").get<std::string>();
    Json input = all.at("example").at("input");
    input[name] = nullptr;
    const Json error = refused(GetParam(), input.dump());
    EXPECT_EQ(error.at("code"), "wrong_kind") << name;
    EXPECT_EQ(error.at("field"), "/" + name);
  }
}

TEST_P(EveryCalculation, AMisspeltFieldIsNotIgnored) {
  Json input = description(GetParam()).at("example").at("input");
  input["opions"] = Json::object();
  const Json error = refused(GetParam(), input.dump());
  EXPECT_EQ(error.at("code"), "unknown_field");
  EXPECT_EQ(error.at("field"), "/opions");
}

/// Quantities come out as text that a person's field reads back to the same text.
void expectReadable(const Json& value, const Json& fields) {
  for (const auto& field : fields) {
    const auto name = field.at("name").get<std::string>();
    const auto kind = quantityKindFromWord(field.at("kind").get<std::string>());
    if (!kind || *kind == QuantityKind::Number || !value.contains(name)) continue;
    const auto text = value.at(name).get<std::string>();
    const auto parsed = parseQuantity(text, {.field = name, .kind = *kind, .defaultUnit = {}});
    ASSERT_TRUE(parsed) << text;
    EXPECT_EQ(parsed->value.text(), text);
    EXPECT_EQ(parsed->value.unit, field.at("unit")) << "the declared unit";
    EXPECT_TRUE(parsed->notes.empty()) << text;
  }
}

TEST_P(EveryCalculation, WhatComesOutCanGoIn) {
  const Json all = description(GetParam());
  const Json answer = computed(GetParam(), all.at("example").at("input").dump());
  expectReadable(answer.at("result"), all.at("outputs"));
}

}  // namespace
}  // namespace sw::test
