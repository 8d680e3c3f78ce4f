// SPDX-License-Identifier: GPL-3.0-or-later
#include "procedures/procedure.h"
#include "sample.h"

// Every refusal names the file, the step and the field. The expected fields are JSON pointers
// (RFC 6901) into the text given.

namespace sw::procedures {
namespace {

struct Refusal {
  std::string name;
  std::string steps;
  std::string key;
  std::string field;
  std::string step = "a";
};

class Refused : public testing::TestWithParam<Refusal> {};

TEST_P(Refused, ByFileStepAndField) {
  const auto procedure = read(GetParam().steps);
  ASSERT_FALSE(procedure.has_value());
  const Error& error = procedure.error();
  EXPECT_EQ(error.key, GetParam().key);
  EXPECT_EQ(error.field, GetParam().field);
  EXPECT_EQ(error.detail("step"), GetParam().step);
  EXPECT_EQ(error.detail("file"), "sample.json");
}

std::string kindStep(const std::string& kind, const std::string& more) {
  return R"({"id": "a", "kind": ")" + kind + R"(", "title": "T")" +
         (more.empty() ? "" : ", " + more) + "}";
}

std::string measureStep(const std::string& more) {
  return kindStep("measure",
                  R"("measure": {"quantity": "force")" + (more.empty() ? "" : ", " + more) + "}");
}

std::string torqueStep(const std::string& stages) {
  return kindStep("torque",
                  R"("torque": {"fasteners": "f", "name": "n", "stages": )" + stages + "}");
}

std::string holdStep(const std::string& statements) {
  return kindStep(
      "hold", R"("hold": {"key": "support", "title": "T", "statements": [)" + statements + "]}");
}

std::string statement(const std::string& key, const std::string& when = {}) {
  return R"({"key": ")" + key +
         R"(", "ask": "What?", "why": "Falls.", "answer": {"type": "text"})" +
         (when.empty() ? "" : R"(, "when": )" + when) + "}";
}

std::string choiceStatement(const std::string& choices) {
  return R"({"key": "k", "ask": "What?", "why": "Falls.", )"
         R"("answer": {"type": "choice", "choices": [)" +
         choices + "]}}";
}

const std::string kPass = R"({"word": "yes", "text": "Yes"})";
const std::string kFail = R"({"word": "no", "text": "No", "passes": false})";

INSTANTIATE_TEST_SUITE_P(
    Fields, Refused,
    testing::Values(
        Refusal{"UnknownKind", kindStep("juggle", ""), "json.not_one_of", "/steps/0/kind"},
        Refusal{"KindMissing", R"({"id": "a", "title": "T"})", "json.missing", "/steps/0/kind"},
        Refusal{"UnknownField", doStep("a", R"("colour": "red")"), "json.unknown_field",
                "/steps/0/colour"},
        Refusal{"UnknownFieldDeepDown", measureStep(R"("limits": "x")"), "json.unknown_field",
                "/steps/0/measure/limits"},
        Refusal{"TitleEmpty", R"({"id": "a", "kind": "do", "title": " "})", "procedure.empty_text",
                "/steps/0/title"},
        Refusal{"TitleIsNumber", R"({"id": "a", "kind": "do", "title": 3})", "json.wrong_kind",
                "/steps/0/title"},
        Refusal{"StepIsNoObject", "7", "json.wrong_kind", "/steps/0", "1"},
        Refusal{"IdMissing", R"({"kind": "do", "title": "T"})", "json.missing", "/steps/0/id", "1"},
        Refusal{"IdWithSlash", doStep("a/b"), "procedure.bad_id", "/steps/0/id", "a/b"},
        Refusal{"ControlCharacter", doStep("a", R"("text": "bell\u0007")"),
                "procedure.control_character", "/steps/0/text"},
        Refusal{"NullIsNoText", doStep("a", R"("caution": null)"), "json.wrong_kind",
                "/steps/0/caution"},
        Refusal{"NegativeMinutes", doStep("a", R"("minutes": -1)"), "procedure.out_of_range",
                "/steps/0/minutes"},
        Refusal{"ToolsNoList", doStep("a", R"("tools": {"name": "x"})"), "json.wrong_kind",
                "/steps/0/tools"},
        Refusal{"SecondPart", doStep("a", R"("parts": [{"key": "p", "name": "P"}, {"key": "q"}])"),
                "json.missing", "/steps/0/parts/1/name"},
        Refusal{"NoPart", doStep("a", R"("parts": [{"key": "p", "name": "P", "quantity": 0}])"),
                "procedure.out_of_range", "/steps/0/parts/0/quantity"},
        Refusal{"HalfAPart",
                doStep("a", R"("parts": [{"key": "p", "name": "P", "quantity": 0.5}])"),
                "json.wrong_kind", "/steps/0/parts/0/quantity"},
        Refusal{"NeedsTwoSaysNothing", doStep("a", R"("needs_two": {})"), "json.missing",
                "/steps/0/needs_two/one_person"}),
    [](const auto& row) { return row.param.name; });

