# SPDX-License-Identifier: GPL-3.0-or-later
"""Starting force over shim pack: a line with a knee, mixed over knees and slopes (NumPy).

F = a + k max(0, z - z0), z the pack along the direction that raises the force, N and mm. Given the
knee z0 and a normal belief about a and k this is the conjugate linear model of the textbooks
(Gelman et al., Bayesian Data Analysis). The evidence is taken in the space of the pulls: given the
belief they are jointly Student t, set-ups of one pack sharing a part of their variance.
"""

import functools
import math
from dataclasses import dataclass, field

import numpy as np
from scipy import optimize, special

SLOPES = 2.0 * 1.35 ** np.arange(22)  # N/mm, the cells' means
SLOPE_SPREAD = 0.17  # of the cell's own mean
BETWEEN, OUTSIDE, BEYOND, WIDER = 10, 8, 8, 1.7  # cells of the knee
AROUND, REACH, TRUST = 21, 3.5, 0.95  # cells about a measured knee
LEAST_SPAN = 0.1  # mm
DRAG_SHARE = 0.3
CENTRES, SPREADS, SPREAD_SCALE = 45, (0.08, 0.15, 0.25, 0.4, 0.6, 0.9, 1.3), 0.5


@dataclass
class Belief:
    """What is believed before the pulls; knees along the raising direction with weights."""

    drag: float
    drag_spread: float
    scatter: float
    scatter_readings: float
    knees: np.ndarray
    knee_weights: np.ndarray
    slope_weights: np.ndarray = field(default_factory=lambda: np.full(22, 1 / 22))
    set_up_ratio: float = 0.0  # of variances: between set-ups over one pull


@dataclass
class Pulls:
    """Pulls of packs; z of each pull and the number of its set-up."""

    z: np.ndarray
    force: np.ndarray
    set_up: np.ndarray


class KneeLine:
    """The mixture after the pulls."""

    def __init__(self, belief: Belief, pulls: Pulls) -> None:
        self.ratio = belief.set_up_ratio
        self.knees = np.repeat(belief.knees, len(SLOPES))
        cells = np.tile(np.arange(len(SLOPES)), len(belief.knees))
        slopes = SLOPES[cells]
        parts, count = len(self.knees), len(pulls.force)
        prior_mean = np.column_stack([np.full(parts, belief.drag), slopes])
        prior_spread = np.zeros((parts, 2, 2))
        prior_spread[:, 0, 0] = (belief.drag_spread / belief.scatter) ** 2
        prior_spread[:, 1, 1] = (SLOPE_SPREAD * slopes / belief.scatter) ** 2
        shape, rate = belief.scatter_readings / 2, belief.scatter_readings / 2 * belief.scatter**2
        rows = np.stack([np.ones((parts, count)),
                         np.maximum(0.0, pulls.z[None, :] - self.knees[:, None])], axis=2)
        same = (pulls.set_up[:, None] == pulls.set_up[None, :]).astype(float)
        own = np.eye(count) + self.ratio * same
        joint = own[None] + rows @ prior_spread @ rows.transpose(0, 2, 1)
        away = pulls.force[None, :] - np.einsum("pij,pj->pi", rows, prior_mean)
        solved = np.linalg.solve(joint, away[..., None])[..., 0]
        squares = np.einsum("pi,pi->p", away, solved)
        self.shape = shape + count / 2
        self.rate = rate + squares / 2
        log_evidence = -0.5 * np.linalg.slogdet(joint)[1] - self.shape * np.log(self.rate)
        weighed = np.linalg.solve(own, rows)
        precision = rows.transpose(0, 2, 1) @ weighed
        precision[:, [0, 1], [0, 1]] += 1 / prior_spread[:, [0, 1], [0, 1]]
        self.spread = np.linalg.inv(precision)
        self.mean = prior_mean + np.einsum("pij,pkj,pk->pi", self.spread, weighed, away)
        evidence = np.repeat(belief.knee_weights, len(SLOPES)) * np.exp(
            log_evidence - log_evidence.max())
        self.slope_evidence = np.bincount(cells, weights=evidence, minlength=len(SLOPES))
        self.weights = evidence * belief.slope_weights[cells]
        self.weights /= self.weights.sum()
        self._forget_lightest()

    def _forget_lightest(self) -> None:
        """Parts that weigh 1e-7 together change nothing that is compared, and save most of the
        time."""
        kept = kept_parts(self.weights, 1e-7)
        self.knees, self.weights, self.rate = self.knees[kept], self.weights[kept], self.rate[kept]
        self.mean, self.spread = self.mean[kept], self.spread[kept]

    @property
    def nu(self) -> float:
        """Degrees of freedom."""
        return 2 * self.shape

    def places(self, z: float, share: float, extra: float) -> tuple[np.ndarray, np.ndarray]:
        """Location and scale of each part at z: the true force, or with a share 1/m the mean of m
        pulls; an own variance of the scale is added."""
        reach = np.maximum(0.0, z - self.knees)
        v = np.column_stack([np.ones_like(reach), reach])
        h = np.einsum("pi,pij,pj->p", v, self.spread, v) + share + self.ratio
        return (np.einsum("pi,pi->p", v, self.mean),
                np.sqrt(self.rate / self.shape * h + extra))

    def force(self, z_nodes: list[float], share: float, extra: float) -> "Mixture":
        """The force, mixed over equally likely places."""
        places = [self.places(z, share, extra) for z in z_nodes]
        return Mixture(self.nu, np.tile(self.weights, len(z_nodes)) / len(z_nodes),
                       np.concatenate([location for location, _ in places]),
                       np.concatenate([scale for _, scale in places]))

    def slope(self) -> "Mixture":
        """The slope past the knee, N/mm."""
        scale = np.sqrt(self.rate / self.shape * self.spread[:, 1, 1])
        return Mixture(self.nu, self.weights, self.mean[:, 1], scale)

    def knee_cdf(self, z: float) -> float:
        """Weight of the knees at or below z."""
        return float(self.weights[self.knees <= z].sum())

    def flat(self, z: float) -> float:
        """Probability that a pack lies on the flat part."""
        return float(self.weights[self.knees >= z - 1e-12].sum())

    def drag(self) -> float:
        """Mean of the drag."""
        return float(self.weights @ self.mean[:, 0])

    def scatter(self) -> float:
        """Of one pull. Its mean is swayed by parts of next to no weight, so that the program's own
        cut has to be repeated: parts that weigh 1e-4 together are left out."""
        kept = kept_parts(self.weights, 1e-4)
        weights = self.weights[kept]
        return math.sqrt(float(weights @ self.rate[kept]) / float(weights.sum()) / self.shape)


