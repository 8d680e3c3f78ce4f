// SPDX-License-Identifier: GPL-3.0-or-later
#include "measure/distributions.h"

#include <boost/math/distributions/beta.hpp>
#include <boost/math/distributions/chi_squared.hpp>
#include <boost/math/distributions/fisher_f.hpp>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/students_t.hpp>
#include <cmath>
#include <limits>

namespace sw::measure {

namespace {

namespace bm = boost::math;
namespace bp = boost::math::policies;

// Errors become special values instead of exceptions: none may leave core.
using QuietPolicy =
    bp::policy<bp::domain_error<bp::ignore_error>, bp::pole_error<bp::ignore_error>,
               bp::overflow_error<bp::ignore_error>, bp::underflow_error<bp::ignore_error>,
               bp::denorm_error<bp::ignore_error>, bp::evaluation_error<bp::ignore_error>,
               bp::rounding_error<bp::ignore_error>, bp::promote_double<false>>;

using Normal = bm::normal_distribution<double, QuietPolicy>;
using StudentT = bm::students_t_distribution<double, QuietPolicy>;
using ChiSquared = bm::chi_squared_distribution<double, QuietPolicy>;
using FisherF = bm::fisher_f_distribution<double, QuietPolicy>;
using Beta = bm::beta_distribution<double, QuietPolicy>;

constexpr double kInfinity = std::numeric_limits<double>::infinity();

bool isInfinite(DegreesOfFreedom nu) {
  return !nu || std::isinf(*nu);
}

/// The quantile inside (0, 1), the ends of the support outside.
template <class Distribution>
double boundedQuantile(const Distribution& distribution, double probability, double lowest) {
  if (probability <= 0) return lowest;
  if (probability >= 1) return kInfinity;
  return bm::quantile(distribution, probability);
}

}  // namespace

double normalCdf(double x) {
  return 0.5 * std::erfc(-x / std::sqrt(2.0));
}

double normalQuantile(double probability) {
  return boundedQuantile(Normal(), probability, -kInfinity);
}

double studentCdf(double x, DegreesOfFreedom nu) {
  if (isInfinite(nu)) return normalCdf(x);
  if (std::isinf(x)) return x > 0 ? 1.0 : 0.0;
  return bm::cdf(StudentT(*nu), x);
}

double studentQuantile(double probability, DegreesOfFreedom nu) {
  if (isInfinite(nu)) return normalQuantile(probability);
  return boundedQuantile(StudentT(*nu), probability, -kInfinity);
}

double chiSquaredCdf(double x, double nu) {
  return x <= 0 ? 0.0 : bm::cdf(ChiSquared(nu), x);
}

double chiSquaredUpperTail(double x, double nu) {
  return x <= 0 ? 1.0 : bm::cdf(bm::complement(ChiSquared(nu), x));
}

double chiSquaredQuantile(double probability, double nu) {
  return boundedQuantile(ChiSquared(nu), probability, 0.0);
}

double fisherCdf(double x, double nu1, double nu2) {
  return x <= 0 ? 0.0 : bm::cdf(FisherF(nu1, nu2), x);
}

double fisherUpperTail(double x, double nu1, double nu2) {
  return x <= 0 ? 1.0 : bm::cdf(bm::complement(FisherF(nu1, nu2), x));
}

double fisherQuantile(double probability, double nu1, double nu2) {
  return boundedQuantile(FisherF(nu1, nu2), probability, 0.0);
}

double betaQuantile(double probability, double weightFor, double weightAgainst) {
  if (probability <= 0) return 0;
  if (probability >= 1) return 1;
  return bm::quantile(Beta(weightFor, weightAgainst), probability);
}

}  // namespace sw::measure
