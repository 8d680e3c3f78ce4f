# SPDX-License-Identifier: GPL-3.0-or-later
"""Readings and units: series against a limit, straight lines, conversions, two figures of one
limit. JCGM 100:2008, JCGM 106:2012, ISO 14253-1, ISO 5725-6."""

import math
from decimal import Decimal
from fractions import Fraction

import numpy as np
from scipy import integrate, special, stats

from calculation import Calculation
from compare import ANYTHING, Number, OneOf, Quantity
from draw import TYPED_UNITS, Draw
from judging import EDGE, INF, angle_factor, combined, conformance, coverage, decided, graduation_u
from judging import one_of, probability, quantile, rectangular, side_of, standard_deviation
from judging import too_coarse
from units import FACTORS, KINDS, converted, radians, read, split

# --- series ------------------------------------------------------------------------------------

BASES = {"force": "N", "length": "mm", "torque": "N m", "angle": "deg", "pressure": "bar",
         "mass": "kg", "speed": "km/h"}
CENTRES = {"force": (5, 60), "length": (1, 30), "torque": (5, 150), "angle": (1, 30),
           "pressure": (1, 4), "mass": (1, 80), "speed": (20, 120)}


def draw_series(draw: Draw) -> dict:
    """Readings of one instrument; most of the time pulls."""
    kind = draw.choice(("force",) * 5 + tuple(BASES))
    unit = BASES[kind]
    centre = draw.random.uniform(*CENTRES[kind])
    scatter = centre * draw.choice((0.003, 0.01, 0.03))
    step = centre * draw.choice((0.002, 0.01, 0.03))
    count = draw.whole(1, 9)
    inputs: dict = {"readings": [draw.quantity(centre - 2 * scatter, centre + 2 * scatter, unit)
                                 for _ in range(count)],
                    "instrument": draw_instrument(draw, centre, step, unit)}
    if kind != "force" or draw.chance(0.3):
        inputs["quantity"] = kind
    if draw.chance(0.2):
        inputs["readings"] = [draw.quantity(centre, centre, unit)] * count
    draw.sometimes(inputs, "pull_angle_within", lambda: draw.quantity(0, 40, "deg", 3), 0.4)
    if draw.chance(0.4):
        inputs["pooled_scatter"] = {"amount": draw.quantity(scatter / 3, scatter * 2, unit, 2),
                                    "readings": draw.whole(2, 40)}
    limit: dict = {}
    draw.sometimes(limit, "min", lambda: draw.quantity(centre - 6 * scatter, centre, unit), 0.5)
    draw.sometimes(limit, "max", lambda: draw.quantity(centre, centre + 6 * scatter, unit), 0.6)
    if limit:
        inputs["limit"] = limit
    options: dict = {}
    draw.sometimes(options, "confidence", lambda: draw.choice((0.9, 0.95, 0.99)))
    draw.sometimes(options, "planned", lambda: draw.whole(1, 10))
    draw.sometimes(options, "rule", lambda: draw.choice(("conformance_probability",
                                                         "guard_band_k2")))
    if options:
        inputs["options"] = options
    return inputs


def draw_instrument(draw: Draw, centre: float, step: float, unit: str) -> dict:
    """Graduation, and what is known of the error."""
    instrument: dict = {"graduation": draw.quantity(step, 1.5 * step, unit, 2)}
    if draw.chance(0.7):
        instrument["permissible_error"] = draw.quantity(step / 2, 3 * step, unit, 2)
        draw.sometimes(instrument, "error_shape",
                       lambda: draw.choice(("rectangular", "triangular", "certificate")))
        draw.sometimes(instrument, "coverage_factor", lambda: draw.number(1.5, 3, 2), 0.3)
    if draw.chance(0.3):
        applied = centre * draw.random.uniform(0.3, 3)
        instrument["check"] = {"applied": draw.quantity(applied, applied * 1.01, unit),
                               "shown": draw.quantity(applied * 0.98, applied * 1.02, unit)}
    return instrument


