// SPDX-License-Identifier: GPL-3.0-or-later
#include <gmock/gmock.h>
#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <sstream>

#include "phrasing/error_sentence.h"
#include "phrasing/event_sentence.h"
#include "phrasing/finding_sentence.h"
#include "text.h"

// Reads the sources of core: whoever adds a key of an error, a check of the book or an event
// without a sentence fails here.

namespace sw::phrasing {
namespace {

namespace fs = std::filesystem;

std::string contentOf(const fs::path& path) {
  std::ifstream in(path, std::ios::binary);
  std::stringstream text;
  text << in.rdbuf();
  return text.str();
}

/// All sources but those of phrasing itself, by path within core.
std::map<std::string, std::string> sources() {
  const fs::path core = fs::path(SW_SOURCE_DIR) / "core";
  std::map<std::string, std::string> files;
  for (const auto& entry : fs::recursive_directory_iterator(core)) {
    const std::string name = fs::relative(entry.path(), core).generic_string();
    const std::string kind = entry.path().extension().string();
    if ((kind == ".h" || kind == ".cpp") && !name.starts_with("phrasing/")) {
      files[name] = contentOf(entry.path());
    }
  }
  return files;
}

std::set<std::string> matches(const std::string& text, const std::regex& pattern) {
  std::set<std::string> found;
  for (std::sregex_iterator it(text.begin(), text.end(), pattern), end; it != end; ++it) {
    found.insert((*it)[1].str());
  }
  return found;
}

// "ErrorCode::X, "area.key"": the key right where the error is made.
const std::regex kMadeHere(R"rx(ErrorCode::\w+,\s*"([a-z_]+\.[a-z_]+)")rx");
// A key handed on to a helper, in SQL, or promised in a comment: any literal of an area of errors.
const std::regex kAnyLiteral(R"rx(["']([a-z_]+\.[a-z_]+)["'])rx");

// Lines of the spec sheet that share the first word of an area.
const std::set<std::string> kSpecKeys{
    "shims.sizes",         "shims.max_pack",          "shims.max_count",
    "tyre.front_pressure", "wheel_bearing.end_float", "wheel_bearing.preload_pull"};

// A call of tell(), up to its values or its end; the key is a literal in it.
const std::regex kTell(R"rx([.>]tell\(([^{};]*))rx");
const std::regex kWordLiteral(R"rx("([a-z_]+)")rx");

/// Where each event is told: file by key. A call without a literal is told under "".
std::map<std::string, std::string> toldEvents() {
  std::map<std::string, std::string> told;
  for (const auto& [file, text] : sources()) {
    for (const std::string& call : matches(text, kTell)) {
      auto keys = matches(call, kWordLiteral);
      if (keys.empty()) keys.insert("");
      for (const std::string& key : keys) told[key] = file;
    }
  }
  return told;
}

/// Every word in quotation marks anywhere.
std::set<std::string> wordLiterals() {
  std::set<std::string> words;
  for (const auto& [file, text] : sources()) words.merge(matches(text, kWordLiteral));
  return words;
}

std::map<std::string, std::string> checkKeys() {
  std::map<std::string, std::string> keys;
  for (const auto& [file, text] : sources()) {
    for (const std::string& key : matches(text, kAnyLiteral)) {
      if (key.starts_with("check.")) keys[key] = file;
    }
  }
  return keys;
}

template <class Keys>
std::set<std::string> asSet(const Keys& keys) {
  return {keys.begin(), keys.end()};
}

std::string areaOf(const std::string& key) {
  return key.substr(0, key.find('.'));
}

TEST(KeyCoverage, TheScanFindsWhatIsKnownToBeThere) {
  const auto files = sources();
  const auto keys = matches(files.at("base/clock.cpp"), kMadeHere);
  EXPECT_THAT(keys, testing::ElementsAre("clock.not_a_date", "clock.not_a_time"));
  EXPECT_FALSE(hasSentence("clock.never_heard_of"));
}

TEST(KeyCoverage, EveryKeyMadeInCoreHasASentence) {
  std::size_t count = 0;
  for (const auto& [file, text] : sources()) {
    for (const std::string& key : matches(text, kMadeHere)) {
      EXPECT_TRUE(hasSentence(key)) << file << ": " << key;
      ++count;
    }
  }
  EXPECT_GT(count, 50U);
}

TEST(KeyCoverage, EveryKeyOfAnAreaOfErrorsHasASentence) {
  std::set<std::string> areas;
  for (const auto& [file, text] : sources()) {
    for (const std::string& key : matches(text, kMadeHere)) areas.insert(areaOf(key));
  }
  for (const auto& [file, text] : sources()) {
    for (const std::string& key : matches(text, kAnyLiteral)) {
      if (!areas.contains(areaOf(key)) || kSpecKeys.contains(key)) continue;
      EXPECT_TRUE(hasSentence(key)) << file << ": " << key;
    }
  }
}

TEST(KeyCoverage, EveryRefusalOfTheWorkshopHasAPhrase) {
  const std::regex made(R"rx(push_back\(\{"([a-z_]+)",)rx");
  std::size_t count = 0;
  for (const auto& [file, text] : sources()) {
    if (!file.starts_with("workshop/")) continue;
    for (const std::string& key : matches(text, made)) {
      const Error error{
          ErrorCode::Refused, "workshop.not_yet", {}, {{"refusal", key + "|at|what"}}};
      EXPECT_FALSE(plain(sentence(error)).ends_with("what: " + key + ".")) << file << ": " << key;
      ++count;
    }
  }
  EXPECT_GT(count, 5U);
}

TEST(KeyCoverage, EverySentenceHasAKeySomebodyMakes) {
  std::set<std::string> made;
  for (const auto& [file, text] : sources()) {
    made.merge(matches(text, kAnyLiteral));
  }
  for (const std::string_view key : sentenceKeys()) {
    EXPECT_TRUE(made.contains(std::string(key))) << key << " is made nowhere";
  }
}

TEST(KeyCoverage, EveryCheckOfTheBookHasASentence) {
  const auto sentences = asSet(findingKeys());
  const auto keys = checkKeys();
  EXPECT_TRUE(keys.contains("check.sound") && keys.contains("check.verdict_differs"));
  for (const auto& [key, file] : keys) EXPECT_TRUE(sentences.contains(key)) << file << ": " << key;
}

TEST(KeyCoverage, EverySentenceOfACheckHasAKeySomebodyMakes) {
  const auto keys = checkKeys();
  for (const std::string_view key : findingKeys()) {
    EXPECT_TRUE(keys.contains(std::string(key))) << key << " is made nowhere";
  }
}

TEST(KeyCoverage, EveryEventHasASentence) {
  const auto sentences = asSet(eventKeys());
  const auto told = toldEvents();
  // One plain call, one broken over lines, one that chooses between two.
  EXPECT_TRUE(told.contains("signed_off") && told.contains("read_as"));
  EXPECT_TRUE(told.contains("packs_exhausted") && told.contains("still_shakes"));
  for (const auto& [key, file] : told) {
    EXPECT_FALSE(key.empty()) << file << ": tell() without its key in place";
    EXPECT_TRUE(sentences.contains(key)) << file << ": " << key;
  }
}

TEST(KeyCoverage, EverySentenceOfAnEventIsToldSomewhere) {
  const auto told = toldEvents();
  const auto words = wordLiterals();
  for (const std::string_view row : eventKeys()) {
    const std::size_t mark = row.find('/');
    const std::string key(row.substr(0, mark));
    EXPECT_TRUE(told.contains(key)) << key << " is told nowhere";
    if (mark == std::string_view::npos) continue;
    const std::string word(row.substr(mark + 1));
    EXPECT_TRUE(words.contains(word)) << row << ": nobody writes this word";
  }
}

}  // namespace
}  // namespace sw::phrasing
