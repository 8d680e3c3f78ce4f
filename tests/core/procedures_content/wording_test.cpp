// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cctype>
#include <nlohmann/json.hpp>
#include <regex>
#include <set>
#include <sstream>

#include "shipped.h"

namespace sw::test {
namespace {

using procedures::Procedure;
using procedures::Step;

std::string lower(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return text;
}

bool says(const std::string& text, const std::string& words) {
  return lower(text).find(words) != std::string::npos;
}

/// Every text value below a JSON value.
void eachText(const nlohmann::json& json, const std::function<void(const std::string&)>& visit) {
  if (json.is_string()) visit(json.get<std::string>());
  if (!json.is_structured()) return;
  for (const auto& item : json) eachText(item, visit);
}

TEST(Wording, NeverPassesAVehicle) {
  const std::vector<std::string> forbidden{"safe to drive", "cleared", "guarantee", "roadworthy",
                                           "certified",     "100 %",   "perfectly", "fit to drive",
                                           "safe now",      "is safe", "are safe"};
  for (const char* folder : {"procedures", "plans"}) {
    for (const auto& [name, json] : shippedFiles(folder)) {
      eachText(json, [&, file = name](const std::string& text) {
        for (const std::string& phrase : forbidden) {
          EXPECT_FALSE(says(text, phrase)) << file << ": " << text;
        }
      });
    }
  }
}

struct CautionRow {
  const char* procedure;
  const char* step;
  std::vector<std::string> words;
};

class Cautions : public testing::TestWithParam<CautionRow> {};

TEST_P(Cautions, StandOnTheStepItself) {
  const auto* step = findStep(GetParam().procedure, GetParam().step);
  ASSERT_NE(step, nullptr);
  for (const std::string& words : GetParam().words) {
    EXPECT_TRUE(says(step->caution, words)) << words << " / " << step->caution;
  }
}

// Brake dust: HSE asbestos page for motor repair; OSHA wet method. Struck tools: CCOHS. Support:
// HSE, Working under vehicles. The rest is common practice, no source.
INSTANTIATE_TEST_SUITE_P(
    UsualOnes, Cautions,
    testing::Values(
        CautionRow{"caliper-off", "caliper_off", {"never by its hose"}},
        CautionRow{"caliper-off", "dust", {"wet", "never blow"}},
        CautionRow{"caliper-refit", "disc_clean", {"wet", "never blow"}},
        CautionRow{"prepare-to-measure",
                   "track_rod_off",
                   {"eye protection", "separator first", "drift", "never hammer on hammer"}},
        CautionRow{"prepare-to-measure",
                   "drag_link_off",
                   {"eye protection", "separator first", "never hammer on hammer"}},
        CautionRow{
            "cap-off-and-pack", "free_collars", {"eye protection", "never hammer on hammer"}},
        CautionRow{"cap-off-and-pack", "scrape", {"good air", "no flame"}},
        CautionRow{"cap-off-and-pack", "brush_bearing", {"no flame", "never spin"}},
        CautionRow{"seal-the-cap", "wipe", {"good air", "no flame"}},
        CautionRow{"renew-swivel-bearings", "races_out", {"eye protection", "hardened"}},
        CautionRow{"renew-swivel-bearings", "races_in", {"eye protection", "hardened"}},
        CautionRow{"make-safe-and-lift", "lift_stands", {"never rely on the jack"}},
        CautionRow{"rock-tests", "bushes", {"two-post", "tighten no rubber bush"}},
        CautionRow{"road-test-before",
                   "drive",
                   {"never accelerate through a shake", "hunt a bump", "never handles a device"}},
        CautionRow{"road-test-after",
                   "drive",
                   {"never accelerate through a shake", "hunt a bump", "never handles a device"}},
        CautionRow{"wheels-on-and-down", "pedal", {"before the vehicle moves"}},
        CautionRow{"hub-open", "nut_lock", {"eye protection", "never hammer on hammer"}},
        CautionRow{
            "wheel-bearing-set", "lock_closed", {"eye protection", "never hammer on hammer"}},
        CautionRow{"hub-off", "shaft_nut_off", {"no weight"}},
        CautionRow{"hub-repack", "wash", {"good air", "no flame", "never spin"}},
        CautionRow{"hub-repack", "pack", {"disc or pad never burns off"}},
        CautionRow{"hub-repack", "races", {"eye protection", "hardened"}},
        CautionRow{"renew-swivel-bearings", "hub_on", {"disc or pad never burns off"}},
        CautionRow{"disc-check", "wipe", {"wet", "never blow"}},
        CautionRow{"disc-renew", "pads", {"wet", "never blow"}},
        CautionRow{"pads-before-road", "pedal_again", {"no road until the pedal is hard"}},
        CautionRow{"pads-bedded-in", "bedding", {"hot"}},
        CautionRow{"renew-swivel-seal", "old_out", {"away from the ball"}},
        CautionRow{"rod-ends",
                   "track_rod_off",
                   {"eye protection", "separator first", "drift", "never hammer on hammer"}},
        CautionRow{"rod-ends",
                   "drop_arm_off",
                   {"eye protection", "separator first", "never hammer on hammer"}},
        CautionRow{"arm-bushes", "press_out", {"eye protection", "no flame"}},
        CautionRow{"arm-bushes", "hold_axle", {"no hand between"}},
        CautionRow{"arm-bolts-at-ride-height",
                   "axle_bolts_torque",
                   {"only with the weight on the wheels"}},
        CautionRow{
            "arm-bolts-at-ride-height", "pivot_torque", {"only with the weight on the wheels"}},
        CautionRow{
            "panhard-bolts-at-ride-height", "bolts_torque", {"only with the weight on the wheels"}},
        CautionRow{"panhard-bushes", "hold_axle", {"no finger in a bolt hole"}},
        CautionRow{"steering-damper", "damper_off", {"separator first"}}),
    [](const testing::TestParamInfo<CautionRow>& row) {
      std::string name = std::string(row.param.procedure) + row.param.step;
      std::erase_if(name, [](char c) { return c == '-' || c == '_'; });
      return name;
    });

TEST(Wording, SolventNeverStandsWithoutItsCaution) {
  eachStep([](const Procedure& procedure, const Step& step) {
    const bool solvent = std::any_of(
        step.consumables.begin(), step.consumables.end(),
        [](const auto& c) { return says(c.name, "solvent") || says(c.name, "cleaner"); });
    if (!solvent || says(step.caution, "wet")) return;
    EXPECT_TRUE(says(step.caution, "no flame")) << placeOf(procedure, step);
  });
}

TEST(Wording, HammersNeverStandWithoutEyeProtection) {
  eachStep([](const Procedure& procedure, const Step& step) {
    const bool struck = std::any_of(step.tools.begin(), step.tools.end(), [](const auto& tool) {
      return tool.name == "Hammer" || tool.name == "Soft drift";
    });
    if (!struck) return;
    EXPECT_TRUE(says(step.caution, "eye protection")) << placeOf(procedure, step);
  });
}

TEST(Wording, LiftingDefersToDocumentationLocalCodesAndLicence) {
  for (const auto& [procedure, step] :
       {std::pair{"make-safe-and-lift", "defer"}, std::pair{"swap-wheels", "before_you_lift"}}) {
    const auto* note = findStep(procedure, step);
    ASSERT_NE(note, nullptr);
    EXPECT_EQ(note->kind, procedures::StepKind::Note);
    EXPECT_TRUE(note->needs.empty());
    for (const char* words : {"own documentation", "local codes", "licensed practice"}) {
      EXPECT_TRUE(says(note->text, words)) << procedure << " " << words;
    }
  }
}

// A figure of the trade is not a figure of this vehicle, and says so where it stands.
TEST(Wording, TradeFiguresSayTheyHaveNoSource) {
  const std::regex figure("[0-9]+ (to [0-9]+ )?(km|hours|degrees|times)\\b");
  int figures = 0;
  eachStep([&](const Procedure& procedure, const Step& step) {
    for (std::sregex_iterator it(step.text.begin(), step.text.end(), figure), end; it != end;
         ++it) {
      ++figures;
      const auto after = step.text.substr(static_cast<std::size_t>(it->position()), 90);
      EXPECT_TRUE(says(after, "common practice, no source"))
          << placeOf(procedure, step) << ": " << it->str();
    }
  });
  EXPECT_GE(figures, 8);
}

TEST(Wording, TitlesAndCautionsFitALine) {
  eachStep([](const Procedure& procedure, const Step& step) {
    EXPECT_LE(step.title.size(), 55U) << placeOf(procedure, step);
    EXPECT_LE(step.caution.size(), 160U) << placeOf(procedure, step);
    EXPECT_EQ(step.caution.find('\n'), std::string::npos);
  });
}

std::size_t longestSentence(const std::string& text) {
  std::size_t longest = 0;
  std::size_t words = 0;
  std::istringstream in(text);
  for (std::string word; in >> word;) {
    longest = std::max(longest, ++words);
    if (word.back() == '.' || word.back() == '?' || word.back() == ':') words = 0;
  }
  return longest;
}

TEST(Wording, SentencesAreShort) {
  eachStep([](const Procedure& procedure, const Step& step) {
    EXPECT_LE(longestSentence(step.text), 32U) << placeOf(procedure, step) << ": " << step.text;
  });
}

TEST(Wording, ADamperIsNeverTheFirstThingToChange) {
  const auto* note = findStep("steering-damper", "never_first");
  ASSERT_NE(note, nullptr);
  EXPECT_TRUE(says(note->title, "never the first thing"));
  EXPECT_TRUE(says(note->text, "mask a fault"));
  EXPECT_TRUE(note->needs.empty());
}

TEST(Wording, RubberIsNeverClampedWithTheAxleHanging) {
  for (const char* procedure : {"arm-bolts-at-ride-height", "panhard-bolts-at-ride-height"}) {
    const auto* settle = findStep(procedure, "settle");
    ASSERT_NE(settle, nullptr);
    EXPECT_TRUE(says(settle->text, "never with the axle hanging on a two-post lift")) << procedure;
  }
}

// Military manuals name four points at least; four are blind to an error twice a turn, since
// cos(2 (t + 90 k)) only changes its sign: readings of opposite sign, or all of them zero.
TEST(Wording, TheDiscSaysWhyFourPointsAreTooFew) {
  const auto* mark = findStep("disc-check", "mark");
  ASSERT_NE(mark, nullptr);
  EXPECT_TRUE(says(mark->text, "four points are not enough"));
}

TEST(Wording, EachSideOfTheShimLayoutSaysItsOwnDirection) {
  const auto* flange = findStep("fit-shims-and-pull", "choose_flange");
  const auto* inner = findStep("fit-shims-and-pull", "choose_inner");
  ASSERT_TRUE(flange != nullptr && inner != nullptr);
  EXPECT_TRUE(says(flange->text, "a thinner pack raises"));
  EXPECT_TRUE(says(inner->text, "a thicker pack raises"));
}

}  // namespace
}  // namespace sw::test