INSTANTIATE_TEST_SUITE_P(
    Conditions, Refused,
    testing::Values(Refusal{"UnknownFact", doStep("a", R"("when": {"moon": ["full"]})"),
                            "procedure.unknown_fact", "/steps/0/when/moon"},
                    Refusal{"UnknownWord", doStep("a", R"("when": {"lubricant": ["oill"]})"),
                            "procedure.unknown_fact_word", "/steps/0/when/lubricant"},
                    Refusal{"NotKnownIsNoWord", doStep("a", R"("when": {"abs_lead": ["unknown"]})"),
                            "procedure.unknown_fact_word", "/steps/0/when/abs_lead"},
                    Refusal{"NoWords", doStep("a", R"("when": {"lubricant": []})"),
                            "procedure.empty_list", "/steps/0/when/lubricant"},
                    Refusal{"WordNotInAList", doStep("a", R"("when": {"lubricant": "oil"})"),
                            "json.wrong_kind", "/steps/0/when/lubricant"}),
    [](const auto& row) { return row.param.name; });

INSTANTIATE_TEST_SUITE_P(
    Blocks, Refused,
    testing::Values(
        Refusal{"MeasureWithoutMeasure", kindStep("measure", ""), "procedure.block_missing",
                "/steps/0/measure"},
        Refusal{"HoldWithoutHold", kindStep("hold", ""), "procedure.block_missing",
                "/steps/0/hold"},
        Refusal{"HoldThatNobodyWouldSee",
                doStep("a", R"("hold": {"key": "support", "title": "T", "statements": [)" +
                                statement("k") + "]}"),
                "procedure.block_not_of_kind", "/steps/0/hold"},
        Refusal{"WaitWithoutTime", kindStep("wait", ""), "procedure.block_missing",
                "/steps/0/wait_minutes"},
        Refusal{"WaitForNothing", kindStep("wait", R"("wait_minutes": 0)"),
                "procedure.out_of_range", "/steps/0/wait_minutes"},
        Refusal{"RemovedWithoutLedger", kindStep("remove", ""), "procedure.ledger_missing",
                "/steps/0/ledger"},
        Refusal{"RemovedItemTakenOff",
                kindStep("remove", R"("ledger": [{"item": "i", "name": "I", "to": "taken_off"}])"),
                "procedure.ledger_state", "/steps/0/ledger/0/to"},
        Refusal{"UnknownQuantity", kindStep("measure", R"("measure": {"quantity": "charm"})"),
                "procedure.unknown_quantity", "/steps/0/measure/quantity"},
        Refusal{"NoReadingPlanned", measureStep(R"("planned": 0)"), "procedure.out_of_range",
                "/steps/0/measure/planned"},
        Refusal{"SafetyWithoutLimit", measureStep(R"("safety": true)"), "procedure.needs_limit",
                "/steps/0/measure/limit"},
        Refusal{"HalfAState", measureStep(R"("state": {"seal": "off"})"), "json.missing",
                "/steps/0/measure/state/rods"},
        Refusal{"AngleInMillimetres", measureStep(R"("angle_within": "10 mm")"),
                "procedure.bad_angle", "/steps/0/measure/angle_within"},
        Refusal{"AngleSquare", measureStep(R"("angle_within": "90 deg")"), "procedure.bad_angle",
                "/steps/0/measure/angle_within"},
        Refusal{"UnknownInstrument", measureStep(R"("instruments": ["ear"])"),
                "procedure.unknown_instrument", "/steps/0/measure/instruments"},
        Refusal{"StagesFall", torqueStep("[0.8, 0.5, 1]"), "procedure.bad_stages",
                "/steps/0/torque/stages"},
        Refusal{"LastStageNotFull", torqueStep("[0.5]"), "procedure.bad_stages",
                "/steps/0/torque/stages"},
        Refusal{"StageOfText", torqueStep(R"(["half", 1])"), "procedure.bad_stages",
                "/steps/0/torque/stages"},
        Refusal{"OneChoice",
                doStep("a", R"("observe": [{"key": "k", "ask": "?", "choices": [{"word": "x",
                            "text": "X"}]}])"),
                "procedure.too_few_choices", "/steps/0/observe/0/choices"},
        Refusal{"SameWordTwice",
                doStep("a", R"("observe": [{"key": "k", "ask": "?", "choices": [{"word": "x",
                            "text": "X"}, {"word": "x", "text": "Y"}]}])"),
                "procedure.duplicate_word", "/steps/0/observe/0/choices"},
        Refusal{"MeansNothingKnown",
                doStep("a", R"("observe": [{"key": "k", "ask": "?", "choices": [{"word": "x",
                            "text": "X"}, {"word": "y", "text": "Y", "means": "doom"}]}])"),
                "json.not_one_of", "/steps/0/observe/0/choices/1/means"}),
    [](const auto& row) { return row.param.name; });

