# SPDX-License-Identifier: GPL-3.0-or-later
"""Swivel torque from a pull, and the first shim pack from a measurement; the pack after that is in
shim_pack.py."""

import itertools
import math

import numpy as np

from calculation import Calculation
from compare import ANYTHING, Number, OneOf, Quantity, Refused
from draw import Draw
from judging import INF, angle_factor, combined, coverage
from shims import Pack, draw_stock, makeable
from units import radians, read, read_or

# --- starting-force ----------------------------------------------------------------------------


def draw_starting_force(draw: Draw) -> dict:
    """A pull, a target, or both."""
    inputs: dict = {"arm": draw.quantity(80, 400, "mm")}
    if draw.chance(0.85):
        inputs["force"] = draw.quantity(0, 80, "N")
        draw.sometimes(inputs, "force_uncertainty", lambda: draw.quantity(0, 3, "N", 2))
        draw.sometimes(inputs, "degrees_of_freedom", lambda: draw.choice(
            ("infinity", draw.number(1, 60, 3))))
        draw.sometimes(inputs, "arm_uncertainty", lambda: draw.quantity(0, 5, "mm", 2))
        draw.sometimes(inputs, "off_square_uncertainty", lambda: draw.quantity(0, 5, "deg", 2))
    draw.sometimes(inputs, "off_square", lambda: draw.quantity(-60, 60, "deg", 3))
    draw.sometimes(inputs, "off_square_within", lambda: draw.quantity(0, 30, "deg", 3), 0.4)
    if "force" not in inputs or draw.chance(0.5):
        inputs["target_torque"] = draw.quantity(0, 20, "N m")
    draw.sometimes(inputs, "options", lambda: {"confidence": draw.number(0.5, 0.99, 2)}, 0.3)
    return inputs


def starting_force(inputs: dict) -> dict:
    """M = F L cos(a); u by JCGM 100 5.1. A direction unknown within +/-w multiplies the force by
    the mean cosine, its spread going into u(F)."""
    arm, angle = read(inputs["arm"], "mm") / 1000, radians(inputs.get("off_square", 0.0))
    result: dict = {}
    if "force" in inputs:
        result = pull_torque(inputs, arm, angle)
    if "target_torque" in inputs:
        result["pull_for_target"] = Quantity(
            read(inputs["target_torque"], "N m") / (arm * math.cos(angle)), "N")
    return result


def pull_torque(inputs: dict, arm: float, angle: float) -> dict:
    """Torque with its budget: the force with its freedom, arm and angle without."""
    read_force = read(inputs["force"], "N")
    factor, spread = angle_factor(radians(inputs.get("off_square_within", 0.0)))
    force = read_force * factor
    freedom = inputs.get("degrees_of_freedom", "infinity")
    parts = [(arm * math.cos(angle) * factor * read_or(inputs, "force_uncertainty", "N", 0),
              INF if freedom == "infinity" else float(freedom)),
             (arm * math.cos(angle) * read_force * spread, INF),
             (force * math.cos(angle) * read_or(inputs, "arm_uncertainty", "mm", 0) / 1000, INF),
             (force * arm * math.sin(angle)
              * radians(inputs.get("off_square_uncertainty", 0.0)), INF)]
    u, nu = combined(parts)
    k = coverage(inputs.get("options", {}).get("confidence", 0.95), nu)
    return {"square_force": Quantity(force * math.cos(angle), "N"),
            "torque": Quantity(force * arm * math.cos(angle), "N m"),
            "standard_uncertainty": Quantity(u, "N m"),
            "degrees_of_freedom": Number(nu), "coverage_factor": k,
            "expanded_uncertainty": Quantity(k * u, "N m")}


# --- first-pack --------------------------------------------------------------------------------