def range_factor(count: int) -> float:
    """95 % point of the range of n standard normals: ISO 5725-6. The distribution function
    n * integral phi(x) (Phi(x + w) - Phi(x))^(n - 1) dx is inverted."""
    if count not in _RANGE_FACTORS:
        _RANGE_FACTORS[count] = float(stats.studentized_range.ppf(0.95, count, math.inf))
        refined = _RANGE_FACTORS[count]
        for _ in range(4):
            def share(w: float) -> float:
                return count * integrate.quad(
                    lambda x: stats.norm.pdf(x) * (special.ndtr(x + w) - special.ndtr(x))
                    ** (count - 1), -9, 9, epsabs=1e-13, limit=200)[0]
            slope = (share(refined + 1e-4) - share(refined - 1e-4)) / 2e-4
            refined -= (share(refined) - 0.95) / slope
        _RANGE_FACTORS[count] = refined
    return _RANGE_FACTORS[count]


_RANGE_FACTORS: dict[int, float] = {}


def grubbs_outlier(values: list[float]) -> bool:
    """Two-sided 5 %: G > (n-1)/sqrt(n) sqrt(t^2/(n-2+t^2)), t = t_{1-alpha/(2n)}(n-2)."""
    n = len(values)
    g = max(abs(v - np.mean(values)) for v in values) / np.std(values, ddof=1)
    t = quantile(1 - 0.05 / (2 * n), n - 2)
    return bool(g > (n - 1) / math.sqrt(n) * math.sqrt(t * t / (n - 2 + t * t)))


class Series:
    """What the readings are taken for."""

    def __init__(self, inputs: dict, unit: str) -> None:
        self.values = [read(typed, unit) for typed in inputs["readings"]]
        count = len(self.values)
        self.graduation = read(inputs["instrument"]["graduation"], unit)
        self.own = standard_deviation(self.values) if count > 1 else None
        self.scatter = None if self.own is None else (self.own, count - 1.0)
        self.centre, self.spread, self.words = math.fsum(self.values) / count, 1.0, ("too_few",)
        self._against_past(inputs.get("pooled_scatter"), unit)
        self._outlier()

    def _against_past(self, past: dict | None, unit: str) -> None:
        """Range rule; in agreement today's scatter is pooled with the past one, else from five
        readings on the median stands, with u = 1.2 s / sqrt(n)."""
        count = len(self.values)
        if past is None:
            self.words = ("consistent",) if count >= 6 else ("too_few",)
            return
        known = (read(past["amount"], unit), past["readings"] - 1.0)
        if count >= 2 and self._range_too_wide(known[0]):
            if count < 5:
                self.words = ("range_too_wide",)
            else:
                self.words = ("inconsistent_median_used",)
                self.centre, self.spread = float(np.median(self.values)), 1.2
            return
        parts = [known] + ([self.scatter] if self.scatter else [])
        nu = sum(part[1] for part in parts)
        self.scatter = (math.sqrt(sum(s * s * own for s, own in parts) / nu), nu)
        self.words = ("consistent",) if count >= 2 else ("too_few",)

    def _range_too_wide(self, past: float) -> bool:
        allowed = range_factor(len(self.values)) * max(past, self.graduation / 2)
        return max(self.values) - min(self.values) > allowed * (1 + 1e-9)

    def _outlier(self) -> None:
        """Grubbs from six readings on, and never on a range of two graduations."""
        spread = max(self.values) - min(self.values)
        if len(self.values) < 6 or spread <= 2 * self.graduation * (1 + 1e-9):
            return
        if grubbs_outlier(self.values) and self.words != ("inconsistent_median_used",):
            self.words = ("outlier",)


def error_line(instrument: dict, centre: float, unit: str) -> tuple[list, float]:
    """Permissible error, or the own check for readings between half and twice of it: correction
    applied - shown, read on the graduation."""
    check = instrument.get("check")
    if check:
        applied = read(check["applied"], unit)
        if applied / 2 <= centre <= 2 * applied:
            u = graduation_u(read(instrument["graduation"], unit))
            return [("own_check", u)], applied - read(check["shown"], unit)
    if "permissible_error" not in instrument:
        return [], 0.0
    error = read(instrument["permissible_error"], unit)
    shape = instrument.get("error_shape", "rectangular")
    u = {"rectangular": rectangular(error), "triangular": error / math.sqrt(6),
         "certificate": error / instrument.get("coverage_factor", 2.0)}[shape]
    return [("permissible_error", u)], 0.0