def kept_parts(weights: np.ndarray, left_out: float) -> np.ndarray:
    """The heaviest parts, as many as it takes to leave out no more than this."""
    order = np.argsort(-weights, kind="stable")
    count = int(np.searchsorted(np.cumsum(weights[order]), (1 - left_out) * weights.sum())) + 1
    return order[:count]


GRID = np.linspace(-14.0, 14.0, 1 << 14)  # of arsinh(t)


@functools.lru_cache(maxsize=64)
def student_table(nu: float) -> np.ndarray:
    """SciPy's distribution function on a grid; straight lines between are good to 1e-6."""
    return special.stdtr(nu, np.sinh(GRID))


class Mixture:
    """Student t of equal degrees of freedom."""

    def __init__(self, nu: float, weights: np.ndarray, location: np.ndarray,
                 scale: np.ndarray) -> None:
        self.nu, self.weights, self.location, self.scale = nu, weights, location, scale
        self.mean = float(weights @ location)
        self.spread = math.sqrt(float(weights @ (scale**2 + (location - self.mean) ** 2)))

    def cdf(self, x: float) -> float:
        """Probability of at most x."""
        places = np.arcsinh((x - self.location) / self.scale)
        return float(self.weights @ np.interp(places, GRID, student_table(self.nu)))

    def median(self) -> float:
        """By Brent's method."""
        reach = self.spread
        while self.cdf(self.mean - reach) > 0.5 or self.cdf(self.mean + reach) < 0.5:
            reach *= 2
        return float(optimize.brentq(lambda x: self.cdf(x) - 0.5, self.mean - reach,
                                     self.mean + reach, xtol=1e-5 * self.spread))


# --- the knees ---------------------------------------------------------------------------------

def uniform_knees(ends: tuple[float, float], measured: list[float]) -> tuple[np.ndarray,
                                                                             np.ndarray]:
    """Cells of even density along z from the loosest to the tightest pack, finer between those
    that were measured, and ever wider ones on the loose side."""
    loosest, tightest = min(ends), max(ends)
    span = max(tightest - loosest, LEAST_SPAN)
    bounds = sorted([loosest, loosest + span, *measured])
    centres, widths = [], []
    for i in range(len(bounds) - 1):
        inner = bool(measured) and 0 < i < len(bounds) - 2
        count = BETWEEN if inner or not measured else OUTSIDE
        width = (bounds[i + 1] - bounds[i]) / count
        if width > 0:
            centres += [bounds[i] + (j + 0.5) * width for j in range(count)]
            widths += [width] * count
    start, away = bounds[0], span / BETWEEN
    for _ in range(BEYOND):
        centres.append(start - away / 2)
        widths.append(away)
        start, away = start - away, away * WIDER
    return np.array(centres), np.array(widths)


