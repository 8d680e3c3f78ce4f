# SPDX-License-Identifier: GPL-3.0-or-later
"""Which shim pack next: the mixture of knee_line.py, asked about every pack that can be made.

Probabilities are compared to 2e-4, since the program leaves out parts that weigh 1e-4 together and
reads Student's t off a table. A quantile it answers with is asked back: within 2e-4 of the spread
the probability must be the one it stands for, to 3e-4. Both are doubled where closed jobs count,
since those go through the same. Where a choice hangs on less than that, any choice will do.
"""

import functools
import math
from collections.abc import Callable

import numpy as np

from calculation import Calculation
from compare import ANYTHING, Check, Number, Refused
from judging import quantile
from knee_line import Belief, KneeLine, Mixture, knees_around, plain_belief, uniform_knees
from shim_question import Question, asked, draw_shim_pack, side_pulls

NEAR = 2e-4  # of a probability
AT_QUANTILE = 3e-4
CLOSE = 1.2e-3  # two probabilities no further apart may be either way round
SAME = 0.005  # mm: totals this near are one pack
FILM_NODES = 5


# --- the line ----------------------------------------------------------------------------------

def fitted(question: Question) -> KneeLine:
    """Belief by what is known, then the pulls. Where no scatter is known it is guessed: a
    graduation, or a twentieth of the lowest pull, as from two readings."""
    lowest = min(float(np.mean(forces)) for _, forces in question.pulls)
    grain = question.graduation_u * math.sqrt(12)
    scatter = question.scatter or (max(grain, 0.05 * lowest, 1e-3), 2.0)
    zs = [z for z, _ in question.pulls]
    ends = [question.z(question.packs[0].total), question.z(question.packs[-1].total), *zs]
    elsewhere = uniform_knees((min(ends), max(ends)), zs)
    belief: Belief = plain_belief(lowest, scatter, elsewhere)
    history = question.history
    if history:
        belief.slope_weights = history.slope_weights
        belief.drag, belief.drag_spread = history.drag[0], max(history.drag[1], scatter[0])
        if history.knee:
            belief.knees, belief.knee_weights = knees_around(*history.knee, elsewhere)
    if question.knee:
        belief.knees, belief.knee_weights = knees_around(*question.knee, elsewhere)
    belief.set_up_ratio = (question.set_up / scatter[0]) ** 2
    return KneeLine(belief, side_pulls(question.pulls))


class Prediction:
    """The force of one pack."""

    def __init__(self, question: Question, line: KneeLine, z: float) -> None:
        self.question, self.line = question, line
        self.nodes = [z]
        if question.film:
            least, most = question.film
            self.nodes = [z - least - (i + 0.5) / FILM_NODES * (most - least)
                          for i in range(FILM_NODES)]

        u2 = question.instrument_u**2 + question.graduation_u**2
        self.true = line.force(self.nodes, 0.0, u2)

    @functools.cached_property
    def shown(self) -> Mixture:
        """The mean that the scale will show of the planned pulls."""
        return self.line.force(self.nodes, 1 / self.question.planned,
                               self.question.graduation_u**2)

    @functools.cached_property
    def median(self) -> float:
        """As likely more as less."""
        return self.true.median()

    def shares(self) -> tuple[float, float, float]:
        """Below, within and above the limit."""
        below = self.true.cdf(self.question.low) if self.question.low is not None else 0.0
        above = 1 - self.true.cdf(self.question.high) if self.question.high is not None else 0.0
        return below, max(0.0, 1 - below - above), above

    def proved(self, guard: float) -> float:
        """Means that keep the guard band of the verdict from both limits."""
        low, high = self.question.low, self.question.high
        below = self.shown.cdf(low + guard) if low is not None else 0.0
        if high is None:
            return 1 - below
        if low is not None and high - guard <= low + guard:
            return 0.0
        return max(0.0, self.shown.cdf(high - guard) - below)


def guard_band(question: Question, line: KneeLine) -> float:
    """t_0.95(nu) u of the planned pulls: their scatter with n - 1, the scale without end."""
    n = question.planned
    scatter_u = line.scatter() / math.sqrt(n)
    u = math.hypot(scatter_u, question.instrument_u, question.graduation_u)
    return quantile(0.95, max(1.0, n - 1.0) * (u / scatter_u) ** 4) * u