def series(inputs: dict) -> dict:
    """y = m (x + c) with its budget, its verdict and how the readings agree."""
    kind = inputs.get("quantity") or kind_of_first(inputs["readings"][0])
    unit = BASES[kind]
    options = inputs.get("options", {})
    confidence = options.get("confidence", 0.95)
    taken = Series(inputs, unit)
    factor, factor_u = angle_factor(radians(inputs.get("pull_angle_within", 0.0)))
    error, offset = error_line(inputs["instrument"], taken.centre, unit)
    lines = [("scatter", factor * taken.spread * taken.scatter[0] / math.sqrt(len(taken.values)),
              taken.scatter[1])] if taken.scatter else []
    own = [("graduation", factor * graduation_u(taken.graduation), INF)]
    own += [(name, factor * u, INF) for name, u in error]
    lines += own
    if read(inputs.get("pull_angle_within", 0.0), "deg") > 0:
        lines.append(("angle", abs(taken.centre + offset) * factor_u, INF))
    u, nu = combined([(part, freedom) for _, part, freedom in lines])
    y = factor * (taken.centre + offset)
    guard = options.get("rule") == "guard_band_k2"
    k = 2.0 if guard else coverage(confidence, nu)

    def written(value: float) -> Quantity:
        return Quantity(value, unit, absolute=1e-11)
    result: dict = {
        "mean": written(taken.centre), "correction_factor": factor, "corrected_mean": written(y),
        "budget": [{"source": name, "standard_uncertainty": written(part),
                    "degrees_of_freedom": Number(freedom)} for name, part, freedom in lines],
        "standard_uncertainty": written(u), "degrees_of_freedom": Number(nu, relative=1e-8),
        "coverage_factor": k, "expanded_uncertainty": written(k * u),
        "display": display(y, k * u, unit), "consistency": one_of(taken.words),
        "advice": ANYTHING}
    if taken.own is not None:
        result["scatter"] = Quantity(taken.own, unit, absolute=1e-12 * abs(taken.centre) * 100)
    coarse_u = combined([(part, INF) for _, part, _ in own])[0]
    return result | series_verdict(inputs, taken, (y, u, nu), coarse_u, unit)


def kind_of_first(typed: object) -> str:
    """What the unit of the first reading says; force where it says nothing."""
    unit = split(typed)[1] if isinstance(typed, str) else "N"
    return FACTORS[unit][0]


def series_verdict(inputs: dict, taken: Series, estimate: tuple[float, float, float],
                   coarse_u: float, unit: str) -> dict:
    """Verdict, side and probability."""
    options, limit = inputs.get("options", {}), inputs.get("limit", {})
    if not limit:
        return {"verdict": "no_limit", "side": "none"}
    low, high = (read(limit[name], unit) if name in limit else None for name in ("min", "max"))
    y, u, nu = estimate
    count = len(taken.values)
    planned = options.get("planned", max(3, count))
    confidence = options.get("confidence", 0.95)
    guard = options.get("rule") == "guard_band_k2"
    shares = conformance(y, u, nu, low, high)
    result: dict = {}
    if taken.scatter is None:
        inside = conformance(y, 0, INF, low, high).inside > 0
        words, sides = ("undecided",), ("inside_likely" if inside else "outside_likely",)
    else:
        words = series_words(estimate, (low, high), confidence, count, planned, guard)
        sides = tuple(side_of(word, shares) for word in words)
        result["conformance_probability"] = probability(shares)
    coarse = (high - low) / (2 * coarse_u) < 2 if guard and len(limit) == 2 else \
        not guard and too_coarse(low, high, coarse_u, confidence)
    words = tuple("instrument_too_coarse" if word == "undecided" and coarse else word
                  for word in words)
    if count < planned:
        words = tuple(word if word == "instrument_too_coarse" else "provisional" for word in words)
    return result | {"verdict": one_of(words), "side": one_of(sides)}


