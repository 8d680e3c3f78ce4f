# SPDX-License-Identifier: GPL-3.0-or-later
"""Unbalance of wheels and balancing with trial weights; tyres are in tyres.py."""

import cmath
import math

import numpy as np

import tyres
from calculation import Calculation
from compare import Number, Quantity, Refused
from draw import Draw
from judging import INF, conformance, decided, one_of
from units import radians, read, read_or


def vector(typed: dict, unit: str | None = None) -> complex:
    """An amount at an angle."""
    amount = typed["amount"] if unit is None else read(typed["amount"], unit)
    return cmath.rect(amount, radians(typed["angle"]))


def written(z: complex, unit: str | None = None, loss: float = 1.0) -> dict:
    """A vector of an answer. `loss` is by how much rounding may have grown on the way to it."""
    near = 1e-9 * max(1.0, loss * 1e-3)
    angle = math.degrees(cmath.phase(z)) % 360.0
    size = Number(abs(z), relative=near, absolute=near) if unit is None else \
        Quantity(abs(z), unit, relative=near, absolute=near)
    return {"amount": size, "angle": Quantity(angle, "deg", relative=near, absolute=1e-7 * max(
        1.0, loss * 1e-3), turn=True)}


# --- unbalance ---------------------------------------------------------------------------------

def draw_unbalance(draw: Draw) -> dict:
    """Weights in both planes of a turning wheel."""
    inputs: dict = {"weights": [{"plane": draw.choice(("inner", "outer")),
                                 "amount": draw.quantity(1, 120, "g", 3),
                                 "angle": draw.quantity(-180, 360, "deg", 3)}
                                for _ in range(draw.whole(1, 5))],
                    "weight_radius": draw.quantity(150, 260, "mm"),
                    "plane_spacing": draw.quantity(80, 260, "mm"),
                    "speed": draw.quantity(20, 180, "km/h", 3)}
    options: dict = {}
    tyres.draw_rolling(draw, inputs, options)
    draw.sometimes(inputs, "lever", lambda: draw.quantity(0, 150, "mm", 3))
    if draw.chance(0.6):
        inputs["limit_each_plane"] = draw.quantity(2, 40, "g", 2)
        draw.sometimes(inputs, "weight_uncertainty", lambda: draw.quantity(0.2, 5, "g", 2))
    if draw.chance(0.5):
        inputs["wheel_mass"] = draw.quantity(10, 45, "kg", 3)
        draw.sometimes(options, "grade", lambda: draw.number(5, 100, 3))
    draw.sometimes(options, "confidence", lambda: draw.choice((0.9, 0.95, 0.99)), 0.3)
    if options:
        inputs["options"] = options
    return inputs


def unbalance(inputs: dict) -> dict:
    """U = m r in each plane; static sum, force U w^2, couple |Uo - Ui| b/2 w^2 about the middle
    (plane dynamics). Grade by ISO 21940-11, from memory: G = e w, e = U / m."""
    options = inputs.get("options", {})
    radius = read(inputs["weight_radius"], "mm")
    planes = {name: sum((vector(w, "g") for w in inputs["weights"] if w["plane"] == name), 0j)
              for name in ("inner", "outer")}
    circumference = tyres.rolling_of(inputs, options).circumference
    frequency = read(inputs["speed"], "km/h") / 3.6 / (circumference / 1000)
    spin = 2 * math.pi * frequency
    static = (planes["inner"] + planes["outer"]) * radius
    apart = (planes["outer"] - planes["inner"]) * radius
    force = abs(static) * 1e-6 * spin**2
    result: dict = {"wheel_frequency": Quantity(frequency, "Hz")}
    for name, z in planes.items():
        result[name] = written(z, "g") | {"unbalance": Quantity(abs(z) * radius, "g mm",
                                                                absolute=1e-8),
                                          "verdict": plane_verdict(inputs, abs(z), options)}
    whole = written(static, "g mm")
    result |= {"static_unbalance": {"unbalance": whole["amount"], "angle": whole["angle"]},
               "force": Quantity(force, "N", absolute=1e-9),
               "couple": Quantity(abs(apart) / 2 * 1e-9 * read(inputs["plane_spacing"], "mm")
                                  * spin**2, "N m", absolute=1e-10),
               "couple_angle": written(apart, "g mm")["angle"]}
    if "lever" in inputs:
        result["moment_of_force"] = Quantity(force * read(inputs["lever"], "mm") / 1000, "N m",
                                             absolute=1e-10)
    if "wheel_mass" in inputs:
        result["grade"] = grade(inputs, abs(static), spin, radius, options.get("grade", 40.0))
    return result