def draw_first_pack(draw: Draw) -> dict:
    """Gaps at the bolts, or an end float on the pack found."""
    inputs: dict = {"layout": draw.choice(("cap_flange", "inner")),
                    "method": "end_float"} | draw_stock(draw)
    if inputs["layout"] == "cap_flange" and draw.chance(0.6):
        inputs["method"] = "nip"
        inputs["gaps"] = draw_gaps(draw)
    else:
        inputs["end_float"] = [draw.quantity(0.02, 0.1, "mm", 2) for _ in range(draw.whole(1, 4))]
        inputs["pack_found"] = draw.quantity(0.3, 0.9, "mm", 3)
        draw.sometimes(inputs, "pack_found_uncertainty", lambda: draw.quantity(0, 0.02, "mm", 2))
    if inputs["method"] == "nip":
        draw.sometimes(inputs, "pack_found", lambda: draw.quantity(0.2, 1, "mm", 3), 0.3)
    draw.sometimes(inputs, "reading_uncertainty", lambda: draw.quantity(0, 0.03, "mm", 2))
    draw.sometimes(inputs, "allowance", lambda: draw.quantity(-0.02, 0.15, "mm", 2), 0.4)
    draw.sometimes(inputs, "uneven_from", lambda: draw.quantity(0, 0.15, "mm", 2), 0.3)
    if draw.chance(0.3):
        inputs["split"] = {"top": draw.quantity(0.1, 0.5, "mm", 3),
                           "bottom": draw.quantity(0.1, 0.5, "mm", 3)}
    return inputs


def draw_gaps(draw: Draw) -> list:
    """Even, tilted, or with one bolt off."""
    bolts, centre = draw.whole(2, 12), draw.random.uniform(0.25, 0.8)
    tilt, phase = draw.choice((0.0, 0.05)), draw.random.uniform(0, 6.28)
    gaps = [centre + tilt * math.cos(2 * math.pi * i / bolts - phase)
            + draw.random.gauss(0, 0.005) for i in range(bolts)]
    if draw.chance(0.3):
        gaps[draw.whole(0, bolts - 1)] += 0.12
    return [draw.in_unit(gap, "mm", 0.001) for gap in gaps]


class Circle:
    """Gaps round the bolts: mean, first harmonic (from four bolts on), what is left; by least
    squares with NumPy."""

    def __init__(self, gaps: list[float]) -> None:
        n = len(gaps)
        t = 2 * math.pi * np.arange(n) / n
        columns = [np.ones(n)] + ([np.cos(t), np.sin(t)] if n >= 4 else [])
        design = np.column_stack(columns)
        fitted = np.linalg.lstsq(design, np.array(gaps), rcond=None)[0]
        self.mean = float(fitted[0])
        self.wave = complex(*fitted[1:]) if n >= 4 else 0j
        self.rest = np.array(gaps) - design @ fitted
        freedom = n - design.shape[1]
        squares = float((self.rest**2).sum())
        self.scatter = math.sqrt(squares / freedom) if freedom > 0 else 0.0


def gap_shape(gaps: list[float], circle: Circle, one_u: float, uneven: float) -> dict:
    """Even where the range is below what counts as uneven or could be reading alone (twice the
    uncertainty of a difference); else one bolt where what is left exceeds the tilt; else tilted."""
    spread, tilt = max(gaps) - min(gaps), abs(circle.wave)
    result: dict = {"gap_range": Quantity(spread, "mm"),
                    "tilt": Quantity(2 * tilt, "mm", absolute=1e-11)}
    bound = max(uneven, 2 * math.sqrt(2) * one_u)
    if abs(spread - bound) < 1e-9:
        return result | {"gap_pattern": ANYTHING, "at_bolt": ANYTHING}
    if spread <= bound:
        return result | {"gap_pattern": "even"}
    off = np.abs(circle.rest)
    if len(gaps) < 4 or off.max() > tilt:
        at = [int(i) + 1 for i in np.flatnonzero(off >= off.max() - 1e-12)]
        return result | {"gap_pattern": "one_bolt_off", "at_bolt": OneOf(tuple(at))}
    turn = np.angle(circle.wave) / (2 * math.pi) * len(gaps)
    at = [round(turn + shift) % len(gaps) + 1 for shift in (0, -1e-9, 1e-9)]
    return result | {"gap_pattern": "tilted", "at_bolt": OneOf(tuple(at))}