# --- the answer --------------------------------------------------------------------------------

def stands_for(mixture: Mixture, p: float, unit: str, loose: float, offset: float = 0.0) -> Check:
    """A quantile in the answer, to 2e-4 of the spread."""
    def test(text: object) -> float:
        number, _, own = str(text).partition(" ")
        if own != unit:
            return math.inf
        x, slack = float(number) + offset, 2e-4 * mixture.spread
        return max(0.0, mixture.cdf(x - slack) - p, p - mixture.cdf(x + slack))
    return Check(test, loose * AT_QUANTILE, f"the {p:g} quantile in {unit}")


def slope_quantile(cdf: Callable[[float], float], p: float) -> Check:
    """A quantile of the slope that the jobs tell."""
    def test(text: object) -> float:
        number, _, own = str(text).partition(" ")
        return abs(cdf(float(number)) - p) if own == "N/mm" else math.inf
    return Check(test, AT_QUANTILE, f"the {p:g} quantile in N/mm")


def shim_pack(inputs: dict) -> dict:
    """Table, recommendation and what they rest on."""
    question = asked(inputs)
    if not question.packs:
        raise Refused("degenerate")
    adviser = Adviser(question)
    result: dict = {"basis": adviser.basis, "float_left_likely": adviser.float_likely(),
                    "table": [adviser.row(i) for i in range(len(question.packs))]}
    result |= adviser.recommendation()
    if adviser.line:
        result |= adviser.ranges()
    if question.history:
        cdf = question.history.slope_cdf
        result["history"] = {"sides": question.history.sides, "slope": {
            name: slope_quantile(cdf, p) for name, p in QUANTILES.items()}}
    return result


QUANTILES = {"low": 0.025, "middle": 0.5, "high": 0.975}