def series_words(estimate: tuple[float, float, float], limit: tuple, confidence: float, count: int,
                 planned: int, guard: bool) -> tuple[str, ...]:
    """By probability, or by a guard band of 2 u; more readings than planned raise the bar, since
    looking after each of them would pass more than 5 % of values on the limit."""
    y, u, nu = estimate
    low, high = limit
    extended = count > planned
    bar = confidence
    if extended:
        bar = 1 - (1 - confidence) * (0.5 if count <= 5 else 0.26 if count <= 10 else 0.1)
    words = decided(y, conformance(y, u, nu, low, high), low, high, bar)
    if not guard:
        return words
    by_guard = guarded(y, u, low, high)
    if not extended:
        return by_guard
    return tuple(dict.fromkeys(one if one == other else "undecided"
                               for one in by_guard for other in words))


def guarded(y: float, u: float, low: float | None, high: float | None) -> tuple[str, ...]:
    """Within where y keeps 2 u from every limit, outside where it lies more than 2 u beyond one:
    ISO 14253-1:1998."""
    gaps = [gap for gap in ((y - low if low is not None else None),
                            (high - y if high is not None else None)) if gap is not None]
    nearest = min(gaps)
    word = "within" if nearest >= 2 * u else "outside" if nearest < -2 * u else "undecided"
    if abs(abs(nearest) - 2 * u) < EDGE * max(abs(y), u):
        return (word, *{"within", "outside", "undecided"} - {word})
    return (word,)


def display(value: float, expanded: float, unit: str) -> object:
    """The uncertainty to two digits, half up, the value to the same place, in decimal."""
    place = math.floor(math.log10(expanded)) - 1
    rounded = half_up(expanded, place)
    if rounded >= Decimal(100) * Decimal(10) ** place:
        place += 1
        rounded = half_up(expanded, place)
    if place > 0 or near_tie(value, place) or near_tie(expanded, place):
        return ANYTHING
    digits = max(0, -place)
    return f"{half_up(value, place):.{digits}f} +- {rounded:.{digits}f} {unit}"


def half_up(value: float, place: int) -> Decimal:
    """To a decimal place, halves away from zero."""
    return Decimal(value).quantize(Decimal(10) ** place, rounding="ROUND_HALF_UP")


def near_tie(value: float, place: int) -> bool:
    """Whether rounding hangs on the last digits of the computation."""
    scaled = abs(value) / 10.0**place % 1
    return abs(scaled - 0.5) < 1e-6


# --- straight-line -----------------------------------------------------------------------------

def draw_line(draw: Draw) -> dict:
    """Points about a line."""
    slope, at = draw.random.uniform(-50, 50), draw.random.uniform(-100, 100)
    count = draw.whole(3, 15)
    places = draw.random.sample(range(-40, 41), count)
    inputs: dict = {"points": [{"x": place / 4, "y": round(
        at + slope * place / 4 + draw.random.gauss(0, 1), 3)} for place in places]}
    draw.sometimes(inputs, "at", lambda: draw.number(-20, 20))
    if draw.chance(0.5):
        inputs["reach"] = draw.number(-100, 100)
        draw.sometimes(inputs, "reach_uncertainty", lambda: draw.number(0, 3, 2))
    return inputs


def straight_line(inputs: dict) -> dict:
    """Least squares by NumPy; u(a), u(k) and r from the inverse of the normal matrix (JCGM 100
    H.3)."""
    x = np.array([float(point["x"]) for point in inputs["points"]])
    y = np.array([float(point["y"]) for point in inputs["points"]])
    design = np.column_stack([np.ones_like(x), x])
    (a, k), squares, _, _ = np.linalg.lstsq(design, y, rcond=None)
    freedom = len(x) - 2
    s = math.sqrt(float(((y - design @ [a, k]) ** 2).sum()) / freedom)
    covariance = s * s * np.linalg.inv(design.T @ design)
    ua, uk = math.sqrt(covariance[0, 0]), math.sqrt(covariance[1, 1])

    def loose(value: float) -> Number:
        return Number(value, relative=1e-9, absolute=1e-10)
    result = {"intercept": loose(a), "slope": loose(k), "intercept_uncertainty": loose(ua),
              "slope_uncertainty": loose(uk), "correlation": loose(covariance[0, 1] / (ua * uk)),
              "scatter": loose(s), "degrees_of_freedom": freedom}
    if "at" in inputs:
        u = line_u(covariance, inputs["at"])
        result |= {"value": loose(a + k * inputs["at"]), "value_uncertainty": loose(u),
                   "reading_uncertainty": loose(math.hypot(u, s))}
    if "reach" in inputs:
        place = (inputs["reach"] - a) / k
        u = math.hypot(line_u(covariance, place), inputs.get("reach_uncertainty", 0)) / abs(k)
        near = 1e-9 * max(1.0, 100 / abs(k))
        result |= {"place": Number(place, relative=near, absolute=1e-9),
                   "place_uncertainty": Number(u, relative=near)}
    return result


