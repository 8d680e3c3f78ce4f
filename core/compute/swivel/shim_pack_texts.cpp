// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/swivel/shim_pack_texts.h"

#include <algorithm>
#include <cmath>

#include "units/format.h"

namespace sw::compute {

namespace {

using mechanics::PackAdvice;
using mechanics::PackQuestion;
using mechanics::PackReason;
using mechanics::PredictionBasis;

std::string forceText(Force force) {
  return displayText(force.si(), defaultUnit(QuantityKind::Force), 3);
}

std::string packText(Length pack) {
  return displayText(pack.si(), defaultUnit(QuantityKind::Length), 3);
}

std::string percent(double share) {
  const int whole = static_cast<int>(std::lround(share * 100));
  if (whole >= 100) return "over 99 %";
  return whole < 1 ? "under 1 %" : std::to_string(whole) + " %";
}

std::string packName(const mechanics::AllowedPack& pack) {
  std::string text = packText(pack.total) + " (";
  for (std::size_t i = 0; i < pack.shims.size(); ++i) {
    const std::string shim = packText(pack.shims[i]);
    text += (i > 0 ? " + " : "") + shim.substr(0, shim.find(' '));
  }
  return text + ")";
}

std::string predictionText(const mechanics::PackRow& row) {
  if (!row.prediction) return {};
  const auto& p = *row.prediction;
  return " Expected " + forceText(p.expected) + ", probably " + forceText(p.trueForce.low) +
         " to " + forceText(p.trueForce.high) + "; within the limit: " + percent(p.within) + ".";
}

Note recommendation(const PackAdvice& advice) {
  const std::string code(word(advice.reason));
  const auto* row = advice.recommended ? &advice.rows[*advice.recommended] : nullptr;
  const std::string pack = row != nullptr ? packName(row->pack) : std::string{};
  const std::string expected = row != nullptr ? predictionText(*row) : std::string{};
  switch (advice.reason) {
    case PackReason::Stay:
      return {code, row != nullptr ? "Leave the pack that is in, " + pack + "." + expected
                                   : "Leave the pack that is in: no other does better."};
    case PackReason::LikeliestWithin:
      return {code, "Fit " + pack + ": of all packs the one most likely to pull within the limit." +
                        expected};
    case PackReason::AsFarAsAllowed:
      return {code, "Fit " + pack +
                        ": the pack wanted lies farther off than twice what was measured, so this "
                        "far and no farther, then pull." +
                        expected};
    case PackReason::OneStep:
      return {code, "Fit " + pack + ": one step, then pull." + expected};
    case PackReason::MeasuredKnee:
      return {code, "Fit " + pack + ": by the float measured, the pack nearest to no float."};
    case PackReason::MeasureFirst:
      return {code, "Pull the hub as found, or measure the float, first."};
    case PackReason::PacksEnd:
      return {code, "There is no pack left in the direction wanted: other shims, or worn parts."};
    case PackReason::NoneLikely:
      return {code,
              "No pack that can be made is likely to land within the limit: the steps are "
              "too coarse for it. Other shim sizes are needed."};
  }
  return {};
}

Note basisNote(PredictionBasis basis) {
  const std::string code = "basis_" + std::string(word(basis));
  switch (basis) {
    case PredictionBasis::None:
      return {code, "No slope is assumed: until two packs have been pulled nothing is predicted."};
    case PredictionBasis::History:
      return {code,
              "From history: the figures rest on this shop's closed jobs and one pack pulled. "
              "One step at most until two packs have been pulled."};
    case PredictionBasis::OwnPulls:
      return {code, "The figures rest on this side's own pulls alone."};
    case PredictionBasis::OwnPullsAndHistory:
      return {code, "The figures rest on this side's own pulls and this shop's closed jobs."};
  }
  return {};
}

}  // namespace

Note otherStates(int packs) {
  return {"other_states_left_out",
          std::to_string(packs) + (packs == 1 ? " pack was" : " packs were") +
              " pulled in another state (seal, rods, sealant, grease) and left out: only pulls of "
              "one state lie on one curve."};
}

std::vector<Note> shimPackNotes(const PackQuestion& question, const PackAdvice& advice) {
  std::vector<Note> notes{recommendation(advice), basisNote(advice.basis)};
  if (advice.floatLikely) {
    notes.push_back({"float_left",
                     "The last pack probably leaves float: its pull shows the drag of seal and "
                     "grease, not preload, and nothing is extrapolated from it."});
  }
  if (advice.reason == PackReason::NoneLikely && advice.wanted) {
    notes.push_back({"wanted", "A pack of about " + packText(*advice.wanted) +
                                   " would pull in the middle of the limit."});
  }
  const bool errorKnown = question.terms.instrumentUncertainty.si() > 0;
  if (advice.line && !errorKnown) {
    notes.push_back({"scale_error_unknown",
                     "The scale's own error is not given, so it is not in the figures."});
  }
  if (question.terms.film) {
    notes.push_back({"film",
                     "The figures are for the sealed cap, the film as thick as stated; the "
                     "pulls are those of the dry trial packs."});
  }
  notes.push_back({"pull_decides", "A prediction chooses the pack; the pull decides."});
  return notes;
}

namespace {

std::string rangeText(const std::string& middle, const std::string& low, const std::string& high) {
  return middle + ", probably " + low + " to " + high;
}

std::string slopeText(double slope) {
  return displayText(slope, defaultUnit(QuantityKind::Stiffness), 2);
}

std::string shimsText(const mechanics::AllowedPack& pack) {
  std::string text;
  for (const Length shim : pack.shims) {
    const std::string one = packText(shim);
    text += (text.empty() ? "" : " + ") + one.substr(0, one.find(' '));
  }
  return text;
}

void dropColumn(ReadableTable& table, std::ptrdiff_t column) {
  table.columns.erase(table.columns.begin() + column);
  for (auto& row : table.rows) row.erase(row.begin() + column);
}

std::string reachText(mechanics::PackReach reach) {
  switch (reach) {
    case mechanics::PackReach::Measured:
      return "was pulled";
    case mechanics::PackReach::Reachable:
      return "within reach";
    case mechanics::PackReach::Beyond:
      return "too far to say";
  }
  return {};
}

std::vector<std::string> rowText(const mechanics::PackRow& row) {
  std::vector<std::string> cells{packText(row.pack.total), shimsText(row.pack),
                                 reachText(row.reach)};
  if (row.prediction) {
    const auto& p = *row.prediction;
    cells.push_back(percent(p.within));
    cells.push_back(forceText(p.expected));
    cells.push_back(forceText(p.trueForce.low) + " to " + forceText(p.trueForce.high));
    cells.push_back(forceText(p.shownForce.low) + " to " + forceText(p.shownForce.high));
    cells.push_back(p.fromOtherSide ? forceText(*p.fromOtherSide) : std::string{});
  }
  return cells;
}

}  // namespace

Readable shimPackShown(const PackQuestion& question, const PackAdvice& advice) {
  Readable shown;
  if (advice.line) {
    const auto slope = advice.line->slope();
    const auto knee = advice.line->knee();
    shown.rows.push_back(
        {"Force over pack",
         rangeText(slopeText(slope.middle), slopeText(slope.low), slopeText(slope.high))});
    shown.rows.push_back(
        {"Float is gone at", rangeText(packText(Length::fromSi(knee.middle)),
                                       packText(Length::fromSi(std::min(knee.low, knee.high))),
                                       packText(Length::fromSi(std::max(knee.low, knee.high))))});
  }
  if (advice.wanted) shown.rows.push_back({"Middle of the limit at", packText(*advice.wanted)});
  ReadableTable table;
  table.name = "Packs that can be made";
  table.columns = {"Pack", "Shims", "Reach"};
  if (advice.line) {
    for (const char* name : {"Within limit", "Expected", "Probably", "Scale will show"}) {
      table.columns.emplace_back(name);
    }
    table.columns.emplace_back(question.otherSide ? "From other side" : "");
  }
  for (const auto& row : advice.rows) {
    const bool worth = row.reach != mechanics::PackReach::Beyond ||
                       (row.prediction && row.prediction->within > 0.01);
    if (worth) table.rows.push_back(rowText(row));
  }
  if (advice.line && !question.otherSide) dropColumn(table, 7);
  if (!table.rows.empty()) shown.tables.push_back(std::move(table));
  return shown;
}

}  // namespace sw::compute
