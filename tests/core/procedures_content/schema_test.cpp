// SPDX-License-Identifier: GPL-3.0-or-later
#include <nlohmann/json.hpp>
#include <valijson/adapters/nlohmann_json_adapter.hpp>
#include <valijson/schema.hpp>
#include <valijson/schema_parser.hpp>
#include <valijson/validation_results.hpp>
#include <valijson/validator.hpp>

#include "shipped.h"

// The schemas are JSON Schema draft-07 (json-schema.org); valijson is the independent judge.

namespace sw::test {
namespace {

using nlohmann::json;
using Adapter = valijson::adapters::NlohmannJsonAdapter;

class Judge {
 public:
  explicit Judge(const std::string& folder) {
    const json schema = shippedSchema(folder);
    valijson::SchemaParser parser(valijson::SchemaParser::kDraft7);
    parser.populateSchema(Adapter(schema), m_schema);
  }

  /// What is wrong; empty when the document is valid.
  std::string complaint(const json& document) {
    valijson::Validator validator;
    valijson::ValidationResults results;
    if (validator.validate(m_schema, Adapter(document), &results)) return {};
    std::string text;
    valijson::ValidationResults::Error error;
    while (results.popError(error)) {
      for (const std::string& part : error.context) text += part;
      text += ": " + error.description + "\n";
    }
    return text.empty() ? "not valid" : text;
  }

 private:
  valijson::Schema m_schema;
};

void expectAllValid(const std::string& folder) {
  Judge judge(folder);
  const auto files = shippedFiles(folder);
  EXPECT_FALSE(files.empty());
  for (const auto& [name, document] : files) {
    EXPECT_EQ(judge.complaint(document), "") << folder << "/" << name;
    EXPECT_EQ(document.value("id", ""), name);
  }
}

TEST(ProcedureSchema, AcceptsEveryShippedProcedure) {
  expectAllValid("procedures");
}

TEST(ProcedureSchema, AcceptsEveryShippedPlan) {
  expectAllValid("plans");
}

TEST(CauseSchema, AcceptsEveryShippedFileOfCauses) {
  expectAllValid("causes");
}

struct Damage {
  const char* what;
  const char* patch;  // JSON Patch, RFC 6902
};

json smallProcedure() {
  return json::parse(R"({"schema":1,"id":"a","version":1,"title":"A","purpose":"B","after":[],
    "steps":[
      {"id":"s","kind":"remove","side":"each","title":"T","text":"U","minutes":1,
       "ledger":[{"item":"i","name":"I","type":"removed","to":"off","fastened":true}]},
      {"id":"t","kind":"torque","side":"each","title":"T","text":"U","minutes":1,
       "torque":{"fasteners":"f","name":"F","item":"i"}},
      {"id":"h","kind":"hold","side":"once","title":"T","text":"U","minutes":1,
       "hold":{"key":"support","title":"S","statements":[{"key":"k","ask":"A?","why":"W",
         "answer":{"type":"choice","choices":[{"word":"a","text":"A","passes":true},
           {"word":"b","text":"B","passes":false},{"word":"c","text":"C","passes":false}]}}]}}]})");
}

class DamagedProcedure : public testing::TestWithParam<Damage> {};

TEST_P(DamagedProcedure, IsRefused) {
  Judge judge("procedures");
  ASSERT_EQ(judge.complaint(smallProcedure()), "");
  const json damaged = smallProcedure().patch(json::parse(GetParam().patch));
  EXPECT_NE(judge.complaint(damaged), "") << GetParam().what;
}

std::string nameOf(const testing::TestParamInfo<Damage>& row) {
  std::string name = row.param.what;
  std::erase(name, ' ');
  return name;
}

INSTANTIATE_TEST_SUITE_P(
    Schema, DamagedProcedure,
    testing::Values(
        Damage{"unknown key", R"([{"op":"add","path":"/steps/0/colour","value":"red"}])"},
        Damage{"newer schema", R"([{"op":"replace","path":"/schema","value":2}])"},
        Damage{"id with a capital", R"([{"op":"replace","path":"/id","value":"Ab"}])"},
        Damage{"unknown kind", R"([{"op":"replace","path":"/steps/0/kind","value":"paint"}])"},
        Damage{"removal that takes nothing off", R"([{"op":"remove","path":"/steps/0/ledger"}])"},
        Damage{"removed item put on",
               R"([{"op":"replace","path":"/steps/0/ledger/0/to","value":"on"}])"},
        Damage{"torque without its item", R"([{"op":"remove","path":"/steps/1/torque/item"}])"},
        Damage{"torque step without torque", R"([{"op":"remove","path":"/steps/1/torque"}])"},
        Damage{"torque in a removal",
               R"([{"op":"copy","from":"/steps/1/torque","path":"/steps/0/torque"}])"},
        Damage{"two choices only",
               R"([{"op":"remove","path":"/steps/2/hold/statements/0/answer/choices/2"}])"},
        Damage{"statement without a reason",
               R"([{"op":"remove","path":"/steps/2/hold/statements/0/why"}])"},
        Damage{"sixth hold", R"([{"op":"replace","path":"/steps/2/hold/key","value":"coffee"}])"},
        Damage{"unknown fact",
               R"([{"op":"add","path":"/steps/0/when","value":{"colour":["red"]}}])"},
        Damage{"unknown word of a fact",
               R"([{"op":"add","path":"/steps/0/when","value":{"lubricant":["water"]}}])"},
        Damage{"no calculation", R"([{"op":"add","path":"/steps/0/bench","value":[]}])"},
        Damage{"calculation with an underscore",
               R"([{"op":"add","path":"/steps/0/bench","value":["shim_pack"]}])"},
        Damage{"blank text", R"([{"op":"replace","path":"/steps/0/text","value":" "}])"}),
    nameOf);

json smallCauses() {
  const json none = {{"open", 0}, {"close", 0}};
  json causes = json::parse(R"({"schema":1,"id":"a","version":1,"source":"invented",
    "fallback_minutes":100,"comeback_days":90,
    "features":[{"key":"f","ask":"F?","answers":[{"word":"y","text":"Y"},{"word":"n","text":"N"}]}],
    "setups":[{"key":"g","name":"G"}],
    "causes":[{"key":"c","name":"C","weight":3,"answers":{"f":{"y":0.25}}},
              {"key":"other","name":"O","weight":1,"answers":{"f":{"y":0.5}}}],
    "checks":[{"key":"k","name":"K","procedure":"check-k","setups":["g"],"minutes":2,
               "finds":{"c":0.5},"false_alarm":0.1,"false_alarm_minutes":5,
               "findings":[{"cause":"c","observed":"o","words":["bad"]},
                           {"cause":"c","limit":"a.b","beyond":"below"}],
               "clear":[{"observed":"o","words":["good"]},{"limit":"a.b"}]}],
    "presets":[{"key":"p","name":"P","support":"stands","equipment":[]}]})");
  for (const char* support : {"stands", "two_post", "four_post", "pit"}) {
    causes["setups"][0]["minutes"][support] = none;
  }
  return causes;
}