INSTANTIATE_TEST_SUITE_P(
    Holds, Refused,
    testing::Values(
        Refusal{"UnknownHold",
                kindStep("hold", R"("hold": {"key": "tea", "title": "T", "statements": []})"),
                "json.not_one_of", "/steps/0/hold/key"},
        Refusal{"NothingAsked", holdStep(""), "procedure.no_statement", "/steps/0/hold"},
        Refusal{"NothingAskedInThePit", holdStep(statement("k", R"({"support": ["stands",
                "two_post", "four_post"]})")),
                "procedure.no_statement", "/steps/0/hold"},
        Refusal{"FourAtOnce",
                holdStep(statement("k") + "," + statement("l") + "," + statement("m") + "," +
                         statement("n")),
                "procedure.too_many_statements", "/steps/0/hold"},
        Refusal{"FourAtOnceOnStands",
                holdStep(statement("k") + "," + statement("l") + "," + statement("m") + "," +
                         statement("n", R"({"support": ["stands"]})")),
                "procedure.too_many_statements", "/steps/0/hold"},
        Refusal{"SameStatementTwice", holdStep(statement("k") + "," + statement("k")),
                "procedure.duplicate_word", "/steps/0/hold"},
        Refusal{"CannotFail",
                holdStep(choiceStatement(kPass + R"(, {"word": "ok", "text": "OK"})")),
                "procedure.choice_cannot_fail", "/steps/0/hold/statements/0/answer/choices"},
        Refusal{"CannotPass",
                holdStep(choiceStatement(
                    kFail + R"(, {"word": "never", "text": "Never", "passes": false})")),
                "procedure.choice_cannot_pass", "/steps/0/hold/statements/0/answer/choices"},
        Refusal{"NoReason", holdStep(R"({"key": "k", "ask": "What?", "answer": {"type": "text"}})"),
                "json.missing", "/steps/0/hold/statements/0/why"},
        Refusal{
            "QuantityOfWhat",
            holdStep(R"({"key": "k", "ask": "What?", "why": "W", "answer": {"type": "quantity"}})"),
            "procedure.block_missing", "/steps/0/hold/statements/0/answer/quantity"},
        Refusal{"UnknownCheck", holdStep(R"({"key": "k", "ask": "What?", "why": "W",
                "answer": {"type": "text", "check": "by_eye"}})"),
                "json.not_one_of", "/steps/0/hold/statements/0/answer/check"}),
    [](const auto& row) { return row.param.name; });

INSTANTIATE_TEST_SUITE_P(
    Bench, Refused,
    testing::Values(Refusal{"NoCalculation", doStep("a", R"("bench": [])"), "procedure.empty_list",
                            "/steps/0/bench"},
                    Refusal{"Capitals", doStep("a", R"("bench": ["Toe"])"),
                            "procedure.bad_calculation", "/steps/0/bench", "a"},
                    Refusal{"Underscore", doStep("a", R"("bench": ["shim_pack"])"),
                            "procedure.bad_calculation", "/steps/0/bench"},
                    Refusal{"HyphenAtTheEnd", doStep("a", R"("bench": ["toe-"])"),
                            "procedure.bad_calculation", "/steps/0/bench"},
                    Refusal{"TwoHyphens", doStep("a", R"("bench": ["shim--pack"])"),
                            "procedure.bad_calculation", "/steps/0/bench"},
                    Refusal{"Twice", doStep("a", R"("bench": ["toe", "toe"])"),
                            "procedure.duplicate_word", "/steps/0/bench"},
                    Refusal{"NoList", doStep("a", R"("bench": "toe")"), "json.wrong_kind",
                            "/steps/0/bench"},
                    Refusal{"ReadsNothingKnown", measureStep(R"("reads": "moonlight")"),
                            "json.not_one_of", "/steps/0/measure/reads"}),
    [](const auto& row) { return row.param.name; });