def plane_verdict(inputs: dict, amount: float, options: dict) -> object:
    """The grams of a plane against what it may keep."""
    if "limit_each_plane" not in inputs:
        return "no_limit"
    most = read(inputs["limit_each_plane"], "g")
    u = read_or(inputs, "weight_uncertainty", "g", 0)
    if u == 0 and math.isclose(amount, most, rel_tol=1e-12):
        return one_of(("within", "outside"))
    return one_of(decided(amount, conformance(amount, u, INF, None, most), None, most,
                          options.get("confidence", 0.95)))


def grade(inputs: dict, static: float, spin: float, radius: float, asked: float) -> dict:
    """static in g mm, spin in rad/s, radius in mm, grade in mm/s."""
    mass = read(inputs["wheel_mass"], "kg")
    eccentricity = asked / spin
    allowed = eccentricity * mass * 1000
    return {"reached": Number(static / (mass * 1000) * spin, absolute=1e-10),
            "asked": float(asked), "eccentricity": Quantity(eccentricity, "mm"),
            "unbalance": Quantity(allowed, "g mm"), "at_radius": Quantity(allowed / radius, "g"),
            "each_plane": Quantity(allowed / radius / 2, "g")}


# --- influence coefficients --------------------------------------------------------------------

def draw_vector(draw: Draw, low: float, high: float, unit: str | None = None) -> dict:
    """An amount at any angle."""
    amount = draw.number(low, high, 3) if unit is None else draw.quantity(low, high, unit, 3)
    return {"amount": amount, "angle": draw.quantity(-360, 360, "deg", 4)}


def draw_one_plane(draw: Draw) -> dict:
    """Two runs, and a weight at hand now and then."""
    inputs = {"initial": draw_vector(draw, 0.5, 10), "trial_weight": draw_vector(draw, 5, 60, "g"),
              "with_trial": draw_vector(draw, 0.1, 12)}
    draw.sometimes(inputs, "fitted", lambda: draw_vector(draw, 0, 60, "g"))
    return inputs


def one_plane(inputs: dict) -> dict:
    """a = (V1 - V0) / W; correction B = -V0 / a, unbalance -B; left with weights C: V0 + a C."""
    initial, run = vector(inputs["initial"]), vector(inputs["with_trial"])
    influence = (run - initial) / vector(inputs["trial_weight"], "g")
    loss = abs(initial) / max(abs(run - initial), 1e-12)
    correction = -initial / influence
    result = {"influence": written(influence, loss=loss),
              "unbalance": written(-correction, "g", loss),
              "correction": written(correction, "g", loss)}
    if "fitted" in inputs:
        left = initial + influence * vector(inputs["fitted"], "g")
        result["residual"] = written(left, loss=loss)
    return result


def draw_two_plane(draw: Draw) -> dict:
    """Three runs of a linear wheel that somewhat lies, so that the planes are told apart."""
    def pair() -> dict:
        return {"inner": draw_vector(draw, 0.5, 10), "outer": draw_vector(draw, 0.5, 10)}
    inputs = {"initial": pair()}
    for name in ("trial_inner", "trial_outer"):
        inputs[name] = {"weight": draw_vector(draw, 5, 60, "g")} | pair()
    draw.sometimes(inputs, "fitted", lambda: {plane: draw_vector(draw, 0, 60, "g")
                                              for plane in ("inner", "outer")})
    return inputs


PLANES = ("inner", "outer")


def two_plane(inputs: dict) -> dict:
    """[a] B = -V0, solved with NumPy; condition: ratio of the singular values of [a]."""
    initial = np.array([vector(inputs["initial"][plane]) for plane in PLANES])
    columns = [(np.array([vector(inputs[run][plane]) for plane in PLANES]) - initial)
               / vector(inputs[run]["weight"], "g") for run in ("trial_inner", "trial_outer")]
    influence = np.column_stack(columns)
    correction = np.linalg.solve(influence, -initial)
    condition = float(np.linalg.cond(influence, 2))
    result = {"influence": [{"read": PLANES[row], "weight": PLANES[column]}
                            | written(influence[row, column], loss=10)
                            for row in range(2) for column in range(2)],
              "unbalance": {plane: written(-z, "g", 10 * condition)
                            for plane, z in zip(PLANES, correction)},
              "correction": {plane: written(z, "g", 10 * condition)
                             for plane, z in zip(PLANES, correction)},
              "condition": Number(condition, relative=1e-9 * max(1.0, condition / 1e4))}
    if "fitted" in inputs:
        fitted = np.array([vector(inputs["fitted"][plane], "g") for plane in PLANES])
        result["residual"] = {plane: written(z, loss=100)
                              for plane, z in zip(PLANES, initial + influence @ fitted)}
    return result


# --- four runs ---------------------------------------------------------------------------------