def first_pack(inputs: dict) -> dict:
    """The pack a measurement asks for, what can be made of the shims on hand, and the pack
    found."""
    one_u = read_or(inputs, "reading_uncertainty", "mm", 0.01)
    allowance = read_or(inputs, "allowance", "mm", 0.0)
    packs = makeable(inputs)
    if not packs:
        raise Refused("degenerate")
    result: dict = {}
    if inputs["method"] == "nip":
        gaps = [read(gap, "mm") for gap in inputs["gaps"]]
        circle = Circle(gaps)
        wanted = circle.mean - allowance
        u = math.hypot(circle.scatter / math.sqrt(len(gaps)), one_u)
        result = gap_shape(gaps, circle, one_u, read_or(inputs, "uneven_from", "mm", 0.05))
    else:
        floats = [read(value, "mm") for value in inputs["end_float"]]
        change = math.fsum(floats) / len(floats) + allowance
        found = read(inputs["pack_found"], "mm")
        wanted = found - change if inputs["layout"] == "cap_flange" else found + change
        scatter = float(np.std(floats, ddof=1)) if len(floats) > 1 else 0.0
        u = math.hypot(scatter / math.sqrt(len(floats)), one_u,
                       read_or(inputs, "pack_found_uncertainty", "mm", 0.0))
    if wanted <= 0:
        raise Refused("degenerate")
    result |= {"wanted": Quantity(wanted, "mm"),
               "standard_uncertainty": Quantity(u, "mm", absolute=1e-11),
               "packs": offered(packs, wanted, inputs.get("split"))}
    if "pack_found" in inputs:
        result |= found_stack(packs, read(inputs["pack_found"], "mm"))
    return result


def nearest_to(packs: list[Pack], total: float) -> list[int]:
    """Index of the nearest pack; of both where the middle between them is asked for."""
    away = np.abs(np.array([pack.total for pack in packs]) - total)
    return [int(i) for i in np.flatnonzero(away <= away.min() + 1e-10)]


def offered(packs: list[Pack], wanted: float, split: dict | None) -> object:
    """The nearest, then its neighbours: the thicker, the thinner."""
    options = []
    for nearest in nearest_to(packs, wanted):
        rows = []
        for at in (nearest, nearest + 1, nearest - 1):
            if 0 <= at < len(packs):
                rows.append(packs[at].written() | shares(packs[at], split)
                            | {"from_wanted": Quantity(packs[at].total - wanted, "mm",
                                                       absolute=1e-11)})
        options.append(rows)
    return OneOf(tuple(options))


def shares(pack: Pack, split: dict | None) -> dict:
    """The same shims dealt to top and bottom, the difference kept nearest to the one found."""
    if split is None:
        return {}
    apart = read(split["top"], "mm") - read(split["bottom"], "mm")
    tops = {sum(chosen) for count in range(len(pack.shims) + 1)
            for chosen in itertools.combinations(pack.shims, count)}
    away = {top: abs(top - (pack.total + apart) / 2) for top in tops}
    nearest = [top for top in tops if away[top] <= min(away.values()) + 2e-6]
    return {"top": OneOf(tuple(Quantity(top, "mm", absolute=1e-11) for top in nearest)),
            "bottom": OneOf(tuple(Quantity(pack.total - top, "mm", absolute=1e-11)
                                  for top in nearest))}


def found_stack(packs: list[Pack], found: float) -> dict:
    """Shims on hand that make the pack found, to 0.02 mm."""
    near = [packs[at] for at in nearest_to(packs, found)]
    away = abs(near[0].total - found)
    if abs(away - 0.02) < 1e-9:
        return {"found_stack": ANYTHING}
    if away > 0.02:
        return {}
    return {"found_stack": OneOf(tuple(pack.written() for pack in near))}


CALCULATIONS = (
    Calculation("starting-force", draw_starting_force, starting_force),
    Calculation("first-pack", draw_first_pack, first_pack),
)
