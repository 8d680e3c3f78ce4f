// SPDX-License-Identifier: GPL-3.0-or-later
#include "phrasing/error_sentence.h"
#include <gmock/gmock.h>
#include <nlohmann/json.hpp>

#include <set>

#include "base/clock.h"
#include "mechanics/swivel/shim_packs.h"
#include "model/json.h"
#include "text.h"
#include "units/parse.h"

namespace sw::phrasing {
namespace {

std::string said(const Error& error) {
  return plain(sentence(error));
}

std::string saidOf(std::string_view typed, QuantityKind kind, const std::string& field) {
  const auto read = parseQuantity(typed, {field, kind, {}});
  return read ? "read" : said(read.error());
}

// The sentence must name the field, say what is wrong and what to do; these are the errors as the
// readers make them.
TEST(Sentence, AWrongKindNamesBothKindsAndAnExample) {
  const std::string text = saidOf("12 mm", QuantityKind::Force, "starting_force");
  EXPECT_THAT(text, testing::StartsWith("Starting force: “12 mm” is of the wrong kind (length)"));
  EXPECT_THAT(text, testing::HasSubstr("this field takes: force. Type it like"));
  EXPECT_THAT(text, testing::HasSubstr(" N."));
}

TEST(Sentence, NothingTyped) {
  const std::string text = saidOf("  ", QuantityKind::Length, "pack");
  EXPECT_THAT(text, testing::StartsWith("Pack: nothing was entered. Type a value such as "));
}

TEST(Sentence, TypedTextIsShownAsItIs) {
  const std::string text = saidOf("{text} [x]", QuantityKind::Length, "{field}");
  EXPECT_THAT(text, testing::HasSubstr("“{text} [x]”"));
  EXPECT_THAT(text, testing::StartsWith("{field}: "));
}

TEST(Sentence, AMarkTooManyInASeriesNamesThePlace) {
  const auto series = parseSeries("18.5 1,234.5", {"readings", QuantityKind::Force, "N"});
  ASSERT_FALSE(series.has_value());
  EXPECT_THAT(said(series.error()), testing::AllOf(testing::StartsWith("Readings: "),
                                                   testing::HasSubstr("(value number 2)"),
                                                   testing::HasSubstr("Use one comma or point")));
}

TEST(Sentence, AStackOfShims) {
  const auto stack = mechanics::parseStack("0.5 + + 0.25", "pack_found");
  ASSERT_FALSE(stack.has_value());
  EXPECT_EQ(
      said(stack.error()),
      "Pack found: a shim is missing beside a plus sign (place 2). Type the stack like 0.50 + "
      "0.25.");
}

TEST(Sentence, ADateWithoutField) {
  const auto date = parseDate("31/04/2031");
  ASSERT_FALSE(date.has_value());
  EXPECT_EQ(said(date.error()), "“31/04/2031” is not a date. Type it like 2031-04-05.");
}

TEST(Sentence, JsonFieldsAreNamedByTheirPlace) {
  const auto json = model::parseJson(R"({"planned": "three"})");
  ASSERT_TRUE(json.has_value());
  model::ObjectReader reader(*json, "/steps/2");
  EXPECT_FALSE(reader.number("planned").has_value());
  const auto done = reader.finish();
  ASSERT_FALSE(done.has_value());
  EXPECT_EQ(said(done.error()), "/steps/2/planned: this should be: number. Correct it.");
}

TEST(Sentence, FileAndStepFollowWhereTheyAreKnown) {
  const Error error{ErrorCode::InvalidInput,
                    "procedure.needs_limit",
                    "/steps/1/measure/limit",
                    {{"step", "pull"}, {"file", "sample.json"}}};
  EXPECT_EQ(said(error),
            "/steps/1/measure/limit: a reading that decides something needs a limit. Name its line "
            "of the spec sheet (file sample.json) (step pull).");
}

TEST(Sentence, TheBookSaysWhoHasIt) {
  const Error error{ErrorCode::BookLocked,
                    "store.locked",
                    {},
                    {{"path", "/shop/book.sqlite"}, {"who", "kim at bench"}, {"since", "08:12"}}};
  EXPECT_EQ(
      said(error),
      "Another program has the book open: /shop/book.sqlite – kim at bench, since 08:12. Close "
      "it there, or view the book without writing.");
  const Error bare{ErrorCode::BookLocked, "store.locked", {}, {}};
  EXPECT_EQ(said(bare),
            "Another program has the book open. Close it there, or view the book without writing.");
}

TEST(Sentence, StoredReasonsAreWordsForPeople) {
  const Error error{
      ErrorCode::BookForeign, "store.foreign", {}, {{"path", "x"}, {"reason", "not_a_database"}}};
  EXPECT_THAT(said(error), testing::HasSubstr("(it is no database)"));
}

TEST(Sentence, RefusalsNameEveryStepAndReason) {
  const Error error{ErrorCode::Refused,
                    "workshop.sign_off_refused",
                    {},
                    {{"refusal", "hold_open|wheels-on/nuts|wheel_nuts"},
                     {"refusal", "ledger|caliper-refit/pins (left)|caliper pins: hand_tight"},
                     {"refusal", "not_proved|dressed-pull/pull (right)|undecided"},
                     {"refusal", "no_pull_since_pack||right"},
                     {"refusal", "moon_phase|a/b|full"}}};
  EXPECT_EQ(
      said(error),
      "The job cannot be signed off yet: wheels-on/nuts: the hold “wheel nuts” is still to be "
      "answered; caliper-refit/pins (left): caliper pins: hand-tight; dressed-pull/pull "
      "(right): the reading is not proved within its limit (undecided); no pull was taken "
      "since the pack was fitted (right side); a/b: full: moon_phase.");
}

TEST(Sentence, AnUnknownKeyStillSaysWhatIsKnown) {
  const Error error{
      ErrorCode::OutOfRange, "moon.too_full", "phase", {{"text", "11"}, {"max", "10"}}};
  EXPECT_EQ(said(error),
            "Phase: this was not accepted (out_of_range: moon.too_full). Details: text = 11, max = "
            "10.");
  EXPECT_EQ(said({ErrorCode::Internal, "", "", {}}), "This was not accepted (internal: ).");
}

TEST(Sentence, AMegabyteOfTextStaysASentence) {
  const std::string text = said({ErrorCode::InvalidInput,
                                 "units.not_a_number",
                                 std::string(1 << 20, 'f'),
                                 {{"text", std::string(1 << 20, 'x')}}});
  EXPECT_LT(text.size(), 500U);
}

TEST(SentenceTables, NoKeyTwiceAndEverySentenceReadsWithoutDetails) {
  std::set<std::string> seen;
  for (const std::string_view key : sentenceKeys()) {
    EXPECT_TRUE(seen.insert(std::string(key)).second) << key;
    const std::string text = said({ErrorCode::InvalidInput, std::string(key), "the_field", {}});
    EXPECT_GT(text.size(), 20U) << key;
    EXPECT_TRUE(text.ends_with(".") || text.ends_with(": .")) << key << ": " << text;
    EXPECT_EQ(text.find_first_of("{}[]"), std::string::npos) << key << ": " << text;
    EXPECT_TRUE(text.starts_with("The field: ") || key.starts_with("store.")) << text;
  }
  EXPECT_GT(seen.size(), 100U);
}

// Every placeholder of a sentence is a plain name; a typing slip in a table would show here.
TEST(SentenceTables, FilledWithDetailsNothingIsLeftOver) {
  for (const std::string_view key : sentenceKeys()) {
    Error error{ErrorCode::InvalidInput, std::string(key), "the_field", {}};
    for (const char* name :
         {"text",    "example", "expected",  "found",       "unit",    "position", "key",
          "choices", "kind",    "file",      "step",        "path",    "who",      "since",
          "reason",  "version", "ours",      "file_system", "needed",  "free",     "entry",
          "column",  "hash",    "name",      "most",        "first",   "second",   "id",
          "fact",    "type",    "procedure", "job",         "wrench",  "set",      "min",
          "max",     "stages",  "count",     "instrument",  "minutes", "item",     "state",
          "format",  "side",    "why"}) {
      error.details.emplace_back(name, "<" + std::string(name) + ">");
    }
    error.details.emplace_back("refusal", "needs|<step>|<what>");
    const std::string text = said(error);
    EXPECT_EQ(text.find_first_of("{}[]"), std::string::npos) << text;
    EXPECT_EQ(text.find("()"), std::string::npos) << text;
    EXPECT_EQ(text.find("“”"), std::string::npos) << text;
    EXPECT_EQ(text.find("  "), std::string::npos) << text;
  }
}

}  // namespace
}  // namespace sw::phrasing
