// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <optional>
#include <span>
#include <vector>

#include "measure/student_mixture.h"
#include "mechanics/swivel/shim_packs.h"
#include "units/quantity.h"

// METHOD CARD: starting force over shim pack, a line with a knee
// Formula: F = a + k max(0, z - z0). z is the pack along the direction that raises the force: minus
//   the pack where a thinner one raises it (shims under the cap flange), plus the pack where a
//   thicker one does (between pin and cap). a: drag of seal and grease; z0: the pack that just
//   takes up the float; k > 0: stiffness of bearing, pin and housing as felt at the arm.
//   Given z0 this is the conjugate line of measure/conjugate_line.h over max(0, z - z0). z0 is
//   mixed over a grid, and so is the order of magnitude of k (each cell a normal with a spread of
//   17 % of its own mean, cells 35 % apart, so that k stays positive over any range); each cell
//   weighs its prior weight times the evidence of the pulls.
//   A film of sealant between cap and housing lifts the cap: z falls by its thickness, mixed over a
//   uniform range. A scale's own error is not in the scatter: u_B^2 is added to the scale^2 of the
//   true force (an approximation); what the same scale will show does not need it.
// Source: own composition of the conjugate linear model (textbook); that force over pack is flat
//   until the float is gone and then steep is common practice, no source.
// Valid range: pulls of one state, square to the arm (or corrected), at one arm length; z0 anywhere
//   on the grid. Assumptions: straight above the knee; scatter the same everywhere.
// When not to use: across states (seal, rods, sealant, grease); far beyond the measured packs: see
//   pack_advice.h for how far.
// Degenerate cases: without pulls the belief speaks; with z0 below all packs it is the plain line.
// Where stiffness grows with load (roller contact, power 10/9) the line bends up by a few per cent
//   over the usual span; the interval does not know that.
// Reference test: tests/core/mechanics/swivel/knee_line_test.cpp.

namespace sw::mechanics {

/// Pulls on one pack, all in one state.
struct PackPulls {
  Length pack;
  std::vector<Force> pulls;  ///< at least one
};
[[nodiscard]] Force meanPull(const PackPulls& pack);

/// Cells of the slope, the same for every use; their weights say what is believed.
inline constexpr std::size_t kSlopeCells = 22;
[[nodiscard]] Stiffness slopeOfCell(std::size_t cell);
inline constexpr double kSlopeCellSpread = 0.17;  ///< of the cell's own mean

struct KneeCell {
  Length pack;  ///< the pack at the knee
  double weight = 0;
};

struct KneePrior {
  Force drag, dragSpread;
  std::vector<double> slopeWeights;  ///< kSlopeCells of them, >= 0
  std::vector<KneeCell> knees;
  Force scatter;  ///< of one pull
  double scatterReadings = 2;
  Force rebuildScatter;  ///< between set-ups of one and the same pack
};

/// The uniform range of a film between cap and housing.
struct SealantFilm {
  Length least, most;
};

/// What a prediction is asked for.
struct PredictionTerms {
  std::optional<SealantFilm> film = std::nullopt;
  Force instrumentUncertainty = {};  ///< u_B of the scale that measured
  Force graduationUncertainty = {};  ///< of a reading on it
  int pulls = 5;                     ///< whose mean the scale will show
};

class KneeLine {
 public:
  KneeLine(const KneePrior& prior, ShimEffect effect, std::span<const PackPulls> measured);

  /// The true force of a pack.
  [[nodiscard]] measure::StudentMixture trueForce(Length pack, const PredictionTerms& terms) const;
  /// The mean the scale will probably show.
  [[nodiscard]] measure::StudentMixture shownForce(Length pack, const PredictionTerms& terms) const;
  /// Probability that a pack leaves float: that it lies on the flat part.
  [[nodiscard]] double flatProbability(Length pack) const;
  /// The pack at the knee and the slope, each with the bounds of the middle 95 %.
  struct Range {
    double middle = 0, low = 0, high = 0;
  };
  [[nodiscard]] Range knee() const;   ///< m
  [[nodiscard]] Range slope() const;  ///< N/m
  [[nodiscard]] double meanDrag() const;
  /// Posterior scatter of one pull: sqrt(rate / shape), weighted.
  [[nodiscard]] Force scatter() const;
  /// Evidence of each slope cell (relative, its own prior weight left out).
  [[nodiscard]] const std::vector<double>& slopeEvidence() const { return m_slopeEvidence; }

 private:
  struct Part {
    double weight = 0;
    double knee = 0;  ///< z0, m
    measure::LineBelief line;
  };
  [[nodiscard]] measure::StudentMixture mixture(Length pack, const PredictionTerms& terms,
                                                double share, double extraVariance) const;
  void keepWeighty(std::vector<Part> parts);

  ShimEffect m_effect;
  double m_setUpRatio = 0;
  std::vector<Part> m_parts;
  std::vector<double> m_slopeEvidence;
  std::shared_ptr<const measure::StudentTable> m_table;
};

}  // namespace sw::mechanics
