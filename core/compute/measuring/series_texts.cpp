// SPDX-License-Identifier: GPL-3.0-or-later
#include "compute/measuring/series_texts.h"

#include "units/format.h"

namespace sw::compute {

namespace {

constexpr double kDrift = 0.5;
constexpr int kDriftReadings = 5;

std::string shown(double si, QuantityKind kind) {
  return displayText(si, defaultUnit(kind));
}

}  // namespace

std::vector<Note> seriesNotes(const SeriesInput& input, const SeriesOutcome& outcome) {
  std::vector<Note> notes;
  if (outcome.verdict == Verdict::Provisional) {
    notes.push_back(
        {"so_far", "With the readings so far: " + std::string(word(outcome.decisionSoFar)) + "."});
  }
  if (input.extended) {
    notes.push_back({"extended", "More readings than were planned: the probability asked for is " +
                                     fullPrecision(outcome.bar) + "."});
  }
  if (!outcome.scatterKnown) {
    notes.push_back(
        {"scatter_unknown", "One reading shows no scatter: the uncertainty is at least this."});
  }
  if (!outcome.instrumentErrorKnown) {
    notes.push_back({"instrument_error_unknown",
                     "The instrument's own error is not known and not in the budget; a safety "
                     "reading is not proved by it."});
  }
  if (outcome.correctionOffset != 0) {
    notes.push_back({"own_check_used", "The instrument's own check adds " +
                                           shown(outcome.correctionOffset, input.kind) +
                                           " to every reading."});
  }
  if (outcome.outlier) {
    notes.push_back({"outlier", "Reading " + std::to_string(*outcome.outlier + 1) +
                                    " stands apart from the others; it was not dropped."});
  }
  const bool drifts = outcome.used >= kDriftReadings && outcome.lagOne.value_or(0) > kDrift;
  if (drifts) {
    notes.push_back({"drift",
                     "The readings follow one another, as when grease warms up: the "
                     "scatter is then larger than it looks."});
  }
  return notes;
}

}  // namespace sw::compute
