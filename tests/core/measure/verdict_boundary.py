# SPDX-License-Identifier: GPL-3.0-or-later
"""1,000 random series, instruments and limits, and where SciPy puts the edges of their verdicts.

Writes one line an edge to standard output: the case, what SciPy makes of it (value, standard
uncertainty, degrees of freedom, bar), the limits exactly on the edge, how they move, and the
decision expected a millionth of the standard uncertainty above and below. The C++ test reads it.
Everything is computed here anew from the written rules; nothing is taken from the program.
"""

import math
import sys

import numpy as np
from scipy import optimize, special, stats

SEED = 20250
CASES = 1000
COLUMNS = ("case readings graduation permissible shape factor applied shown applied_u angle "
           "pooled_s pooled_nu difference local confidence planned extended rule value u nu bar "
           "min max moves above below verdict_is_provisional").split()


def cdf(x, nu):
    return special.ndtr(x) if math.isinf(nu) else special.stdtr(nu, x)


def quantile(p, nu):
    return float(stats.norm.ppf(p) if math.isinf(nu) else stats.t.ppf(p, nu))


RANGE_FACTOR = {n: float(stats.studentized_range.ppf(0.95, n, np.inf)) for n in range(2, 11)}


def draw(random, number):
    """A case as a dictionary. Quantities are SI: newtons, or metres when scale is 0.001."""
    scale = random.choice([1.0, 0.001])
    d = float(random.choice([0.01, 0.05, 0.1, 0.2, 0.5, 1.0])) * scale
    count = int(random.integers(1, 11))
    centre = random.uniform(5, 60) * scale
    sigma = d * random.uniform(0.2, 3)
    marks = np.round((centre + sigma * random.standard_normal(count)) / d)
    case = {"case": number, "readings": [float(m * d) for m in marks], "graduation": d,
            "permissible": None, "shape": "rectangular", "factor": 2.0, "applied": None,
            "shown": None, "applied_u": None, "angle": 0.0, "pooled_s": None, "pooled_nu": None,
            "difference": 0, "local": None, "confidence": 0.95, "extended": 0,
            "rule": "conformance_probability"}
    if random.random() < 0.7:
        case["permissible"] = d * random.uniform(0.3, 2)
        case["shape"] = str(random.choice(["rectangular", "triangular", "certificate"]))
        case["factor"] = float(random.choice([2.0, 2.0, 3.0]))
    if random.random() < 0.3:
        case["applied"] = centre * random.uniform(0.3, 2.5)
        case["shown"] = float(np.round(case["applied"] * random.uniform(0.97, 1.03) / d) * d)
        case["applied_u"] = d * random.uniform(0, 0.5)
    if random.random() < 0.4:
        case["angle"] = math.radians(random.uniform(0.5, 20))
    if count == 1 or random.random() < 0.3:
        case["pooled_s"] = sigma * random.uniform(0.5, 2)
        case["pooled_nu"] = float(random.integers(2, 30))
    if random.random() < 0.1:
        case["difference"] = 1
        case["local"] = d * random.uniform(0.3, 1)
    if random.random() < 0.2:
        case["confidence"] = float(random.choice([0.90, 0.99]))
    if random.random() < 0.35:
        case["extended"] = 1
    if random.random() < 0.15:
        case["rule"] = "guard_band_k2"
    case["planned"] = count + (int(random.integers(1, 4)) if random.random() < 0.3 else 0)
    return case


def centre_of(case):
    """Value, standard deviation, degrees of freedom, factor on s / sqrt(n)."""
    x = np.array(case["readings"])
    n = len(x)
    s, nu = (float(np.std(x, ddof=1)), n - 1) if n > 1 else (0.0, 0)
    if case["pooled_s"] is None:
        return float(np.mean(x)), s, nu, 1.0
    sr = max(case["pooled_s"], case["graduation"] / 2)
    if n > 1 and float(np.ptp(x)) > RANGE_FACTOR[n] * sr:
        return (float(np.mean(x)), s, nu, 1.0) if n < 5 else (float(np.median(x)), s, nu, 1.2)
    total = nu + case["pooled_nu"]
    pooled = math.sqrt((nu * s ** 2 + case["pooled_nu"] * case["pooled_s"] ** 2) / total)
    return float(np.mean(x)), pooled, total, 1.0


def instrument_of(case, centre):
    """Offset and the instrument's own standard uncertainties, before the angle factor."""
    grad = case["graduation"] / math.sqrt(12)
    if case["difference"]:
        return 0.0, [math.sqrt(2) * grad, case["local"] / math.sqrt(3)]
    if case["applied"] is not None and 0.5 <= centre / case["applied"] <= 2:
        return case["applied"] - case["shown"], [grad, math.hypot(case["applied_u"], grad)]
    if case["permissible"] is None:
        return 0.0, [grad]
    divisor = {"rectangular": math.sqrt(3), "triangular": math.sqrt(6),
               "certificate": case["factor"]}[case["shape"]]
    return 0.0, [grad, case["permissible"] / divisor]


