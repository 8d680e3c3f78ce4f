# SPDX-License-Identifier: GPL-3.0-or-later
"""Uncertainty and decisions: JCGM 100:2008, JCGM 106:2012, ISO 14253-1:2017, with SciPy.

Distributions are SciPy's (cephes); everything else is written from the formulas of the documents.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from compare import Number, OneOf, Quantity
from scipy import special

INF = math.inf
EDGE = 1e-10  # probabilities this near to the bar may fall either way


def cdf(x: float, nu: float) -> float:
    """Distribution function of Student's t, of the normal law for infinite nu."""
    return float(special.ndtr(x) if math.isinf(nu) else special.stdtr(nu, x))


def quantile(p: float, nu: float) -> float:
    """Inverse of cdf. SciPy's inverse of t is good to some 1e-9; two Newton steps sharpen it."""
    if math.isinf(nu):
        return float(special.ndtri(p))
    x = float(special.stdtrit(nu, p))
    log_norm = (special.gammaln((nu + 1) / 2) - special.gammaln(nu / 2)
                - math.log(nu * math.pi) / 2)
    for _ in range(2):
        density = math.exp(log_norm - (nu + 1) / 2 * math.log1p(x * x / nu))
        x -= (float(special.stdtr(nu, x)) - p) / density
    return x


def coverage(confidence: float, nu: float) -> float:
    """k = t at (1 + p) / 2: JCGM 100 G.3."""
    return quantile((1 + confidence) / 2, nu)


def combined(parts: Sequence[tuple[float, float]]) -> tuple[float, float]:
    """Root of squares of (u, nu) and the effective degrees of freedom (Welch-Satterthwaite,
    JCGM 100 G.4); terms of infinite nu drop out of the sum."""
    u = math.sqrt(math.fsum(part * part for part, _ in parts))
    below = math.fsum(part**4 / nu for part, nu in parts if not math.isinf(nu))
    return u, (u**4 / below if below > 0 else INF)


def standard_deviation(values: Sequence[float]) -> float:
    """s with n - 1: JCGM 100 4.2.2. Readings alike have none, whatever their mean rounds to."""
    if max(values) == min(values):
        return 0.0
    mean = math.fsum(values) / len(values)
    return math.sqrt(math.fsum((v - mean) ** 2 for v in values) / (len(values) - 1))


def rectangular(half_width: float) -> float:
    """JCGM 100 4.3.7."""
    return half_width / math.sqrt(3)


def graduation_u(graduation: float) -> float:
    """Read to the nearest mark: rectangular of half a graduation (JCGM 100 F.2.2.1)."""
    return graduation / math.sqrt(12)


def angle_factor(half_width: float) -> tuple[float, float]:
    """Mean and standard deviation of cos of an angle anywhere within +/-a (radians).

    Mean sin(a)/a; mean square 1/2 + sin(2a)/(4a). The method takes a^2/sqrt(45), the first term of
    the standard deviation, below 3 degrees, where the difference would cancel; above it the
    variance is summed here from its power series, which does not cancel.
    """
    if half_width == 0:
        return 1.0, 0.0
    mean = math.sin(half_width) / half_width
    if half_width < math.radians(3):
        return mean, half_width**2 / math.sqrt(45)
    return mean, math.sqrt(math.fsum(_variance_term(k) * half_width ** (2 * k)
                                     for k in range(2, 25)))


def _variance_term(k: int) -> float:
    """Coefficient of a^(2k) in 1/2 + sin(2a)/(4a) - (sin(a)/a)^2, with sin^2 = (1 - cos 2a)/2."""
    sign = -1.0 if k % 2 else 1.0
    cosine_square = sign * 2.0 ** (2 * k) / (2 * math.factorial(2 * k + 1))
    return cosine_square - sign * 2.0 ** (2 * k + 1) / math.factorial(2 * k + 2)


@dataclass(frozen=True)
class Shares:
    """Probability inside a limit, below and above it."""

    inside: float
    below: float
    above: float


def conformance(y: float, u: float, nu: float, low: float | None, high: float | None) -> Shares:
    """JCGM 106 7.2; a value without uncertainty is inside, limits included, or not."""
    if u <= 0:
        below = low is not None and y < low
        above = high is not None and y > high
        return Shares(float(not below and not above), float(below), float(above))
    below = cdf((low - y) / u, nu) if low is not None else 0.0
    above = cdf((y - high) / u, nu) if high is not None else 0.0
    if low is None:
        inside = cdf((high - y) / u, nu) if high is not None else 1.0
    elif high is None:
        inside = cdf((y - low) / u, nu)
    else:
        a, b = (low - y) / u, (high - y) / u
        inside = cdf(-a, nu) - cdf(-b, nu) if a > 0 else cdf(b, nu) - cdf(a, nu)
    return Shares(inside, below, above)


def side_of(verdict: str, shares: Shares) -> object:
    """Where a value lies that is not proved within."""
    if verdict == "within":
        return "none"
    if verdict == "outside":
        return "below" if shares.below > shares.above else "above"
    if abs(shares.inside - 0.5) < EDGE:
        return OneOf(("inside_likely", "outside_likely"))
    return "inside_likely" if shares.inside > 0.5 else "outside_likely"


def decided(y: float, shares: Shares, low: float | None, high: float | None,
            bar: float) -> tuple[str, ...]:
    """Within where p >= bar; outside where 1 - p >= bar and the value itself lies beyond a limit;
    else undecided. On the very edge more than one word will do; the first is the rule's."""
    beyond = (low is not None and y < low) or (high is not None and y > high)
    outside = shares.below + shares.above
    words = []
    if shares.inside >= bar - EDGE:
        words.append("within")
    if outside >= bar - EDGE and beyond:
        words.append("outside")
    near = abs(shares.inside - bar) < EDGE or (abs(outside - bar) < EDGE and beyond)
    if not words or near:
        words.append("undecided")
    return tuple(words)


def one_of(words: Sequence[object]) -> object:
    """The one word, or any of several."""
    return words[0] if len(words) == 1 else OneOf(tuple(words))


def too_coarse(low: float | None, high: float | None, u: float, confidence: float) -> bool:
    """Even a value at the centre of the band could not reach the bar."""
    if low is None or high is None or u <= 0:
        return False
    return 2 * float(special.ndtr((high - low) / (2 * u))) - 1 < confidence


def judged(y: float, u: float, nu: float, limit: tuple[float | None, float | None], unit: str,
           confidence: float, absolute: float = 1e-12) -> dict:
    """A value with its uncertainty against a limit, as the program writes it."""
    low, high = limit
    k = coverage(confidence, nu)
    result = {"value": Quantity(y, unit, absolute=absolute),
              "standard_uncertainty": Quantity(u, unit, absolute=absolute),
              "degrees_of_freedom": Number(nu),
              "coverage_factor": Number(k), "expanded_uncertainty": Quantity(
                  k * u, unit, absolute=absolute)}
    if low is None and high is None:
        return result | {"verdict": "no_limit", "side": "none"}
    shares = conformance(y, u, nu, low, high)
    words = decided(y, shares, low, high, confidence)
    return result | {"verdict": one_of(words), "conformance_probability": probability(shares),
                     "side": one_of([side_of(word, shares) for word in words])}


def probability(shares: Shares) -> Number:
    """The share inside; where it is the difference of two, only its first digits are sure."""
    return Number(shares.inside, relative=1e-8, absolute=1e-11)