class DamagedCauses : public testing::TestWithParam<Damage> {};

TEST_P(DamagedCauses, AreRefused) {
  Judge judge("causes");
  ASSERT_EQ(judge.complaint(smallCauses()), "");
  const json damaged = smallCauses().patch(json::parse(GetParam().patch));
  EXPECT_NE(judge.complaint(damaged), "") << GetParam().what;
}

INSTANTIATE_TEST_SUITE_P(
    Schema, DamagedCauses,
    testing::Values(
        Damage{"unknown key", R"([{"op":"add","path":"/checks/0/colour","value":"red"}])"},
        Damage{"no source", R"([{"op":"remove","path":"/source"}])"},
        Damage{"no other cause", R"([{"op":"remove","path":"/causes/1"}])"},
        Damage{"chance above one", R"([{"op":"replace","path":"/checks/0/finds/c","value":1.5}])"},
        Damage{"negative minutes", R"([{"op":"replace","path":"/checks/0/minutes","value":-1}])"},
        Damage{"check without findings", R"([{"op":"remove","path":"/checks/0/findings"}])"},
        Damage{"check that nothing clears",
               R"([{"op":"replace","path":"/checks/0/clear","value":[]}])"},
        Damage{"finding without its cause",
               R"([{"op":"remove","path":"/checks/0/findings/0/cause"}])"},
        Damage{"finding without words", R"([{"op":"remove","path":"/checks/0/findings/0/words"}])"},
        Damage{"finding by both",
               R"([{"op":"add","path":"/checks/0/findings/0/limit","value":"a.b"}])"},
        Damage{"finding by neither", R"([{"op":"remove","path":"/checks/0/findings/1/limit"}])"},
        Damage{"beyond an observation",
               R"([{"op":"add","path":"/checks/0/findings/0/beyond","value":"below"}])"},
        Damage{"beyond nowhere",
               R"([{"op":"replace","path":"/checks/0/findings/1/beyond","value":"beside"}])"},
        Damage{"nothing found of a cause",
               R"([{"op":"add","path":"/checks/0/clear/0/cause","value":"c"}])"},
        Damage{"check in no set up", R"([{"op":"replace","path":"/checks/0/setups","value":[]}])"},
        Damage{"support without minutes", R"([{"op":"remove","path":"/setups/0/minutes/pit"}])"},
        Damage{"one answer only", R"([{"op":"remove","path":"/features/0/answers/1"}])"}),
    nameOf);

}  // namespace
}  // namespace sw::test