def line_u(covariance: np.ndarray, x: float) -> float:
    """Of the line at x."""
    v = np.array([1.0, x])
    return math.sqrt(float(v @ covariance @ v))


# --- convert, compare-figures ------------------------------------------------------------------

def draw_convert(draw: Draw) -> dict:
    """A typed value and a unit wanted."""
    kind = draw.choice(sorted(TYPED_UNITS))
    kind = "length" if kind == "stiffness" else kind
    own, to = draw.choice(sorted(KINDS[kind])), draw.choice(sorted(KINDS[kind]))
    number = f"{draw.random.uniform(-500, 5000):.{draw.whole(0, 4)}f}"
    inputs = {"value": draw.text(number, own), "to": to}
    draw.sometimes(inputs, "kind", lambda: kind, 0.3)
    return inputs


def convert(inputs: dict) -> dict:
    """The exact factor."""
    number, own = split(inputs["value"])
    value = converted(float(number), own, inputs["to"])
    wanted = {"degC": "K"}.get(inputs["to"], inputs["to"])
    return {"value": Quantity(value, wanted), "kind": FACTORS[own][0], "read_as": ANYTHING}


FIGURE_UNITS = {"length": ("mm", "in", "thou"), "torque": ("N m", "lbf ft", "kgf m", "lbf in"),
                "force": ("N", "kgf", "lbf"), "mass": ("kg", "lb"), "pressure": ("bar", "psi"),
                "speed": ("km/h", "mph")}


def draw_figures(draw: Draw) -> dict:
    """The same limit twice, rounded; sometimes not the same."""
    kind = draw.choice(sorted(FIGURE_UNITS))
    one, two = draw.random.sample(FIGURE_UNITS[kind], 2)
    first = f"{draw.random.uniform(5, 300):.{draw.whole(0, 2)}f}"
    second = converted(float(first), one, two) * draw.choice((1.0, 1.0, 1.002, 0.98, 1.1))
    return {"first": f"{first} {one}", "second": f"{second:.{draw.whole(0, 3)}f} {two}"}


def interval(typed: str) -> tuple[Fraction, Fraction, Fraction]:
    """Value and the ends of all that rounds to it, exactly, in the kind's base unit."""
    number, unit = split(typed)
    factor = Fraction(FACTORS[unit][1]).limit_denominator(10**15)
    half = Fraction(1, 2) / 10 ** len(number.partition(".")[2])
    value = Fraction(number)
    return value * factor, (value - half) * factor, (value + half) * factor


def compare_figures(inputs: dict) -> dict:
    """They agree where the closed intervals of what rounds to them meet."""
    first, second = interval(inputs["first"]), interval(inputs["second"])
    gap = max(first[1], second[1]) - min(first[2], second[2])
    word = "agrees" if gap <= 0 else "query"
    if abs(float(gap)) < 1e-12 * float(abs(first[0])):
        word = OneOf(("agrees", "query"))
    (one, own), (two, other) = split(inputs["first"]), split(inputs["second"])
    in_second, in_first = converted(float(one), own, other), converted(float(two), other, own)
    return {"agreement": word, "first_in_second_unit": Quantity(in_second, other),
            "second_in_first_unit": Quantity(in_first, own),
            "would_agree_with_first": to_places(in_second, two, other),
            "would_agree_with_second": to_places(in_first, one, own)}


def to_places(value: float, like: str, unit: str) -> object:
    """Rounded to the places of another figure."""
    places = len(like.partition(".")[2])
    if near_tie(value, -places):
        return ANYTHING
    return f"{half_up(value, -places):.{places}f} {unit}"


CALCULATIONS = (
    Calculation("series", draw_series, series),
    Calculation("straight-line", draw_line, straight_line),
    Calculation("convert", draw_convert, convert),
    Calculation("compare-figures", draw_figures, compare_figures),
)