def knees_around(z: float, spread: float, elsewhere: tuple[np.ndarray, np.ndarray]
                 ) -> tuple[np.ndarray, np.ndarray]:
    """Normal about a measured place, 5 % kept for a measurement that was off."""
    t = np.linspace(-REACH, REACH, AROUND)
    near = np.exp(-t * t / 2)
    centres, widths = elsewhere
    return (np.concatenate([z + t * spread, centres]),
            np.concatenate([TRUST * near / near.sum(), (1 - TRUST) * widths / widths.sum()]))


# --- the shop's own jobs -----------------------------------------------------------------------

def next_slope(evidences: list[np.ndarray]) -> np.ndarray:
    """Weights of the slope cells for the next axle: log-normal, its centre and its spread from axle
    to axle weighed by the evidence of the jobs; half-normal prior of 0.5 for the spread."""
    logs = np.log(SLOPES)
    weights = np.zeros(len(SLOPES))
    laws, marks = [], []
    for centre in np.linspace(logs[0], logs[-1], CENTRES):
        for spread in SPREADS:
            between = math.sqrt(max(spread**2 - SLOPE_SPREAD**2, 0.05**2))
            law = np.exp(-((logs - centre) / between) ** 2 / 2)
            law /= law.sum()
            laws.append(law)
            marks.append(-(spread / SPREAD_SCALE) ** 2 / 2
                         + sum(math.log(max(float(law @ each), 1e-300)) for each in evidences))
    for law, mark in zip(laws, marks):
        weights += math.exp(mark - max(marks)) * law
    return weights / weights.sum()


def next_of(values: list[float], least_share: float) -> tuple[float, float]:
    """Mean, and the spread of the next one: s sqrt(1 + 1/n), with a floor in shares of the mean,
    twice that after a single one."""
    mean, n = float(np.mean(values)), len(values)
    s = float(np.std(values, ddof=1)) if n > 1 else 0.0
    floor = least_share * abs(mean) * (1.0 if n > 1 else 2.0)
    return mean, max(s * math.sqrt(1 + 1 / n), floor)


def weighted_middle(values: np.ndarray, weights: np.ndarray) -> float:
    """The value at which half of the weight is reached."""
    order = np.argsort(values)
    reached = np.cumsum(weights[order])
    return float(values[order][np.searchsorted(reached, 0.5 * reached[-1])])


@dataclass
class History:
    """What the closed jobs say of the next axle."""

    sides: int
    slope_weights: np.ndarray
    drag: tuple[float, float]
    knee: tuple[float, float] | None  # z and spread

    def slope_cdf(self, slope: float) -> float:
        """Each cell as wide as it is."""
        return float(self.slope_weights @ special.ndtr((slope - SLOPES) / (SLOPE_SPREAD * SLOPES)))


def learned(sides: list[Pulls], scatter: tuple[float, float]) -> History | None:
    """Each side by itself, then together."""
    evidences, drags, knees = [], [], []
    for side in sides:
        if not len(side.force):
            continue
        packs = [float(side.z[side.set_up == k][0]) for k in np.unique(side.set_up)]
        means = [float(side.force[side.set_up == k].mean()) for k in np.unique(side.set_up)]
        belief = plain_belief(min(means), scatter, uniform_knees((min(packs), max(packs)), packs))
        line = KneeLine(belief, side)
        drags.append(line.drag())
        if len(packs) >= 2:
            evidences.append(line.slope_evidence)
            knees.append(weighted_middle(line.knees, line.weights))
    if not drags:
        return None
    knee = None
    if len(knees) >= 3:
        middle, spread = next_of(knees, 0.0)
        knee = (middle, max(spread, LEAST_SPAN / 4))
    return History(len(evidences), next_slope(evidences), next_of(drags, DRAG_SHARE), knee)


def plain_belief(lowest: float, scatter: tuple[float, float],
                 knees: tuple[np.ndarray, np.ndarray]) -> Belief:
    """Without history: half the lowest pull for the drag, with the same spread."""
    drag = lowest / 2
    return Belief(drag, max(drag, scatter[0]), *scatter, *knees)
