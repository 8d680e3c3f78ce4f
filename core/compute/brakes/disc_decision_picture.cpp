// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/brakes/disc_decision_picture.h"

#include <algorithm>
#include <optional>
#include <vector>

#include "compute/verdict_mark.h"
#include "figure/drawing.h"
#include "figure/number_line.h"

namespace sw::compute {

namespace {

using figure::Figure;
using figure::MarkShape;
using figure::NumberLine;
using figure::Point;
using figure::Range;
using figure::Room;
using figure::Side;
using figure::Text;
using figure::Tone;
using mechanics::DiscAction;
using mechanics::DiscCondition;
using mechanics::DiscDecision;
using mechanics::JudgedDisc;

constexpr double kLeft = 6.8;       // em, for the names of the rows
constexpr double kRight = 5.8;      // for their values
constexpr double kTop = 3.4;        // headline, then names of the limits
constexpr double kMostShare = 2.2;  // of a limit: bars beyond it end there
constexpr double kWordsSize = 0.8;

using JudgedLength = mechanics::Judged<Length>;

/// One bar: a figure of one disc against its limit.
struct ShareRow {
  std::string name;
  JudgedLength judged;
  Length limit;
};

std::vector<ShareRow> shareRows(const DecisionInput& input, const DiscDecision& decision) {
  const auto& limits = input.decision.limits;
  std::vector<ShareRow> rows;
  const auto add = [&](const char* name, std::optional<JudgedLength> JudgedDisc::*member,
                       const std::optional<Length>& limit) {
    if (!limit) return;
    bool first = true;
    for (std::size_t at = 0; at < decision.discs.size(); ++at) {
      const auto& judged = decision.discs[at].*member;
      if (!judged) continue;
      rows.push_back({(first ? std::string(name) + ", " : "") + input.sides[at], *judged, *limit});
      first = false;
    }
  };
  add("variation", &JudgedDisc::variation, limits.variation);
  add("runout", &JudgedDisc::runout, limits.runout);
  add("not flat", &JudgedDisc::residual, limits.runout);
  return rows;
}

Range thicknessRange(const DecisionInput& input, const DiscDecision& decision) {
  const auto& limits = input.decision.limits;
  Range range{inMillimetres(limits.discard), inMillimetres(limits.discard)};
  if (limits.machineTo) range.include(inMillimetres(*limits.machineTo));
  for (const JudgedDisc& disc : decision.discs) {
    range.include(inMillimetres(disc.minimum.value));
    if (disc.afterMachining) range.include(inMillimetres(disc.afterMachining->value));
  }
  range.widen(0.12, 0.2);
  return range;
}

void drawLimit(Figure& figure, double x, double bottom, const std::string& name,
               figure::Path line) {
  line.points = {{x, kTop}, {x, bottom}};
  figure.add(std::move(line));
  figure.add(Text{{x, kTop}, name, Side::Above, Room::Movable, Tone::Limit, 0.85});
}

std::string conditionWords(DiscCondition condition) {
  std::string words(word(condition));
  std::replace(words.begin(), words.end(), '_', ' ');
  return words;
}

void drawThickness(Figure& figure, const NumberLine& scale, const JudgedDisc& disc, double y) {
  const Point now{scale.at(inMillimetres(disc.minimum.value)), y};
  const Verdict verdict = disc.minimum.verdict;
  if (disc.afterMachining) {
    const double x = scale.at(inMillimetres(disc.afterMachining->value));
    add(figure, figure::Arrow{now, {x + 0.4, y}, Tone::Accent, 0.14});
    figure.add(verdictMark({x, y}, disc.afterMachining->verdict, 0.4));
  }
  const bool faulty = disc.condition != DiscCondition::None;
  figure.add(verdictMark(now, faulty ? Verdict::Outside : verdict, 0.55));
  if (!faulty) return;
  const bool right = now.x > 0.6 * figure.size.width;
  figure.add(Text{{now.x + (right ? -0.4 : 0.4), now.y},
                  conditionWords(disc.condition),
                  right ? Side::Left : Side::Right,
                  Room::Movable,
                  Tone::Bad,
                  0.9,
                  true});
}

/// Thickness of both discs between the limits, down to `bottom`.
void drawThicknesses(Figure& figure, const DecisionInput& input, const DiscDecision& decision,
                     double bottom) {
  const auto& limits = input.decision.limits;
  const NumberLine scale(kLeft, figure.size.width - 1.0, thicknessRange(input, decision));
  const double discard = scale.at(inMillimetres(limits.discard));
  figure.add(figure::area({scale.left(), kTop}, {discard, bottom}, Tone::Limit, 0.12));
  scale.draw(figure, kTop, bottom, "thickness, mm");
  drawLimit(figure, discard, bottom, "discard", figure::line({}, {}, Tone::Limit, 0.22));
  if (limits.machineTo) {
    drawLimit(figure, scale.at(inMillimetres(*limits.machineTo)), bottom, "machine to",
              figure::dashed({}, {}, Tone::Limit));
  }
  const double row = (bottom - kTop) / static_cast<double>(decision.discs.size());
  for (std::size_t at = 0; at < decision.discs.size(); ++at) {
    const double y = kTop + (static_cast<double>(at) + 0.5) * row;
    figure.add(
        Text{{kLeft - 0.5, y}, input.sides[at], Side::Left, Room::Fixed, Tone::Ink, kWordsSize});
    drawThickness(figure, scale, decision.discs[at], y);
    const auto& cut = decision.discs[at].afterMachining;
    if (at > 0 || !cut) continue;
    const double now = scale.at(inMillimetres(decision.discs[at].minimum.value));
    figure.add(Text{{now, y - 0.4}, "now", Side::Above, Room::Optional, Tone::Quiet, kWordsSize});
    figure.add(Text{{scale.at(inMillimetres(cut->value)), y - 0.4},
                    "cut",
                    Side::Above,
                    Room::Optional,
                    Tone::Quiet,
                    kWordsSize});
  }
}

void drawShare(Figure& figure, const NumberLine& scale, const ShareRow& row, double y,
               double half) {
  const VerdictLook look = lookOf(row.judged.verdict);
  const double share = row.judged.value.si() / row.limit.si();
  const Point end{scale.at(share), y};
  figure.add(figure::box({scale.left(), y - half}, {end.x, y + half}, look.tone, 0.35));
  figure.add(verdictMark(end, row.judged.verdict, 0.42));
  figure.add(Text{{kLeft - 0.5, y}, row.name, Side::Left, Room::Fixed, Tone::Ink, kWordsSize});
  figure.add(Text{{figure.size.width - 0.1, y},
                  figureWords(row.judged.value.si(), QuantityKind::Length),
                  Side::Left,
                  Room::Fixed,
                  Tone::Ink,
                  kWordsSize});
}

void drawShares(Figure& figure, const std::vector<ShareRow>& rows, double top, double bottom) {
  Range range{0, 1.5};
  for (const ShareRow& row : rows) {
    range.include(std::min(kMostShare, 1.3 * row.judged.value.si() / row.limit.si()));
  }
  const NumberLine scale(kLeft, figure.size.width - kRight, range);
  const double pitch = (bottom - top) / static_cast<double>(rows.size());
  const double half = std::min(0.5, 0.34 * pitch);
  for (std::size_t i = 0; i < rows.size(); ++i) {
    drawShare(figure, scale, rows[i], top + (static_cast<double>(i) + 0.5) * pitch, half);
  }
  const double limit = scale.at(1);
  figure.add(figure::dashed({limit, top}, {limit, bottom}, Tone::Limit));
  figure.add(Text{{limit, top}, "limit", Side::Above, Room::Movable, Tone::Limit, 0.85});
}

void drawDecision(Figure& figure, DiscAction action) {
  std::string words(word(action));
  std::replace(words.begin(), words.end(), '_', ' ');
  switch (action) {
    case DiscAction::Keep:
      return figure::headline(figure, words + " both", MarkShape::Disc, Tone::Good);
    case DiscAction::Replace:
      return figure::headline(figure, words + " both", MarkShape::Square, Tone::Bad);
    case DiscAction::NotDecided:
      return figure::headline(figure, words, MarkShape::Diamond, Tone::Doubt);
    case DiscAction::CleanAndIndex:
    case DiscAction::Resurface:
      return figure::headline(figure, words + " both", MarkShape::Triangle, Tone::Accent);
  }
}

}  // namespace

Figure discDecisionPicture(const DecisionInput& input, const DiscDecision& decision,
                           figure::Size size) {
  Figure figure;
  figure.size = size;
  figure.title = "What becomes of the two discs";
  figure.description =
      "Thickness, variation, runout and flatness of both discs against their "
      "limits: " +
      std::string(word(decision.action));
  const auto rows = shareRows(input, decision);
  const double all = size.height - kTop - figure::kRoomBelowLine;
  const double thickness = rows.empty() ? all : std::max(3.4, 0.34 * all);
  drawThicknesses(figure, input, decision, kTop + thickness);
  if (!rows.empty()) {
    drawShares(figure, rows, kTop + thickness + figure::kRoomBelowLine + 0.6, size.height - 0.3);
  }
  drawDecision(figure, decision.action);
  return figure;
}

}  // namespace sw::compute
