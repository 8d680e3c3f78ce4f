// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "measure/conjugate_line.h"

// METHOD CARD: a weighted mixture of Student t distributions of equal degrees of freedom
// Formula: F(x) = sum w_i T_nu((x - location_i) / scale_i); a quantile solves F(x) = p by
//   bisection and secants inside a bracket that holds it.
// The distribution function T_nu is read off a table: cubic Hermite pieces in x / (2 + x) through
//   values of Boost.Math with their exact slopes, so that a table of packs is there between two
//   keystrokes.
// Accuracy: T_nu to 2e-8; quantiles to 1e-4 of the spread.
// Valid range: nu > 0; scales > 0; weights >= 0 with a positive sum (they are divided by it).
// Degenerate cases: one component is the plain distribution; a scale of 0 is a step.
// Reference test: tests/core/measure/student_mixture_test.cpp (Boost.Math, SciPy).

namespace sw::measure {

/// T_nu for one nu, quick.
class StudentTable {
 public:
  explicit StudentTable(double degreesOfFreedom);
  /// At this distance from the location, in the unit of the scale, which is above 0.
  [[nodiscard]] double cdf(double away, double scale = 1.0) const;

 private:
  /// A cubic between two nodes.
  struct Piece {
    double value = 0, slope = 0, square = 0, cube = 0;
  };
  std::vector<Piece> m_pieces;
};

struct MixturePart {
  double weight = 0;
  StudentPlace place;
};

/// Borrows the table.
class StudentMixture {
 public:
  StudentMixture(const StudentTable& table, std::vector<MixturePart> parts);
  [[nodiscard]] double cdf(double x) const;
  /// `probability` strictly between 0 and 1. A good guess, such as that of a neighbour, saves time
  /// and changes nothing else.
  [[nodiscard]] double quantile(double probability,
                                std::optional<double> guess = std::nullopt) const;
  /// Weighted mean of the locations, which is the mean where nu > 1.
  [[nodiscard]] double mean() const;

 private:
  const StudentTable& m_table;
  std::vector<MixturePart> m_parts;
};

}  // namespace sw::measure