def evaluate(case):
    centre, s, nu, spread = centre_of(case)
    offset, own = instrument_of(case, centre)
    a = case["angle"]
    m = math.sin(a) / a if a else 1.0
    u_cos = 0.0
    if a:
        u_cos = (a * a / math.sqrt(45) if math.degrees(a) < 3 else
                 math.sqrt(0.5 + math.sin(2 * a) / (4 * a) - m * m))
    scatter = m * spread * s / math.sqrt(len(case["readings"]))
    u_instrument = m * math.sqrt(sum(x * x for x in own))
    u = math.sqrt(scatter ** 2 + u_instrument ** 2 + ((centre + offset) * u_cos) ** 2)
    nu_eff = u ** 4 / (scatter ** 4 / nu) if scatter > 0 else math.inf
    return m * (centre + offset), u, nu_eff, u_instrument


def bar_of(case):
    p, n = case["confidence"], max(len(case["readings"]), case["planned"])
    if not case["extended"]:
        return p
    return 1 - (1 - p) * (0.5 if n <= 5 else 0.26 if n <= 10 else 0.1)


def edges(case, random):
    """(min, max, moves, decision above, decision below) at each edge of the verdict, never none."""
    kind = str(random.choice(["max", "min", "band", "coarse"]))
    return list(edges_of(case, kind, random)) or list(edges_of(case, "max", random))


def edges_of(case, kind, random):
    y, u, nu, u_b = case["value"], case["u"], case["nu"], case["u_b"]
    bar, k2 = case["bar"], case["rule"] == "guard_band_k2"
    reach = quantile(bar, nu)
    if k2:
        reach = max(2.0, reach) if case["extended"] else 2.0
    if kind == "max":
        yield None, y + reach * u, "max", "within", "undecided"
        yield None, y - reach * u, "max", "undecided", "outside"
    elif kind == "min":
        yield y - reach * u, None, "min", "undecided", "within"
        yield y + reach * u, None, "min", "outside", "undecided"
    elif kind == "coarse" or k2:
        widest = 4 * u_b if k2 else 2 * u_b * quantile((1 + case["confidence"]) / 2, math.inf)
        # Above the edge the band may be passed in principle; with this u the value is undecided.
        if u > 1.05 * u_b:
            yield y - widest / 2, y + widest / 2, "max", "undecided", "instrument_too_coarse"
    else:
        yield from band_edges(y, u, nu, u_b, bar, case["confidence"], random)


def band_edges(y, u, nu, u_b, bar, confidence, random):
    width = u * random.uniform(2.5, 14)
    halves = width / 2
    inside = lambda centre: (cdf((centre + halves - y) / u, nu)
                             - cdf((centre - halves - y) / u, nu))
    coarse = 2 * cdf(halves / u_b, math.inf) - 1 < confidence
    between = "instrument_too_coarse" if coarse else "undecided"
    far = 60 * u * max(1.0, quantile(bar, nu))
    solve = lambda target, low, high: optimize.brentq(
        lambda c: inside(c) - target, low, high, xtol=1e-13 * u, rtol=1e-15)
    if inside(y) > bar:
        centre = solve(bar, y, y + far)
        yield centre - halves, centre + halves, "band", between, "within"
        centre = solve(bar, y - far, y)
        yield centre - halves, centre + halves, "band", "within", between
    if inside(y + halves) > 1 - bar:  # so that the value lies beyond a limit on the edge
        centre = solve(1 - bar, y, y + far)
        yield centre - halves, centre + halves, "band", "outside", between


def text(value):
    if value is None:
        return ""
    if isinstance(value, list):
        return " ".join(text(x) for x in value)
    return repr(float(value)) if isinstance(value, (float, np.floating)) else str(value)


def main():
    random = np.random.default_rng(SEED)
    print(";".join(COLUMNS))
    for number in range(CASES):
        case = draw(random, number)
        case["value"], case["u"], case["nu"], case["u_b"] = evaluate(case)
        case["bar"] = bar_of(case)
        for low, high, moves, above, below in edges(case, random):
            row = dict(case, min=low, max=high, moves=moves, above=above, below=below,
                       verdict_is_provisional=int(len(case["readings"]) < case["planned"]))
            print(";".join(text(row[name]) for name in COLUMNS))


if __name__ == "__main__":
    sys.exit(main())