class Adviser:
    """Which pack, by the rules of reach and likelihood (common practice, no source)."""

    def __init__(self, question: Question) -> None:
        self.question = question
        self.z = [question.z(pack.total) for pack in question.packs]
        self.different = len({round(z / (2 * SAME)) for z, _ in question.pulls})
        history = question.history is not None and question.history.sides > 0
        self.basis = "none"
        if self.different >= 2:
            self.basis = "own_pulls_and_history" if history else "own_pulls"
        elif history and self.different == 1:
            self.basis = "from_history"
        self.close = False
        self.line = fitted(question) if self.basis != "none" else None
        self.predictions = [Prediction(question, self.line, z) for z in self.z] if self.line else []
        if self.line:
            self.guard = guard_band(question, self.line)
            self.shares = [each.shares() for each in self.predictions]
            self.proved = [each.proved(self.guard) for each in self.predictions]
        self.one_step, self.reach = self._reach()

    def more(self, a: float, b: float, near: float = CLOSE) -> bool:
        """a > b; remembers where that hangs on too little."""
        self.close |= abs(a - b) < near
        return a > b

    def float_likely(self) -> object:
        """Whether the last pack probably leaves float."""
        if not self.line:
            return False
        flat = self.line.flat(self.question.pulls[-1][0])
        return ANYTHING if abs(flat - 0.7) < CLOSE else flat > 0.7

    def _reach(self) -> tuple[bool, list[str]]:
        """One step until two packs are measured and one of them lies on the slope; then twice the
        measured interval. The pack before the first on the slope counts as its other end."""
        on_slope, flat = [], []
        for z, _ in self.question.pulls:
            leaves_float = not self.line or self.more(self.line.flat(z), 0.7)
            (flat if leaves_float else on_slope).append(z)
        one_step = self.different < 2 or not on_slope
        low = high = 0.0
        if not one_step:
            low, high = min(on_slope), max(on_slope)
            if high - low <= SAME and flat:
                low = min(low, max(flat))
            low, high = low - 2 * (high - low), high + 2 * (high - low)
        words = []
        steps = self._steps() if one_step and self.question.pulls else []
        for i, z in enumerate(self.z):
            if any(abs(z - own) <= SAME for own, _ in self.question.pulls):
                words.append("measured")
            elif i in steps or (not one_step and low - SAME <= z <= high + SAME):
                words.append("within_reach")
            else:
                words.append("beyond_reach")
        return one_step, words

    def _steps(self) -> list[int]:
        """The packs next to the one that is in."""
        return [step for step in (self._step(1.0), self._step(-1.0)) if step is not None]

    def _step(self, way: float) -> int | None:
        """The next pack that raises (+1) or lowers the force."""
        here = self.question.pulls[-1][0]
        ahead = [i for i, z in enumerate(self.z) if way * (z - here) > SAME]
        return min(ahead, key=lambda i: way * self.z[i], default=None)

    def row(self, i: int) -> dict:
        """One line of the table."""
        row = self.question.packs[i].written() | {"reach": self.reach[i]}
        if not self.line:
            return row
        prediction = self.predictions[i]
        below, within, above = self.shares[i]
        loose = self.question.loose
        row |= {"expected": stands_for(prediction.true, 0.5, "N", loose),
                "true_low": stands_for(prediction.true, 0.025, "N", loose),
                "true_high": stands_for(prediction.true, 0.975, "N", loose),
                "shown_low": stands_for(prediction.shown, 0.025, "N", loose),
                "shown_high": stands_for(prediction.shown, 0.975, "N", loose)}
        row |= {name: Number(p, relative=loose * NEAR, absolute=loose * NEAR)
                for name, p in (("below", below), ("within", within), ("above", above),
                                ("proved", self.proved[i]))}
        if self.question.other is not None:
            other = self.question.other
            row["from_other_side"] = stands_for(prediction.true, 0.5, "N", loose, other)
        return row

    def ranges(self) -> dict:
        """Slope, knee, and the pack wanted."""
        sign, line = self.question.sign, self.line

        def knee(pack: float) -> float:
            return line.knee_cdf(pack) if sign > 0 else 1 - line.knee_cdf(-pack - 1e-9)

        def straddles(p: float):
            def test(text: object) -> float:
                pack = float(str(text).removesuffix(" mm"))
                return max(0.0, knee(pack - 1e-6) - p, p - knee(pack + 1e-6))
            return Check(test, self.question.loose * AT_QUANTILE, f"the {p:g} quantile of the knee")
        slope = line.slope()
        return {"slope": {name: stands_for(slope, p, "N/mm", self.question.loose)
                          for name, p in QUANTILES.items()},
                "float_gone_at": {name: straddles(p) for name, p in QUANTILES.items()},
                "wanted": self._wanted()}

    def _wanted(self) -> object:
        """The pack whose median is the middle of the limit, between the thickest and nothing under
        a flange, the thinnest and twice the thickest inside; found by halving fourteen times."""
        low, high = self.question.low, self.question.high
        target = (low + high) / 2 if low is not None and high is not None else \
            low if low is not None else high
        thinnest, thickest = self.question.packs[0].total, self.question.packs[-1].total
        loose, tight = (thinnest, 2 * thickest) if self.question.sign > 0 else (thickest, 0.0)

        def reached(pack: float) -> float:
            return Prediction(self.question, self.line, self.question.z(pack)).true.cdf(target)
        at_loose, at_tight = reached(loose), reached(tight)
        if min(abs(at_loose - 0.5), abs(at_tight - 0.5)) < CLOSE:
            return ANYTHING
        if at_loose < 0.5 or at_tight > 0.5:
            return NOTHING
        step = 2 * abs(loose - tight) / 2**14

        def test(text: object) -> float:
            pack = float(str(text).removesuffix(" mm"))
            way = math.copysign(step, tight - loose)
            return max(0.0, 0.5 - reached(pack - way), reached(pack + way) - 0.5)
        return Check(test, self.question.loose * AT_QUANTILE, "the pack in the middle of the limit")

    # --- recommendation ---

    def recommendation(self) -> dict:
        """The pack and why; anything where it hangs on less than the tolerance."""
        chosen, reason = self._choose()
        if self.close:
            return {"recommended": ANYTHING, "reason": ANYTHING}
        result: dict = {"reason": reason}
        if chosen is not None:
            result["recommended"] = self.question.packs[chosen].written()
        return result

    def _choose(self) -> tuple[int | None, str]:
        if not self.question.pulls or self._known_float():
            return self._by_float()
        if self.one_step:
            return self._one_step(self._direction())
        return self._by_likelihood()

    def _direction(self) -> float | None:
        """What the last pack's mean asks for."""
        mean = float(np.mean(self.question.pulls[-1][1]))
        low, high = self.question.low, self.question.high
        if low is not None and self.more(low, mean, 1e-9):
            return 1.0
        if high is not None and self.more(mean, high, 1e-9):
            return -1.0
        return None

    def _known_float(self) -> bool:
        """Float is left and its size was measured."""
        return (self.question.knee is not None and self.different < 2
                and self.question.pulls[-1][0] < self.question.knee[0] - SAME)

    def _by_float(self) -> tuple[int | None, str]:
        """The pack that just takes up the float."""
        if not self.question.knee:
            return None, "measure_first"
        away = [abs(z - self.question.knee[0]) for z in self.z]
        nearest = int(np.argmin(away))
        if sum(each < min(away) + 1e-9 for each in away) > 1:
            self.close = True
        if self.question.pulls and abs(self.z[nearest] - self.question.pulls[-1][0]) <= SAME:
            return self._one_step(self._direction())
        return nearest, "takes_up_the_float"

    def _row_of_current(self) -> int | None:
        away = [abs(z - self.question.pulls[-1][0]) for z in self.z]
        return int(np.argmin(away)) if min(away) <= SAME else None

    def _one_step(self, way: float | None) -> tuple[int | None, str]:
        if way is None:
            return self._row_of_current(), "stay"
        step = self._step(way)
        return (step, "one_step") if step is not None else (None, "packs_end")

    def _by_likelihood(self) -> tuple[int | None, str]:
        """The pack the planned pulls will most probably prove within; as far towards it as reach
        and the risk of overshooting (15 %) allow."""
        best = self._likeliest()
        if self.more(0.02, self.shares[best][1]):
            return self._none_likely()
        here = self.question.pulls[-1][0]
        if abs(self.z[best] - here) <= SAME:
            return best, "stay"
        if self.reach[best] != "beyond_reach":
            return best, "likeliest_within"
        way = 1.0 if self.z[best] > here else -1.0
        farthest = None
        for i, z in enumerate(self.z):
            gone = way * (z - here)
            beyond = self.shares[i][2] if way > 0 else self.shares[i][0]
            if self.reach[i] != "within_reach" or gone <= SAME or self.more(beyond, 0.15):
                continue
            if farthest is None or gone > way * (self.z[farthest] - here):
                farthest = i
        if farthest is not None:
            return farthest, "as_far_as_allowed"
        return self._one_step(way)

    def _likeliest(self) -> int:
        """Of those within 2 % of the best the one nearest to the other side, where they differ by
        more than the scatter, then nearest to the middle of the limit or of the fewest shims."""
        greatest = max(self.proved)
        best = None
        for i, p in enumerate(self.proved):
            if not self.more(greatest - 0.02, p) and (best is None or self._better(i, best)):
                best = i
        return best

    def _better(self, i: int, best: int) -> bool:
        gain = self.proved[i] - self.proved[best]
        if self.more(abs(gain), 0.02):
            return gain > 0
        median, rival = self.predictions[i].median, self.predictions[best].median
        other, near = self.question.other, 1e-3 * max(1.0, abs(median))
        if other is not None:
            nearer = abs(rival - other) - abs(median - other)
            if self.more(abs(nearer), self.line.scatter(), near):
                return nearer > 0
        low, high = self.question.low, self.question.high
        if low is not None and high is not None:
            middle = (low + high) / 2
            return self.more(abs(rival - middle), abs(median - middle), near)
        shims = [len(self.question.packs[k].shims) for k in (i, best)]
        return shims[0] < shims[1] if shims[0] != shims[1] else self.more(gain, 0.0)

    def _none_likely(self) -> tuple[int | None, str]:
        """One step, if it may still land: not back to a pack that was in, nor over the limit."""
        way = self._direction()
        step, reason = self._one_step(way)
        if reason != "one_step":
            return step, reason
        over = self.shares[step][2] if way > 0 else self.shares[step][0]
        if self.reach[step] != "measured" and self.more(0.95, over):
            return step, reason
        return None, "none_likely"


NOTHING = Check(lambda text: math.inf, 0.0, "nothing", absent=True)

# Fewer than of the others: one takes as long as fifty of those.
CALCULATIONS = (Calculation("shim-pack", draw_shim_pack, shim_pack, count=300),)