// Needs name earlier steps only, so no chain of needs can come back to where it began.
INSTANTIATE_TEST_SUITE_P(
    Needs, Refused,
    testing::Values(Refusal{"Itself", doStep("a", R"("needs": ["a"])"),
                            "procedure.need_not_earlier", "/steps/0/needs"},
                    Refusal{"Later", doStep("a", R"("needs": ["b"])") + "," + doStep("b"),
                            "procedure.need_not_earlier", "/steps/0/needs"},
                    Refusal{
                        "EachOther",
                        doStep("a", R"("needs": ["b"])") + "," + doStep("b", R"("needs": ["a"])"),
                        "procedure.need_not_earlier", "/steps/0/needs"},
                    Refusal{"Nobody", doStep("a") + "," + doStep("b", R"("needs": ["zz"])"),
                            "procedure.need_not_earlier", "/steps/1/needs", "b"},
                    Refusal{"SameIdTwice", doStep("a") + "," + doStep("a"),
                            "procedure.duplicate_step", "/steps/1/id"}),
    [](const auto& row) { return row.param.name; });

TEST(ProcedureHold, ThreeForEachSupportAreNotTooMany) {
  std::string statements;
  for (const std::string support : {"stands", "two_post", "four_post", "pit"}) {
    for (const std::string number : {"1", "2", "3"}) {
      statements += (statements.empty() ? "" : ",");
      statements += statement(support + number, R"({"support": [")" + support + R"("]})");
    }
  }
  const auto procedure = read(holdStep(statements));
  ASSERT_TRUE(procedure.has_value()) << procedure.error().key;
  EXPECT_EQ(procedure->steps[0].hold->statements.size(), 12U);
}

TEST(ProcedureFile, HeadIsCheckedToo) {
  const auto headKey = [](const std::string& text) {
    const auto procedure = parseProcedure(text, "x.json");
    return procedure ? std::string("read") : procedure.error().key + procedure.error().field;
  };
  EXPECT_EQ(headKey("[]"), "json.wrong_kind/");
  EXPECT_EQ(headKey("{}"), "json.missing/schema");
  EXPECT_EQ(headKey(R"({"schema": 2})"), "procedure.schema/schema");
  EXPECT_EQ(headKey(R"({"schema": "1"})"), "json.wrong_kind/schema");
  EXPECT_EQ(headKey(R"({"schema": 1, "id": "x", "title": "T", "purpose": "P", "steps": []})"),
            "procedure.no_steps/steps");
  EXPECT_EQ(headKey(R"({"schema": 1, "id": "x", "title": "T", "purpose": "P"})"),
            "procedure.no_steps/steps");
  EXPECT_EQ(headKey(R"({"schema": 1, "id": "x", "version": 0, "title": "T", "purpose": "P",
                        "steps": []})"),
            "procedure.out_of_range/version");
}

TEST(ProcedureFile, EveryCutOffFileIsRefused) {
  const std::string text = fileWith(doStep("a", R"("needs": [], "minutes": 3)"));
  for (std::size_t length = 0; length < text.size(); ++length) {
    const auto procedure = parseProcedure(text.substr(0, length), "cut.json");
    ASSERT_FALSE(procedure.has_value()) << "cut after " << length;
    EXPECT_EQ(procedure.error().key, "json.invalid");
    EXPECT_EQ(procedure.error().detail("file"), "cut.json");
  }
}

TEST(ProcedureFile, HugeTextsAndListsAreRefused) {
  const auto large = read(doStep("a", R"("text": ")" + std::string(1024 * 1024, 'x') + "\""));
  ASSERT_FALSE(large.has_value());
  EXPECT_EQ(large.error().key, "procedure.too_large");
  std::string many = doStep("s0");
  for (int i = 1; i <= 400; ++i) many += "," + doStep("s" + std::to_string(i));
  const auto steps = read(many);
  ASSERT_FALSE(steps.has_value());
  EXPECT_EQ(steps.error().key, "procedure.too_many_steps");
}

TEST(ProcedureFile, EveryByteChangedIsReadOrRefusedNeverMore) {
  const std::string text = fileWith(measureStep(R"("angle_within": "10 deg", "planned": 3)"));
  std::size_t refused = 0;
  for (std::size_t at = 0; at < text.size(); ++at) {
    for (const char byte : {'\0', '"', '{', ']', '9', '\x80'}) {
      std::string changed = text;
      changed[at] = byte;
      const auto procedure = parseProcedure(changed, "changed.json");
      if (procedure) {
        EXPECT_EQ(procedure->steps.size(), 1U);
      } else {
        EXPECT_EQ(procedure.error().detail("file"), "changed.json");
        ++refused;
      }
    }
  }
  EXPECT_GT(refused, text.size());
}

}  // namespace
}  // namespace sw::procedures