def draw_four_run(draw: Draw) -> dict:
    """Four runs of a linear wheel, read to two or three places."""
    initial = draw.random.uniform(1, 5)
    effect = draw.random.uniform(0.3, 4)
    heavy = draw.random.uniform(0, 2 * math.pi)
    places = draw.choice((2, 3))
    runs = [round(abs(cmath.rect(initial, heavy) + cmath.rect(effect, k * 2 * math.pi / 3)), places)
            for k in range(3)]
    inputs: dict = {"initial": round(initial, places), "with_trial": runs,
                    "trial_weight": draw.quantity(5, 60, "g", 3)}
    draw.sometimes(inputs, "reading_uncertainty", lambda: draw.number(0.01, 0.1, 2))
    return inputs


def four_run(inputs: dict) -> dict:
    """T = sqrt(mean A^2 - A0^2); S = sum A^2 exp(i t); unbalance W A0 / T at arg S. u by JCGM 100
    5.1.2 with derivatives of these two taken numerically (central differences)."""
    start, runs = float(inputs["initial"]), [float(run) for run in inputs["with_trial"]]
    weight = read(inputs["trial_weight"], "g")
    readings = np.array([start, *runs])
    effect_squared = float(np.mean(readings[1:] ** 2) - start**2)
    if effect_squared <= 0:
        raise Refused("degenerate")
    amount, angle = four_run_answer(readings, weight)
    effect = math.sqrt(effect_squared)
    agreement = abs(pointing(readings)) / (3 * start * effect)
    if contradict(inputs, readings, agreement):
        raise Refused("degenerate")
    loss = start**2 / effect_squared
    result = {"trial_effect": Number(effect, relative=1e-9 * max(1.0, loss)),
              "unbalance": written(cmath.rect(amount, angle), "g", 1e3 * loss),
              "correction": written(cmath.rect(-amount, angle), "g", 1e3 * loss),
              "agreement": Number(agreement, relative=1e-9 * max(1.0, loss))}
    if "reading_uncertainty" in inputs:
        u = inputs["reading_uncertainty"]
        by_amount, by_angle = four_run_slopes(readings, weight)
        result["amount_uncertainty"] = Quantity(u * by_amount, "g", relative=1e-6)
        result["angle_uncertainty"] = Quantity(math.degrees(u * by_angle), "deg", relative=1e-6)
    return result


def pointing(readings: np.ndarray) -> complex:
    """S, which points at the heavy spot."""
    return sum(readings[1 + k] ** 2 * cmath.exp(2j * math.pi * k / 3) for k in range(3))


def four_run_answer(readings: np.ndarray, weight: float) -> tuple[float, float]:
    """Amount and angle of the unbalance."""
    effect = math.sqrt(float(np.mean(readings[1:] ** 2) - readings[0] ** 2))
    return weight * readings[0] / effect, cmath.phase(pointing(readings))


def sensitivity(function, readings: np.ndarray) -> float:
    """Root of squares of the derivatives, by Richardson's central differences."""
    squares = 0.0
    for index in range(len(readings)):
        def at(step: float, index: int = index) -> float:
            moved = readings.copy()
            moved[index] += step
            return function(moved)
        h = 1e-4 * max(readings[index], 0.1)
        coarse = (at(h) - at(-h)) / (2 * h)
        fine = (at(h / 2) - at(-h / 2)) / h
        squares += ((4 * fine - coarse) / 3) ** 2
    return math.sqrt(squares)


def four_run_slopes(readings: np.ndarray, weight: float) -> tuple[float, float]:
    """Of the amount, and of the angle counted from where it points now."""
    here = cmath.phase(pointing(readings))
    by_amount = sensitivity(lambda r: four_run_answer(r, weight)[0], readings)
    by_angle = sensitivity(
        lambda r: cmath.phase(pointing(r) * cmath.exp(-1j * here)), readings)
    return by_amount, by_angle


def contradict(inputs: dict, readings: np.ndarray, agreement: float) -> bool:
    """A linear wheel has |S| = 3 A0 T. Runs contradict where the two differ by more than three
    standard uncertainties of their difference, or, where none is stated, by a ratio beyond 3/4 to
    4/3 (own rule)."""
    if "reading_uncertainty" not in inputs:
        return not 0.75 <= agreement <= 4 / 3

    def gap(r: np.ndarray) -> float:
        return abs(pointing(r)) - 3 * r[0] * math.sqrt(float(np.mean(r[1:] ** 2) - r[0] ** 2))
    return abs(gap(readings)) > 3 * inputs["reading_uncertainty"] * sensitivity(gap, readings)


CALCULATIONS = (
    *tyres.CALCULATIONS,
    Calculation("unbalance", draw_unbalance, unbalance),
    Calculation("balance-one-plane", draw_one_plane, one_plane),
    Calculation("balance-two-plane", draw_two_plane, two_plane),
    Calculation("balance-four-run", draw_four_run, four_run),
)
